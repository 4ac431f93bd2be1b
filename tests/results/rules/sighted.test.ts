/** What a plate sees of an object, by figures by hand: an upright plate a metre south of the object, 20 cm wide and 10 cm high, and an object of 20 cm each way. */
import { describe, expect, it, test } from 'vitest';
import type { Vector } from '../../../server/optics/vectors.ts';
import { lightOnParts, placeOfPart, recordedParts, sighted } from '../../../server/results/rules/seen.ts';
import type { Layout } from '../../../server/results/rules/maps.ts';

const BOX: Layout = { form: { shape: 'box', lying: 'upright', assumed: false }, reference: false, light: false };
const WINDOW: Layout = { form: 'hologram', reference: false, light: false };
const [NORTH, SOUTH, EAST] = [[0, 1, 0], [0, -1, 0], [1, 0, 0]] as const;
const AT = [3, 4, 1, 3, 5, 1];
const box = (facing: Vector = NORTH): number[] => [0, ...AT, ...facing, ...SOUTH, ...EAST, 0.2, 0.1, 0.2, 0.2, 0.2];
const window = [0, ...AT, ...NORTH, ...SOUTH, ...SOUTH, ...EAST, 0.2, 0.1, 0.2, 0.2, 0];
const near = (is: readonly number[], should: readonly number[]): void => { expect(is).toHaveLength(should.length); is.forEach((v, i) => { expect(v).toBeCloseTo(should[i]!, 9); }); };
const patch = (normal: Vector, point: Vector = [0, 0, 0]) => ({ point, normal, area: 1 });

describe('the plate, for who looks through it from behind', () => {
  // He looks north: right is east. Whichever way the plate’s normal is told.
  test.each([[NORTH], [SOUTH]] as const)('that faces %j', facing => {
    const s = sighted(BOX, box(facing));
    near(s.plate, [0, -1, 0]);
    near(s.right, [0.1, 0, 0]);
    near(s.up, [0, 0, 0.05]);
  });
});

describe('the parts', () => {
  const area = (of: Layout, x: readonly number[]): number => sighted(of, x).patches.reduce((n, p) => n + p.area, 0);
  it('of a box are all six sides of 4 dm², of a window its two', () => {
    expect(area(BOX, box())).toBeCloseTo(6 * 0.04, 9);
    expect(area(WINDOW, window)).toBeCloseTo(2 * 0.04, 9);
    for (const { normal } of sighted(WINDOW, window).patches) expect(Math.abs(normal[1])).toBeCloseTo(1, 12);
    expect(sighted(BOX, box()).outlines).toHaveLength(sighted(BOX, box()).patches.length);
    expect(sighted(WINDOW, window).outlines).toHaveLength(sighted(WINDOW, window).patches.length);
  });
  it('lie where the maps say: right, up and toward the plate', () => { near(placeOfPart(BOX, [...box().slice(0, -3), 0.2, 0.4, 0.1], [0.5, -0.25, 0.5]), [0.1, -0.05, -0.1]); });
});

describe('the light on them', () => {
  const NORMALS: readonly Vector[] = [[-1, 0, 0], [-0.5, Math.sqrt(0.75), 0], [0, 1, 0], [1, 0, 0], [0, 0, 0]];
  it('that is even, by how squarely they face it', () => { near([...lightOnParts(BOX, box(), NORMALS.map(n => patch(n)), EAST)], [1, 0.5, 0, 0, 1]); });
  it('on a hologram from either side', () => { near([...lightOnParts(WINDOW, window, NORMALS.slice(0, 4).map(n => patch(n)), EAST)], [1, 0.5, 0, 1]); });
  // A beam of 10 mm radius has 2/πw² of each watt in its middle, and e⁻² of that a radius beside it.
  const [RADIUS, LAMBDA] = [0.01, 632.8e-9];
  const z = (Math.PI * RADIUS ** 2) / LAMBDA;
  const beam = [0, z, 0, z, LAMBDA, 1];
  const middle = 2 / (Math.PI * RADIUS ** 2);
  const share = (of: Layout, x: readonly number[], normal: Vector, point?: Vector): number => lightOnParts(of, x, [patch(normal, point)], EAST, beam)[0]! / middle;
  it('of a beam, by where they are and how they face it', () => { near([...NORMALS.map(n => share(BOX, box(), n)), share(BOX, box(), [-1, 0, 0], [0, RADIUS, 0])], [1, 0.5, 0, 0, 1, Math.exp(-2)]); });
  it('of a beam on a hologram from either side', () => { near([share(WINDOW, window, [1, 0, 0]), share(WINDOW, window, [-1, 0, 0])], [1, 1]); });
  it('of a beam that is twice as wide up as across: half as much in its middle', () => { near([...lightOnParts(BOX, box(), [patch([-1, 0, 0], [0, 0, RADIUS]), patch([-1, 0, 0], [0, RADIUS, 0])], EAST, [0, z, 0, 4 * z, LAMBDA, 1])].map(v => v / middle), [0.5 * Math.exp(-0.5), 0.5 * Math.exp(-2)]); });
});

test('brightness is the mean over 7 times 7 cells of the plate', () => {
  const brightness = (d: number): number => 1 / (1 + (d / 0.2) ** 2);
  // Lit 0.1 m later than the middle; the cells go from west to east.
  const cells = [-3, -2, -1, 0, 1, 2, 3].flatMap(a => [-3, -2, -1, 0, 1, 2, 3].map(b => brightness(Math.hypot(1, (a / 7) * 0.2 - 0.1, (b / 7) * 0.1) - 1 + 0.1)));
  // Out of a table of 256 steps.
  expect(recordedParts(BOX, box(), [patch([-1, 0, 0], [0.1, 0, 0])], brightness)[0]).toBeCloseTo(cells.reduce((n, v) => n + v, 0) / 49, 4);
});
