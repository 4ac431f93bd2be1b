/** The axis of a beam in space, and points as seen along it. */
import { nearestWithin } from '../range.ts';
import { coordinates, type Vector } from '../vectors.ts';

/** Where a beam runs: a point of its axis, m, and the direction of its light. */
export interface Axis {
  readonly from: Vector
  readonly along: Vector
}

/** From one point to another, m. */
export function fromTo(from: Vector, to: Vector): Vector {
  const part = (i: 0 | 1 | 2): number => nearestWithin(coordinates, to[i]) - nearestWithin(coordinates, from[i]);
  return [part(0), part(1), part(2)];
}

export const inner = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
