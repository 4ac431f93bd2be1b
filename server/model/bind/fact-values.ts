/** The value of a fact, read as its type. The outcome depends on the line's text and the type only. */
import type { Clause, Expr, LineTree } from '../../../grammar/tree.ts';
import { describe, fail, isLiteral, oneOf, readLiteral, wordsOf, type Read } from '../literal.ts';
import { readPlaces } from '../literal-places.ts';
import type { Bound } from '../model.ts';
import { limitClauses, limitsOf, type Limit } from './asked.ts';
import { nearest } from '../scope.ts';
import type { FactType } from '../things/kind.ts';

/** Reads the value of a fact. The outcome is kept with the line: an edit reads one line. */
export function readFact(line: LineTree, value: Expr, type: FactType): Read<Bound> {
  if (line.memo?.of === type) return line.memo.made as Read<Bound>;
  const read = readNow(line, value, type);
  line.memo = { of: type, made: read };
  return read;
}

/** Whether a clause behind a value is part of it: `? from 80% to 99%`, `away from the object`, a text without quotes. */
export function takesClause(line: LineTree, clause: Clause, type: FactType): boolean {
  const value = line.value!;
  switch (type.type) {
    case 'choice': return type.words.includes(wholeText(value, line)) || !type.words.includes(rawText(value, line));
    case 'text': return value.kind !== 'string';
    case 'quantity': case 'count': return value.kind === 'unknown' && limitClauses(line.clauses, 0).includes(clause);
    default: return false;
  }
}

const rawText = (value: Expr, line: LineTree): string => (value.kind === 'string' ? value.value : line.text.slice(value.start, value.end).replace(/\s+/g, ' '));
/** The value with the clauses behind it, as one text. */
const wholeText = (value: Expr, line: LineTree): string =>
  (value.kind === 'string' ? value.value : line.text.slice(value.start, line.clauses[line.clauses.length - 1]?.end ?? value.end).replace(/\s+/g, ' '));

function readNow(line: LineTree, value: Expr, type: FactType): Read<Bound> {
  switch (type.type) {
    case 'choice': return readChoice(line, value, type.words);
    case 'text': return { ok: { kind: 'words', text: wholeText(value, line) } };
    case 'points': return readPlaces(value, type.single ?? false, line.text);
    case 'name': return value.kind === 'phrase' && value.words.length === 1 ? { ok: { kind: 'words', text: value.words[0]!.text } } : fail('wrong-value', value, { found: describe(value), wanted: `the name of a ${type.of}` });
    case 'quantity': case 'count': {
      if (type.words && line.clauses.length === 0 && type.words.includes(rawText(value, line))) return { ok: { kind: 'words', text: rawText(value, line) } };
      if (value.kind === 'unknown' && line.clauses.length > 0) return readAsked(line, value, type);
      if (isLiteral(value)) return readLiteral(value, type);
      return value.kind === 'list' || value.kind === 'path' || value.kind === 'row' || (value.kind === 'group' && value.items.length !== 1)
        ? fail('wrong-value', value, { found: describe(value), wanted: 'one number with its unit' })
        : { ok: { kind: 'formula', expr: value } };
    }
    case 'sizes':
      if (!isLiteral(value) && (value.kind === 'sizes' || (value.kind === 'tolerance' && value.value.kind === 'sizes'))) return { ok: { kind: 'formula', expr: value } };
      return readLiteral(value, type);
    default: return readLiteral(value, type);
  }
}

function readChoice(line: LineTree, value: Expr, accepted: readonly string[]): Read<Bound> {
  // Some choices hold a clause word (“away from the object”), which the grammar has parted.
  const whole = wholeText(value, line);
  const hit = [whole, rawText(value, line)].find(w => accepted.includes(w));
  if (hit !== undefined) return { ok: { kind: 'words', text: hit } };
  const near = wordsOf(value) === undefined ? undefined : nearest(whole, accepted);
  return fail('wrong-value', value, { found: wordsOf(value) === undefined ? describe(value) : `“${whole}”`, wanted: oneOf(accepted), ...(near ? { suggestion: near } : {}) });
}

/** `? from 80% to 99% by 1%`: the ends are values of the same sort, the lower one first, and so is the step. */
function readAsked(line: LineTree, value: Expr, type: FactType): Read<Bound> {
  const asked = readLiteral(value, type);
  if ('problem' in asked) return asked;
  const ends: Partial<Record<Limit, Bound>> = {};
  const limits = limitsOf(value, line.clauses, 0);
  for (const [word, end] of Object.entries(limits) as [Limit, Expr][]) {
    const read: Read<Bound> = isLiteral(end) ? readLiteral(end, type) : { ok: { kind: 'formula', expr: end } };
    if ('problem' in read) return read;
    ends[word] = read.ok;
  }
  const { from, to } = ends;
  if (from?.kind === 'quantity' && to?.kind === 'quantity' && from.quantity.value >= to.quantity.value) {
    return fail('impossible-value', limits.to!, { why: 'it is not above the value behind “from”' });
  }
  return { ok: { ...(asked.ok as Bound & { kind: 'unknown' }), ...ends } };
}
