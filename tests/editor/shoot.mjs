// An evening at the table, in the workbench: readings one after the other, a plate shot by the clock, and what came out next morning.
import { mkdirSync, readFileSync, rmdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { desk, expect } from './host/desk.mjs';
import { heard, onsets, pitch } from './host/heard.mjs';
import { besideThePage, THEMES } from './host/panel.mjs';

const { folder, page, command, open } = desk;
const { frameOfPanel, grave, panel, picture, press, setHere, toText, until } = besideThePage();
const { keyboard } = page;

const PAGE = 'whelk-tonight.plate';
const text = `/// A short evening: the table rests for four seconds, and the shutter is open for three.
setup "Whelk tonight" {
  hologram: transmission
  settle: 4 s
  exposure: 3 s
  room {
    safelight: green
    temperature: 19.5 °C
  }
  laser red {
    wavelength: 632.8 nm
    power: 10 mW ± 5%
    coherence length: 200 mm
  }
  splitter S1 {
    reflects: 80%
  }
  mirror M1
  mirror M2
  object whelk {
    depth: 35 mm
  }
  plate P1 {
    sensitive to: red
    batch: "box 3"
  }

  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> M1: 750 mm ± 2 mm
    -> P1: 721 mm ± 2 mm
  beam object from S1 reflected
    -> M2: 410 mm ± 2 mm
    -> whelk: 761 mm ± 3 mm
    -> P1: 300 mm ± 3 mm
}
`;
writeFileSync(join(folder, PAGE), text);
/** On a plate that gets two exposures. */
const TWICE = 'whelk-twice.plate';
const twice = text.replace('"Whelk tonight"', '"Whelk twice"').replace('  settle: 4 s\n  exposure: 3 s\n', '  settle: 1 s\n  exposure: 2 s\n').replace(/\}\n$/, '\n  variant "near" {\n    exposure: 1 s\n    S1 -> M2: 400 mm\n  }\n  exposure first {\n    share: 60%\n  }\n  exposure second {\n    variant: "near"\n  }\n}\n');
writeFileSync(join(folder, TWICE), twice);
/** With a shot that waits for its outcome. */
const FULL = 'whelk-full.plate';
const waiting = text.replace(/\}\n$/, '\n  shot 1 on 2026-02-11 {\n    exposure: 20 s\n  }\n}\n');
writeFileSync(join(folder, FULL), waiting);
/** With a shot that teaches something of its plate. */
const SEEN = 'whelk-seen.plate';
const taught = text.replace('"Whelk tonight"', '"Whelk seen"').replace('    sensitive to: red\n', '    sensitive to: red\n    sensitivity: 80 µJ/cm² ×÷ 2\n').replace(/\}\n$/, '\n  shot 1 on 2026-02-11 {\n    dose: 42 µJ/cm²\n    outcome: "bright"\n  }\n}\n');
/** A browser makes no PDF: only a server beside the editor has the fonts for it. */
const FORM = process.env.WEB ? 'HTML' : 'PDF';
const CARD = `whelk-seen-card.${FORM.toLowerCase()}`;
const saved = () => readFileSync(join(folder, PAGE), 'utf8');

const quick = page.locator('.quick-input-widget');
const title = (words) => quick.locator('.quick-input-title', { hasText: words }).waitFor();
const toast = (words) => page.locator('.notification-list-item-message', { hasText: words }).first().waitFor();
const phase = (name) => panel.locator(`body[data-phase="${name}"]`).waitFor();
const left = async () => { const [m, s] = (await panel.locator('#left').textContent()).split(':').map(Number); return m * 60 + s; };
const says = (words) => panel.locator('#said', { hasText: words }).waitFor();
const inFrame = async (of) => (await frameOfPanel()).evaluate(of);
const day = () => { const d = new Date(); return [d.getFullYear(), d.getMonth() + 1, d.getDate()].map((n) => String(n).padStart(2, '0')).join('-'); };
/** The question for a value, with what was typed into it. */
async function answer(what, value) {
  await title(what);
  const input = quick.locator('input').first();
  await until(async () => input.evaluate((i) => i === document.activeElement), 'the question has no keyboard');
  await keyboard.type(value);
  await press('Enter');
}
async function time(id, seconds) {
  await panel.locator(`#${id}`).fill(String(seconds));
}
/** From now on the page notes by the clock when each phase began: a look from here comes late where much else is to be done. */
const noteTimes = () => inFrame(() => {
  globalThis.began = {};
  new MutationObserver(() => { globalThis.began[document.body.dataset.phase] ??= Date.now(); }).observe(document.body, { attributeFilter: ['data-phase'] });
});
/** So many seconds lie between two phases; never less, and not more than a busy machine makes of it. */
async function took(from, to, seconds) {
  const began = await inFrame(() => globalThis.began);
  const is = (began[to] - began[from]) / 1000;
  expect(is > seconds - 0.1 && is < seconds + 1, `from ${from} to ${to} it took ${is} s instead of ${seconds} s`);
}
const clearToasts = () => command('Notifications: Clear All Notifications');

export const STEPS = {
  async 'readings are asked for one after the other, each with what it should come to'() {
    await page.locator('.explorer-folders-view .monaco-list-row').first().waitFor({ timeout: 60_000 });
    await open(PAGE);
    await command('Platewright: Enter Readings');
    await title('Enter readings: where to begin');
    await quick.locator('.monaco-list-row.focused', { hasText: 'red → S1' }).waitFor();
    await picture('readings-to-take');
    await press('ArrowDown', 'Enter');
    await title('S1 → M1 (2 of');
    await quick.getByText('Should come to 750 ± 2 mm.').waitFor();
    await picture('a-reading-is-asked-for');
    await answer('S1 → M1', '751 ± 2');
    // Written and saved while the next one is asked for.
    await title('M1 → P1 (3 of');
    await until(() => saved().includes(`\n\n  measured S1 -> M1: 751 ± 2 mm on ${day()}T`), 'the reading is not on the disk');
    await quick.getByText('1 mm more than planned, 0.61 standard uncertainties: that agrees.').waitFor();
  },
  async 'what cannot be taken is asked for again, and what disagrees is said'() {
    await answer('M1 → P1', '72,1');
    await quick.getByText('Write a point').waitFor();
    await picture('a-reading-that-cannot-be-taken');
    await keyboard.press('Control+A');
    await answer('M1 → P1', '741 ± 2');
    await title('S1 → M2 (4 of');
    await toast('20 mm more than planned');
    await picture('a-reading-that-disagrees');
    await press('Escape');
    await toast('2 readings are written.');
    expect(saved().replace(/\n\n( {2}measured .*\n){2}/, '\n') === text, 'something else on the page has changed');
    await clearToasts();
  },
  async 'a reading that contradicts the one before is kept beside it, and both are told'() {
    await command('Platewright: Enter Readings');
    await title('Enter readings: where to begin');
    await keyboard.type('M1 → P1');
    await quick.locator('.monaco-list-row.focused', { hasText: 'M1 → P1' }).waitFor();
    await press('Enter');
    await answer('M1 → P1', '721 ± 2');
    await toast('one of the two was misread');
    await title('S1 → M2');
    await press('Escape');
    expect(saved().match(/measured M1 -> P1/g).length === 2, 'a reading was written over');
    await clearToasts();
  },
  async 'a shot is gone through: cautions first, then what is ticked off'() {
    await toText();
    await command('Platewright: Shoot');
    await panel.getByText('Shot 1 of “Whelk tonight”').waitFor();
    for (const words of ['Before the laser is on', 'Local rules and the person responsible for laser safety decide.', 'Laser red is warm', 'Light out, green safelight on', 'sensitive to red only']) await panel.getByText(words).first().waitFor();
    expect(!/\bsafe\b/.test(await panel.locator('main').innerText()), 'something is said to be safe');
    await panel.locator('li', { hasText: 'Laser red is warm' }).locator('input[type="checkbox"]').focus();
    await press('Space');
    await panel.getByLabel('Which plate (box and number)').fill('box 3, number 7');
    await picture('shoot-before');
  },
  async 'the table rests by the clock, and the panel is in the one colour of the screen'() {
    await panel.locator('#go', { hasText: 'Hands Off: Settle 4 s' }).focus();
    await noteTimes();
    await press('Enter');
    await phase('settling');
    await panel.locator('body[data-cover="green"]').waitFor();
    await page.waitForTimeout(700);
    await picture('shoot-settling');
    await phase('settled');
    await took('settling', 'settled', 4);
  },
  async 'the shutter is open by the clock, and the entry is on the page'() {
    await press('Space');
    await phase('exposing');
    await page.waitForTimeout(700);
    await picture('shoot-exposing');
    await until(() => /\n {2}shot 1 on /.test(saved()), 'the shot is not on the disk');
    await says('Shot 1 is written on the page.');
    await took('exposing', 'exposed', 3);
    const entry = saved().slice(saved().indexOf('  shot 1'));
    for (const line of [`  shot 1 on ${day()} {`, '    plate: "box 3, number 7"', '    batch: "box 3"', '    exposure: 3 s', '    temperature: 19.5 °C']) expect(entry.includes(`${line}\n`), `the entry has no “${line}” but ${entry}`);
    expect(/ {4}settle: [4-9] s\n/.test(entry), `how long the table rested is not told: ${entry}`);
    await press('d');
    await panel.locator('#cover').waitFor({ state: 'hidden' });
    await picture('shoot-written');
  },
  async 'it goes on by the clock when the window is loaded anew'() {
    await time('settle', 90);
    await time('exposure', 40);
    await panel.locator('#go', { hasText: 'Settle 1 min 30 s' }).click();
    const began = Date.now();
    await phase('settling');
    await page.waitForTimeout(1500);
    await page.reload();
    await panel.locator('body[data-phase="settling"]').waitFor({ timeout: 60_000 });
    await until(async () => await left() > 0, 'nothing is counted');
    const is = 90 - (await left());
    expect(Math.abs(is - (Date.now() - began) / 1000) < 1.5, `${is} s have gone instead of ${(Date.now() - began) / 1000} s`);
  },
  async 'a clock that is set back is said, and takes nothing back'() {
    const [before, from] = [await left(), Date.now()];
    await inFrame(() => { const real = globalThis.real = Date.now; Date.now = () => real() - 3600_000; });
    // By what was seen last, which on a busy machine is a second or so ago.
    await says(/The clock of this computer was set back by (1 h|59 min 5\d s)\b/);
    const [now, gone] = [await left(), (Date.now() - from) / 1000];
    expect(now <= before && now > before - gone - 1.5, `it counts ${now} s after ${before} s, and ${gone} s have gone`);
    await panel.locator('#stop', { hasText: 'Stop' }).focus();
    await press('Enter');
    await phase('ready');
    await says('Nothing was exposed, and nothing is written.');
    expect(!saved().includes('shot 2'), 'a shot was written that was none');
    await inFrame(() => { Date.now = globalThis.real; });
  },
  async 'an exposure that is stopped is written as it was'() {
    await noteTimes();
    await panel.locator('#go').focus();
    await press('Enter');
    await phase('settling');
    await press('Enter');
    await phase('exposing');
    await page.waitForTimeout(1200);
    await press('Escape');
    await until(() => saved().includes('shot 2'), 'the shot is not on the disk');
    const seconds = await inFrame(() => (globalThis.began.exposed - globalThis.began.exposing) / 1000);
    const [, open] = /shot 2[^]*?exposure: ([\d.]+) s/.exec(saved());
    expect(Math.abs(Number(open) - seconds) < 0.3, `${open} s are written instead of ${seconds} s`);
    expect(/note: ".*closed after [\d.]+ s of 40 s"/.test(saved()), 'it does not say that it was stopped');
    await press('d');
  },
  async 'a plate that gets two exposures is gone through to the last of them'() {
    const now = () => readFileSync(join(folder, TWICE), 'utf8');
    await toText();
    await open(TWICE);
    await command('Platewright: Shoot');
    await panel.getByText('Shot 1 of “Whelk twice”').waitFor();
    for (const words of ['Then second', 'The table as in “near”.', 'S1 -> M2: 400 mm']) await panel.getByText(words).first().waitFor();
    await picture('shoot-twice-before');
    await panel.locator('#go', { hasText: 'Hands Off: Settle 1 s' }).focus();
    await press('Enter');
    await phase('settled');
    await press('Enter');
    await panel.locator('#phase', { hasText: 'The shutter is open: first.' }).waitFor();
    await panel.locator('#phase', { hasText: 'the card back in the beam; the plate stays where it is, and the light stays out. Then: second. The table as in “near”: S1 -> M2: 400 mm' }).waitFor();
    await picture('shoot-twice-between-dark');
    expect(now() === twice, 'something is written before the last exposure');
    await press('d');
    await picture('shoot-twice-between');
    // Whoever presses Enter goes on, and does not end it.
    await until(() => inFrame(() => document.activeElement?.id === 'go'), 'the next step has no keyboard');
    await press('Enter');
    await phase('settled');
    await press('Enter');
    await until(() => /note: "first 2 s; second 1 s; /.test(now()), 'both exposures are not in the entry');
    expect(!/shot 1[^]*exposure:/.test(now()), 'the entry tells one exposure');
    await says('Shot 1 is written on the page.');
    await press('d');
    await picture('shoot-twice-written');
    await toText();
    await open(PAGE);
  },
  async 'what is heard: a tick each second, and signs that differ from it and from each other'() {
    const said = await heard(page.context(), 5.5);
    const ticks = onsets(said.tick);
    expect(ticks.length === 6, `${ticks.length} ticks in 5.5 s`);
    ticks.forEach((at, i) => expect(i === 0 || Math.abs(at - ticks[i - 1] - 1) < 0.0005, `from one tick to the next it is ${at - ticks[i - 1]} s`));
    const near = (is, should, what) => expect(Math.abs(is - should) < 0.01 * should, `${what} is of ${is} Hz instead of ${should} Hz`);
    near(pitch(said.tick, ticks[1], ticks[1] + 0.006), 1000, 'a tick');
    // Close it: three long ones, far from a tick in length, and from what says that it is open by their number.
    const over = onsets(said.OVER);
    expect(over.length === 3 && onsets(said.OPEN).length === 1, `${over.length} tones say that it is over`);
    for (const at of over) near(pitch(said.OVER, at + 0.02, at + 0.28), 880, 'the tone at the end');
    // The table has rested: it rises. Stopped: it falls.
    for (const [name, first, second] of [['SETTLED', 660, 880], ['STOPPED', 880, 660]]) {
      near(pitch(said[name], 0.05, 0.13), first, `the first tone of ${name}`);
      near(pitch(said[name], 0.22, 0.33), second, `the second tone of ${name}`);
    }
    near(pitch(said.AMISS, 0.1, 1.1), 220, 'the tone of what is amiss');
  },
  async 'next morning one line says what came out, of the newest shot first'() {
    await toText();
    await command('Platewright: Note the Outcome');
    await title('What came out of shot 2');
    await quick.getByText('In your own words').waitFor();
    await picture('the-outcome');
    await answer('What came out of shot 2', 'dull at the back');
    await toast('“Why” understands “dark at the back”.');
    await until(() => /shot 2[^}]*\n {4}outcome: "dull at the back"\n {2}\}/.test(saved()), 'the outcome is not on the disk');
    expect(!/shot 1[^}]*outcome/.test(saved()), 'it stands in another shot as well');
    await page.locator('.notification-list-item', { hasText: 'Shot 2' }).getByText('Why?', { exact: true }).click();
    await page.locator('.tab', { hasText: 'Why “dull at the back”' }).first().waitFor();
  },
  async 'where nothing can be saved the line stays on the page, and that is said until it is saved'() {
    await toText();
    await open(FULL);
    // A folder in the place of the file takes no text, as a disk without room takes none.
    rmSync(join(folder, FULL));
    mkdirSync(join(folder, FULL));
    await command('Platewright: Note the Outcome');
    await title('What came out of shot 1');
    await quick.locator('.quick-input-titlebar a[aria-label*="Choose from the Words"]').click();
    // The list takes the place of the question.
    await quick.locator('.monaco-list-row', { hasText: 'nothing at all' }).waitFor();
    await until(async () => quick.locator('input').first().evaluate((i) => i === document.activeElement), 'the list has no keyboard');
    await keyboard.type('wood');
    await quick.locator('.monaco-list-row.focused', { hasText: 'wood grain' }).waitFor();
    await press('Enter');
    await until(async () => await quick.locator('input').first().inputValue() === 'wood grain', 'what was chosen is not in the question');
    await press('Enter');
    await toast('could not be saved');
    await page.locator('.tab.dirty', { hasText: FULL }).first().waitFor();
    await picture('could-not-be-saved');
    rmdirSync(join(folder, FULL));
    await page.locator('.notification-list-item', { hasText: 'It stands on the page' }).getByText('Save Again', { exact: true }).click();
    await until(() => { try { return readFileSync(join(folder, FULL), 'utf8') === waiting.replace('exposure: 20 s\n  }', 'exposure: 20 s\n    outcome: "wood grain"\n  }'); } catch { return false; } }, 'it was not saved');
    await clearToasts();
  },
  async 'what the shots teach is shown, and a value is looked through before it is written'() {
    writeFileSync(join(folder, SEEN), taught);
    await open(SEEN);
    await command('Platewright: Learn from the Shots');
    await page.locator('.tab', { hasText: 'What the shots teach' }).first().waitFor();
    await toast('could be written');
    await picture('what-the-shots-teach');
    expect(readFileSync(join(folder, SEEN), 'utf8') === taught, 'something was written before anybody looked');
    await page.locator('.notification-list-item', { hasText: 'could be written' }).getByText('Look Through the Change', { exact: true }).click();
    const changes = page.locator('.part.panel');
    const change = changes.locator('.monaco-list-row', { hasText: '42 µJ/cm²' });
    await change.waitFor();
    await picture('a-change-that-is-looked-through');
    await change.locator('.edit-checkbox, .monaco-checkbox, input[type="checkbox"]').first().click();
    await changes.getByText('Apply', { exact: true }).click();
    await toText();
    await until(async () => (await desk.editor.locator('.view-line').allTextContents()).some((l) => /sensitivity:\s42\sµJ\/cm²\s×÷\s1\.3/.test(l)), 'the value is not on the page');
    await picture('a-value-that-was-learnt');
    expect(/sensitivity: 40 µJ/.test(readFileSync(join(folder, 'saltmarsh-lab.plate'), 'utf8')), 'a value was written that nobody ticked');
    await toText();
    await command('File: Revert File');
    await command('Platewright: Show All Shots by Date');
    await page.locator('.tab', { hasText: 'The shots by date' }).first().waitFor();
    await picture('all-shots-by-date');
    await clearToasts();
  },
  async 'the card is written in the form that is chosen, where it is said'() {
    await toText();
    await open(SEEN);
    await command('Platewright: Write the Bench Card');
    await title('Write the Bench Card');
    await quick.locator('.monaco-list-row', { hasText: `A4, ${FORM}` }).waitFor();
    await picture('the-card-in-which-form');
    expect(process.env.WEB === undefined || await quick.locator('.monaco-list-row', { hasText: 'PDF' }).count() === 0, 'a PDF is offered where none can be made');
    await keyboard.type(`Letter, ${FORM}`);
    await quick.locator('.monaco-list-row.focused', { hasText: `Letter, ${FORM}` }).waitFor();
    await press('Enter');
    // The editor's own dialog: the name that it proposes stands in it.
    await until(async () => (await quick.locator('input').first().inputValue().catch(() => '')).endsWith(CARD), 'no place is proposed');
    await picture('the-card-goes-where');
    await press('Enter');
    await toast('is written');
    const card = readFileSync(join(folder, CARD), 'latin1');
    // 8 1/2 × 11 inches, in points of 1/72 inch
    expect(process.env.WEB ? card.startsWith('<!doctype html>') && card.includes('size: letter;') : /^%PDF-/.test(card) && /\/MediaBox \[0 0 612(\.0+)? 792(\.0+)?\]/.test(card), 'it is no card for letter paper');
    await clearToasts();
  },
  async 'a card that is there is only written over when somebody says so'() {
    writeFileSync(join(folder, CARD), 'mine');
    await toText();
    await command('Platewright: Write the Bench Card');
    await title('Write the Bench Card');
    await keyboard.type(`Letter, ${FORM}`);
    await quick.locator('.monaco-list-row.focused', { hasText: `Letter, ${FORM}` }).waitFor();
    await press('Enter');
    await until(async () => (await quick.locator('input').first().inputValue().catch(() => '')).endsWith(CARD), 'no place is proposed');
    await press('Enter');
    await page.getByText('already exists').first().waitFor();
    await picture('a-card-that-is-there');
    await press('Escape');
    await page.waitForTimeout(500);
    await press('Escape');
    expect(readFileSync(join(folder, CARD), 'utf8') === 'mine', 'it was written over');
  },
  async 'without a shot there is no outcome, and that is said'() {
    await open('whelk-by-string.plate');
    await command('Platewright: Note the Outcome');
    await toast('There is no shot in');
    await clearToasts();
    // The answer to “why” lies over the panel.
    await command('View: Close All Editors');
  },
};

for (const [theme, name] of Object.entries(THEMES)) STEPS[`in the theme ${theme} the panel can be read and used by all`] = async () => {
  setHere({ 'workbench.colorTheme': theme });
  if (name === 'vscode-light') {
    await open(PAGE);
    await command('Platewright: Shoot');
  }
  await panel.locator(`body.${name}`).waitFor();
  await panel.getByText('Shot 3 of').waitFor();
  await panel.locator('#go').focus();
  await page.waitForTimeout(300);
  await picture(`shoot-${name}`);
  const found = await grave();
  expect(found === '', found);
};
