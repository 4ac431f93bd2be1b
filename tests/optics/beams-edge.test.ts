/** Light on the edges of a plate. Checked by hand with the error function of an npm library, by plain sums over the plate, and in the limit of even light. */
import * as cephes from 'cephes';
import fc from 'fast-check';
import { beforeAll, expect, it } from 'vitest';
import { edgeShares } from '../../server/optics/beams/edge.ts';
import { between, expectNear } from './outside.ts';

beforeAll(async () => { await cephes.compiled; });
const DEGREE = Math.PI / 180;
const slanting = (degrees: number): [number, number, number] => [Math.sin(degrees * DEGREE), 0, Math.cos(degrees * DEGREE)];

it('in even light is thickness · tan θ for the width', () => {
  // Edge t sin θ, face W cos θ: 2 mm on 63 mm at 45° is 2/65 of both; 1.5 mm on 127 mm at 60° 1.5 · 1.73205/(127 + 2.59808).
  expectNear(edgeShares(slanting(45), 0.0315, 0.0315, 0.002, 100).beside, 2 / 65, 1e-6);
  expectNear(edgeShares(slanting(-60), 0.0635, 0.051, 0.0015, 100).beside, 2.5980762 / 129.5980762, 1e-6);
  expect(edgeShares(slanting(45), 0.0315, 0.0315, 0.002, 100).above).toBe(0);
});
it('of a beam as wide as the plate follows its profile', () => {
  // Level light: the face gets ∫ exp(−2 (x cos θ/w)²) dx = w/cos θ · √(π/2) · erf(√2 a cos θ/w), the edge t tan θ exp(−2 (a cos θ/w)²) beside it; heights cancel.
  for (const [degrees, w] of [[45, 0.03], [60, 0.05], [20, 0.02], [85, 0.003]] as const) {
    const [cos, tan, a, t] = [Math.cos(degrees * DEGREE), Math.tan(degrees * DEGREE), 0.0315, 0.003];
    const face = (w / cos) * Math.sqrt(Math.PI / 2) * cephes.erf((Math.SQRT2 * a * cos) / w);
    const edge = t * tan * Math.exp(-2 * ((a * cos) / w) ** 2);
    expectNear(edgeShares(slanting(degrees), a, 0.05, t, w).beside, edge / (edge + face), 1e-6);
  }
});
it('agrees with sums over plates in light from anywhere', () => {
  const N = 200;
  fc.assert(fc.property(between(-1, 1), between(-1, 1), between(0.2, 1), between(0.02, 0.1), between(0.02, 0.1), between(0.02, 0.2), (x, y, z, a, b, w) => {
    const l = Math.hypot(x, y, z);
    const u = [x / l, y / l, z / l] as const;
    const light = (px: number, py: number): number => Math.exp((-2 * (px * px + py * py - (px * u[0] + py * u[1]) ** 2)) / w ** 2);
    const at = (i: number, half: number): number => (((i + 0.5) / N) * 2 - 1) * half;
    let [face, beside, above] = [0, 0, 0];
    const t = 0.003;
    for (let i = 0; i < N; i++) {
      beside += t * Math.abs(u[0]) * light(a, at(i, b)) * ((2 * b) / N);
      above += t * Math.abs(u[1]) * light(at(i, a), b) * ((2 * a) / N);
      for (let j = 0; j < N; j++) face += u[2] * light(at(i, a), at(j, b)) * ((4 * a * b) / N ** 2);
    }
    const all = face + beside + above;
    const found = edgeShares([x, y, z], a, b, t, w);
    expectNear(found.beside, beside / all, 1e-4);
    expectNear(found.above, above / all, 1e-4);
  }), { numRuns: 40 });
});
it('is none for light that comes squarely, a beam that is narrow, and glass without thickness', () => {
  expect(edgeShares([0, 0, 1], 0.03, 0.03, 0.002, 1)).toEqual({ beside: 0, above: 0 });
  expect(edgeShares(slanting(45), 0.05, 0.05, 0.002, 0.005).beside).toBeLessThan(1e-12);
  expect(edgeShares(slanting(45), 0.05, 0.05, 0, 0.05).beside).toBe(0);
  expect(edgeShares([0, 0, 0], 0.03, 0.03, 0.002, 1)).toEqual({ beside: 0, above: 0 });
});
