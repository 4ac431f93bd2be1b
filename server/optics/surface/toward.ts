import { extents } from '../depth.ts';
import { nearestWithin } from '../range.ts';
import { turnedFromFrame, turnedIntoFrame } from '../solids/frame.ts';
import { frameOf, halfSize, type Solid } from '../solids/solid.ts';
import { unit, type Vector } from '../vectors.ts';

/** Where a surface lies in a direction from the middle of what it encloses. */
export interface Toward {
  /** how far from the middle, m */
  readonly reach: number
  /** outwards, of length 1 */
  readonly normal: Vector
}

/**
 * Where the surface of a solid lies in a direction from its middle, and how it faces there; on an edge one of the two faces. Undefined of no direction.
 *
 * @param solid lengths see `Solid`; of what is thin a direction along it leads to its rim
 * @param direction any length but 0
 *
 * Source: geometry.
 */
export function surfaceToward(solid: Solid, direction: Vector): Toward | undefined {
  const out = unit(direction);
  const frame = frameOf(solid);
  const u = turnedIntoFrame(frame, out);
  if (Math.hypot(...u) === 0) return undefined;
  if (solid.kind === 'sphere') return { reach: nearestWithin(extents, solid.radius), normal: out };
  const faces = solid.kind === 'box' ? halfSize(solid.size).map((half, axis) => flat(half, axis, u)) : [round(nearestWithin(extents, solid.radius), u), flat(nearestWithin(extents, solid.height) / 2, 2, u)];
  const { reach, normal } = faces.reduce((a, b) => (b.reach < a.reach ? b : a));
  return { reach, normal: turnedFromFrame(frame, normal) };
}

/** The one of two faces at ± half along an axis that a direction leads to; farther than anything where it runs beside them. */
function flat(half: number, axis: number, u: Vector): Toward {
  const side = (i: number): number => (i === axis ? Math.sign(u[axis]!) : 0);
  return { reach: u[axis] === 0 ? Infinity : half / Math.abs(u[axis]!), normal: [side(0), side(1), side(2)] };
}

/** The mantle of a cylinder round the third axis. */
function round(radius: number, u: Vector): Toward {
  const across = Math.hypot(u[0], u[1]);
  return across === 0 ? { reach: Infinity, normal: [0, 0, 0] } : { reach: radius / across, normal: [u[0] / across, u[1] / across, 0] };
}
