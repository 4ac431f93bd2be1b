/** What legs light all over: spots of a plate, an object or a hologram, and the way that light takes to each. In plain numbers. */
import type { Arm } from '../../model/arms.ts';
import type { Leg } from '../../model/model.ts';
import { Beams } from '../beams/beams.ts';
import { sectionHere } from '../rules/beams.ts';
import { above, dot, facing, fromFrame, leftOf, unit, type Vector } from '../rules/table.ts';
import type { TableContext } from './context.ts';
import { isScattered, type Ray } from './rays.ts';
import { isRounded, type Standing } from './standing.ts';

/** The face that a leg lights, as it is seen from where the light comes. */
export interface Lit {
  /** radius at start and end of the leg of what holds the light to all of it, m */
  readonly reach: readonly [number, number];
  /** width and height, m */
  readonly size: readonly [number, number];
  /** its outline has no corners */
  readonly round: boolean;
  /** its middle, and as third axis where it looks: to the side that the light comes from */
  readonly frame: Frame;
  /** the middles of its fields, as far as they get light; found when somebody asks */
  fields(): readonly Spot[];
  /** spots round its edge, as far as they get light */
  rim(): readonly Spot[];
}

type Frame = ReturnType<typeof facing>;

/** A spot of a face. */
export interface Spot {
  /** to the right and up, in halves of width and height */
  readonly at: readonly [number, number];
  /** the way of its light from the start of the leg, m */
  readonly from: Vector;
  readonly to: Vector;
}

/** Light as it arrives, along the level axis across it and along the upright one: curvature of its wave front, 1/m, and radius, m, where it is a beam. */
interface Front {
  readonly bend: readonly [number, number];
  readonly w?: readonly [number, number];
}

/** The middles of 21 × 21 fields, in halves of width and height. */
const STEPS = Array.from({ length: 21 }, (_, i) => (2 * i - 20) / 21);
type At = Spot['at'];
const FIELDS: readonly At[] = STEPS.flatMap(x => STEPS.map((y): At => [x, y]));
/** The edge of a face with corners, a corner with each side, and of one without. */
const EDGE: readonly At[] = Array.from({ length: 21 }, (_, i) => (i - 10) / 10).flatMap((t): At[] => [[t, 1], [t, -1], [1, t], [-1, t]]);
const ROUND: readonly At[] = Array.from({ length: 80 }, (_, i): At => [Math.cos((i * Math.PI) / 40), Math.sin((i * Math.PI) / 40)]);
const CORNERS = [[1, 1], [1, -1], [-1, 1], [-1, -1]] as const;
/** Cosine of 86°: light that comes more nearly along a face runs past it. */
const ALONG = 0.07;

/** Faces of plates, objects and holograms whose size is written, by the legs that light them; none of those whose light, or facing, is not known. */
export function litFaces(rays: ReadonlyMap<Leg, Ray>, things: ReadonlyMap<string, Standing>, context: TableContext): Map<Leg, Lit> {
  const found = new Map<Leg, Lit>();
  for (const arm of context.arms.arms) arm.path.forEach((leg, i) => {
    const ray = rays.get(leg);
    if (!ray || found.has(leg) || (i < arm.path.length - 1 && !isScattered(arm.path, i + 1))) return;
    const [start, end] = [things.get(ray.start.id), things.get(ray.end.id)];
    const front = end && end.face.by.length > 0 ? frontOf(arm, i, rays, context) : undefined;
    const lit = front && litBy(ray, start, end!, front);
    if (lit) found.set(leg, lit);
  });
  return found;
}

/** How the light of a leg arrives; undefined where nothing tells, or a lens bends what something has scattered. */
function frontOf(arm: Arm, i: number, rays: ReadonlyMap<Leg, Ray>, { beams, graph }: TableContext): Front | undefined {
  const { path } = arm;
  let scattered = i;
  while (scattered >= 0 && !isScattered(path, scattered)) scattered--;
  if (scattered >= 0) {
    // It comes from the middle of what scatters it, by way of mirrors too.
    const way = path.slice(scattered, i + 1);
    if (way.slice(0, -1).some(l => l.target?.facts.has('focal length') === true || LENSES.has(l.target?.kind.word ?? ''))) return undefined;
    const lengths = way.map(l => { const r = rays.get(l); return r ? Math.hypot(r.to[0] - r.from[0], r.to[1] - r.from[1], r.to[2] - r.from[2]) : Number.NaN; });
    const bend = 1 / lengths.reduce((a, b) => a + b, 0);
    return Number.isNaN(bend) ? undefined : { bend: [bend, bend] };
  }
  if (!Beams.areShaped(arm)) return undefined;
  const { level, upright, wavelength, quality } = beams.at(path[i]!);
  const sections = [level, upright].map(({ past, rayleigh }) => {
    const x = [past, rayleigh, wavelength, quality].map(c => graph.value(c));
    return x.includes(undefined) ? undefined : sectionHere(x as number[]);
  });
  const [a, b] = sections;
  return a && b && { bend: [a.bend, b.bend], w: [a.w, b.w] };
}
const LENSES: ReadonlySet<string> = new Set(['spreader', 'lens', 'collimator']);

function litBy(ray: Ray, start: Standing | undefined, end: Standing, front: Front): Lit | undefined {
  const along = unit([ray.to[0] - ray.from[0], ray.to[1] - ray.from[1], ray.to[2] - ray.from[2]]);
  const face = faceOf(end, along);
  if (!face) return undefined;
  const { frame, size, round } = face;
  const axes = axesAcross(along);
  const way = waysOf(ray, along, axes, front, start);
  const spotAt = ([x, y]: At): Spot | undefined => {
    const to = fromFrame(frame, [(x * size[0]) / 2, (y * size[1]) / 2, 0]);
    const from = way(to);
    return from && { at: [x, y], from, to };
  };
  // Straight lines through one point keep the corners outermost at either end.
  const corners = CORNERS.flatMap(c => spotAt(c) ?? []);
  const far = (p: Vector, q: Vector): number => Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
  if (corners.length < CORNERS.length) return undefined;
  const lit = (of: readonly At[]): readonly Spot[] => of.flatMap(f => spotAt(f) ?? []).filter(s => isInBeam(s.to, ray, along, axes, front));
  let [fields, rim]: (readonly Spot[] | undefined)[] = [];
  return {
    size, round, frame,
    reach: [Math.max(...corners.map(c => far(c.from, ray.from))), Math.max(...corners.map(c => far(c.to, ray.to)))],
    fields: () => fields ??= lit(round ? FIELDS.filter(f => Math.hypot(...f) <= 1) : FIELDS),
    rim: () => rim ??= lit(round ? ROUND : EDGE),
  };
}

/** The face that light along a direction sees: of a body its outline. Undefined where it is not known how it faces, or the light runs along it. */
function faceOf(s: Standing, along: Vector): { readonly frame: Frame; readonly size: readonly [number, number]; readonly round: boolean } | undefined {
  const { at, face: { size }, form, thing } = s;
  const n = s.normal();
  if (!n) return undefined;
  const into = dot(n, along);
  if (form.face !== 'body') return Math.abs(into) < ALONG ? undefined : { frame: facing(at, into < 0 ? n : back(n)), size: [size[0], size[1]], round: form.face === 'round' };
  const [own, frame] = [facing(at, n), facing(at, back(along))];
  const round = isRounded(thing);
  const across = (axis: Vector): number => { const parts = own.axes.map((a, i) => size[i]! * Math.abs(dot(a, axis))); return round ? Math.hypot(...parts) : parts.reduce((a, b) => a + b, 0); };
  return { frame, size: [across(frame.axes[0]), across(frame.axes[1])], round };
}
const back = (v: Vector): Vector => [-v[0], -v[1], -v[2]];

/** Where the light of a spot is at the start of its leg: rays are straight lines to and from the focus, side by side where there is none. Undefined of a spot that lies beyond the focus. */
function waysOf(ray: Ray, along: Vector, axes: Axes, { bend }: Front, start: Standing | undefined): (to: Vector) => Vector | undefined {
  const length = dot([ray.to[0] - ray.from[0], ray.to[1] - ray.from[1], ray.to[2] - ray.from[2]], along);
  const mirror = start && (start.thing.kind.light === 'turns' || start.thing.kind.light === 'shares') ? start.normal() : undefined;
  return to => {
    const v: Vector = [to[0] - ray.to[0], to[1] - ray.to[1], to[2] - ray.to[2]];
    const a = dot(v, along);
    const [left, up] = axes.map((axis, i) => (1 + a * bend[i]! < LEAST ? Number.NaN : (dot(v, axis) * (1 - length * bend[i]!)) / (1 + a * bend[i]!)));
    const from: Vector = [0, 1, 2].map(k => ray.from[k]! + axes[0][k]! * left! + axes[1][k]! * up!) as unknown as Vector;
    if (from.some(Number.isNaN)) return undefined;
    // A mirror stands at a slant: one side of it sends its light off sooner.
    const into = mirror ? dot([to[0] - from[0], to[1] - from[1], to[2] - from[2]], mirror) : 0;
    const share = mirror && into !== 0 ? dot([ray.from[0] - from[0], ray.from[1] - from[1], ray.from[2] - from[2]], mirror) / into : 0;
    return Math.abs(share) < 0.5 ? [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1]), from[2] + share * (to[2] - from[2])] : from;
  };
}
const LEAST = 0.05;
/** Left and above of who looks along the light; of light that goes straight up or down any two. */
type Axes = readonly [Vector, Vector];
const axesAcross = (along: Vector): Axes => { const l = leftOf(along); return l.every(c => c === 0) ? [[1, 0, 0], [0, 1, 0]] : [l, above(along)]; };

/** Within 1/e² of the middle of the beam; light that is scattered goes everywhere. */
function isInBeam(to: Vector, ray: Ray, along: Vector, axes: Axes, { bend, w }: Front): boolean {
  if (!w) return true;
  const v: Vector = [to[0] - ray.to[0], to[1] - ray.to[1], to[2] - ray.to[2]];
  const a = dot(v, along);
  return Math.hypot(...axes.map((axis, i) => dot(v, axis) / (1 + a * bend[i]!) / w[i]!)) <= 1;
}
