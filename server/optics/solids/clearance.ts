import { extents } from '../depth.ts';
import { nearestWithin } from '../range.ts';
import { distance, type Vector } from '../vectors.ts';
import { inFrame } from './frame.ts';
import { frameOf, halfSize, type Solid } from './solid.ts';

/** How near a beam passes to a solid. */
export interface Passing {
  /** From the edge of the beam to the solid, m; below zero where the beam is cut: by how much, up to its whole radius where its axis meets the solid. */
  readonly clearance: number
  /** Where along the beam that is, m from its start. */
  readonly along: number
}

/** Share of the length to which the nearest point is told: far below what a table is built to. */
const FINE = 1e-11;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * How near a beam passes to a solid: the least, along it, of the distance from its axis less its radius there.
 *
 * @param solid what it passes
 * @param from, to ends of the beam's axis, m; components see `coordinates` of `vectors.ts`
 * @param radius radius of the beam at its start, m; see `extents` of `depth.ts`. 0, as when left out, is a ray
 * @param radiusAtEnd radius at its end, m, where the beam widens or narrows evenly between
 *
 * Validity: a beam that widens slowly (the distance is taken square to the axis); where it widens by 0.3 of its length, the edge is misplaced by 4 % of the radius.
 * Source: geometry. The distance from a convex solid is a convex function along a line, so that one search finds its least.
 */
export function clearance(solid: Solid, from: Vector, to: Vector, radius = 0, radiusAtEnd = radius): Passing {
  const frame = frameOf(solid);
  const [a, b] = [inFrame(frame, from), inFrame(frame, to)];
  const [r, end] = [nearestWithin(extents, radius), nearestWithin(extents, radiusAtEnd)];
  const distance = distanceOf(solid);
  const edge = (t: number): number => distance(a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), a[2] + t * (b[2] - a[2])) - (r + t * (end - r));
  // From a point to itself it is the same all along.
  const still = r === end && a.every((c, i) => c === b[i]);
  const t = still ? 0 : leastBetween0And1(edge);
  return { clearance: edge(t), along: t * Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]) };
}

/** Distance from a solid of a point in its own frame, m; 0 inside. */
function distanceOf(solid: Solid): (x: number, y: number, z: number) => number {
  switch (solid.kind) {
    case 'box': {
      const [w, h, d] = halfSize(solid.size);
      return (x, y, z) => distance(outside(x, w), outside(y, h), outside(z, d));
    }
    case 'cylinder': {
      const [radius, half] = [nearestWithin(extents, solid.radius), nearestWithin(extents, solid.height) / 2];
      return (x, y, z) => distance(outside(distance(x, y, 0), radius), outside(z, half), 0);
    }
    case 'sphere': {
      const radius = nearestWithin(extents, solid.radius);
      return (x, y, z) => outside(distance(x, y, z), radius);
    }
  }
}

const outside = (x: number, half: number): number => Math.max(0, Math.abs(x) - half);

/** Where a convex function is least, by golden section; the ends are tried themselves. */
function leastBetween0And1(f: (t: number) => number): number {
  let [low, high] = [0, 1];
  let [left, right] = [high - GOLDEN, low + GOLDEN];
  let [atLeft, atRight] = [f(left), f(right)];
  while (high - low > FINE) {
    if (atLeft <= atRight) {
      [high, right, atRight] = [right, left, atLeft];
      left = high - GOLDEN * (high - low);
      atLeft = f(left);
    } else {
      [low, left, atLeft] = [left, right, atRight];
      right = low + GOLDEN * (high - low);
      atRight = f(right);
    }
  }
  const middle = (low + high) / 2;
  return [0, 1, middle].reduce((best, t) => (f(t) < f(best) ? t : best));
}
