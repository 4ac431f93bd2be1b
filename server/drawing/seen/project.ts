/** What an eye has before it: the parts of the objects in perspective, on a sheet through the middle of what it looks at. In metres, x to the right and y downwards. */
import type { PlateView, SeenObject } from '../../results/maps/seen.ts';
import { facingEye, lookingFrom } from '../../results/rules/seen.ts';
import type { Vector } from '../../results/rules/table.ts';
import type { Point } from '../marks.ts';

export interface SeenPart {
  /** of its object's patches */
  readonly patch: number;
  readonly corners: readonly Point[];
  /** it looks a little away: of it only what peeks over the rim is seen, so that it lies under all that face the eye */
  readonly rim: boolean;
}

export interface SeenShape {
  readonly of: SeenObject;
  readonly parts: readonly SeenPart[];
  /** around all of it, of a thing with a surface */
  readonly outline: readonly Point[];
  /** where a place about the object lies on the sheet; undefined behind the eye */
  readonly place: (at: Vector) => Point | undefined;
  readonly faces: Float64Array;
}

/** The sheet that a view is drawn on: the same for all eyes at a plate, so that what stands in it does not move. */
export interface Stage {
  readonly view: PlateView;
  /** middle of the objects */
  readonly target: Vector;
  /** how many times further than the plate the eyes are; 1 at the plate */
  readonly back: number;
  /** half of the sheet, m */
  readonly reach: number;
  /** points as somebody at the plate has them before his eyes: to the right, up, and toward him, from the target */
  readonly before: (point: Vector) => Vector;
  readonly laid: readonly Laid[];
}

/** An object on the stage: the corners of all of its parts in a row, as they lie before the plate, and from which on each part has its own. */
interface Laid {
  readonly of: SeenObject;
  readonly corners: Float64Array;
  readonly starts: Int32Array;
}

const stages = new WeakMap<PlateView, Stage>();

/** Nearer than so many times the half width of the objects nobody looks at them. */
const CLEAR = 3;
/** What is nearer to the eye than that share of the way is not given room. */
const NEAREST = 0.1;

/** Laid out once: an eye that moves finds everything in its place. */
export function stageOf(view: PlateView): Stage {
  const known = stages.get(view);
  if (known) return known;
  const target = view.objects.reduce<Vector>((sum, o) => sum.map((c, i) => c + o.middle[i]! / view.objects.length) as unknown as Vector, [0, 0, 0]);
  const before = lookingFrom(view.at, target);
  const laid = view.objects.map(of => lay(of, before));
  const all = laid.map(({ of, corners }) => {
    const [x, y, toward] = before(of.middle);
    let own = 0;
    for (let i = 0; i < corners.length; i += 3) own = Math.max(own, Math.hypot(corners[i]! - x, corners[i + 1]! - y, corners[i + 2]! - toward));
    return { reach: Math.hypot(x, y) + own, toward };
  });
  const distance = Math.hypot(...minus(view.at, target));
  const back = Math.max(1, (CLEAR * Math.max(...all.map(a => a.reach))) / distance);
  // What stands before the middle looks larger, what stands behind it smaller.
  const looks = all.map(({ reach, toward }) => (reach * back * distance) / Math.max(NEAREST * distance, back * distance - toward));
  const stage: Stage = { view, target, back, reach: 1.3 * Math.max(1e-4, ...looks), before, laid };
  stages.set(view, stage);
  return stage;
}

function lay(of: SeenObject, before: Stage['before']): Laid {
  const parts: readonly (readonly Vector[])[] = of.outlines.length > 0 ? of.outlines : of.patches.map(p => [p.point]);
  const starts = new Int32Array(parts.length + 1);
  parts.forEach((p, i) => { starts[i + 1] = starts[i]! + p.length; });
  const corners = new Float64Array(3 * starts[parts.length]!);
  parts.flat().forEach((c, i) => { corners.set(before(plus(c, of.middle)), 3 * i); });
  return { of, corners, starts };
}

/** An eye, from the target: to the right and up by shares of half the plate. */
export const eyeAt = ({ view, target, back }: Stage, [across, up]: Point): Vector => {
  const middle = minus(view.at, target);
  return [0, 1, 2].map(i => target[i]! + back * middle[i]! + across * view.right[i]! + up * view.up[i]!) as unknown as Vector;
};

/** The objects, the farthest first. */
export function shapesOf(stage: Stage, eye: Vector): SeenShape[] {
  const [ex, ey, far] = stage.before(eye);
  // What is behind the eye, or all but touches it, is not seen.
  const seen = (x: number, y: number, toward: number): Point | undefined => {
    const times = far / (far - toward);
    return far - toward > 0.02 * far ? [ex + (x - ex) * times, -(ey + (y - ey) * times)] : undefined;
  };
  const away = (o: SeenObject): number => Math.hypot(...minus(o.middle, eye));
  return [...stage.laid].sort((a, b) => away(b.of) - away(a.of)).map(({ of, corners, starts }): SeenShape => {
    const own = minus(eye, of.middle);
    const faces = facingEye(of.patches, own);
    const parts: SeenPart[] = [];
    of.patches.forEach(({ point, normal }, patch) => {
      const rim = !(faces[patch]! > 0);
      if (rim && !overTheRim(point, normal, own)) return;
      const around: Point[] = [];
      for (let i = starts[patch]!; i < starts[patch + 1]!; i++) {
        const p = seen(corners[3 * i]!, corners[3 * i + 1]!, corners[3 * i + 2]!);
        if (!p) return;
        around.push(p);
      }
      parts.push({ patch, corners: around, rim });
    });
    const place = (at: Vector): Point | undefined => seen(...stage.before(plus(at, of.middle)));
    if (of.outlines.length > 0) return { of, faces, place, parts, outline: hull(outermost(parts)) };
    const distance = new Map(parts.map(p => [p, Math.hypot(...minus(of.patches[p.patch]!.point, own))]));
    return { of, faces, place, parts: parts.sort((a, b) => distance.get(b)! - distance.get(a)!), outline: [] };
  });
}

/** Of many corners those that are farthest out, one for each small angle about their middle: no others are on the outline. */
const ANGLES = 720;
function outermost(parts: readonly SeenPart[]): Point[] {
  let [x, y, count] = [0, 0, 0];
  for (const { corners } of parts) for (const p of corners) { x += p[0]; y += p[1]; count++; }
  x /= count;
  y /= count;
  const best: (Point | undefined)[] = Array.from({ length: ANGLES });
  const off = new Float64Array(ANGLES);
  for (const { corners } of parts) {
    for (const p of corners) {
      const [dx, dy] = [p[0] - x, p[1] - y];
      const angle = Math.min(ANGLES - 1, Math.floor((Math.atan2(dy, dx) / (2 * Math.PI) + 0.5) * ANGLES));
      const square = dx * dx + dy * dy;
      if (square >= off[angle]!) { off[angle] = square; best[angle] = p; }
    }
  }
  return best.filter(p => p !== undefined);
}

/** A part of something round that looks away by less than this may reach over the rim. */
const RIM = 0.25;
function overTheRim(point: Vector, normal: Vector, eye: Vector): boolean {
  const to = minus(eye, point);
  return normal[0] * to[0] + normal[1] * to[1] + normal[2] * to[2] > -RIM * Math.sqrt(to[0] * to[0] + to[1] * to[1] + to[2] * to[2]);
}

/** The outline of what is nowhere hollow is the convex hull of its corners (Andrew's monotone chain). */
export function hull(points: readonly Point[]): readonly Point[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (from: readonly Point[]): Point[] => {
    const chain: Point[] = [];
    for (const p of from) {
      while (chain.length > 1 && turn(chain[chain.length - 2]!, chain[chain.length - 1]!, p) <= 0) chain.pop();
      chain.push(p);
    }
    chain.pop();
    return chain;
  };
  return sorted.length < 3 ? sorted : [...half(sorted), ...half(sorted.reverse())];
}
const turn = (a: Point, b: Point, c: Point): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const plus = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
