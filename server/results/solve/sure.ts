/** How sure an answer is, and whether it is the only one. */
import { Matrix, pseudoInverse, SVD } from 'ml-matrix';
import { standardUncertainty } from '../../model/quantity.ts';
import type { Graph } from '../graph.ts';
import type { Space } from './space.ts';
import { rise } from './space.ts';

export interface Sureness {
  /** standard uncertainty of each unknown, SI, to first order: what the other numbers leave open */
  readonly u: readonly number[];
  /** each unknown that could be something else, if others follow */
  readonly loose: readonly boolean[];
}

/** Below this share of the steepest direction, nothing changes. */
const FLAT = 1e-6;

/**
 * At an answer the results are what is asked for; another true value p of an input asks for another x: dx = −J⁺·(∂f/∂p)·dp, J the slopes by the unknowns (implicit function theorem; J⁺ of least squares).
 * Conditions that only keep to one side and are not at their limit ask for nothing.
 */
export function sureness(space: Space, graph: Graph, t: readonly number[]): Sureness {
  const n = t.length;
  const slopes = space.slopes(t);
  const results = space.results(t);
  const binding = space.wishes.map((_, i) => i).filter(i => { const w = space.wishes[i]!; return w.sort === 'equal' || Math.abs(results[i]! - w.value) < 1e-3 * w.little; });
  if (binding.length === 0) return { u: t.map(() => 0), loose: t.map(() => true) };
  const J = new Matrix(binding.map(i => [...slopes[i]!]));
  const svd = new SVD(J, { autoTranspose: true });
  const most = svd.diagonal[0] ?? 0;
  const V = svd.rightSingularVectors;
  const tight = svd.diagonal.map(s => s > FLAT * most && s > 0);
  // An unknown is held where all of it lies in the directions that change something.
  const loose = t.map((_, k) => tight.reduce((sum, is, j) => sum + (is && j < V.columns ? V.get(k, j) ** 2 : 0), 0) < 1 - 1e-9);
  const inverse = pseudoInverse(J, FLAT * most);
  const variance = new Map<number, number>();
  const parts = new Map<object, { u: number; by: number[] }>();
  binding.forEach((i, row) => {
    const { cell, little } = space.wishes[i]!;
    for (const [input, slope] of graph.slopes(cell)) {
      const u = standardUncertainty(graph.value(input)!, input.spread);
      if (u === 0) continue;
      let part = parts.get(input);
      if (!part) parts.set(input, part = { u, by: binding.map(() => 0) });
      part.by[row] = slope / little;
    }
  });
  for (const { u, by } of parts.values()) for (let k = 0; k < n; k++) variance.set(k, (variance.get(k) ?? 0) + (by.reduce((s, b, row) => s + inverse.get(k, row) * b, 0) * u) ** 2);
  return { loose, u: t.map((tk, k) => {
    return Math.sqrt(variance.get(k) ?? 0) * rise(space.unknowns[k]!, tk);
  }) };
}
