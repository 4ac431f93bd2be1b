/** What things look like from above: shapes that follow from what a thing does to light. Each is drawn in its own frame, x towards where it faces, y along its face, mm. */
import type { DrawnThing } from '../drawing.ts';
import { boxOf, mark, n, shape, told, type Box, type Mark, type Point } from '../marks.ts';

/** A place on the table, m, as one on the sheet. */
export const onSheet = ([x, y]: Point): Point => [x * 1000, -y * 1000];

/** The box around what it takes of the table, mm of the sheet. */
export const roomOf = (t: DrawnThing): Box => boxOf((t.outline.length > 0 ? t.outline : [t.at]).map(onSheet));

/** @param t also what nothing tells the facing of: that is a dot where it stands */
export function thingMarks(t: DrawnThing): Mark {
  const said = told(`${t.kind} ${t.name}, (${Math.round(t.at[0] * 1000)}, ${Math.round(t.at[1] * 1000)}) mm`);
  const mount = mountMarks(t, t.above ? 'mount hanging' : 'mount');
  const own = t.normal && !t.above ? shapeOf(t) : [];
  const turned = t.normal && own.length > 0 ? [turnedTo(t.normal, t.at, own)] : [];
  return mark('g', { 'data-item': t.name }, [said, ...mount, ...turned, ...(mount.length + turned.length === 0 ? [dotMark(t, 'mount')] : [])]);
}

/** Its outline, and nothing of what it does to light. */
export function outlineMarks(t: DrawnThing, look: string): Mark[] {
  if (t.rounded && t.normal) return [turnedTo(t.normal, t.at, [round(t, look)])];
  const mount = mountMarks(t, look);
  return mount.length > 0 ? mount : [dotMark(t, look)];
}

const mountMarks = (t: DrawnThing, look: string): Mark[] => (t.rounded || t.outline.length < 3 ? [] : [mark('path', { class: look, d: shape(t.outline.map(onSheet)) })]);
const dotMark = ({ at }: DrawnThing, look: string): Mark => { const [cx, cy] = onSheet(at); return mark('circle', { class: look, cx, cy, r: 8 }); };
const round = ({ face: [w, deep] }: DrawnThing, look: string): Mark => mark('ellipse', { class: look, cx: 0, cy: 0, rx: deep * 500, ry: w * 500 });
function turnedTo(normal: Point, at: Point, marks: readonly Mark[]): Mark {
  const [x, y] = onSheet(at);
  return mark('g', { transform: `translate(${n(x)} ${n(y)}) rotate(${n((-Math.atan2(normal[1], normal[0]) * 180) / Math.PI)})` }, marks);
}

type Shape = (w: number, t: DrawnThing) => Mark[];

const bar = (name: string, x: number, from: number, to: number): Mark => mark('line', { class: name, x1: x, y1: from, x2: x, y2: to });
const face = (w: number, x = 0): Mark => bar('face', x, -w / 2, w / 2);
const block = (name: string, x: number, w: number, depth: number): Mark => mark('rect', { class: name, x, y: -w / 2, width: depth, height: w });
/** A bulge of both faces, or a hollow of both. */
const lens = (w: number, deep: number, name = 'glass'): Mark => mark('path', { class: name, d: `M0 ${n(-w / 2)}Q${n(deep)} 0 0 ${n(w / 2)}Q${n(-deep)} 0 0 ${n(-w / 2)}Z` });
const hollow = (w: number, deep: number): Mark => mark('path', { class: 'glass', d: `M${n(deep)} ${n(-w / 2)}Q0 0 ${n(deep)} ${n(w / 2)}H${n(-deep)}Q0 0 ${n(-deep)} ${n(-w / 2)}Z` });
const lensOf = (w: number, t: DrawnThing): Mark => (t.curved === 'bulging' ? hollow(w, 0.1 * w) : lens(w, 0.22 * w));
/** Strokes behind a face that lets no light through. */
const backed = (w: number): Mark => {
  const step = Math.max(4, w / 9);
  const strokes = Array.from({ length: Math.max(1, Math.floor(w / step)) }, (_, i) => `M0 ${n(-w / 2 + (i + 0.3) * step)}l-6 ${n(Math.min(6, step))}`);
  return mark('path', { class: 'fine', d: strokes.join('') });
};
const opening: Shape = w => [bar('face', 0, -w / 2, -w / 8), bar('face', 0, w / 8, w / 2)];
const scatters: Shape = w => [block('glass', -3, w, 6), mark('path', { class: 'fine', d: `M3 ${n(-w / 2)}${Array.from({ length: Math.max(2, Math.round(w / 8)) }, (_, i) => `l${i % 2 === 0 ? 4 : -4} ${n(w / Math.max(2, Math.round(w / 8)))}`).join('')}` })];
const recorded: Shape = (w, t) => [block('glass', -2.5, w, 5), ...(t.layer ? [face(w, t.layer === 'front' ? 2.5 : -2.5)] : [face(w)])];

const SHAPES: Readonly<Record<string, Shape>> = {
  laser: () => [block('solid', -8, 16, 8)],
  mirror: (w, t) => (t.curved ? [mark('path', { class: 'face', d: `M0 ${n(-w / 2)}Q${n((t.curved === 'hollow' ? -1 : 1) * 0.18 * w)} 0 0 ${n(w / 2)}` })] : [backed(w), face(w)]),
  splitter: w => [block('glass', -5, w, 5), face(w)],
  spreader: (_, t) => [mark('g', { transform: 'translate(-9 0)' }, [lensOf(26, t)]), bar('face', -36, -14, -2.5), bar('face', -36, 2.5, 14)],
  lens: (w, t) => [lensOf(w, t)],
  collimator: w => [mark('path', { class: 'glass', d: `M0 ${n(-w / 2)}Q${n(0.24 * w)} 0 0 ${n(w / 2)}Z` })],
  polarizer: w => [block('glass', -3, w, 6), ...[-0.3, -0.1, 0.1, 0.3].map(y => mark('line', { class: 'fine', x1: -3, y1: y * w - 2, x2: 3, y2: y * w + 2 }))],
  'half-wave plate': w => [block('glass', -3, w, 6), mark('path', { class: 'fine', d: `M-3 ${n(-0.3 * w)}L3 ${n(0.3 * w)}M3 ${n(-0.3 * w)}L-3 ${n(0.3 * w)}` })],
  attenuator: w => [block('mount', -4, w, 8), mark('path', { class: 'fine', d: `M-4 ${n(-w / 2)}L4 ${n(w / 2)}M-4 0L4 0` })],
  aperture: opening, slit: opening, shutter: w => [...opening(w, undefined as never), mark('path', { class: 'fine', d: `M0 ${n(-w / 8)}L-10 ${n(w / 8)}` })],
  'black card': w => [block('solid', -2, w, 4)], 'beam stop': w => [block('solid', -12, w, 12)], screen: w => [block('bare', -2, w, 4)], 'fill card': w => [block('bare', -2, w, 4)],
  'ground glass': scatters, diffuser: scatters, plate: recorded,
  hologram: (w, t) => [...recorded(w, t), mark('path', { class: 'fine', d: Array.from({ length: Math.max(2, Math.floor(w / 6)) }, (_, i) => `M-2.5 ${n(-w / 2 + (i + 0.5) * 6)}l5 2`).join('') })],
};

function shapeOf(t: DrawnThing): Mark[] {
  return t.rounded ? [round(t, 'mount')] : (SHAPES[t.kind]?.(t.face[0] * 1000, t) ?? []);
}
