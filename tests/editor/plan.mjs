// The bench plan beside a page, in the workbench: by mouse and keyboard, in four themes.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { desk, expect } from './host/desk.mjs';
import { besideThePage, THEMES } from './host/panel.mjs';

const { folder, page, editor, command, goInto } = desk;
const { boxOf, dialogs, frameOfPanel, grave, into, panel, picture, press, read, setHere, toText, until, written } = besideThePage();
const { keyboard, mouse } = page;
const PAGE = 'whelk-on-the-table.plate';
const original = readFileSync(join(folder, PAGE), 'utf8');
const placed = (name, ...more) => `setup "${name}" {\n  table: 900 x 600 mm\n  laser red at (60, 100) mm heading 0°\n  mirror M1 at (600, 100) mm\n  beam stop B1 at (600, 500) mm\n  beam raw from red\n    -> M1\n    -> B1\n${more.map((line) => `  ${line}\n`).join('')}}\n`;
const HOSTILE = '<img src=x onerror=alert(1)>';
writeFileSync(join(folder, 'hostile.plate'), placed(HOSTILE, `note: "</svg><script>alert(2)</script>"`));
writeFileSync(join(folder, 'two.plate'), placed('Cockle') + placed('Razor clam', 'variant "farther" {', '  M1 at (700, 100) mm', '}'));
// Places alone: what is dragged changes the figures, since no reading holds them.
const LIMPET = 'limpet.plate';
const limpet = `setup "Limpet" {
  table: 1200 x 900 mm
  hole spacing: 25 mm
  room {
    safelight: green
  }
  laser red at (1000, 700) mm heading 180° {
    coherence length: 500 mm
  }
  splitter S1 at (700, 700) mm
  mirror M1 at (300, 700) mm
  mirror M2 at (700, 100) mm
  object limpet at (100, 100) mm {
    shape: sphere
    diameter: 40 mm
  }
  plate P1 at (100, 400) mm facing limpet {
    size: 100 x 80 mm
    sensitive to: red
  }
  beam raw from red
    -> S1
  beam reference from S1 through
    -> M1
    -> P1
  beam object from S1 reflected
    -> M2
    -> limpet
    -> P1
}
`;
writeFileSync(join(folder, LIMPET), limpet);
writeFileSync(join(folder, 'strings.plate'), 'setup "By string" {\n  laser red\n  mirror M1\n  beam raw from red\n    -> M1: 400 mm\n}\n');

const plan = panel.locator('#plan');
const item = (id) => panel.locator(`#view [data-item="${id}"]`).first();
const words = (id) => item(id).locator('title');
const view = () => panel.locator('#view').getAttribute('transform');
/** Some of that line is selected. While the plan has the keyboard, no status tells how much. */
const chosen = async (line) => {
  await editor.locator('.line-numbers.active-line-number', { hasText: new RegExp(`^${line}$`) }).first().waitFor();
  await editor.locator('.selected-text').first().waitFor();
};
const selected = (line, letters) => page.locator('.statusbar-item', { hasText: new RegExp(`Ln ${line}, Col \\d+ \\(${letters} selected\\)`) }).waitFor();
const lineOf = (what, text = original) => text.slice(0, text.indexOf(what)).split('\n').length;
const clean = async (what) => expect(await page.locator('.tab.dirty').count() === 0, `${what} changed the text`);

/** The middle of a shape, on the screen. */
async function middleOf(shape) {
  const box = await boxOf(shape);
  return [box.x + box.width / 2, box.y + box.height / 2];
}
const middle = (id) => middleOf(item(id));

/** Pixels a millimetre. */
const scale = async () => Number(/scale\((.*)\)/.exec(await view())[1]);

/** Takes hold there and goes there; it is not let go. */
async function drag([x, y], [toX, toY]) {
  await mouse.move(x, y);
  await mouse.down();
  await mouse.move((x + toX) / 2, (y + toY) / 2);
  await mouse.move(toX, toY);
}
/** The most of red, green and blue that any pixel of the panel has; its corners are those of the window, which are round. */
async function brightest() {
  await page.waitForTimeout(300);
  const { x, y, width, height } = await boxOf(page.locator('iframe.webview.ready'));
  const shot = await page.screenshot({ clip: { x: Math.ceil(x) + 12, y: Math.ceil(y) + 12, width: Math.floor(width) - 24, height: Math.floor(height) - 24 } });
  return page.evaluate(async (bytes) => {
    const image = await createImageBitmap(new Blob([Uint8Array.from(bytes)], { type: 'image/png' }));
    const canvas = new OffscreenCanvas(image.width, image.height).getContext('2d');
    canvas.drawImage(image, 0, 0);
    const most = [0, 0, 0];
    canvas.getImageData(0, 0, image.width, image.height).data.forEach((v, i) => { if (i % 4 < 3) most[i % 4] = Math.max(most[i % 4], v); });
    return most;
  }, [...shot]);
}
/** Writes down from now on what the panel makes sound: tones by their pitch, and whether the tick runs. */
const listen = async () => (await frameOfPanel()).evaluate(() => {
  globalThis.heard = { tones: [], ticks: 0, state: '' };
  const { start } = OscillatorNode.prototype;
  OscillatorNode.prototype.start = function (...at) { globalThis.heard.tones.push(this.frequency.value); globalThis.heard.context = this.context; return start.apply(this, at); };
  const [on, off] = [AudioBufferSourceNode.prototype.start, AudioScheduledSourceNode.prototype.stop];
  AudioBufferSourceNode.prototype.start = function (...at) { globalThis.heard.ticks += this.loop && this.buffer.duration === 1 ? 1 : 100; return on.apply(this, at); };
  AudioScheduledSourceNode.prototype.stop = function (...at) { if (this instanceof AudioBufferSourceNode) globalThis.heard.ticks--; return off.apply(this, at); };
});
const heard = async () => (await frameOfPanel()).evaluate(() => { const { tones, ticks, context } = globalThis.heard; globalThis.heard.tones = []; return { tones, ticks, state: context?.state }; });
/** Takes the last step back: `line` stands in the text again, and the picture shows it, so that a hand finds things where the text has them. */
async function undo(line) {
  await toText();
  await press('Control+Z');
  await written(line);
  const [, name, place] = /^ *\S+ (\S+) at (\(.*?\))/.exec(line);
  await words(name).filter({ hasText: place }).waitFor({ state: 'attached' });
}

export const STEPS = {
  async 'a button above the page opens the plan beside it'() {
    await page.locator('.explorer-folders-view .monaco-list-row', { hasText: PAGE }).dblclick({ timeout: 60_000 });
    await page.locator('.tab.active', { hasText: PAGE }).waitFor();
    await page.locator('.editor-actions a.action-label[aria-label*="Show the Bench Plan"]').first().click({ timeout: 60_000 });
    for (const name of ['red', 'S1', 'M1', 'M2', 'M3', 'whelk', 'P1']) await panel.locator('#view text', { hasText: new RegExp(`^${name}$`) }).waitFor({ timeout: 60_000 });
    expect(await plan.getAttribute('aria-label') === 'Whelk shell', 'the plan does not say what it is of');
  },
  async 'what stands in the line of the cursor is marked'() {
    await into(original, 'mirror M3');
    await item('M3').and(panel.locator('[aria-current="true"]')).waitFor();
    await panel.locator('#rings .at-cursor .outer').first().waitFor({ state: 'attached' });
    await into(original, '-> M3');
    await item('object.2').and(panel.locator('[aria-current="true"]')).waitFor();
    expect(await item('M3').getAttribute('aria-current') === null, 'the mirror is still marked');
  },
  async 'an edit moves the mark, which stays the same one, and the view stays as it is'() {
    await item('M3').evaluate((element) => { element.sameAsBefore = true; });
    const [x] = await middle('M3');
    const before = await view();
    await into(original, '(400, 640)', 4);
    await press('Shift+ArrowLeft', 'Shift+ArrowLeft', 'Shift+ArrowLeft');
    await keyboard.type('300');
    await words('M3').filter({ hasText: '(300, 640) mm' }).waitFor({ state: 'attached' });
    const [now] = await middle('M3');
    // 100 mm to the left, at so many pixels a millimetre
    const k = Number(/scale\((.*)\)/.exec(before)[1]);
    expect(Math.abs(x - now - 100 * k) < 12 * k, `moved by ${(x - now) / k} mm`);
    expect(await item('M3').evaluate((element) => element.sameAsBefore === true), 'the mark was drawn anew');
    expect(await view() === before, 'the view has moved');
  },
  async 'undo moves it back'() {
    for (let i = 0; i < 8 && !(await words('M3').filter({ hasText: '(400, 640) mm' }).count()); i++) {
      await press('Control+Z');
      await page.waitForTimeout(500);
    }
    await words('M3').filter({ hasText: '(400, 640) mm' }).waitFor({ state: 'attached' });
    await until(async () => (await page.locator('.tab.dirty').count()) === 0, 'the text is not what it was');
  },
  async 'a click shows it in the text, and the keyboard stays in the plan'() {
    await item('P1').click();
    await chosen(lineOf('plate P1'));
    expect(await item('P1').evaluate((element) => element === document.activeElement), 'the keyboard is not on it');
    await panel.locator('#said', { hasText: 'plate P1' }).waitFor({ state: 'attached' });
    // A leg is thin: a few pixels beside it are near enough.
    const [x, y] = await middle('reference.1');
    await mouse.click(x + 20, y + 5);
    await chosen(lineOf('-> M1'));
    await clean('a click');
  },
  async 'a double click goes there'() {
    // Where legs end on it
    await mouse.dblclick(...await middle('whelk'));
    await page.locator('.monaco-editor.focused').waitFor();
    await selected(lineOf('object whelk'), 5);
    await clean('a double click');
  },
  async 'all of it is reached by keys'() {
    await panel.locator('#darken').focus();
    await press('Tab');
    expect(await plan.evaluate((element) => element === document.activeElement), 'Tab does not come to the plan');
    await press('Tab');
    const focused = () => panel.locator(':focus').getAttribute('data-item');
    expect(await focused() === 'whelk', `Tab comes to ${await focused()}`);
    await press('Home');
    const met = [];
    for (let i = 0; i < 40 && met.at(-1) !== await focused(); i++) {
      met.push(await focused());
      await press('ArrowRight');
    }
    // Things in the order of the text, then legs in the order of the beams.
    expect(met.join(' ') === 'red gate S1 M1 R1 M2 M3 R2 whelk P1 raw.1 raw.2 reference.1 reference.2 reference.3 object.1 object.2 object.3 object.4 object.5', `met were ${met.join(' ')}`);
    expect(/^leg whelk → P1, 300 mm$/.test(await item('object.5').getAttribute('aria-label')), 'it is not said what it is');
    await panel.locator('#rings .in-focus .outer').first().waitFor({ state: 'attached' });
    await press('Home', 'ArrowRight', 'ArrowRight', 'Enter');
    await chosen(lineOf('splitter S1'));
    await press('ArrowRight', 'Control+Enter');
    await page.locator('.monaco-editor.focused').waitFor();
    await selected(lineOf('mirror M1'), 2);
    await clean('a key');
  },
  async 'the view is moved by wheel, hand and keys, and shows all of it again'() {
    await panel.locator('#fit').click();
    const whole = await view();
    const box = await boxOf(plan);
    await mouse.move(box.x + box.width / 2, box.y + box.height - 30);
    await mouse.wheel(0, -400);
    await until(async () => await view() !== whole, 'the wheel does nothing');
    const nearer = await view();
    await mouse.down();
    await mouse.move(box.x + box.width / 2 + 80, box.y + box.height - 90, { steps: 5 });
    await mouse.up();
    expect(await view() !== nearer, 'a drag does nothing');
    for (const key of ['+', '-', 'ArrowLeft', 'ArrowDown']) {
      const before = await view();
      await press(key);
      expect(await view() !== before, `${key} does nothing`);
    }
    await press('0');
    expect(await view() === whole, `shown is ${await view()} and not ${whole}`);
    for (const id of ['larger', 'smaller']) {
      const before = await view();
      await panel.locator(`#${id}`).click();
      expect(await view() !== before, `the button does nothing: ${id}`);
    }
    await clean('looking');
  },
  async 'what the cursor comes to is brought into sight, and only then'() {
    await panel.locator('#fit').click();
    await into(original, 'laser red');
    await item('red').and(panel.locator('[aria-current="true"]')).waitFor();
    const box = await boxOf(plan);
    const [x, y] = await middle('red');
    await mouse.move(x, y);
    for (let i = 0; i < 12; i++) await mouse.wheel(0, -300);
    await page.waitForTimeout(300);
    const inside = async (id) => { const b = await boxOf(item(id)); return b.x < box.x + box.width && b.x + b.width > box.x && b.y < box.y + box.height && b.y + b.height > box.y; };
    expect(!(await inside('P1')), 'the plate is still in sight');
    const before = await view();
    const near = await inside('gate');
    await into(original, 'shutter gate');
    await into(original, 'laser red');
    await item('red').and(panel.locator('[aria-current="true"]')).waitFor();
    expect(!near || await view() === before, 'the view moved though all was in sight');
    await into(original, 'plate P1');
    await until(() => inside('P1'), 'the plate is not in sight');
    await panel.locator('#fit').click();
  },
  async 'a variant is chosen from a list'() {
    await panel.locator('#variants select').selectOption({ label: 'closer plate' });
    await words('P1').filter({ hasText: '(700, 650) mm' }).waitFor({ state: 'attached' });
    await into(original, 'mirror M2');
    await item('M2').and(panel.locator('[aria-current="true"]')).waitFor();
    expect((await words('P1').textContent()).includes('(700, 650) mm'), 'the variant is gone when the cursor moves');
    await panel.locator('#variants select').selectOption({ label: 'none' });
    await words('P1').filter({ hasText: '(700, 700) mm' }).waitFor({ state: 'attached' });
  },
  async 'another view is chosen from a list, and the figures stand below'() {
    await panel.locator('#figures li').first().waitFor();
    const looks = panel.locator('#looks select');
    await looks.selectOption({ label: 'the arms unrolled' });
    await item('object.5').waitFor();
    await until(async () => await item('M1').count() === 0, 'the table is still shown');
    const side = looks.locator('option', { hasText: 'the table from its near side' });
    expect(await side.evaluate((o) => o.disabled && o.title.includes('one height')), 'a view that cannot be drawn is offered, or does not say why not');
    if (process.env.SCREENSHOTS) await page.screenshot({ path: join(process.env.SCREENSHOTS, 'arms.png') });
    await looks.selectOption({ label: 'the light over the plate' });
    await until(async () => {
      const box = await boxOf(plan);
      await mouse.move(box.x + box.width / 2 + Math.random() * 10, box.y + box.height / 2);
      return /: \S/.test(await panel.locator('#under').textContent());
    }, 'no figure under the pointer');
    await panel.locator('#said', { hasText: await panel.locator('#under').textContent() }).waitFor({ state: 'attached' });
    await picture('light');
    await looks.selectOption({ label: 'the object as the plate sees it' });
    const seen = panel.locator('#view text', { hasText: 'seen from' });
    await seen.filter({ hasText: 'from the middle of P1' }).waitFor();
    await plan.focus();
    await press('Alt+ArrowRight', 'Alt+ArrowRight');
    await seen.filter({ hasText: '20 % of the way to the right edge' }).waitFor();
    if (process.env.SCREENSHOTS) await page.screenshot({ path: join(process.env.SCREENSHOTS, 'object.png') });
    await looks.selectOption({ label: 'the table from above' });
    await item('M1').waitFor();
    await clean('looking');
  },
  async 'the figures of a map are read by keys, which go back to moving the view'() {
    await panel.locator('#looks select').selectOption({ label: 'the beam ratio over the plate' });
    const point = panel.locator('#map-point');
    const said = (words) => panel.locator('#said', { hasText: words }).waitFor({ state: 'attached' });
    await point.waitFor({ state: 'attached' });
    await plan.focus();
    await press('Tab');
    expect(await point.evaluate((element) => element === document.activeElement), 'Tab does not come to the point');
    expect(/^beam ratio at P1: a map/.test(await point.getAttribute('aria-label')), 'it is not said what it is of');
    await said(/^beam ratio at P1: \S+, in the middle$/);
    const whole = await view();
    // A plate of 63 x 63 mm in 24 steps: 2.625 mm each, and 31.5 mm to the edge.
    await press('ArrowRight', 'ArrowRight', 'ArrowUp');
    await said(/, from the middle 5\.3 mm to the right and 2\.6 mm up$/);
    await press('Shift+ArrowLeft');
    await said(/, from the middle 3[12] mm to the left and 2\.6 mm up$/);
    expect((await panel.locator('#said').textContent()).startsWith(`${await panel.locator('#under').textContent()}, `), 'what is said is not what is shown');
    expect(await view() === whole, 'the view has moved');
    await picture('map-by-keys');
    expect(await grave() === '', await grave());
    await press('Home');
    await said(/, in the middle$/);
    await press('Shift+Tab');
    expect(await plan.evaluate((element) => element === document.activeElement), 'Shift+Tab does not lead back');
    expect(await panel.locator('#under').textContent() === '', 'the figure of the point is still shown');
    await press('ArrowRight');
    expect(await view() !== whole, 'arrow keys do not move the view any more');
    await press('0');
    await panel.locator('#looks select').selectOption({ label: 'the table from above' });
    await item('M1').waitFor();
    expect(await point.count() === 0, 'the table has the point of a map');
    await clean('looking');
  },
  async 'a mirror is dragged to another hole: that is in the text, and one undo takes it back'() {
    await toText();
    await panel.locator('#fit').click();
    const k = await scale();
    const [x, y] = await middle('M1');
    await drag([x, y], [x - 100 * k, y - 52 * k]);
    await panel.locator('#hint', { hasText: 'mirror M1 at (1000, 150) mm. Not written yet' }).waitFor();
    expect(await panel.locator('#plan.moving').count() === 1, 'it does not look unwritten');
    await clean('a drag that goes on');
    if (process.env.SCREENSHOTS) await page.screenshot({ path: join(process.env.SCREENSHOTS, 'dragging.png') });
    await mouse.up();
    await panel.locator('#hint', { hasText: 'Written: mirror M1 at (1000, 150) mm' }).waitFor();
    await written('  mirror M1 at (1000, 150) mm');
    await undo('  mirror M1 at (1100, 100) mm');
  },
  async 'Escape leaves it as it was, and a hand that trembles writes nothing'() {
    const k = await scale();
    const [x, y] = await middle('M1');
    await drag([x, y], [x - 100 * k, y]);
    await panel.locator('#hint', { hasText: '(1000, 100) mm. Not written yet' }).waitFor();
    await press('Escape');
    await panel.locator('#hint', { hasText: 'M1 stays as it was written' }).waitFor();
    await mouse.up();
    await words('M1').filter({ hasText: '(1100, 100) mm' }).waitFor({ state: 'attached' });
    await drag([x, y], [x + 3, y]);
    await mouse.up();
    await page.waitForTimeout(500);
    await clean('nothing');
  },
  async 'what cannot be moved says why'() {
    const [x, y] = await middle('object.2');
    await drag([x, y], [x + 40, y + 40]);
    await mouse.up();
    await panel.locator('#hint', { hasText: 'goes from thing to thing; move those' }).waitFor();
    expect((await words('object.2').textContent()).includes('goes from thing to thing'), 'its title does not say so');
    await clean('what stays');
  },
  async 'keys move it by a hole, or beside the holes'() {
    await item('M1').click();
    await chosen(lineOf('mirror M1'));
    await press('Shift+ArrowLeft');
    await written('  mirror M1 at (1075, 100) mm');
    await press('Alt+Shift+ArrowUp');
    await written('  mirror M1 at (1075, 101) mm');
    expect(await item('M1').evaluate((element) => element === document.activeElement), 'the keyboard is not on it any more');
    await undo('  mirror M1 at (1075, 100) mm');
    await undo('  mirror M1 at (1100, 100) mm');
  },
  async 'a laser is turned by its handle'() {
    await item('red').click();
    const handle = panel.locator('.handle[data-turn="red"] circle');
    await handle.waitFor();
    await drag(await middleOf(handle), await middle('M2'));
    // From (60, 100) to the middle of M2 at (94, 420): arctan 320/34 is 83.9°; the middle of its mount lies a little behind it.
    await panel.locator('#hint', { hasText: /heading 8[3-6]°\. Not written yet/ }).waitFor();
    if (process.env.SCREENSHOTS) await page.screenshot({ path: join(process.env.SCREENSHOTS, 'turning.png') });
    await press('Escape');
    await mouse.up();
    await clean('a turn that was left');
  },
  async 'a turn that is let go is in the text, and keys turn it by a degree or a tenth'() {
    await read(LIMPET);
    await plan.and(panel.locator('[aria-label="Limpet"]')).waitFor();
    await panel.locator('#fit').click();
    await item('red').click();
    const handle = panel.locator('.handle[data-turn="red"] circle');
    await handle.waitFor();
    const [x, y] = await middle('S1');
    // S1 stands 300 mm to the left of the laser's place: 26.2 mm further away than that is 5° less than 180°.
    await drag(await middleOf(handle), [x, y - 26.2 * await scale()]);
    await panel.locator('#hint', { hasText: /heading 17[3-7]°\. Not written yet/ }).waitFor();
    const told = await panel.locator('#hint').textContent();
    await mouse.up();
    await panel.locator('#hint', { hasText: 'Written: laser red' }).waitFor();
    const degrees = /heading (\d+)°/.exec(told)[1];
    await written(`  laser red at (1000, 700) mm heading ${degrees}° {`);
    await undo('  laser red at (1000, 700) mm heading 180° {');
    await item('red').click();
    await press('[');
    await written('  laser red at (1000, 700) mm heading 181° {');
    await panel.locator('#said', { hasText: 'heading 181°' }).waitFor({ state: 'attached' });
    await press(']');
    await written('  laser red at (1000, 700) mm heading 180° {');
    await press('Alt+]');
    await written('  laser red at (1000, 700) mm heading 179.9° {');
    await press('Alt+[');
    await item('M1').click();
    await press('[');
    await panel.locator('#hint', { hasText: 'M1 turns by itself as its beam needs' }).waitFor();
    await written('  laser red at (1000, 700) mm heading 180.0° {');
    for (let i = 0; i < 8 && await page.locator('.tab.dirty').count(); i++) {
      await toText();
      await press('Control+Z');
      await page.waitForTimeout(300);
    }
    await clean('all of that, undone,');
  },
  async 'a figure follows while a mirror is dragged, and with Alt it goes beside the holes'() {
    await panel.locator('#fit').click();
    const figure = () => panel.locator('#figures li').first().textContent();
    // reference 400 + 360.6 = 760.6 mm; object 600 + 600 + 300 = 1500 mm: 739.4 mm longer
    await panel.locator('#figures li', { hasText: /mismatch\D*739/ }).waitFor();
    const k = await scale();
    const [x, y] = await middle('M1');
    await drag([x, y], [x - 100 * k, y]);
    // M1 at (200, 700): 500 + 316.2 = 816.2 mm, and 683.8 mm are left
    await panel.locator('#figures li', { hasText: /mismatch\D*68[34]/ }).waitFor();
    await panel.locator('#hint', { hasText: 'M1 at (200, 700) mm. Not written yet' }).waitFor();
    await picture('figures-follow');
    await keyboard.down('Alt');
    await mouse.move(x - 110 * k, y);
    await panel.locator('#hint', { hasText: /M1 at \((?:189|190|191), (?:699|700|701)\) mm\. Not written yet/ }).waitFor();
    const place = /at (\(.*\) mm)/.exec(await panel.locator('#hint').textContent())[1];
    await mouse.up();
    await keyboard.up('Alt');
    await written(`  mirror M1 at ${place}`);
    expect(!/739/.test(await figure()), `the figure is ${await figure()}`);
    // From beside a hole a key goes to the next one that way, and leaves the other number.
    await item('M1').click();
    await press('Shift+ArrowLeft');
    await written(`  mirror M1 at ${place.replace(/\d+/, '175')}`);
    await undo(`  mirror M1 at ${place}`);
    await undo('  mirror M1 at (300, 700) mm');
    await clean('all of that, undone,');
  },
  async 'it grows dark in the colour that the page allows, tells how to come back, and is heard'() {
    await read(LIMPET);
    await plan.and(panel.locator('[aria-label="Limpet"]')).waitFor();
    await plan.focus();
    await press('d');
    const card = panel.locator('#card');
    await card.filter({ hasText: 'The safelight is green, and P1 is said to be sensitive to red only' }).waitFor();
    for (const words of ['Any screen can fog a plate', 'The way back: Escape, D, or a click', 'the rest of the window stays lit']) expect((await card.textContent()).includes(words), `the card does not say “${words}”`);
    await picture('dark-card');
    expect(await grave() === '', await grave());
    await press('Escape');
    await card.waitFor({ state: 'hidden' });
    await panel.locator('#darken').click();
    await card.waitFor();
    await listen();
    await press('Enter');
    await panel.locator('body[data-cover="green"]').waitFor();
    await mouse.move(5, 5);
    await picture('dark-green');
    const most = await brightest();
    // 0x8b is the brightest ink, a tenth of the light of white.
    expect(most[0] === 0 && most[2] === 0 && most[1] > 100 && most[1] <= 0x8b, `the brightest are ${most}`);
    expect(await grave() === '', await grave());
    const first = await heard();
    expect(first.ticks === 1 && first.tones.join() === '660,880' && first.state === 'running', JSON.stringify(first));
    // One slip in the text: one low tone, and back.
    await into(limpet, '(300, 700) mm', '(300, 700) m'.length);
    await press('Shift+ArrowRight');
    await keyboard.type('W');
    const low = [];
    await until(async () => { low.push(...(await heard()).tones); return low.length > 0; }, 'nothing is heard of an error');
    await page.waitForTimeout(800);
    low.push(...(await heard()).tones);
    expect(low.join() === '220', `heard was ${low}`);
    await press('Control+Z');
    const rising = [];
    for (let i = 0; i < 8 && await page.locator('.tab.dirty').count(); i++) {
      await press('Control+Z');
      await page.waitForTimeout(700);
    }
    await until(async () => { rising.push(...(await heard()).tones); return rising.slice(-2).join() === '660,880'; }, 'it is not heard that all is well again');
    await plan.focus();
    await press('Escape');
    await panel.locator('body:not([data-cover]):not([data-dim])').waitFor();
    const last = await heard();
    expect(last.ticks === 0 && last.tones.join() === '880,660', JSON.stringify(last));
    await clean('the dark');
  },
  async 'where nothing is known it is black, a command does it too, and a click leads back'() {
    await read(PAGE);
    await item('gate').waitFor();
    await command('Darken the Bench Plan');
    await panel.locator('#card', { hasText: 'The colour of the safelight is not written in “Whelk shell”' }).waitFor();
    await panel.locator('#go-dark').click();
    await panel.locator('body[data-cover="black"]').waitFor();
    const most = await brightest();
    expect(most.join() === '0,0,0', `the brightest are ${most}`);
    await picture('dark-black');
    // No key writes what nobody sees.
    await item('M1').focus();
    await press('Shift+ArrowLeft');
    await page.waitForTimeout(500);
    await clean('a key in the dark');
    const box = await boxOf(page.locator('iframe.webview.ready'));
    await mouse.click(box.x + box.width / 2, box.y + box.height / 3);
    await panel.locator('body:not([data-cover]):not([data-dim])').waitFor();
    await panel.locator('#said', { hasText: 'lit again' }).waitFor({ state: 'attached' });
  },
  async 'a plate is chosen from a list, where a view is of one plate and there are more'() {
    await read('two-plates.plate');
    await item('P2').waitFor();
    const plates = panel.locator('#plates select');
    expect(!(await plates.isVisible()), 'the table from above has a list of plates');
    await panel.locator('#looks select').selectOption({ label: 'the object as the plate sees it' });
    await panel.locator('#view text', { hasText: 'from the middle of P1' }).waitFor();
    await plates.selectOption({ label: 'P2' });
    await panel.locator('#view text', { hasText: 'from the middle of P2' }).waitFor();
    await panel.locator('#looks select').selectOption({ label: 'the light over the plate' });
    await panel.locator('#view text', { hasText: 'on P2,' }).waitFor();
    expect(await plates.inputValue() === 'P2', 'the list has another one');
    await picture('plates');
    await plates.selectOption({ label: 'P1' });
    await panel.locator('#looks select').selectOption({ label: 'the table from above' });
    await item('P2').waitFor();
    await read(PAGE);
    await item('gate').waitFor();
    await clean('looking');
  },
  async 'the window loaded anew has the plan again'() {
    await panel.locator('#larger').click();
    const before = await view();
    const anew = page.waitForEvent('load', { timeout: 60_000 });
    await command('Developer: Reload Window');
    await anew;
    await words('P1').filter({ hasText: '(700, 700) mm' }).waitFor({ state: 'attached', timeout: 60_000 });
    expect(await view() === before, `the view is ${await view()} and not ${before}`);
    await panel.locator('#fit').click();
  },
  async 'a server that starts again draws it again'() {
    await item('M1').evaluate((element) => { element.sameAsBefore = true; });
    await command('Platewright: Restart Server');
    await toText();
    await goInto(original, '(1100, 100)', 2);
    await keyboard.press('Shift+ArrowRight');
    await keyboard.type('0');
    await words('M1').filter({ hasText: '(1000, 100) mm' }).waitFor({ state: 'attached' });
    expect(await item('M1').evaluate((element) => element.sameAsBefore === true), 'the picture was taken away meanwhile');
    await press('Control+Z');
    await words('M1').filter({ hasText: '(1100, 100) mm' }).waitFor({ state: 'attached' });
  },
  async 'text that can’t be read leaves the picture, and says so'() {
    await read(PAGE);
    await into(original, 'setup "Whelk', 2);
    await keyboard.type('x');
    await panel.locator('#note', { hasText: 'can’t be read' }).waitFor();
    await item('M1').waitFor();
    await press('Control+Z');
    await panel.locator('#note:empty').waitFor({ state: 'attached' });
  },
  async 'it follows the page and the setup'() {
    await read('two.plate');
    await plan.and(panel.locator('[aria-label="Cockle"]')).waitFor();
    const text = readFileSync(join(folder, 'two.plate'), 'utf8');
    await panel.locator('#setups select').selectOption({ label: 'Razor clam' });
    await plan.and(panel.locator('[aria-label="Razor clam"]')).waitFor();
    await into(text, 'mirror M1');
    await plan.and(panel.locator('[aria-label="Cockle"]')).waitFor();
    await into(text, 'variant "farther"');
    await plan.and(panel.locator('[aria-label="Razor clam"]')).waitFor();
    await read('strings.plate');
    await panel.locator('#nothing', { hasText: 'Nothing of “By string” has a place on the table' }).waitFor();
  },
  async 'a page of lengths by string shows its arms, though nobody asked for another view'() {
    await read('whelk-by-string.plate');
    // In the order of the text: the reference first, 750 and 721 mm.
    await item('reference.2').waitFor();
    expect(await panel.locator('#looks select').evaluate((list) => list.selectedOptions[0].text) === 'the arms unrolled', 'the list has another view');
    expect(await panel.locator('#nothing').isHidden() && await panel.locator('#note').textContent() === '', 'it is said that something is not drawn');
    const plan = panel.locator('#looks option', { hasText: 'the table from above' });
    expect(await plan.evaluate((o) => o.disabled && o.title.includes('has a place')), 'the table from above is offered, or does not say why it cannot be drawn');
    await panel.locator('#figures li', { hasText: 'mismatch' }).waitFor();
    await picture('arms-by-string');
    // Back where things have places, the table is what is shown.
    await read(PAGE);
    await item('gate').waitFor();
    await clean('looking');
  },
  async 'the finished hologram is drawn as it hangs, with what each eye sees of it'() {
    await read('limpet-for-the-porch.plate');
    await item('reference.2').waitFor();
    await panel.locator('#looks select').selectOption({ label: 'the finished hologram as it hangs' });
    await panel.locator('#view text', { hasText: '1200 mm from the plate,' }).waitFor();
    for (const eye of ['left', 'right']) await panel.locator('#view text', { hasText: `${eye} eye` }).waitFor();
    await picture('hung');
    // What was chosen stays chosen.
    await read(PAGE);
    await panel.locator('#looks select').selectOption({ label: 'the table from above' });
    await item('gate').waitFor();
    await clean('looking');
  },
  async 'a name that looks like markup is only ever text'() {
    await read('hostile.plate');
    await panel.locator('#view text', { hasText: HOSTILE }).waitFor();
    expect(await plan.getAttribute('aria-label') === HOSTILE, 'the name is another');
    expect(await panel.locator('img, #view script, iframe, object, embed').count() === 0, 'there is an element that nobody drew');
    expect(dialogs.length === 0, `there was a dialog: ${dialogs}`);
  },
};

for (const [theme, name] of Object.entries(THEMES)) STEPS[`in the theme ${theme} it can be read and used by all`] = async () => {
  setHere({ 'workbench.colorTheme': theme });
  await read(PAGE);
  await into(original, 'mirror M3');
  await panel.locator(`body.${name}`).waitFor();
  await item('M3').and(panel.locator('[aria-current="true"]')).waitFor();
  await page.waitForTimeout(300);
  const found = await grave();
  expect(found === '', found);
};
