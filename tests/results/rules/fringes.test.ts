/** Fringes over a plate and an object: how near a reference stands to objects of several shapes, light that spreads, and where the fringes are finest. Figures by hand; lengths in m. */
import { describe, expect, test } from 'vitest';
import type { Vector } from '../../../server/optics/vectors.ts';
import { alongSurface, finestSpot, MIDDLE, separation, type Known, type Shape, type Spot } from '../../../server/results/rules/fringes.ts';
import { expectNear } from '../read.ts';
import { rad, turned, WAYS } from './turned.ts';

/** By places, with an object of a size. */
const PLACED: Known = { by: 'places', way: 'transmission', from: 'the side', far: false, spread: false, plate: false, object: true };
/** A plate somewhere, what stands 1 m squarely before it, and light whose part along the plate has these components to the right and up. */
const places = ([right, up]: readonly [number, number], [tipped, table]: readonly [number, number]): number[] => {
  const at: Vector = [0.4, -0.3, 0.2];
  const now = (v: Vector): Vector => turned(v, tipped, table);
  const before = now([0, -1, 0]);
  return [...at, ...now([0, -1, 0]), at[0] + before[0], at[1] + before[1], at[2] + before[2], ...now([-right, Math.sqrt(1 - right * right - up * up), -up])];
};

describe('how far a reference stands from the halo of an object, which is three times as wide', () => {
  /** By what the object would have to grow, without the factor of the halo. */
  const grows = (reference: readonly [number, number], shape: Shape, size: Vector, way: readonly [number, number]): number => separation(PLACED, shape).compute([...places(reference, way), ...size]) * 3;
  /** Sine under which half of a side is seen from 1 m. */
  const half = (side: number): number => side / 2 / Math.hypot(side / 2, 1);

  test.each(WAYS)('tipped by %s° and turned by %s°', (...way) => {
    // Of a box one edge has to be passed: whichever it clears by more.
    expectNear(grows([0.3, 0.4], 'box', [0.1, 0.2, 0], way), Math.max(0.3 / half(0.1), 0.4 / half(0.2)), 1e-9);
    expectNear(grows([0.1, 0.4], 'box', [0.2, 0.1, 0], way), Math.max(0.1 / half(0.2), 0.4 / half(0.1)), 1e-9);
    // A round one is an ellipse, which grows until (x/a)² + (y/b)² = 1; tried in steps of 180°/37, of which half leaves out less than (a/b) · 0.1 %.
    for (const [size, allowed] of [[[0.1, 0.1, 0.1], 1e-9], [[0.1, 0.2, 0.1], 2e-3], [[0.2, 0.1, 0], 2e-3]] as const) {
      const is = Math.hypot(0.3 / half(size[0]), 0.4 / half(size[1]));
      const found = grows([0.3, 0.4], 'ball', size, way);
      expectNear(found / is, 1, allowed);
      expect(found).toBeLessThanOrEqual(is * (1 + 1e-9));
    }
    // Of single points the one that reaches farthest toward the reference or away from it: 0.03 m up are 0.8 · 0.03 on the way to (0.3, 0.4), 0.1 m to the left 0.6 · 0.1.
    const points: readonly Vector[] = [[0, 0.03, 0], [-0.1, 0, 0], [0.01, 0.01, 0.02]];
    expectNear(grows([0.3, 0.4], points, [0.5, 0.2, 0.3], way), 0.5 / (0.6 * (0.1 / Math.hypot(0.1, 1))), 1e-9);
  });
  test('how deep the object is does not count, since the middle of the plate sees its ends one behind the other', () => {
    for (const shape of ['box', 'ball'] as const) expectNear(grows([0.3, 0.4], shape, [0.1, 0.2, 0.5], [0, 0]), grows([0.3, 0.4], shape, [0.1, 0.2, 0], [0, 0]), 1e-12);
  });
});

describe('a reference that spreads', () => {
  // 0.1 m beside the middle of the plate: light of a focus 2 m behind comes at 0.1/√(2² + 0.1²), of an object 1 m off at 0.1/√(1 + 0.1²).
  const known: Known = { ...PLACED, by: 'angles', spread: true, plate: true };
  const beside = (past: number, rayleigh: number): number => alongSurface(known, { plate: [0.5, 0], object: [0, 0, 0] }).compute([0, 0, 1, past, rayleigh, 0.2, 0.2, 0, 0, 0]);
  const from = (far: number): number => 0.1 / Math.hypot(far, 0.1);
  test('comes from its focus', () => {
    expectNear(beside(2, 0), from(1) - from(2), 1e-12);
    // Light that runs together 2 m behind the plate
    expectNear(beside(-2, 0), from(1) + from(2), 1e-12);
  });
  test('within a Rayleigh range from farther off: R = z + z_R²/z', () => {
    expectNear(beside(2, 2), from(1) - from(4), 1e-12);
    expectNear(beside(1, 3), from(1) - from(10), 1e-12);
  });
  test('at the focus it is plane', () => {
    expectNear(beside(0, 2), from(1), 1e-12);
    expectNear(beside(0, 0), from(1), 1e-12);
  });
});

describe('where the fringes are finest', () => {
  const FACED: Known = { ...PLACED, by: 'angles', plate: true };
  const SIZES = [0.1, 0.1, 0.2, 0.2, 0];
  const finest = (angle: number, shape: Shape = 'box', known: Known = FACED, way: 'transmission' | 'reflection' = 'transmission'): Spot => finestSpot(known, way, shape, [rad(angle), 0, 1, ...known.plate ? SIZES.slice(0, 2) : [], ...known.object ? SIZES.slice(2) : [], 1.5]);

  // The reference comes from the right of who looks at the plate from the object, who is looked at from the plate: its right is his left.
  const level = (known: Known): Spot => finestSpot(known, 'transmission', 'box', [rad(30), 0, 1, ...known.plate ? [0.1, 0] : [], ...known.object ? [0.2, 0, 0] : []]);
  test('along the surface: from the edge of the object away from the reference to the edge of the plate on its side', () => {
    expect(level(FACED)).toEqual({ plate: [0.5, 0], object: [0.5, 0, 0] });
  });
  test('without a size of the plate its middle counts, without one of the object that of the object', () => {
    expect(level({ ...FACED, plate: false })).toEqual({ plate: [0, 0], object: [0.5, 0, 0] });
    expect(level({ ...FACED, object: false })).toEqual({ plate: [0.5, 0], object: [0, 0, 0] });
  });
  test('a ball is looked at on its axes, a box at its corners', () => {
    const at = (shape: Shape): Vector => finestSpot({ ...FACED, plate: false, from: 'above' }, 'transmission', shape, [rad(30), 0, 1, 0, 0.2, 0.2]).object;
    // What is low, away from the reference; of that the nearer end is seen under a larger angle.
    expect(at('box')).toEqual([0, -0.5, 0.5]);
    expect(at('ball')).toEqual([0, -0.5, 0]);
  });
  test('of single points the one that is farthest from the reference, in metres', () => {
    const points: readonly Vector[] = [[0.02, 0, 0], [-0.03, 0, 0], [0, 0.01, 0]];
    expect(finestSpot({ ...FACED, plate: false }, 'transmission', points, [rad(30), 0, 1, 0.5, 0.2, 0.3])).toEqual({ plate: [0, 0], object: points[0], metres: true });
    // None finer than that of the middle: it is told in the same way.
    expect(finestSpot({ ...FACED, plate: false }, 'transmission', [[0, 0, 0]], [0, 0, 1, 1, 1, 1])).toEqual({ ...MIDDLE, metres: true });
  });
  test('in the layer of a reflection hologram: where both beams come most squarely from opposite sides', () => {
    // 2n sin(δ/2) is largest at δ = 180°.
    expect(finest(0, 'box', { ...FACED, way: 'reflection' }, 'reflection')).toEqual(MIDDLE);
    // The same beams along the surface: at an edge, of which the first one counts.
    expect(finest(0, 'box', { ...FACED, way: 'reflection' }, 'transmission')).not.toEqual(MIDDLE);
  });
  test('of two that are alike the first counts', () => {
    // Square to the plate all is alike to the left and to the right, up and down.
    const { plate, object } = finest(0);
    expect([plate[0], plate[1]]).toEqual([-0.5, -0.5]);
    expect([Math.abs(object[0]), Math.abs(object[1])]).toEqual([0.5, 0.5]);
    expect(finest(0, 'box', { ...FACED, plate: false }).object).toEqual([-0.5, -0.5, 0]);
    // Where nothing parts both beams, there are no fringes.
    expect(finest(0, 'box', { ...FACED, far: false, plate: false, object: false })).toEqual(MIDDLE);
  });
});
