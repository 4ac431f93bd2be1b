/** From a start to the nearest answer: damped Gauss-Newton steps within the limits, each a small quadratic program. */
import { solveQP } from 'quadprog';
import type { Space } from './space.ts';
import type { Condition } from './wishes.ts';

/** An answer is as good as exact: a millionth of what counts as little. */
const EXACT = 1e-12;
const STEPS = 40;
/** From one step of an unknown to the next there is not far to go. */
export const FEW = 6;
const STILL = 1e-12;

export interface Descent {
  readonly t: readonly number[];
  readonly worth: number;
}

/**
 * @param fixed unknowns that stay where they are
 * @param goOn false: it is to end now, with the best so far
 */
export function descend(space: Space<Condition>, start: readonly number[], fixed: ReadonlySet<number>, goOn: () => boolean, most = STEPS): Descent {
  let t = [...start];
  let worth = space.worth(t);
  let damping = 1e-4;
  const free = t.map((_, i) => i).filter(i => !fixed.has(i));
  for (let n = 0; n < most && worth > EXACT && free.length > 0 && Number.isFinite(worth) && goOn(); ) {
    const results = space.results(t);
    const slopes = space.slopes(t, results);
    let moved = false;
    // A step that makes it worse is taken again, shorter.
    for (; n < most && !moved; n++) {
      const d = step(space, t, results, slopes, free, damping);
      const next = t.map((ti, i) => Math.min(1, Math.max(0, ti + (d[free.indexOf(i)] ?? 0))));
      const size = Math.max(...next.map((v, i) => Math.abs(v - t[i]!)));
      if (!(size > STILL)) return { t, worth };
      const then = space.worth(next);
      if (then < worth) {
        const little = worth - then < 1e-6 * worth && size < 1e-6;
        moved = true;
        t = next;
        worth = then;
        damping = Math.max(1e-12, damping / 10);
        if (little) return { t, worth };
      } else {
        damping *= 10;
        if (damping > 1e12) return { t, worth };
      }
    }
  }
  return { t, worth };
}

/** The step d that makes Σ(r + J·d)² least, with slack for what must only keep to one side, and 0 ≤ t + d ≤ 1. */
function step(space: Space<Condition>, t: readonly number[], results: readonly number[], slopes: readonly (readonly number[])[], free: readonly number[], damping: number): number[] {
  const equal = space.wishes.flatMap((w, i) => (w.sort === 'equal' ? [i] : []));
  const sided = space.wishes.flatMap((w, i) => (w.sort === 'equal' ? [] : [i]));
  const [n, m] = [free.length, sided.length];
  const size = n + m;
  const row = (length: number): number[] => new Array<number>(length + 1).fill(0);
  const D = Array.from({ length: size + 1 }, () => row(size));
  const d = row(size);
  // How steep it is sets what a damping of 1 means.
  let steepest = 0;
  for (const i of [...equal, ...sided]) for (const k of free) steepest = Math.max(steepest, slopes[i]![k]! ** 2);
  for (const i of equal) {
    const r = (results[i]! - space.wishes[i]!.value) / space.wishes[i]!.little;
    free.forEach((k, a) => {
      d[a + 1]! -= slopes[i]![k]! * r;
      free.forEach((l, b) => { D[a + 1]![b + 1]! += slopes[i]![k]! * slopes[i]![l]!; });
    });
  }
  const least = damping * (steepest || 1) + 1e-14;
  for (let a = 1; a <= n; a++) D[a]![a]! += least;
  for (let j = n + 1; j <= size; j++) D[j]![j] = 1;
  const A = Array.from({ length: size + 1 }, () => row(2 * n + m));
  const b = row(2 * n + m);
  free.forEach((k, a) => {
    A[a + 1]![a + 1] = 1;
    b[a + 1] = -t[k]!;
    A[a + 1]![n + a + 1] = -1;
    b[n + a + 1] = t[k]! - 1;
  });
  sided.forEach((i, j) => {
    const { sort, value, little } = space.wishes[i]!;
    const sign = sort === 'at most' ? 1 : -1;
    const over = (sign * (results[i]! - value)) / little;
    // slack − sign·slope·d ≥ over
    A[n + j + 1]![2 * n + j + 1] = 1;
    free.forEach((k, a) => { A[a + 1]![2 * n + j + 1] = -sign * slopes[i]![k]!; });
    b[2 * n + j + 1] = over;
  });
  const { solution, message } = solveQP(D, d, A, b);
  return message === '' ? free.map((_, a) => (Number.isFinite(solution[a + 1]!) ? solution[a + 1]! : 0)) : free.map(() => 0);
}
