/**
 * Seeded Monte Carlo, for results that first order cannot describe (JCGM 101:2008). What is linear in its inputs is drawn as one
 * normal number, so that the draw costs the curved end of the graph only.
 */
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';
import { standardUncertainty } from '../model/quantity.ts';
import type { Cell, Graph } from './graph.ts';

export interface Band {
  /** 95 % of the draws lie between low and high */
  readonly low: number;
  readonly high: number;
  readonly mean: number;
  readonly std: number;
  readonly draws: number;
}

export const DRAWS = 400;
const SEED = 20260211;

/** The band of a cell; `fixed` cells are held at a value. The seed is fixed, so that the same text gives the same band. */
export function sample(graph: Graph, cell: Cell, fixed: ReadonlyMap<Cell, number> = new Map(), draws = DRAWS): Band | undefined {
  if (cell.missing) return undefined;
  const leaves = leavesOf(graph, cell).map(l => (fixed.has(l.cell) ? { ...l, value: fixed.get(l.cell)!, u: 0 } : l));
  const value = fixed.size > 0 ? graph.evaluate(cell, fixed) : graph.value(cell)!;
  if (leaves.every(l => l.u === 0)) return { low: value, high: value, mean: value, std: 0, draws: 0 };
  const cut = new Set(leaves.map(l => l.cell));
  const order = above(cell, cut);
  const rng = xoroshiro128plus(SEED);
  const out = new Float64Array(draws);
  const overlay = new Map<Cell, number>();
  for (let n = 0; n < draws; n++) {
    for (const leaf of leaves) overlay.set(leaf.cell, draw(rng, leaf));
    out[n] = graph.evaluate(cell, overlay, order);
  }
  out.sort();
  const mean = out.reduce((s, v) => s + v, 0) / draws;
  const std = Math.sqrt(out.reduce((s, v) => s + (v - mean) ** 2, 0) / draws);
  return { low: out[Math.floor(0.025 * (draws - 1))]!, high: out[Math.ceil(0.975 * (draws - 1))]!, mean, std, draws };
}

interface Leaf {
  readonly cell: Cell;
  readonly value: number;
  readonly u: number;
}

/** Where the graph is cut: inputs, and linear cells whose inputs nothing else above the cut shares. */
function leavesOf(graph: Graph, top: Cell): Leaf[] {
  const linear = new Set<Cell>();
  const reached = new Map<Cell, Set<Cell>>();
  const plain = new Set<Cell>();
  const visit = (c: Cell, seen: Set<Cell>): void => {
    if (seen.has(c)) return;
    seen.add(c);
    if (!c.rule) { plain.add(c); return; }
    if (c !== top && c.rule.linear) { linear.add(c); return; }
    for (const i of c.inputs) visit(i, seen);
  };
  visit(top, new Set());
  for (const c of linear) reached.set(c, new Set(graph.ancestors(c).filter(a => !a.rule)));
  const shared = (c: Cell): boolean => {
    for (const [other, inputs] of reached) if (other !== c) for (const i of reached.get(c)!) if (inputs.has(i)) return true;
    for (const p of plain) if (reached.get(c)!.has(p)) return true;
    return false;
  };
  const opened = [...linear].filter(shared);
  for (const c of opened) { linear.delete(c); for (const i of reached.get(c)!) plain.add(i); }
  const leaves: Leaf[] = [];
  for (const c of [...plain, ...linear].sort((a, b) => a.index - b.index)) {
    const value = graph.value(c)!;
    leaves.push({ cell: c, value, u: c.rule ? graph.uncertainty(c) : standardUncertainty(value, c.spread) });
  }
  return leaves;
}

function above(top: Cell, cut: ReadonlySet<Cell>): Cell[] {
  const seen = new Set<Cell>();
  const visit = (c: Cell): void => {
    if (seen.has(c)) return;
    seen.add(c);
    if (!cut.has(c)) for (const i of c.inputs) visit(i);
  };
  visit(top);
  return [...seen].sort((a, b) => a.index - b.index);
}

function draw(rng: RandomGenerator, leaf: Leaf): number {
  const s = leaf.cell.rule ? undefined : leaf.cell.spread;
  if (leaf.u === 0) return leaf.value;
  const flat = (): number => uniformFloat64(rng);
  switch (s?.kind) {
    case 'within': return leaf.value + (2 * flat() - 1) * s.amount;
    case 'factor': return leaf.value * s.amount ** (2 * flat() - 1);
    case 'one of': return s.values[Math.min(s.values.length - 1, Math.floor(flat() * s.values.length))]!;
    default: return leaf.value + leaf.u * Math.sqrt(-2 * Math.log(1 - flat())) * Math.cos(2 * Math.PI * flat());
  }
}
