/** Below the table: scale, beam height, what the lines mean, what stands in the way. */
import type { Drawing, Role } from '../drawing.ts';
import { label, mark, n, type Box, type Mark } from '../marks.ts';
import type { Also } from './also.ts';
import { widthOf } from './labels.ts';
import { shows, WIDTHS } from './light.ts';

/** In a transfer the first hologram stands where the object stood. */
function roles(d: Drawing): readonly (readonly [Role, string])[] {
  const lit = d.things.some(t => t.kind === 'hologram') && !d.things.some(t => t.kind === 'object') ? 'the first hologram' : 'the object';
  return [['common', 'before the arms part'], ['reference', 'reference'], ['object', `light for ${lit}`], ['scattered', `light from ${lit}`], ['other', 'other light']];
}

/** @param left where it begins, mm */
export function legend(d: Drawing, frame: Box, left: number, letter: number, also: Also): { readonly height: number; readonly marks: readonly Mark[] } {
  const size = 0.85 * letter;
  let y = frame.y + frame.h + size;
  const marks: Mark[] = [];
  const said = (words: string, x: number, name = 'letter'): void => { marks.push(label(words, x, y + size / 3, size, name)); };
  const bar = frame.w > 1200 ? 200 : 100;
  marks.push(mark('path', { class: 'scale', d: `M${n(left)} ${n(y - 6)}v12M${n(left)} ${n(y)}h${n(bar)}M${n(left + bar)} ${n(y - 6)}v12` }));
  said(`${bar} mm`, left + bar + 12);
  if (d.beamHeight !== undefined) said(`beams ${n(d.beamHeight * 1000)} mm above the table`, left + bar + 12 + 6 * size);
  y += 1.9 * size;
  let x = left;
  const sample = (words: string, drawn: () => readonly Mark[]): void => {
    const w = 60 + widthOf(words, size) + 30;
    if (x + w > frame.x + frame.w && x > left) { x = left; y += 1.6 * size; }
    marks.push(...drawn());
    said(words, x + 58);
    x += w;
  };
  const line = (name: string): Mark => mark('line', { class: name, x1: x, y1: y, x2: x + 48, y2: y });
  for (const [role, words] of roles(d)) if (d.legs.some(l => l.role === role)) sample(words, () => [line(`light ${role}`)]);
  if (d.strays.length > 0) sample('light that nobody uses', () => [line('stray')]);
  if (d.cards.length > 0) sample('a card belongs here', () => [mark('rect', { class: 'card', x: x + 16, y: y - 0.4 * size, width: 0.8 * size, height: 0.8 * size })]);
  if (x > left && d.legs.some(l => WIDTHS.some(([which]) => shows(l, which)))) { x = left; y += 1.6 * size; }
  // The part that is used is drawn over the whole of the light, and so is its sample.
  for (const [which, words] of WIDTHS) if (d.legs.some(l => shows(l, which))) sample(words, () => (which === 'whole' ? ['cone'] : ['cone', 'useful']).map(name => mark('rect', { class: name, x, y: y - 0.4 * size, width: 48, height: 0.8 * size })));
  if (x > left && also.samples.length > 0) { x = left; y += 1.6 * size; }
  for (const { words, drawn } of also.samples) sample(words, () => drawn([x, y], size));
  const told = [...d.blocked.map(b => [b.words, 'letter warns'] as const), ...[...also.told, ...d.notes, 'Mounts, and sizes that are not written, are drawn as common practice has them.'].map(words => [words, 'letter quiet'] as const)];
  for (const [words, name] of told) { y += 1.6 * size; said(words, left, name); }
  return { height: y + 1.5 * size - (frame.y + frame.h), marks };
}
