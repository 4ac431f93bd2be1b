// The documentation site in a browser, served on this machine with everything else out of reach: pages that can be changed, search, and what axe says.
//   node tests/editor/site.mjs
//   SCREENSHOTS   folder for pictures: light, dark, and as wide as a phone; none are kept without it
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { serve } from '../../client/site/serve.mjs';
import { end, step } from '../packages/steps.mjs';
import { expect } from './host/desk.mjs';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const FLAGS = ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'];
const folder = mkdtempSync(join(tmpdir(), 'platewright-site-'));
execFileSync(process.execPath, ['client/site/build.mjs', folder], { stdio: ['ignore', 'ignore', 'inherit'] });
const site = await serve(folder);
const browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', args: FLAGS });
const elsewhere = new Set();
const troubles = [];

/** A page of the site, as somebody sees it whose screen is set up like that. */
async function open(at, settings = {}) {
  const context = await browser.newContext({ viewport: { width: 1280, height: 860 }, permissions: ['clipboard-read', 'clipboard-write'], ...settings });
  await context.route(url => url.protocol.startsWith('http') && !url.href.startsWith(site.url), route => { elsewhere.add(route.request().url()); return route.abort(); });
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  page.on('console', m => { if (m.type() === 'error') troubles.push(m.text()); });
  page.on('pageerror', e => troubles.push(e.message));
  await page.goto(`${site.url}/${at}`);
  return page;
}

/** The first page of the language that stands there, being changed. */
async function edit(page) {
  const block = page.locator('.page').first();
  await block.getByRole('button', { name: 'Edit' }).click();
  const text = block.getByRole('textbox');
  await block.locator('.plan svg text').first().waitFor().catch(async e => { throw new Error(`there is no plan; told is “${await block.locator('.kept').innerText()}”, and ${troubles.join('; ')}`, { cause: e }); });
  return { block, text, finding: code => block.locator('.findings li', { hasText: code }), note: block.locator('.kept'), plan: block.locator('.plan svg') };
}

/** Puts the cursor behind words of a text and types. */
async function typeBehind(page, text, words, typed, back = 0) {
  await text.evaluate((area, [w, n]) => {
    const at = area.value.indexOf(w);
    if (at < 0) throw new Error(`“${w}” is not in the text`);
    area.focus();
    area.setSelectionRange(at + w.length - n, at + w.length);
  }, [words, back]);
  await page.keyboard.type(typed);
}

async function grave(page) {
  await page.evaluate(AXE);
  const { passes, violations } = await page.evaluate(() => globalThis.axe.run());
  expect(passes.length > 10, 'axe had nothing to look at');
  return violations.filter(v => ['serious', 'critical'].includes(v.impact)).map(v => `${v.id}: ${v.help} (${v.nodes.slice(0, 3).map(n => n.html).join(' ')})`).join('\n');
}

async function picture(page, name) {
  if (!process.env.SCREENSHOTS) return;
  mkdirSync(process.env.SCREENSHOTS, { recursive: true });
  await page.screenshot({ path: join(process.env.SCREENSHOTS, `site-${name}.png`) });
}

const EXAMPLE = 'examples/whelk-on-the-table/';

const STEPS = {
  async 'a leg that is written longer brings its finding, and undo takes it back'() {
    const page = await open('examples/whelk-by-string/');
    const { text, finding, block } = await edit(page);
    await block.locator('.figures').waitFor();
    expect(await finding('arms-mismatched').count() === 0, 'the example has the finding already');
    const leg = /-> whelk: (\d+)/.exec(await text.inputValue());
    await typeBehind(page, text, leg[0], String(Number(leg[1]) + 90), leg[1].length);
    await finding('arms-mismatched').waitFor();
    await picture(page, 'changed');
    await block.getByRole('button', { name: 'Back to the original' }).click();
    await finding('arms-mismatched').waitFor({ state: 'detached' });
    await page.keyboard.press('Control+Z');
    await finding('arms-mismatched').waitFor();
  },
  async 'a finding leads to its line before anything is changed'() {
    const page = await open('examples/whelk-too-long/');
    await page.locator('.findings li', { hasText: 'arms-mismatched' }).getByRole('button').click();
    const chosen = await page.getByRole('textbox', { name: 'Text of' }).evaluate(area => [area === document.activeElement, area.value.slice(area.selectionStart, area.selectionEnd)]);
    expect(chosen[0] && chosen[1] === 'object', `chosen is ${chosen}`);
  },
  async 'a mirror that is moved in the text moves in the plan, with what lies in another file'() {
    const page = await open('examples/whelk-on-the-table/');
    const { text, plan, finding } = await edit(page);
    const placed = () => plan.locator('[data-item="M2"]').first().evaluate(e => e.outerHTML);
    const before = await placed();
    await typeBehind(page, text, 'mirror M2 at (94', '150', 2);
    await page.waitForFunction(was => document.querySelector('.plan svg [data-item="M2"]').outerHTML !== was, before);
    expect(await finding('import-unreadable').count() === 0, 'the inventory is not found');
  },
  async 'a line that cannot be read is told at its place, and the last plan stays, marked as old'() {
    const page = await open('examples/whelk-on-the-table/');
    const { block, text, note, plan } = await edit(page);
    const line = (await text.inputValue()).split('\n').findIndex(l => l.includes('mirror M2')) + 1;
    await typeBehind(page, text, 'mirror M2 at (', '(');
    await note.filter({ hasText: `Line ${line} cannot be read` }).waitFor();
    expect(await block.evaluate(b => b.classList.contains('old')), 'the plan is not marked as old');
    expect(await plan.locator('[data-item="M2"]').count() > 0, 'the plan is gone');
    const error = block.locator('.findings .error button').first();
    await error.click();
    const at = await text.evaluate(area => area.value.slice(0, area.selectionStart).split('\n').length);
    expect(at === line, `the click went to line ${at} instead of ${line}`);
    await page.keyboard.press('Control+Z');
  },
  async 'markup in a name stays text'() {
    const page = await open('examples/whelk-by-string/');
    const { text, block } = await edit(page);
    const name = '<img src=x onerror=alert(1)>';
    page.on('dialog', () => troubles.push('a script ran'));
    await typeBehind(page, text, 'setup "Whelk shell', name, 'Whelk shell'.length);
    await block.locator('.plan svg').filter({ hasText: name }).waitFor();
    expect(await block.locator('img').count() === 0, 'it became an element');
  },
  async 'letters lie on those in colours beneath them, wherever lines break'() {
    const page = await open('examples/whelk-by-string/', { viewport: { width: 390, height: 844 } });
    const { text, block } = await edit(page);
    await typeBehind(page, text, 'plate P1', ' // one line that is so long that it has to be broken on a screen as narrow as this\n\n');
    const [area, code] = await Promise.all([text.evaluate(a => [a.scrollHeight, a.clientHeight]), block.locator('.text code').evaluate(c => c.getBoundingClientRect().height)]);
    expect(Math.abs(area[0] - code) <= 2 && area[0] - area[1] <= 2, `the text is ${area[0]} high in a field of ${area[1]}, its colours are ${code}`);
    await picture(page, 'phone');
  },
  async 'the keyboard writes, indents and leaves'() {
    const page = await open('examples/whelk-by-string/');
    const { text } = await edit(page);
    await typeBehind(page, text, '  plate P1', ' {');
    await page.keyboard.press('Enter');
    await page.keyboard.type('size: 63 x 63 mm');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Shift+Tab');
    await page.keyboard.type('}');
    expect((await text.inputValue()).includes('  plate P1 {\n    size: 63 x 63 mm\n  }\n'), `it is ${JSON.stringify(await text.inputValue())}`);
    await page.keyboard.press('Escape');
    await page.keyboard.press('Tab');
    expect(await text.evaluate(area => area !== document.activeElement), 'Tab does not leave the text');
  },
  async 'what is copied and downloaded is the text as it stands'() {
    const page = await open('examples/whelk-by-string/');
    const { text, block } = await edit(page);
    await typeBehind(page, text, 'plate P1', ' // tonight');
    const wanted = `${await text.inputValue()}\n`;
    await block.getByRole('button', { name: 'Copy' }).click();
    await block.getByRole('button', { name: 'Copied' }).waitFor();
    expect(await page.evaluate(() => navigator.clipboard.readText()) === wanted, 'something else was copied');
    const [download] = await Promise.all([page.waitForEvent('download'), block.getByRole('button', { name: 'Download' }).click()]);
    expect(download.suggestedFilename() === 'whelk-by-string.plate', `it is called ${download.suggestedFilename()}`);
    expect(readFileSync(await download.path(), 'utf8') === wanted, 'something else was downloaded');
  },
  async 'another view and a variant are chosen'() {
    const page = await open('examples/whelk-on-the-table/');
    const { block, plan } = await edit(page);
    await block.getByLabel('View').selectOption('arms');
    await plan.filter({ hasText: 'Arms of P1' }).waitFor();
    const before = await block.locator('.figures').innerText();
    await block.getByLabel('Variant').selectOption({ index: 1 });
    await page.waitForFunction(was => document.querySelector('.figures').innerText !== was, before);
    await block.getByText('The page of results').click();
    await block.locator('details pre', { hasText: 'Paths to P1' }).waitFor();
  },
  async 'a search finds a finding by its code and goes there'() {
    const page = await open('manual/');
    await page.keyboard.press('/');
    await page.keyboard.type('arms-mism');
    await page.locator('#found a', { hasText: 'arms-mismatched' }).first().waitFor();
    await picture(page, 'search');
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/findings\/#arms-mismatched$/);
  },
  async 'without a script, text, plan and findings are there'() {
    const page = await open('examples/whelk-too-long/', { javaScriptEnabled: false });
    await page.locator('.findings li', { hasText: 'arms-mismatched' }).waitFor();
    expect((await page.locator('.text code').innerText()).includes('tube length'), 'the text is not there');
    await page.waitForLoadState('load');
    expect(await page.locator('.plan img').getAttribute('alt') !== '', 'the plan has no words');
    expect(await page.locator('button').count() === 0, 'there are buttons that do nothing');
  },
  ...Object.fromEntries([['light', {}, ['', 'manual/', EXAMPLE]], ['dark', { colorScheme: 'dark' }, ['', EXAMPLE]], ['high contrast', { contrast: 'more' }, [EXAMPLE]], ['forced colours', { colorScheme: 'dark', forcedColors: 'active' }, [EXAMPLE]]].map(([name, settings, pages]) => [`in ${name} it can be read and used by all`, async () => {
    for (const at of pages) {
      const page = await open(at, settings);
      if (at === EXAMPLE) await edit(page);
      const found = await grave(page);
      await picture(page, `${name}-${at.split('/').at(-2) ?? 'first'}`);
      expect(found === '', `${at}: ${found}`);
    }
  }])),
  async 'nothing was asked for elsewhere, and nothing went wrong'() {
    expect(elsewhere.size === 0, `asked for: ${[...elsewhere].join(', ')}`);
    expect(troubles.length === 0, troubles.join('\n'));
  },
};

for (const [name, run] of Object.entries(STEPS)) {
  await step(name, run);
  for (const context of browser.contexts()) await context.close();
}
await browser.close();
await site.stop();
rmSync(folder, { recursive: true, force: true });
end('');
