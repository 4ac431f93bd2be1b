/** A drawing as SVG text: the table from above, to scale, one unit a millimetre. The same drawing gives the same text, letter for letter. */
import type { Drawing, DrawnLeg, DrawnThing, Point, Role } from './drawing.ts';
import { placed, type Box } from './labels.ts';

/** Around the table, mm, and the height of a letter at a table of 1 m. */
const MARGIN = 70;
const LETTER = 17;

export function svgOf(d: Drawing): string {
  const frame = frameOf(d);
  const letter = LETTER * Math.max(0.6, Math.min(4, frame.w / 1300));
  const page: Page = { letter, x: v => v * 1000, y: v => -v * 1000 };
  const foot = footOf(d, frame, page);
  const top = 1.9 * letter;
  const box: Box = { x: frame.x, y: frame.y - top, w: frame.w, h: frame.h + top + foot.height };
  const parts = [
    tag('title', {}, [escaped(d.title)]),
    tag('style', {}, [STYLE]),
    ...(d.holes ? [holes(d.holes)] : []),
    tag('rect', { class: 'paper', x: n(box.x), y: n(box.y), width: n(box.w), height: n(box.h) }),
    label(d.title, box.x + MARGIN / 2, frame.y + 0.2 * letter, 1.25 * letter, 'title'),
    tag('clipPath', { id: 'frame' }, [tag('rect', { x: n(frame.x), y: n(frame.y), width: n(frame.w), height: n(frame.h) })]),
    ...table(d, page),
    tag('g', { 'clip-path': 'url(#frame)' }, d.legs.flatMap(l => cone(l, page))),
    ...d.things.map(t => outline(t, page)),
    ...d.legs.flatMap(l => line(l, page)),
    ...d.blocked.map(b => cross(b.at, page)),
    ...names(d, frame, page),
    ...foot.parts,
  ];
  return `<?xml version="1.0" encoding="UTF-8"?>\n${tag('svg', { xmlns: 'http://www.w3.org/2000/svg', viewBox: [box.x, box.y, box.w, box.h].map(n).join(' '), width: n(box.w), height: n(box.h), role: 'img' }, parts)}\n`;
}

interface Page {
  readonly letter: number;
  x(v: number): number;
  y(v: number): number;
}

/** Black on white, or the other way about, by what the reader's screen prefers; nothing is told by colour alone. */
const STYLE = `
.paper { fill: #fff } .table { fill: #fbfaf6; stroke: #333; stroke-width: 3 } .hole { fill: #bbb }
.thing { fill: #e9e6dd; stroke: #333; stroke-width: 1.5; stroke-linejoin: round } .thing.above { fill: none; stroke-dasharray: 8 5 } .face { stroke: #000; stroke-width: 4.5; stroke-linecap: round }
.light { stroke: #000; stroke-width: 2; fill: none } .object { stroke-dasharray: 14 6 } .scattered { stroke-dasharray: 2 6; stroke-linecap: round } .other { stroke-dasharray: 14 5 2 5 }
.common { stroke-width: 3 } .arrow { fill: #000; stroke: none } .cone { fill: #000; fill-opacity: 0.05 } .useful { fill: #000; fill-opacity: 0.08 }
.blocked { stroke: #b00020; stroke-width: 4; fill: none } text { fill: #000; font-family: Georgia, "DejaVu Serif", serif } .quiet { fill: #555 } .mark { stroke: #333; stroke-width: 2; fill: none }
.halo { stroke: #fbfaf6; stroke-width: 5; stroke-linejoin: round; paint-order: stroke }
@media (prefers-color-scheme: dark) {
.paper { fill: #16181a } .table { fill: #1d2023; stroke: #ccc } .hole { fill: #4a4e52 } .thing { fill: #34383c; stroke: #ccc } .thing.above { fill: none } .face, .light { stroke: #fff } .arrow { fill: #fff } .cone, .useful { fill: #fff }
.blocked { stroke: #ff8a80 } text { fill: #fff } .quiet { fill: #aaa } .mark { stroke: #ccc } .halo { stroke: #1d2023 }
}
`;

/** The table, everything that stands somewhere, and the legs; the light may be wider than that. */
function frameOf(d: Drawing): Box {
  const points: Point[] = [...(d.table ? [[0, 0] as Point, d.table] : []), ...d.things.flatMap(t => [t.at, ...t.outline]), ...d.legs.flatMap(l => [l.from, l.to])];
  const [xs, ys] = [points.map(p => p[0] * 1000), points.map(p => -p[1] * 1000)];
  const [x, y] = [least(xs) - MARGIN, least(ys) - MARGIN];
  return { x, y, w: Math.max(300, most(xs) + MARGIN - x), h: Math.max(200, most(ys) + MARGIN - y) };
}
const least = (v: readonly number[]): number => v.reduce((a, b) => Math.min(a, b), Infinity);
const most = (v: readonly number[]): number => v.reduce((a, b) => Math.max(a, b), -Infinity);

function holes(spacing: number): string {
  const s = spacing * 1000;
  return tag('defs', {}, [tag('pattern', { id: 'holes', width: n(s), height: n(s), patternUnits: 'userSpaceOnUse', patternTransform: `translate(${n(-s / 2)} ${n(-s / 2)})` }, [tag('circle', { class: 'hole', cx: n(s / 2), cy: n(s / 2), r: n(Math.min(2.5, s / 8)) })])]);
}

/** Edge, holes, and the coordinates along two edges. */
function table(d: Drawing, page: Page): string[] {
  if (!d.table) return [];
  const [w, h] = [d.table[0] * 1000, d.table[1] * 1000];
  // A hole that the edge would cut is none.
  const holed = (spacing = 0): string[] => (spacing > 0 && Math.min(w, h) > spacing * 1000 ? [tag('rect', { class: 'holes', x: n(spacing * 500), y: n(spacing * 500 - h), width: n(w - spacing * 1000), height: n(h - spacing * 1000), fill: 'url(#holes)' })] : []);
  const size = 0.75 * page.letter;
  const step = Math.max(w, h) > 1600 ? 400 : 200;
  const along = (to: number, at: (v: number) => string): string[] => Array.from({ length: Math.min(60, Math.floor(to / step) + 1) }, (_, i) => at(i * step));
  return [
    tag('rect', { class: 'table', x: '0', y: n(-h), width: n(w), height: n(h) }), ...holed(d.holes),
    ...along(w, v => label(String(v), v, 1.4 * size, size, 'quiet', 'middle')), ...along(h, v => label(String(v), -0.5 * size, -v + size / 3, size, 'quiet', 'end')),
  ];
}

/** The width of the light, and in it the part that serves what it is meant for. */
function cone(l: DrawnLeg, page: Page): string[] {
  return WIDTHS.flatMap(([which]) => {
    if (!shows(l, which)) return [];
    const [a, b] = l[which];
    const [dx, dy, length] = across(l);
    if (length === 0) return [];
    const side = (p: Point, r: number): Point => [p[0] - dy * r, p[1] + dx * r];
    return [tag('path', { class: which === 'whole' ? 'cone' : 'useful', d: shape([side(l.from, a), side(l.to, b), side(l.to, -b), side(l.from, -a)], page) })];
  });
}
/** Light that an object or a hologram sends on has no edge of its own: of it only the part that comes to the plate is drawn. */
function shows(l: DrawnLeg, which: 'whole' | 'useful'): boolean {
  const wide = Math.max(...l[which]) >= 0.002;
  return wide && (which === 'whole' ? l.role !== 'scattered' : l.role === 'scattered' || !same(l.whole, l.useful));
}
const WIDTHS = [['whole', 'width of the light'], ['useful', 'of it, the part that is used']] as const;
const same = (a: readonly number[], b: readonly number[]): boolean => a.every((v, i) => Math.abs(v - b[i]!) < 1e-9);

function across(l: DrawnLeg): [number, number, number] {
  const [x, y] = [l.to[0] - l.from[0], l.to[1] - l.from[1]];
  const length = Math.hypot(x, y);
  return length < 1e-9 ? [0, 0, 0] : [x / length, y / length, length];
}

/** A leg, with an arrowhead past its middle. What goes straight up or down is a point from above. */
function line(l: DrawnLeg, page: Page): string[] {
  const [dx, dy, length] = across(l);
  if (length === 0) return [];
  const [x, y] = [page.x(l.from[0] + dx * length * 0.58), page.y(l.from[1] + dy * length * 0.58)];
  const s = Math.min(13, (length * 1000) / 3);
  const [ux, uy] = [dx * s, -dy * s];
  return [
    tag('line', { class: `light ${l.role}`, x1: n(page.x(l.from[0])), y1: n(page.y(l.from[1])), x2: n(page.x(l.to[0])), y2: n(page.y(l.to[1])) }),
    tag('path', { class: 'arrow', d: `M${n(x + ux)} ${n(y + uy)}L${n(x - ux * 0.6 - uy * 0.5)} ${n(y - uy * 0.6 + ux * 0.5)}L${n(x - ux * 0.6 + uy * 0.5)} ${n(y - uy * 0.6 - ux * 0.5)}Z` }),
  ];
}

function outline(t: DrawnThing, page: Page): string {
  const [a, b] = t.face;
  return tag('g', {}, [
    tag('title', {}, [escaped(`${t.kind} ${t.name}, (${Math.round(t.at[0] * 1000)}, ${Math.round(t.at[1] * 1000)}) mm`)]),
    ...(t.outline.length > 2 ? [tag('path', { class: t.above ? 'thing above' : 'thing', d: shape(t.outline, page) })] : [tag('circle', { class: 'thing', cx: n(page.x(t.at[0])), cy: n(page.y(t.at[1])), r: '8' })]),
    ...(a && b ? [tag('line', { class: 'face', x1: n(page.x(a[0])), y1: n(page.y(a[1])), x2: n(page.x(b[0])), y2: n(page.y(b[1])) })] : []),
  ]);
}

function cross(at: Point, page: Page): string {
  const [x, y, s] = [page.x(at[0]), page.y(at[1]), 0.8 * page.letter];
  return tag('g', { class: 'blocked' }, [tag('circle', { cx: n(x), cy: n(y), r: n(1.5 * s) }), tag('path', { d: `M${n(x - s)} ${n(y - s)}L${n(x + s)} ${n(y + s)}M${n(x - s)} ${n(y + s)}L${n(x + s)} ${n(y - s)}` })]);
}

function names(d: Drawing, frame: Box, page: Page): string[] {
  const boxes = d.things.map(t => boxOf(t.outline.length > 0 ? t.outline : [t.at], page));
  const [w, h] = d.table ?? [0, 0];
  const edge: readonly Point[] = d.table ? [[0, 0], [w, 0], [w, h], [0, h]] : [];
  const lines = [...d.legs.map(l => [l.from, l.to] as const), ...edge.map((p, i) => [p, edge[(i + 1) % 4]!] as const)].map(([a, b]) => [[page.x(a[0]), page.y(a[1])], [page.x(b[0]), page.y(b[1])]] as const);
  const wanted = d.things.map((t, i) => ({ own: boxes[i]!, w: widthOf(t.name, page.letter), h: page.letter }));
  return placed(wanted, { boxes, lines, frame }).map((b, i) => label(d.things[i]!.name, b.x + b.w / 2, b.y + 0.8 * b.h, page.letter, 'halo', 'middle'));
}
const widthOf = (text: string, letter: number): number => [...text].length * letter * 0.62;

function boxOf(points: readonly Point[], page: Page): Box {
  const [xs, ys] = [points.map(p => page.x(p[0])), points.map(p => page.y(p[1]))];
  return { x: least(xs), y: least(ys), w: most(xs) - least(xs), h: most(ys) - least(ys) };
}

/** What the lines mean; in a transfer the first hologram stands where the object stood. */
function roles(d: Drawing): readonly (readonly [Role, string])[] {
  const lit = d.things.some(t => t.kind === 'hologram') && !d.things.some(t => t.kind === 'object') ? 'the first hologram' : 'the object';
  return [['common', 'before the arms part'], ['reference', 'reference'], ['object', `light for ${lit}`], ['scattered', `light from ${lit}`], ['other', 'other light']];
}

/** Scale, beam height, what the lines mean, and what stands in the way. */
function footOf(d: Drawing, frame: Box, page: Page): { readonly height: number; readonly parts: readonly string[] } {
  const size = 0.85 * page.letter;
  const left = frame.x + MARGIN / 2;
  let y = frame.y + frame.h + size;
  const parts: string[] = [];
  const bar = frame.w > 1200 ? 200 : 100;
  parts.push(tag('path', { class: 'mark', d: `M${n(left)} ${n(y - 6)}v12M${n(left)} ${n(y)}h${n(bar)}M${n(left + bar)} ${n(y - 6)}v12` }), label(`${bar} mm`, left + bar + 12, y + size / 3, size, ''));
  if (d.beamHeight !== undefined) parts.push(label(`beams ${n(d.beamHeight * 1000)} mm above the table`, left + bar + 12 + 6 * size, y + size / 3, size, ''));
  y += 1.9 * size;
  let x = left;
  const sample = (words: string, drawn: () => string[]): void => {
    const w = 60 + widthOf(words, size) + 30;
    if (x + w > frame.x + frame.w && x > left) { x = left; y += 1.6 * size; }
    parts.push(...drawn(), label(words, x + 58, y + size / 3, size, ''));
    x += w;
  };
  for (const [role, words] of roles(d)) if (d.legs.some(l => l.role === role)) sample(words, () => [tag('line', { class: `light ${role}`, x1: n(x), y1: n(y), x2: n(x + 48), y2: n(y) })]);
  if (x > left && d.legs.some(l => WIDTHS.some(([which]) => shows(l, which)))) { x = left; y += 1.6 * size; }
  // The part that is used is drawn over the whole of the light, and so is its sample.
  for (const [which, words] of WIDTHS) if (d.legs.some(l => shows(l, which))) sample(words, () => (which === 'whole' ? ['cone'] : ['cone', 'useful']).map(name => tag('rect', { class: name, x: n(x), y: n(y - 0.4 * size), width: '48', height: n(0.8 * size) })));
  for (const words of [...d.blocked.map(b => b.words), ...d.notes, 'Mounts, and sizes that are not written, are drawn as common practice has them.']) { y += 1.6 * size; parts.push(label(words, left, y + size / 3, size, 'quiet')); }
  return { height: y + 1.5 * size - (frame.y + frame.h), parts };
}

const shape = (points: readonly Point[], page: Page): string => `${points.map((p, i) => `${i === 0 ? 'M' : 'L'}${n(page.x(p[0]))} ${n(page.y(p[1]))}`).join('')}Z`;

function label(text: string, x: number, y: number, size: number, name: string, anchor: 'start' | 'middle' | 'end' = 'start'): string {
  return tag('text', { ...(name ? { class: name } : {}), x: n(x), y: n(y), 'font-size': n(size), ...(anchor === 'start' ? {} : { 'text-anchor': anchor }) }, [escaped(text)]);
}

function tag(name: string, attributes: Readonly<Record<string, string>>, children: readonly string[] = []): string {
  const open = `<${name}${Object.entries(attributes).map(([k, v]) => ` ${k}="${escaped(v)}"`).join('')}`;
  if (children.length === 0) return `${open}/>`;
  return children.length === 1 && !children[0]!.startsWith('<') ? `${open}>${children[0]!}</${name}>` : `${open}>\n${children.join('\n')}\n</${name}>`;
}

/** Text that is nothing but text: marks of SVG are written as numbers, and what XML 1.0 has no place for, or what turns the order of letters, as a dot. */
const escaped = (text: string): string => text.replace(/[\p{Cc}\p{Cs}\p{Bidi_Control}\ufffe\uffff]/gu, '·').replace(/[&<>"']/g, c => `&#${c.charCodeAt(0)};`);

/** A number with at most two decimals, and never −0. */
const n = (v: number): string => String(Math.round(v * 100) / 100 + 0);
