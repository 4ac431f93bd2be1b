// Fields and rotations for the checks of polarization; nothing here uses the code under test but its types.
import fc from 'fast-check';
import type { Field } from '../../server/optics/polarization/field.ts';
import type { Vector } from '../../server/optics/vectors.ts';
import { between, expectNear } from './outside.ts';

const part = between(-1, 1);
const scale = (v: Vector, a: number): Vector => [v[0] * a, v[1] * a, v[2] * a];
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** Vectors of any direction, not of length 1. */
export const anyVector: fc.Arbitrary<Vector> = fc.tuple(part, part, part).filter(v => Math.hypot(...v) > 0.1);

/** Elliptical fields of any power, square to their direction. */
export const anyField: fc.Arbitrary<Field> = fc.tuple(anyVector, anyVector, anyVector).map(([d, re, im]) => {
  const direction = scale(d, 1 / Math.hypot(...d));
  const square = (v: Vector): Vector => [0, 1, 2].map(i => v[i]! - dot(v, direction) * direction[i]!) as unknown as Vector;
  return { direction, re: square(re), im: square(im) };
}).filter(f => Math.hypot(...f.re, ...f.im) > 0.1);

/** Rotations by unit quaternions. */
export const anyTurn: fc.Arbitrary<(v: Vector) => Vector> = fc.tuple(part, part, part, part).filter(q => Math.hypot(...q) > 0.1).map(q => {
  const l = Math.hypot(...q);
  const [w, x, y, z] = q.map(p => p / l) as [number, number, number, number];
  return v => [
    (1 - 2 * (y * y + z * z)) * v[0] + 2 * (x * y - w * z) * v[1] + 2 * (x * z + w * y) * v[2],
    2 * (x * y + w * z) * v[0] + (1 - 2 * (x * x + z * z)) * v[1] + 2 * (y * z - w * x) * v[2],
    2 * (x * z - w * y) * v[0] + 2 * (y * z + w * x) * v[1] + (1 - 2 * (x * x + y * y)) * v[2],
  ];
});

export const turnedField = (turn: (v: Vector) => Vector, f: Field): Field => ({ direction: turn(f.direction), re: turn(f.re), im: turn(f.im) });

export function closeFields(a: Field, b: Field, allowed: number): void {
  for (const which of ['direction', 're', 'im'] as const) a[which].forEach((x, i) => { expectNear(x, b[which][i]!, allowed, `${which} ${i}`); });
}
