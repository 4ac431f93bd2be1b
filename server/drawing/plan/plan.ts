/** The bench plan: the table from above, to scale. */
import type { Drawing } from '../drawing.ts';
import { boxOf, label, mark, type Box, type Mark, type Point, type Sheet } from '../marks.ts';
import { placed, widthOf } from './labels.ts';
import { legend } from './legend.ts';
import { amissMarks, angleMarks, coneMarks, legMarks, lengthMark } from './light.ts';
import { holesPattern, tableMarks } from './table.ts';
import { thingMarks } from './things.ts';

/** Around the table, mm, and the height of a letter at a table of 1 m. */
const MARGIN = 70;
const LETTER = 17;

export function planOf(d: Drawing): Sheet {
  const frame = frameOf(d);
  const letter = LETTER * Math.max(0.6, Math.min(4, frame.w / 1300));
  const left = frame.x + MARGIN / 2;
  const foot = legend(d, frame, left, letter);
  const top = 1.9 * letter;
  const box: Box = { x: frame.x, y: frame.y - top, w: frame.w, h: frame.h + top + foot.height };
  const small = 0.72 * letter;
  return {
    title: d.title, box,
    marks: [
      ...(d.holes ? [holesPattern(d.holes)] : []),
      mark('rect', { class: 'paper', x: box.x, y: box.y, width: box.w, height: box.h }),
      label(d.title, left, frame.y + 0.2 * letter, 1.25 * letter, 'letter'),
      mark('clipPath', { id: 'frame' }, [mark('rect', { x: frame.x, y: frame.y, width: frame.w, height: frame.h })]),
      ...tableMarks(d, letter),
      mark('g', { 'clip-path': 'url(#frame)' }, d.legs.flatMap(coneMarks)),
      ...d.angles.map(a => angleMarks(a, small)),
      ...d.things.map(thingMarks),
      ...d.legs.flatMap(legMarks),
      ...d.legs.flatMap(l => lengthMark(l, small, widthOf(l.length, small)) ?? []),
      ...amissMarks(d, letter),
      ...names(d, frame, letter),
      ...foot.marks,
    ],
  };
}

/** The table, everything that stands somewhere, and the legs; the light may be wider than that. */
function frameOf(d: Drawing): Box {
  const points: Point[] = [...(d.table ? [[0, 0] as Point, d.table] : []), ...d.things.flatMap(t => [t.at, ...t.outline]), ...d.legs.flatMap(l => [l.from, l.to])];
  const { x, y, w, h } = boxOf(points.map(inMm));
  return { x: x - MARGIN, y: y - MARGIN, w: Math.max(300, w + 2 * MARGIN), h: Math.max(200, h + 2 * MARGIN) };
}

const inMm = ([x, y]: Point): Point => [x * 1000, -y * 1000];

function names(d: Drawing, frame: Box, letter: number): Mark[] {
  const boxes = d.things.map(t => boxOf((t.outline.length > 0 ? t.outline : [t.at]).map(inMm)));
  const [w, h] = d.table ?? [0, 0];
  const edge: readonly Point[] = d.table ? [[0, 0], [w, 0], [w, h], [0, h]] : [];
  const lines = [...d.legs.map(l => [l.from, l.to] as const), ...edge.map((p, i) => [p, edge[(i + 1) % 4]!] as const)].map(([a, b]) => [inMm(a), inMm(b)] as const);
  const wanted = d.things.map((t, i) => ({ own: boxes[i]!, w: widthOf(t.name, letter), h: letter }));
  return placed(wanted, { boxes, lines, frame }).map((b, i) => mark('g', { 'data-item': d.things[i]!.name, 'data-layer': 'names' }, [label(d.things[i]!.name, b.x + b.w / 2, b.y + 0.8 * b.h, letter, 'letter halo', 'middle')]));
}
