/** Rules of places in space: points on a leg, points a distance on, directions of light and of surfaces, and the angles between them. */
import { above, angleBetween, angleFromNormal, direction, leftOf, mirrorNormal, turnedLeft, unit, type Vector } from '../../optics/vectors.ts';
import type { Rule } from '../graph.ts';
import { smooth } from './slopes.ts';

export type Axis = 0 | 1 | 2;
export type Way = 'left' | 'right' | 'up' | 'down' | 'back';

const vector = (x: readonly number[], from = 0): Vector => [x[from]!, x[from + 1]!, x[from + 2]!];
/** The rule of each component, made once. */
const each = (rule: (axis: Axis) => Rule): ((axis: Axis) => Rule) => { const all = ([0, 1, 2] as const).map(rule); return axis => all[axis]!; };
/** What has no direction has no value. */
const component = (v: Vector, axis: Axis): number => (v[0] === 0 && v[1] === 0 && v[2] === 0 ? Number.NaN : v[axis]);

/** One component of the direction from A to B; inputs are A and B. Partials: (δ − u·u) / |B − A|. */
export const towards = each(axis => ({
  name: 'direction', of: [axis], formula: '(B − A) / |B − A|',
  compute: x => component(unit([x[3]! - x[0]!, x[4]! - x[1]!, x[5]! - x[2]!]), axis),
  partials: x => {
    const d = vector(across(x, axis));
    return [-d[0], -d[1], -d[2], ...d];
  },
}));
function across(x: readonly number[], axis: Axis): number[] {
  const d: Vector = [x[3]! - x[0]!, x[4]! - x[1]!, x[5]! - x[2]!];
  const l = Math.hypot(...d) || 1;
  return d.map((c, i) => ((i === axis ? 1 : 0) - (d[axis] * c) / (l * l)) / l);
}

/** One coordinate of the point that lies a distance behind A on the way to B: inputs are A, B and the distance. */
export const along = each(axis => ({
  name: 'along a leg', of: [axis], formula: 'A + d · (B − A) / |B − A|',
  compute: x => x[axis]! + x[6]! * component(unit([x[3]! - x[0]!, x[4]! - x[1]!, x[5]! - x[2]!]), axis),
  partials: x => {
    const d = across(x, axis).map(c => c * x[6]!);
    return [...d.map((c, i) => (i === axis ? 1 : 0) - c), ...d, unit([x[3]! - x[0]!, x[4]! - x[1]!, x[5]! - x[2]!])[axis]];
  },
}));

/** One coordinate of the point a distance behind A in a direction: inputs are that coordinate of A, that component of the direction, the distance. */
export const BEYOND: Rule = { name: 'behind a thing', formula: 'A + d · direction', compute: ([a, u, d]) => a! + u! * d!, partials: ([, u, d]) => [1, d!, u!] };

const SIDE: Readonly<Record<Exclude<Way, 'back'>, { readonly of: (light: Vector) => Vector; readonly sign: 1 | -1 }>> = {
  left: { of: leftOf, sign: 1 }, right: { of: leftOf, sign: -1 }, up: { of: above, sign: 1 }, down: { of: above, sign: -1 },
};
/** One component of the light turned by a quarter, or sent back; inputs are the three of the light. */
export function turned(way: Way, axis: Axis): Rule {
  if (way === 'back') return { name: 'turned back', of: [axis], formula: '−direction', linear: true, compute: x => -x[axis]!, partials: () => [0, 1, 2].map(i => (i === axis ? -1 : 0)) };
  const { of, sign } = SIDE[way];
  return smooth({ name: `turned ${way}`, of: [axis], formula: `a quarter turn ${way} of the light`, compute: x => sign * component(of(vector(x)), axis) });
}
/** The same by an angle, to the left where it is above zero; inputs are the light and the angle. */
export const turnedBy = each(axis => smooth({
  name: 'turned', of: [axis], formula: 'the light turned by the angle, counter-clockwise seen from above',
  compute: x => (leftOf(vector(x)).every(c => c === 0) ? Number.NaN : turnedLeft(vector(x), x[3]!)[axis]),
}));

/** One component of a written direction; inputs are the heading and, where it is written, the tilt. */
export const headed = each(axis => smooth({ name: 'heading', of: [axis], formula: '(cos tilt · cos heading, cos tilt · sin heading, sin tilt)', compute: ([heading, tilt]) => direction(heading!, tilt ?? 0)[axis] }));
/** One component of the direction from A towards B, tipped to an angle above the horizontal; inputs are A, B and the tilt. */
export const facedAt = each(axis => smooth({
  name: 'facing', of: [axis], formula: 'from A towards B, tipped to the tilt above the horizontal',
  compute: x => (Math.hypot(x[3]! - x[0]!, x[4]! - x[1]!) === 0 ? Number.NaN : direction(Math.atan2(x[4]! - x[1]!, x[3]! - x[0]!), x[6]!)[axis]),
}));

/** One component of the normal of a mirror; inputs are the light that arrives and the light that leaves. */
export const bisecting = each(axis => smooth({ name: 'normal of a mirror', of: [axis], formula: '(leaving − arriving) / |leaving − arriving|', compute: x => component(mirrorNormal(vector(x), vector(x, 3)), axis) }));

/** Angle at which light meets a surface, from its normal; inputs are the normal and the light. Where it meets it squarely, any error opens the angle. */
export const FROM_NORMAL: Rule = smooth({ name: 'angle of arrival', formula: 'acos |normal · light|', curved: true, compute: x => angleFromNormal(vector(x), vector(x, 3)) });
/** Angle between two directions. */
export const BETWEEN: Rule = smooth({ name: 'angle between', formula: 'acos(a · b)', curved: true, compute: x => angleBetween(vector(x), vector(x, 3)) });
/** Angle of incidence on a mirror: half of what lies between the light that arrives and the light that leaves; inputs are both. */
export const INCIDENCE: Rule = smooth({ name: 'angle of incidence', formula: '(180° − angle by which the light is turned) / 2', curved: true, compute: x => (Math.PI - angleBetween(vector(x), vector(x, 3))) / 2 });
/** Angle by which a mirror turns the light; input is the angle of incidence. */
export const FOLD: Rule = { name: 'angle of a fold', formula: '180° − 2 · angle of incidence', linear: true, compute: ([i]) => Math.PI - 2 * i!, partials: () => [-2] };
/** Angle between where the light on an object comes from and where the plate is: 0 from the front. Inputs are the light's direction and the line of sight, from the object to the plate. */
export const LIT_AT: Rule = smooth({ name: 'angle of the light', formula: '180° − angle between the light and the way on to the plate', curved: true, compute: x => Math.PI - angleBetween(vector(x), vector(x, 3)) });
