/** The picture of a finished hologram as it hangs: lamp, plate, image and viewer to scale, and what each eye sees of it. */
import { boxOf, label, mark, n, shape, told, type Box, type Mark, type Point, type Sheet } from '../marks.ts';
import { widthOf } from '../plan/labels.ts';
import type { Hung, Spot } from './hung.ts';

const LETTER = 17;
/** Distance of eyes, m: common practice. */
const EYES = 0.065;
const at = ([x, y]: Spot): Point => [x * 1000, -y * 1000];

export function hungSheet(h: Hung): Sheet {
  const half = h.plate.sides[1] / 2;
  const floor: Spot[] = h.middleHeight === undefined ? [] : [[0, -h.middleHeight]];
  const spots: Spot[] = [[0, half], [0, -half], h.lamp.at, ...(h.viewer ? [h.viewer.at] : []), ...(h.image ? [h.image.near, h.image.far] : []), ...(h.opening ? [h.opening.at] : []), ...floor];
  const all = boxOf(spots.map(at));
  const letter = LETTER * Math.max(0.6, Math.min(6, Math.max(all.w, 0.7 * all.h) / 680));
  const words = [h.lamp.words, h.viewer?.words ?? '', h.image?.words ?? ''].map(w => widthOf(w, letter));
  const pad = Math.max(4 * letter, Math.max(...words) / 2 + letter);
  const eyes = h.image && h.viewer ? eyeBoxes(h, letter) : undefined;
  const top = all.y - 5 * letter;
  // The words of the viewer begin above the eye.
  const right = Math.max(all.x + all.w + pad, h.viewer ? at(h.viewer.at)[0] + widthOf(h.viewer.words, letter) : 0);
  const below = all.y + all.h + 3 * letter;
  const footAt = below + (eyes ? eyes.h + 3.2 * letter : 0);
  const foot = h.notes.flatMap(t => wrapped(t, letter, all.w + 2 * pad));
  const box: Box = { x: all.x - pad, y: top - 2.2 * letter, w: right - all.x + pad, h: footAt + 1.4 * foot.length * letter - top + 3.2 * letter };
  const wide: Box = { ...box, w: Math.max(box.w, widthOf(h.title, 1.25 * letter) + 2 * letter, (eyes?.w ?? 0) + 2 * letter) };
  return {
    title: h.title, box: wide,
    marks: [
      mark('rect', { class: 'paper', x: wide.x, y: wide.y, width: wide.w, height: wide.h }), label(`${h.title}, from ${h.fromAbove ? 'above' : 'the side'}`, wide.x + letter, top - 0.4 * letter, 1.25 * letter, 'letter'),
      ...ground(h, all, pad), ...light(h), ...sight(h), ...opening(h, letter), ...plate(h, letter), ...image(h, letter), ...lamp(h, letter), ...viewer(h, letter),
      ...(eyes ? eyes.marks(wide.x + letter, below + 1.6 * letter) : []), ...foot.map((t, i) => label(t, wide.x + letter, footAt + (0.6 + 1.4 * i) * letter, 0.95 * letter, 'letter')),
    ],
  };
}

function wrapped(text: string, letter: number, width: number): string[] {
  return text.split(' ').reduce<string[]>((lines, word) => {
    const last = lines.at(-1);
    return last !== undefined && widthOf(`${last} ${word}`, 0.95 * letter) < width - 2 * letter ? [...lines.slice(0, -1), `${last} ${word}`] : [...lines, word];
  }, []);
}

/** The floor, where the height of the wall tells how far down it is. */
function ground({ middleHeight }: Hung, all: Box, pad: number): Mark[] {
  if (middleHeight === undefined) return [];
  const y = middleHeight * 1000;
  return [mark('line', { class: 'fine', x1: all.x - 0.6 * pad, y1: y, x2: all.x + all.w + 0.6 * pad, y2: y }), mark('line', { class: 'level', x1: 0, y1: 0, x2: 0, y2: y })];
}

/** The light of the lamp on the whole plate. */
function light({ lamp, plate }: Hung): Mark[] {
  const [l, a, b] = [at(lamp.at), at([0, plate.sides[1] / 2]), at([0, -plate.sides[1] / 2])];
  return [mark('path', { class: 'cone cone-reference', d: shape([l, a, b]) }), mark('line', { class: 'light reference', x1: l[0], y1: l[1], x2: 0, y2: 0 })];
}

/** From the ends of the image to the eye. */
function sight({ image: i, viewer: v }: Hung): Mark[] {
  if (!i || !v) return [];
  const eye = at(v.at);
  const [x, y] = at(i.middle);
  const [a, b]: readonly [Point, Point] = [[x, y - i.height * 500], [x, y + i.height * 500]];
  return [mark('path', { class: 'cone cone-object', d: shape([eye, a, b]) }), mark('line', { class: 'light object', x1: x, y1: y, x2: eye[0], y2: eye[1] })];
}

function opening({ opening: o }: Hung, letter: number): Mark[] {
  if (!o) return [];
  const [x, y] = at(o.at);
  return [mark('g', {}, [told('where the opening of the master stands'), mark('line', { class: 'guide', x1: x, y1: y - o.height * 500, x2: x, y2: y + o.height * 500 }), label('opening of the master', x, y + o.height * 500 + 1.4 * letter, 0.8 * letter, 'letter quiet halo', 'middle')])];
}

function plate({ plate: p }: Hung, letter: number): Mark[] {
  const h = p.sides[1] * 1000;
  return [mark('g', { 'data-item': p.name }, [told(`plate ${p.name}`), mark('line', { class: 'face', x1: 0, y1: -h / 2, x2: 0, y2: h / 2 })]), mark('line', { class: 'angle', x1: -3 * letter, y1: 0, x2: 3 * letter, y2: 0 }), label(p.name, 0, -h / 2 - 0.5 * letter, letter, 'letter halo', 'middle')];
}

function image({ image: i }: Hung, letter: number): Mark[] {
  if (!i) return [];
  const [a, m, b] = [at(i.near), at(i.middle), at(i.far)];
  const up = i.height * 500;
  const thick = Math.max(2, Math.abs(b[0] - a[0]));
  const [left, over] = [Math.min(a[0], b[0]), Math.min(a[1], b[1], m[1]) - up];
  return [mark('g', {}, [told(i.words), mark('rect', { class: 'light object', x: left, y: over, width: thick, height: 2 * up + Math.abs(a[1] - b[1]), rx: Math.min(thick, up) / 3 })]), label(i.words, m[0], m[1] + up + 1.3 * letter, 0.9 * letter, 'letter letter-object halo', 'middle')];
}

function lamp({ lamp: l }: Hung, letter: number): Mark[] {
  const [x, y] = at(l.at);
  const [r, side] = [0.55 * letter, Math.sign(x) || 1];
  const reach = 5 * letter;
  const turn = Math.atan2(-y, -x);
  // The angle between the light and the normal, at the plate.
  const arc: Point = [reach * Math.cos(Math.atan2(y, x)), reach * Math.sin(Math.atan2(y, x))];
  const degrees = `${Math.round((l.angle * 180) / Math.PI)}°`;
  return [
    mark('path', { class: 'angle', d: `M${n(side * reach)} 0A${n(reach)} ${n(reach)} 0 0 ${(y < 0) === (side < 0) ? 1 : 0} ${n(arc[0])} ${n(arc[1])}` }), label(degrees, side * 6.2 * letter * Math.cos(l.angle / 2), Math.sign(y || -1) * 6.2 * letter * Math.sin(l.angle / 2) + 0.3 * letter, 0.9 * letter, 'letter halo', 'middle'),
    mark('g', { 'data-item': l.name }, [told(`lamp ${l.words}`), mark('circle', { class: 'bare', cx: x, cy: y, r }), mark('line', { class: 'fine', x1: x + r * Math.cos(turn), y1: y + r * Math.sin(turn), x2: x + 2 * r * Math.cos(turn), y2: y + 2 * r * Math.sin(turn) })]),
    label(l.words, x, y < 0 ? y - 1.1 * letter : y + 1.9 * letter, 0.9 * letter, 'letter letter-reference halo', 'middle'),
  ];
}

/** An eye, looking to the left. */
function viewer({ viewer: v }: Hung, letter: number): Mark[] {
  if (!v) return [];
  const [x, y] = at(v.at);
  const r = 0.6 * letter;
  return [
    mark('g', { 'data-item': v.name }, [told(`viewer ${v.words}`), mark('path', { class: 'fine', d: `M${n(x + 1.6 * r)} ${n(y - r)}L${n(x)} ${n(y)}L${n(x + 1.6 * r)} ${n(y + r)}` }), mark('circle', { class: 'solid', cx: x + 0.8 * r, cy: y, r: 0.35 * r })]),
    label(v.words, x - letter, y - 1.3 * letter, 0.9 * letter, 'letter halo'),
  ];
}

/** What the left and the right eye see: the plate as a window, and the image through it, both to one scale. */
function eyeBoxes({ plate: p, image: i, viewer: v }: Hung, letter: number): { readonly w: number; readonly h: number; readonly marks: (x: number, y: number) => Mark[] } {
  const [w, h] = p.sides.map(s => s * 1000) as [number, number];
  const scale = (11 * letter) / h;
  const [pw, ph, gap] = [w * scale, h * scale, 1.4 * letter];
  const away = v!.distance + i!.place;
  // Where lines from the eye to the middle and the ends of the image meet the plate.
  const share = away > 1e-3 ? v!.distance / away : 0;
  const seen = (eye: number): Box => ({ x: ((eye * i!.place) / Math.max(1e-3, away) - (i!.width / 2) * share) * 1000 * scale, y: -(i!.height / 2) * share * 1000 * scale, w: i!.width * share * 1000 * scale, h: i!.height * share * 1000 * scale });
  const one = (eye: number, words: string, x: number, y: number): Mark[] => {
    const b = seen(eye);
    const [cx, cy] = [x + pw / 2, y + ph / 2];
    const [l, t] = [Math.max(x, cx + b.x), Math.max(y, cy + b.y)];
    const [r, d] = [Math.min(x + pw, cx + b.x + b.w), Math.min(y + ph, cy + b.y + b.h)];
    return [
      label(words, cx, y - 0.5 * letter, 0.85 * letter, 'letter quiet', 'middle'), mark('rect', { class: 'night', x, y, width: pw, height: ph }),
      ...(r > l && d > t ? [mark('rect', { class: 'rim', x: l, y: t, width: r - l, height: d - t, fill: 'none' }), ...hatched(l, t, r - l, d - t, letter)] : []),
    ];
  };
  return { w: 2 * pw + gap, h: ph, marks: (x, y) => [...one(-EYES / 2, 'the left eye sees', x, y), ...one(EYES / 2, 'the right eye sees', x + pw + gap, y)] };
}

function hatched(x: number, y: number, w: number, h: number, letter: number): Mark[] {
  const step = 0.6 * letter;
  const count = Math.min(60, Math.floor(w / step));
  return Array.from({ length: count }, (_, i) => mark('line', { class: 'hatch', x1: x + (i + 1) * step, y1: y, x2: x + (i + 1) * step, y2: y + h }));
}
