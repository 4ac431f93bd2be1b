// A panel beside a page, as someone uses it: what is in it, whether all can use it, and the way back to the text.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { desk, expect } from './desk.mjs';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** By what the editor calls its themes, the class that it gives a body. */
export const THEMES = { 'Visual Studio Light': 'vscode-light', 'Default High Contrast': 'vscode-high-contrast', 'Default High Contrast Light': 'vscode-high-contrast-light', 'Visual Studio Dark': 'vscode-dark' };

/** For the window that is open now. */
export function besideThePage() {
  const { folder, page, goInto, open } = desk;

  /** The page in the panel. */
  const panel = page.frameLocator('iframe.webview.ready').frameLocator('iframe#active-frame');
  const frameOfPanel = async () => (await panel.locator('body').elementHandle()).ownerFrame();

  const press = async (...keys) => { for (const key of keys) await page.keyboard.press(key); };
  const picture = async (name) => { if (process.env.SCREENSHOTS) await page.screenshot({ path: join(process.env.SCREENSHOTS, `${name}.png`) }); };

  /** What was asked in dialogs of the browser, which only a script that nobody wrote asks. */
  const dialogs = [];
  page.on('dialog', (dialog) => {
    if (dialog.type() !== 'beforeunload') dialogs.push(dialog.message());
    // Another part may have answered it.
    dialog.accept().catch(() => undefined);
  });

  /** Waits until something is so, which is looked at anew. */
  async function until(holds, what) {
    for (const end = Date.now() + 20_000; !(await holds());) {
      expect(Date.now() < end, what);
      await page.waitForTimeout(100);
    }
  }

  /** Where something is on the screen. A picture that is drawn anew takes its shapes away for a moment. */
  async function boxOf(shape) {
    let box;
    await until(async () => { box = await shape.boundingBox(); return box !== null; }, 'a shape of the picture is nowhere on the screen');
    return box;
  }

  /** Gives the keyboard to the text, wherever it is. */
  async function toText() {
    // A question that closes later gives the keyboard back to where it was.
    await page.locator('.quick-input-widget').waitFor({ state: 'hidden' });
    const there = page.locator('.monaco-editor.focused').first();
    // While a question closes, a key may go nowhere.
    await until(async () => {
      await press('Control+1');
      return there.waitFor({ timeout: 1500 }).then(() => true, () => false);
    }, 'the text does not get the keyboard');
  }
  const into = async (...place) => { await toText(); await goInto(...place); };
  const read = async (file) => { await toText(); await open(file); };

  /** A line that the text has now, all of it. The editor writes blanks of its own. */
  const written = async (line) => {
    await until(async () => (await desk.editor.locator('.view-line').allTextContents()).some((l) => l.replaceAll('\u00a0', ' ') === line), `the text has no line “${line}”`);
  };

  /** What axe finds serious in the panel. */
  async function grave() {
    const frame = await frameOfPanel();
    await frame.evaluate(AXE);
    const { passes, violations } = await frame.evaluate(() => globalThis.axe.run());
    expect(passes.length > 5, 'axe had nothing to look at');
    return violations.filter((v) => ['serious', 'critical'].includes(v.impact)).map((v) => `${v.id}: ${v.help} (${v.nodes.map((n) => n.html).join(' ')})`).join('\n');
  }

  /** Settings of the folder that is open. */
  function setHere(settings) {
    mkdirSync(join(folder, '.vscode'), { recursive: true });
    writeFileSync(join(folder, '.vscode/settings.json'), JSON.stringify(settings));
  }

  return { panel, frameOfPanel, press, picture, dialogs, until, boxOf, toText, into, read, written, grave, setHere };
}
