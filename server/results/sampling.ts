/**
 * Seeded Monte Carlo, for results that first order cannot describe (JCGM 101:2008). A sum of several inputs, none of which dominates, is drawn
 * as one normal number, and a costly cell as one of its own draws, so that the draw costs the curved end of the graph only. Inputs have their random numbers by their
 * order below the result: what a thing is called, and what else is written, changes no band.
 */
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';
import { standardUncertainty, type Spread } from '../model/quantity.ts';
import type { Band, Cell, Graph } from './graph.ts';

export type { Band };

/** Spread evenly over each input (Latin hypercube), so that few draws give steady ends of the band. */
export const DRAWS = 200;
/** Enough of rules that sum over many parts: what those are guessed from is known to a factor. */
export const FEW_DRAWS = 100;
const SEED = 20260211;

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
  if (!fixed) return notes.shared.band ??= drawBand(graph, cell, NONE_FIXED);
  const [one] = fixed.size === 1 ? fixed : [];
  if (!one) return drawBand(graph, cell, fixed);
  const [by, value] = one;
  if (notes.held?.by !== by || notes.held.value !== value) notes.held = { by, value, band: drawBand(graph, cell, fixed) };
  return notes.held.band;
}
const NONE_FIXED: ReadonlyMap<Cell, number> = new Map();

/** The draws of a cell; one number where it is the same in all. */
function drawAll(graph: Graph, cell: Cell, fixed: ReadonlyMap<Cell, number>): Float64Array | number {
  const leaves = leavesOf(graph, cell, fixed);
  const unsure = leaves.filter(l => l.u > 0);
  const free = [...unsure, ...leaves.filter(l => l.u === 0 && fixed.has(l.cell))];
  const evaluate = graph.evaluator(cell, free.map(l => l.cell), leaves.map(l => l.cell));
  const at = free.map(l => l.value);
  if (unsure.length === 0) return evaluate(at);
  const draws = evaluate.costly ? FEW_DRAWS : DRAWS;
  const columns = unsure.map(leaf => drawn(leaf, leaves.indexOf(leaf), draws));
  const all = new Float64Array(draws);
  for (let n = 0; n < draws; n++) {
    for (let k = 0; k < columns.length; k++) at[k] = columns[k]![n]!;
    all[n] = evaluate(at);
  }
  return all;
}

/** Draws, least first. What cannot be, such as the arc sine of 1.1, is left out: the band is that of what can. */
function inOrder(all: Float64Array): Float64Array {
  return (all.every(Number.isFinite) ? all : all.filter(Number.isFinite)).sort();
}

/** A cell of a graph. */
export interface Result {
  readonly graph: Graph;
  readonly cell: Cell;
}

/**
 * In how many of the draws a result of one graph lies above that of another, of 1; undefined where too few can be. What both rest on, as `shared` tells of an input of the second (the input
 * of the first that is the same thing, as sure and of the same value), is drawn once for both, so that it cancels where it should.
 */
export function shareAbove(first: Result, second: Result, shared: (input: Cell) => Cell | undefined): number | undefined {
  const inputsOf = ({ graph, cell }: Result): Cell[] => graph.ancestors(cell).filter(c => !c.rule && graph.isUnsure(c));
  const columns = new Map<Cell, number>(inputsOf(first).map((c, i) => [c, i]));
  const both = [first, second].map((r, i) => {
    const inputs = inputsOf(r);
    for (const c of inputs) if (!columns.has(c)) columns.set(c, (i === 1 ? columns.get(shared(c) ?? c) : undefined) ?? columns.size);
    const draws = inputs.map(c => { const value = r.graph.value(c)!; return drawn({ cell: c, value, u: standardUncertainty(value, c.spread) }, columns.get(c)!, FEW_DRAWS); });
    const evaluate = r.graph.evaluator(r.cell, inputs);
    return Array.from({ length: FEW_DRAWS }, (_, n) => evaluate(draws.map(d => d[n]!)));
  });
  let [above, possible] = [0, 0];
  for (let n = 0; n < FEW_DRAWS; n++) {
    const [a, b] = [both[0]![n]!, both[1]![n]!];
    if (!Number.isFinite(a) || !Number.isFinite(b)) continue;
    possible++;
    above += b > a ? 1 : b === a ? 0.5 : 0;
  }
  return possible < FEW_DRAWS / 2 ? undefined : above / possible;
}

/** The draws of a costly cell, in order, which serve all that rests on it. */
function ownDraws(graph: Graph, cell: Cell): Float64Array | number {
  const { shared } = graph.noted(cell);
  if (shared.draws === undefined) {
    const all = drawAll(graph, cell, NONE_FIXED);
    const possible = typeof all === 'number' ? all : inOrder(all);
    shared.draws = typeof possible !== 'number' && possible.length === 0 ? graph.value(cell)! : possible;
  }
  return shared.draws;
}

function drawBand(graph: Graph, cell: Cell, fixed: ReadonlyMap<Cell, number>): Band {
  const own = fixed.size === 0 && cell.rule?.costly === true;
  const all = own ? ownDraws(graph, cell) : drawAll(graph, cell, fixed);
  if (typeof all === 'number') return { low: all, high: all, mean: all, std: 0, draws: 0 };
  graph.drawn++;
  const possible = own ? all : inOrder(all);
  const out = possible.length > 0 ? possible : Float64Array.of(graph.value(cell)!);
  const last = out.length - 1;
  let sum = 0;
  for (const v of out) sum += v;
  const mean = sum / out.length;
  let squares = 0;
  for (const v of out) squares += (v - mean) ** 2;
  return { low: out[Math.floor(0.025 * last)]!, high: out[Math.ceil(0.975 * last)]!, mean, std: Math.sqrt(squares / out.length), draws: all.length };
}

interface Leaf {
  readonly cell: Cell;
  readonly value: number;
  readonly u: number;
  /** of a costly cell, what it came out as in its own draws, least first */
  readonly own?: Float64Array;
}

/** A sum is spread like a normal number only while none of its inputs brings more than this share of its variance (JCGM 101:2008, 9.2.4). */
const LARGEST_SHARE = 0.4;

const NOTHING: readonly Cell[] = [];
function ancestorsOf(graph: Graph, cell: Cell): readonly Cell[] {
  return graph.noted(cell).below ??= graph.ancestors(cell);
}

/** Where the graph is cut: inputs, fixed cells, and costly cells and linear ones that sum up several unsure inputs, where nothing else above the cut shares what they rest on. */
function leavesOf(graph: Graph, top: Cell, fixed: ReadonlyMap<Cell, number>): Leaf[] {
  const inputs = new Map<Cell, readonly Cell[]>();
  const stops = (c: Cell): boolean => {
    if (c === top) return false;
    if (!c.rule || fixed.has(c)) { inputs.set(c, [c]); return true; }
    const below = c.rule.linear === true || c.rule.costly === true ? ancestorsOf(graph, c) : NOTHING;
    if (below.length === 0 || below.some(b => fixed.has(b)) || !(c.rule.costly === true || isNormal(graph, c, below))) return false;
    inputs.set(c, below.filter(a => !a.rule && graph.isUnsure(a)));
    return true;
  };
  graph.ancestors(top, stops);
  const uses = new Map<Cell, number>();
  for (const of of inputs.values()) for (const i of of) uses.set(i, (uses.get(i) ?? 0) + 1);
  const leaves = new Set<Cell>();
  for (const [c, of] of inputs) {
    if (of.some(i => uses.get(i)! > 1)) for (const i of of) leaves.add(i);
    else leaves.add(c);
  }
  return [...leaves].sort((a, b) => a.index - b.index).map(cell => {
    const value = fixed.get(cell) ?? graph.value(cell)!;
    if (cell.rule?.costly && !fixed.has(cell)) {
      const own = ownDraws(graph, cell);
      return typeof own === 'number' ? { cell, value, u: 0 } : { cell, value, u: 1, own };
    }
    return { cell, value, u: fixed.has(cell) ? 0 : cell.rule ? graph.uncertainty(cell) : standardUncertainty(value, cell.spread) };
  });
}

/** Whether a linear cell is spread like one normal number: several inputs, none of them wide or bent. */
function isNormal(graph: Graph, cell: Cell, below: readonly Cell[]): boolean {
  return graph.noted(cell).normal ??= !below.some(c => c.spread?.kind === 'factor' || c.spread?.kind === 'one of' || c.rule?.curved) && graph.largestShare(cell) <= LARGEST_SHARE && !isBent(graph, cell);
}

/** What the leaf with that place among the leaves is drawn as. */
function drawn(leaf: Leaf, place: number, draws: number): Float64Array {
  const s = leaf.cell.rule ? undefined : leaf.cell.spread;
  const of = column(place, draws);
  const { flat } = of;
  if (leaf.own) { const { own } = leaf; return each(flat, f => own[Math.floor(f * own.length)]!); }
  switch (s?.kind) {
    case 'within': return each(flat, f => leaf.value + (2 * f - 1) * s.amount);
    case 'factor': return each(flat, f => leaf.value * s.amount ** (2 * f - 1));
    case 'one of': return each(flat, f => s.values[Math.min(s.values.length - 1, Math.floor(f * s.values.length))]!);
    default: return each(of.normal, z => leaf.value + leaf.u * z);
  }
}

/** `map` of typed arrays, as a plain loop: a band is drawn from a dozen columns. */
function each(column: Float64Array, does: (v: number) => number): Float64Array {
  const out = new Float64Array(column.length);
  for (let n = 0; n < out.length; n++) out[n] = does(column[n]!);
  return out;
}

/** The random numbers of one leaf, from a stream of their own. */
class Column {
  private readonly rng: RandomGenerator;
  /** spread evenly from 0 to 1 */
  readonly flat: Float64Array;
  private bell: Float64Array | undefined;

  constructor(place: number, draws: number) {
    this.rng = xoroshiro128plus(SEED + place);
    this.flat = stratified(this.rng, draws);
  }

  /** the same numbers, spread like a normal one: made when a leaf is */
  get normal(): Float64Array { return this.bell ??= normalOf(this.flat, stratified(this.rng, this.flat.length)); }
}
const normalOf = (flat: Float64Array, turn: Float64Array): Float64Array => flat.map((f, i) => Math.sqrt(-2 * Math.log(1 - f)) * Math.cos(2 * Math.PI * turn[i]!));

// The seed is fixed, so that the random numbers themselves can be kept.
const kept = new Map<number, Map<number, Column>>([[DRAWS, new Map()], [FEW_DRAWS, new Map()]]);
function column(place: number, draws: number): Column {
  const columns = kept.get(draws)!;
  let known = columns.get(place);
  if (!known) columns.set(place, known = new Column(place, draws));
  return known;
}

/** One number in each of as many equal steps from 0 to 1, in a random order (Fisher and Yates' shuffle). */
function stratified(rng: RandomGenerator, draws: number): Float64Array {
  const out = new Float64Array(draws);
  for (let i = 0; i < draws; i++) out[i] = (i + uniformFloat64(rng)) / draws;
  for (let i = draws - 1; i > 0; i--) {
    const j = uniformInt(rng, 0, i);
    [out[i], out[j]] = [out[j]!, out[i]!];
  }
  return out;
}
