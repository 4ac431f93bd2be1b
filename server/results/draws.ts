/**
 * What cells come out as in each of a fixed number of seeded draws (Monte Carlo, JCGM 101:2008). All cells of a graph are drawn together: an input has one column of
 * numbers, whoever rests on it, so that what two results share moves both, and is computed once.
 */
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';
import { standardUncertainty } from '../model/quantity.ts';
import type { Cell, Graph } from './graph.ts';

/** Spread evenly over each input (Latin hypercube), so that few draws give steady ends of the band. */
export const DRAWS = 128;
const SEED = 20260211;

const MOST_AT_HAND = 4096;

/** What a cell comes out as in each draw; one number where it is the same in all. */
type Drawn = Float64Array | number;

/** Draws that are at hand, of the graph that was asked last: to keep those of all would cost more than to draw them again. Those of costly rules stay with their cells. */
let atHand: { graph: Graph | undefined; readonly draws: Map<Cell, Drawn> } = { graph: undefined, draws: new Map() };

/** A cell in each draw; `held` cells stay at a value, as if they were exact. */
export function drawn(graph: Graph, top: Cell, held: ReadonlyMap<Cell, number>): Drawn {
  if (atHand.graph !== graph || atHand.draws.size > MOST_AT_HAND) atHand = { graph, draws: new Map() };
  const kept = (c: Cell): Drawn | undefined => graph.known(c)?.draws ?? atHand.draws.get(c);
  const order = graph.ancestors(top, c => held.has(c) || (held.size === 0 && (!graph.isUnsure(c) || kept(c) !== undefined)));
  // What rests on a held cell is drawn for this once.
  const apart = new Map<Cell, Drawn>();
  const of = (c: Cell): Drawn => apart.get(c) ?? kept(c) ?? graph.value(c)!;
  for (const c of order) {
    if (held.has(c)) apart.set(c, held.get(c)!);
    else if (c.rule && c.inputs.some(i => apart.has(i))) apart.set(c, byRule(c, c.inputs.map(of)));
    else if (graph.isUnsure(c) && kept(c) === undefined) {
      const draws = c.rule ? byRule(c, c.inputs.map(of)) : input(graph, c);
      if (c.rule?.costly) graph.noted(c).draws = draws;
      else atHand.draws.set(c, draws);
    }
  }
  return of(top);
}

function byRule({ rule }: Cell, from: readonly Drawn[]): Drawn {
  const at = from.map(d => (typeof d === 'number' ? d : d[0]!));
  const moving: { readonly k: number; readonly draws: Float64Array }[] = [];
  from.forEach((draws, k) => { if (typeof draws !== 'number') moving.push({ k, draws }); });
  if (moving.length === 0) return rule!.compute(at);
  const out = new Float64Array(DRAWS);
  for (let n = 0; n < DRAWS; n++) {
    for (const m of moving) at[m.k] = m.draws[n]!;
    out[n] = rule!.compute(at);
  }
  return out;
}

/** An input in each draw. */
function input(graph: Graph, cell: Cell): Drawn {
  const [value, s] = [graph.value(cell)!, cell.spread];
  const { flat, normal } = column(cell.name);
  switch (s?.kind) {
    case undefined: return value;
    case 'within': return flat.map(f => value + (2 * f - 1) * s.amount);
    case 'factor': return flat.map(f => value * s.amount ** (2 * f - 1));
    case 'one of': return flat.map(f => s.values[Math.min(s.values.length - 1, Math.floor(f * s.values.length))]!);
    default: {
      const u = standardUncertainty(value, s);
      return normal.map(z => value + u * z);
    }
  }
}

interface Column {
  readonly flat: Float64Array;
  readonly normal: Float64Array;
}

/** Each input has its own random numbers by its name: they stay the same whatever else is written, so that bands do not flicker. The seeds are fixed, so that they can be kept. */
const columns = new Map<string, Column>();
const MOST_COLUMNS = 1024;

function column(name: string): Column {
  let found = columns.get(name);
  if (!found) {
    const rng = xoroshiro128plus(seedOf(name));
    const flat = stratified(rng);
    const turn = stratified(rng);
    found = { flat, normal: flat.map((f, i) => Math.sqrt(-2 * Math.log(1 - f)) * Math.cos(2 * Math.PI * turn[i]!)) };
    if (columns.size >= MOST_COLUMNS) columns.clear();
    columns.set(name, found);
  }
  return found;
}

/** Another seed for each name: its FNV-1a hash. */
function seedOf(name: string): number {
  let hash = SEED;
  for (let i = 0; i < name.length; i++) hash = Math.imul(hash ^ name.charCodeAt(i), 0x01000193);
  return hash;
}

/** One number in each of as many equal steps from 0 to 1, in a random order (Fisher and Yates' shuffle). */
function stratified(rng: RandomGenerator): Float64Array {
  const out = Float64Array.from({ length: DRAWS }, (_, i) => (i + uniformFloat64(rng)) / DRAWS);
  for (let i = DRAWS - 1; i > 0; i--) {
    const j = uniformInt(rng, 0, i);
    [out[i], out[j]] = [out[j]!, out[i]!];
  }
  return out;
}
