// Pages of the examples are written and read: what is offered while one types, what is shown in the text, names, folds and hovers.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { desk, expect } from './host/desk.mjs';

const { folder, page, editor, command, open, goTo, goInto, line } = desk;
const read = (name) => readFileSync(join(folder, name), 'utf8');
const write = (name, text) => writeFileSync(join(folder, name), text);
/** The first page of the manual, as far as a list can help with it. */
const FIRST = /```plate whelk\.plate\n\/\/\/.*\n([^]*?)```/.exec(readFileSync('grammar/manual.md', 'utf8'))[1];
// A brace is missing, a word is misspelt, a number has a decimal comma.
const TORN = 'setup "Torn" {\n  miror M1\n  laser red {\n    wavelength: 632,8 nm\n  spreader R1 {\n    \n';
// The whelk of the examples with one number asked for.
const SOUGHT = `setup "Sought" {
  hologram: transmission
  table: 1200 x 900 mm
  hole spacing: 25 mm
  laser red at (60, 100) mm heading 0° {
    wavelength: 632.8 nm
    tube length: 350 mm
  }
  splitter S1 at (350, 100) mm
  mirror M1 at (1100, 100) mm
  mirror M2 at (94, 420) mm
  mirror M3 at (?, 640) mm
  object whelk at (700, 400) mm {
    size: 40 x 60 x 35 mm
  }
  plate P1 at (700, 700) mm facing whelk
  beam raw from red
    -> S1
  beam reference from S1 through
    -> M1
    -> P1
  beam object from S1 reflected
    -> M2
    -> M3
    -> whelk
    -> P1
  aim mismatch: 0 mm
}
`;
// The object beam goes a long way round.
const ASTRAY = SOUGHT.replace('Sought', 'Astray').replace('(94, 420)', '(50, 525)').replace('(?, 640)', '(400, 640)').replace('  aim mismatch: 0 mm\n', '');
const UNLAID = SOUGHT.replace('Sought', 'Unlaid').replace(/ at \([^)]*\) mm(?: heading 0°| facing whelk)?/g, '').replace('  aim mismatch: 0 mm\n', '');
const DIMMED = 'use "saltmarsh-lab.plate"\nsetup "Dimmed" {\n  laser red = lab.red-12 {\n    power: 5 mW\n  }\n}\n';
write('first.plate', '');
write('torn.plate', TORN);
write('dimmed.plate', DIMMED);
write('sought.plate', SOUGHT);
write('astray.plate', ASTRAY);
write('unlaid.plate', UNLAID);

const { keyboard } = page;
const press = async (...keys) => { for (const key of keys) await keyboard.press(key); };
const list = page.locator('.suggest-widget:visible');
const rows = () => list.locator('.monaco-list-row').evaluateAll((all) => all.map((row) => row.getAttribute('aria-label')));
const chosen = (label) => list.locator('.monaco-list-row.focused').filter({ has: page.locator('.label-name', { hasText: new RegExp(`^${label.replace(/[.{}?]/g, '\\$&')}$`) }) });
const tab = (name) => page.locator('.tab.active', { hasText: name }).waitFor();

/** Asks what is offered at the cursor until that is among it, and takes it. */
async function takeOffer(title, picture) {
  const offer = page.locator('.action-widget .monaco-list-row', { hasText: title }).first();
  for (const end = Date.now() + 30_000; !(await offer.isVisible());) {
    expect(Date.now() < end, `${title} is not offered`);
    await press('Control+.');
    await page.waitForTimeout(1500);
  }
  if (picture && process.env.SCREENSHOTS) await page.screenshot({ path: join(process.env.SCREENSHOTS, `${picture}.png`) });
  // It need not stand first.
  await offer.hover({ force: true });
  await offer.click();
}

/** As fast as a good typist. */
const type = (text) => keyboard.type(text, { delay: 60 });

/** Types, waits until a list offers `label` first, and takes it. */
async function take(typed, label) {
  await type(typed);
  await chosen(label).waitFor();
  await press('Enter');
  await chosen(label).waitFor({ state: 'hidden' });
}
/** The same for what stands further down in the list. */
async function find(typed, label) {
  await type(typed);
  // Whoever types while the list is still being made sometimes has to ask for it.
  await list.waitFor({ timeout: 5000 }).catch(() => press('Control+Space'));
  await list.waitFor();
  for (let i = 0; i < 12 && !(await chosen(label).isVisible()); i++) await press('ArrowDown');
  await take('', label);
}
/** A value of a stop that has a list of words, the first of which is right. */
const agree = async (word) => { await chosen(word).waitFor(); await press('Tab'); await chosen(word).waitFor({ state: 'hidden' }); };
const told = async (words) => { await command('Show or Focus Hover'); await page.locator('.monaco-hover:visible').filter({ hasText: words }).first().waitFor(); await press('Escape', 'Escape'); };

export const STEPS = {
  async 'the first page of the manual is written from lists'() {
    await page.locator('.explorer-folders-view .monaco-list-row', { hasText: 'first.plate' }).dblclick({ timeout: 60_000 });
    await tab('first.plate');
    await page.locator('.monaco-editor.focused').waitFor();
    await page.locator('.statusbar-item', { hasText: 'Hologram Setup' }).waitFor();
    // Until the server has started there is a list that says that it is empty.
    for (const end = Date.now() + 60_000; !(await chosen('setup').isVisible());) {
      expect(Date.now() < end, 'nothing is offered');
      await press('Escape', 'Control+Space');
      await page.waitForTimeout(500);
    }
    await press('Escape');
    await take('se', 'setup');
    await keyboard.type('Whelk shell');
    await press('Tab');
    await take('ho', 'hologram');
    await agree('transmission');
    for (const [typed, kind, name] of [['las', 'laser'], ['spl', 'splitter'], ['obj', 'object', 'whelk'], ['plat', 'plate']]) {
      await press('Enter');
      await take(typed, kind);
      await keyboard.type(name ?? '');
      await press('Tab');
    }
    await press('Enter');
    await beam('raw', 'red', ['S1', ': 350 mm']);
    await beam('reference', 'S1 through', ['P1', ': 1471 mm']);
    await beam('object', 'S1 reflected', ['whelk', ': 1171 mm'], ['P1', ': 300 mm']);
    await desk.save();
    expect(read('first.plate') === FIRST.trimEnd(), `written was\n${read('first.plate')}`);
  },
  async 'a fact of the setup and a thing of the same name are told apart'() {
    await goTo(2);
    await press('Control+Shift+K', 'ArrowUp', 'End', 'Enter');
    await type('hol');
    await list.waitFor();
    const two = (await rows()).filter((row) => row.startsWith('hologram,'));
    expect(two.length === 2 && two[0].includes('transmission, reflection or rainbow') && two[1].includes('A finished hologram'), `the list has ${two.join(' and ')}`);
    expect((await rows()).every((row) => !row.endsWith(', Text')), 'the list has words that only stand on the page');
    await take('', 'hologram');
    await agree('transmission');
    await desk.save();
    expect(read('first.plate') === FIRST.trimEnd(), `written was\n${read('first.plate')}`);
  },
  async 'a whole thing has stops for its values'() {
    await goInto(FIRST, 'plate P1');
    await press('End', 'Enter');
    await find('mir', 'mirror { … }');
    await keyboard.type('M7');
    await press('Tab');
    await keyboard.type('75 mm');
    await press('Tab');
    await agree('aluminium');
    await press('Tab');
    await desk.save();
    expect(/\n {2}mirror M7 \{\n {4}diameter: 75 mm\n {4}coating: aluminium\n {4}loss: 12% ± 5 points\n {2}\}\n/.test(read('first.plate')), `written was\n${read('first.plate')}`);
  },
  async 'in a torn page there are facts by their first letters, values behind a colon, and units'() {
    await open('torn.plate');
    await goTo(6);
    await press('End');
    await take('focal le', 'focal length');
    await keyboard.type('9 mm');
    await press('Tab', 'Enter');
    await take('pinhole:', '10 µm');
    await press('Enter');
    await find('diameter: 8 m', 'mm');
    await desk.save();
    expect(read('torn.plate').startsWith(`${TORN.trimEnd()}\n    focal length: 9 mm\n    pinhole: 10 µm\n    diameter: 8 mm\n`), `written was\n${read('torn.plate')}`);
  },
  async 'lengths, totals and mismatch are shown in the text'() {
    await open('whelk-on-the-table.plate');
    await goInto(read('whelk-on-the-table.plate'), 'beam object');
    await line(/beam.reference.*in.all.1473\.\d.±/).waitFor();
    await line(/->.M1.*752/).waitFor(); // 750 mm by the places, 752 mm as it was measured
    // from (700, 400) to (700, 700) mm
    await line(/->.P1.*300.mm.{0,2}·.mismatch/).waitFor();
  },
  async 'each kind can be turned off in the settings'() {
    const total = editor.locator('.view-line').filter({ hasText: /in.all.1473/ });
    for (const wanted of [false, true]) {
      await command('Preferences: Open Settings (UI)');
      await page.locator('.settings-editor .suggest-input-container').first().click();
      await press('Control+A');
      await keyboard.type('platewright.hints.armTotals');
      const box = page.locator('.settings-editor .setting-item-contents', { hasText: 'Arm Totals' }).locator('.setting-value-checkbox');
      await box.and(page.locator(`[aria-checked="${!wanted}"]`)).click();
      await box.and(page.locator(`[aria-checked="${wanted}"]`)).waitFor();
      // The editor writes a setting some time after the click, and forgets it when it is closed before.
      for (const end = Date.now() + 20_000; /"platewright\.hints\.armTotals": false/.test(desk.settings()) === wanted;) {
        expect(Date.now() < end, 'the setting is not written');
        await page.waitForTimeout(100);
      }
      await press('Escape'); // newer editors show the settings over the page
      await open('whelk-on-the-table.plate');
      await line(/->.P1.*300.mm.{0,2}·.mismatch/).waitFor();
      await total.waitFor({ state: wanted ? 'visible' : 'detached' });
    }
  },
  async 'an item of an inventory is renamed in all pages, and back in one step'() {
    const before = new Map(readdirSync(folder).map((name) => [name, read(name)]));
    await goInto(before.get('whelk-on-the-table.plate'), 'red-12', 2);
    await press('F2');
    await page.locator('.rename-box input:focus').waitFor();
    await press('Control+A');
    await keyboard.type('red-tube');
    await press('Enter');
    await line(/lab\.red-tube/).waitFor();
    await saveAll();
    for (const [name, text] of before) expect(read(name) === text.replaceAll(/\bred-12\b/g, 'red-tube'), `${name} is not what it should be`);
    expect(before.get('readings.plate') !== read('readings.plate') && before.get('saltmarsh-lab.plate') !== read('saltmarsh-lab.plate'), 'only one page was changed');
    // The editor lets go of the pages that are not in sight some time after they are saved; in the middle of that it takes back the one that is in sight only.
    await page.waitForTimeout(2000);
    await press('Control+Z');
    await line(/lab\.red-12/).waitFor();
    // The pages that are not in sight are brought back after the one that is.
    const back = () => [...before].every(([name, text]) => read(name) === text);
    for (let n = 0; n < 20 && !back(); n++) {
      await saveAll();
      await page.waitForTimeout(500);
    }
    for (const [name, text] of before) expect(read(name) === text, `${name} is not what it was`);
  },
  async 'a name leads to its declaration, a beam in its page, an item in the inventory'() {
    const text = read('whelk-on-the-table.plate');
    await goInto(text, 'reference: -3 mm');
    await press('F12');
    await at(text, 'beam reference from');
    await goInto(text, 'fine-grain');
    await press('F12');
    await tab('saltmarsh-lab.plate');
    await at(read('saltmarsh-lab.plate'), 'plate fine-grain');
  },
  async 'blocks and beams are folded'() {
    await open('whelk-by-string.plate');
    await goTo(1);
    await line(/^\s*->.M3/).waitFor();
    await command('Fold All');
    await line(/^\s*->.M3/).waitFor({ state: 'detached' });
    await command('Unfold All');
    await line(/^\s*->.M3/).waitFor();
  },
  async 'pointing at a reading tells what became of it'() {
    const text = read('readings.plate');
    await open('readings.plate');
    await goInto(text, 'measured object - reference', 3);
    await told('6 mm less than planned (0 mm)');
    await goInto(text, 'measured object at P1:', 3);
    await told('What rests on it:');
  },
  async 'pointing at the name of a variant tells what comes of it'() {
    await open('variants.plate');
    await goInto(read('variants.plate'), '"closer plate"', 4);
    await told(/What comes of it:\s*mismatch: −1\.6 → −9\.3 mm/);
  },
  async 'pointing at what a page says otherwise than the inventory tells both'() {
    await open('dimmed.plate');
    await goInto(DIMMED, 'power');
    await told('5 mW for red, instead of lab.red-12’s 12 mW ± 10%.');
  },
  async 'a value that is written ? stands behind it, and the light bulb writes it in'() {
    await open('sought.plate');
    await goInto(SOUGHT, 'mirror M3');
    // From (94, 420) over M3 to (700, 400) mm it is 760.5 mm by x = 400 mm, as long as the reference leaves for it.
    await line(/mirror.M3.at.\(\?.?=.400,.640\).mm/).waitFor({ timeout: 60_000 });
    if (process.env.SCREENSHOTS) await page.screenshot({ path: join(process.env.SCREENSHOTS, 'sought.png') });
    await takeOffer('Write in 400 mm', 'write-in');
    await line(/mirror.M3.at.\(400,.640\).mm$/).waitFor();
    await press('Control+Z');
    await line(/mirror.M3.at.\(\?/).waitFor();
    await saveAll();
  },
  async 'a finding that a value cures has a fix that says what it does'() {
    await open('astray.plate');
    await goInto(ASTRAY, 'beam object', 6);
    await takeOffer(/^Move M2 .* mm .*: object beam \d+ mm too long → matched/, 'a-computed-fix');
    await line(/mirror.M2.at.\((?!50,.525)\d+,.\d+\).mm$/).waitFor();
    await press('Control+Z');
    await line(/mirror.M2.at.\(50,.525\).mm$/).waitFor();
    await saveAll();
  },
  async 'a setup without places is laid out'() {
    await open('unlaid.plate');
    await goInto(UNLAID, 'setup', 2);
    await takeOffer(/^Lay it out.*: mismatch/, 'laid-out');
    await line(/plate.P1.at.\(\d+,.\d+\).mm.facing.whelk$/).waitFor();
    if (process.env.SCREENSHOTS) { await command('Show the Bench Plan'); await page.waitForTimeout(3000); await page.screenshot({ path: join(process.env.SCREENSHOTS, 'laid-out-plan.png') }); }
    await saveAll();
  },
  // The last: it leaves the keyboard in the answer.
  async 'the light bulb at the outcome of a shot opens why it came out so, beside the page'() {
    await open('shots.plate');
    await goInto(read('shots.plate'), 'outcome: "dull at the back"', 3);
    await takeOffer('Why “dull at the back”?');
    const answer = page.frameLocator('iframe.webview.ready').frameLocator('iframe#active-frame');
    // Suspects are ranked, and each has a test.
    await answer.locator('body', { hasText: 'dull at the back' }).filter({ hasText: 'Put a white stick along the depth of the object' }).waitFor({ timeout: 60_000 });
  },
};

/** A beam with its legs, below what stands there. */
async function beam(name, start, ...legs) {
  await press('Enter');
  // Behind a leg the line is indented as the leg is.
  if (name !== 'raw') await press('Backspace');
  await take('beam', 'beam');
  await keyboard.type(name);
  await press('Tab');
  await agree(start);
  for (const [target, length] of legs) {
    await press('Enter');
    await find('->', target);
    await keyboard.type(length);
  }
}

/** A page that is brought back behind the others turns dirty after they are saved: then all are saved once more. */
async function saveAll(again = 4) {
  await command('File: Save All');
  const saved = page.locator('.tab.dirty').first().waitFor({ state: 'detached', timeout: 5000 });
  if (again > 0 && !(await saved.then(() => true, () => false))) return saveAll(again - 1);
  await saved;
}

/** The cursor is in the line of `text` that has these words. */
async function at(text, words) {
  const number = text.slice(0, text.indexOf(words)).split('\n').length;
  await page.locator('.statusbar-item', { hasText: new RegExp(`Ln ${number}, Col`) }).waitFor();
}
