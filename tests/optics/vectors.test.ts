/** Directions in space against plain trigonometry and what holds for every rotation. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { above, angleBetween, angleFromNormal, coordinates, direction, distance, leftOf, mirrorNormal, turnedLeft, unit, within, type Vector } from '../../server/optics/vectors.ts';

const DEGREE = Math.PI / 180;
const close = (a: readonly number[], b: readonly number[], digits = 12): void => { a.forEach((v, i) => { expect(v, `${a.join(', ')} should be ${b.join(', ')}`).toBeCloseTo(b[i]!, digits); }); };
const part = fc.double({ min: -10, max: 10, noNaN: true });
const vector = fc.tuple(part, part, part).filter(v => Math.hypot(...v) > 1e-3);
const slanted = vector.filter(v => Math.hypot(v[0], v[1]) > 1e-3);
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

test('headings and elevations', () => {
  close(direction(0, 0), [1, 0, 0]);
  close(direction(90 * DEGREE, 0), [0, 1, 0]);
  close(direction(180 * DEGREE, 30 * DEGREE), [-Math.sqrt(3) / 2, 0, 0.5]);
  close(unit([3, 0, 4]), [0.6, 0, 0.8]);
});

test('ways: 2² + 3² + 6² = 7², 1² + 4² + 8² = 9²', () => {
  expect(distance(2, -3, 6)).toBe(7);
  expect(distance(-8, 1, 4)).toBe(9);
});

test('a place outside the coordinates counts as the nearest inside, each number for itself', () => expect(within([2e6, 0.5, -Infinity])).toEqual([coordinates.to, 0.5, coordinates.from]));

describe('turns', () => {
  test('of light along x', () => {
    close(leftOf([2, 0, 0]), [0, 1, 0]);
    close(above([2, 0, 0]), [0, 0, 1]);
    close(turnedLeft([1, 0, 0], 30 * DEGREE), [Math.sqrt(3) / 2, 0.5, 0]);
    // (0.6, 0, 0.8) · cos 60° + (0, 1, 0) · sin 60°: what rises, rises by the cosine less
    close(turnedLeft([0.6, 0, 0.8], 60 * DEGREE), [0.3, Math.sqrt(3) / 2, 0.4]);
  });
  test('of light that climbs: left is level, above leans back', () => {
    close(leftOf([0.8, 0, 0.6]), [0, 1, 0]);
    close(above([0.8, 0, 0.6]), [-0.6, 0, 0.8]);
  });
  test('light, left and above are at right angles, each of length 1, right-handed', () => {
    fc.assert(fc.property(slanted, v => {
      const [u, l, a] = [unit(v), leftOf(v), above(v)];
      for (const w of [u, l, a]) expect(Math.hypot(...w)).toBeCloseTo(1, 12);
      close([dot(u, l), dot(l, a), dot(a, u)], [0, 0, 0], 10);
      expect(l[2]).toBe(0);
      expect(a[2]).toBeGreaterThanOrEqual(0);
    }));
  });
  test('by an angle opens that angle, and turning back undoes it', () => {
    fc.assert(fc.property(slanted, fc.double({ min: -3.1, max: 3.1, noNaN: true }), (v, angle) => {
      const t = turnedLeft(v, angle);
      expect(angleBetween(v, t)).toBeCloseTo(Math.abs(angle), 9);
      close(turnedLeft(v, angle + 2 * Math.PI), t, 9);
    }));
    fc.assert(fc.property(fc.double({ min: -3, max: 3, noNaN: true }), fc.double({ min: -3, max: 3, noNaN: true }), (heading, angle) => { close(turnedLeft(direction(heading, 0), angle), direction(heading + angle, 0), 9); }));
  });
  test('straight up there is no left', () => { for (const v of [[0, 0, 1], [0, 0, -3]] as const) { close(leftOf(v), [0, 0, 0]); close(above(v), [0, 0, 0]); } });
});

describe('angles', () => {
  test('of known triangles', () => {
    // 3-4-5: atan(4 / 3); at right angles; an equilateral triangle's 60°
    expect(angleBetween([1, 0, 0], [3, 4, 0])).toBeCloseTo(Math.atan2(4, 3), 14);
    expect(angleBetween([1, 1, 0], [0, 0, 5])).toBeCloseTo(Math.PI / 2, 14);
    expect(angleBetween([1, 1, 0], [1, 0, 1])).toBeCloseTo(Math.PI / 3, 14);
    expect(angleFromNormal([0, -1, 0], [1, 1, 0])).toBeCloseTo(Math.PI / 4, 14);
  });
  test('keep their digits where an arc cosine loses them', () => {
    // tan θ ≈ θ for 10⁻⁹, which an arc cosine of a double cannot tell from 0
    expect(angleBetween([1, 0, 0], [1, 1e-9, 0])).toBeCloseTo(1e-9, 20);
    expect(Math.PI - angleBetween([1, 0, 0], [-1, 1e-7, 0])).toBeCloseTo(1e-7, 14);
  });
  test('from a normal are the same from either side, and never above 90°', () => {
    fc.assert(fc.property(vector, vector, (n, v) => {
      const a = angleFromNormal(n, v);
      expect(a).toBeLessThanOrEqual(Math.PI / 2 + 1e-12);
      expect(angleFromNormal([-n[0], -n[1], -n[2]], v)).toBeCloseTo(a, 12);
      expect(angleFromNormal(n, [-v[0], -v[1], -v[2]])).toBeCloseTo(a, 12);
    }));
  });
});

test('a mirror throws light from one direction into the other: leaving = arriving − 2 (arriving · n) n', () => {
  fc.assert(fc.property(vector, vector, (a, b) => {
    const [u, v] = [unit(a), unit(b)];
    fc.pre(angleBetween(u, v) > 0.01);
    const n = mirrorNormal(a, b);
    const k = 2 * dot(u, n);
    close([u[0] - k * n[0], u[1] - k * n[1], u[2] - k * n[2]], v, 8);
    expect(dot(n, u)).toBeLessThan(0);
  }));
  expect(mirrorNormal([1, 0, 0], [2, 0, 0])).toEqual([0, 0, 0]);
});

test('numbers outside all domains give finite results', () => {
  const any = fc.oneof(fc.double(), fc.constantFrom(0, -0, 1e-300, 1e300, Infinity, -Infinity, NaN));
  const wild = fc.tuple(any, any, any);
  fc.assert(fc.property(wild, wild, any, any, (a, b, x, y) => {
    const all = [...unit(a), ...direction(x, y), ...leftOf(a), ...above(a), ...turnedLeft(a, x), angleBetween(a, b), angleFromNormal(a, b), ...mirrorNormal(a, b)];
    expect(all.every(Number.isFinite)).toBe(true);
  }));
});
