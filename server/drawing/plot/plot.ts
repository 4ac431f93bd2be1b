/** Numbers over a number, as curves with the bands in which they lie: a panel for each result, one under the other over one axis. */
import { label, mark, n, shape, told, type Mark, type Point, type Sheet } from '../marks.ts';
import { widthOf } from '../plan/labels.ts';
import { even, scaleFor, type Scale } from './scale.ts';

export interface PlotPoint {
  readonly x: number;
  readonly y: number;
  readonly low: number;
  readonly high: number;
  /** what a pointer that rests on it is told */
  readonly words: string;
}
export interface PlotCurve {
  readonly label: string;
  /** undefined: nobody knows, and the curve has a gap */
  readonly points: readonly (PlotPoint | undefined)[];
}
export interface PlotPanel {
  /** with the unit */
  readonly title: string;
  /** its numbers are shares of a whole */
  readonly shares: boolean;
  readonly curves: readonly PlotCurve[];
  /** a number at the axis */
  text(v: number): string;
}
/** What holds on stretches of the axis. */
export interface PlotTold {
  readonly words: string;
  /** of which curves, by their places, each with its stretches */
  readonly on: readonly { readonly curve: number; readonly stretches: readonly (readonly [number, number])[] }[];
}

export interface Plot {
  readonly title: string;
  readonly across: { readonly title: string; readonly from: number; readonly to: number; readonly ticks?: readonly number[]; text(v: number): string };
  readonly panels: readonly PlotPanel[];
  readonly told: readonly PlotTold[];
  /** sentences at the foot */
  readonly notes: readonly string[];
  /** false: its points are not parts of one course of things */
  readonly joined: boolean;
}

const [WIDE, HIGH, GAP] = [720, 210, 62];
const LETTER = 16;
const SMALL = 13;
/** Curves are told apart by dashes, by hues and by their names at their ends. */
const LOOKS = 6;
/** The bands of more lie over each other. */
const FEW = 3;
const MOST_TOLD = 8;
const MOST_DOTS = 60;

export function plotOf(p: Plot): Sheet {
  const across: Scale = p.across.ticks ? { ...even(p.across.from, p.across.to, 6), ticks: p.across.ticks } : even(p.across.from, p.across.to, 6);
  const x = (v: number): number => WIDE * across.along(v);
  const marks: Mark[] = [];
  let y = 0;
  let right = 0;
  for (const panel of p.panels) {
    const drawn = panelMarks(panel, x, y, p);
    marks.push(...drawn.marks);
    right = Math.max(right, drawn.right);
    y += HIGH + GAP;
  }
  y -= GAP;
  const bottom = y;
  const left = -74;
  const every = Math.max(1, Math.ceil(across.ticks.reduce((w, t) => w + widthOf(p.across.text(t), SMALL) + SMALL, 0) / WIDE));
  const axis = across.ticks.filter((_, i) => i % every === 0).flatMap(t => [mark('line', { class: 'axis', x1: x(t), x2: x(t), y1: bottom, y2: bottom + 6 }), label(p.across.text(t), x(t), bottom + 22, SMALL, 'letter', 'middle')]);
  y += 48;
  axis.push(label(p.across.title, WIDE / 2, y - 2, LETTER, 'letter', 'middle'));
  y += 14;
  const alone = p.panels.every(q => q.curves.length < 2);
  const ends = new Set<number>();
  for (const t of p.told.slice(0, MOST_TOLD)) {
    y += 8;
    for (const { curve, stretches } of t.on) {
      y += 8;
      const look = curve % LOOKS;
      if (!alone) axis.push(dot(look, -16, y));
      for (const [a, b] of stretches) {
        // A stretch of one value is seen as well.
        axis.push(mark('line', { class: alone ? 'stretch' : `curve curve-${look}`, x1: Math.max(0, x(a) - 3), x2: Math.min(WIDE, x(b) + 3), y1: y, y2: y }));
        if (a > across.from) ends.add(a);
        if (b < across.to) ends.add(b);
      }
    }
    for (const line of lines(t.words, WIDE, SMALL)) { y += 18; axis.push(label(line, 0, y, SMALL, 'letter')); }
  }
  if (p.told.length > MOST_TOLD) { y += 20; axis.push(label(`and ${p.told.length - MOST_TOLD} more`, 0, y, SMALL, 'letter quiet')); }
  y += p.notes.length > 0 ? 8 : 0;
  for (const note of p.notes) for (const line of lines(note, WIDE, SMALL)) { y += 19; axis.push(label(line, 0, y, SMALL, 'letter quiet')); }
  // Of several curves they would be a fence.
  const uprights = (alone ? [...ends] : []).map(v => mark('line', { class: 'turns', x1: x(v), x2: x(v), y1: 0, y2: bottom }));
  const box = { x: left, y: -76, w: WIDE + right - left + 24, h: y + 96 };
  return { title: p.title, box, marks: [mark('rect', { class: 'paper', x: box.x, y: box.y, width: box.w, height: box.h }), ...lines(p.title, WIDE + right, 1.15 * LETTER).slice(0, 1).map(t => label(t, 0, -46, 1.15 * LETTER, 'letter')), ...uprights, ...marks, ...axis] };
}

/** Words as lines of a width. */
function lines(words: string, width: number, size: number): string[] {
  const found: string[] = [];
  for (const word of words.split(' ')) {
    const last = found.at(-1);
    if (last !== undefined && widthOf(`${last} ${word}`, size) <= width) found[found.length - 1] = `${last} ${word}`;
    else found.push(word);
  }
  return found;
}

function panelMarks(panel: PlotPanel, x: (v: number) => number, top: number, { joined }: Plot): { readonly marks: Mark[]; readonly right: number } {
  const known = panel.curves.flatMap(c => c.points.flatMap(q => q ?? []));
  const scale = scaleFor(known.flatMap(q => [q.low, q.y, q.high]), panel.shares);
  const y = (v: number): number => top + HIGH * (1 - Math.max(0, Math.min(1, scale.along(v))));
  const marks: Mark[] = [label(panel.title, 0, top - 12, LETTER, 'letter')];
  for (const t of scale.ticks) marks.push(mark('line', { class: 'level', x1: 0, x2: WIDE, y1: y(t), y2: y(t) }), label(panel.text(t), -10, y(t) + 0.35 * SMALL, SMALL, 'letter', 'end'));
  const ends: { at: number; text: string; look: number }[] = [];
  panel.curves.forEach((c, k) => {
    const look = k % LOOKS;
    for (const run of joined ? runs(c.points) : []) {
      const at = (of: (q: PlotPoint) => number): Point[] => run.map(q => [x(q.x), y(of(q))]);
      if (run.some(q => q.low < q.high)) marks.push(mark('path', { class: `band-${look}${panel.curves.length > FEW ? ' band-of-many' : ''}`, d: shape([...at(q => q.high), ...at(q => q.low).reverse()]) }));
      marks.push(mark('path', { class: `curve curve-${look}`, d: shape(at(q => q.y), false) }));
    }
    const shown = c.points.flatMap(q => q ?? []);
    // One alone, or one whose band a curve does not show, has it as a line.
    for (const q of shown.length <= MOST_DOTS ? shown : []) marks.push(mark('g', {}, [told(q.words), ...(joined || q.low === q.high ? [] : [mark('line', { class: `curve-${look} give`, x1: x(q.x), x2: x(q.x), y1: y(q.low), y2: y(q.high) })]), dot(look, x(q.x), y(q.y))]));
    const last = shown.at(-1);
    if (last && c.label !== '') ends.push({ at: y(last.y), text: c.label, look });
  });
  if (known.length === 0) marks.push(label('unknown', WIDE / 2, top + HIGH / 2, LETTER, 'letter quiet', 'middle'));
  marks.push(mark('rect', { class: 'frame', x: 0, y: top, width: WIDE, height: HIGH }));
  // Marks that no line joins have their names from the top down.
  const names = apart(ends.map((e, i) => (joined ? e.at : top + SMALL + i)), SMALL * 1.25, top, top + HIGH);
  ends.forEach((e, i) => marks.push(...(joined ? [mark('path', { class: `curve curve-${e.look}`, d: `M${n(WIDE + 4)} ${n(e.at)}L${n(WIDE + 16)} ${n(names[i]!)}h26` })] : []), dot(e.look, WIDE + 29, names[i]!), label(e.text, WIDE + 48, names[i]! + 0.35 * SMALL, SMALL, 'letter')));
  return { marks, right: ends.length === 0 ? 0 : 50 + ends.reduce((w, e) => Math.max(w, widthOf(e.text, SMALL)), 0) };
}

/** The points between gaps. */
function runs(points: PlotCurve['points']): PlotPoint[][] {
  const found: PlotPoint[][] = [[]];
  for (const q of points) {
    if (q) found.at(-1)!.push(q);
    else if (found.at(-1)!.length > 0) found.push([]);
  }
  return found.filter(r => r.length > 0);
}

/** A mark of its own for each look: round, square, on its corner; full, then open. */
function dot(look: number, x: number, y: number): Mark {
  const r = 4;
  const name = `dot-${look}${look >= 3 ? ' dot-open' : ''}`;
  if (look % 3 === 0) return mark('circle', { class: name, cx: x, cy: y, r });
  if (look % 3 === 1) return mark('rect', { class: name, x: x - r, y: y - r, width: 2 * r, height: 2 * r });
  return mark('path', { class: name, d: shape([[x, y - r - 1], [x + r + 1, y], [x, y + r + 1], [x - r - 1, y]]) });
}

/** Heights that are at least `gap` apart, in the order of the wanted ones and as near to them as that allows. */
function apart(wanted: readonly number[], gap: number, low: number, high: number): number[] {
  const order = wanted.map((_, i) => i).sort((a, b) => wanted[a]! - wanted[b]!);
  const at = [...wanted];
  order.forEach((i, k) => { at[i] = Math.max(wanted[i]!, low, k > 0 ? at[order[k - 1]!]! + gap : -Infinity); });
  [...order].reverse().forEach((i, k, all) => { at[i] = Math.min(at[i]!, k > 0 ? at[all[k - 1]!]! - gap : high); });
  return at;
}
