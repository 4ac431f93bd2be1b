/** Drags as edits of the text: what is written, in whose unit and digits, and what says why it stays. */
import { describe, expect, test } from 'vitest';
import { alone, analyse, type Library } from '../../server/analysis.ts';
import { dragged, type Drag } from '../../server/drawing/drag/drag.ts';
import { applyEdits } from '../../server/model/edits.ts';

const FILE = 'file:///saltmarsh/setup.plate';
const page = (...more: string[]): string => `setup "Whelk shell" {\n  table: 1200 x 900 mm\n  hole spacing: 25 mm\n  laser red at (50, 100) mm heading 0°\n  mirror M1 at (1000, 100) mm\n  beam stop B1 at (1000, 700) mm\n  beam raw from red\n    -> M1\n    -> B1\n${more.map(l => `  ${l}\n`).join('')}}\n`;
/** The lines that a drag changes. `to` in mm. */
function drag(text: string, item: string, to: readonly [number, number], more: Partial<Drag> & { variant?: string } = {}, library: Library = alone): string {
  const { variant, ...rest } = more;
  const d = dragged(analyse(FILE, text, library), { setup: 'Whelk shell', ...(variant !== undefined ? { variant } : {}) }, { item, gesture: 'move', to: [to[0] / 1000, to[1] / 1000], free: false, dropped: true, ...rest }, library);
  if ('refused' in d) return d.refused;
  const [before, after] = [text.split('\n'), applyEdits(text, d.edits).split('\n')];
  expect(after.length).toBe(before.length);
  expect(d.after.text).toBe(after.join('\n'));
  return after.filter((l, i) => l !== before[i]).map(l => l.trim()).join(' | ');
}
const written = (place: string): string => page().replace('(1000, 100) mm', place);

describe('a thing that is moved over the table', () => {
  test.each([
    // holes stand at multiples of 25 mm
    ['to the next hole', page(), [988, 111], false, 'mirror M1 at (1000, 100) mm', ''],
    ['to another hole', page(), [813, 212], false, 'mirror M1 at (825, 200) mm', undefined],
    ['freely, to whole millimetres', page(), [813.4, 212.6], true, 'mirror M1 at (813, 213) mm', undefined],
    ['off the table to the left', page(), [-30, 100], false, 'mirror M1 at (-25, 100) mm', undefined],
    // 812.5 mm lies between two holes; 32 in is 812.8 mm: a hole is 1 in here, whatever the table says in mm
    ['in the author’s cm', written('(100, 10) cm'), [813, 212], false, 'mirror M1 at (82.5, 20) cm', undefined],
    ['with the author’s digits', written('(1000.00, 100.0) mm'), [813, 212], false, 'mirror M1 at (825.00, 200.0) mm', undefined],
    ['each number with its unit', written('(100 cm, 100 mm)'), [813, 212], false, 'mirror M1 at (82.5 cm, 200 mm)', undefined],
    // 813/25.4 = 32.0079, 213/25.4 = 8.3858
    ['in inches', written('(40, 4) in'), [813, 213], true, 'mirror M1 at (32.008, 8.386) in', undefined],
    ['and keeps its height', written('(1000, 100, 120) mm'), [813, 212], false, 'mirror M1 at (825, 200, 120) mm', undefined],
    ['from below zero', written('(-100, +50) mm'), [813, 212], false, 'mirror M1 at (825, 200) mm', undefined],
  ] as const)('%s', (_, text, to, free, line, other) => { expect(drag(text, 'M1', to, { free })).toBe(other ?? line); });
  test('without holes goes by millimetres', () => { expect(drag(page().replace(/ {2}hole.*\n/, ''), 'M1', [813.4, 212.6])).toBe('mirror M1 at (813, 213) mm'); });
});

describe('a thing on its beam', () => {
  // from (1000, 100) straight up to (1000, 700): the pointer at y 312 is 212 mm along, whatever its x
  const on = page().replace('    -> B1\n', '    -> R1\n    -> B1\n').replace('  beam raw', '  spreader R1 on M1 -> B1 by 60 mm\n  beam raw');
  test('goes along it', () => { expect(drag(on, 'R1', [900, 312])).toBe('spreader R1 on M1 -> B1 by 212 mm'); });
  test('and not past its ends', () => {
    expect(drag(on, 'R1', [1000, -50])).toBe('spreader R1 on M1 -> B1 by 1 mm');
    expect(drag(on, 'R1', [1000, 5000])).toBe('spreader R1 on M1 -> B1 by 599 mm');
  });
  test('beyond another one, as far as the pointer is along its line', () => {
    const beyond = page().replace('beam stop B1 at (1000, 700) mm', 'beam stop B1 beyond M1 by 600 mm turning left');
    expect(drag(beyond, 'B1', [700, 400])).toBe('beam stop B1 beyond M1 by 300 mm turning left');
  });
});

describe('a thing that is turned', () => {
  test('heads for the pointer, by whole degrees, or by tenths', () => {
    // from (50, 100) to (150, 200): 45°; to (150, 190): arctan 0.9 = 41.987°
    expect(drag(page(), 'red', [150, 200], { gesture: 'turn' })).toBe('laser red at (50, 100) mm heading 45°');
    expect(drag(page(), 'red', [150, 190], { gesture: 'turn' })).toBe('laser red at (50, 100) mm heading 42°');
    expect(drag(page(), 'red', [150, 190], { gesture: 'turn', free: true })).toBe('laser red at (50, 100) mm heading 42°');
    expect(drag(page(), 'red', [150, 170], { gesture: 'turn', free: true })).toBe('laser red at (50, 100) mm heading 35°');
    expect(drag(page(), 'red', [50, 0], { gesture: 'turn' })).toBe('laser red at (50, 100) mm heading 270°');
  });
  test('only where it says how it stands', () => {
    expect(drag(page(), 'M1', [0, 0], { gesture: 'turn' })).toBe('M1 turns by itself as its beam needs; write “heading 90°” to turn it by hand.');
    expect(drag(page('plate P1 at (200, 700) mm facing B1'), 'P1', [0, 0], { gesture: 'turn' })).toBe('P1 faces B1; write “heading 90°” instead to turn it.');
  });
});

describe('a key', () => {
  const key = (text: string, item: string, by: readonly [number, number], more: Partial<Drag> = {}): string => drag(text, item, [by[0] * 1000, by[1] * 1000], { stepped: true, ...more });
  const at = (place: string): string => `mirror M1 at ${place}`;
  test.each([
    // holes stand at multiples of 25 mm
    ['to the next hole', '(1000, 100) mm', [1, 0], false, '(1025, 100) mm'], ['the other way', '(1000, 100) mm', [0, -1], false, '(1000, 75) mm'],
    ['from beside a hole to the next one that way', '(1010, 100) mm', [1, 0], false, '(1025, 100) mm'], ['and the other way', '(1010, 100) mm', [-1, 0], false, '(1000, 100) mm'],
    ['and leaves the other number alone', '(1000, 103.7) mm', [1, 0], false, '(1025, 103.7) mm'], ['also by millimetres', '(1000, 103.7) mm', [-1, 0], true, '(999, 103.7) mm'],
    ['to the next millimetre', '(1000, 103.7) mm', [0, 1], true, '(1000, 104.0) mm'], ['across zero', '(-10, 100) mm', [1, 0], false, '(0, 100) mm'], ['in the author’s cm', '(100, 10) cm', [0, 1], false, '(100, 12.5) cm'],
    // 40 in are 1016 mm: the next hole to the left stands at 1000 mm, 39.370 in
    ['in inches', '(40, 4) in', [-1, 0], false, '(39.37, 4) in'],
  ] as const)('moves it %s: %s', (_, place, by, free, to) => { expect(key(written(place), 'M1', by, { free })).toBe(at(to)); });
  test('moves a thing on its beam along that, and not across', () => {
    // the beam runs straight up from (1000, 100)
    const on = page().replace('    -> B1\n', '    -> R1\n    -> B1\n').replace('  beam raw', '  spreader R1 on M1 -> B1 by 60 mm\n  beam raw');
    expect(key(on, 'R1', [0, 1])).toBe('spreader R1 on M1 -> B1 by 85 mm');
    expect(key(on, 'R1', [0, -1], { free: true })).toBe('spreader R1 on M1 -> B1 by 59 mm');
    expect(key(on, 'R1', [1, 0])).toBe('R1 goes along its beam only, and that key points across it.');
  });
  test.each([
    ['0°', 1, false, '1°'], ['0°', -1, false, '359°'], ['359°', 1, false, '0°'], ['41.98°', 1, false, '42.00°'], ['41.98°', -1, false, '41.00°'], ['45°', 1, true, '45.1°'], ['-30°', -1, false, '329°'],
  ] as const)('turns it from %s by %d (beside whole degrees: %s): %s', (from, by, free, to) => {
    expect(key(page().replace('heading 0°', `heading ${from}`), 'red', [by, 0], { gesture: 'turn', free })).toBe(`laser red at (50, 100) mm heading ${to}`);
  });
  test('turns only what says how it stands', () => { expect(key(page(), 'M1', [1, 0], { gesture: 'turn' })).toBe('M1 turns by itself as its beam needs; write “heading 90°” to turn it by hand.'); });
  test('with no number moves nothing', () => { expect(key(page(), 'M1', [NaN, 0])).toMatch(/^M1 cannot /); });
});

test('a place in another view is none on the table', () => {
  const d = (view: string): object => dragged(analyse(FILE, page()), { view }, { item: 'M1', gesture: 'move', to: [0.8, 0.2], free: false, dropped: false }, alone);
  for (const view of ['side', 'arms', 'object', 'attic']) expect(d(view)).toEqual({ refused: 'Things are moved on the table from above only.' });
  expect(d('plan')).not.toHaveProperty('refused');
});

describe('what stays says why', () => {
  test.each([
    ['worked out', page('let gap = 100 mm').replace('(1000, 100) mm', '(gap * 10, gap)'), 'M1', 'M1 stands where gap * 10 says: its place is worked out; change that in the text.'],
    ['measured', written('(1000, 100) mm ± 2 mm'), 'M1', 'M1 stands where it was measured; change its figures in the text when you have moved it.'],
    ['one of them measured', written('(1000 mm ± 2 mm, 100 mm)'), 'M1', 'M1 was measured (1000 mm ± 2 mm); change the figure in the text when you have moved it.'],
    ['to be found', written('?'), 'M1', 'M1 stands where ? says.'],
    ['without a place', page('mirror M2'), 'M2', 'M2 has no place in the text; write where it stands, such as “at (350, 100) mm”.'],
    ['gone', page(), 'M9', 'M9 is not on the page any more.'],
    ['a leg', page(), 'raw.1', 'raw.1 is not on the page any more.'],
  ] as const)('%s', (_, text, item, words) => { expect(drag(text, item, [500, 500])).toBe(words); });
  test('what the language does not take is not written', () => {
    expect(drag(page(), 'M1', [1e12, 0])).toMatch(/^M1 cannot /);
    expect(drag(page(), 'M1', [NaN, 0])).toMatch(/^M1 cannot /);
    expect(drag(page(), 'M1', [Infinity, 0])).toMatch(/^M1 cannot /);
  });
});

describe('in a variant', () => {
  const text = page('variant "farther" {', '  M1 at (1100, 100) mm', '}');
  test('its own lines are written', () => { expect(drag(text, 'M1', [813, 212], { variant: 'farther' })).toBe('M1 at (825, 200) mm'); });
  test('those of the setup are not', () => { expect(drag(text, 'B1', [813, 212], { variant: 'farther' })).toBe('B1 stands where the setup itself says, and not “farther”; write its place into the variant, or drag it in the setup.'); });
  test('the setup’s are its own', () => { expect(drag(text, 'M1', [813, 212])).toBe('mirror M1 at (825, 200) mm'); });
});
