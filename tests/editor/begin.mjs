// The first ten minutes: a page from the list of layouts, the guide, and the page to practise on.
import { desk, expect } from './host/desk.mjs';

const { page, editor, command } = desk;
const { keyboard } = page;
const rows = page.locator('.quick-input-widget .monaco-list-row');
const guide = page.locator('.gettingStartedContainer');
const step = (title) => guide.locator('button.getting-started-step', { hasText: title });
const done = (title) => step(title).locator('.codicon-getting-started-step-checked').first().waitFor();
const squiggle = page.locator('.squiggly-error, .squiggly-warning').first();
const figures = page.locator('.statusbar-item', { hasText: 'mismatch' });

export const STEPS = {
  async 'layouts are listed, and one opens as a page of its own'() {
    await page.locator('.explorer-folders-view .monaco-list-row').first().waitFor({ timeout: 60_000 });
    await command('Platewright: New Setup');
    await rows.filter({ hasText: 'Two beams, by string' }).waitFor();
    await keyboard.type('usual master');
    await page.locator('.quick-input-widget .monaco-list-row.focused', { hasText: 'Transmission, two beams' }).waitFor();
    await keyboard.press('Enter');
    await editor.locator('.view-line', { hasText: 'Change first' }).waitFor();
    await figures.waitFor();
    expect(/0\.2/.test(await figures.innerText()), `the status bar says: ${await figures.innerText()}`);
    expect(!(await squiggle.isVisible()), 'something is underlined');
  },
  async 'the menu of new files has it too'() {
    await command('Create: New File...');
    await rows.filter({ hasText: 'New Setup' }).waitFor();
    await keyboard.press('Escape');
  },
  async 'the guide opens, with a picture that follows the theme'() {
    await command('Platewright: First Steps');
    await guide.getByText('From an empty page to a matched setup').first().waitFor();
    expect(await guide.locator('button.getting-started-step').count() === 6, 'there are not six steps');
    await keyboard.press('Control+B'); // room for the picture
    const picture = page.frameLocator('iframe.webview.ready').frameLocator('iframe#active-frame').locator('svg text', { hasText: 'splitter S1' });
    await picture.waitFor();
    const ink = await picture.evaluate((words) => getComputedStyle(words).fill);
    expect(ink !== 'rgb(0, 0, 0)' && ink !== 'none', `its letters are ${ink}`);
  },
  async 'it opens the page to practise on beside it, and the finding is there'() {
    await step('Read a finding').click();
    await guide.getByRole('button', { name: 'Open the Practice Page' }).click();
    await squiggle.waitFor();
    expect(await guide.isVisible(), 'the guide is out of sight');
    await done('Begin a page');
  },
  async 'its fix matches the arms'() {
    // What was looked at in the guide may have kept the keyboard there.
    await page.locator('.editor-instance .view-line').first().click();
    await page.locator('.monaco-editor.focused').waitFor();
    await command('Go to Next Problem in Files (Error, Warning, Info)');
    await keyboard.press('Escape');
    const fix = page.locator('.action-widget .monaco-list-row').filter({ hasText: /Shorten|Lengthen/ }).first();
    await keyboard.press('Control+.');
    await fix.waitFor();
    await keyboard.press('Enter');
    await squiggle.waitFor({ state: 'detached' });
    await done('Take the fix');
  },
  async 'nothing of it is left'() {
    await command('View: Close All Editors');
    await page.locator('.monaco-dialog-box').getByRole('button', { name: 'Don\'t Save' }).click();
    await page.locator('.tab').first().waitFor({ state: 'detached' });
    await keyboard.press('Control+B');
  },
};
