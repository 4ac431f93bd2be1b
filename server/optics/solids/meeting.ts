import { extents } from '../depth.ts';
import { nearestWithin } from '../range.ts';
import type { Vector } from '../vectors.ts';
import { inFrame, turnedIntoFrame } from './frame.ts';
import { frameOf, halfSize, type Solid } from './solid.ts';

/**
 * How far along a ray from one point towards another it first meets a solid, m; undefined where it passes. Touching is meeting; 0 where it starts inside.
 *
 * @param solid what may stand in the way
 * @param from, to ends of the ray, m; components see `coordinates` of `vectors.ts`
 *
 * Validity: a ray without thickness (`clearance` takes the radius of a beam). A leg that begins or ends on the solid meets it there: leave
 * the solid at its ends out.
 * Source: geometry.
 */
export function firstMeeting(solid: Solid, from: Vector, to: Vector): number | undefined {
  const frame = frameOf(solid);
  const [a, b] = [inFrame(frame, from), inFrame(frame, to)];
  const way: Vector = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const { enters, leaves } = inside(solid, a, way);
  return enters <= leaves ? enters * Math.hypot(...way) : undefined;
}

/** Whether a ray meets a solid, when both its ends are moved the same way by so many m. As `firstMeeting`; made once for many. */
export function meetingMoved(solid: Solid, from: Vector, to: Vector, way: Vector): (by: number) => boolean {
  const frame = frameOf(solid);
  const [a, b, s] = [inFrame(frame, from), inFrame(frame, to), turnedIntoFrame(frame, way)];
  const along: Vector = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  return by => {
    const { enters, leaves } = inside(solid, [a[0] + s[0] * by, a[1] + s[1] * by, a[2] + s[2] * by], along);
    return enters <= leaves;
  };
}

/** The part of a ray that lies inside, as shares of its length; nothing where it leaves before it enters. */
interface Inside {
  readonly enters: number
  readonly leaves: number
}
const ALL: Inside = { enters: 0, leaves: 1 };
const NOTHING: Inside = { enters: 1, leaves: 0 };

function inside(solid: Solid, from: Vector, way: Vector): Inside {
  switch (solid.kind) {
    case 'box': {
      const half = halfSize(solid.size);
      return both(both(betweenFaces(from[0], way[0], half[0]), betweenFaces(from[1], way[1], half[1])), betweenFaces(from[2], way[2], half[2]));
    }
    case 'cylinder': {
      const radius = nearestWithin(extents, solid.radius);
      const round = withinRadius([from[0], from[1], 0], [way[0], way[1], 0], radius);
      return both(round, betweenFaces(from[2], way[2], nearestWithin(extents, solid.height) / 2));
    }
    case 'sphere':
      return withinRadius(from, way, nearestWithin(extents, solid.radius));
  }
}

/** Between two faces at ± half. */
function betweenFaces(from: number, way: number, half: number): Inside {
  if (way === 0) return Math.abs(from) <= half ? ALL : NOTHING;
  const [one, other] = [(-half - from) / way, (half - from) / way];
  return both(ALL, { enters: Math.min(one, other), leaves: Math.max(one, other) });
}

/** Within a radius of the origin. From the point of the ray that is nearest to it, so that far ends lose no digits. */
function withinRadius(from: Vector, way: Vector, radius: number): Inside {
  const length = Math.hypot(...way);
  if (length === 0) return Math.hypot(...from) <= radius ? ALL : NOTHING;
  const u: Vector = [way[0] / length, way[1] / length, way[2] / length];
  const along = -(from[0] * u[0] + from[1] * u[1] + from[2] * u[2]);
  const nearest = Math.hypot(from[0] + along * u[0], from[1] + along * u[1], from[2] + along * u[2]);
  if (nearest > radius) return NOTHING;
  const half = Math.sqrt((radius - nearest) * (radius + nearest));
  return both(ALL, { enters: (along - half) / length, leaves: (along + half) / length });
}

const both = (a: Inside, b: Inside): Inside => ({ enters: Math.max(a.enters, b.enters), leaves: Math.min(a.leaves, b.leaves) });
