/** Plain numbers in the text that a drag writes again: in the author's unit, with at least the author's digits. */
import type { Expr, Word } from '../../../grammar/tree.ts';
import { inUnit, type Edit } from '../../model/edits.ts';
import { within, type Place } from '../../model/place.ts';
import { parseUnit, type Unit } from '../../model/units.ts';

export interface Plain {
  readonly unit: Unit;
  /** as it is written, in SI */
  readonly value: number;
  /** its new value, in SI */
  edit(value: number): Edit;
}

/** A number with its sign and unit; undefined for everything that is worked out, or has a ±. `at` is a place in its line. */
export function plainNumber(e: Expr, at: Place, line: string, shared?: Word): Plain | undefined {
  const number = e.kind === 'unary' ? e.arg : e;
  if (number.kind !== 'number') return undefined;
  const word = number.unit ?? shared;
  const unit = word && parseUnit(word.text);
  if (!unit) return undefined;
  // The number alone: its unit and what stands between stay as they are.
  const start = e.start;
  const end = number.start + /^[\d.eE+-]*/.exec(line.slice(number.start, number.unit ? Math.min(number.end, number.unit.start) : number.end))![0].length;
  const digits = /\.(\d+)/.exec(line.slice(number.start, end))?.[1]!.length ?? 0;
  return { unit, value: (e.kind === 'unary' && e.op === '-' ? -1 : 1) * number.value * unit.factor, edit: value => ({ at: within(at, { start, end }), newText: inUnit(value, unit, digits) }) };
}
