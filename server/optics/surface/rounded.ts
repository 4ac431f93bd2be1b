import { fromFrame, turnedFromFrame, turnedIntoFrame, type Frame } from '../solids/frame.ts';
import { halfSize, type Solid } from '../solids/solid.ts';
import { unit, type Vector } from '../vectors.ts';
import { surfacePatches, type Outlines, type Patch } from './patches.ts';
import type { Toward } from './toward.ts';

/**
 * The surface of an ellipsoid as patches: what is known of a thing whose size is known and whose shape is not, as long as it has no corners.
 *
 * @param frame its middle and its axes
 * @param size along these axes, m; see `halfSize`. One that is flat has no patches
 * @param count about how many; see `patchCounts`
 * @param outlines as of `surfacePatches`
 *
 * Validity: as `surfacePatches`; the areas are those of flat pieces, which add up to that of the surface to 1 % from 200 patches, where no axis is more than three times another.
 * Source: geometry: a ball stretched by a, b, c has the normal (x/a, y/b, z/c), and its areas grow by abc times the length of that.
 */
export function roundedPatches(frame: Frame, size: Vector, count: number, outlines?: Outlines): Patch[] {
  const [a, b, c] = halfSize(size);
  if (!(a * b * c > 0)) return [];
  const corners: Outlines | undefined = outlines && [];
  const ball = corners ? surfacePatches(BALL, count, corners) : ballOf(count);
  for (const of of corners ?? []) outlines!.push(of.map(([x, y, z]) => fromFrame(frame, [a * x, b * y, c * z])));
  return ball.map(({ point: [x, y, z], normal: [u, v, w], area }) => {
    const stretched: Vector = [u / a, v / b, w / c];
    return { point: fromFrame(frame, [a * x, b * y, c * z]), normal: turnedFromFrame(frame, unit(stretched)), area: area * a * b * c * Math.hypot(...stretched) };
  });
}

const BALL: Solid = { kind: 'sphere', middle: [0, 0, 0], radius: 1 };
// The same few counts are asked for again and again, by every draw of an object's light.
const balls = new Map<number, readonly Patch[]>();
const MOST_BALLS = 16;
function ballOf(count: number): readonly Patch[] {
  let known = balls.get(count);
  if (!known) {
    if (balls.size >= MOST_BALLS) balls.clear();
    balls.set(count, known = surfacePatches(BALL, count));
  }
  return known;
}

/**
 * Where the surface of an ellipsoid lies in a direction from its middle, and how it faces there; undefined of one that is flat, and of no direction.
 *
 * @param frame, size as of `roundedPatches`
 * @param direction any length but 0
 *
 * Source: geometry: x²/a² + y²/b² + z²/c² = 1, with the normal (x/a², y/b², z/c²).
 */
export function roundedToward(frame: Frame, size: Vector, direction: Vector): Toward | undefined {
  const [a, b, c] = halfSize(size);
  if (!(a * b * c > 0)) return undefined;
  const [x, y, z] = turnedIntoFrame(frame, unit(direction));
  const slope = Math.hypot(x / a, y / b, z / c);
  // In shares of the shortest half axis, so that no square of it is too large or too small.
  const m = Math.min(a, b, c);
  return slope > 0 ? { reach: 1 / slope, normal: turnedFromFrame(frame, unit([x * (m / a) ** 2, y * (m / b) ** 2, z * (m / c) ** 2])) } : undefined;
}
