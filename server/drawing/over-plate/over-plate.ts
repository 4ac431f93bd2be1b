/** Maps over a plate: light, beam ratio, and how brightly the middle of the object records, with lines of the same value and the figures of middle and corners. */
import { millimetres, percent, plain } from '../../model/show.ts';
import { parseUnit } from '../../model/units.ts';
import type { Graph } from '../../results/graph.ts';
import { overPlate, unmapped, type OverPlate, type OverWhat } from '../../results/maps/over-plate.ts';
import type { Results } from '../../results/plan.ts';
import { isBent, sample } from '../../results/sampling.ts';
import { bandOf, figure } from '../../results/shown.ts';
import { label, mark, n, shape, told, type Box, type Mark, type Point, type Sheet } from '../marks.ts';
import { widthOf } from '../plan/labels.ts';
import { broken } from '../seen/legend.ts';
import { mapColour } from '../tones.ts';
import { plateFor, type Drawn, type Look } from '../view.ts';
import { contoursOf, labelPlace } from './contours.ts';
import { levelsOf, lightnessIn } from './levels.ts';

/** The longer side of the plate; room beside it; the height of a letter. */
const [SIDE, MARGIN, LETTER] = [560, 70, 17];
const SMALL = 0.85 * LETTER;
/** Light that comes along the plate by less than this has no side that it comes from, to speak of. */
const SQUARELY = 0.03;
/** A share of the brightness that nobody sees: less than one in a hundred of it. */
const NOTHING = 0.01;
const MICRO = parseUnit('µW/cm²')!;

export const mapView = (what: OverWhat) => (r: Results, look: Look): (() => Drawn) | string => {
  const plate = plateFor(r.plates.map(p => p.plate), look, p => unmapped(r, p, what));
  if (typeof plate === 'string') return plate;
  return () => {
    const map = overPlate(r, plate, what);
    return map ? drawn(map, r) : { sheet: blank(`What would be drawn over ${plate.id} has no value somewhere on it.`) };
  };
};

/** A value as people write it. */
export function textOf(map: Pick<OverPlate, 'what' | 'relative'>, value: number): string {
  if (map.relative) return `${plain(value, 2)} times the middle`;
  return map.what === 'light' ? `${plain(value / MICRO.factor, 3)} ${MICRO.text}` : map.what === 'ratio' ? `${plain(value, value < 10 ? 2 : 3)}:1` : percent(value);
}
const levelText = (map: OverPlate, v: number): string => (map.relative ? plain(v, 3) : map.what === 'light' ? plain(v / MICRO.factor, 3) : map.what === 'ratio' ? `${plain(v, 3)}:1` : `${plain(v * 100, 3)} %`);

function drawn(map: OverPlate, { setup, graph }: Results): Drawn {
  const { plate, count, values, words, sides } = map;
  const k = SIDE / Math.max(...sides);
  const says = [`on ${plate.id}, seen from the side that the reference comes from`];
  const [right, up] = map.from ?? [0, 0];
  // Room for the arrow where the reference comes from above or below.
  const upright = Math.abs(up) > Math.abs(right) && Math.hypot(right, up) >= SQUARELY;
  const width = Math.max(sides[0] * k, 0.8 * SIDE);
  const title = words[0]!.toUpperCase() + words.slice(1);
  const lead = [...broken(title, width / 1.35, LETTER).map(line => ({ line, size: 1.25 * LETTER, name: 'letter' })), ...says.flatMap(s => broken(s, width, LETTER)).map(line => ({ line, size: LETTER, name: 'letter quiet' }))];
  let y = 0;
  const head = lead.map(({ line, size, name }) => label(line, 0, (y += 1.5 * size), size, name));
  const box: Box = { x: 0, y: y + (upright && up > 0 ? MARGIN + LETTER : 1.2 * LETTER), w: sides[0] * k, h: sides[1] * k };
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const factor = map.what === 'light' && !map.relative ? MICRO.factor : 1;
  // Brightness is a share of what there could be: what is dark all over is drawn dark, and has no lines.
  const share = map.what === 'brightness';
  const levels = share && most < NOTHING ? [] : levelsOf(share && least < NOTHING ? 0 : least / factor, most / factor).map(v => v * factor);
  const light = lightnessIn(least, share ? 1 : most);
  const colours = [...levels, most].map((to, i) => mapColour(light(((levels[i - 1] ?? least) + to) / 2)));
  const lines = contoursOf(values, count, levels, box);
  const marks: Mark[] = [
    mark('clipPath', { id: 'plate' }, [mark('rect', { x: box.x, y: box.y, width: box.w, height: box.h })]),
    mark('rect', { fill: colours[0]!, x: box.x, y: box.y, width: box.w, height: box.h }),
    mark('g', { 'clip-path': 'url(#plate)' }, lines.flatMap(({ level, rings }, i): Mark[] => (rings.length === 0 ? [] : [mark('path', { class: light(level) > 0.55 ? 'contour' : 'contour-pale', fill: colours[i + 1]!, d: rings.map(ring => shape(ring.slice(0, -1))).join('') })]))),
    mark('rect', { class: 'frame', x: box.x, y: box.y, width: box.w, height: box.h }),
    ...(map.from ? arrow(box, map.from) : []),
  ];
  const spots = figures(map, box);
  const taken: Point[] = spots.map(s => s.at);
  for (const line of lines) {
    const at = labelPlace(line, box, 2.2 * LETTER, taken);
    if (!at) continue;
    taken.push(at);
    marks.push(tag(levelText(map, line.level), at, SMALL, 'letter quiet'));
  }
  for (const s of spots) marks.push(mark('g', {}, [told(s.words), tag(s.text, s.at, LETTER, 'letter')]));
  const foot = legend(map, graph, { levels, colours, least, most }, box.y + box.h + (upright && up < 0 ? MARGIN : LETTER), width);
  const sheet: Box = { x: -MARGIN, y: -LETTER, w: width + 2 * MARGIN, h: foot.end + 2 * LETTER };
  return {
    sheet: { title: `${setup.name}: ${words}`, box: sheet, marks: [mark('rect', { class: 'paper', x: sheet.x, y: sheet.y, width: sheet.w, height: sheet.h }), ...head, ...marks, ...foot.marks] },
    plate: plate.id,
    probe: { box, columns: count, rows: count, values, texts: values.map(v => textOf(map, v)), words, across: awayFrom(sides[0], count, 'to the left', 'to the right'), down: awayFrom(sides[1], count, 'up', 'down') },
  };
}

/** Of so many even steps over a side of the plate, how far each lies from its middle. @param side m */
const awayFrom = (side: number, count: number, before: string, behind: string): string[] => Array.from({ length: count }, (_, i) => {
  const far = (side * (2 * i - (count - 1))) / (2 * (count - 1));
  return far === 0 ? '' : `${millimetres(Math.abs(far))} ${far < 0 ? before : behind}`;
});

/** Middle and corners. */
function figures(map: OverPlate, box: Box): { readonly at: Point; readonly text: string; readonly words: string }[] {
  const last = map.count - 1;
  const [rim, middle] = [1.6 * LETTER, last / 2];
  return ([[0, 0, 'upper left corner'], [last, 0, 'upper right corner'], [middle, middle, 'middle'], [0, last, 'lower left corner'], [last, last, 'lower right corner']] as const).map(([i, j, where]) => {
    const value = map.values[j * map.count + i]!;
    const text = map.relative && where === 'middle' ? '1' : map.relative ? plain(value, 2) : textOf(map, value);
    const reach = rim / 2 + widthOf(text, LETTER) / 2;
    return { at: [box.x + (i === 0 ? reach : i === last ? box.w - reach : box.w / 2), box.y + (j === 0 ? rim : j === last ? box.h - rim : box.h / 2)], text, words: `${where}: ${textOf(map, value)}` };
  });
}

const tag = (text: string, [x, y]: Point, size: number, name: string): Mark => {
  const w = widthOf(text, size) + 0.6 * size;
  return mark('g', {}, [mark('rect', { class: 'tag', x: x - w / 2, y: y - 0.75 * size, width: w, height: 1.4 * size }), label(text, x, y + 0.3 * size, size, name, 'middle')]);
};

/** From where the reference comes, along the plate; nothing where it comes nearly squarely. */
function arrow(box: Box, [x, y]: readonly [number, number]): Mark[] {
  const size = Math.hypot(x, y);
  if (size < SQUARELY) return [];
  const [ux, uy] = [x / size, -y / size];
  const [cx, cy] = [box.x + box.w / 2, box.y + box.h / 2];
  const out = Math.min(box.w / 2 / Math.max(1e-9, Math.abs(ux)), box.h / 2 / Math.max(1e-9, Math.abs(uy)));
  const at = (far: number, beside = 0): Point => [cx + ux * (out + far) - uy * beside, cy + uy * (out + far) + ux * beside];
  const [from, to] = [at(56), at(22)];
  return [mark('g', {}, [
    told('the reference comes from here'),
    mark('line', { class: 'light reference', x1: from[0], y1: from[1], x2: to[0], y2: to[1] }), mark('path', { class: 'arrow arrow-reference', d: shape([at(8), at(24, 7), at(24, -7)]) }),
  ])];
}

interface Scale { readonly levels: readonly number[]; readonly colours: readonly string[]; readonly least: number; readonly most: number }

/** @param top where it begins */
function legend(map: OverPlate, graph: Graph, { levels, colours, least, most }: Scale, top: number, width: number): { readonly marks: Mark[]; readonly end: number } {
  const marks: Mark[] = [];
  let y = top;
  const size = `${millimetres(map.sides[0]).replace(' mm', '')} × ${millimetres(map.sides[1])}`;
  const beside = widthOf(size, SMALL) + 2 * SMALL;
  marks.push(label(size, 0, y + SMALL, SMALL, 'letter quiet'));
  if (map.from && Math.hypot(...map.from) >= SQUARELY) marks.push(mark('line', { class: 'light reference', x1: beside, y1: y + 0.7 * SMALL, x2: beside + 34, y2: y + 0.7 * SMALL }), label('where the reference comes from', beside + 44, y + SMALL, SMALL, 'letter'));
  y += 2 * SMALL;
  const w = width / colours.length;
  colours.forEach((fill, i) => marks.push(mark('rect', { fill, x: i * w, y, width: w, height: 1.3 * SMALL })));
  marks.push(mark('rect', { class: 'frame', x: 0, y, width, height: 1.3 * SMALL }));
  y += 2.5 * SMALL;
  if (levels.length === 0) marks.push(label(`${levelText(map, most)} all over`, width / 2, y, SMALL, 'letter', 'middle'));
  else {
    levels.forEach((v, i) => marks.push(mark('path', { class: 'angle', d: `M${n((i + 1) * w)} ${n(y - 1.2 * SMALL)}v${n(0.3 * SMALL)}` }), label(levelText(map, v), (i + 1) * w, y + 0.1 * SMALL, SMALL, 'letter', 'middle')));
  }
  y += 1.6 * SMALL;
  const unit = map.relative ? 'as a multiple of the middle' : map.what === 'light' ? `in ${MICRO.text}` : map.what === 'ratio' ? 'reference light to object light' : 'of what matched paths give';
  const notes = [
    `${unit}; from ${levelText(map, least)} to ${levelText(map, most)}`,
    ...(map.cell ? [map.unmetered.length > 0 ? `In the middle ${bandText(graph, map.cell)}: predicted, since nobody has metered the ${map.unmetered.join(' and the ')}. How it changes from there is surer than that.` : `In the middle ${bandText(graph, map.cell)}.`] : []),
    ...(map.from ? [] : ['Only angles tell how the light arrives: the side that the reference comes from is taken to be the right, or as it is written.']),
    ...map.notes,
  ];
  notes.forEach((words, i) => { for (const line of broken(words, width / 0.8, LETTER)) { marks.push(label(line, 0, y + 0.8 * SMALL, SMALL, i === 0 ? 'letter' : 'letter quiet')); y += 1.45 * SMALL; } });
  return { marks, end: y };
}

/** A cell with how sure it is. */
function bandText(graph: Graph, cell: NonNullable<OverPlate['cell']>): string {
  const band = isBent(graph, cell) ? sample(graph, cell) : undefined;
  return band && band.draws > 0 ? bandOf(cell, band.low, band.high) : figure(cell, graph.value(cell)!, graph.uncertainty(cell));
}

const blank = (words: string): Sheet => ({ title: words, box: { x: 0, y: 0, w: 600, h: 80 }, marks: [mark('rect', { class: 'paper', x: 0, y: 0, width: 600, height: 80 }), label(words, 20, 45, LETTER, 'letter')] });
