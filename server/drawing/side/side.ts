/** The table from its near side: heights, where beams leave the level. To the scale of the plan, so that one can be laid below the other. */
import { legTold, type Drawing, type DrawnLeg, type DrawnThing } from '../drawing.ts';
import { boxOf, label, mark, shape, told, type Box, type Mark, type Point, type Sheet } from '../marks.ts';
import { placed, widthOf } from '../plan/labels.ts';

const MARGIN = 70;
const LETTER = 17;

const at = (x: number, z: number): Point => [x * 1000, -z * 1000];

export function sideOf(d: Drawing): Sheet {
  const points: Point[] = [[0, 0], ...(d.table ? [[d.table[0] * 1000, 0] as Point] : []), ...d.things.flatMap(t => [at(t.at[0], t.height), ...t.front().map(p => at(...p))]), ...d.legs.flatMap(l => [at(l.from[0], l.heights[0]), at(l.to[0], l.heights[1])])];
  const all = boxOf(points);
  const frame: Box = { x: all.x - MARGIN, y: all.y - MARGIN, w: Math.max(300, all.w + 2 * MARGIN), h: Math.max(200, all.h + 2 * MARGIN) };
  const letter = LETTER * Math.max(0.6, Math.min(4, frame.w / 1300));
  const foot = [...d.notes, 'Things that stand before each other are drawn over each other.'];
  const box: Box = { x: frame.x, y: frame.y - 2 * letter, w: frame.w, h: frame.h + (3 + 1.4 * foot.length) * letter };
  const boxes = d.things.map(t => boxOf(t.front().length > 2 ? t.front().map(p => at(...p)) : [at(t.at[0], t.height)]));
  const lines = d.legs.map(l => [at(l.from[0], l.heights[0]), at(l.to[0], l.heights[1])] as const);
  const names = placed(d.things.map((t, i) => ({ own: boxes[i]!, w: widthOf(t.name, letter), h: letter })), { boxes, lines, frame });
  return {
    title: d.title, box,
    marks: [
      mark('rect', { class: 'paper', x: box.x, y: box.y, width: box.w, height: box.h }),
      label(`${d.title}, from the near side`, frame.x + MARGIN / 2, frame.y, 1.25 * letter, 'letter'),
      ...ground(d, frame, letter), ...d.things.map(thing), ...d.legs.flatMap(leg),
      ...names.map((b, i) => label(d.things[i]!.name, b.x + b.w / 2, b.y + 0.8 * b.h, letter, 'letter halo', 'middle')),
      ...foot.map((words, i) => label(words, frame.x + MARGIN / 2, frame.y + frame.h + (1.4 + 1.4 * i) * letter, 0.85 * letter, 'letter quiet')),
    ],
  };
}

/** The top of the table, and heights above it along one side. */
function ground(d: Drawing, frame: Box, letter: number): Mark[] {
  const [from, to] = d.table ? [0, d.table[0] * 1000] : [frame.x + MARGIN / 2, frame.x + frame.w - MARGIN / 2];
  const size = 0.75 * letter;
  const top = -frame.y - MARGIN;
  const step = top > 1500 ? 500 : top > 600 ? 200 : 100;
  const heights = Array.from({ length: Math.min(40, Math.floor(top / step) + 1) }, (_, i) => i * step);
  return [
    mark('rect', { class: 'mount', x: from, y: 0, width: to - from, height: 0.7 * letter }),
    ...heights.flatMap(z => [mark('line', { class: 'angle', x1: from - 0.5 * size, y1: -z, x2: from, y2: -z }), label(String(z), from - 0.8 * size, -z + size / 3, size, 'letter quiet', 'end')]),
    ...(d.beamHeight === undefined ? [] : [mark('line', { class: 'level', x1: from, y1: -d.beamHeight * 1000, x2: to, y2: -d.beamHeight * 1000 })]),
  ];
}

function thing(t: DrawnThing): Mark {
  const [x, y] = at(t.at[0], t.height);
  const form = t.front().length > 2 ? mark(t.rounded ? 'ellipse' : 'path', t.rounded ? ellipse(t) : { class: 'mount', d: shape(t.front().map(p => at(...p))) }) : mark('circle', { class: 'mount', cx: x, cy: y, r: 8 });
  return mark('g', { 'data-item': t.name }, [
    told(`${t.kind} ${t.name}, ${Math.round(t.height * 1000)} mm above the table`), ...(t.post > 0 ? [mark('line', { class: 'post', x1: x, y1: 0, x2: x, y2: -t.post * 1000 })] : []), form,
  ]);
}

function ellipse(t: DrawnThing): Readonly<Record<string, string | number>> {
  const b = boxOf(t.front().map(p => at(...p)));
  return { class: 'mount', cx: b.x + b.w / 2, cy: b.y + b.h / 2, rx: b.w / 2, ry: b.h / 2 };
}

function leg(l: DrawnLeg): Mark[] {
  const [a, b] = [at(l.from[0], l.heights[0]), at(l.to[0], l.heights[1])];
  if (Math.hypot(b[0] - a[0], b[1] - a[1]) < 1) return [];
  return [mark('g', { 'data-item': l.id }, [told(legTold(l)), mark('line', { class: `light ${l.role}`, x1: a[0], y1: a[1], x2: b[0], y2: b[1] })])];
}
