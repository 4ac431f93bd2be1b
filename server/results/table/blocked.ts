/** Legs in whose way something stands. Plain numbers find them; only of these, cells are made. */
import type { Leg, Thing } from '../../model/model.ts';
import { finder, spanRound } from '../near.ts';
import { clearance, firstMeeting, meetingMoved, unit, type Solid, type Vector } from '../rules/table.ts';
import type { Lit } from './lit.ts';
import type { Ray } from './rays.ts';
import { shadowOf, type Shaded } from './shadows.ts';
import { beyondEnds, sure, type Standing } from './standing.ts';

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
  /** from the edge of the light to the thing, m; below zero it reaches so far into the light */
  readonly gap: number;
  /** half of the 95 % band of that, by what is written of the places, m */
  readonly give: number;
  /** the edge of the light lies inside that band: it may be cut or not */
  readonly undecided: boolean;
  /** the middle of what is lit has its light, and only a part far from it lies in shadow */
  readonly shaded?: Shaded;
}

/** Less than that share of the width is no harm that anybody sees. */
const LEAST_CUT = 0.1;

/** How unsure places are, m: bounds that cost nothing, of the ends of a leg and of a thing, and half of the 95 % band of how the one stands to the other. */
export interface Give {
  ofEnds(ray: Ray): number;
  ofThing(s: Standing): number;
  of(ray: Ray, s: Standing): number;
}

export function blockedLegs(rays: Iterable<Ray>, things: readonly Standing[], lit: ReadonlyMap<Leg, Lit>, unsure: Give): Blocked[] {
  const found: Blocked[] = [];
  const near = finder(things.map(s => ({ s, give: unsure.ofThing(s) })), ({ s, give }) => spanRound(s.at, s.bound + give));
  for (const ray of rays) {
    const ends = unsure.ofEnds(ray);
    const face = lit.get(ray.leg);
    const { from, to } = ray;
    const widest = ends + Math.max(...ray.useful, ...(face?.reach ?? []));
    for (const { s, give } of near([Math.min(from[0], to[0]) - widest, Math.min(from[1], to[1]) - widest, Math.max(from[0], to[0]) + widest, Math.max(from[1], to[1]) + widest])) {
      const loose = ends + give;
      const isInLight = isNear(s, ray, ray.useful, loose);
      const reached = face && isNear(s, ray, face.reach, loose) ? face : undefined;
      const b = isInLight || reached ? blockedBy(ray, s, isInLight, reached, loose, unsure) : undefined;
      if (b) found.push(b);
    }
  }
  return found;
}

/** @param isInLight it may be in the way of the light that is used @param reached what the leg lights, where it may shade that */
function blockedBy(ray: Ray, s: Standing, isInLight: boolean, reached: Lit | undefined, loose: number, unsure: Give): Blocked | undefined {
  if (s.thing.id === ray.start.id || s.thing.id === ray.end.id) return undefined;
  const b = isInLight ? inTheWay(ray, s) ?? (loose > 0 ? beside(ray, s) : undefined) : undefined;
  const give = (): number => (loose > 0 ? unsure.of(ray, s) : 0);
  const known = b && { ...b, give: give() };
  if (known && (known.cut > 0 || Math.abs(known.gap) < known.give)) return { ...known, undecided: Math.abs(known.gap) < known.give };
  // What leaves the middle alone may still shade a far corner.
  const shadow = reached && shadowOf(ray, reached, s, give());
  return shadow && { leg: ray.leg, thing: s.thing, axis: false, cut: 0, radius: radiusAt(ray, shadow.along), ...shadow };
}

/** Cheap, and never false where the thing is in the way of light that is so wide at the start and the end of its leg. */
export function isNear({ at, bound, postTop }: Standing, { from, to }: Ray, widths: readonly [number, number], loose = 0): boolean {
  const r = Math.max(widths[0], widths[1]);
  const reach = bound + r + loose;
  const flat = postTop > 0 && Math.min(from[2], to[2]) - r <= postTop;
  return squareDistance(from, to, at, flat) <= reach ** 2;
}

/** Of a point from a leg; seen from above where the height does not count. */
export function squareDistance(a: Vector, b: Vector, p: Vector, flat = false): number {
  // Component by component: it is asked for each leg and each thing.
  const ux = b[0] - a[0];
  const uy = b[1] - a[1];
  const uz = flat ? 0 : b[2] - a[2];
  const vx = p[0] - a[0];
  const vy = p[1] - a[1];
  const vz = flat ? 0 : p[2] - a[2];
  const length = ux * ux + uy * uy + uz * uz;
  const t = length > 0 ? Math.min(1, Math.max(0, (ux * vx + uy * vy + uz * vz) / length)) : 0;
  return (vx - t * ux) ** 2 + (vy - t * uy) ** 2 + (vz - t * uz) ** 2;
}

type Found = Omit<Blocked, 'give' | 'undecided'>;

function inTheWay(ray: Ray, s: Standing): Found | undefined {
  const certain = cutBy(ray, [sure(s)]);
  if (certain && (certain.axis || certain.cut >= LEAST_CUT)) return { leg: ray.leg, thing: s.thing, sure: true, ...certain };
  const guessed = cutBy(ray, beyondEnds(s, ray));
  return guessed && (guessed.axis || guessed.cut >= LEAST_CUT) ? { leg: ray.leg, thing: s.thing, sure: false, ...guessed } : undefined;
}

/** What the light passes, and by how much. */
function beside(ray: Ray, s: Standing): Found | undefined {
  const length = lengthOf(ray);
  let nearest: Found | undefined;
  for (const [solid, isSure] of [[sure(s), true] as const, ...beyondEnds(s, ray).map(x => [x, false] as const)]) {
    const { clearance: gap, along } = clearance(solid, ray.from, ray.to, ...ray.useful);
    // What stands beside one end of the leg, or beyond it, is passed by nothing.
    if (along <= length * END || along >= length * (1 - END) || (nearest && nearest.gap <= gap)) continue;
    nearest = { leg: ray.leg, thing: s.thing, sure: isSure, axis: false, cut: 0, along, radius: radiusAt(ray, along), gap };
  }
  return nearest;
}

const radiusAt = (ray: Ray, along: number): number => ray.useful[0] + ((ray.useful[1] - ray.useful[0]) * along) / lengthOf(ray);
const lengthOf = ({ from, to }: Ray): number => Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]);

type Cut = Pick<Blocked, 'axis' | 'cut' | 'along' | 'radius' | 'gap'>;

/** The worst that solids do to a ray; what stands beside one of its ends, or beyond it, does nothing. */
function cutBy(ray: Ray, solids: readonly Solid[]): Cut | undefined {
  const { from, to, useful: [r, end] } = ray;
  const length = lengthOf(ray);
  let worst: Cut | undefined;
  for (const solid of solids) {
    const met = firstMeeting(solid, from, to);
    const at = (along: number): number => r + ((end - r) * along) / length;
    if (met !== undefined) return { axis: true, cut: 1, along: met, radius: at(met), gap: -(at(met) + depthIn(solid, ray)) };
    if (r === 0 && end === 0) continue;
    const { clearance: gap, along } = clearance(solid, from, to, r, end);
    const radius = at(along);
    if (gap >= 0 || along <= length * END || along >= length * (1 - END)) continue;
    const cut = Math.min(1, -gap / (2 * radius));
    if (!worst || cut > worst.cut) worst = { axis: false, cut, along, radius, gap };
  }
  return worst;
}

/** How far the axis has to be moved sideways, up or down, until it is free of a solid that it runs into, m. */
function depthIn(solid: Solid, { from, to }: Ray): number {
  const way = unit([to[0] - from[0], to[1] - from[1], to[2] - from[2]]);
  const left: Vector = unit([-way[1], way[0], 0]);
  const up: Vector = [-way[2] * left[1], way[2] * left[0], way[0] * left[1] - way[1] * left[0]];
  let least = FARTHEST;
  for (const side of [left, up]) for (const sign of [1, -1]) {
    const isIn = meetingMoved(solid, from, to, [sign * side[0], sign * side[1], sign * side[2]]);
    // A convex solid is left once. Where it is not left yet, this way is the longer one.
    if (isIn(least)) continue;
    let [low, high] = [0, FARTHEST];
    for (let i = 0; i < 24; i++) { const middle = (low + high) / 2; if (isIn(middle)) low = middle; else high = middle; }
    least = Math.min(least, high);
  }
  return least;
}
/** Nothing on a table is wider, m. */
const FARTHEST = 2;
const END = 1e-3;
