/** What may stand behind a `?`: `from 80% to 99% by 1%`, between which values it is to be found and in which steps. */
import type { Clause, Expr } from '../../../grammar/tree.ts';

const ORDER = ['from', 'to', 'by'] as const;
export type Limit = (typeof ORDER)[number];

/** The clauses of a line that belong to a `?`, of which the first would be that at `start`: each once, in that order. */
export function limitClauses(clauses: readonly Clause[], start: number): readonly Clause[] {
  let end = start;
  let last = -1;
  for (; end < clauses.length; end++) {
    const at = ORDER.indexOf(clauses[end]!.word.text as Limit);
    if (at <= last) break;
    last = at;
  }
  return clauses.slice(start, end);
}

/** The same by their words; none where the value is no `?`. */
export function limitsOf(value: Expr, clauses: readonly Clause[], start: number): Readonly<Partial<Record<Limit, Expr>>> {
  if (value.kind !== 'unknown') return {};
  return Object.fromEntries(limitClauses(clauses, start).flatMap(c => (c.value ? [[c.word.text, c.value]] : [])));
}
