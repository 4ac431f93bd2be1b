/** What is found, as it is written in the place of a `?`: in the unit that stands there, with the digits that it needs; the rest of the line stays as it is. */
import type { Tree } from '../../../grammar/tree.ts';
import { limitClauses } from '../../model/bind/asked.ts';
import type { Edit } from '../../model/edits.ts';
import { within, type Place } from '../../model/place.ts';
import { readableUnit } from '../../model/show.ts';
import { LENGTH, NUMBER, parseUnit, type Dim, type Unit } from '../../model/units.ts';

/** A number for a `?`. */
export interface Writing {
  readonly at: Place;
  readonly part: 'x' | 'y' | undefined;
  readonly value: number;
  readonly dim: Dim;
  readonly unit: Unit | undefined;
}

/** The edits that write them; two numbers of one place are written together. */
export function writingOf(all: readonly Writing[], tree: Tree): Edit[] {
  const done = new Set<Writing>();
  return all.flatMap(w => {
    if (done.has(w)) return [];
    done.add(w);
    if (w.part === undefined) return [{ at: wholeOf(w.at, tree), newText: numberIn(w, tree) }];
    const other = all.find(o => o !== w && o.at.line === w.at.line && o.at.start === w.at.start);
    if (other) done.add(other);
    const [x, y] = w.part === 'x' ? [w, other] : [other, w];
    const unit = w.unit ?? parseUnit('mm')!;
    return x && y ? [{ at: wholeOf(w.at, tree), newText: `(${digits(x.value, unit)}, ${digits(y.value, unit)}) ${unit.text}` }] : [];
  });
}

/** The `?` with its unit, and the limits behind it. */
function wholeOf(at: Place, tree: Tree): Place {
  const line = tree.lines[at.line]!;
  const next = line.clauses.findIndex(c => c.start >= at.end);
  if (next < 0 || line.text.slice(at.end, line.clauses[next]!.start).trim() !== '') return at;
  return within(at, { start: at.start, end: limitClauses(line.clauses, next).at(-1)?.end ?? at.end });
}

/** `412 mm`; without its unit where a bracket has it. */
function numberIn({ at, value, dim, unit }: Writing, tree: Tree): string {
  const line = tree.lines[at.line]!;
  // Of a number in a bracket the unit stands behind it.
  const bracket = /^\s*(?:,[^()]*)?\)/.test(line.text.slice(at.end)) && dim === LENGTH && !/[\p{L}°%]/u.test(line.text.slice(at.start, at.end));
  const use = bracket ? unit : line.text.slice(at.start, at.end).trim() === '?' && unit === undefined ? readableUnit(Math.abs(value), dim) : unit;
  const text = digits(value, use);
  return bracket || !use || dim === NUMBER && !use.percent ? text : `${text}${use.text === '%' || use.text === '°' ? '' : ' '}${use.text}`;
}

/** As few decimals as say the value whole. */
export function digits(value: number, unit: Unit | undefined): string {
  const v = (value - (unit?.offset ?? 0)) / (unit?.factor ?? 1);
  for (let d = 0; d < 12; d++) {
    const text = v.toFixed(d);
    if (Math.abs(Number(text) - v) <= 1e-9 * Math.max(1, Math.abs(v))) return /^-0(?:\.0*)?$/.test(text) ? text.slice(1) : text;
  }
  return v.toPrecision(6);
}
