/** The axis of a beam in space, and points as seen along it. */
import { nearestWithin } from '../range.ts';
import { above, coordinates, leftOf, unit, type Vector } from '../vectors.ts';

/** Where a beam runs: a point of its axis, m, and the direction of its light. */
export interface Axis {
  readonly from: Vector
  readonly along: Vector
}

/** Three directions of length 1 at right angles to each other. */
export interface Frame {
  readonly along: Vector
  readonly level: Vector
  readonly upright: Vector
}

/** Directions of a beam: along it, level to its left, and upright. Straight up and down, where nothing is
 * left, the sides are chosen; no direction at all counts as up. */
export function frameOf(direction: Vector): Frame {
  const along = unit(direction);
  const level = leftOf(along);
  if (isSome(level)) return { along, level, upright: above(along) };
  return { along: isSome(along) ? along : [0, 0, 1], level: [1, 0, 0], upright: [0, 1, 0] };
}

/** A vector by its parts along the directions of a frame: [along, level, upright]. */
export function inFrame({ along, level, upright }: Frame, v: Vector): Vector {
  return [inner(along, v), inner(level, v), inner(upright, v)];
}

/** From one point to another, m. */
export function fromTo(from: Vector, to: Vector): Vector {
  const part = (i: 0 | 1 | 2): number => nearestWithin(coordinates, to[i]) - nearestWithin(coordinates, from[i]);
  return [part(0), part(1), part(2)];
}

export const inner = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

const isSome = (v: Vector): boolean => v[0] !== 0 || v[1] !== 0 || v[2] !== 0;
