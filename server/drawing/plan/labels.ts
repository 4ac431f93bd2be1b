/** Where names stand in the drawing: beside their things, off the light, and off each other as far as that goes. */
import { finder, type Span } from '../../results/near.ts';
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
export function placed(names: readonly { readonly own: Box; readonly w: number; readonly h: number }[], { boxes, lines, frame }: Around): Box[] {
  const taken: Box[] = [];
  const beside = finder(boxes, spanOf);
  const passing = finder(lines.map((line): Near['lines'][number] => {
    const [a, b] = line;
    return { line, span: { x: Math.min(a[0], b[0]), y: Math.min(a[1], b[1]), w: Math.abs(a[0] - b[0]), h: Math.abs(a[1] - b[1]) } };
  }), l => spanOf(l.span));
  for (const { own, w, h } of names) {
    // Only what is near can be in the way.
    const reach = h * (1 + 0.35 + 0.6 * STEPS);
    const near: Box = { x: own.x - w - reach, y: own.y - h - reach, w: own.w + 2 * (w + reach), h: own.h + 2 * (h + reach) };
    const around: Near = { taken: taken.filter(t => overlaps(near, t)), boxes: beside(spanOf(near)), lines: passing(spanOf(near)), frame };
    let best: { box: Box; cost: number } | undefined;
    for (let step = 0; step < STEPS; step++) for (const [dx, dy] of WAYS) {
      const apart = step * 0.6 + (dx !== 0 && dy !== 0 ? 0.2 : 0);
      if (best && best.cost <= apart + 1e-9) continue;
      const gap = h * (0.35 + 0.6 * step);
      const middle = [own.x + own.w / 2 + dx * (own.w / 2 + w / 2 + gap), own.y + own.h / 2 + dy * (own.h / 2 + h / 2 + gap)] as const;
      // Straight above or beside, the box touches only one side of the thing.
      const box: Box = { x: middle[0] - w / 2, y: middle[1] - h / 2, w, h };
      const most = best ? best.cost - 1e-9 : Infinity;
      const cost = costOf(box, own, around, apart, most);
      if (cost < most) best = { box, cost };
    }
    taken.push(best!.box);
  }
  return taken;
}

interface Near {
  readonly taken: readonly Box[];
  readonly boxes: readonly Box[];
  readonly lines: readonly { readonly line: readonly [Point, Point]; readonly span: Box }[];
  readonly frame: Box;
}

/** Counted on from what it costs anyway, and no further than to `most`. */
function costOf(box: Box, own: Box, { taken, boxes, lines, frame }: Near, anyway: number, most: number): number {
  let cost = anyway;
  if (box.x < frame.x || box.y < frame.y || box.x + box.w > frame.x + frame.w || box.y + box.h > frame.y + frame.h) cost += 50;
  if (cost >= most) return cost;
  for (const t of taken) if (overlaps(box, t) && (cost += 20) >= most) return cost;
  for (const b of boxes) if (b !== own && overlaps(box, b) && (cost += 6) >= most) return cost;
  // Letters that only just miss a line look as if it ran into them.
  const air = 0.25 * box.h;
  const airy: Box = { x: box.x - air, y: box.y - air, w: box.w + 2 * air, h: box.h + 2 * air };
  for (const { line: [a, b], span } of lines) if (touches(airy, span) && crosses(airy, a, b) && (cost += 3) >= most) return cost;
  return cost;
}

const spanOf = ({ x, y, w, h }: Box): Span => [x, y, x + w, y + h];
const overlaps = (a: Box, b: Box): boolean => a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h;

/** A level or an upright line has no width. */
const touches = (a: Box, b: Box): boolean => a.x <= b.x + b.w && b.x <= a.x + a.w && a.y <= b.y + b.h && b.y <= a.y + a.h;

/** A line runs through a box: it is clipped by the sides in turn (Liang and Barsky). */
function crosses({ x, y, w, h }: Box, a: Point, b: Point): boolean {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  // Along what runs level or upright it is inside all the way, or nowhere.
  if ((dx === 0 && (a[0] < x || a[0] > x + w)) || (dy === 0 && (a[1] < y || a[1] > y + h))) return false;
  const left = dx === 0 ? 0 : (x - a[0]) / dx;
  const right = dx === 0 ? 1 : (x + w - a[0]) / dx;
  const top = dy === 0 ? 0 : (y - a[1]) / dy;
  const bottom = dy === 0 ? 1 : (y + h - a[1]) / dy;
  return Math.max(0, Math.min(left, right), Math.min(top, bottom)) <= Math.min(1, Math.max(left, right), Math.max(top, bottom));
}

/** How wide words are, about: nothing here knows the letters of the reader's machine. */
export const widthOf = (text: string, letter: number): number => [...text].length * letter * 0.62;
