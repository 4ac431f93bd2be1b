/** Ground glass that lights an object, by figures by hand: a beam of 10 mm radius that runs side by side onto a screen a metre south of the object. */
import { describe, expect, it, test } from 'vitest';
import { glow, isBehind, pastObject, softLight, spotsOf, type Screen } from '../../../server/results/rules/soft.ts';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const [LAMBDA, RADIUS] = [632.8e-9, 0.01];
/** w² = λ z/π where the beam is narrowest. */
const RAYLEIGH = (Math.PI * RADIUS ** 2) / LAMBDA;
const SCREEN: Screen = { at: [0, -1, 0], normal: [0, 1, 0], sides: [0.014, 0.007], along: [0, 1, 0], beam: [0, RAYLEIGH, 0, RAYLEIGH, LAMBDA, 1], halfWidth: rad(10) };
/** cosⁿ 10° = ½ */
const POWER = Math.LN2 / -Math.log(Math.cos(rad(10)));
const near = (is: number, should: number): void => { expect(Math.abs(is - should)).toBeLessThan(1e-9 * Math.max(1, Math.abs(should))); };

describe('the spots of a screen', () => {
  const spots = spotsOf(SCREEN);
  it('are 7 times 7 even cells of what is lit', () => {
    expect(spots).toHaveLength(49);
    near(spots.reduce((n, s) => n + s.patch.area, 0), 0.014 * 0.007);
    const xs = [...new Set(spots.map(s => s.patch.point[0].toFixed(9)))].map(Number).sort((a, b) => a - b);
    const zs = [...new Set(spots.map(s => s.patch.point[2].toFixed(9)))].map(Number).sort((a, b) => a - b);
    // Middles of cells of 2 mm, and of 1 mm.
    expect(xs).toEqual([-0.006, -0.004, -0.002, 0, 0.002, 0.004, 0.006].map(x => expect.closeTo(x, 9) as number));
    expect(zs).toEqual([-0.003, -0.002, -0.001, 0, 0.001, 0.002, 0.003].map(x => expect.closeTo(x, 9) as number));
    for (const s of spots) expect(s.patch.point[1]).toBeCloseTo(-1, 12);
  });
  it('of a wide screen go as far as the beam has all but 1 % of its light, 1.5 radii', () => { near(spotsOf({ ...SCREEN, sides: [1, 1] }).reduce((n, s) => n + s.patch.area, 0), 0.03 ** 2); });
  it('look the way on which the light goes on, however the face is told', () => {
    for (const normal of [[0, 1, 0], [0, -1, 0]] as const) for (const s of spotsOf({ ...SCREEN, normal })) expect(s.patch.normal.map(v => v + 0)).toEqual([0, 1, 0].map(v => expect.closeTo(v, 12) as number));
  });
  it('of a square screen are all as far as its middle', () => { for (const s of spots) expect(Math.abs(s.longer)).toBeLessThan(1e-12); });
  // The light runs north; a face turned by 30° about the upright has its east edge back or forth by tan of it.
  it('of a screen aslant are farther by how far north they lie', () => { for (const s of spotsOf({ ...SCREEN, normal: [Math.sin(rad(30)), Math.cos(rad(30)), 0] })) near(s.longer, s.patch.point[1] + 1); });
  it('in light from a point are farther toward the edge: √(2² + x² + z²) − 2', () => { for (const s of spotsOf({ ...SCREEN, beam: [2, 1e-9, 2, 1e-9, LAMBDA, 1] })) near(s.longer, Math.hypot(2, s.patch.point[0], s.patch.point[2]) - 2); });
});

describe('light of the spots on a part', () => {
  const middle = spotsOf(SCREEN).filter(s => Math.hypot(s.patch.point[0], s.patch.point[2]) < 1e-9);
  const light = (normal: readonly [number, number, number]): number => softLight(SCREEN, middle, [{ point: [0, 0, 0], normal, area: 1 }])[0]![0]!;
  // The middle of the beam has 2/πw² of each watt on a square metre; the lobe has (n + 1)/2π straight on; a metre away. However near it is, a cell gives no more than falls on it: beside r² stands the lobe’s share of the cell.
  const lobe = ((POWER + 1) / (2 * Math.PI)) * 2e-6;
  const straight = ((2 / (Math.PI * RADIUS ** 2)) * lobe) / (1 ** 2 + lobe);
  it('that faces it', () => { expect(middle).toHaveLength(1); expect(light([0, -1, 0]) / straight).toBeCloseTo(1, 9); });
  it('aslant, by the cosine', () => { expect(light([Math.sin(rad(60)), -0.5, 0]) / straight).toBeCloseTo(0.5, 9); });
  it('that is a single point and looks no way, as if it faced it', () => { expect(light([0, 0, 0]) / straight).toBeCloseTo(1, 9); });
  it('that looks away or stands edge on, none', () => { expect([light([0, 1, 0]), light([1, 0, 0])]).toEqual([0, 0]); });
});

describe('how bright a screen looks', () => {
  const part = (normal: readonly [number, number, number]) => [{ point: [0, -1, 0] as const, normal, area: 1 }];
  const from = (eye: readonly [number, number, number], normal: readonly [number, number, number] = [0, 1, 0]): number => glow(SCREEN, part(normal), eye)[0]!;
  // (n + 1)/2π of the lobe beside 1/π of a dull surface
  it('straight on', () => { near(from([0, 0, 0]), (POWER + 1) / 2); });
  it('10° beside it half of that, on a face that is seen aslant', () => { near(from([Math.tan(rad(10)), 0, 0]), (POWER + 1) / 4 / Math.cos(rad(10))); });
  it('whichever way its face is told', () => { near(from([0, 0, 0], [0, -1, 0]), (POWER + 1) / 2); });
  it('from where the light comes it is dark, and edge on too', () => { expect([from([0, -2, 0]), from([0, 0, 0], [1, 0, 0])]).toEqual([0, 0]); });
});

describe('a screen and its object', () => {
  // Beyond 120° from the side of the plate it stands behind.
  test.each([[0, false], [119, false], [121, true], [180, true]] as const)('at %d° from the plate', (degrees, behind) => { expect(isBehind([2 * Math.sin(rad(degrees)), 2 * Math.cos(rad(degrees)), 0], [0, 0.3, 0])).toBe(behind); });
  // 5 − 3 − 4
  it('past which the straight way is shorter than by its middle', () => { near(pastObject([3, 0, 0], [0, 4, 0]), -2); near(pastObject([0, -1, 0], [0, 0.3, 0]), 0); });
});
