/** A setup over how it was. Expected places are the coordinates of the two texts, in mm; on the sheet y runs downwards. */
import { describe, expect, test } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import type { Mark } from '../../server/drawing/marks.ts';
import { overlaidOf } from '../../server/drawing/overlaid/overlaid.ts';
import { uncovered } from '../../server/drawing/overlaid/uncovered.ts';
import { PALETTES } from '../../server/drawing/style.ts';
import { inkedSvg, svgOf } from '../../server/drawing/svg.ts';
import type { Drawn } from '../../server/drawing/view.ts';
import { reviewOf, type SetupReview } from '../../server/review/review.ts';
import { disk, EXAMPLES } from '../examples/library.ts';
import { whelk } from '../features/source.ts';
import { all } from './all-marks.ts';

const URI = 'file:///saltmarsh/setup.plate';
const review = (before: string | undefined, after: string | undefined): SetupReview => reviewOf(before === undefined ? undefined : analyse(URI, before), after === undefined ? undefined : analyse(URI, after)).setups[0]!;
function over(before: string | undefined, after: string | undefined): Drawn {
  const of = overlaidOf(review(before, after));
  if (typeof of === 'string') throw new Error(of);
  return of();
}
const ofClass = (d: Drawn, name: string): Mark[] => all(d.sheet.marks).filter(m => m.attributes['class']?.split(' ').includes(name));
/** Marks of the picture itself; samples of the legend belong to no item. */
const items = (d: Drawn): string[] => [...new Set(all(d.sheet.marks).flatMap(m => m.attributes['data-item'] ?? []))];
const ghosts = (d: Drawn): string[] => items(d).filter(id => id.startsWith('before:'));
const marksOf = (d: Drawn, id: string): Mark[] => all(all(d.sheet.marks).filter(m => m.attributes['data-item'] === id));
const texts = (d: Drawn): string[] => all(d.sheet.marks).flatMap(m => (m.tag === 'text' ? [m.text!] : []));
const notes = (d: Drawn, id: string): string[] => marksOf(d, id).filter(m => m.attributes['class']?.includes('quiet')).map(m => m.text!);
const paths = (marks: readonly Mark[]): string[] => marks.flatMap(m => m.attributes['d'] ?? []);

/** Light along the near edge to M1, and from there straight away to the stop. */
const LINES = ['table: 1200 x 900 mm', 'laser red at (0, 100) mm heading 0°', 'mirror M1 at (1000, 100) mm', 'beam stop B1 at (1000, 700) mm', 'beam raw from red', '  -> M1', '  -> B1'];
const setup = (lines: readonly string[], name = 'Whelk shell'): string => `setup "${name}" {\n${lines.map(l => `  ${l}\n`).join('')}}\n`;
const corner = setup(LINES);
const changed = (...pairs: readonly (readonly [string, string])[]): string => pairs.reduce((text, [a, b]) => { expect(text).toContain(a); return text.replaceAll(a, b); }, corner);

describe('what is as it was', () => {
  test.each(EXAMPLES.filter(e => /^setup /m.test(e.text)).map(e => [e.name, e] as const))('has no ghost: %s', (_, { uri, text }) => {
    const setups = reviewOf(analyse(uri, text, disk), analyse(uri, `// the same\n${text}`, disk)).setups;
    expect(setups.length).toBeGreaterThan(0);
    for (const s of setups) {
      const of = overlaidOf(s);
      if (typeof of === 'string') continue;
      const d = of();
      expect(ghosts(d)).toEqual([]);
      expect(ofClass(d, 'ghost')).toEqual([]);
      expect(d.sheet.title).toMatch(/nothing stands elsewhere$|all arms are as long as they were$/);
    }
  });
  test('under another name has none either, and says the old one', () => {
    const d = over(corner, changed(['M1', 'kelp']));
    expect(ghosts(d)).toEqual([]);
    expect(notes(d, 'kelp')).toEqual(['was M1']);
  });
  test('is drawn once where light is only cut up: a shutter is put into it', () => {
    const d = over(corner, changed(['beam stop B1', 'shutter gate at (400, 100) mm\n  beam stop B1'], ['    -> M1', '    -> gate\n    -> M1']));
    expect(ghosts(d)).toEqual([]);
    expect(notes(d, 'gate')).toEqual(['new']);
    // A second outline 7 mm out along the diagonals, besides the sample of the legend.
    expect(ofClass(d, 'new')).toHaveLength(2);
  });
  test('rises with all the beams', () => {
    const at = (height: number): string => setup(['table: 1200 x 900 mm', `beam height: ${height} mm`, ...LINES.slice(1)]);
    const d = over(at(120), at(150));
    expect(ghosts(d)).toEqual([]);
    expect(texts(d)).toEqual(expect.arrayContaining(['beams 150 mm above the table', 'Before, beams ran 120 mm above the table.']));
    expect(texts(d).filter(t => /higher|lower/.test(t))).toEqual([]);
  });
});

describe('what was moved', () => {
  // The beam to M1 is shorter by 200 mm; that from it ran to (1000, 700).
  const d = over(corner, changed(['M1 at (1000, 100)', 'M1 at (800, 100)']));
  test('stands where it stands, over an outline where it stood', () => {
    expect(d.items!.find(i => i.id === 'M1')).toMatchObject({ x: 800, y: -100 });
    expect(d.items!.find(i => i.id === 'before:M1')).toMatchObject({ x: 1000, y: -100, words: 'before: mirror M1 at (1000, 100) mm' });
    const [outline] = paths(marksOf(d, 'before:M1').filter(m => m.attributes['class'] === 'ghost'));
    const xs = [...outline!.matchAll(/[ML](-?[\d.]+) /g)].map(m => Number(m[1]));
    expect(Math.min(...xs)).toBeLessThan(1001);
    expect(Math.max(...xs)).toBeGreaterThan(999);
    expect(Math.min(...xs)).toBeGreaterThan(900);
  });
  test('has an arrow from the old middle to the new one, with the distance', () => {
    const [line] = marksOf(d, 'M1').filter(m => m.attributes['class'] === 'shift');
    expect(['x1', 'y1', 'y2'].map(k => Number(line!.attributes[k]))).toEqual([1000, -100, -100]);
    expect(paths(marksOf(d, 'M1').filter(m => m.attributes['class'] === 'arrow'))[0]).toMatch(/^M800 -100L/);
    expect(notes(d, 'M1')).toContain('200 mm');
  });
  test('leaves of its light only what does not lie below light as it is', () => {
    expect(paths(marksOf(d, 'before:raw.1'))).toEqual(['M800 -100L1000 -100']);
    expect(paths(marksOf(d, 'before:raw.2'))).toEqual(['M1000 -100L1000 -700']);
  });
  test('by a little is told below its name', () => {
    // 30 mm to the right and 40 mm away: 50 mm
    const near = over(corner, changed(['B1 at (1000, 700)', 'B1 at (1030, 740)']));
    expect(notes(near, 'B1')).toContain('moved 50 mm');
    expect(ghosts(near)).toEqual(expect.arrayContaining(['before:B1', 'before:raw.2']));
    expect(ghosts(near)).not.toContain('before:red');
    expect(ghosts(near)).not.toContain('before:raw.1');
  });
  test('by less than a line is wide has no ghost, and is told', () => {
    const near = over(corner, changed(['B1 at (1000, 700)', 'B1 at (1000, 700.4)']));
    expect(ghosts(near)).toEqual([]);
    expect(notes(near, 'B1')).toEqual(['moved 0.4 mm']);
  });
  test('up is told', () => { expect(notes(over(corner, changed(['B1 at (1000, 700)', 'B1 at (1000, 700, 90)'])), 'B1').join()).toMatch(/\d+ mm (?:higher|lower)/); });
});

describe('what was turned', () => {
  test('is drawn over its old outline, with the angle', () => {
    const d = over(corner, changed(['B1 at (1000, 700)', 'B1 at (300, 800)']));
    // From M1 the light ran along (0, 1), and runs along (−0.7, 0.7): 45° on, so that the mirror turns by 22.5°, which reads 23° (22.5 rounds up).
    expect(notes(d, 'M1')).toEqual(['turned 23°']);
    expect(ghosts(d)).toContain('before:M1');
    expect(marksOf(d, 'M1').filter(m => m.attributes['class'] === 'shift')).toEqual([]);
  });
});

describe('what is gone', () => {
  const d = over(changed(['beam stop B1', 'black card C1 at (300, 600) mm\n  beam stop B1']), corner);
  test('is an outline with its name, and says so', () => {
    expect(ghosts(d)).toEqual(['before:C1']);
    expect(marksOf(d, 'before:C1').flatMap(m => m.text ?? [])).toEqual(expect.arrayContaining(['C1', 'gone']));
    expect(d.items!.find(i => i.id === 'before:C1')).toMatchObject({ x: 300, y: -600 });
  });
  test('differs from what has no place any more', () => {
    const broken = over(corner, changed(['beam stop B1 at (1000, 700) mm', 'beam stop B1 at (1000, 700 mm']));
    expect(notes(broken, 'before:B1')).toEqual(['no place now']);
    expect(notes(over(changed(['beam stop B1 at (1000, 700) mm', 'beam stop B1 at (1000, 700 mm']), corner), 'B1')).toEqual(['had no place']);
  });
  test('may be the whole setup, which is all ghosts then', () => {
    const gone = over(corner, undefined);
    expect(gone.sheet.title).toBe('Whelk shell, gone');
    expect(items(gone).sort()).toEqual(['before:B1', 'before:M1', 'before:raw.1', 'before:raw.2', 'before:red']);
    expect(ofClass(gone, 'table')).toEqual([]);
  });
  test('or nothing at all, where the setup is new', () => {
    const come = over(undefined, corner);
    expect(come.sheet.title).toBe('Whelk shell, new');
    expect(ofClass(come, 'ghost')).toEqual([]);
  });
});

describe('the sheet', () => {
  test('has room for both states', () => {
    // A table that was 2400 mm wide and 1500 mm deep.
    const d = over(changed(['1200 x 900', '2400 x 1500']), corner);
    expect(texts(d)).toContain('Before, the table was 2400 x 1500 mm.');
    const [rect] = ofClass(d, 'ghost').filter(m => m.tag === 'rect');
    expect(['x', 'y', 'width', 'height'].map(k => Number(rect!.attributes[k]))).toEqual([0, -1500, 2400, 1500]);
    const { x, y, w } = d.sheet.box;
    expect(x).toBeLessThan(0);
    expect(y).toBeLessThan(-1500);
    expect(x + w).toBeGreaterThan(2400);
  });
  test('says in its legend what ghosts and arrows are', () => { expect(texts(over(corner, changed(['M1 at (1000, 100)', 'M1 at (800, 100)'])))).toEqual(expect.arrayContaining(['where it was', 'light as it ran', 'moved'])); });
  test('tells in its title what is other', () => {
    expect(over(corner, changed(['B1 at (1000, 700)', 'B1 at (1030, 740)'])).sheet.title).toMatch(/^Whelk shell, now and before: .*B1 moved 50 mm.*; light runs otherwise$/);
    expect(over(corner, corner.replace('Whelk shell', 'Whelk')).sheet.title).toBe('Whelk, formerly Whelk shell, now and before: nothing stands elsewhere');
  });
  test('has only text of names, whatever they are', () => {
    const hostile = '</text><script>x</script>&';
    const svg = svgOf(over(setup(LINES, hostile), setup(LINES.map(l => l.replace('(1000, 700)', '(1000, 760)')), hostile)).sheet);
    expect(svg).not.toContain('<script');
    expect(svg).toContain('&#60;script&#62;');
  });
  test('cannot be drawn without places and lengths, and says why', () => { expect(overlaidOf(review('setup "Shell" {\n  mirror M1\n}\n', 'setup "Shell" {\n  mirror M2\n}\n'))).toMatch(/^Nothing in “Shell” has a place, and no two arms/); });
});

describe('of strings, arms over how they were', () => {
  // The object arm: 410 + 377 + 468 + 300 = 1555 mm, and with 384 mm instead of 468 mm 1471 mm; the reference: 750 + 721 = 1471 mm.
  const d = over(whelk, whelk.replace('468 mm', '384 mm'));
  const strips = (of: Drawn, look: string): number[][] => ofClass(of, look).map(m => [Number(m.attributes['x']), Number(m.attributes['width'])]);
  test('old legs are outlines below those of now, of arms that changed only', () => {
    expect(strips(d, 'ghost')).toEqual([[0, 410], [410, 377], [787, 468], [1255, 300]]);
    expect(strips(d, 'strip-object')).toEqual([[0, 410], [410, 377], [787, 384], [1171, 300]]);
    expect(ghosts(d)).toEqual(['before:object.1', 'before:object.2', 'before:object.3', 'before:object.4']);
    expect(texts(d)).toContainEqual(expect.stringMatching(/^was 1555 ± \d mm$/));
  });
  test('an end that the arm has no more is named', () => {
    const short = over(whelk, whelk.replace('    -> M3: 377 mm ± 2 mm\n', ''));
    expect(ofClass(short, 'quiet').map(m => m.text)).toEqual(expect.arrayContaining(['410 mm', '377 mm to M3', '468 mm', '300 mm']));
  });
  test('of a setup that is gone all of them', () => {
    const gone = over(whelk, undefined);
    expect(strips(gone, 'ghost').slice(0, 2)).toEqual([[0, 750], [750, 721]]);
    expect(ofClass(gone, 'strip')).toEqual([]);
  });
  test('places come in place of strings: the plan of now', () => { expect(over(whelk, corner.replace('Whelk shell', /setup "([^"]*)"/.exec(whelk)![1]!)).sheet.title).toMatch(/now: nothing had a place before$/); });
});

describe('what is left of a line beside others', () => {
  const line = [[0, 0], [100, 0]] as const;
  test.each([
    ['nothing beside it', [], [[[0, 0], [100, 0]]]],
    ['the same the other way', [[[100, 0], [0, 0]]], []],
    ['two halves', [[[0, 0], [50, 0]], [[50, 0], [100, 0]]], []],
    ['a part in its middle', [[[30, 0], [60, 0]]], [[[0, 0], [30, 0]], [[60, 0], [100, 0]]]],
    ['one that crosses it', [[[50, -50], [50, 50]]], [[[0, 0], [100, 0]]]],
    ['one beside it, further than a line is wide', [[[0, 2], [100, 2]]], [[[0, 0], [100, 0]]]],
    // 5 mm off at the far end: 1 mm off after 20 mm
    ['one that leaves it slowly', [[[0, 0], [100, 5]]], [[[20, 0], [100, 0]]]],
    ['a longer one', [[[-10, 0], [300, 0]]], []],
  ] as const)('%s', (_, others, left) => { expect(uncovered(line, others, 1)).toEqual(left); });
});

// Every ninth number of each example is changed in turn: the picture is drawn, the same each time, with no number that is none.
describe('whatever is changed on an example', () => {
  test.each(EXAMPLES.map(e => [e.name, e] as const))('%s', (_, { uri, text }) => {
    const numbers = [...text.matchAll(/(?<![\w.])\d+(?= |,|\))/g)].filter((_m, i) => i % 9 === 0);
    for (const { index, 0: number } of numbers) {
      const other = `${text.slice(0, index)}${Number(number) + 37}${text.slice(index + number.length)}`;
      for (const s of reviewOf(analyse(uri, text, disk), analyse(uri, other, disk)).setups) {
        const of = overlaidOf(s);
        if (typeof of === 'string') continue;
        const d = of();
        const svg = inkedSvg(d.sheet, PALETTES.light);
        expect(svg).not.toMatch(/NaN|Infinity|undefined|null|[\d)]e-\d/);
        expect(inkedSvg(of().sheet, PALETTES.light)).toBe(svg);
        const ids = new Set(items(d));
        expect(d.items!.filter(i => !ids.has(i.id))).toEqual([]);
      }
    }
  });
});

test('for a small picture letters are higher, and all else stands where it stood', () => {
  const s = review(corner, changed(['(1000, 100)', '(900, 100)'], ['(1000, 700)', '(900, 700)']));
  const [small, large] = [1, 2].map(letters => (overlaidOf(s, letters) as () => Drawn)()) as [Drawn, Drawn];
  const name = (d: Drawn): number => Number(marksOf(d, 'M1').find(m => m.text === 'M1')!.attributes['font-size']);
  expect(name(large)).toBeCloseTo(2 * name(small), 1);
  expect(large.items).toEqual(small.items);
  expect(paths(marksOf(large, 'before:M1'))).toEqual(paths(marksOf(small, 'before:M1')));
});
