/** The chain of numbers behind a result, in plain data: for hovers, for `explain`, for the report. */
import { oneOf } from '../model/literal.ts';
import { isRatio, isShare, plain, show, showWithin } from '../model/show.ts';
import type { Place } from '../model/model.ts';
import type { Cell, Graph } from '../results/graph.ts';
import { isInner } from '../results/expression.ts';
import { isBent, sample, type Band } from '../results/sampling.ts';
import { bandOf, figure } from '../results/shown.ts';

export interface Shown {
  readonly name: string;
  readonly words: string;
  /** the value as it is shown: "1471 ± 3 mm", "16 to 53 %", "unknown" */
  readonly text: string;
  readonly value?: number;
  /** standard uncertainty, SI */
  readonly u?: number;
  readonly band?: Band;
  readonly missing?: string;
}

export interface Link extends Shown {
  readonly origin: Cell['origin'];
  readonly reason?: string;
  readonly formula?: string;
  readonly source?: string;
  readonly at?: Place;
  readonly depth: number;
  /** share of the result's variance that comes from this input, by first order */
  readonly share?: number;
}

export interface Chain {
  readonly result: Link;
  /** what it is computed from, level by level, each once */
  readonly links: readonly Link[];
  /** inputs that are guesses and move the result, with their reasons */
  readonly guesses: readonly Link[];
  /** how the uncertainty was found */
  readonly method: 'exact' | 'first order' | 'draws';
}

/** A middle with its ± would promise more than is known. */
const wide = (band: Band): boolean => 2 * band.std > 0.25 * Math.abs(band.mean);

/** A cell as it is shown. What first order does not describe is drawn, so that a flat top is not taken for certainty. */
export function showCell(graph: Graph, cell: Cell): Shown {
  const head = { name: cell.name, words: cell.words };
  const value = graph.value(cell);
  if (value === undefined) return { ...head, text: 'unknown', ...(cell.missing ? { missing: cell.missing.why } : {}) };
  if (isBent(graph, cell)) {
    const band = sample(graph, cell);
    if (band && band.draws > 0) return { ...head, value, u: band.std, band, text: bandText(cell, band) };
    return { ...head, value, u: 0, text: figure(cell, value, 0) };
  }
  const u = graph.uncertainty(cell);
  if (cell.spread?.kind === 'factor') return { ...head, value, u, text: `${show(value, cell.dim, 0, cell.unit)} ×÷ ${plain(cell.spread.amount, 3)}` };
  if (isRatio(cell.name)) return { ...head, value, u, text: figure(cell, value, u) };
  if (cell.spread?.kind === 'one of') return { ...head, value, u, text: oneOf(cell.spread.values.map(String)) };
  // An input is shown as it is written: its ± is a half-width, not twice a standard uncertainty.
  if (cell.spread?.kind === 'within') return { ...head, value, u, text: showWithin(value, cell.dim, cell.spread.amount, cell.unit) };
  return { ...head, value, u, text: figure(cell, value, u) };
}

const bandText = (cell: Cell, band: Band): string => (isShare(cell.name) || wide(band) ? bandOf(cell, band.low, band.high) : figure(cell, band.mean, band.std));

export function chainOf(graph: Graph, cell: Cell): Chain {
  const shares = new Map(cell.missing ? [] : graph.ranking(cell).map(r => [r.input, r.share] as const));
  const link = (c: Cell, depth: number): Link => ({
    ...showCell(graph, c), origin: c.origin, depth,
    ...(c.reason !== undefined ? { reason: c.reason } : {}), ...(c.rule ? { formula: c.formula ?? c.rule.formula } : {}), ...(c.rule?.source !== undefined ? { source: c.rule.source } : {}),
    ...(c.at ? { at: c.at } : {}), ...(shares.has(c) && shares.get(c)! > 0 ? { share: shares.get(c)! } : {}),
  });
  const links: Link[] = [];
  const guessed = new Set(guessesOf(graph, cell));
  const guesses: Link[] = [];
  const seen = new Set<Cell>([cell]);
  const walk = (c: Cell, depth: number): void => {
    for (const i of c.inputs) {
      if (seen.has(i)) continue;
      seen.add(i);
      // The parts of what is written stand in its formula; of them only names and what is unsure have a line of their own.
      if (isInner(i) && !i.spread) { walk(i, depth); continue; }
      const own = link(i, depth);
      links.push(own);
      if (guessed.has(i)) guesses.push(own);
      walk(i, depth + 1);
    }
  };
  walk(cell, 1);
  const result = link(cell, 0);
  return { result, links, guesses, method: result.band ? 'draws' : (result.u ?? 0) > 0 ? 'first order' : 'exact' };
}

/** The guesses that a result rests on: those of which another value would move it. */
export function guessesOf(graph: Graph, cell: Cell): readonly Cell[] {
  const slopes = cell.missing ? undefined : graph.slopes(cell);
  return graph.ancestors(cell).filter(c => c !== cell && c.origin === 'assumed' && moves(graph, cell, c, slopes?.get(c) ?? 0));
}

/** The height of the beams moves nothing, where all run at one height. */
function moves(graph: Graph, cell: Cell, guess: Cell, slope: number): boolean {
  const [now, v] = [graph.value(cell), graph.value(guess)];
  if (now === undefined || v === undefined) return true;
  if (Math.abs(slope * (v === 0 ? 1 : v)) > 1e-6 * Math.abs(now)) return true;
  // What has no slope here may have one elsewhere.
  const at = graph.evaluator(cell, [guess]);
  return [v === 0 ? 1 : v * 0.5, v * 1.5].some(x => !(Math.abs(at([x]) - now) <= 1e-9 * Math.abs(now)));
}
