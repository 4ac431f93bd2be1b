import { cosOfPi, sinOfPi } from '../numeric.ts';
import { nearestWithin, type Range } from '../range.ts';
import { nearestRevival } from './cavity.ts';
import { revivalDistances } from './domains.ts';

/** Powers of single modes, in any common unit. */
export const modePowers: Range = { from: 0, to: 1e12 };

/**
 * Degree of coherence |γ| of a laser with equally spaced modes of given powers:
 * |Σ wₖ exp(2πi k u)| / Σ wₖ, u = path difference / revival distance.
 * Multiply by `lineCoherence` of a single mode for its own width.
 *
 * @param powers power of each mode, from one end of the spectrum to the other, in any common unit; see `modePowers`.
 *   No modes, or none with power, count as one single mode: |γ| = 1.
 * @param revival distance between revivals, m; see `revivalDistances`
 * @param pathDifference optical path difference between the two arms, m; see `pathDifferences`
 * @returns |γ|, 0 to 1
 *
 * Validity: modes that do not change during the exposure.
 * Source: Collier, Burckhardt & Lin, Optical Holography (1971), ch. 7 (chapter from memory).
 */
export function weightedModesCoherence(powers: readonly number[], revival: number, pathDifference: number): number {
  return weightedSum(powers, revival, pathDifference).value;
}

/**
 * The derivative of `weightedModesCoherence` by path difference, 1/m; arguments and validity as there.
 * At a zero of |γ|, which is a kink, the result is the mean of both sides, 0.
 */
export function weightedModesCoherenceSlope(powers: readonly number[], revival: number, pathDifference: number): number {
  return weightedSum(powers, revival, pathDifference).slope;
}

function weightedSum(powers: readonly number[], revival: number, pathDifference: number): { value: number; slope: number } {
  const distance = nearestWithin(revivalDistances, revival);
  const u = nearestRevival(distance, pathDifference).beyond / distance;
  const inRange = powers.map((power) => nearestWithin(modePowers, power));
  const strongest = Math.max(0, ...inRange);
  if (strongest === 0) return { value: 1, slope: 0 };
  let [total, re, im, reSlope, imSlope] = [0, 0, 0, 0, 0];
  inRange.forEach((given, k) => {
    const power = given / strongest;
    const [x, y] = [power * cosOfPi(2 * k * u), power * sinOfPi(2 * k * u)];
    total += power;
    re += x;
    im += y;
    reSlope -= 2 * Math.PI * k * y;
    imSlope += 2 * Math.PI * k * x;
  });
  const size = Math.hypot(re, im);
  if (size === 0) return { value: 0, slope: 0 };
  return { value: Math.min(1, size / total), slope: ((re / size) * reSlope + (im / size) * imSlope) / (total * distance) };
}
