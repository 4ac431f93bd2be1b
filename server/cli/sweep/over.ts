/** What `--over` says: a number of the page and the values that it takes, `S1.reflects from 10% to 90% by 10%`. */
import { parseLine } from '../../../grammar/parse-line.ts';
import type { Expr } from '../../../grammar/tree.ts';
import { checkOf } from '../../checks/registry.ts';
import type { Over } from '../../features/sweep/sweep.ts';
import { checkDim, checkSign, readLiteral, readQuantity, type Read } from '../../model/literal.ts';
import type { Bound } from '../../model/model.ts';
import { nearest } from '../../model/scope.ts';
import { isRatio } from '../../model/show.ts';
import { factIndex, factsOf, SETUP_FACTS } from '../../model/things/index.ts';
import type { FactType } from '../../model/things/kind.ts';
import type { Unit } from '../../model/units.ts';
import type { Cell } from '../../results/graph.ts';
import type { Results } from '../../results/plan.ts';
import { askedOf } from '../../results/sweep.ts';
import { Misuse } from '../files.ts';

export const SPELLING = '--over "S1.reflects from 10% to 90% by 10%"';
/** Steps of a range that says none. */
const STEPS = 10;
/** So many values are tried at most, those of several curves and variants taken together. */
export const MOST = 1000;

/** The name and the range of an `--over`, as written. */
export interface Asked { readonly name: string; readonly from: Expr; readonly to: Expr; readonly by: Expr | undefined; readonly written: string }

export function askedIn(written: string): Asked {
  const [, name, range] = /^(.*\S)\s+(from\s.*)$/s.exec(written.trim()) ?? [];
  if (name === undefined || range === undefined) throw new Misuse(`“${written}” does not say between which values: write ${SPELLING}.`);
  const { clauses, issue } = parseLine(`a: ? ${range}`);
  const of = (word: string): Expr | undefined => clauses.find(c => c.word.text === word)?.value;
  const [from, to, by] = [of('from'), of('to'), of('by')];
  if (issue || !from || !to || clauses.map(c => c.word.text).join(' ') !== `from to${by ? ' by' : ''}`) throw new Misuse(`The range of “${written}” cannot be read: write ${SPELLING}.`);
  return { name, from, to, by, written };
}

/** The cell of the number in a setup; it has to be written there. */
export function inputNamed(name: string, r: Results, file: string): Cell {
  const cell = cellOf(name, r);
  if (!cell) {
    if (askedOf(r, name)) throw new Misuse(`${name} is a result: it follows from the numbers of the page, so that it cannot be given other values.`);
    const inputs = namesIn(r);
    const near = nearest(name, inputs);
    throw new Misuse(`${file} has no number “${name}”. ${near !== undefined ? `Did you mean “${near}”?` : inputs.length === 0 ? 'There is no number in it.' : `Its numbers: ${inputs.slice(0, 12).join(', ')}${inputs.length > 12 ? ', …' : ''}.`}`);
  }
  if (isFree(cell, r)) return cell;
  if (cell.origin === 'assumed') throw new Misuse(`${name} is not written on the page, but assumed: ${cell.reason ?? cell.words}. Write it there first.`);
  if (cell.missing) throw new Misuse(`${name} cannot be given other values: ${cell.missing.why}.`);
  const below = r.graph.ancestors(cell).filter(c => isFree(c, r)).map(c => c.name);
  throw new Misuse(`${name} is computed, so that it cannot be given other values.${below.length === 0 ? '' : ` It rests on ${below.slice(0, 6).join(', ')}${below.length > 6 ? ', …' : ''}.`}`);
}

/** Written, and computed from nothing. */
const isFree = (c: Cell, r: Results): boolean => !c.rule && (c.missing ? r.graph.opens.some(o => o.name === c.name) : c.at !== undefined && (c.origin === 'written' || c.origin === 'measured' || c.origin === 'solved'));

function cellOf(name: string, r: Results): Cell | undefined {
  const known = r.graph.find(name);
  // Of a leg that was read, and of a fact of the setup, the number on the page is called so.
  const own = [known, r.graph.find(`${name}.plan`), r.graph.find(`${name} as written`)].find(c => c !== undefined && isFree(c, r)) ?? known;
  if (own) return own;
  // A fact that no result has asked for yet.
  const dot = name.indexOf('.');
  const thing = dot > 0 ? r.setup.things.get(name.slice(0, dot)) : undefined;
  return (thing ? r.values.fact(thing, name.slice(dot + 1)) : r.values.setupFact(name)) ?? undefined;
}

/** What people call the numbers of a page; what stands in a limit or behind a ± is none of them. */
const namesIn = (r: Results): string[] => [...new Set(r.graph.cells.filter(c => isFree(c, r) && !/~|^expect |^limit |^reading /.test(c.name)).map(c => c.name.replace(/(?:\.plan| as written)$/, '')))];

/** The values of a range, SI. */
export function valuesIn({ from, to, by, written }: Asked, input: Cell, r: Results): Over {
  const type = typeOf(input, r);
  const read = (e: Expr, what: string, t: FactType, lent?: Unit): { value: number; unit: Unit | undefined } => {
    const bound = t.type === 'quantity' ? quantity(e, t, lent) : readLiteral(e, t);
    if ('problem' in bound) throw new Misuse(`“${what}” in “${written}” cannot be used. ${checkOf(bound.problem.code).message(bound.problem.data)}`);
    if (bound.ok.kind === 'ratio') return { value: bound.ok.value, unit: undefined };
    if (bound.ok.kind !== 'quantity') throw new Misuse(`“${what}” in “${written}” has to be a number.`);
    return { value: bound.ok.quantity.value, unit: bound.ok.quantity.unit };
  };
  const end = read(to, 'to', type);
  const [a, b] = [read(from, 'from', type, end.unit).value, end.value];
  if (!(b > a)) throw new Misuse(`“to” in “${written}” has to be above “from”.`);
  const step = by ? read(by, 'by', { type: 'quantity', dim: input.dim }, end.unit).value : (b - a) / STEPS;
  if (!(step > 0)) throw new Misuse(`“by” in “${written}” has to be above zero.`);
  const count = Math.floor((b - a) / step + 1e-9) + 1;
  if (!(count <= MOST)) throw new Misuse(`“${written}” is ${count > 1e9 ? 'more than a billion' : String(count)} values; ${MOST} are tried at most. Take larger steps.`);
  return { input, values: Array.from({ length: count }, (_, i) => a + i * step) };
}

/** A number; without a unit it has that of the end: `from 10 to 90%`. */
function quantity(e: Expr, { dim, sign, within }: FactType & { type: 'quantity' }, lent: Unit | undefined): Read<Bound> {
  const q = readQuantity(e, lent);
  if ('problem' in q) return q;
  return checkDim(e, q.ok, dim, within) ?? checkSign(e, q.ok, sign ?? 'any', within) ?? { ok: { kind: 'quantity', quantity: q.ok } };
}

/** Which values make sense there. */
function typeOf(input: Cell, r: Results): FactType {
  const name = input.name.replace(/(?:\.plan| as written)$/, '');
  const open = r.graph.opens.find(o => o.name === input.name);
  if (open) return { type: 'quantity', dim: open.dim, sign: open.sign ?? 'any', ...(open.within ? { within: open.within } : {}) };
  if (isRatio(name)) return { type: 'ratio' };
  const dot = name.indexOf('.');
  const thing = dot > 0 ? r.setup.things.get(name.slice(0, dot)) : undefined;
  const fact = thing ? factIndex(factsOf(thing.kind)).get(name.slice(dot + 1)) : factIndex(SETUP_FACTS).get(name);
  if (fact?.type.type === 'count') return { type: 'count' };
  if (fact?.type.type === 'quantity') return { type: 'quantity', dim: input.dim, ...(fact.type.sign ? { sign: fact.type.sign } : {}), ...(fact.type.within && fact.type.dim === input.dim ? { within: fact.type.within } : {}) };
  // Legs and sizes are above zero.
  return { type: 'quantity', dim: input.dim, sign: /\.(?:length|width|height|depth)$/.test(name) ? 'positive' : 'any' };
}
