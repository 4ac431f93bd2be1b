/**
 * Reads literal values: numbers with units and tolerances, sizes, ratios, words. What needs other values (names, arithmetic)
 * is left to the cells. Problems are spans in the line, so that the outcome can be kept with the line's tree.
 */
import type { Expr, Span, Word } from '../../grammar/tree.ts';
import type { FactType, Sign, Within } from './things/kind.ts';
import { noSuchDate } from './calendar.ts';
import type { Bound } from './model.ts';
import type { Quantity, Spread } from './quantity.ts';
import { written } from './written.ts';
import { dimName, multiply, nearestUnit, NUMBER, parseUnit, TEMPERATURE, unitsFor, type Dim, type Unit } from './units.ts';

export interface ValueProblem {
  readonly code: 'missing-unit' | 'wrong-unit' | 'unknown-unit' | 'impossible-value' | 'wrong-value' | 'units-differ';
  readonly span: Span;
  readonly data: Readonly<Record<string, string | number | boolean>>;
}
export type Read<T> = { readonly ok: T } | { readonly problem: ValueProblem };

export const fail = (code: ValueProblem['code'], span: Span, data: ValueProblem['data']): { problem: ValueProblem } =>
  ({ problem: { code, span: { start: span.start, end: span.end }, data } });

/** True where the value can be read without looking at anything else. */
export function isLiteral(e: Expr): boolean {
  switch (e.kind) {
    case 'number': case 'unknown': case 'ratio': case 'date': case 'string': return true;
    case 'unary': return isPlain(e.arg);
    case 'tolerance': return isPlain(e.value) && isPlain(e.by);
    case 'sizes': return e.parts.every(isLiteral);
    case 'group': return e.items.every(isLiteral) && e.items.length === 1;
    default: return false;
  }
}

/** A literal without a tolerance of its own. */
const isPlain = (e: Expr): boolean => (e.kind === 'group' ? e.items.length === 1 && isPlain(e.items[0]!) : e.kind !== 'tolerance' && isLiteral(e));

export function readUnit(word: Word): Read<Unit> {
  const unit = parseUnit(word.text);
  if (unit) return { ok: unit };
  const near = nearestUnit(word.text);
  return fail('unknown-unit', word, { unit: word.text, ...(near ? { suggestion: near } : {}) });
}

/** Beyond these, in SI, nothing on a table lies; within them squares and quotients of values stay numbers. */
const LARGEST = 1e40;
/** Why a value cannot be computed with; undefined for any that can. */
export const beyond = (value: number): string | undefined =>
  (!(Math.abs(value) <= LARGEST) ? 'it is too large to be computed with' : value !== 0 && Math.abs(value) < 1 / LARGEST ? 'it is too small to be computed with' : undefined);

/** A number with its unit and sign; `share` is a unit that a neighbour lends (`750 ± 2 mm`, `40 x 60 mm`). */
export function readNumber(e: Expr, share?: Unit): Read<Quantity> {
  const read = readAny(e, share);
  const why = 'ok' in read ? beyond(read.ok.value) : undefined;
  return why === undefined ? read : fail('impossible-value', e, { why });
}

function readAny(e: Expr, share?: Unit): Read<Quantity> {
  if (e.kind === 'unary') {
    const arg = readNumber(e.arg, share);
    return 'problem' in arg || e.op === '+' ? arg : { ok: { ...arg.ok, value: arg.ok.unit?.offset ? (-(arg.ok.value - arg.ok.unit.offset)) + arg.ok.unit.offset : -arg.ok.value } };
  }
  if (e.kind === 'group' && e.items.length === 1) {
    const lent = bracketUnit(e);
    return lent && 'problem' in lent ? lent : readNumber(e.items[0]!, lent?.ok ?? share);
  }
  if (e.kind === 'ratio') return e.right === 0 ? fail('impossible-value', e, { why: 'the right side of a ratio cannot be zero' }) : { ok: { value: e.left / e.right, dim: NUMBER } };
  if (e.kind !== 'number') return fail('wrong-value', e, { found: describe(e), wanted: 'a number with its unit' });
  if (!e.unit) return { ok: share ? { value: e.value * share.factor + share.offset, dim: share.dim, unit: share } : { value: e.value, dim: NUMBER } };
  const unit = readUnit(e.unit);
  if ('problem' in unit) return unit;
  return { ok: { value: e.value * unit.ok.factor + unit.ok.offset, dim: unit.ok.dim, unit: unit.ok } };
}

/** The unit behind a bracket, which must not have one inside as well. */
function bracketUnit(e: Expr & { kind: 'group' }): Read<Unit> | undefined {
  if (!e.unit) return undefined;
  const inner = unitIn(e.items[0]!);
  return inner ? fail('wrong-unit', e.unit, { found: `a value in ${inner.text} already`, wanted: 'a plain number before the bracket’s unit', units: '' }) : readUnit(e.unit);
}
const unitIn = (e: Expr): Word | undefined =>
  e.kind === 'number' ? e.unit : e.kind === 'unary' ? unitIn(e.arg) : e.kind === 'tolerance' ? unitIn(e.value) : e.kind === 'group' ? (e.unit ?? unitIn(e.items[0]!)) : undefined;

/** A quantity with its tolerance; `share` is the unit of the bracket around it. */
export function readQuantity(e: Expr, share?: Unit): Read<Quantity> {
  if (e.kind === 'group' && e.items.length === 1) {
    const lent = bracketUnit(e);
    return lent && 'problem' in lent ? lent : readQuantity(e.items[0]!, lent?.ok ?? share);
  }
  if (e.kind !== 'tolerance') return readNumber(e, share);
  const byUnit = e.by.kind === 'number' && e.by.unit ? readUnit(e.by.unit) : undefined;
  if (byUnit && 'problem' in byUnit) return byUnit;
  const lend = byUnit && !byUnit.ok.percent && !byUnit.ok.points ? byUnit.ok : share;
  const value = readNumber(e.value, lend);
  if ('problem' in value) return value;
  const by = readNumber(e.by, e.op === '±' ? share : undefined);
  if ('problem' in by) return by;
  const spread = readSpread(e, value.ok, by.ok);
  return 'problem' in spread ? spread : { ok: { ...value.ok, spread: spread.ok } };
}

/** What stands behind `±` or `×÷`, about a value of that size and kind. */
export function readSpread(e: Expr & { kind: 'tolerance' }, value: Pick<Quantity, 'value' | 'dim' | 'unit'>, by: Quantity): Read<Spread> {
  if (by.value < 0) return fail('impossible-value', e.by, { why: 'how much either way cannot be negative' });
  if (e.op === '×÷') {
    if (e.std) return fail('wrong-value', e.by, { found: 'a factor with “std”', wanted: 'a plain factor either way' });
    if (by.dim !== NUMBER) return fail('wrong-unit', e.by, { found: dimName(by.dim), wanted: 'a plain number', units: '' });
    return by.value < 1 ? fail('impossible-value', e.by, { why: 'a factor either way is 1 or more' }) : { ok: { kind: 'factor', amount: by.value } };
  }
  const kind = e.std ? 'std' : 'within';
  if ((by.unit?.percent || by.unit?.points) && value.unit?.offset) return fail('wrong-unit', e.by, { found: 'a share', wanted: 'a difference of temperature', units: 'K' });
  if (by.unit?.percent) return { ok: { kind, amount: Math.abs(value.value) * by.value } };
  if (by.unit?.points) {
    return value.dim === NUMBER ? { ok: { kind, amount: by.value } } : fail('wrong-unit', e.by, { found: 'percentage points', wanted: dimName(value.dim), units: unitsFor(value.dim).join(', ') });
  }
  if (by.unit?.offset) return fail('wrong-unit', e.by, { found: 'a temperature on the scale', wanted: 'a difference of temperature', units: 'K' });
  if (by.dim !== value.dim) {
    return by.unit ? fail('wrong-unit', e.by, { found: dimName(by.dim), wanted: dimName(value.dim), units: unitsFor(value.dim).join(', ') })
      : fail('missing-unit', e.by, { wanted: dimName(value.dim), units: unitsFor(value.dim).join(', '), written: String(by.value), suggestion: value.unit?.text ?? unitsFor(value.dim)[0]! });
  }
  return { ok: { kind, amount: by.value } };
}

/** Reads a literal of the type that a fact takes. */
export function readLiteral(e: Expr, type: FactType): Read<Bound> {
  if (e.kind === 'unknown') {
    const unit = e.unit ? readUnit(e.unit) : undefined;
    return unit && 'problem' in unit ? unit : { ok: { kind: 'unknown', ...(unit ? { unit: unit.ok } : {}) } };
  }
  switch (type.type) {
    case 'quantity': {
      const q = readQuantity(e);
      if ('problem' in q) return q;
      const wrong = (type.or?.includes(q.ok.dim) ? undefined : checkDim(e, q.ok, type.dim, type.within)) ?? checkSign(e, q.ok, type.sign ?? 'any', type.within);
      return wrong ?? { ok: { kind: 'quantity', quantity: q.ok } };
    }
    case 'count': {
      const q = readQuantity(e);
      if ('problem' in q) return q;
      if (q.ok.dim !== NUMBER) return fail('wrong-unit', e, { found: dimName(q.ok.dim), wanted: 'a whole number', units: '' });
      return Number.isInteger(q.ok.value) && q.ok.value >= 1 ? { ok: { kind: 'quantity', quantity: q.ok } } : fail('impossible-value', e, { why: 'it is a whole number, at least 1' });
    }
    case 'ratio': {
      if (e.kind !== 'ratio') return fail('wrong-value', e, { found: describe(e), wanted: 'a ratio such as 4:1' });
      if (!(e.left > 0 && e.right > 0)) return fail('impossible-value', e, { why: 'both sides of a ratio are above zero' });
      const why = beyond(e.left / e.right);
      return why === undefined ? { ok: { kind: 'ratio', value: e.left / e.right } } : fail('impossible-value', e, { why });
    }
    case 'sizes': return readSizes(e, type.numbers);
    case 'text': return e.kind === 'string' ? { ok: { kind: 'words', text: e.value } } : { ok: { kind: 'words', text: wordsOf(e) ?? '' } };
    case 'date': {
      const why = e.kind === 'date' ? noSuchDate(e.text) : undefined;
      if (why !== undefined) return fail('impossible-value', e, { why });
      return e.kind === 'date' ? { ok: { kind: 'words', text: e.text } } : fail('wrong-value', e, { found: describe(e), wanted: 'a date such as 2026-02-11' });
    }
    case 'points': return { ok: { kind: 'words', text: '' } };
    case 'choice': return fail('wrong-value', e, { found: describe(e), wanted: oneOf(type.words) });
    case 'name': return fail('wrong-value', e, { found: describe(e), wanted: 'the name of a thing' });
  }
}

export const oneOf = (words: readonly string[]): string => (words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words[words.length - 1]!}`);

function readSizes(e: Expr, numbers: readonly number[]): Read<Bound> {
  const inner = e.kind === 'tolerance' ? e.value : e;
  if (inner.kind !== 'sizes') return fail('wrong-value', e, { found: describe(e), wanted: `${oneOf(numbers.map(String))} sizes such as ${numbers[0] === 3 ? '40 x 60 x 35 mm' : '60 x 80 mm'}` });
  if (!numbers.includes(inner.parts.length)) return fail('wrong-value', e, { found: `${inner.parts.length} sizes`, wanted: `${oneOf(numbers.map(String))} sizes` });
  let lent: Unit | undefined;
  const parts: Quantity[] = [];
  for (let i = inner.parts.length - 1; i >= 0; i--) {
    const part = inner.parts[i]!;
    const q = readNumber(part, lent);
    if ('problem' in q) return q;
    const wrong = checkDim(part, q.ok, LENGTHS) ?? checkSign(part, q.ok, 'positive');
    if (wrong) return wrong;
    lent = q.ok.unit;
    parts.unshift(q.ok);
  }
  if (e.kind === 'tolerance') {
    const by = readNumber(e.by);
    if ('problem' in by) return by;
    const spread = readSpread(e, parts[0]!, by.ok);
    if ('problem' in spread) return spread;
    return { ok: { kind: 'sizes', parts: parts.map(p => ({ ...p, spread: by.ok.unit?.percent ? { kind: spread.ok.kind as 'within', amount: p.value * by.ok.value } : spread.ok })) } };
  }
  return { ok: { kind: 'sizes', parts } };
}
const LENGTHS = parseUnit('m')!.dim;

/** The usual unit with which a bare number makes sense: a wavelength of 632.8 is one in nanometres. */
function likelyUnit(value: number, wanted: Dim, within: Within | undefined): string {
  const units = unitsFor(wanted);
  const fits = (u: string): boolean => { const si = value * parseUnit(u)!.factor; return !within || (si >= within.from && si <= within.to); };
  return units.find(fits) ?? units[0]!;
}

export function checkDim(e: Span, q: { dim: Dim; unit?: Unit; value?: number }, wanted: Dim, within?: Within): { problem: ValueProblem } | undefined {
  if (q.dim === wanted) return q.unit?.points ? fail('wrong-unit', e, { found: 'percentage points', wanted: dimName(wanted), units: '%' }) : undefined;
  const units = unitsFor(wanted).join(', ');
  if (q.dim === NUMBER && !q.unit) return fail('missing-unit', e, { wanted: dimName(wanted), units, written: q.value === undefined ? '' : unitlessText(e, q.value), suggestion: likelyUnit(q.value ?? 0, wanted, within) });
  const meant = asFraction(e, q.dim, wanted);
  return fail('wrong-unit', e, { found: dimName(q.dim), wanted: dimName(wanted), units, unit: q.unit?.text ?? '', ...(meant === undefined ? {} : { suggestion: meant }) });
}

/** A number without a unit as it is written; a formula in the brackets that its unit stands behind. */
const unitlessText = (e: Span, value: number): string => ('kind' in e && !isLiteral(e as Expr) ? `(${written(e as Expr).replaceAll('·', '*')})` : String(value));

/** `1/2 in` is one divided by two inches, and meant as half an inch. */
function asFraction(e: Span & { readonly kind?: string }, found: Dim, wanted: Dim): string | undefined {
  const { kind, op, left, right } = e as Partial<Expr & { kind: 'binary' }>;
  if (kind !== 'binary' || op !== '/' || left?.kind !== 'number' || left.unit || right?.kind !== 'number' || !right.unit || right.value === 0 || multiply(found, wanted) !== NUMBER) return undefined;
  return `${Number((left.value / right.value).toPrecision(6))} ${right.unit.text}`;
}

export function checkSign(e: Span, q: Quantity, sign: Sign, within?: Within): { problem: ValueProblem } | undefined {
  if (q.dim === TEMPERATURE && q.value < 0) return fail('impossible-value', e, { why: 'it is below absolute zero' });
  if (sign === 'positive' && q.value <= 0) return fail('impossible-value', e, { why: q.value === 0 ? 'it cannot be zero' : 'it cannot be negative' });
  if (sign === 'not negative' && q.value < 0) return fail('impossible-value', e, { why: 'it cannot be negative' });
  if (sign === 'not zero' && q.value === 0) return fail('impossible-value', e, { why: 'it cannot be zero' });
  if (sign === 'share' && (q.value < 0 || q.value > 1)) return fail('impossible-value', e, { why: 'it is a share, from 0 % to 100 %' });
  if (within && (q.value < within.from || q.value > within.to)) return fail('impossible-value', e, { why: `it lies from ${within.words}` });
  return undefined;
}

export function wordsOf(e: Expr): string | undefined {
  if (e.kind === 'phrase') return e.words.map(w => w.text).join(' ');
  if (e.kind === 'string') return e.value;
  if (e.kind === 'row') {
    const parts = e.items.map(wordsOf);
    return parts.every(p => p !== undefined) ? parts.join(' ') : undefined;
  }
  return e.kind === 'number' && !e.unit ? String(e.value) : undefined;
}

export function describe(e: Expr): string {
  switch (e.kind) {
    case 'number': return e.unit ? 'a number with a unit' : 'a number';
    case 'phrase': return `“${wordsOf(e)!}”`;
    case 'string': return 'a text';
    case 'ratio': return 'a ratio';
    case 'date': return 'a date';
    case 'sizes': return 'sizes';
    case 'list': return 'a list';
    case 'group': return e.items.length > 1 ? 'a place' : 'a value in brackets';
    case 'unknown': return '?';
    case 'path': return 'a path';
    case 'tolerance': return describe(e.value);
    default: return 'a formula';
  }
}
