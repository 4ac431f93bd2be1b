/** Changes of a page's text. Everything that proposes one tries it on a copy first. */
import { marksOf } from '../../grammar/parse.ts';
import type { Place } from './place.ts';
import { ANGLE, LENGTH, type Unit } from './units.ts';

export interface Edit {
  readonly at: Place;
  readonly newText: string;
}

/** The text with the edits in it, every other byte as it was; all edits lie in the snapshot's own file. */
export function applyEdits(text: string, edits: readonly Edit[]): string {
  const starts = [marksOf(text)];
  for (const m of text.matchAll(/\r\n|\n|\r/g)) starts.push(m.index + m[0].length);
  return [...edits].sort((a, b) => b.at.line - a.at.line || b.at.start - a.at.start)
    .reduce((t, { at, newText }) => t.slice(0, starts[at.line]! + at.start) + newText + t.slice(starts[at.line]! + at.end), text);
}

/** A value, SI, as it is written in a unit in the place of another: to a tenth of a millimetre or of a degree, and never with fewer decimals than its author wrote. */
export function inUnit(value: number, unit: Unit, decimals: number): string {
  const finest = Math.max(decimals, Math.ceil(Math.log10(unit.factor / (unit.dim === ANGLE ? Math.PI / 1800 : unit.dim === LENGTH ? 1e-4 : unit.factor)) - 1e-9), 0);
  return trimmed((value - unit.offset) / unit.factor, Math.min(9, finest), decimals);
}

/** With `most` decimals, and those noughts at the end left out that its author would not have written. */
export function trimmed(value: number, most: number, least: number): string {
  const [whole, behind = ''] = value.toFixed(most).split('.') as [string, string?];
  let kept = behind;
  while (kept.length > least && kept.endsWith('0')) kept = kept.slice(0, -1);
  const text = kept === '' ? whole : `${whole}.${kept}`;
  return /^-0(?:\.0*)?$/.test(text) ? text.slice(1) : text;
}
