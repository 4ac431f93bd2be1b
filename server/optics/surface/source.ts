/** Where light comes from, as the points that it falls on see it. Geometry throughout. */
import { unit, within, type Vector } from '../vectors.ts';

/**
 * - `point`: spherical waves from where the last spreading lens focuses, seen through the mirrors behind it (`mirrorImage`).
 * - `toward`: spherical waves that close in on a point behind what they light, as of a conjugate reference.
 * - `parallel`: plane waves in a direction, as behind a collimator.
 */
export type Source =
  | { readonly kind: 'point'; readonly at: Vector }
  | { readonly kind: 'toward'; readonly at: Vector }
  | { readonly kind: 'parallel'; readonly direction: Vector }

/** Direction of the light where it arrives at a point, of length 1; (0, 0, 0) at the source itself. */
export function arrivingAt(source: Source, point: Vector): Vector {
  if (source.kind === 'parallel') return unit(source.direction);
  const [s, p] = [within(source.at), within(point)];
  const sign = source.kind === 'point' ? 1 : -1;
  return unit([sign * (p[0] - s[0]), sign * (p[1] - s[1]), sign * (p[2] - s[2])]);
}

/**
 * Path of the light to a point, m, from a wave front that is the same for all points: from the source; up to the focus, with a minus; of parallel light from the
 * plane through (0, 0, 0). Only differences between points mean something.
 */
export function pathTo(source: Source, point: Vector): number {
  const p = within(point);
  if (source.kind === 'parallel') {
    const u = unit(source.direction);
    return u[0] * p[0] + u[1] * p[1] + u[2] * p[2];
  }
  const s = within(source.at);
  const [x, y, z] = [p[0] - s[0], p[1] - s[1], p[2] - s[2]];
  const distance = Math.sqrt(x * x + y * y + z * z);
  return source.kind === 'point' ? distance : -distance;
}
