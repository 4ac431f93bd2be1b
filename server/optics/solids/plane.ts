/** Flat things without end: where rays land on them, and what is seen in them. Geometry throughout. */
import { extents } from '../depth.ts';
import { nearestWithin } from '../range.ts';
import { coordinates, unit, within, type Vector } from '../vectors.ts';
import { fromFrame, inFrame, turnedIntoFrame, type Frame } from './frame.ts';

/** Where a ray lands on a plane. */
export interface Landing {
  /** How far along the ray, m. */
  readonly distance: number
  /** Along the first axis of the plane's frame, from its origin, m. */
  readonly x: number
  /** Along the second, m. */
  readonly y: number
}

/**
 * Where a ray lands on the plane of a frame (its first two axes; the third is the normal). Undefined where it runs along the plane, away from it, or lands
 * farther out than `coordinates` of `vectors.ts`.
 *
 * @param plane frame whose origin lies in the plane
 * @param from start of the ray, m
 * @param direction of the ray, of any length; without direction it lands nowhere
 */
export function landing(plane: Frame, from: Vector, direction: Vector): Landing | undefined {
  const start = inFrame(plane, from);
  const way = turnedIntoFrame(plane, unit(direction));
  const distance = -start[2] / way[2] + 0;
  if (!(distance >= 0 && distance <= coordinates.to)) return undefined;
  return { distance, x: start[0] + distance * way[0], y: start[1] + distance * way[1] };
}

/** Where a point is seen in a mirror that lies in the plane of a frame, m: as far behind it as it is before it. */
export function mirrorImage(plane: Frame, point: Vector): Vector {
  const [x, y, z] = inFrame(plane, point);
  return fromFrame(plane, [x, y, -z]);
}

/**
 * How far a point lies beyond the edge of a table seen from above, m: 0 on it.
 *
 * @param point its height does not count
 * @param width, depth of the table along x and y from its corner at (0, 0), m; see `extents` of `depth.ts`
 */
export function beyondTable(point: Vector, width: number, depth: number): number {
  const [x, y] = within(point);
  return Math.hypot(beyond(x, nearestWithin(extents, width)), beyond(y, nearestWithin(extents, depth)));
}

const beyond = (x: number, end: number): number => Math.max(0, -x, x - end);
