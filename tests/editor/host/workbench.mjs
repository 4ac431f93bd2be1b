// Opens the workbench of a running VS Code server in Chromium.
import { format } from 'node:util';
import { chromium } from 'playwright-core';

const FLAGS = [
  '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update',
  '--disable-sync',
];

/**
 * With `extension` (a folder, or an http address for the web worker host) that extension is under development. With `tests` the extension host
 * runs that module's `run()`, `ended` gives its exit code, and `onLog` gets what it prints. With `language` the editor believes to have a language pack of
 * it, with no word in it: its own words stay English, those of the extension do not.
 */
export async function openWorkbench({ port, folder, file, extension, tests, onLog, language }) {
  const authority = `127.0.0.1:${port}`;
  const overHttp = extension?.startsWith('http:') ?? false;
  const browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', args: FLAGS });
  // The page only lets itself connect to its own origin; an extension served from another port needs that lifted.
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, bypassCSP: overHttp });
  const refused = new Set();
  await context.route((url) => url.protocol.startsWith('http') && url.hostname !== '127.0.0.1', (route) => {
    refused.add(route.request().url());
    return route.abort();
  });
  if (extension) {
    const development = { extensions: [address(extension, authority)], ...(tests && { extensionTestsPath: address(tests, authority) }) };
    await context.addInitScript(fillDevelopmentOptions, development);
  }
  if (language) await context.addInitScript((of) => { globalThis._VSCODE_NLS_LANGUAGE = of; }, language);
  const page = await context.newPage();
  const ended = new Promise((resolve) => {
    page.on('crash', () => resolve(new Error('the page crashed')));
    page.on('close', () => resolve(new Error('the page was closed')));
    // The two names that VS Code looks for when it runs extension tests in a browser.
    void page.exposeFunction('codeAutomationExit', resolve);
  });
  await page.exposeFunction('codeAutomationLog', (_type, args) => onLog?.(format(...args)));
  const query = new URLSearchParams(folder ? { folder } : { ew: 'true' });
  if (file) query.set('payload', JSON.stringify([['openFile', `vscode-remote://${authority}${file}`]]));
  await page.goto(`http://${authority}/?${query}`);
  return { page, ended, refused, close: () => browser.close() };
}

function address(place, authority) {
  if (!place.startsWith('http:')) return { scheme: 'vscode-remote', authority, path: place };
  const url = new URL(place);
  return { scheme: 'http', authority: url.host, path: url.pathname };
}

/**
 * Runs in the page, before its scripts. Built workbenches no longer take the extension under test from the address; the page's own settings
 * still have a slot for it, filled here when they are read. (Rewriting the document on its way makes Chromium block the page's socket.)
 */
function fillDevelopmentOptions(development) {
  const read = Element.prototype.getAttribute;
  Element.prototype.getAttribute = function (name) {
    const value = read.call(this, name);
    if (!value || name !== 'data-settings' || this.id !== 'vscode-workbench-web-configuration') return value;
    const settings = JSON.parse(value);
    return JSON.stringify({ ...settings, developmentOptions: { ...settings.developmentOptions, ...development } });
  };
}
