/** What a few numbers that should be one tell of it: their mean, and between which limits it lies. */
import { mean as meanOf, rootMeanSquare, sampleVariance } from 'simple-statistics';

export interface Sample {
  readonly x: number;
  /** standard uncertainty that the samples share, such as that of one meter */
  readonly u: number;
}

export interface Fitted {
  readonly mean: number;
  /** half of the 95 % band */
  readonly give: number;
  readonly count: number;
  /** standard deviation of one sample about the mean, as far as it is more than nobody sees; undefined of one sample, which does not tell */
  readonly scatter: number | undefined;
}

/**
 * Mean and band of samples, one at least. What scatters from one to the next averages out, as far as so few tell (Student's t); what all have in common does not, and counts in full: √((t·s/√n)² + (2u)² + within²), u the root mean square of the shared
 * ones. A scatter that is no more than what nobody sees anyway is none: of s² only what lies above within²/3 counts, the variance of numbers that lie anywhere within.
 *
 * @param within half-width about each sample in which nobody sees a difference
 * Source: JCGM 100:2008 (GUM), 4.2.3 for the mean, 4.3.7 for numbers within limits, G.3 for t, 5.1.2 for the sum of independent parts.
 */
export function fitted(samples: readonly Sample[], within = 0): Fitted {
  const n = samples.length;
  const all = samples.map(s => s.x);
  const mean = meanOf(all);
  const variance = n > 1 ? sampleVariance(all) : undefined;
  const scatter = variance === undefined ? undefined : Math.sqrt(Math.max(0, variance - within ** 2 / 3));
  const shared = rootMeanSquare(samples.map(s => s.u));
  return { mean, count: n, scatter, give: Math.hypot(scatter === undefined ? 0 : (tQuantile(n - 1) * scatter) / Math.sqrt(n), 2 * shared, within) };
}

/**
 * The number that Student's t of so many degrees of freedom stays below, in size, 95 times of 100: 12.7 for one, 1.96 for very many.
 *
 * @param degrees a whole number from 1
 * Source: Abramowitz & Stegun, Handbook of Mathematical Functions, 26.7.3 and 26.7.4 (from memory), turned round by halving.
 */
export function tQuantile(degrees: number): number {
  let [low, high] = [0, 16];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (within(middle, degrees) < 0.95) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Share of draws of Student's t that lie within ±t. */
function within(t: number, degrees: number): number {
  const theta = Math.atan(t / Math.sqrt(degrees));
  const [sin, cos] = [Math.sin(theta), Math.cos(theta)];
  const odd = degrees % 2 === 1;
  let term = odd ? cos : 1;
  let sum = degrees === 1 ? 0 : term;
  for (let k = odd ? 3 : 2; k <= degrees - 2; k += 2) {
    term *= (cos * cos * (k - 1)) / k;
    sum += term;
  }
  return odd ? (2 / Math.PI) * (theta + sin * sum) : sin * sum;
}
