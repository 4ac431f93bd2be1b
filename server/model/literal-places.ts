/** Reads places `(x, y, z) mm` and lists of them. */
import type { Expr } from '../../grammar/tree.ts';
import { checkDim, describe, fail, isLiteral, readNumber, readSpread, readUnit, type Read } from './literal.ts';
import type { Bound } from './model.ts';
import type { Quantity, Spread } from './quantity.ts';
import { LENGTH, parseUnit, type Unit } from './units.ts';

type Position = readonly [Quantity, Quantity, Quantity];

/** One place, or several parted by commas. A third number that is left out is 0. `text` is the line that they stand in. */
export function readPlaces(e: Expr, single: boolean, text: string): Read<Bound> {
  const items = e.kind === 'list' ? e.items : [e];
  if (single && items.length > 1) return fail('wrong-value', e, { found: `${items.length} places`, wanted: 'one place such as (10, 5, -3) mm' });
  const places: Position[] = [];
  for (const item of items) {
    const read = readPlace(item, text);
    if ('problem' in read) return read;
    places.push(read.ok);
  }
  return { ok: { kind: 'places', places } };
}

function readPlace(e: Expr, text: string): Read<Position> {
  const group = e.kind === 'tolerance' ? e.value : e;
  const count = group.kind === 'group' ? group.items.length : 0;
  if (group.kind !== 'group' || count < 2 || count > 3) return fail('wrong-value', e, { found: count > 3 ? `${count} numbers` : describe(group), wanted: 'a place such as (10, 5, -3) mm' });
  const unit = group.unit && readUnit(group.unit);
  if (unit && 'problem' in unit) return unit;
  const wrong = unit && checkDim(group.unit, { dim: unit.ok.dim, unit: unit.ok }, LENGTH);
  if (wrong) return wrong;
  if (!unit && group.items.every(i => unitless(i))) return fail('missing-unit', group, { wanted: 'a place', units: 'mm, cm, m', written: text.slice(group.start, group.end), suggestion: 'mm' });
  const spread = e.kind === 'tolerance' ? readGive(e, unit?.ok) : undefined;
  if (spread && 'problem' in spread) return spread;
  const numbers: Quantity[] = [];
  for (const item of group.items) {
    if (!isLiteral(item) || item.kind === 'unknown') return fail('wrong-value', item, { found: describe(item), wanted: 'a number' });
    const q = readNumber(item, unit?.ok);
    if ('problem' in q) return q;
    const not = checkDim(item, q.ok, LENGTH);
    if (not) return not;
    numbers.push(spread ? { ...q.ok, spread: spread.ok } : q.ok);
  }
  return { ok: [numbers[0]!, numbers[1]!, numbers[2] ?? { value: 0, dim: LENGTH, unit: unit?.ok ?? MM }] };
}

const MM = parseUnit('mm')!;
const unitless = (e: Expr): boolean => (e.kind === 'unary' ? unitless(e.arg) : e.kind === 'number' && !e.unit);

/** What stands behind `±`: it holds for each of the numbers, so it is a length. */
function readGive(e: Expr & { kind: 'tolerance' }, unit: Unit | undefined): Read<Spread> {
  const by = readNumber(e.by, unit);
  if ('problem' in by) return by;
  if (e.op !== '±') return fail('wrong-value', e.by, { found: 'a factor', wanted: 'a length behind ±' });
  return checkDim(e.by, by.ok, LENGTH) ?? readSpread(e, { value: 0, dim: LENGTH }, by.ok);
}
