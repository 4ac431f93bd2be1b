/** The second spot of a splitter against rays that are traced face by face in space, and against arithmetic. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainPlateShares } from '../../server/optics/surfaces/plain-plate.ts';
import { secondSpotAngle, secondSpotOffset, secondSpotShare } from '../../server/optics/ghosts/second-spot.ts';
import { between, expectNear, expectPrinted } from './outside.ts';

const DEGREE = Math.PI / 180;

// A tracer of the test's own: planes by point and normal, Snell's law by the part of the direction that lies in the face.
type V = readonly [number, number, number];
const times = (a: V, k: number): V => [a[0] * k, a[1] * k, a[2] * k];
const sum = (a: V, b: V): V => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
const product = (a: V, b: V): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const length = (a: V): number => Math.sqrt(product(a, a));
/** Both normals point on into the glass and out behind it. */
interface Plane { readonly point: V; readonly normal: V }
const meet = (from: V, way: V, { point, normal }: Plane): V => sum(from, times(way, product(sum(point, times(from, -1)), normal) / product(way, normal)));
const mirrored = (way: V, { normal }: Plane): V => sum(way, times(normal, -2 * product(way, normal)));
const bent = (way: V, { normal }: Plane, ratio: number): V => {
  const along = times(sum(way, times(normal, -product(way, normal))), ratio);
  return sum(along, times(normal, Math.sign(product(way, normal)) * Math.sqrt(1 - product(along, along))));
};
/** Light in the x-z plane meets the glass at the origin; the back face is tipped about the y axis (`along`) or the x axis (`across`). */
function traced(t: number, n: number, theta: number, wedge: number, lies: 'along' | 'across'): { offset: number; angle: number } {
  const front: Plane = { point: [0, 0, 0], normal: [0, 0, 1] };
  const back: Plane = { point: [0, 0, t], normal: lies === 'along' ? [Math.sin(wedge), 0, Math.cos(wedge)] : [0, Math.sin(wedge), Math.cos(wedge)] };
  const light: V = [Math.sin(theta), 0, Math.cos(theta)];
  const first = mirrored(light, front);
  const inside = bent(light, front, 1 / n);
  const turned = meet([0, 0, 0], inside, back);
  const up = mirrored(inside, back);
  const out = meet(turned, up, front);
  const second = bent(up, front, n);
  const cross: V = [first[1] * second[2] - first[2] * second[1], first[2] * second[0] - first[0] * second[2], first[0] * second[1] - first[1] * second[0]];
  return { offset: length(sum(out, times(first, -product(out, first)))), angle: Math.asin(Math.min(1, length(cross))) };
}

describe('how far off the second spot is', () => {
  it('by arithmetic', () => {
    // 45°, n 1.5, 3 mm: 2 · 3 · 0.5 / √(2.25 − 0.5) = 3 / 1.322876
    expectPrinted(1e3 * secondSpotOffset(0.003, 1.5, 45 * DEGREE), '2.268');
    // 30°, n 1.52, 5 mm: 2 · 5 · 0.5 · 0.866025 / √(2.3104 − 0.25) = 4.330127 / 1.435409
    expectPrinted(1e3 * secondSpotOffset(0.005, 1.52, 30 * DEGREE), '3.017');
  });
  it('by a ray that is traced through the glass', () => {
    fc.assert(fc.property(between(1e-4, 0.02), between(1.3, 1.9), between(0, 85), (t, n, degrees) => {
      const ray = traced(t, n, degrees * DEGREE, 0, 'along');
      expectNear(secondSpotOffset(t, n, degrees * DEGREE), ray.offset, 1e-12);
      expectNear(ray.angle, 0, 1e-7);
    }));
  });
  it('nothing squarely, alike to both sides, and in step with the thickness', () => {
    fc.assert(fc.property(between(1e-4, 0.02), between(1.3, 1.9), between(1, 85), between(0.1, 10), (t, n, degrees, k) => {
      expect(secondSpotOffset(t, n, 0)).toBe(0);
      expect(secondSpotOffset(t, n, -degrees * DEGREE)).toBe(secondSpotOffset(t, n, degrees * DEGREE));
      expectNear(secondSpotOffset(k * t, n, degrees * DEGREE), k * secondSpotOffset(t, n, degrees * DEGREE), 1e-15);
    }));
  });
  it('is widest near 49° for an index of 1.5', () => {
    // d/dθ of sin 2θ / √(n² − sin²θ): with s = sin²θ it is 0 where s² − 2n²s + n² = 0, s = n² − n√(n² − 1) = 2.25 − 1.5 · 1.118034 = 0.572949, θ = 49.2°
    const at = (degrees: number): number => secondSpotOffset(0.003, 1.5, degrees * DEGREE);
    const widest = Array.from({ length: 900 }, (_, i) => i / 10).reduce((a, b) => (at(b) > at(a) ? b : a));
    expectNear(widest, 49.2, 0.11);
  });
});

describe('behind a wedge', () => {
  it('by arithmetic', () => {
    // 45°, n 1.5, 0.5°: 1° · 1.322876 / 0.707107 = 1.8708°; squarely 2αn = 1.5°
    expectPrinted(secondSpotAngle(1.5, 45 * DEGREE, 0.5 * DEGREE) / DEGREE, '1.8708');
    expectPrinted(secondSpotAngle(1.5, 0, 0.5 * DEGREE) / DEGREE, '1.5000');
    expect(secondSpotAngle(1.5, 0.7, 0)).toBe(0);
    // Grazing, 2α √(n² − 1) / 0 has no end: a right angle.
    expect(secondSpotAngle(1.5, 90 * DEGREE, 0.5 * DEGREE)).toBe(Math.PI / 2);
  });
  it('lies between rays that are traced with the thick end either way', () => {
    fc.assert(fc.property(between(1.3, 1.9), between(5, 55), between(0.01, 0.3), (n, degrees, wedge) => {
      const [a, b] = [1, -1].map(sign => traced(0.003, n, degrees * DEGREE, sign * wedge * DEGREE, 'along').angle);
      const angle = secondSpotAngle(n, degrees * DEGREE, wedge * DEGREE);
      expect(angle).toBeGreaterThan(Math.min(a!, b!));
      expect(angle).toBeLessThan(Math.max(a!, b!));
      // Both differ from it by the second order, with unlike signs. In their mean the third is left, of asin(n sin(θ′ + δ)) by δ = 2α, with s = sin θ, c = cos θ:
      // δ²/6 · ((n² − s²)(1 + 2s²)/c⁴ − 3s²/c² − 1) of the first.
      const [s2, c2] = [Math.sin(degrees * DEGREE) ** 2, Math.cos(degrees * DEGREE) ** 2];
      const third = ((2 * wedge * DEGREE) ** 2 / 6) * (((n ** 2 - s2) * (1 + 2 * s2)) / c2 ** 2 - (3 * s2) / c2 - 1);
      expectNear((a! + b!) / 2, angle * (1 + third), 2e-5 * angle);
    }));
  });
  it('across the plane of incidence turns the light by cos θ times as much', () => {
    fc.assert(fc.property(between(1.3, 1.9), between(0, 60), between(0.01, 0.3), (n, degrees, wedge) => {
      const { angle } = traced(0.003, n, degrees * DEGREE, wedge * DEGREE, 'across');
      expectNear(secondSpotAngle(n, degrees * DEGREE, wedge * DEGREE) * Math.cos(degrees * DEGREE), angle, 1e-3 * angle);
    }));
  });
  it('the distance at the splitter is that of parallel faces, to 2.6 % for 0.5° at 45°', () => {
    // Down the light finds the glass thinner (or thicker) by α t tan θ′, and comes back at θ′ ∓ 2α: of 2t tan θ′ that is α (tan θ′ + 1/(sin θ′ cos θ′)), first order.
    // sin θ′ = 0.471405, cos θ′ = 0.881917: 0.0087266 · (0.534522 + 2.405351) = 0.025655
    for (const sign of [1, -1]) expectNear(traced(0.003, 1.5, 45 * DEGREE, sign * 0.5 * DEGREE, 'along').offset / secondSpotOffset(0.003, 1.5, 45 * DEGREE), 1 - sign * 0.025655, 5e-4);
  });
});

describe('the light in it', () => {
  it('by arithmetic', () => {
    // Half and half, the back face 9.67 %: 0.25 · 0.096733 = 0.024183; of 0.524183 it is 4.61 %
    expectPrinted(secondSpotShare(0.5, 0.096733), '0.0461');
    // 90 %: 0.01 · 0.096733 = 0.00096733; of 0.90096733 it is 0.107 %
    expectPrinted(secondSpotShare(0.9, 0.096733), '0.00107');
    expect([secondSpotShare(1, 0.1), secondSpotShare(0.5, 0), secondSpotShare(0, 0)]).toEqual([0, 0, 0]);
  });
  it('of plain glass is what its second face sends back, beside what both do', () => {
    fc.assert(fc.property(between(0, 85), between(1.3, 1.9), (degrees, n) => {
      const plate = plainPlateShares(degrees * DEGREE, n);
      for (const { front, back } of [plate.s, plate.p]) if (front > 1e-9) expectNear(secondSpotShare(front, front), back / (front + back), 1e-12);
    }));
  });
});
