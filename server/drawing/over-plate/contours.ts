/** Lines of the same value over a rectangle: closed rings around what is at least that much. */
import { contours } from 'd3-contour';
import type { Box, Point } from '../marks.ts';

/** The rings of a level. What reaches an edge is closed outside of the rectangle. */
export interface Contour { readonly level: number; readonly rings: readonly (readonly Point[])[] }

/** @param values on an even net from edge to edge, row by row from the upper left corner */
export function contoursOf(values: readonly number[], count: number, levels: readonly number[], box: Box): Contour[] {
  // A value stands in the middle of its cell, so that the outermost ones lie half a cell inside.
  const place = ([x, y]: readonly number[]): Point => [box.x + ((x! - 0.5) / (count - 1)) * box.w, box.y + ((y! - 0.5) / (count - 1)) * box.h];
  return contours().size([count, count]).thresholds([...levels])([...values]).map(({ value, coordinates }) => ({ level: value, rings: coordinates.flatMap(polygon => polygon.map(ring => ring.map(place))) }));
}

/** Where along the lines of a level its figure stands: well inside, and as far from the others as can be. Undefined where the line only cuts off a corner. */
export function labelPlace({ rings }: Contour, box: Box, margin: number, taken: readonly Point[]): Point | undefined {
  const inside = ([x, y]: Point): boolean => x > box.x + margin && x < box.x + box.w - margin && y > box.y + margin && y < box.y + box.h - margin;
  let best: { readonly at: Point; readonly off: number } | undefined;
  for (const at of rings.flat()) {
    if (!inside(at)) continue;
    const off = taken.reduce((least, t) => Math.min(least, Math.hypot(at[0] - t[0], at[1] - t[1])), Infinity);
    if (off > margin && (!best || off > best.off)) best = { at, off };
  }
  return best?.at;
}
