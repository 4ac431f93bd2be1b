/** Points as the maps take them: x, y and z, m, of one point after the other. */
import { extents } from '../depth.ts';
import { nearestWithin, type Range } from '../range.ts';
import { fromFrame, type Frame } from '../solids/frame.ts';
import { within, type Vector } from '../vectors.ts';

/** Numbers of points along one side of a plate, 1; rounded. */
export const sideCounts: Range = { from: 1, to: 100 };

/** Points in a row for the maps; components see `coordinates` of `vectors.ts`. */
export function packed(points: readonly Vector[]): Float64Array {
  const all = new Float64Array(3 * points.length);
  points.forEach((point, i) => all.set(within(point), 3 * i));
  return all;
}

/** One of the points, m; (0, 0, 0) where there is none. */
export function pointAt(points: Float64Array, index: number): Vector {
  const at = 3 * index;
  return within([points[at] ?? 0, points[at + 1] ?? 0, points[at + 2] ?? 0]);
}

/**
 * Points laid evenly over a plate, row by row from its lower left corner for somebody who looks at its face.
 *
 * @param plate frame of the plate, whose origin is its middle
 * @param width, height along the first and second axis, m; see `extents` of `depth.ts`
 * @param across, up how many along the width and along the height; see `sideCounts`
 * @param lie `to the edges`: the outermost on the edges, for what is largest; `in cells`: in the middles of even cells, for means. One alone lies in the middle.
 */
export function platePoints(plate: Frame, width: number, height: number, across: number, up: number, lie: 'to the edges' | 'in cells'): Float64Array {
  const places = (length: number, count: number): number[] => {
    const n = Math.round(nearestWithin(sideCounts, count));
    const l = nearestWithin(extents, length);
    return Array.from({ length: n }, (_, i) => (n === 1 ? 0 : lie === 'in cells' ? l * ((i + 0.5) / n - 0.5) : l * (i / (n - 1) - 0.5)));
  };
  const xs = places(width, across);
  return packed(places(height, up).flatMap((y) => xs.map((x) => fromFrame(plate, [x, y, 0]))));
}
