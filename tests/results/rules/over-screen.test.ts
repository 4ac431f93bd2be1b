/** Brightness averaged over a lit screen, of a brightness that is the path itself: the mean by integrals that can be solved. Lengths in m. */
import { expect, test } from 'vitest';
import { overScreen } from '../../../server/results/rules/screen.ts';
import { expectNear } from '../read.ts';

/** Its lobe goes as the cosine. */
const WIDE = Math.PI / 3;
const L = 500e-9;
/** The middle is no longer than 0; the rule passes on what stands behind the mismatch. */
const path = overScreen({ name: 'path', formula: 'mismatch · k', compute: ([mismatch, k]) => mismatch! * k! });
/** Parallel light whose radius at 1/e² is w. */
const parallel = (w: number): number[] => [0, (Math.PI * w * w) / L, L, 1];

test('evenly lit in parallel light: by s = √(d² + r²) each ring counts as 1/s², and is s − d longer', () => {
  // ∫ (s − d)/s² ds / ∫ 1/s² ds = (ln(S/d) − 1 + d/S) / (1/d − 1/S), from d = 0.04 to S = 0.05
  const mean = (Math.log(1.25) - 1 + 0.8) / (25 - 20);
  const at = (mismatch: number): number => path.compute([...parallel(10), 0.03, 0.04, WIDE, mismatch, 2]);
  expectNear(at(0), 2 * mean, 1e-3 * 2 * mean);
  expectNear(at(0.01), 2 * (0.01 + mean), 1e-3 * 2 * mean);
});
test('in a beam of its own width: only the part within w counts, by its light', () => {
  // Far off r²/2d longer; with u = 2r²/w² from 0 to 2: ∫ u e^−u du / ∫ e^−u du = (1 − 3e^−2)/(1 − e^−2), r² = w²u/2.
  const w = 0.03;
  const mean = ((w * w) / 2) * ((1 - 3 * Math.exp(-2)) / (1 - Math.exp(-2))) / (2 * 10);
  expectNear(path.compute([...parallel(w), 0.5, 10, WIDE, 0, 1]), mean, 1e-3 * mean);
});
test('of light that spreads: it turns away from what is lit twice as much, and goes the longer way twice', () => {
  // From a point as far before the screen as what is lit is behind it: cos 2γ = (2d² − s²)/s² counts, 2 (s − d) longer.
  const d = 0.04;
  const between = (of: (s: number) => number): number => of(0.05) - of(d);
  const mean = (2 * between(s => -(2 * d * d) / s - s + d ** 3 / (s * s) + d * Math.log(s))) / between(s => -(d * d) / (s * s) - Math.log(s));
  expectNear(path.compute([d, 1e-10, L, 1, 0.03, d, WIDE, 0, 1]), mean, 2e-3 * mean);
});
test('of light that runs together where it is looked at all ways are alike', () => {
  expect(Math.abs(path.compute([-0.04, 1e-10, L, 1, 0.03, 0.04, 0.1, 0, 1]))).toBeLessThan(1e-12);
});
test('a narrow lobe leaves the middle only', () => {
  // cosⁿ γ with n = ln 2 / −ln cos 1°: about 4551. e^(−n r²/2d²) of a ring is as narrow as a beam of w = 2d/√n: r² = w²/2 on average, far within the screen.
  const n = Math.LN2 / -Math.log(Math.cos(Math.PI / 180));
  const mean = ((4 * 0.04 ** 2) / n / 2) / (2 * 0.04);
  const found = path.compute([...parallel(10), 0.006, 0.04, Math.PI / 180, 0, 1]);
  expectNear(found, mean, 5e-3 * mean);
});
