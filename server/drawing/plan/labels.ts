/** Where names stand in the drawing: beside their things, off the light, and off each other as far as that goes. */
import type { Box, Point } from '../marks.ts';

/** What names keep off: outlines as boxes, light as lines. */
export interface Around {
  readonly boxes: readonly Box[];
  readonly lines: readonly (readonly [Point, Point])[];
  /** names are kept within it */
  readonly frame: Box;
}

/** Eight directions in a fixed order, above first. */
const WAYS: readonly Point[] = [[0, -1], [1, -1], [1, 0], [1, 1], [0, 1], [-1, 1], [-1, 0], [-1, -1]];
const STEPS = 4;

/** A box for each name, w × h, beside its own box. In the coordinates of the drawing. */
export function placed(names: readonly { readonly own: Box; readonly w: number; readonly h: number }[], around: Around): Box[] {
  const taken: Box[] = [];
  for (const { own, w, h } of names) {
    let best: { box: Box; cost: number } | undefined;
    for (let step = 0; step < STEPS; step++) for (const [dx, dy] of WAYS) {
      const gap = h * (0.35 + 0.6 * step);
      const middle = [own.x + own.w / 2 + dx * (own.w / 2 + w / 2 + gap), own.y + own.h / 2 + dy * (own.h / 2 + h / 2 + gap)] as const;
      // Straight above or beside, the box touches only one side of the thing.
      const box: Box = { x: middle[0] - w / 2, y: middle[1] - h / 2, w, h };
      const cost = costOf(box, own, taken, around) + step * 0.6 + (dx !== 0 && dy !== 0 ? 0.2 : 0);
      if (!best || cost < best.cost - 1e-9) best = { box, cost };
    }
    taken.push(best!.box);
  }
  return taken;
}

function costOf(box: Box, own: Box, taken: readonly Box[], { boxes, lines, frame }: Around): number {
  let cost = 0;
  for (const t of taken) if (overlaps(box, t)) cost += 20;
  for (const b of boxes) if (b !== own && overlaps(box, b)) cost += 6;
  // Letters that only just miss a line look as if it ran into them.
  const air = 0.25 * box.h;
  const airy: Box = { x: box.x - air, y: box.y - air, w: box.w + 2 * air, h: box.h + 2 * air };
  for (const [a, b] of lines) if (crosses(airy, a, b)) cost += 3;
  if (box.x < frame.x || box.y < frame.y || box.x + box.w > frame.x + frame.w || box.y + box.h > frame.y + frame.h) cost += 50;
  return cost;
}

const overlaps = (a: Box, b: Box): boolean => a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h;

/** A line runs through a box: it is clipped by the sides in turn (Liang and Barsky). */
function crosses({ x, y, w, h }: Box, [ax, ay]: Point, [bx, by]: Point): boolean {
  let [enters, leaves] = [0, 1];
  for (const [start, way, low, high] of [[ax, bx - ax, x, x + w], [ay, by - ay, y, y + h]] as const) {
    if (way === 0) { if (start < low || start > high) return false; continue; }
    const [one, other] = [(low - start) / way, (high - start) / way];
    enters = Math.max(enters, Math.min(one, other));
    leaves = Math.min(leaves, Math.max(one, other));
  }
  return enters <= leaves;
}

/** How wide words are, about: nothing here knows the letters of the reader's machine. */
export const widthOf = (text: string, letter: number): number => [...text].length * letter * 0.62;
