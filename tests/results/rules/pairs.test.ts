/** Path differences of single pairs, and the map that finds which of them matter, by figures by hand: an upright plate a metre south of the object, which it faces, 20 cm wide and 10 cm high. */
import { describe, expect, it, test } from 'vitest';
import type { Rule } from '../../../server/results/graph.ts';
import { acrossPlate, brightnessAt, mismatchAt, mismatchesOver, nearestRevival, offRevival, search, WALK, type Layout } from '../../../server/results/rules/maps.ts';

const BOX: Layout = { form: { shape: 'box', lying: 'upright', assumed: false }, reference: false, light: false };
const WINDOW: Layout = { form: 'hologram', reference: false, light: false };
const [NORTH, SOUTH, EAST] = [[0, 1, 0], [0, -1, 0], [1, 0, 0]] as const;
/** Places stand somewhere on the table: only what lies between them counts. */
const AT = [3, 4, 1, 3, 5, 1];
/** The reference runs side by side onto the plate from the object's side, squarely. */
const box = (light: readonly number[], mismatch = 0, reference: readonly number[] = SOUTH): number[] => [mismatch, ...AT, ...NORTH, ...reference, ...light, 0.2, 0.1, 0.2, 0.2, 0.2];
// Who looks at the plate's face looks south, so that his right is west; the plate's own right of the object is east.
const [WEST_EDGE, EAST_SIDE] = [[0.5, 0], [0.5, 0, 0]] as const;
const near = (is: number, should: number): void => { expect(Math.abs(is - should)).toBeLessThan(1e-12); };

describe('the mismatch of a pair', () => {
  const of = (plate: readonly [number, number], object: readonly [number, number, number], x: readonly number[], layout = BOX): number => mismatchAt(layout, { plate, object }).compute(x);
  it('of both middles is that of the middles', () => { near(of([0, 0], [0, 0, 0], box(EAST, 0.03)), 0.03); });
  // 0.1 m later lit, and √(1² + 0.2²) from the west edge.
  it('counts the light’s way to the part, and from there', () => { near(of(WEST_EDGE, EAST_SIDE, box(EAST, 0.03)), 0.03 + 0.1 + Math.sqrt(1.04) - 1); });
  it('up on the plate and down on the object lie 15 cm apart', () => { near(of([0, 0.5], [0, -0.5, 0], box(EAST)), Math.hypot(1, 0.15) - 1); });
  it('what is nearer to the plate saves that way', () => { near(of([0, 0], [0, 0, 0.5], box(EAST)), -0.1); });
  // Waves with a curvature of 1/2 m at the plate come from 2 m north of it.
  it('of a reference that spreads less its own way', () => { near(of(WEST_EDGE, [0, 0, 0], [0, ...AT, ...NORTH, ...SOUTH, 2, 0, ...EAST, 0.2, 0.1, 0.2, 0.2, 0.2], { ...BOX, reference: true }), Math.hypot(1, 0.1) - 1 - (Math.hypot(2, 0.1) - 2)); });
  it('of light on the object that spreads by its own way', () => { near(of([0, 0], EAST_SIDE, [0, ...AT, ...NORTH, ...SOUTH, ...NORTH, 3, 0, 0.2, 0.1, 0.2, 0.2, 0.2], { ...BOX, light: true }), Math.hypot(3, 0.1) - 3 + Math.hypot(1, 0.1) - 1); });
  it('of a reference aslant by where it meets the plate: 45° from the east, the west edge 0.1·sin 45° later', () => { near(of(WEST_EDGE, [0, 0, 0], box(EAST, 0, [-1, -1, 0])), Math.hypot(1, 0.1) - 1 - 0.1 * Math.SQRT1_2); });
  it('of single points counts in metres', () => { near(of([0, 0], [0.02, 0, 0], [0, ...AT, ...NORTH, ...SOUTH, ...EAST, 0.2, 0.1], { ...BOX, form: { ...(BOX.form as Exclude<Layout['form'], string>), shape: 'points', points: [[0.02, 0, 0]] } }), 0.02 + Math.hypot(1, 0.02) - 1); });
});

test('rules are told apart by how a pair of arms is laid out, by the pair and by what is asked of it', () => {
  const form = BOX.form as Exclude<Layout['form'], string>;
  const points = (...of: readonly (readonly [number, number, number])[]): Layout => ({ ...BOX, form: { ...form, shape: 'points', points: of } });
  const layouts: readonly Layout[] = [
    BOX, WINDOW, { ...BOX, reference: true }, { ...BOX, light: true }, { ...BOX, form: { ...form, shape: 'cylinder' } }, { ...BOX, form: { ...form, shape: 'cylinder', lying: 'across' } }, points([0, 0, 0]), points([0, 0, 0.1]), points([0, 0, 0], [0, 0, 0.1]),
  ];
  const d: Rule = { name: 'd', formula: 'd', compute: ([x]) => x! };
  const rules = [
    ...layouts.map(l => mismatchAt(l, { plate: [0, 0], object: [0, 0, 0] })), mismatchAt(BOX, { plate: WEST_EDGE, object: [0, 0, 0] }), mismatchAt(BOX, { plate: [0, 0], object: EAST_SIDE }),
    acrossPlate(BOX, 'least'), acrossPlate(BOX, 'greatest'), brightnessAt(BOX, [0, 0, 0], d), brightnessAt(BOX, EAST_SIDE, d), brightnessAt(BOX, [0, 0, 0], { ...d, name: 'e' }), brightnessAt(BOX, [0, 0, 0], { ...d, of: [1] }),
  ];
  const kinds = rules.map(({ name, of }) => JSON.stringify([name, of]));
  expect(new Set(kinds).size).toBe(rules.length);
});

describe('across the plate', () => {
  it('the middle is nearest, and the corners are farthest', () => {
    near(acrossPlate(BOX, 'least').compute(box(EAST, 0.03)), 0.03);
    near(acrossPlate(BOX, 'greatest').compute(box(EAST, 0.03)), 0.03 + Math.hypot(1, 0.1, 0.05) - 1);
    near(WALK.compute([0.03, 0.07]), 0.04);
  });
  it('and any point between', () => { mismatchesOver(BOX, box(EAST, 0.03), [[0, 0], [0.25, -0.5]]).forEach((d, i) => { near(d, [0.03, 0.03 + Math.hypot(1, 0.05, 0.05) - 1][i]!); }); });
  it('the brightness of a part is the mean over 7 times 7 cells', () => {
    // Of a rule that gives the mismatch times what stands behind the layout.
    const times: Rule = { name: 'times', formula: 'd k', compute: ([d, k]) => d! * k! };
    const cells = [-3, -2, -1, 0, 1, 2, 3].flatMap(a => [-3, -2, -1, 0, 1, 2, 3].map(b => Math.hypot(1, (a / 7) * 0.2 - 0.1, (b / 7) * 0.1) - 1 + 0.1));
    // The part lies 0.1 m east; cells go from west to east.
    near(brightnessAt(BOX, EAST_SIDE, times).compute([...box(EAST), 5]), (5 * cells.reduce((n, d) => n + d, 0)) / 49);
  });
});

describe('the search for the pairs that matter', () => {
  const window = (light: readonly number[]): number[] => [0, ...AT, ...NORTH, ...SOUTH, ...SOUTH, ...light, 0.2, 0.1, 0.2, 0.2, 0];
  const dull = (d: number): number => 1 / (1 + (d / 0.01) ** 2);
  it('finds a corner of the plate and the corner across of a window', () => {
    const { largest: { plate, object } } = search(WINDOW, window(SOUTH), undefined)!;
    expect(plate.map(Math.abs)).toEqual([0.5, 0.5]);
    // Right on the plate's face is west, right for the plate is east.
    expect(Math.sign(plate[0] * object[0])).toBe(1);
    expect(Math.sign(plate[1] * object[1])).toBe(-1);
    expect(object[2]).toBe(0);
  });
  it('finds which corner it is where only one is farthest: the part that is lit last, and the point across from it', () => {
    const { largest: { plate, object } } = search(WINDOW, window([0.5, -1, 0.4]), undefined)!;
    expect(plate).toEqual([0.5, -0.5]);
    expect(Math.min(object[0], object[1])).toBeGreaterThan(0.35);
  });
  it('looks at what is lit and seen only: of a box the face that looks at the plate', () => {
    expect(search(BOX, box(NORTH), undefined)!.largest.object[2]).toBeCloseTo(0.5, 9);
    // Light from the west falls on the west face, which a plate as wide as the box does not see.
    expect(search(BOX, box(EAST), undefined)).toBeUndefined();
  });
  it('tells no darkest part where the coherence is not known', () => { expect(search(WINDOW, window(SOUTH), undefined)).not.toHaveProperty('darkest'); });
  it('finds the darkest part on the side that is lit last, and says so', () => {
    const found = search(WINDOW, window([0.5, -1, 0]), dull)!;
    expect(found.darkest![0]).toBeGreaterThan(0.4);
    expect(found.sides).toEqual([true, false, false]);
  });
  it('of what is alike on both sides no side is worse', () => { expect(search(WINDOW, window(SOUTH), dull)!.sides).toEqual([false, false, false]); });
  it('has nothing to look at where there is no point', () => { expect(search({ ...BOX, form: { shape: 'points', lying: 'upright', assumed: false, points: [] } }, [0, ...AT, ...NORTH, ...SOUTH, ...EAST, 0.2, 0.1], dull)).toBeUndefined(); });
});

describe('revivals', () => {
  test.each([[0.31, 0.1, 3], [-0.26, 0.1, -3], [0.04, 0.1, 0], [0.3, 0, 0]])('%d m is nearest to that of %d m times %d', (mismatch, revival, times) => { expect(nearestRevival(mismatch, revival) + 0).toBe(times); });
  it('from which it is the rest', () => { near(offRevival(3).compute([0.31, 0.1]), 0.01); });
});
