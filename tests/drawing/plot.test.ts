/** Plots: numbers lie where their scale says, gaps stay gaps, and nothing lies over anything it could be confused with. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { plotOf, type Plot, type PlotCurve } from '../../server/drawing/plot/plot.ts';
import type { Mark } from '../../server/drawing/marks.ts';
import { even, scaleFor } from '../../server/drawing/plot/scale.ts';
import { svgOf } from '../../server/drawing/svg.ts';
import { all } from './all-marks.ts';

const curve = (label: string, ys: readonly (number | undefined)[], give = 0): PlotCurve => ({ label, points: ys.map((y, x) => (y === undefined ? undefined : { x, y, low: y - give, high: y + give, words: `${x}: ${y}` })) });
const plot = (curves: readonly PlotCurve[], more: Partial<Plot> = {}): Plot => ({
  title: 'A sweep', across: { title: 'x of M1, mm', from: 0, to: 4, text: String }, panels: [{ title: 'mismatch, mm', shares: false, curves, text: String }], told: [], notes: [], joined: true, ...more,
});
const marksOf = (p: Plot): Mark[] => all(plotOf(p).marks);
const classed = (p: Plot, name: string): Mark[] => marksOf(p).filter(m => (m.attributes['class'] ?? '').split(' ').includes(name));

describe('scales', () => {
  test('evenly: from an end to the other', () => {
    const s = even(10, 20, 5);
    expect([s.along(10), s.along(15), s.along(20)]).toEqual([0, 0.5, 1]);
    expect(s.ticks).toEqual([10, 12, 14, 16, 18, 20]);
  });
  test('numbers of many sizes: as far from 1 to 10 as from 10 to 100', () => {
    const s = scaleFor([1, 100], false);
    expect([s.from, s.to]).toEqual([1, 100]);
    expect(s.along(10)).toBeCloseTo(0.5, 12);
    expect(s.ticks).toEqual([1, 2, 5, 10, 20, 50, 100]);
  });
  test('over many decades only these are written', () => { expect(scaleFor([1, 1e5], false).ticks).toEqual([1, 10, 100, 1000, 10_000, 100_000]); });
  test('shares lie evenly, however small one is', () => {
    const s = scaleFor([0.0001, 100], true);
    expect(s.along(50)).toBeCloseTo(0.5, 12);
  });
  test('one number stands in the middle, and no number is a scale as well', () => {
    expect(scaleFor([7], false).along(7)).toBeCloseTo(0.5, 12);
    expect(scaleFor([0], false).along(0)).toBeCloseTo(0.5, 12);
    expect(scaleFor([], false).ticks.length).toBeGreaterThan(1);
  });
  test('every number lies on its scale, in their order', () => {
    const number = fc.double({ min: -1e9, max: 1e9, noNaN: true });
    fc.assert(fc.property(fc.array(number, { minLength: 1, maxLength: 12 }), fc.boolean(), (numbers, shares) => {
      const s = scaleFor(numbers, shares);
      const along = [...numbers].sort((a, b) => a - b).map(s.along);
      for (const [i, a] of along.entries()) {
        expect(a).toBeGreaterThanOrEqual(-1e-9);
        expect(a).toBeLessThanOrEqual(1 + 1e-9);
        if (i > 0) expect(a).toBeGreaterThanOrEqual(along[i - 1]!);
      }
    }));
  });
});

describe('curves', () => {
  test('go from the left to the right, up where the number is greater', () => {
    const [line] = classed(plot([curve('', [0, 1, 2, 3, 4])]), 'curve-0').filter(m => m.tag === 'path');
    const points = [...line!.attributes['d']!.matchAll(/[ML](\S+) (\S+?)(?=L|$)/g)].map(m => [Number(m[1]), Number(m[2])]);
    // Evenly over 720, and from the floor of the panel, 210, to its top.
    expect(points).toEqual([[0, 210], [180, 157.5], [360, 105], [540, 52.5], [720, 0]]);
  });
  test('what nobody knows is a gap', () => {
    expect(classed(plot([curve('', [0, 1, undefined, 3, 4])]), 'curve-0').filter(m => m.tag === 'path')).toHaveLength(2);
    expect(marksOf(plot([curve('', [undefined, undefined])])).some(m => m.text === 'unknown')).toBe(true);
  });
  test('a band is there where something is unsure, and only there', () => {
    expect(classed(plot([curve('', [0, 1, 2, 3, 4], 0.5)]), 'band-0')).toHaveLength(1);
    expect(classed(plot([curve('', [0, 1, 2, 3, 4])]), 'band-0')).toHaveLength(0);
  });
  test('names at their ends do not lie over each other', () => {
    const labels = Array.from({ length: 9 }, (_, i) => `curve number ${i}`);
    const heights = marksOf(plot(labels.map(l => curve(l, [1, 1, 1, 1, 1])))).filter(m => labels.includes(m.text ?? '')).map(m => Number(m.attributes['y'])).sort((a, b) => a - b);
    expect(heights).toHaveLength(9);
    for (let i = 1; i < heights.length; i++) expect(heights[i]! - heights[i - 1]!).toBeGreaterThanOrEqual(13);
    expect(heights.at(-1)).toBeLessThan(210 + 20);
  });
  test('curves are told apart by more than hue', () => {
    const looks = classed(plot(['a', 'b', 'c', 'd', 'e', 'f'].map(l => curve(l, [1, 2]))), 'curve').map(m => m.attributes['class']);
    expect(new Set(looks).size).toBe(6);
  });
});

test('a finding is told with where it holds', () => {
  const p = plot([curve('', [0, 1, 2, 3, 4])], { told: [{ words: 'M2 half cuts the beam.', on: [{ curve: 0, stretches: [[2, 4]] }] }] });
  const [bar] = classed(p, 'stretch');
  // From the middle on, 3 beyond it so that one value is seen as well.
  expect([bar!.attributes['x1'], bar!.attributes['x2']]).toEqual(['357', '720']);
  expect(marksOf(p).some(m => m.text === 'M2 half cuts the beam.')).toBe(true);
  expect(classed(p, 'turns').map(m => m.attributes['x1'])).toEqual(['360']);
});

test('text of a page is never markup', () => {
  const svg = svgOf(plotOf(plot([curve('<script>', [1, 2])], { title: '</text><script>' })));
  expect(svg).not.toContain('<script');
});

test('a plot as it is pinned', async () => {
  const p = plot([curve('as written', [0, 1, 4, 9, 16], 1), curve('closer plate', [2, 2, undefined, 5, 6], 0.5)], { told: [{ words: 'Not met: mismatch is 5 mm, expected below 3 mm.', on: [{ curve: 0, stretches: [[2, 4]] }, { curve: 1, stretches: [[3, 4]] }] }], notes: ['The figures of a finding are those where it begins.'] });
  await expect(svgOf(plotOf(p))).toMatchFileSnapshot('golden/plot.svg');
});
