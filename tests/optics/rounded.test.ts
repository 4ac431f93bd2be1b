/** The surface of a rounded thing against closed forms of the ellipsoid. */
import { describe, expect, it } from 'vitest';
import { facing, inFrame, turnedIntoFrame } from '../../server/optics/solids/frame.ts';
import { roundedPatches, roundedToward } from '../../server/optics/surface/rounded.ts';
import { surfacePatches } from '../../server/optics/surface/patches.ts';

const frame = facing([0.1, 0.2, 0.3], [0, 1, 0]);
const area = (size: readonly [number, number, number], count = 2000): number => roundedPatches(frame, size, count).reduce((s, p) => s + p.area, 0);

describe('roundedPatches', () => {
  it('of equal axes is a ball', () => {
    const [one, other] = [roundedPatches(frame, [0.04, 0.04, 0.04], 200), surfacePatches({ kind: 'sphere', middle: [0, 0, 0], radius: 0.02 }, 200)];
    expect(one).toHaveLength(other.length);
    expect(one.reduce((s, p) => s + p.area, 0)).toBeCloseTo(4 * Math.PI * 0.02 ** 2, 9);
  });
  // Closed forms of spheroids with half axes a, a, c (CRC Standard Mathematical Tables, from memory): oblate 2πa²(1 + (1 − e²)/e · artanh e), e² = 1 − c²/a²; prolate 2πa²(1 + c/(a e) · asin e), e² = 1 − a²/c².
  it('has the area of an oblate and of a prolate spheroid', () => {
    const oblate = ((): number => { const [a, c] = [0.03, 0.015]; const e = Math.sqrt(1 - (c / a) ** 2); return 2 * Math.PI * a * a * (1 + ((1 - e * e) / e) * Math.atanh(e)); })();
    const prolate = ((): number => { const [a, c] = [0.015, 0.03]; const e = Math.sqrt(1 - (a / c) ** 2); return 2 * Math.PI * a * a * (1 + (c / (a * e)) * Math.asin(e)); })();
    expect(area([0.06, 0.06, 0.03]) / oblate).toBeCloseTo(1, 2);
    expect(area([0.03, 0.03, 0.06]) / prolate).toBeCloseTo(1, 2);
    expect(area([0.06, 0.06, 0.03], 200) / oblate).toBeCloseTo(1, 1.7);
  });
  it('has normals of length 1, closed over the surface', () => {
    const patches = roundedPatches(frame, [0.04, 0.06, 0.035], 500);
    const sum = [0, 1, 2].map(i => patches.reduce((s, p) => s + p.normal[i]! * p.area, 0));
    for (const s of sum) expect(Math.abs(s)).toBeLessThan(1e-12);
    for (const p of patches) expect(Math.hypot(...p.normal)).toBeCloseTo(1, 12);
  });
  it('has its points on x²/a² + y²/b² + z²/c² = 1, where the normal runs along (x/a², y/b², z/c²), and encloses 4π/3 abc', () => {
    const [a, b, c] = [0.02, 0.03, 0.0175];
    const patches = roundedPatches(frame, [2 * a, 2 * b, 2 * c], 2000);
    let volume = 0;
    for (const { point, normal, area: own } of patches) {
      const [x, y, z] = inFrame(frame, point);
      expect((x / a) ** 2 + (y / b) ** 2 + (z / c) ** 2).toBeCloseTo(1, 12);
      const [gradient, n] = [[x / a ** 2, y / b ** 2, z / c ** 2], turnedIntoFrame(frame, normal)];
      gradient.forEach((g, i) => expect(g / Math.hypot(...gradient)).toBeCloseTo(n[i]!, 12));
      // Gauss: ∫ p · n dA = 3 V
      volume += ((x * n[0] + y * n[1] + z * n[2]) * own) / 3;
    }
    expect(volume / ((4 / 3) * Math.PI * a * b * c)).toBeCloseTo(1, 3);
  });
  it.each([0, 1, 2])('is nothing where it is flat along axis %i', i => {
    const size = [0.04, 0.06, 0.035].map((s, k) => (k === i ? 0 : s)) as [number, number, number];
    expect(roundedPatches(frame, size, 200)).toEqual([]);
    expect(roundedToward(frame, size, [1, 2, 3])).toBeUndefined();
  });
});

describe('roundedToward', () => {
  // By hand along the axes; at 45° between two of them √2/√(1/a² + 1/b²).
  it('is half of the size along an axis, and between them by the equation of the surface', () => {
    const size = [0.04, 0.06, 0.02] as const;
    frame.axes.forEach((axis, i) => expect(roundedToward(frame, size, axis)!.reach).toBeCloseTo(size[i]! / 2, 12));
    const [u, v] = frame.axes;
    const between = roundedToward(frame, size, [u[0] + v[0], u[1] + v[1], u[2] + v[2]])!;
    expect(between.reach).toBeCloseTo(Math.SQRT2 / Math.hypot(1 / 0.02, 1 / 0.03), 12);
    expect(roundedToward(frame, size, [-u[0] - v[0], -u[1] - v[1], -u[2] - v[2]])!.reach).toBeCloseTo(between.reach, 12);
  });
  // A tangent plane touches: of all points of the surface none lies farther along the normal. The farthest along n is at √(a² nx² + b² ny² + c² nz²) (the support function of an ellipsoid).
  it.each([[[0.02, 0.03, 0.01]], [[0.01, 0.02, 0.03]]] as const)('faces so that nothing of the surface stands out farther, of half axes %j', half => {
    for (const along of [[1, 0, 0], [0.3, -0.8, 0.2], [-0.5, 0.1, 0.6], [0.1, 0.1, -0.9]] as const) {
      const { reach, normal } = roundedToward(frame, [2 * half[0], 2 * half[1], 2 * half[2]], along)!;
      const length = Math.hypot(...along);
      expect(Math.hypot(...normal)).toBeCloseTo(1, 12);
      const out = (reach * (along[0] * normal[0] + along[1] * normal[1] + along[2] * normal[2])) / length;
      const parts = frame.axes.map((a, i) => half[i]! * (a[0] * normal[0] + a[1] * normal[1] + a[2] * normal[2]));
      expect(out).toBeCloseTo(Math.hypot(...parts), 12);
    }
  });
  it('is nothing of no direction', () => { expect(roundedToward(frame, [0.04, 0.06, 0.02], [0, 0, 0])).toBeUndefined(); });
});
