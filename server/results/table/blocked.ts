/** Legs in whose way something stands. Plain numbers find them; only of these, cells are made. */
import type { Leg, Thing } from '../../model/model.ts';
import { clearance, firstMeeting, type Solid, type Vector } from '../rules/table.ts';
import type { Ray } from './rays.ts';
import { likely, sure, type Standing } from './standing.ts';

export interface Blocked {
  readonly leg: Leg;
  readonly thing: Thing;
  /** the axis of the leg runs into it; else it reaches into the width of the light */
  readonly axis: boolean;
  /** it is in the way by what is written of it, whatever its mount is */
  readonly sure: boolean;
  /** share of the width of the light that is cut */
  readonly cut: number;
  /** how far from the start of the leg, m */
  readonly along: number;
  /** radius of the light there, m */
  readonly radius: number;
}

/** Less than that share of the width is no harm that anybody sees. */
const LEAST_CUT = 0.1;

export function blockedLegs(rays: Iterable<Ray>, things: readonly Standing[]): Blocked[] {
  const found: Blocked[] = [];
  for (const ray of rays) for (const s of things) {
    if (s.thing.id === ray.start.id || s.thing.id === ray.end.id || !isNear(s, ray)) continue;
    const b = inTheWay(ray, s);
    if (b) found.push(b);
  }
  return found;
}

/** Cheap, and never false where the thing is in the way. */
export function isNear({ at, bound, postTop }: Standing, { from, to, useful, whole }: Ray, all = false): boolean {
  const r = Math.max(...(all ? whole : useful));
  const flat = postTop > 0 && Math.min(from[2], to[2]) - r <= postTop;
  return squareDistance(from, to, at, flat) <= (bound + r) ** 2;
}

/** Of a point from a leg; seen from above where the height does not count. */
export function squareDistance(a: Vector, b: Vector, p: Vector, flat = false): number {
  const u: Vector = [b[0] - a[0], b[1] - a[1], flat ? 0 : b[2] - a[2]];
  const v: Vector = [p[0] - a[0], p[1] - a[1], flat ? 0 : p[2] - a[2]];
  const length = u[0] * u[0] + u[1] * u[1] + u[2] * u[2];
  const t = length > 0 ? Math.min(1, Math.max(0, (u[0] * v[0] + u[1] * v[1] + u[2] * v[2]) / length)) : 0;
  return (v[0] - t * u[0]) ** 2 + (v[1] - t * u[1]) ** 2 + (v[2] - t * u[2]) ** 2;
}

function inTheWay(ray: Ray, s: Standing): Blocked | undefined {
  const certain = cutBy(ray, [sure(s)]);
  if (certain && (certain.axis || certain.cut >= LEAST_CUT)) return { leg: ray.leg, thing: s.thing, sure: true, ...certain };
  // Where one end of the leg lies within assumed sizes, they are too large.
  const guessed = cutBy(ray, likely(s).filter(solid => [ray.from, ray.to].every(p => clearance(solid, p, p).clearance > 0)));
  return guessed && (guessed.axis || guessed.cut >= LEAST_CUT) ? { leg: ray.leg, thing: s.thing, sure: false, ...guessed } : undefined;
}

type Cut = Pick<Blocked, 'axis' | 'cut' | 'along' | 'radius'>;

/** The worst that solids do to a ray; what stands beside one of its ends, or beyond it, does nothing. */
function cutBy(ray: Ray, solids: readonly Solid[]): Cut | undefined {
  const { from, to, useful: [r, end] } = ray;
  const length = Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
  let worst: Cut | undefined;
  for (const solid of solids) {
    const met = firstMeeting(solid, from, to);
    const at = (along: number): number => r + ((end - r) * along) / length;
    if (met !== undefined) return { axis: true, cut: 1, along: met, radius: at(met) };
    if (r === 0 && end === 0) continue;
    const { clearance: gap, along } = clearance(solid, from, to, r, end);
    const radius = at(along);
    if (gap >= 0 || along <= length * END || along >= length * (1 - END)) continue;
    const cut = Math.min(1, -gap / (2 * radius));
    if (!worst || cut > worst.cut) worst = { axis: false, cut, along, radius };
  }
  return worst;
}
const END = 1e-3;
