// Takes the pictures of the README that show the page beside its plan, as the editor shows them now. They are kept in the folder PICTURES.
//   PICTURES=client/media node tests/editor/by-hand.mjs STATE FOLDER_TO_OPEN pictures
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { desk } from './host/desk.mjs';
import { besideThePage, THEMES } from './host/panel.mjs';

const { page, command, folder, open } = desk;
const { panel, press, setHere, toText, until } = besideThePage();
const kept = (name) => join(process.env.PICTURES ?? 'out/pictures', `${name}.png`);

/** Only what is looked at: no lists of files, no small picture of the text. */
const BARE = { 'workbench.activityBar.location': 'hidden', 'editor.minimap.enabled': false, 'breadcrumbs.enabled': false, 'window.commandCenter': false, 'workbench.layoutControl.enabled': false, 'workbench.statusBar.visible': true };
const PAGE = 'whelk-on-the-table.plate';
const text = readFileSync(join(folder, PAGE), 'utf8');

const drawn = panel.locator('#view [data-item="M3"]').first();
const look = (label) => panel.locator('#looks select').selectOption({ label });
const shows = (words) => panel.locator('#view text', { hasText: words }).first().waitFor();
const settled = () => page.waitForTimeout(700);

/** Several pictures as one, two in a row. */
async function sheet(name, shots, width) {
  const other = await page.context().newPage();
  await other.setViewportSize({ width: 2 * width + 18, height: 800 });
  await other.setContent(`<body style="margin:0"><div id="sheet" style="display:grid;grid-template-columns:repeat(2,${width}px);gap:6px;padding:6px;background:#888">${shots.map((s) => `<img style="width:100%;display:block" src="data:image/png;base64,${s.toString('base64')}">`).join('')}</div></body>`);
  await other.locator('#sheet').screenshot({ path: kept(name) });
  await other.close();
}

export const STEPS = {
  async 'the page beside its plan'() {
    setHere(BARE);
    await page.locator('.explorer-folders-view .monaco-list-row', { hasText: PAGE }).waitFor({ timeout: 60_000 });
    await open(PAGE);
    await command('View: Toggle Primary Side Bar Visibility');
    await page.setViewportSize({ width: 1344, height: 720 });
    await command('Platewright: Show the Bench Plan');
    await drawn.waitFor({ timeout: 60_000 });
    await toText();
    await desk.goInto(text, 'mirror M3');
    await panel.locator('#view [data-item="M3"][aria-current="true"]').first().waitFor();
    await settled();
    await page.screenshot({ path: kept('the-plan-beside-the-text') });
  },
  async 'other views, and the dark'() {
    await page.setViewportSize({ width: 1300, height: 640 });
    const frame = page.locator('.editor-group-container', { has: page.locator('.tab', { hasText: 'Bench Plan' }) }).last();
    const shots = [];
    const shot = async () => { await settled(); shots.push(await frame.screenshot()); };
    await look('the arms unrolled');
    await panel.locator('#view [data-item="object.5"]').first().waitFor();
    await shot();
    await look('the light over the plate');
    const plan = panel.locator('#plan');
    await until(async () => {
      const box = await plan.boundingBox();
      await page.mouse.move(box.x + box.width / 2 + Math.random() * 10, box.y + box.height / 2);
      return /: \S/.test(await panel.locator('#under').textContent());
    }, 'no figure under the pointer');
    await shot();
    await look('the object as the plate sees it');
    await shows('seen from');
    await shot();
    await open('limpet-for-the-porch.plate');
    await panel.locator('#looks option', { hasText: 'as it hangs' }).waitFor({ state: 'attached' });
    await look('the finished hologram as it hangs');
    await shows('spot');
    await shot();
    await open(PAGE);
    await until(async () => !(await panel.locator('#looks option', { hasText: 'the table from above' }).isDisabled()), 'there is no table');
    await look('the table from above');
    await drawn.waitFor();
    await sheet('views-of-the-plan', shots, 640);
  },
  async 'in four themes'() {
    const shots = [];
    await page.setViewportSize({ width: 1000, height: 640 });
    for (const theme of ['Visual Studio Light', 'Visual Studio Dark', 'Default High Contrast Light', 'Default High Contrast']) {
      setHere({ ...BARE, 'workbench.colorTheme': theme });
      await panel.locator(`body.${THEMES[theme]}`).waitFor();
      await toText();
      await desk.goInto(text, 'mirror M3');
      await page.mouse.move(0, 0);
      await settled();
      shots.push(await page.screenshot());
    }
    await sheet('the-plan-in-four-themes', shots, 640);
    setHere({});
  },
  async 'a finding and what can be done'() {
    await page.setViewportSize({ width: 1280, height: 720 });
    await command('View: Close All Editors');
    await open('whelk.plate');
    const problem = page.locator('.markers-panel .monaco-list-row', { hasText: 'arms-mismatched' });
    await command('Problems: Focus on Problems View');
    await problem.dblclick();
    await page.locator('.monaco-editor.focused').waitFor();
    await settled();
    await press('Control+.');
    await page.locator('.action-widget .monaco-list-row').filter({ hasText: 'Shorten' }).first().waitFor();
    await settled();
    await page.screenshot({ path: kept('first-light') });
  },
};
