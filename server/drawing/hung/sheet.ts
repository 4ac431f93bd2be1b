/** The picture of a finished hologram as it hangs: lamp, plate, image and viewer to scale, and what each eye sees of it. As wide as a narrow panel, whatever it shows, so that its letters can be read there. */
import { boxOf, label, mark, n, shape, told, type Box, type Mark, type Point, type Sheet } from '../marks.ts';
import { widthOf } from '../plan/labels.ts';
import { eyeBoxes } from './eyes.ts';
import type { Hung, Spot } from './hung.ts';
import { Words } from './words.ts';

/** Width of the sheet, and height of its letters: 9 points in a panel of 300. */
const PAGE = 540;
const LETTER = 17;
const MARGIN = 1.6 * LETTER;
/** What hangs far above or beside is drawn smaller, so that it stays in view. */
const TALLEST = 380;

/** From m to the sheet. */
export interface Scale { readonly k: number; readonly at: (spot: Spot) => Point }

export function hungSheet(h: Hung): Sheet {
  const half = h.plate.sides[1] / 2;
  const spots: Spot[] = [[0, half], [0, -half], h.lamp.at, ...(h.viewer ? [h.viewer.at] : []), ...(h.image ? [h.image.near, h.image.far].flatMap(([x, y]): Spot[] => [[x, y + h.image!.height / 2], [x, y - h.image!.height / 2]]) : []), ...(h.opening ? [h.opening.at] : [])];
  const reach = boxOf(spots.map(([x, y]) => [x * 1000, -y * 1000]));
  const k = Math.min((PAGE - 2 * MARGIN) / Math.max(1, reach.w), TALLEST / Math.max(1, reach.h));
  const scale: Scale = { k, at: ([x, y]) => [x * 1000 * k, -y * 1000 * k] };
  const all: Box = { x: reach.x * k, y: reach.y * k, w: reach.w * k, h: reach.h * k };
  const left = all.x + all.w / 2 - PAGE / 2;
  const words = new Words({ left: left + 0.5 * LETTER, right: left + PAGE - 0.5 * LETTER }, LETTER);
  words.keepOff(...plateLines(h, scale), ...(h.image ? [imageBox(h.image, scale)] : []));
  const shapes = [...light(h, scale), ...sight(h, scale), ...opening(h, scale, words), ...plate(h, scale, words), ...image(h, scale, words), ...lamp(h, scale, words), ...viewer(h, scale, words)];
  const floor = ground(h, scale, Math.max(all.y + all.h, words.bottom), left);
  const eyes = eyeBoxes(h, LETTER);
  const title = wrapped(`${h.title}, from ${h.fromAbove ? 'above' : 'the side'}`, 1.15 * LETTER, PAGE - 2 * LETTER);
  const top = Math.min(all.y, words.top) - (0.8 + 1.4 * title.length) * LETTER;
  const under = floor.bottom + LETTER;
  const [notesX, notesW] = eyes ? [left + eyes.w + 2.4 * LETTER, PAGE - eyes.w - 3.2 * LETTER] : [left + LETTER, PAGE - 2 * LETTER];
  const notes = h.notes.flatMap((t, i) => [...(i > 0 ? [''] : []), ...wrapped(t, 0.95 * LETTER, notesW)]);
  const heights = notes.reduce<number[]>((ys, t) => [...ys, ys.at(-1)! + (t === '' ? 0.5 : 1.3) * LETTER], [under + LETTER]);
  const box: Box = { x: left, y: top, w: PAGE, h: Math.max(heights.at(-1)!, under + (eyes?.h ?? 0)) + 0.6 * LETTER - top };
  return {
    title: h.title, box,
    marks: [
      mark('rect', { class: 'paper', x: box.x, y: box.y, width: box.w, height: box.h }), ...title.map((t, i) => label(t, left + LETTER, top + 1.4 * (i + 1) * LETTER, 1.15 * LETTER, 'letter')),
      ...floor.marks, ...shapes, ...words.marks, ...(eyes ? eyes.marks(left + LETTER, under) : []), ...notes.flatMap((t, i) => (t === '' ? [] : [label(t, notesX, heights[i]!, 0.95 * LETTER, 'letter')])),
    ],
  };
}

function wrapped(text: string, letter: number, width: number): string[] {
  return text.split(' ').reduce<string[]>((lines, word) => {
    const last = lines.at(-1);
    return last !== undefined && widthOf(`${last} ${word}`, letter) < width ? [...lines.slice(0, -1), `${last} ${word}`] : [...lines, word];
  }, []);
}

/** The floor, where the height of the wall tells how far down it is; what is far down is broken off. */
function ground({ middleHeight }: Hung, { k }: Scale, bottom: number, left: number): { readonly marks: Mark[]; readonly bottom: number } {
  if (middleHeight === undefined) return { marks: [], bottom };
  const [real, nearest] = [middleHeight * 1000 * k, bottom + 3 * LETTER];
  const y = Math.min(real, nearest);
  const cut = y - 1.2 * LETTER;
  return {
    bottom: y + 0.6 * LETTER,
    marks: [
      mark('line', { class: 'fine', x1: left + LETTER, y1: y, x2: left + PAGE - LETTER, y2: y }), mark('line', { class: 'level', x1: 0, y1: 0, x2: 0, y2: y }),
      ...(real > nearest ? [0, 0.3].map(d => mark('line', { class: 'fine', x1: -0.5 * LETTER, y1: cut + (d + 0.2) * LETTER, x2: 0.5 * LETTER, y2: cut + (d - 0.2) * LETTER })) : []),
      label('floor', left + LETTER, y - 0.4 * LETTER, 0.9 * LETTER, 'letter quiet'),
    ],
  };
}

const plateLines = ({ plate: p }: Hung, { k }: Scale): Box[] => [{ x: -2, y: -p.sides[1] * 500 * k, w: 4, h: p.sides[1] * 1000 * k }];

/** The light of the lamp on the whole plate. */
function light({ lamp, plate }: Hung, { at }: Scale): Mark[] {
  const [l, a, b] = [at(lamp.at), at([0, plate.sides[1] / 2]), at([0, -plate.sides[1] / 2])];
  return [mark('path', { class: 'cone cone-reference', d: shape([l, a, b]) }), mark('line', { class: 'light reference', x1: l[0], y1: l[1], x2: 0, y2: 0 })];
}

/** From the ends of the image to the eye. */
function sight({ image: i, viewer: v }: Hung, { at, k }: Scale): Mark[] {
  if (!i || !v) return [];
  const [eye, [x, y]] = [at(v.at), at(i.middle)];
  const up = i.height * 500 * k;
  return [mark('path', { class: 'cone cone-object', d: shape([eye, [x, y - up], [x, y + up]]) }), mark('line', { class: 'light object', x1: x, y1: y, x2: eye[0], y2: eye[1] })];
}

function opening({ opening: o }: Hung, { at, k }: Scale, words: Words): Mark[] {
  if (!o) return [];
  const [x, y] = at(o.at);
  const half = Math.max(3, o.height * 500 * k);
  words.below('opening of the master', x, y + half, 'letter quiet halo');
  return [mark('g', {}, [told('where the opening of the master stands'), mark('line', { class: 'guide', x1: x, y1: y - half, x2: x, y2: y + half })])];
}

function plate({ plate: p }: Hung, { k }: Scale, words: Words): Mark[] {
  const h = p.sides[1] * 1000 * k;
  words.above(p.name, 0, -h / 2, 'letter halo');
  return [mark('g', { 'data-item': p.name }, [told(`plate ${p.name}`), mark('line', { class: 'face', x1: 0, y1: -h / 2, x2: 0, y2: h / 2 })]), mark('line', { class: 'angle', x1: -3 * LETTER, y1: 0, x2: 3 * LETTER, y2: 0 })];
}

function imageBox({ near, middle, far, height }: NonNullable<Hung['image']>, { at, k }: Scale): Box {
  const [a, m, b] = [at(near), at(middle), at(far)];
  const up = Math.max(2, height * 500 * k);
  return { x: Math.min(a[0], b[0]), y: Math.min(a[1], b[1], m[1]) - up, w: Math.max(3, Math.abs(b[0] - a[0])), h: 2 * up + Math.abs(a[1] - b[1]) };
}

function image({ image: i }: Hung, scale: Scale, words: Words): Mark[] {
  if (!i) return [];
  const { x, y, w, h } = imageBox(i, scale);
  words.below(i.words, x + w / 2, y + h, 'letter letter-object halo');
  return [mark('g', {}, [told(i.words), mark('rect', { class: 'used-object', x, y, width: w, height: h, rx: Math.min(w, h) / 4 }), mark('rect', { class: 'fine object', x, y, width: w, height: h, rx: Math.min(w, h) / 4 })])];
}

function lamp({ lamp: l }: Hung, { at }: Scale, words: Words): Mark[] {
  const [x, y] = at(l.at);
  const [r, side] = [0.5 * LETTER, Math.sign(x) || 1];
  const reach = Math.min(4.5 * LETTER, 0.6 * Math.hypot(x, y));
  const turn = Math.atan2(-y, -x);
  // The angle between the light and the normal, at the plate.
  const arc: Point = [reach * Math.cos(Math.atan2(y, x)), reach * Math.sin(Math.atan2(y, x))];
  const out = reach + LETTER;
  words[y < 0 ? 'above' : 'below'](l.words, x, y < 0 ? y - r : y + r, 'letter letter-reference halo');
  words.beside(`${Math.round((l.angle * 180) / Math.PI)}°`, side * out * Math.cos(l.angle / 2), Math.sign(y || -1) * out * Math.sin(l.angle / 2) + 0.3 * LETTER);
  return [
    mark('path', { class: 'angle', d: `M${n(side * reach)} 0A${n(reach)} ${n(reach)} 0 0 ${(y < 0) === (side < 0) ? 1 : 0} ${n(arc[0])} ${n(arc[1])}` }),
    mark('g', { 'data-item': l.name }, [told(`lamp ${l.words}`), mark('circle', { class: 'bare', cx: x, cy: y, r }), mark('line', { class: 'fine', x1: x + r * Math.cos(turn), y1: y + r * Math.sin(turn), x2: x + 2 * r * Math.cos(turn), y2: y + 2 * r * Math.sin(turn) })]),
  ];
}

/** An eye, looking to the left. */
function viewer({ viewer: v }: Hung, { at }: Scale, words: Words): Mark[] {
  if (!v) return [];
  const [x, y] = at(v.at);
  const r = 0.55 * LETTER;
  words.above(v.words, x, y - r, 'letter halo');
  return [mark('g', { 'data-item': v.name }, [told(`viewer ${v.words}`), mark('path', { class: 'fine', d: `M${n(x + 1.6 * r)} ${n(y - r)}L${n(x)} ${n(y)}L${n(x + 1.6 * r)} ${n(y + r)}` }), mark('circle', { class: 'solid', cx: x + 0.8 * r, cy: y, r: 0.35 * r })])];
}
