import { extents } from '../depth.ts';
import { nearestWithin } from '../range.ts';
import { cross, dot, unit, type Vector } from '../vectors.ts';
import { frameOf, halfSize, type Solid } from './solid.ts';

/** A solid, or what is rounded and just fits into a box: the ball that is stretched to its size. */
export interface Body {
  readonly solid: Solid
  readonly rounded?: boolean
}

/**
 * How far two things are apart, m; below zero they stand in one another, and that is how far one of them has to be moved at least until they only touch.
 *
 * @param a, b convex, as all solids are
 * @param enough things that are seen to be farther apart than that, m, are not looked at closer: they are at least as far apart as what is found
 *
 * Validity: exact for balls and for boxes that stand in one another; of anything else the direction in which they come apart is searched, and what is found is never farther apart than they are, and nearer by less than 0.1 mm where they are some decimetres large.
 * Source: convex bodies are apart exactly where a plane lies between them; by how much, tells the difference of their widths along its normal (the separating axis theorem, any text on computational geometry).
 */
export function gapBetween(a: Body, b: Body, enough = Infinity): number {
  const [one, other] = [frameOf(a.solid), frameOf(b.solid)];
  const way: Vector = [other.origin[0] - one.origin[0], other.origin[1] - one.origin[1], other.origin[2] - one.origin[2]];
  const apart = (u: Vector): number => dot(way, u) - reach(a, u) - reach(b, u);
  const straight = apart(unit(way));
  if (straight > enough) return straight;
  const tried = [unit(way), ...one.axes, ...other.axes, ...one.axes.flatMap(p => other.axes.map(q => unit(cross(p, q)))), ...ROUND].filter(u => dot(u, u) > 0.5).flatMap((u): Vector[] => [u, [-u[0], -u[1], -u[2]]]);
  const far = tried.find(u => apart(u) > enough);
  if (far) return apart(far);
  // Coming apart along several ways is alike where they stand in one another: the best few are followed.
  const best = tried.map(u => ({ u, gap: apart(u) })).sort((p, q) => q.gap - p.gap).slice(0, 4);
  return Math.max(...best.map(({ u, gap }) => followed(u, gap, apart)));
}

/** Even directions between the axes. */
const ROUND: readonly Vector[] = [-1, 0, 1].flatMap(x => [-1, 0, 1].flatMap(y => [0, 1].map((z): Vector => unit([x, y, z]))));

/** How far a thing reaches from its middle along a direction of length 1, m. */
function reach({ solid, rounded = false }: Body, u: Vector): number {
  switch (solid.kind) {
    case 'box': {
      const half = halfSize(solid.size);
      const [x, y, z] = solid.frame.axes.map((axis, i) => half[i]! * Math.abs(dot(axis, u))) as [number, number, number];
      return rounded ? Math.hypot(x, y, z) : x + y + z;
    }
    case 'cylinder': {
      const c = Math.min(1, Math.abs(dot(frameOf(solid).axes[2], u)));
      return nearestWithin(extents, solid.radius) * Math.sqrt(1 - c * c) + (nearestWithin(extents, solid.height) / 2) * c;
    }
    case 'sphere':
      return nearestWithin(extents, solid.radius);
  }
}

/** How much shorter a step is made where none leads on, how much longer where one does; how long it is at most and at least, as a tangent; how many are tried. */
const STEPS = { shorter: 0.8, longer: 2, most: 0.5, least: 1e-9, tried: 1000 };
/** Turned by this, no two of many steps point one way, rad. */
const GOLDEN_ANGLE = Math.PI * (3 - Math.sqrt(5));

/** The greatest near a direction, by steps sideways. Where a rim or a corner is nearest it lies on a ridge, up which few directions lead: each time four others are tried. */
function followed(from: Vector, gap: number, apart: (u: Vector) => number): number {
  let [u, best, step] = [from, gap, STEPS.most / 2];
  for (let k = 0; step > STEPS.least && k < STEPS.tried; k++) {
    const side = unit(cross(u, Math.abs(u[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0]));
    const up = cross(u, side);
    const [a, b] = [step * Math.cos(k * GOLDEN_ANGLE), step * Math.sin(k * GOLDEN_ANGLE)];
    const before = best;
    for (const [p, q] of [[a, b], [-b, a], [-a, -b], [b, -a]] as const) {
      const v = unit([u[0] + p * side[0] + q * up[0], u[1] + p * side[1] + q * up[1], u[2] + p * side[2] + q * up[2]]);
      const there = apart(v);
      if (there > best) { [u, best] = [v, there]; break; }
    }
    step = best > before ? Math.min(STEPS.most, step * STEPS.longer) : step * STEPS.shorter;
  }
  return best;
}
