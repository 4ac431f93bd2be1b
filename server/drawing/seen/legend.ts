/** Below the object: what its greys mean, in stops and in words, and what is left out. */
import { BANDS } from '../../checks/brightness.ts';
import { DARK } from '../../checks/paths/arms-mismatched.ts';
import { percent, show } from '../../model/show.ts';
import { LENGTH } from '../../model/units.ts';
import { label, mark, n, type Mark } from '../marks.ts';
import { widthOf } from '../plan/labels.ts';
import type { Results } from '../../results/plan.ts';
import { greyOf, STOPS } from '../tones.ts';
import type { SeenShape, Stage } from './project.ts';

export function legendMarks(stage: Stage, seen: readonly SeenShape[], r: Results, x: number, top: number, width: number, letter: number, perMetre: number): { readonly marks: Mark[]; readonly height: number } {
  const marks: Mark[] = [];
  let y = top;
  const { objects } = stage.view;
  const known = objects.every(o => o.bright);
  const size = 0.85 * letter;
  marks.push(label(known ? 'Brightness of each part, beside the best lit part with matched paths' : 'Light on each part, beside the best lit part', x, y + size, size, 'letter'));
  y += 1.6 * size;
  const steps = 4 * STOPS;
  const w = width / (steps + 1);
  for (let i = 0; i <= steps; i++) marks.push(mark('rect', { fill: greyOf(2 ** (-i / 4)), x: x + i * w, y, width: w + (i < steps ? OVER : 0), height: 1.3 * size }));
  marks.push(mark('rect', { class: 'frame', x, y, width, height: 1.3 * size }));
  y += 2.4 * size;
  const at = (stops: number): number => x + Math.min(steps + 1, 4 * stops + 0.5) * w;
  for (let s = 0; s <= STOPS; s++) marks.push(mark('path', { class: 'angle', d: `M${n(at(s))} ${n(y - 1.1 * size)}v${n(0.3 * size)}` }), label(s === 0 ? '0' : s === STOPS ? `${s} stops less` : String(s), s === STOPS ? x + width : at(s), y + 0.15 * size, 0.9 * size, 'letter quiet', s === STOPS ? 'end' : 'middle'));
  y += 1.4 * size;
  // The words that findings and reports have for it, over as much of the scale as they mean.
  BANDS.forEach(({ word, from }, i) => {
    const [left, right] = [i === 0 ? x : at(-Math.log2(BANDS[i - 1]!.from)), from > 0 ? at(-Math.log2(from)) : x + width];
    if (i > 0) marks.push(mark('path', { class: 'angle', d: `M${n(left)} ${n(y - 0.7 * size)}v${n(1.1 * size)}` }));
    marks.push(label(word, (left + right) / 2, y + 0.1 * size, 0.8 * size, 'letter', 'middle'));
  });
  y += 1.3 * size;
  const row = (draw: (at: number) => Mark[], words: string): void => { marks.push(...draw(y), label(words, x + 2.6 * size, y + 0.8 * size, size, 'letter')); y += 1.6 * size; };
  const box = (fill: string) => (at: number): Mark[] => [mark('rect', { class: 'night', x, y: at, width: 1.9 * size, height: size }), mark('rect', { fill, x, y: at, width: 1.9 * size, height: size }), mark('rect', { class: 'frame', x, y: at, width: 1.9 * size, height: size })];
  if (seen.some(s => s.parts.some(p => !p.rim && s.of.light[p.patch] === 0))) row(box('url(#unlit)'), 'no light falls there');
  if (!known) row(box('url(#untold)'), 'how well its light records is not known: the coherence of the laser is not written');
  for (const { darkest, object } of objects) if (darkest) row(at => [mark('rect', { class: 'night', x, y: at, width: 1.9 * size, height: size }), mark('circle', { class: 'spot', cx: x + 0.95 * size, cy: at + size / 2, r: 0.4 * size })], `records worst of ${object.id}: ${percent(r.graph.value(darkest.cell)!)} of what matched paths give`);
  const bar = lengthOf(0.4 * width / perMetre);
  row(at => [mark('path', { class: 'scale', d: `M${n(x)} ${n(at + 0.2 * size)}v${n(0.6 * size)}M${n(x)} ${n(at + size / 2)}h${n(bar * perMetre)}M${n(x + bar * perMetre)} ${n(at + 0.2 * size)}v${n(0.6 * size)}` }), label(`${show(bar, LENGTH)} where the middle is`, x + bar * perMetre + size, at + 0.8 * size, size, 'letter')], '');
  const notes = [
    ...objects.filter(recordsDark).map(o => `All of ${o.object.id} records dark.`),
    ...objects.filter(o => o.assumed && o.shape === 'rounded').map(o => `The shape of ${o.object.id} is not written, so that it is drawn rounded.`),
    ...stage.view.notes.map(s => `${s[0]!.toUpperCase()}${s.slice(1)}.`),
    ...(objects.some(o => o.shape !== 'window') ? ['Surfaces count as dull, and throw no shadow on each other.'] : []),
  ];
  for (const words of notes) for (const line of broken(words, width / 0.85, size)) { marks.push(label(line, x, y + 0.8 * size, 0.9 * size, 'letter quiet')); y += 1.4 * size; }
  return { marks, height: y - top };
}
const OVER = 0.5;

/** Beside its own best lit part: what stands before a brighter thing is no darker for that. */
function recordsDark({ bright, light }: Stage['view']['objects'][number]): boolean {
  const most = light.reduce((a, b) => Math.max(a, b), 0);
  return bright?.every(b => b < DARK * most) === true;
}

/** A round length that is no longer. */
export const lengthOf = (most: number): number => { const ten = 10 ** Math.floor(Math.log10(most)); return ten * ([5, 2, 1].find(v => v * ten <= most) ?? 1); };

/** Words in lines that are about so wide. */
export function broken(words: string, width: number, letter: number): string[] {
  const lines: string[] = [];
  for (const word of words.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && widthOf(`${last} ${word}`, 0.85 * letter) <= width) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
