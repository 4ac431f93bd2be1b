/** Where light comes from, as the points that it falls on see it. Geometry throughout. */
import { nearestWithin } from '../range.ts';
import { coordinates, unit, within, type Vector } from '../vectors.ts';

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
  // Component by component, without vectors in between: it is asked for each pair of the maps.
  const x = nearestWithin(coordinates, point[0]);
  const y = nearestWithin(coordinates, point[1]);
  const z = nearestWithin(coordinates, point[2]);
  if (source.kind === 'parallel') {
    const u = unit(source.direction);
    return u[0] * x + u[1] * y + u[2] * z;
  }
  const dx = x - nearestWithin(coordinates, source.at[0]);
  const dy = y - nearestWithin(coordinates, source.at[1]);
  const dz = z - nearestWithin(coordinates, source.at[2]);
  const distance = Math.sqrt(dx * dx + dy * dy + dz * dz);
  return source.kind === 'point' ? distance : -distance;
}
