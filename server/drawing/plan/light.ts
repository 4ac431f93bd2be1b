/** Light from above: how wide it is, where it goes, how long each leg is, and at which angles it arrives. */
import type { DrawnAngle } from '../angles.ts';
import { legTold, type Drawing, type DrawnLeg } from '../drawing.ts';
import { label, mark, n, shape, told, type Mark, type Point } from '../marks.ts';

const x = (v: number): number => v * 1000;
const y = (v: number): number => -v * 1000;

/** The width of the light, and in it the part that serves what it is meant for. */
export function coneMarks(l: DrawnLeg): Mark[] {
  return WIDTHS.flatMap(([which]) => {
    const sides = sidesOf(l, which);
    return sides ? [mark('path', { class: coneClass(l, which), d: shape([...sides[0], ...[...sides[1]].reverse()]) })] : [];
  });
}

/** Both sides of it on the sheet, each along the light. */
export function sidesOf(l: DrawnLeg, which: Width): readonly [readonly [Point, Point], readonly [Point, Point]] | undefined {
  const [dx, dy, length] = across(l);
  if (!shows(l, which) || length === 0) return undefined;
  const [a, b] = l[which];
  const side = (p: Point, r: number): Point => [x(p[0] - dy * r), y(p[1] + dx * r)];
  return [[side(l.from, a), side(l.to, b)], [side(l.from, -a), side(l.to, -b)]];
}
export type Width = 'whole' | 'useful';
export const WIDTHS = [['whole', 'width of the light'], ['useful', 'of it, the part that is used']] as const satisfies readonly (readonly [Width, string])[];

/** Light that an object or a hologram sends on has no edge of its own: of it only the part that comes to the plate is drawn. */
export function shows(l: DrawnLeg, which: Width): boolean {
  const wide = Math.max(...l[which]) >= 0.002;
  return wide && (which === 'whole' ? l.role !== 'scattered' : l.role === 'scattered' || !same(l.whole, l.useful));
}
const same = (a: readonly number[], b: readonly number[]): boolean => a.every((v, i) => Math.abs(v - b[i]!) < 1e-9);
const hue = ({ role }: DrawnLeg): string | undefined => (role === 'reference' ? 'reference' : role === 'object' || role === 'scattered' ? 'object' : undefined);
const coneClass = (l: DrawnLeg, which: Width): string => [which === 'whole' ? 'cone' : 'useful', ...(hue(l) ? [`${which === 'whole' ? 'cone' : 'used'}-${hue(l)!}`] : [])].join(' ');

function across(l: DrawnLeg): [number, number, number] {
  const [dx, dy] = [l.to[0] - l.from[0], l.to[1] - l.from[1]];
  const length = Math.hypot(dx, dy);
  return length < 1e-9 ? [0, 0, 0] : [dx / length, dy / length, length];
}

/** A leg, with an arrowhead past its middle. What goes straight up or down is a ring from above. */
export function legMarks(l: DrawnLeg): Mark[] {
  const [dx, dy, length] = across(l);
  const said = told(legTold(l));
  if (length === 0) return [mark('g', { 'data-item': l.id }, [said, mark('circle', { class: `light ${l.role}`, cx: x(l.from[0]), cy: y(l.from[1]), r: 6 })])];
  const s = Math.min(13, x(length) / 3);
  const head = arrow(x(l.from[0] + dx * length * 0.58), y(l.from[1] + dy * length * 0.58), dx * s, -dy * s, hue(l));
  return [mark('g', { 'data-item': l.id }, [
    said,
    mark('line', { class: `light ${l.role}`, x1: x(l.from[0]), y1: y(l.from[1]), x2: x(l.to[0]), y2: y(l.to[1]) }), head,
  ])];
}
const arrow = (px: number, py: number, ux: number, uy: number, of?: string): Mark =>
  mark('path', { class: of ? `arrow arrow-${of}` : 'arrow', d: `M${n(px + ux)} ${n(py + uy)}L${n(px - ux * 0.6 - uy * 0.5)} ${n(py - uy * 0.6 + ux * 0.5)}L${n(px - ux * 0.6 + uy * 0.5)} ${n(py - uy * 0.6 - ux * 0.5)}Z` });

/** Beside a leg that is long enough for it, its length; along the leg, never upside down. */
export function lengthMark(l: DrawnLeg, size: number, width: number): Mark | undefined {
  const [dx, dy, length] = across(l);
  if (l.length === '' || x(length) < width + 3 * size) return undefined;
  const [px, py] = [x(l.from[0] + dx * length * 0.36), y(l.from[1] + dy * length * 0.36)];
  const turn = (Math.atan2(-dy, dx) * 180) / Math.PI;
  const upright = turn > 90 || turn <= -90 ? turn - 180 * Math.sign(turn) : turn;
  return mark('g', { transform: `translate(${n(px)} ${n(py)}) rotate(${n(upright)})`, 'data-layer': 'lengths' }, [label(l.length, 0, -0.45 * size, size, 'letter quiet halo', 'middle')]);
}

export function angleMarks(a: DrawnAngle, size: number): Mark {
  const [from, to] = a.sides.map(([dx, dy]) => Math.atan2(dy, dx)) as [number, number];
  const turn = Math.atan2(Math.sin(to - from), Math.cos(to - from));
  const r = 4.2 * size;
  const on = (t: number, by = r): Point => [x(a.at[0]) + by * Math.cos(t), y(a.at[1]) - by * Math.sin(t)];
  const [start, end, middle] = [on(from), on(to), on(from + turn / 2, r + 1.5 * size)];
  return mark('g', { 'data-layer': 'angles' }, [
    told(`${a.words}: ${a.text}`),
    mark('path', { class: 'angle', d: `M${n(x(a.at[0]))} ${n(y(a.at[1]))}L${n(on(from, 1.15 * r)[0])} ${n(on(from, 1.15 * r)[1])}M${n(start[0])} ${n(start[1])}A${n(r)} ${n(r)} 0 0 ${turn > 0 ? 0 : 1} ${n(end[0])} ${n(end[1])}` }),
    label(a.text, middle[0], middle[1] + size / 3, size, 'letter quiet halo', 'middle'),
  ]);
}

/** Light that nobody wants, where a card should stand, and what stands in the way. */
export function amissMarks(d: Drawing, letter: number): Mark[] {
  const s = 0.8 * letter;
  return [
    ...d.strays.map(l => mark('g', {}, [told(l.words), mark('line', { class: 'stray', x1: x(l.from[0]), y1: y(l.from[1]), x2: x(l.to[0]), y2: y(l.to[1]) })])),
    ...d.cards.map(c => mark('g', {}, [told(c.words), mark('path', { class: 'card', d: `M${n(x(c.at[0]) - s)} ${n(y(c.at[1]) - s)}h${n(2 * s)}v${n(2 * s)}h${n(-2 * s)}Z` })])),
    ...d.blocked.map(b => mark('g', { class: 'blocked' }, [told(b.words), mark('circle', { cx: x(b.at[0]), cy: y(b.at[1]), r: 1.5 * s }), mark('path', { d: `M${n(x(b.at[0]) - s)} ${n(y(b.at[1]) - s)}l${n(2 * s)} ${n(2 * s)}M${n(x(b.at[0]) - s)} ${n(y(b.at[1]) + s)}l${n(2 * s)} ${n(-2 * s)}` })])),
  ];
}
