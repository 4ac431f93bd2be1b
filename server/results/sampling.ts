/** How results lie that first order cannot describe: bands, from seeded draws (JCGM 101:2008). */
import { standardUncertainty, type Spread } from '../model/quantity.ts';
import { drawn } from './draws.ts';
import type { Band, Cell, Graph } from './graph.ts';

export type { Band };

/** Inputs that bring a smaller share of the variance are not asked whether they bend a result. */
const LEAST_SHARE = 0.02;
/** No more of them either: what each of many brings is too little to matter. */
const MOST_ASKED = 64;
/** A result is bent where an input at the end of its spread moves it otherwise than its slope says, by this share of the standard uncertainty; as a share of the value where that is 0. */
const BENT = 0.3;
const BENT_EXACT = 1e-4;

/** Whether first order does not describe how a cell is spread: by the rule that made it, or since an input is spread so widely that its slope does not tell. */
export function isBent(graph: Graph, cell: Cell): boolean {
  if (cell.missing || !cell.rule) return false;
  return cell.rule.curved === true || (graph.noted(cell).bent ??= bends(graph, cell));
}

function bends(graph: Graph, cell: Cell): boolean {
  const u = graph.uncertainty(cell);
  const asked = graph.ranking(cell).filter(r => r.input.spread && (u === 0 || r.share >= LEAST_SHARE)).slice(0, MOST_ASKED);
  const even = asked.every(({ input: { spread } }) => spread!.kind === 'within' || spread!.kind === 'std');
  if (asked.length === 0 || (even && graph.ancestors(cell).every(c => !c.rule || c.rule.linear))) return false;
  const value = graph.value(cell)!;
  const allowed = u > 0 ? BENT * u : BENT_EXACT * Math.abs(value);
  return asked.some(({ input, slope }) => {
    const at = graph.evaluator(cell, [input]);
    return ends(graph.value(input)!, input.spread!).some(([x, step]) => !(Math.abs(at([x]) - value - slope * step) <= allowed));
  });
}

/** Both ends of a spread, and how far from its middle first order takes them to be. */
function ends(value: number, spread: Spread): readonly (readonly [number, number])[] {
  if (spread.kind === 'one of') return spread.values.map(v => [v, v - value]);
  const step = standardUncertainty(value, spread) * Math.sqrt(3);
  return spread.kind === 'factor' ? [[value * spread.amount, Math.sign(value) * step], [value / spread.amount, -Math.sign(value) * step]] : [[value + step, step], [value - step, -step]];
}

/** Where a cell lies, as surely as 95 %: two standard uncertainties either way, or between the ends of its band where first order does not describe it. */
export function interval(graph: Graph, cell: Cell): { readonly low: number; readonly high: number } {
  const band = isBent(graph, cell) ? sample(graph, cell) : undefined;
  if (band) return band;
  const [value, give] = [graph.value(cell) ?? 0, 2 * graph.uncertainty(cell)];
  return { low: value - give, high: value + give };
}

/** The band of a cell; `fixed` cells are held at a value. The seed is fixed, so that the same text gives the same band. */
export function sample(graph: Graph, cell: Cell, fixed?: ReadonlyMap<Cell, number>): Band | undefined {
  if (cell.missing) return undefined;
  // The same question is asked by a check, a hover and the report.
  const notes = graph.noted(cell);
  if (!fixed) return notes.band ??= drawBand(graph, cell, NONE_FIXED);
  const [one] = fixed.size === 1 ? fixed : [];
  if (!one) return drawBand(graph, cell, fixed);
  const [by, value] = one;
  if (notes.held?.by !== by || notes.held.value !== value) notes.held = { by, value, band: drawBand(graph, cell, fixed) };
  return notes.held.band;
}
const NONE_FIXED: ReadonlyMap<Cell, number> = new Map();

function drawBand(graph: Graph, cell: Cell, fixed: ReadonlyMap<Cell, number>): Band {
  const all = drawn(graph, cell, fixed);
  if (typeof all === 'number') return { low: all, high: all, mean: all, std: 0, draws: 0 };
  graph.drawn++;
  // What cannot be, such as the arc sine of 1.1, is left out: the band is that of what can.
  const possible = all.filter(Number.isFinite);
  const out = possible.length > 0 ? possible : Float64Array.of(graph.value(cell)!);
  out.sort();
  const last = out.length - 1;
  let sum = 0;
  for (const v of out) sum += v;
  const mean = sum / out.length;
  let squares = 0;
  for (const v of out) squares += (v - mean) ** 2;
  return { low: out[Math.floor(0.025 * last)]!, high: out[Math.ceil(0.975 * last)]!, mean, std: Math.sqrt(squares / out.length), draws: all.length };
}
