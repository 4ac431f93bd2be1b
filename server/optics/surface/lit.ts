/** Which parts of an object are lit, and which of them the plate sees. */
import { lights } from '../light.ts';
import { nearestWithin } from '../range.ts';
import { dot, unit, within, type Vector } from '../vectors.ts';
import type { Patch } from './patches.ts';
import { arrivingAt, pathTo, type Source } from './source.ts';

/** What is lit and seen of an object. Areas in m², shares from 0 to 1: 0 where there is nothing to be a share of. */
export interface LitAndSeen {
  readonly lit: number
  readonly seen: number
  /** Lit as well as seen. */
  readonly both: number
  /** How much of what is lit is seen. */
  readonly seenOfLit: number
  /** How much of what is seen is lit: near 0 the plate sees the dark side. */
  readonly litOfSeen: number
  /** Which patches are lit as well as seen, by their places in the list. */
  readonly patches: readonly number[]
  /** How far the nearest and the farthest of those lie behind the middle, along the line of sight, m; undefined where there are none. */
  readonly depth: { readonly nearest: number; readonly farthest: number } | undefined
}

/**
 * How squarely light falls on a patch: the cosine of its angle from the normal, 0 where the patch looks away. A patch without normal is lit squarely from every side.
 *
 * Validity: a convex object, which throws no shadow on what faces the light.
 * Source: Lambert's cosine law (any optics text).
 */
export function litSquarely(patch: Patch, source: Source): number {
  return facingTo(patch, arrivingAt(source, patch.point));
}

/** How squarely a patch is seen from a point: 1 from straight in front, 0 where it looks away. As `litSquarely`. */
export function seenSquarely(patch: Patch, eye: Vector): number {
  return facingTo(patch, arrivingAt({ kind: 'point', at: eye }, patch.point));
}

/** Whether a patch is lit, and seen from one point at least. As `litSquarely` and `seenSquarely`. */
export function isLitAndSeen(patch: Patch, source: Source, eyes: readonly Vector[]): boolean {
  const n = unit(patch.normal);
  return squarely(n, arrivingAt(source, patch.point)) > 0 && eyes.some((e) => squarely(n, arrivingAt({ kind: 'point', at: e }, patch.point)) > 0);
}

/**
 * What is lit and seen of an object, and how deep that is.
 *
 * @param patches of its surface
 * @param source of the light on it
 * @param eye from where it is seen: a point of the plate, m
 * @param middle of the object, where depth counts from, m; the line of sight goes from `eye` through it
 *
 * Validity: as `litSquarely`; what other things throw shadows on or hide is not looked at. Depth is that of the middles of patches.
 * Source: geometry.
 */
export function litAndSeen(patches: readonly Patch[], source: Source, eye: Vector, middle: Vector): LitAndSeen {
  const sight = arrivingAt({ kind: 'point', at: eye }, middle);
  const m = within(middle);
  let [lit, seen, both, nearest, farthest] = [0, 0, 0, Infinity, -Infinity];
  const indices: number[] = [];
  patches.forEach((patch, i) => {
    const [isLit, isSeen] = [litSquarely(patch, source) > 0, seenSquarely(patch, eye) > 0];
    const area = areaOf(patch);
    if (isLit) lit += area;
    if (isSeen) seen += area;
    if (!isLit || !isSeen) return;
    both += area;
    indices.push(i);
    const p = within(patch.point);
    const behind = dot([p[0] - m[0], p[1] - m[1], p[2] - m[2]], sight);
    nearest = Math.min(nearest, behind);
    farthest = Math.max(farthest, behind);
  });
  const share = (part: number, whole: number): number => (whole > 0 ? Math.min(1, part / whole) : 0);
  return { lit, seen, both, seenOfLit: share(both, lit), litOfSeen: share(both, seen), patches: indices, depth: indices.length > 0 ? { nearest, farthest } : undefined };
}

/**
 * Light on each patch, in its own plane, W/m²: what arrives there facing the beam, times the cosine.
 *
 * @param patches of the object
 * @param source light from a point thins out, or gathers, with the square of the distance; parallel light does not
 * @param facing light on a head at `middle` that faces the beam, W/m²; see `lights` of `light.ts`
 * @param middle of the object, where that was read, m
 *
 * Validity: evenly spread light, far wider than the object; a convex object.
 * Source: Lambert's cosine law and the inverse square law (any optics text).
 */
export function lightOnPatches(patches: readonly Patch[], source: Source, facing: number, middle: Vector): Float64Array {
  const read = nearestWithin(lights, facing);
  const distance = Math.abs(pathTo(source, middle));
  return Float64Array.from(patches, (patch) => {
    const thinner = source.kind === 'parallel' ? 1 : (distance / Math.max(NEAREST, Math.abs(pathTo(source, patch.point)))) ** 2;
    return read * thinner * litSquarely(patch, source);
  });
}

/** Nearer than this to its source light is not told apart, m. */
const NEAREST = 1e-6;

const facingTo = (patch: Patch, light: Vector): number => squarely(unit(patch.normal), light);
/** By the normal, of length 1 or none. */
function squarely(n: Vector, light: Vector): number {
  if (dot(n, n) === 0) return 1;
  const cosine = -dot(n, light);
  return cosine > GRAZING ? cosine : 0;
}

/** Light that grazes a face within what rounding leaves does not light it. */
const GRAZING = 1e-9;

const areaOf = ({ area }: Patch): number => (area > 0 && area < MOST ? area : 0);
/** No surface on a table has a larger area than this, m². */
const MOST = 1e12;
