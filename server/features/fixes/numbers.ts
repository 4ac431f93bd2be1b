/** A number of the text behind a cell: what of it is written anew, and how. */
import type { Tree } from '../../../grammar/tree.ts';
import { trimmed, type Edit } from '../../model/edits.ts';
import { within } from '../../model/place.ts';
import type { Unit } from '../../model/units.ts';
import type { Cell } from '../../results/graph.ts';

/** One number as its author wrote it, alone or with its give or take. */
export interface Written {
  readonly text: string;
  readonly unit: Unit | undefined;
  /** as it stands behind the number: ` mm`, `%` */
  readonly unitText: string;
  /** decimals behind its point */
  readonly decimals: number;
  /** of a value, SI; as many decimals as `most` at the most, and no fewer than are written */
  edit(value: number, most: number): Edit;
  /** a value, SI, as it stands in the text */
  readonly inText: (value: number) => number;
}

const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)/;
/** Behind it only its unit and what is left open, nothing that is worked out. */
const REST = /^\s*(?:[^\s\d(),*/+±×÷-]+\s*)?(?:(?:±|\+\/-|×÷).*)?$/;

/** Undefined of what is a formula, a name or a ratio, and of what stands in another file. */
export function writtenOf(cell: Cell, { lines }: Tree): Written | undefined {
  const { at, unit } = cell;
  const whole = at && lines[at.line]?.text.slice(at.start, at.end);
  const text = whole && NUMBER.exec(whole)?.[0];
  if (!text || !REST.test(whole.slice(text.length))) return undefined;
  const decimals = text.split('.')[1]?.length ?? 0;
  const inText = (value: number): number => (value - (unit?.offset ?? 0)) / (unit?.factor ?? 1);
  const unitText = unit === undefined || unit.text === '' ? '' : /^[°%]/.test(unit.text) ? unit.text : ` ${unit.text}`;
  return { text, unit, unitText, decimals, inText, edit: (value, most) => ({ at: within(at, { start: at.start, end: at.start + text.length }), newText: trimmed(inText(value), Math.max(most, decimals), decimals) }) };
}
