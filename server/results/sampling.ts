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

// The same question is asked by a check, a hover and the report; the answer is kept as long as the graph.
const kept = new WeakMap<Graph, Map<Cell, Band>>();

/** The band of a cell; `fixed` cells are held at a value. The seed is fixed, so that the same text gives the same band. */
export function sample(graph: Graph, cell: Cell, fixed?: ReadonlyMap<Cell, number>): Band | undefined {
  if (cell.missing) return undefined;
  if (fixed) return drawBand(graph, cell, fixed);
  let of = kept.get(graph);
  if (!of) kept.set(graph, of = new Map<Cell, Band>());
  let band = of.get(cell);
  if (!band) of.set(cell, band = drawBand(graph, cell, new Map()));
  return band;
}

function drawBand(graph: Graph, cell: Cell, fixed: ReadonlyMap<Cell, number>): Band {
  const leaves = leavesOf(graph, cell, fixed);
  const evaluate = graph.evaluator(cell, leaves.map(l => l.cell));
  const at = leaves.map(l => l.value);
  if (leaves.every(l => l.u === 0)) {
    const value = evaluate(at);
    return { low: value, high: value, mean: value, std: 0, draws: 0 };
  }
  const rng = xoroshiro128plus(SEED);
  const out = new Float64Array(DRAWS);
  for (let n = 0; n < DRAWS; n++) {
    for (let k = 0; k < leaves.length; k++) if (leaves[k]!.u > 0) at[k] = draw(rng, leaves[k]!);
    out[n] = evaluate(at);
  }
  out.sort();
  const mean = out.reduce((s, v) => s + v, 0) / DRAWS;
  const std = Math.sqrt(out.reduce((s, v) => s + (v - mean) ** 2, 0) / DRAWS);
  return { low: out[Math.floor(0.025 * (DRAWS - 1))]!, high: out[Math.ceil(0.975 * (DRAWS - 1))]!, mean, std, draws: DRAWS };
}

interface Leaf {
  readonly cell: Cell;
  readonly value: number;
  readonly u: number;
}

/** Fewer unsure numbers than this do not sum up to a normal one. */
const MANY = 3;

/** Where the graph is cut: inputs, fixed cells, and linear cells that sum up many unsure inputs which nothing else above the cut shares. */
function leavesOf(graph: Graph, top: Cell, fixed: ReadonlyMap<Cell, number>): Leaf[] {
  const inputs = new Map<Cell, readonly Cell[]>();
  const stops = (c: Cell): boolean => {
    if (c === top) return false;
    if (!c.rule || fixed.has(c)) { inputs.set(c, [c]); return true; }
    const below = c.rule.linear === true ? graph.ancestors(c) : [];
    if (below.length === 0 || !isNormal(below, fixed)) return false;
    inputs.set(c, below.filter(a => !a.rule));
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
    return { cell, value, u: fixed.has(cell) ? 0 : cell.rule ? graph.uncertainty(cell) : standardUncertainty(value, cell.spread) };
  });
}

/** Whether the last of these cells, a linear one, is sure or spread like one normal number: many inputs, none of them wide, bent or held. */
function isNormal(cells: readonly Cell[], fixed: ReadonlyMap<Cell, number>): boolean {
  const unsure = cells.filter(c => c.spread);
  return (unsure.length === 0 || unsure.length >= MANY) && unsure.every(c => c.spread!.kind === 'within' || c.spread!.kind === 'std') && !cells.some(c => fixed.has(c) || c.rule?.curved);
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
