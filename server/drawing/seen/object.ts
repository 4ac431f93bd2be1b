/** The objects before an eye, as marks: each part in the grey of the brightness with which it records; hatched where no light falls on it. */
import { label, mark, n, shape, told, type Box, type Mark, type Point } from '../marks.ts';
import { greyOf, lightnessOf, STOPS } from '../tones.ts';
import type { SeenObject } from '../../results/maps/seen.ts';
import type { SeenShape, Stage } from './project.ts';

/** Shades to a stop. */
const SHADES = 8;
/** Parts are drawn a little larger than they are, so that no line of the ground shows between them. */
const OVER = 0.8;

/** The patterns of what is not told by its grey. */
export const PATTERNS: Mark = mark('defs', {}, [
  mark('pattern', { id: 'unlit', width: 7, height: 7, patternUnits: 'userSpaceOnUse', patternTransform: 'rotate(45)' }, [mark('rect', { class: 'night', x: 0, y: 0, width: 7, height: 7 }), mark('line', { class: 'hatch', x1: 0, y1: 0, x2: 0, y2: 7 })]),
  mark('pattern', { id: 'untold', width: 9, height: 9, patternUnits: 'userSpaceOnUse' }, [mark('circle', { class: 'dot', cx: 2.2, cy: 2.2, r: 1.1 }), mark('circle', { class: 'dot', cx: 6.7, cy: 6.7, r: 1.1 })]),
]);

/** What an eye sees, in a dark square. */
export function eyeMarks(stage: Stage, shapes: readonly SeenShape[], box: Box, id: string): Mark[] {
  const k = box.w / (2 * stage.reach);
  const on = ([x, y]: Point): Point => [box.x + box.w / 2 + x * k, box.y + box.h / 2 + y * k];
  return [
    mark('clipPath', { id }, [mark('rect', { x: box.x, y: box.y, width: box.w, height: box.h })]),
    mark('rect', { class: 'night', x: box.x, y: box.y, width: box.w, height: box.h }),
    mark('g', { 'clip-path': `url(#${id})` }, shapes.map(s => objectMarks(s, on, k))),
  ];
}

function objectMarks(s: SeenShape, on: (p: Point) => Point, k: number): Mark {
  const { of } = s;
  const marks: Mark[] = [];
  const sheets = of.outlines.length > 0;
  const fills = fillsOf(of);
  // One path for each shade: of a thing that is nowhere hollow no part hides another.
  for (const rim of sheets ? [true, false] : [false]) {
    const shades = new Map<string, string[]>();
    for (const p of s.parts) {
      if (sheets && p.rim !== rim) continue;
      const fill = fills[p.patch]!;
      if (!sheets) { const [x, y] = on(p.corners[0]!); marks.push(mark('circle', { fill, cx: x, cy: y, r: dotOf(of, k) })); continue; }
      let d = shades.get(fill);
      if (!d) shades.set(fill, d = []);
      d.push(ring(grown(p.corners.map(on))));
    }
    for (const [fill, d] of [...shades].sort(([a], [b]) => (a < b ? -1 : 1))) marks.push(mark('path', { fill, d: d.join('') }));
  }
  if (!of.bright && s.outline.length > 0) marks.push(mark('path', { fill: 'url(#untold)', d: shape(s.outline.map(on)) }));
  if (s.outline.length > 0) marks.push(mark('path', { class: 'rim', d: shape(s.outline.map(on)) }));
  const worst = darkestSeen(s);
  if (worst) { const [x, y] = on(worst); marks.push(mark('circle', { class: 'spot', cx: x, cy: y, r: 9 })); }
  return mark('g', { 'data-item': of.object.id }, [told(of.object.id), ...marks]);
}

/** Single points are no larger than a point; points that fill a space share the front of it. */
const dotOf = (of: SeenObject, k: number): number => (of.patches.length < 60 ? 4 : Math.max(1.2, Math.min(6, 0.4 * Math.sqrt(of.patches[0]!.area) * k)));

/** What is told of a part: by grey what of its light is recorded, or where that is not known what light there is. */
export function fillOf({ bright, light }: Pick<SeenObject, 'bright' | 'light'>, patch: number): string {
  if (!(light[patch]! > 0)) return 'url(#unlit)';
  const at = Math.round(lightnessOf((bright ?? light)[patch]!) * STOPS * SHADES) / (STOPS * SHADES);
  return greyOf(2 ** (STOPS * (at - 1)));
}

/** Where the eye is changes none of them. */
const known = new WeakMap<SeenObject, readonly string[]>();
function fillsOf(of: SeenObject): readonly string[] {
  let fills = known.get(of);
  if (!fills) known.set(of, fills = of.patches.map((_, i) => fillOf(of, i)));
  return fills;
}

/** Where the part that records worst lies, where the eye sees it. */
function darkestSeen({ of, faces, place }: SeenShape): Point | undefined {
  const { darkest, patches } = of;
  if (!darkest) return undefined;
  const off = patches.map(({ point: p }) => Math.hypot(p[0] - darkest.at[0], p[1] - darkest.at[1], p[2] - darkest.at[2]));
  const nearest = off.reduce((best, d, i) => (d < off[best]! ? i : best), 0);
  return faces[nearest]! > 0 ? place(darkest.at) : undefined;
}

function grown(corners: readonly Point[]): Point[] {
  let [x, y] = [0, 0];
  for (const p of corners) { x += p[0] / corners.length; y += p[1] / corners.length; }
  return corners.map(([a, b]) => {
    const [dx, dy] = [a - x, b - y];
    const l = Math.sqrt(dx * dx + dy * dy);
    return l > 0 ? [a + (dx / l) * OVER, b + (dy / l) * OVER] : [a, b];
  });
}

/** A closed line, to a tenth of a unit: of hundreds of parts the rest would only make the picture long. */
const ring = (points: readonly Point[]): string => `${points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${Math.round(10 * x) / 10} ${Math.round(10 * y) / 10}`).join('')}Z`;

/** A small plate with the eyes on it. */
export function plateMarks(stage: Stage, eyes: readonly Point[], x: number, y: number, h: number, words: string, letter: number): { readonly marks: Mark[]; readonly w: number } {
  const [width, height] = [Math.hypot(...stage.view.right), Math.hypot(...stage.view.up)];
  const k = Math.min(h / height, (2.2 * h) / width);
  const [w, tall] = [k * width, k * height];
  const dots = eyes.map(([a, b]) => mark('circle', { class: 'solid', cx: x + (w * (1 + a)) / 2, cy: y + (tall * (1 - b)) / 2, r: 4 }));
  return { w, marks: [mark('g', {}, [told(words), mark('rect', { class: 'glass', x, y, width: w, height: tall }), mark('path', { class: 'angle', d: `M${n(x + w / 2)} ${n(y)}v${n(tall)}M${n(x)} ${n(y + tall / 2)}h${n(w)}` }), ...dots]), label(words, x + w + 0.7 * letter, y + tall / 2 + letter / 3, letter, 'letter')] };
}
