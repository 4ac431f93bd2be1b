/** What a value means, as a text that two values share where they say the same: blanks, brackets round one number and the spelling of units do not matter. */
import type { Clause, Expr, LineTree } from '../../grammar/tree.ts';
import { readNumber, readQuantity, readUnit } from '../model/literal.ts';
import type { Quantity } from '../model/quantity.ts';
import type { Unit } from '../model/units.ts';

/** What the names of one side are called on the other; names that are the same on both are not in it. */
export type Names = ReadonlyMap<string, string>;
export const SAME_NAMES: Names = new Map();

/** A name with its parts renamed: `M1.loss`, `P1.object.length`, `lab.flat-50`, `P1.replay by spot.size`. */
export function renamed(name: string, names: Names): string {
  const whole = names.get(name);
  if (whole !== undefined || names.size === 0) return whole ?? name;
  return name.split('.').map(part => names.get(part) ?? part.replace(/(?<= by )\S+$/, by => names.get(by) ?? by)).join('.');
}

/** What a name of one side is called on the other, where `is` tells what there is: `H1.image` is a result, whatever a beam `image` is called now. */
export function nameNow(name: string, names: Names, is: (name: string) => boolean): string {
  const now = renamed(name, names);
  return now !== name && !is(now) && is(name) ? name : now;
}

/** Twelve digits: ten times a tenth is one, and nobody writes more. */
const number = (v: number): string => String(Number(v.toPrecision(12)));
function quantity({ value, dim, spread }: Quantity): string {
  const wide = spread === undefined ? '' : spread.kind === 'one of' ? ` of ${spread.values.map(number).join('|')}` : ` ${spread.kind} ${number(spread.amount)}`;
  return `${number(value)} [${dim.powers.join()}]${wide}`;
}

/** `lent` is the unit that a bracket, or the last of several sizes, has for all in it. */
export function meaningOf(e: Expr, names: Names = SAME_NAMES, lent?: Unit): string {
  const of = (x: Expr, unit = lent): string => meaningOf(x, names, unit);
  const unitOf = (x: { unit: { text: string; start: number; end: number } | undefined }): Unit | undefined => {
    const read = x.unit && readUnit(x.unit);
    return read && 'ok' in read ? read.ok : lent;
  };
  switch (e.kind) {
    case 'number': case 'unary': case 'ratio': case 'tolerance': {
      const read = e.kind === 'tolerance' ? readQuantity(e, lent) : readNumber(e, lent);
      if ('ok' in read) return quantity(read.ok);
      if (e.kind === 'tolerance') return `${of(e.value)} ${e.op} ${of(e.by)}${e.std ? ' std' : ''}`;
      if (e.kind === 'unary') return `${e.op}(${of(e.arg)})`;
      return e.kind === 'number' ? `${number(e.value)}${e.unit?.text ?? ''}` : `${number(e.left)}:${number(e.right)}`;
    }
    case 'unknown': return `?${e.unit?.text ?? ''}`;
    case 'date': return e.text;
    case 'string': return e.value;
    case 'phrase': return e.words.map(w => renamed(w.text, names)).join(' ');
    case 'call': return `${e.name.text}(${e.args.map(a => of(a, undefined)).join(', ')})${e.unit?.text ?? ''}`;
    case 'group': {
      const inside = e.items.map(i => of(i, unitOf(e)));
      return inside.length === 1 ? inside[0]! : `(${inside.join(', ')})`;
    }
    case 'binary': return `(${of(e.left)} ${e.op} ${of(e.right)})`;
    case 'sizes': {
      const unit = e.parts.map(p => (p.kind === 'number' || p.kind === 'group' ? unitOf(p) : undefined)).find(Boolean) ?? lent;
      return e.parts.map(p => of(p, unit)).join(' x ');
    }
    case 'path': return e.items.map(i => of(i)).join(' -> ');
    case 'row': return e.items.map(i => of(i)).join(' ');
    case 'list': return e.items.map(i => of(i)).join(', ');
  }
}

export const clauseMeaning = ({ word, value }: Clause, names: Names): string => (value ? `${word.text} ${meaningOf(value, names)}` : word.text);

/** All of a line, for lines that are compared as a whole. What could not be read of it counts letter by letter. */
export function lineMeaning(line: LineTree, names: Names): string {
  const { head, subject, clauses, equals, compare, value, issue, text, comment } = line;
  if (issue || !head) return text.slice(0, comment?.start).trim().replace(/\s+/g, ' ');
  return [
    renamed(head.text, names), subject && meaningOf(subject, names), ...clauses.map(c => clauseMeaning(c, names)), equals && `= ${meaningOf(equals, names)}`,
    compare && `${compare.op} ${compare.value ? meaningOf(compare.value, names) : ''}`, value && `: ${meaningOf(value, names)}`,
  ].filter(Boolean).join(' ');
}
