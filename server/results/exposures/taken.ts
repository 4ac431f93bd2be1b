/** A result of the page with one of its variants, as a number of the page itself: what both rest on is not told apart any more. */
import type { Place } from '../../model/model.ts';
import type { Spread } from '../../model/quantity.ts';
import type { Cell, Graph } from '../graph.ts';
import { interval } from '../sampling.ts';

export function valueOf(cell: Cell, from: Graph, name: string, words: string, more: { readonly at: Place; readonly reason: string }, graph: Graph): Cell {
  const known = graph.find(name);
  if (known) return known;
  const value = from.value(cell);
  if (cell.missing || value === undefined) return graph.missing(name, cell.dim, words, cell.missing ?? { code: 'value-missing', why: `${words} is not known`, at: more.at });
  const amount = from.uncertainty(cell);
  const { low, high } = interval(from, cell);
  const wide = amount > WIDE * Math.abs(value) && low > 0 && high > low;
  const spread: Spread | undefined = wide ? { kind: 'factor', amount: (high / low) ** (1 / (2 * INSIDE)) } : amount > 0 ? { kind: 'std', amount } : undefined;
  return graph.input(name, { value: wide ? Math.sqrt(low * high) : value, dim: cell.dim, ...(cell.unit ? { unit: cell.unit } : {}), ...(spread ? { spread } : {}) }, 'written', words, more);
}

/** From this share of its value a figure is taken as known within a factor: even give and take would reach below nothing. */
const WIDE = 0.2;
/** Of a factor, even in its logarithm, so much lies within the interval that is shown. */
const INSIDE = 0.95;
