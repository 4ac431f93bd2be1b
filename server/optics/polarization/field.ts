/**
 * The field of polarized light in space: where it points, and where it points a quarter of a period later. Waves go as exp(−iωt),
 * so that the field at a place is re cos ωt + im sin ωt.
 */
import { above, cross, dot, turns, unit, type Vector } from '../vectors.ts';
import { nearestWithin, type Range } from '../range.ts';
import { plus, times, type Complex } from '../complex.ts';

/** Light polarized in one way. `re` and `im` are square to `direction`; |re|² + |im|² is its power, in any measure. */
export interface Field { readonly direction: Vector; readonly re: Vector; readonly im: Vector }

/** Components of a field. */
export const fieldParts: Range = { from: -1e6, to: 1e6 };

/** Which way the field turns for somebody who looks along the light. Counter-clockwise is what books that look toward the source call right circular. */
export type Turning = 'clockwise' | 'counter-clockwise';

/**
 * The direction square to a beam at an angle from vertical, length 1. Seen by somebody who looks along the light, clockwise counts
 * positive: 90° is to the right. "Vertical" is the upright direction nearest to it, square to the beam; for light that goes straight
 * up or down, which has none, it is +y, away in the plan. (0, 0, 0) where the light has no direction.
 *
 * @param light direction of the light
 * @param angle from vertical, rad; see `turns`
 */
export function axisAt(light: Vector, angle: number): Vector {
  const [u, a] = [unit(light), nearestWithin(turns, angle)];
  const up = above(u);
  const vertical = dot(up, up) > 0 ? up : unit([0, u[2] ** 2, -u[1] * u[2]]);
  return along(vertical, Math.cos(a), cross(u, vertical), Math.sin(a));
}

/**
 * Light polarized along a line, of power 1.
 *
 * @param light direction of the light
 * @param angle of the field from vertical as in `axisAt`, rad: 0 vertical, π/2 horizontal
 */
export function linearField(light: Vector, angle: number): Field {
  return { direction: unit(light), re: axisAt(light, angle), im: NONE };
}

/** Vertical polarization, of power 1: see `axisAt` for what vertical is. */
export const verticalField = (light: Vector): Field => linearField(light, 0);
/** Horizontal polarization, of power 1. */
export const horizontalField = (light: Vector): Field => linearField(light, Math.PI / 2);

/**
 * Circular polarization, of power 1; the field starts vertical.
 *
 * @param light direction of the light
 * @param turning as seen along the light
 */
export function circularField(light: Vector, turning: Turning): Field {
  const later = turning === 'clockwise' ? Math.SQRT1_2 : -Math.SQRT1_2;
  return { direction: unit(light), re: scaled(axisAt(light, 0), Math.SQRT1_2), im: scaled(axisAt(light, Math.PI / 2), later) };
}

/** Power of a field, in its own measure. */
export function fieldPower(field: Field): number {
  const { re, im } = cleaned(field);
  return dot(re, re) + dot(im, im);
}

/** How a field points, for words and drawings. */
export interface Ellipse {
  /** Of its long axis from vertical as in `axisAt`, rad, above −π/2 to π/2; 0 for circular light, which has none. */
  readonly angle: number
  /** Short to long axis, 1: 0 for a line, 1 for a circle. Negative where it turns counter-clockwise as seen along the light. */
  readonly roundness: number
}

/**
 * The ellipse that the field runs along.
 *
 * @param field 0 and 0 where it is none
 * Source: Born & Wolf, Principles of Optics, §1.4.
 */
export function ellipseOf(field: Field): Ellipse {
  const f = cleaned(field);
  const [v, h] = [component(f, axisAt(f.direction, 0)), component(f, axisAt(f.direction, Math.PI / 2))];
  const power = fieldPower(f);
  const straight = v[0] ** 2 + v[1] ** 2 - h[0] ** 2 - h[1] ** 2;
  const oblique = 2 * (v[0] * h[0] + v[1] * h[1]);
  // Positive where the horizontal part comes a quarter of a period after the vertical one.
  const turning = 2 * (v[0] * h[1] - v[1] * h[0]);
  if (power === 0) return { angle: 0, roundness: 0 };
  const roundness = Math.tan(0.5 * Math.asin(Math.max(-1, Math.min(1, turning / power))));
  const noAxis = Math.hypot(straight, oblique) < 1e-12 * power;
  return { angle: noAxis ? 0 : 0.5 * Math.atan2(oblique, straight), roundness };
}

// What follows is the arithmetic of fields, for the files beside this one; all but `cleaned` want fields that are clean.

/** A field fit to compute with: a direction of length 1 or none, finite parts, square to it. */
export const cleaned = (field: Field): Field => (field instanceof Clean ? field : new Clean(field));

/** A field that has been made fit, so that it is not done again for each thing that it meets. */
class Clean implements Field {
  readonly direction: Vector;
  readonly re: Vector;
  readonly im: Vector;
  constructor({ direction, re, im }: Field) {
    const d = this.direction = unit(direction);
    this.re = square(re, d);
    this.im = square(im, d);
  }
}

function square(v: Vector, direction: Vector): Vector {
  if (direction[0] === 0 && direction[1] === 0 && direction[2] === 0) return NONE;
  const w: Vector = [nearestWithin(fieldParts, v[0]), nearestWithin(fieldParts, v[1]), nearestWithin(fieldParts, v[2])];
  return along(w, 1, direction, -dot(w, direction));
}

/** Amplitude of the field along a direction. */
export const component = (field: Field, axis: Vector): Complex => [dot(field.re, axis), dot(field.im, axis)];

/** The field of two parts along two directions square to the light. */
export function composed(direction: Vector, one: Vector, a: Complex, other: Vector, b: Complex): Field {
  return { direction, re: along(one, a[0], other, b[0]), im: along(one, a[1], other, b[1]) };
}

/** The field times a number. */
export const weakened = (field: Field, factor: number): Field => ({ direction: field.direction, re: scaled(field.re, factor), im: scaled(field.im, factor) });

/** a · b*, summed over the three directions of space. */
export function product(a: Field, b: Field): Complex {
  return plus([dot(a.re, b.re), dot(a.im, b.re)], times([0, -1], [dot(a.re, b.im), dot(a.im, b.im)]));
}

const NONE: Vector = [0, 0, 0];
const scaled = (v: Vector, a: number): Vector => [v[0] * a, v[1] * a, v[2] * a];
/** One vector so many times, and another. */
export const along = (v: Vector, a: number, w: Vector, b: number): Vector => [v[0] * a + w[0] * b, v[1] * a + w[1] * b, v[2] * a + w[2] * b];
