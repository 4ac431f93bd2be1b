/** Whether a result has changed for sure, or lies where it may have lain before. */
import { standardUncertainty } from '../model/quantity.ts';
import type { Cell, Graph } from '../results/graph.ts';
import { isBent, shareAbove, type Result } from '../results/sampling.ts';
import { sameSpread } from '../results/twins.ts';
import { renamed, type Names } from './meaning.ts';

/** Two standard uncertainties, or 95 of 100 draws: as surely as the program shows anything. */
const TIMES = 2;
const LEAST = 0.95;

/** Inputs by their names: a mirror stays the same mirror, with its own error, as long as nobody has set or read it anew. */
function sharedWith(graph: Graph, before: Graph, below: Cell, names: Names): (input: Cell) => Cell | undefined {
  const old = new Map<string, Cell>();
  for (const c of before.ancestors(below)) {
    if (c.rule) continue;
    old.set(renamed(c.name, names), c);
    if (!old.has(c.name)) old.set(c.name, c);
  }
  return input => {
    const same = old.get(input.name);
    return same && sameSpread(same.spread, input.spread) && before.value(same) === graph.value(input) ? same : undefined;
  };
}

/** True where the unsureness of both does not explain how far they lie apart. What both rest on cancels (JCGM 100:2008, F.1.2). */
export function isSure(before: Result, after: Result, names: Names): boolean {
  const [a, b] = [before.graph.value(before.cell), after.graph.value(after.cell)];
  if (a === undefined || b === undefined) return a !== b;
  const shared = sharedWith(after.graph, before.graph, before.cell, names);
  if (isBent(before.graph, before.cell) || isBent(after.graph, after.cell)) {
    const above = shareAbove(before, after, shared);
    return above !== undefined && (above >= LEAST || above <= 1 - LEAST);
  }
  const old = new Map(before.graph.slopes(before.cell));
  let sum = 0;
  const add = (input: Cell, graph: Graph, slope: number): void => { if (input.spread) sum += (slope * standardUncertainty(graph.value(input)!, input.spread)) ** 2; };
  for (const [input, slope] of after.graph.slopes(after.cell)) {
    const same = shared(input);
    add(input, after.graph, slope - (same ? (old.get(same) ?? 0) : 0));
    if (same) old.delete(same);
  }
  for (const [input, slope] of old) add(input, before.graph, slope);
  return Math.abs(b - a) > TIMES * Math.sqrt(sum);
}
