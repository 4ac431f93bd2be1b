/** What of a line is left beside others: light that runs as it ran is drawn once, however its legs are cut up. */
import type { Point } from '../marks.ts';

export type Stroke = readonly [Point, Point];

/** The parts of a stroke that do not lie on one of the others. Parts as short as `air` are none. @param air closer than that is on it */
export function uncovered([a, b]: Stroke, others: readonly Stroke[], air: number): Stroke[] {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  if (length <= air) return [];
  const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  const along = (p: Point): number => (p[0] - a[0]) * ux + (p[1] - a[1]) * uy;
  const off = (p: Point): number => (p[1] - a[1]) * ux - (p[0] - a[0]) * uy;
  const covers = others.flatMap(([p, q]): (readonly [number, number])[] => {
    const part = near([along(p), off(p)], [along(q), off(q)], air);
    return part ? [part] : [];
  }).sort((x, y) => x[0] - y[0]);
  const left: Stroke[] = [];
  let from = 0;
  const at = (t: number): Point => [a[0] + t * ux, a[1] + t * uy];
  for (const [start, end] of [...covers, [length, length] as const]) {
    if (Math.min(start, length) - from > air) left.push([at(from), at(Math.min(start, length))]);
    from = Math.max(from, end);
  }
  return left;
}

/** Where along the axis a line runs within `air` of it; only what runs along it, since what crosses it covers nothing. */
function near([s0, d0]: Point, [s1, d1]: Point, air: number): readonly [number, number] | undefined {
  if (Math.abs(d1 - d0) > Math.abs(s1 - s0) / 10) return undefined;
  const [slope, start] = [(d1 - d0) / (s1 - s0), Math.min(s0, s1)];
  let [from, to] = [start, Math.max(s0, s1)];
  if (Math.abs(slope) < 1e-12) return Math.abs(d0) <= air ? [from, to] : undefined;
  const [x, y] = [s0 + (-air - d0) / slope, s0 + (air - d0) / slope];
  from = Math.max(from, Math.min(x, y));
  to = Math.min(to, Math.max(x, y));
  return to > from ? [from, to] : undefined;
}
