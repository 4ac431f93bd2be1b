// Uses the packed extension as someone at the bench does: with mouse and keyboard, in the workbench.
//   node tests/editor/user.mjs VSIX FOLDER_TO_OPEN
//   HOST          folder of an installed host
//   SCREENSHOTS   folder for one picture a step; none are kept without it
import { mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { installExtension, startServer } from './host/server.mjs';
import { openWorkbench } from './host/workbench.mjs';

const [vsix, folder] = process.argv.slice(2);
const host = process.env.HOST;
const file = join(folder, 'whelk.plate');
const original = readFileSync(file, 'utf8');
const state = mkdtempSync(join(tmpdir(), 'platewright-user-'));

installExtension(host, state, vsix);
const server = await startServer(host, state);
const workbench = await openWorkbench({ port: server.port, folder });
const { page } = workbench;
page.setDefaultTimeout(20_000);

const editor = page.locator('.editor-instance .monaco-editor').first();
const squiggle = editor.locator('.squiggly-error, .squiggly-warning, .squiggly-info').first();
const problem = page.locator('.markers-panel .monaco-list-row', { hasText: 'arms-mismatched' });
const fix = page.locator('.action-widget .monaco-list-row').filter({ hasText: /Shorten|Lengthen/ }).first();
const hover = page.locator('.monaco-hover:visible');

const STEPS = {
  async 'opening the page underlines the object beam'() {
    await page.locator('.explorer-folders-view .monaco-list-row', { hasText: 'whelk.plate' }).dblclick({ timeout: 60_000 });
    await squiggle.waitFor({ timeout: 60_000 });
  },
  async 'the finding is listed among the problems'() {
    await command('Problems: Focus on Problems View');
    await problem.waitFor();
    expect(/\b84\b/.test(await problem.innerText()), `the row does not say 84: ${await problem.innerText()}`);
  },
  async 'pointing at the underlined words says what will be seen'() {
    await problem.dblclick(); // brings it into view
    await page.locator('.monaco-editor.focused').waitFor();
    // The editor draws its lines anew while it scrolls, so that the word may move away from under the mouse.
    const told = hover.filter({ hasText: /\b84\b/ }).first();
    for (const end = Date.now() + 20_000; !(await told.isVisible());) {
      expect(Date.now() < end, 'nothing is told');
      await pointAt('object', 'reflected');
      await page.waitForTimeout(500);
      if (!(await told.isVisible())) await pointAt('reflected');
    }
  },
  async 'pointing at a kind tells its facts'() {
    await page.keyboard.press('Escape');
    await page.keyboard.press('Control+Home');
    await pointAt('laser');
    await hover.filter({ hasText: 'tube length' }).first().waitFor();
  },
  async 'the light bulb offers to change a leg'() {
    await page.keyboard.press('Escape');
    await problem.dblclick();
    await page.locator('.monaco-editor.focused').waitFor();
    await editor.locator('.codicon-light-bulb:visible, [class*="lightbulb"]:visible').first().click();
    await fix.waitFor();
  },
  async 'taking it changes one line, and the finding goes'() {
    await fix.hover({ force: true }); // until the mouse has moved, a shield lies over the menu
    await fix.click();
    await problem.waitFor({ state: 'detached' });
    await squiggle.waitFor({ state: 'detached' });
    const [before, after] = [original.split('\n'), (await saved()).split('\n')];
    const changed = after.filter((line, n) => line !== before[n]);
    expect(after.length === before.length && changed.length === 1, `changed lines: ${JSON.stringify(changed)}`);
  },
  async 'undo brings the text and the finding back'() {
    await page.keyboard.press('Control+Z');
    await problem.waitFor();
    await squiggle.waitFor();
    expect(await saved() === original, 'the text is not what it was');
  },
  async 'the formatter tidies blanks'() {
    await page.keyboard.press('Control+Home');
    for (const key of ['ArrowDown', 'ArrowDown', 'End']) await page.keyboard.press(key);
    await page.keyboard.type('    ');
    await page.keyboard.press('Home');
    await page.keyboard.type('      ');
    expect(await saved() !== original, 'the page is not untidy');
    await command('Format Document');
    await editor.locator('.view-line').filter({ hasText: /^\s{2}hologram/ }).waitFor();
    expect(await saved() === original, 'the text is not what it was');
  },
  async 'its commands are in the palette'() {
    await page.keyboard.press('F1');
    await page.keyboard.type('Platewright:');
    const row = page.locator('.quick-input-widget .monaco-list-row', { hasText: 'Platewright:' });
    await row.nth(1).waitFor();
    await page.keyboard.press('Escape');
  },
};

let [passed, failed] = [0, 0];
for (const [name, step] of Object.entries(STEPS)) {
  try {
    await step();
    passed++;
    console.log(`  passed  ${name}`);
  } catch (error) {
    failed++;
    console.log(`  FAILED  ${name}\n${error.stack}`);
  }
  await screenshot(name);
  if (failed > 0) break; // the steps rest on one another
}
if (workbench.refused.size > 0) console.log('refused requests to other machines:', [...workbench.refused]);
await workbench.close();
await server.stop();
rmSync(state, { recursive: true, force: true });
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed > 0 ? 1 : 0);

async function command(title) {
  await page.keyboard.press('F1');
  await page.locator('.quick-input-widget input').first().waitFor();
  await page.keyboard.type(title);
  await page.locator('.quick-input-widget .monaco-list-row', { hasText: title }).first().waitFor();
  await page.keyboard.press('Enter');
}

/** Moves the mouse onto a word, which may be only a part of an element; `beside` is another word of its line. */
async function pointAt(word, beside = word) {
  const { x, y } = await editor.locator('.view-line').filter({ hasText: beside }).first().evaluate((line, wanted) => {
    const walker = document.createTreeWalker(line, NodeFilter.SHOW_TEXT);
    while (walker.nextNode()) {
      const at = walker.currentNode.data.indexOf(wanted);
      if (at < 0) continue;
      const range = document.createRange();
      range.setStart(walker.currentNode, at);
      range.setEnd(walker.currentNode, at + wanted.length);
      const box = range.getBoundingClientRect();
      return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    }
    throw new Error(`'${wanted}' is not in one piece`);
  }, word);
  await page.mouse.move(x, y, { steps: 5 });
}

/** The changed text, as it is after saving it. */
async function saved() {
  await page.locator('.tab.dirty').waitFor();
  await page.keyboard.press('Control+S');
  await page.locator('.tab.dirty').waitFor({ state: 'detached' });
  return readFileSync(file, 'utf8');
}

async function screenshot(name) {
  if (!process.env.SCREENSHOTS) return;
  mkdirSync(process.env.SCREENSHOTS, { recursive: true });
  const count = String(passed + failed).padStart(2, '0');
  await page.screenshot({ path: join(process.env.SCREENSHOTS, `${count}-${name.replaceAll(/\W+/g, '-')}.png`) });
}

function expect(held, what) {
  if (!held) throw new Error(what);
}
