/** The bench plan: the table from above, to scale. */
import type { Drawing } from '../drawing.ts';
import { boxOf, label, mark, type Box, type Mark, type Point, type Sheet } from '../marks.ts';
import { NOTHING_ELSE, type Also, type Named } from './also.ts';
import { placed, widthOf } from './labels.ts';
import { legend } from './legend.ts';
import { amissMarks, angleMarks, coneMarks, legMarks, lengthMark } from './light.ts';
import { holesPattern, tableMarks } from './table.ts';
import { onSheet, roomOf, thingMarks } from './things.ts';

/** Around the table, mm, and the height of a letter at a table of 1 m. */
const MARGIN = 70;
const LETTER = 17;
/** Letters of what is said below a name, beside those of the name. */
const NOTE = 0.78;
const LINE = 1.15;

/** @param letters how large they are beside those of a screen */
export function planOf(d: Drawing, also = NOTHING_ELSE, letters = 1): Sheet {
  const frame = frameOf(d, also);
  const letter = LETTER * letters * Math.max(0.6, Math.min(4, frame.w / 1300));
  const left = frame.x + MARGIN / 2;
  const foot = legend(d, frame, left, letter, also);
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
      ...also.below,
      mark('g', { 'clip-path': 'url(#frame)' }, d.legs.flatMap(coneMarks)),
      ...d.angles.map(a => angleMarks(a, small)),
      ...d.things.map(thingMarks),
      ...d.legs.flatMap(legMarks),
      ...d.legs.flatMap(l => lengthMark(l, small, widthOf(l.length, small)) ?? []),
      ...amissMarks(d, letter),
      ...also.above,
      ...names(d, also, frame, letter),
      ...foot.marks,
    ],
  };
}

/** The table, everything that stands somewhere, and the legs; the light may be wider than that. */
function frameOf(d: Drawing, also: Also): Box {
  const points: Point[] = [...(d.table ? [[0, 0] as Point, d.table] : []), ...d.things.flatMap(t => [t.at, ...t.outline]), ...d.legs.flatMap(l => [l.from, l.to])];
  const { x, y, w, h } = boxOf([...points.map(onSheet), ...also.points]);
  return { x: x - MARGIN, y: y - MARGIN, w: Math.max(300, w + 2 * MARGIN), h: Math.max(200, h + 2 * MARGIN) };
}

function names(d: Drawing, { notes, named, boxes: more, lines: others }: Also, frame: Box, letter: number): Mark[] {
  const boxes = d.things.map(roomOf);
  const [w, h] = d.table ?? [0, 0];
  const edge: readonly Point[] = d.table ? [[0, 0], [w, 0], [w, h], [0, h]] : [];
  const lines = [...d.legs.map(l => [l.from, l.to] as const), ...edge.map((p, i) => [p, edge[(i + 1) % 4]!] as const)].map(([a, b]) => [onSheet(a), onSheet(b)] as const);
  const all: Named[] = [...d.things.map((t, i): Named => ({ item: t.name, name: t.name, own: boxes[i]!, notes: notes.get(t.name) ?? [] })), ...named];
  const small = NOTE * letter;
  const wanted = all.map(({ own, name, notes: said = [] }) => ({ own, w: Math.max(...said.map(words => widthOf(words, small)), widthOf(name ?? '', letter)), h: (name === undefined ? 0 : letter) + said.length * LINE * small }));
  return placed(wanted, { boxes: [...boxes, ...more], lines: [...lines, ...others], frame }).flatMap((b, i) => {
    const { item, name, notes: said = [] } = all[i]!;
    const written = (layer: string, marks: readonly Mark[]): Mark[] => (marks.length === 0 ? [] : [mark('g', { 'data-item': item, 'data-layer': layer }, marks)]);
    const line = (words: string, y: number, size: number, look: string): Mark => label(words, b.x + b.w / 2, y, size, look, 'middle');
    return [
      ...written('names', name === undefined ? [] : [line(name, b.y + 0.8 * letter, letter, 'letter halo')]),
      ...written('notes', said.map((words, k) => line(words, b.y + b.h - (0.25 + LINE * (said.length - 1 - k)) * small, small, 'letter quiet halo'))),
    ];
  });
}
