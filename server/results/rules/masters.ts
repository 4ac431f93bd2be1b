/** Plain numbers of a master that is lit otherwise than it was recorded, and how it has to be turned. */
import { imageSine } from '../../optics/replay/angles.ts';
import { depthOfImage, imagePlace, widthByObject, type Order } from '../../optics/replay/focus.ts';
import { cross, dot, unit, type Vector } from '../../optics/vectors.ts';

/** Where the image comes, m before a flipped one or behind one that is not; how wide and deep it is as multiples of the object, and by how much it is turned aside, rad. */
export interface Slipped { readonly place: number; readonly width: number; readonly depth: number; readonly turned: number }

/** All that is not given is as it should be. Distances in m, curvatures in 1/m, angles to the side of the reference. `turned` is no number where there is no image. */
export function slipped(order: Order, object: number, reference: number, angles: { readonly object: number; readonly reference: number }, by: { readonly ratio?: number; readonly curvature?: number; readonly angle?: number }): Slipped {
  const ratio = by.ratio ?? 1;
  const lights = { reference, lamp: by.curvature ?? order * reference };
  const width = widthByObject(order, ratio, object, lights);
  return {
    place: order * imagePlace(order, ratio, object, lights), width, depth: depthOfImage(order, ratio, width) * order,
    turned: Math.asin(imageSine(1, ratio, angles.object, angles.reference, by.angle ?? angles.reference)) - angles.object,
  };
}

const back = ([x, y, z]: Vector): Vector => [-x, -y, -z];
const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const along = (v: Vector, n: Vector): Vector => { const into = dot(v, n); return minus(v, [into * n[0], into * n[1], into * n[2]]); };
const toward = (normal: Vector, to: Vector): Vector => (dot(normal, to) < 0 ? back(normal) : normal);
/** Sine of five degrees: nearer to the normal than that light comes from no side, and a plate may be put in either way. */
const SQUARELY = 0.087;
/** Cosine of 45°. */
const QUARTER = Math.SQRT1_2;

export type Top = 'up' | 'down' | 'left' | 'right';

/**
 * Where the edge of a plate comes that was up at its recording, seen from its image, when the plate is put so that its light runs its reference backwards (flipped) or as it ran (else).
 * `recorded`: plate, its normal, object, direction of the reference; `now`: the same, with the middle of what takes up the image. Undefined where the light comes squarely, or the edge to no side.
 */
export function topNow(recorded: readonly number[], now: readonly number[], order: Order): Top | undefined {
  const vectors = (x: readonly number[]): [Vector, Vector, Vector, Vector] => [0, 3, 6, 9].map(i => [x[i]!, x[i + 1]!, x[i + 2]!] as Vector) as [Vector, Vector, Vector, Vector];
  const [plate, normal, object, reference] = vectors(recorded);
  const [hologram, facing, image, light] = vectors(now);
  const n = toward(normal, minus(object, plate));
  const front = toward(facing, minus(image, hologram));
  // A real image stands on the side on which the object stood; what is looked through keeps its object behind it.
  const m = order === -1 ? front : back(front);
  const [t, s] = [along(reference, n), along(order === -1 ? back(light) : light, m)];
  if (Math.hypot(...t) < SQUARELY || Math.hypot(...s) < SQUARELY) return undefined;
  const [t1, s1] = [unit(t), unit(s)];
  const [b, c] = [cross(n, t1), cross(m, s1)];
  // The edge that was up, carried along with normal and light.
  const high: Vector = [0, 0, 1];
  const part = (v: Vector, by: number): Vector => [v[0] * by, v[1] * by, v[2] * by];
  const [x, y, z] = [part(m, dot(high, n)), part(s1, dot(high, t1)), part(c, dot(high, b))];
  const top: Vector = [x[0] + y[0] + z[0], x[1] + y[1] + z[1], x[2] + y[2] + z[2]];
  const level = along(high, front);
  if (Math.hypot(...level) < SQUARELY) return undefined;
  const upright = unit(level);
  const [up, right] = [dot(top, upright), dot(top, cross(back(front), upright))];
  if (Math.max(Math.abs(up), Math.abs(right)) < QUARTER) return undefined;
  return Math.abs(up) >= Math.abs(right) ? (up > 0 ? 'up' : 'down') : right > 0 ? 'right' : 'left';
}
