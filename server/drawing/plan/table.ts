/** The table: its edge, its holes, and the coordinates along two edges. */
import type { Drawing } from '../drawing.ts';
import { label, mark, n, type Mark } from '../marks.ts';

export const holesPattern = (spacing: number): Mark => {
  const s = spacing * 1000;
  return mark('defs', {}, [mark('pattern', { id: 'holes', width: s, height: s, patternUnits: 'userSpaceOnUse', patternTransform: `translate(${n(-s / 2)} ${n(-s / 2)})` }, [mark('circle', { class: 'hole', cx: s / 2, cy: s / 2, r: Math.min(2.5, s / 8) })])]);
};

export function tableMarks(d: Drawing, letter: number): Mark[] {
  if (!d.table) return [];
  const [w, h] = [d.table[0] * 1000, d.table[1] * 1000];
  // A hole that the edge would cut is none.
  const holed = (spacing = 0): Mark[] => (spacing > 0 && Math.min(w, h) > spacing * 1000 ? [mark('rect', { class: 'holes', x: spacing * 500, y: spacing * 500 - h, width: w - spacing * 1000, height: h - spacing * 1000, fill: 'url(#holes)' })] : []);
  const size = 0.75 * letter;
  const step = Math.max(w, h) > 1600 ? 400 : 200;
  const along = (to: number, at: (v: number) => Mark): Mark[] => Array.from({ length: Math.min(60, Math.floor(to / step) + 1) }, (_, i) => at(i * step));
  return [
    mark('rect', { class: 'table', x: 0, y: -h, width: w, height: h }), ...holed(d.holes),
    ...along(w, v => label(String(v), v, 1.4 * size, size, 'letter quiet', 'middle')), ...along(h, v => label(String(v), -0.5 * size, -v + size / 3, size, 'letter quiet', 'end')),
  ];
}
