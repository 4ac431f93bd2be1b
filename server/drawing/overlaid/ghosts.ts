/** How the setup before is drawn below the one after: outlines and lines that are thin, dashed and pale, and an arrow along each move. */
import { millimetres } from '../../model/show.ts';
import { legTold, type Drawing, type DrawnThing } from '../drawing.ts';
import { mark, n, told, type Mark, type Point } from '../marks.ts';
import { onSheet, outlineMarks } from '../plan/things.ts';
import type { LegGhost, ThingChange } from './changed.ts';
import type { Stroke } from './uncovered.ts';

/** Before the id of an item as it was. */
export const BEFORE = 'before:';

export const ghostTold = (t: DrawnThing): string => `before: ${t.kind} ${t.name} at (${Math.round(t.at[0] * 1000)}, ${Math.round(t.at[1] * 1000)}) mm`;

export const thingGhost = (t: DrawnThing): Mark => mark('g', { 'data-item': BEFORE + t.name }, [told(ghostTold(t)), ...outlineMarks(t, 'ghost')]);

export function legGhostMarks({ leg, line, sides }: LegGhost): Mark[] {
  const look = leg.role === 'reference' ? 'ghost ghost-reference' : leg.role === 'object' || leg.role === 'scattered' ? 'ghost ghost-object' : 'ghost';
  const strokes = (parts: readonly Stroke[], name: string): Mark[] => (parts.length === 0 ? [] : [mark('path', { class: name, d: parts.map(strokePath).join('') })]);
  return [mark('g', { 'data-item': BEFORE + leg.id }, [told(`before: leg ${legTold(leg)}`), ...strokes(sides, `${look} ghost-edge`), ...strokes(line, look)])];
}
const strokePath = ([a, b]: Stroke): string => `M${n(a[0])} ${n(a[1])}L${n(b[0])} ${n(b[1])}`;

/** A second outline around what is new. */
export function newMarks(t: DrawnThing): Mark {
  const [cx, cy] = t.rounded || t.outline.length < 3 ? t.at : middle(t.outline);
  const r = 7e-3;
  const wide = t.outline.map(([x, y]): Point => { const l = Math.hypot(x - cx, y - cy) || 1; return [x + ((x - cx) / l) * r, y + ((y - cy) / l) * r]; });
  return mark('g', { 'data-item': t.name }, outlineMarks({ ...t, outline: wide, face: [t.face[0] + 2 * r, t.face[1] + 2 * r] }, 'new'));
}
const middle = (points: readonly Point[]): Point => [0, 1].map(i => points.reduce((sum, p) => sum + p[i]!, 0) / points.length) as unknown as Point;

export function tableGhost({ table }: Drawing): Mark[] {
  return table ? [mark('rect', { class: 'ghost', x: 0, y: -table[1] * 1000, width: table[0] * 1000, height: table[1] * 1000 })] : [];
}

/** From the middle where it stood to the middle where it stands. */
export function moveMarks({ before, after, moved }: ThingChange): Mark[] {
  if (!before || !after || moved === 0) return [];
  const [a, b] = [onSheet(before.at), onSheet(after.at)];
  return [mark('g', { 'data-item': after.name }, [told(`${after.name} moved ${millimetres(moved)}`), ...arrow(a, b)])];
}

/** With a dot where it begins, and its head drawn as large as there is room for. */
export function arrow(a: Point, b: Point): Mark[] {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  const s = Math.min(11, length * 0.6);
  const neck: Point = [b[0] - ux * s, b[1] - uy * s];
  return [
    mark('circle', { class: 'arrow', cx: a[0], cy: a[1], r: Math.min(2.4, length / 4) }), mark('line', { class: 'shift', x1: a[0], y1: a[1], x2: neck[0], y2: neck[1] }),
    mark('path', { class: 'arrow', d: `M${n(b[0])} ${n(b[1])}L${n(neck[0] - uy * s * 0.35)} ${n(neck[1] + ux * s * 0.35)}L${n(neck[0] + uy * s * 0.35)} ${n(neck[1] - ux * s * 0.35)}Z` }),
  ];
}
