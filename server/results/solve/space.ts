/** A planned setup as a function of its unknowns, each from 0 to 1 over where it is looked for: what its conditions miss, and how that changes. */
import type { Cell } from '../graph.ts';
import type { Results } from '../plan.ts';
import type { Unknown } from './unknowns.ts';
import { missedBy, type Condition, type Wish } from './wishes.ts';

export class Space<C extends Condition = Wish> {
  readonly cells: readonly Cell[];
  private readonly of: readonly ((at: readonly number[]) => number)[];
  private readonly slope: readonly ((at: readonly number[]) => number[])[];

  /** `results` are planned with a value for each of the unknowns; `still`: cells that stay as they are whatever these do. */
  constructor(results: Results, readonly unknowns: readonly Unknown[], readonly wishes: readonly C[], still: readonly Cell[] = []) {
    const { graph } = results;
    this.cells = unknowns.map(u => graph.find(u.name)!);
    this.of = wishes.map(w => graph.evaluator(w.cell, this.cells, still));
    this.slope = wishes.map(w => graph.differentiator(w.cell, this.cells, still));
  }

  values(t: readonly number[]): number[] { return t.map((ti, i) => valueAt(this.unknowns[i]!, ti)); }

  /** The results of the conditions, SI, of what counts by its size that; NaN where there is none. */
  results(t: readonly number[]): number[] {
    const at = this.values(t);
    return this.of.map((f, i) => (this.wishes[i]!.size ? Math.abs(f(at)) : f(at)));
  }

  /** What each condition misses, in little steps. */
  missed(t: readonly number[]): number[] {
    return this.results(t).map((v, i) => (Number.isFinite(v) ? missedBy(this.wishes[i]!, v) / this.wishes[i]!.little : Number.NaN));
  }

  /** How far all of it is from being met: 0 where it is; infinite where a result has no value. */
  worth(t: readonly number[]): number {
    const sum = this.missed(t).reduce((s, m) => s + m * m, 0);
    return Number.isFinite(sum) ? sum : Infinity;
  }

  /** What the finest steps of the unknowns make of one that should be equal, SI: nearer than that nothing can be set. */
  finest(t: readonly number[], i: number): number {
    const { sort, little } = this.wishes[i]!;
    if (sort !== 'equal') return 0;
    const slopes = this.slopes(t)[i]!;
    return this.unknowns.reduce((sum, u, k) => {
      const v = valueAt(u, t[k]!);
      const step = u.wide !== undefined ? Math.abs(v) * 1e-3 : u.steps[u.steps.length - 1]!;
      return sum + Math.abs(slopes[k]! * little * (shareAt(u, Math.min(u.high, v + step)) - t[k]!));
    }, 0);
  }

  private isFar(k: number, is: number): boolean {
    const { sort, value, little } = this.wishes[k]!;
    return sort !== 'equal' && (sort === 'at most' ? value - is : is - value) > Math.max(10 * little, 0.1 * Math.abs(value));
  }

  /** Derivatives of what a condition asks for by each unknown, in little steps over the range: one sweep back for each condition. Of those that are met with much to spare there are none, where `results` tell so. */
  slopes(t: readonly number[], results?: readonly number[]): number[][] {
    const at = this.values(t);
    return this.wishes.map((w, k) => {
      if (results && this.isFar(k, results[k]!)) return at.map(() => 0);
      const sign = w.size && this.of[k]!(at) < 0 ? -1 : 1;
      return this.slope[k]!(at).map((by, i) => (sign * by * rise(this.unknowns[i]!, t[i]!)) / w.little);
    });
  }
}

/** The value, SI, at a share of the range; of what may have many sizes by its logarithm. */
export function valueAt({ low, high, wide }: Unknown, t: number): number {
  if (wide === undefined) return low + t * (high - low);
  if (low >= 0) return wide * (high / wide) ** t;
  return t < 0.5 ? -wide * (high / wide) ** (1 - 2 * t) : wide * (high / wide) ** (2 * t - 1);
}
export function shareAt({ low, high, wide }: Unknown, value: number): number {
  if (high === low) return 0;
  if (wide === undefined) return (value - low) / (high - low);
  const size = Math.log(Math.max(wide, Math.abs(value)) / wide) / Math.log(high / wide);
  return low >= 0 ? size : value < 0 ? (1 - size) / 2 : (1 + size) / 2;
}
/** How the value changes with the share. */
export const rise = (u: Unknown, t: number): number => (u.wide === undefined ? u.high - u.low : Math.abs(valueAt(u, t)) * Math.log(u.high / u.wide) * (u.low >= 0 ? 1 : 2));
