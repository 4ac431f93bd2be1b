// A page, its finding, and what is done about it.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { desk, expect } from './host/desk.mjs';

const file = join(desk.folder, 'whelk.plate');
const original = readFileSync(file, 'utf8');
const { page, editor, command, pointAt } = desk;

const squiggle = editor.locator('.squiggly-error, .squiggly-warning, .squiggly-info').first();
const problem = page.locator('.markers-panel .monaco-list-row', { hasText: 'arms-mismatched' });
const fix = page.locator('.action-widget .monaco-list-row').filter({ hasText: /Shorten|Lengthen/ }).first();
const hover = page.locator('.monaco-hover:visible');

export const STEPS = {
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
    const bulb = editor.locator('.codicon-light-bulb:visible, [class*="lightbulb"]:visible').first();
    await bulb.waitFor();
    // The first line of the setup may lie over it, as it stays in sight.
    await bulb.click({ timeout: 3000 }).catch(() => page.keyboard.press('Control+.'));
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

/** The changed text, as it is after saving it. */
async function saved() {
  await desk.save();
  return readFileSync(file, 'utf8');
}
