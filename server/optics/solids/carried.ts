/** Light that goes on from a flat opening: what of another flat face it reaches. Geometry throughout. */
import { extents } from '../depth.ts';
import { lightCurvatures } from '../replay/domains.ts';
import { nearestWithin } from '../range.ts';
import { reflectedDirection } from '../surfaces/refract.ts';
import { dot, unit, within, type Vector } from '../vectors.ts';
import { facing, fromFrame, turnedIntoFrame, inFrame } from './frame.ts';

/** A flat rectangle: its middle, its normal, width and height in m. It stands upright, as `facing` of `frame.ts` has it. */
export interface Pane { readonly at: Vector; readonly normal: Vector; readonly size: readonly [number, number] }

/** How light runs at the middle of a pane: in a direction of any length, and by the curvature of its waves, 1/m: above zero it spreads. */
export interface Run { readonly direction: Vector; readonly curvature: number }

type Point = readonly [number, number];
/** What is flatter than this counts as parallel, 1/m. */
const PARALLEL = 1e-6;

/**
 * Share of a face, 1, which the light that has passed an opening falls on: the opening’s outline, carried along the light, cut to the face. 0 where the light of a corner never comes to the plane of the face.
 *
 * @param opening, face see `Pane`; sides see `extents`
 * @param run light at the middle of the opening; its curvature see `lightCurvatures`
 *
 * Validity: rays; light that fills the opening evenly. Of light that runs together before the face the outline is turned round behind its focus.
 */
export function shareReached(opening: Pane, run: Run, face: Pane): number {
  const outline = carried(corners(opening), opening.at, run, face);
  return outline ? shareOf(cut(outline, face.size), face) : 0;
}

/** Share of the light from an opening, 1, which a face takes up. Arguments and validity as `shareReached`. */
export function shareTakenUp(opening: Pane, run: Run, face: Pane): number {
  const outline = carried(corners(opening), opening.at, run, face);
  const all = outline ? areaOf(outline) : 0;
  return outline && all > 0 ? Math.min(1, areaOf(cut(outline, face.size)) / all) : 0;
}

/**
 * Share of a plate, 1, to which parallel light comes back that has gone through the plate, and is thrown back by a pane behind it.
 *
 * @param plate, pane see `Pane`
 * @param direction of the light, of any length
 */
export function shareThrownBack(plate: Pane, direction: Vector, pane: Pane): number {
  const out = carried(corners(plate), plate.at, { direction, curvature: 0 }, pane);
  const on = out && cut(out, pane.size);
  if (!on || on.length < 3) return 0;
  const frame = facing(pane.at, pane.normal);
  const back = carried(on.map(([x, y]) => fromFrame(frame, [x, y, 0])), pane.at, { direction: reflectedDirection(unit(direction), unit(pane.normal)), curvature: 0 }, plate);
  return back ? shareOf(cut(back, plate.size), plate) : 0;
}

function corners({ at, normal, size }: Pane): Vector[] {
  const frame = facing(at, normal);
  const [w, h] = size.map(s => nearestWithin(extents, s) / 2) as [number, number];
  return [[w, h], [-w, h], [-w, -h], [w, -h]].map(([x, y]) => fromFrame(frame, [x!, y!, 0]));
}

/** Points carried along the light onto the plane of a face, in its frame. Undefined where one of them does not get there. */
function carried(points: readonly Vector[], middle: Vector, { direction, curvature }: Run, face: Pane): Point[] | undefined {
  const [frame, u, bend] = [facing(face.at, face.normal), unit(direction), nearestWithin(lightCurvatures, curvature)];
  const parallel = Math.abs(bend) < PARALLEL;
  const m = within(middle);
  const source: Vector = parallel ? m : [m[0] - u[0] / bend, m[1] - u[1] / bend, m[2] - u[2] / bend];
  const out = points.map((p): Point | undefined => {
    const from: Vector = [p[0] - source[0], p[1] - source[1], p[2] - source[2]];
    const way = parallel ? u : bend > 0 ? unit(from) : unit([-from[0], -from[1], -from[2]]);
    const [start, along] = [inFrame(frame, p), turnedIntoFrame(frame, way)];
    const t = -start[2] / along[2];
    return Number.isFinite(t) && t >= 0 && dot(way, u) > 0 ? [start[0] + t * along[0], start[1] + t * along[1]] : undefined;
  });
  return out.every((p): p is Point => p !== undefined) ? out : undefined;
}

/** What of a convex outline lies on a rectangle about the origin (Sutherland & Hodgman, Commun. ACM 17, 32, 1974). */
function cut(outline: readonly Point[], size: readonly [number, number]): Point[] {
  const edges: readonly (readonly [0 | 1, 1 | -1])[] = [[0, 1], [0, -1], [1, 1], [1, -1]];
  return edges.reduce<Point[]>((points, [axis, side]) => {
    const inside = (p: Point): number => nearestWithin(extents, size[axis]) / 2 - side * p[axis];
    return points.flatMap((p, i): Point[] => {
      const next = points[(i + 1) % points.length]!;
      const [a, b] = [inside(p), inside(next)];
      const kept = a >= 0 ? [p] : [];
      if (a >= 0 === b >= 0) return kept;
      const t = a / (a - b);
      return [...kept, [p[0] + t * (next[0] - p[0]), p[1] + t * (next[1] - p[1])]];
    });
  }, [...outline]);
}

const areaOf = (points: readonly Point[]): number => Math.abs(points.reduce((sum, p, i) => { const q = points[(i + 1) % points.length]!; return sum + p[0] * q[1] - q[0] * p[1]; }, 0)) / 2;
function shareOf(points: readonly Point[], { size: [w, h] }: Pane): number {
  const all = nearestWithin(extents, w) * nearestWithin(extents, h);
  return all > 0 ? Math.min(1, areaOf(points) / all) : 0;
}
