/** Maps over a plate: the same figures that the cells have, the right way round, with lines where a known field has them and colours whose lightness rises evenly. */
import { describe, expect, test } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import type { Mark } from '../../server/drawing/marks.ts';
import { contoursOf, labelPlace } from '../../server/drawing/over-plate/contours.ts';
import { levelsOf, lightnessIn } from '../../server/drawing/over-plate/levels.ts';
import { textOf } from '../../server/drawing/over-plate/over-plate.ts';
import { svgOf } from '../../server/drawing/svg.ts';
import { greyOf, mapColour, STOPS } from '../../server/drawing/tones.ts';
import type { Drawn } from '../../server/drawing/view.ts';
import { viewNamed } from '../../server/drawing/views.ts';
import { overPlate, type OverPlate, type OverWhat } from '../../server/results/maps/over-plate.ts';
import type { Results } from '../../server/results/plan.ts';
import { disk, EXAMPLES } from '../examples/library.ts';

const results = (text: string): Results => analyse('file:///saltmarsh/setup.plate', text).results[0]!;
const example = (name: string): Results => { const page = EXAMPLES.find(e => e.name.endsWith(`/${name}.plate`))!; return analyse(page.uri, page.text, disk).results[0]!; };
const map = (r: Results, what: OverWhat, plate = 'P1'): OverPlate => overPlate(r, r.setup.things.get(plate)!, what)!;
const value = (r: Results, name: string): number => r.graph.value((r.ask(name) ?? r.graph.find(name))!)!;
const drawn = (r: Results, what: string, plate?: string): Drawn => { const of = viewNamed(what)!.of(r, plate === undefined ? {} : { plate }); if (typeof of === 'string') throw new Error(of); return of(); };
const texts = (marks: readonly Mark[]): string[] => marks.flatMap(m => [...(m.text === undefined ? [] : [m.text]), ...texts(m.children)]);
const said = (d: Drawn): string => texts(d.sheet.marks).join(' ');
/** Middle, edges and corners, and the corners alone. */
const net = ({ values, count }: OverPlate): number[] => { const at = [0, (count - 1) / 2, count - 1]; return at.flatMap(j => at.map(i => values[j * count + i]!)); };
const corners = (m: OverPlate): number[] => [0, 2, 6, 8].map(i => net(m)[i]!);
const middle = (m: OverPlate): number => net(m)[4]!;
const near = (a: number, b: number): void => { expect(Math.abs(a / b - 1), `${a} and ${b}`).toBeLessThan(1e-9); };

describe('the map is what the cells say', () => {
  const r = example('whelk-on-the-table');
  test('of the ratio: in the middle, and at its least and greatest over middle, edges and corners', () => {
    const m = map(r, 'ratio');
    near(middle(m), value(r, 'P1.beam ratio'));
    near(Math.min(...net(m)), value(r, 'P1.beam ratio') * value(r, 'P1.object.least ratio across the plate'));
    near(Math.max(...net(m)), value(r, 'P1.beam ratio') * value(r, 'P1.object.greatest ratio across the plate'));
  });
  test('of the ratio to all of several object beams', () => {
    const jug = example('key-and-fill');
    const m = map(jug, 'ratio');
    near(middle(m), value(jug, 'P1.beam ratio'));
    near(Math.min(...net(m)), value(jug, 'P1.beam ratio') * value(jug, 'P1.least ratio across the plate'));
    near(Math.max(...net(m)), value(jug, 'P1.beam ratio') * value(jug, 'P1.greatest ratio across the plate'));
  });
  test('of the light in the middle', () => {
    near(middle(map(r, 'light')), value(r, 'P1.light'));
    const jug = example('key-and-fill');
    near(middle(map(jug, 'light')), value(jug, 'P1.light'));
  });
  test('of the light of a reference in its weakest corner', () => {
    const oyster = example('single-beam-oyster');
    const m = map(oyster, 'light');
    near(middle(m), value(oyster, 'P1.reference.light'));
    near(Math.min(...corners(m)) / middle(m), value(oyster, 'P1.reference.corner light'));
  });
  test('of the brightness in the middle, and where the path is shortest and longest', () => {
    const m = map(r, 'brightness');
    near(middle(m), value(r, 'P1.object.brightness'));
    const { coherence } = r.plates[0]!.pairs[0]!;
    const rest = coherence!.inputs.map(c => r.graph.value(c)!);
    const ends = ['least', 'greatest'].map(end => coherence!.rule.compute([value(r, `P1.object.${end} across the plate`), ...rest]));
    near(Math.min(...net(m)), Math.min(...ends));
    for (const end of ends) expect(net(m).some(v => Math.abs(v / end - 1) < 1e-9)).toBe(true);
  });
});

/** A reference that comes from the right and from behind the face of the plate, for who looks from the thing: as in `seen.test.ts`. */
const placed = (reference: string, more = ''): string => `setup "Shard" {
  laser red at (1000, 600) mm heading 180° {
    wavelength: 632.8 nm
    beam diameter: 1 mm
    coherence length: 500 mm
  }
  splitter S1 at (700, 600) mm
  mirror M1 at ${reference} mm
  spreader R1 on M1 -> P1 by 50 mm {
    focal length: 4 mm
  }
  mirror M2 at (700, 0) mm
  object shard at (0, 0) mm {
    size: 20 x 20 x 20 mm
  }
  plate P1 at (0, 300) mm facing shard {
    size: 100 x 80 mm
${more}  }
  beam raw from red
    -> S1
  beam reference from S1 through
    -> M1
    -> R1
    -> P1
  beam object from S1 reflected
    -> M2
    -> shard
    -> P1
}
`;

describe('brightness', () => {
  test('of arms that differ by far more than the light holds together is dark all over, and has no lines', () => {
    // The object arm, 600 + 700 + 300 = 1600 mm, is 776 mm longer than 400 + 424 mm of the reference; the light holds together over 20 mm.
    const r = results(placed('(300, 600)').replace('500 mm', '20 mm'));
    const d = drawn(r, 'brightness');
    expect(said(d)).toContain('0 % all over');
    expect(svgOf(d.sheet)).not.toContain('class="contour');
    expect(svgOf(d.sheet)).toContain(`fill="${mapColour(0)}" x="0"`);
  });
  test('of matched arms is light all over', () => { expect(svgOf(drawn(results(placed('(300, 600)').replace('500 mm', '5000 m')), 'brightness').sheet)).toContain(`fill="${mapColour(1)}" x="0"`); });
});

describe('the way round', () => {
  test('is that of somebody on the side that the reference comes from', () => {
    // From (300, 600) to (0, 300): for somebody at +y who looks along −y, −x lies to the right, and the light comes from his left, at 45°.
    const behind = map(results(placed('(300, 600)')), 'light');
    expect(behind.from![0]).toBeCloseTo(-Math.SQRT1_2, 6);
    expect(behind.from![1]).toBeCloseTo(0, 9);
    // From (300, 0), before the face: for somebody at −y who looks along +y, +x lies to the right.
    const before = map(results(placed('(300, 0)')), 'light');
    expect(before.from![0]).toBeCloseTo(Math.SQRT1_2, 6);
    // What is nearer to the lens has more light: the side that it comes from.
    const [left, right] = [behind.values[12 * 25]!, behind.values[12 * 25 + 24]!];
    expect(left).toBeGreaterThan(right);
    expect(before.values[12 * 25 + 24]).toBeGreaterThan(before.values[12 * 25]!);
  });
  test('goes down the plate from row to row', () => {
    const m = map(results(placed('(300, 600, 250)').replace('laser red', 'beam height: 120 mm\n  laser red')), 'light');
    // From 130 mm above the plate, 300 mm beside and 300 mm before it: 130 / √(2 · 300² + 130²).
    expect(m.from![1]).toBeCloseTo(0.29297, 5);
    expect(m.values[12]).toBeGreaterThan(m.values[24 * 25 + 12]!);
  });
  test('is said, and where only angles tell it that is said too', () => {
    expect(said(drawn(results(placed('(300, 600)')), 'light'))).toContain('seen from the side that the reference comes from');
    const angled = drawn(results(placed('(300, 600)', '    reference angle: 45°\n')), 'light');
    expect(said(angled).replace(/\s+/g, ' ')).toContain('Only angles tell how the light arrives');
  });
});

describe('what nothing tells', () => {
  test('of the middle leaves multiples of it', () => {
    const r = results(placed('(300, 600)'));
    const m = map(r, 'light');
    expect(m).toMatchObject({ relative: true, words: 'light of the reference at P1' });
    expect(middle(m)).toBeCloseTo(1, 12);
    expect(said(drawn(r, 'light'))).toContain('as a multiple of the middle');
  });
  test('of the object leaves the reference, which is said', () => { expect(said(drawn(results(placed('(300, 600)')), 'light')).replace(/\s+/g, ' ')).toContain('The light of the object is not in it'); });
  test('of what is predicted is said with the band of the middle', () => {
    expect(said(drawn(example('whelk-on-the-table'), 'light'))).toMatch(/In the middle [\d.]+ (?:to|±) [\d.]+ µW\/cm²: predicted, since nobody has metered the object light/);
    expect(said(drawn(example('whelk-on-the-table'), 'brightness'))).not.toContain('predicted');
  });
  test.each([
    ['ratio', 'single-beam-oyster', 'One beam makes the hologram'], ['light', 'whelk-by-string', 'How large P1 is, is not written'],
    ['light', 'shots', 'takes a lens that spreads it'], ['brightness', 'back-lit-leaf', 'stand somewhere'], ['ratio', 'back-lit-leaf', 'lit by a beam that something spreads'],
  ])('is a sentence: %s of %s', (what, name, words) => { expect(viewNamed(what)!.of(example(name), {})).toEqual(expect.stringContaining(words)); });
  test('of a laser whose coherence nobody wrote is a sentence', () => { expect(viewNamed('brightness')!.of(results(placed('(300, 600)').replace('    coherence length: 500 mm\n', '')), {})).toContain('“coherence length”'); });
  test('of one plate does not keep another from being drawn', () => {
    const r = example('two-plates');
    expect(drawn(r, 'light').plate).toBe('P1');
    expect(drawn(r, 'light', 'P2').plate).toBe('P2');
  });
});

describe('lines', () => {
  // exp(−2 r²/w²) = level at r = w √(ln(1/level) / 2): of w = 50 at 1/e 35.36, at 0.6 25.27.
  const [w, box, count] = [50, { x: 10, y: 20, w: 100, h: 100 }, 25];
  const values = Array.from({ length: count * count }, (_, i) => { const [x, y] = [(100 * (i % count)) / (count - 1) - 50, (100 * Math.floor(i / count)) / (count - 1) - 50]; return Math.exp((-2 * (x * x + y * y)) / w ** 2); });
  test.each([[Math.exp(-1), 35.355], [0.6, 25.27]])('of a Gaussian lie where %d has its radius', (level, radius) => {
    const [line] = contoursOf(values, count, [level], box);
    const ring = line!.rings.flat();
    expect(ring.length).toBeGreaterThan(20);
    // Straight between points 4.17 apart: off by the curvature of the Gaussian over half of that, less than 0.2.
    for (const [x, y] of ring) expect(Math.abs(Math.hypot(x - 60, y - 70) - radius)).toBeLessThan(0.2);
  });
  test('have their figure on the line, well inside, off what stands there', () => {
    const [line] = contoursOf(values, count, [Math.exp(-1)], box);
    const at = labelPlace(line!, box, 5, [[95, 70]])!;
    expect(Math.abs(Math.hypot(at[0] - 60, at[1] - 70) - 35.355)).toBeLessThan(0.2);
    expect(at[0]).toBeLessThan(40); // as far as can be from the one at the right
    expect(labelPlace(line!, box, 49, [])).toBeUndefined();
  });
  test('stand at round values', () => {
    expect(levelsOf(0.92, 1.6)).toEqual([1, 1.1, 1.2, 1.3, 1.4, 1.5]);
    expect(levelsOf(0.21, 0.98)).toEqual([0.4, 0.6, 0.8]);
    expect(levelsOf(1, 100)).toEqual([2, 5, 10, 20, 50]);
    expect(levelsOf(3, 3.001)).toEqual([]);
    expect(levelsOf(0, 0)).toEqual([]);
  });
});

describe('colours', () => {
  // CIE 1976 L* of an sRGB colour (IEC 61966-2-1; CIE 15): 116 Y^(1/3) − 16, below 0.008856 903.3 Y.
  const lightness = (rgb: string): number => {
    const [r, g, b] = /rgb\((\d+), (\d+), (\d+)\)/.exec(rgb)!.slice(1).map(v => Number(v) / 255).map(c => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4)) as [number, number, number];
    const y = 0.2126 * r + 0.7152 * g + 0.0722 * b;
    return y > 0.008856 ? 116 * Math.cbrt(y) - 16 : 903.3 * y;
  };
  test.each([['of maps', mapColour], ['of the object', (t: number): string => greyOf(2 ** (STOPS * (t - 1)))]] as const)('%s rise in lightness, by nearly even steps', (_, colour) => {
    const all = Array.from({ length: 21 }, (_x, i) => lightness(colour(Math.max(1e-9, i / 20))));
    const steps = all.slice(1).map((l, i) => l - all[i]!);
    const mean = (all[20]! - all[0]!) / 20;
    expect(mean).toBeGreaterThan(4);
    // Colours are whole numbers from 0 to 255, which moves dark ones by up to half of a unit of L*.
    for (const step of steps) expect(Math.abs(step - mean)).toBeLessThan(0.2 * mean);
  });
  test('differ little where the figures differ little', () => {
    // 10 % is a seventh of a stop, of two at least.
    const light = lightnessIn(0.9, 1);
    expect(light(1)).toBe(1);
    expect(light(0.9)).toBeCloseTo(1 - Math.log2(1 / 0.9) / 2, 12);
    expect(lightnessIn(1 / 16, 1)(1 / 16)).toBeCloseTo(0, 12);
    expect(lightnessIn(0, 1)(0)).toBe(0);
    expect(lightnessIn(0, 0)(0)).toBe(0);
  });
});

test('figures are written as people write them', () => {
  // 1 µW/cm² is 0.01 W/m².
  expect(textOf({ what: 'light', relative: false }, 0.0149)).toBe('1.49 µW/cm²');
  expect(textOf({ what: 'ratio', relative: false }, 7.96)).toBe('8:1');
  expect(textOf({ what: 'brightness', relative: false }, 0.284)).toBe('28 %');
  expect(textOf({ what: 'light', relative: true }, 0.8312)).toBe('0.83 times the middle');
});

test('the probe has the figures of the map, over the plate as it is drawn', () => {
  const r = example('whelk-on-the-table');
  const { probe, sheet } = drawn(r, 'ratio');
  expect(probe).toMatchObject({ columns: 25, rows: 25, words: 'beam ratio at P1' });
  expect(probe!.values).toEqual(map(r, 'ratio').values);
  expect(probe!.texts[12 * 25 + 12]).toBe(textOf({ what: 'ratio', relative: false }, value(r, 'P1.beam ratio')));
  expect(probe!.box.w).toBe(probe!.box.h); // a plate of 63 x 63 mm
  expect(probe!.box.x + probe!.box.w).toBeLessThan(sheet.box.x + sheet.box.w);
});

test('the probe says where on the plate a figure is, from the middle', () => {
  const { across, down } = drawn(results(placed('(300, 600)')), 'light').probe!;
  // A plate of 100 x 80 mm in 24 steps: 50 and 40 mm from the middle to its edges, and 4.1667 and 3.3333 mm a step.
  expect([across, down].map(l => [0, 11, 12, 13, 24].map(i => l[i]))).toEqual([
    ['50 mm to the left', '4.2 mm to the left', '', '4.2 mm to the right', '50 mm to the right'], ['40 mm up', '3.3 mm up', '', '3.3 mm down', '40 mm down'],
  ]);
});

test.each(EXAMPLES.map(e => [e.name, e] as const))('is the same text each time, with no number that is none: %s', (_, e) => {
  const once = (): string[] => analyse(e.uri, e.text, disk).results.flatMap(r => ['light', 'ratio', 'brightness'].flatMap(v => { const of = viewNamed(v)!.of(r, {}); return typeof of === 'string' ? [of] : [svgOf(of().sheet)]; }));
  const [a, b] = [once(), once()];
  expect(a).toEqual(b);
  for (const text of a) expect(text).not.toMatch(/NaN|Infinity|undefined/);
});
