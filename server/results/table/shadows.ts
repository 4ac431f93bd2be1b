/** What stands beside the middle of the light and still shades a far corner, or one end, of what it lights. In plain numbers. */
import { clearance, dot, facing, firstMeeting, inFrame, unit, type Solid, type Vector } from '../rules/table.ts';
import type { Lit, Spot } from './lit.ts';
import type { Ray } from './rays.ts';
import { beyondEnds, isRounded, sure, type Standing } from './standing.ts';

/** The part of what is lit that lies in shadow, as it is seen from where the light comes. */
export interface Shaded {
  /** of what gets light */
  readonly share: number;
  /** how far the thing has to be moved off the light until not even its mount, if that is of the usual size, casts a shadow, m; `FARTHEST` where that would not do */
  readonly clear: number;
  /** -1 left, 1 right, 0 where it lies on both sides */
  readonly across: number;
  /** -1 below, 1 above, 0 where it lies on both sides */
  readonly up: number;
  /** nothing of the face is up, and nobody says what is its left */
  readonly level: boolean;
  readonly face: Pick<Lit, 'size' | 'round'>;
}

/** What `Blocked` says of it too, in the same words. */
interface Shadow {
  readonly sure: boolean;
  readonly along: number;
  readonly gap: number;
  readonly give: number;
  readonly undecided: boolean;
  readonly shaded: Shaded;
}

/** A smaller share of a face in shadow is no harm that anybody sees: a choice. */
const LEAST = 0.02;
/** Nothing on a table has to be moved farther, m. */
export const FARTHEST = 2;
/** What light touches at the very start or end of its way stands beside that, and not in it. */
const END = 1e-3;

/** Sine of the slope above which nothing tells what is up of a face. */
const LEVEL = 0.9;

/** @param give half of the 95 % band of where the thing stands to the leg, m */
export function shadowOf(ray: Ray, lit: Lit, s: Standing, give: number): Shadow | undefined {
  const isNear = (solid: Solid): boolean => isBefore(solid, lit, give) && clearance(solid, ray.from, ray.to, ...lit.reach).clearance < give;
  const [known, guessed] = [[sure(s)].filter(isNear), beyondEnds(s, ray).filter(isNear)];
  if (known.length + guessed.length === 0) return undefined;
  const fields = lit.fields();
  const certain = known.map(solid => holding(solid, s));
  // What is lit does not stand in what is only guessed to be there.
  const likely = guessed.map(solid => holding(solid, s)).filter(hold => !fields.some(({ to }) => hold(to, to) !== undefined));
  const away = awayFrom(ray, s);
  const dark = (holds: readonly Hold[], by: number): Spot[] => fields.filter(spot => meeting(spot, holds, away, by) !== undefined);
  // Moved off the light, it leaves the face by its edge.
  const last = lit.rim().length > 0 ? lit.rim() : fields;
  const clearOf = (holds: readonly Hold[]): number => freeFrom(by => last.some(spot => meeting(spot, holds, away, by) !== undefined));
  const shadowBy = (holds: readonly Hold[], isSure: boolean): Shadow | undefined => {
    // Where it stands, else as near as it may stand by what is written.
    const by = holds.length === 0 ? undefined : [0, ...(give > 0 ? [-give] : [])].find(d => dark(holds, d).length >= Math.max(1, LEAST * fields.length));
    if (by === undefined) return undefined;
    const free = clearOf(holds);
    const undecided = Math.abs(free) < give;
    if (by < 0 && !undecided) return undefined;
    const spots = dark(holds, by);
    return {
      sure: isSure, gap: -free, give, undecided, along: mean(spots.map(spot => alongLeg(spot, ray, meeting(spot, holds, away, by) ?? 0))),
      shaded: { ...partOf(spots), share: spots.length / fields.length, clear: isSure ? clearOf([...certain, ...likely]) : free, level: Math.abs(lit.frame.axes[2][2]) > LEVEL, face: lit },
    };
  };
  return shadowBy(certain, true) ?? shadowBy(likely, false);
}

/** Some of a solid lies on the side of the face that its light comes from. */
function isBefore(solid: Solid, { frame: { origin, axes: [, , n] } }: Lit, give: number): boolean {
  const middle = solid.kind === 'box' ? solid.frame.origin : solid.middle;
  const reach = solid.kind === 'box' ? solid.size.reduce((sum, v, i) => sum + (v / 2) * Math.abs(dot(solid.frame.axes[i]!, n)), 0)
    : solid.kind === 'sphere' ? solid.radius : solid.radius + (solid.height / 2) * Math.abs(dot(unit(solid.axis), n));
  return dot([middle[0] - origin[0], middle[1] - origin[1], middle[2] - origin[2]], n) + reach > -give;
}

/** How far along a ray something first holds it back, m; undefined where it passes. */
type Hold = (from: Vector, to: Vector) => number | undefined;

/** Of what is rounded the corners of its box are empty: with its sides as units it is a ball. */
function holding(solid: Solid, s: Standing): Hold {
  if (solid.kind !== 'box' || s.form.face !== 'body' || !isRounded(s.thing) || solid.size.some(v => !(v > 0))) return (from, to) => firstMeeting(solid, from, to);
  const { frame, size } = solid;
  const scaled = (p: Vector): Vector => { const [x, y, z] = inFrame(frame, p); return [(2 * x) / size[0], (2 * y) / size[1], (2 * z) / size[2]]; };
  return (from, to) => {
    const [a, b] = [scaled(from), scaled(to)];
    const met = firstMeeting({ kind: 'sphere', middle: [0, 0, 0], radius: 1, frame: UNTURNED }, a, b);
    const [whole, way] = [Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]), Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2])];
    return met === undefined || whole === 0 ? met : (met / whole) * way;
  };
}
const UNTURNED = facing([0, 0, 0], [0, 0, 1]);

/** The same for the light of a spot, with all of it moved by so much in a direction. */
function meeting({ from, to }: Spot, holds: readonly Hold[], way: Vector, by: number): number | undefined {
  // It is the light that is moved, the other way.
  const at = (t: number): Vector => [from[0] + t * (to[0] - from[0]) - by * way[0], from[1] + t * (to[1] - from[1]) - by * way[1], from[2] + t * (to[2] - from[2]) - by * way[2]];
  const [a, b] = [at(END), at(1 - END)];
  for (const hold of holds) { const met = hold(a, b); if (met !== undefined) return met + END * Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]); }
  return undefined;
}

/** How far away a shadow ends, below zero where it would begin so much nearer; within `FARTHEST` either way. */
function freeFrom(shades: (by: number) => boolean): number {
  const way = shades(0) ? 1 : -1;
  let [here, there] = [0, STEP];
  while (there < FARTHEST && shades(way * there) === way > 0) [here, there] = [there, 2 * there];
  if (there >= FARTHEST) return way * FARTHEST;
  while (there - here > FINE) { const middle = (here + there) / 2; if (shades(way * middle) === way > 0) here = middle; else there = middle; }
  return way * (way > 0 ? there : here);
}
/** m: the first step, and how well the last is told. */
const [STEP, FINE] = [2e-3, 1e-5];

/** From the nearest point of the leg to the thing; to the left where it stands on the leg. */
function awayFrom({ from, to }: Ray, { at }: Standing): Vector {
  const along = unit([to[0] - from[0], to[1] - from[1], to[2] - from[2]]);
  const v: Vector = [at[0] - from[0], at[1] - from[1], at[2] - from[2]];
  const k = dot(v, along);
  const off = unit([v[0] - k * along[0], v[1] - k * along[1], v[2] - k * along[2]]);
  return off.every(c => c === 0) ? unit([-along[1], along[0], 0]) : off;
}

/** To which side of the middle all of it lies. */
function partOf(spots: readonly Spot[]): { readonly across: number; readonly up: number } {
  const side = (i: 0 | 1): number => (spots.every(s => s.at[i] > 0) ? 1 : spots.every(s => s.at[i] < 0) ? -1 : 0);
  return { across: side(0), up: side(1) };
}

const mean = (x: readonly number[]): number => x.reduce((a, b) => a + b, 0) / x.length;

/** How far along the axis of the leg the way of a spot has come after so much of it, m. */
function alongLeg({ from, to }: Spot, ray: Ray, met: number): number {
  const along = unit([ray.to[0] - ray.from[0], ray.to[1] - ray.from[1], ray.to[2] - ray.from[2]]);
  const way = unit([to[0] - from[0], to[1] - from[1], to[2] - from[2]]);
  return Math.max(0, dot([from[0] + met * way[0] - ray.from[0], from[1] + met * way[1] - ray.from[1], from[2] + met * way[2] - ray.from[2]], along));
}
