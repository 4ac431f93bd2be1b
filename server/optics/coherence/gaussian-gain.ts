import { speedOfLight } from '../constants.ts';
import { cosOfPi, sinOfPi } from '../numeric.ts';
import { nearestWithin, type Range } from '../range.ts';
import { nearestRevival } from './cavity.ts';
import { linewidths, revivalDistances } from './domains.ts';

/** How far the mode nearest to the middle of the gain curve lies from it, in mode spacings. */
export const modeOffsets: Range = { from: -0.5, to: 0.5 };

/**
 * Degree of coherence |γ| of a laser whose modes fill a Gaussian gain curve, each as strong as the curve is there.
 * Multiply by `lineCoherence` of a single mode for its own width.
 *
 * Between the revivals it is that of a single Gaussian line of the width of the gain curve (`lineCoherence`), as long as
 * the curve holds several modes; at every revival it is 1.
 *
 * @param gainWidth full width at half maximum of the gain curve, Hz; see `linewidths`
 * @param revival distance between revivals, m; see `revivalDistances`
 * @param offset distance of the nearest mode from the middle of the curve, in mode spacings; see `modeOffsets`.
 *   It wanders while the laser warms up, and matters only where the gain curve holds few modes.
 * @param pathDifference optical path difference between the two arms, m; see `pathDifferences`
 * @returns |γ|, 0 to 1
 *
 * Validity: a line broadened by moving atoms, with mode powers that follow the gain. Near threshold the outer modes are
 * missing, and the coherence is better.
 * Source: a sum of modes as in Collier, Burckhardt & Lin, Optical Holography (1971), ch. 7 (chapter from memory);
 * turned into a sum of revivals (Poisson summation) where the curve holds many modes.
 */
export function gaussianGainCoherence(gainWidth: number, revival: number, offset: number, pathDifference: number): number {
  return gainSum(gainWidth, revival, offset, pathDifference).value;
}

/**
 * The derivative of `gaussianGainCoherence` by path difference, 1/m; arguments and validity as there.
 * At a zero of |γ|, which is a kink, the result is the mean of both sides, 0.
 */
export function gaussianGainCoherenceSlope(gainWidth: number, revival: number, offset: number, pathDifference: number): number {
  return gainSum(gainWidth, revival, offset, pathDifference).slope;
}

// Either sum has terms below exp(−3.5 · 4²) = 1e-24 beyond four steps from its middle.
const steps = [-4, -3, -2, -1, 0, 1, 2, 3, 4];

function gainSum(gainWidth: number, revival: number, offset: number, pathDifference: number): { value: number; slope: number } {
  const distance = nearestWithin(revivalDistances, revival);
  const widthInModes = (nearestWithin(linewidths, gainWidth) * distance) / speedOfLight;
  const nearest = nearestWithin(modeOffsets, offset);
  const u = nearestRevival(distance, pathDifference).beyond / distance;
  const sum = widthInModes < 1 ? sumOfModes : sumOfRevivals;
  const { re, im, reSlope, imSlope } = sum(widthInModes, nearest, u);
  const total = sum(widthInModes, nearest, 0).re;
  const size = Math.hypot(re, im);
  if (size === 0) return { value: 0, slope: 0 };
  return { value: Math.min(1, size / total), slope: ((re / size) * reSlope + (im / size) * imSlope) / (total * distance) };
}

interface ComplexSum {
  re: number
  im: number
  reSlope: number
  imSlope: number
}

/** Σₖ exp(−4 ln 2 ((k + offset)/width)²) exp(2πi k u), and its derivative by u. */
function sumOfModes(width: number, offset: number, u: number): ComplexSum {
  const sum = { re: 0, im: 0, reSlope: 0, imSlope: 0 };
  // Relative to the nearest mode, so that a curve far narrower than the spacing keeps that one mode.
  const exponent = (k: number): number => -4 * Math.LN2 * ((k + offset) ** 2 - offset ** 2);
  for (const k of steps) {
    const power = Math.exp(exponent(k) / width ** 2);
    const [x, y] = [power * cosOfPi(2 * k * u), power * sinOfPi(2 * k * u)];
    sum.re += x;
    sum.im += y;
    sum.reSlope -= 2 * Math.PI * k * y;
    sum.imSlope += 2 * Math.PI * k * x;
  }
  return sum;
}

/** The same sum, but for a common factor and phase, over the revivals: Σₘ exp(−(π width (u − m))²/(4 ln 2)) exp(2πi m offset). */
function sumOfRevivals(width: number, offset: number, u: number): ComplexSum {
  const sum = { re: 0, im: 0, reSlope: 0, imSlope: 0 };
  const rate = (Math.PI * width) ** 2 / (4 * Math.LN2);
  for (const m of steps) {
    const term = Math.exp(-rate * (u - m) ** 2);
    const slope = -2 * rate * (u - m) * term;
    const [c, s] = [cosOfPi(2 * m * offset), sinOfPi(2 * m * offset)];
    sum.re += term * c;
    sum.im += term * s;
    sum.reSlope += slope * c;
    sum.imSlope += slope * s;
  }
  return sum;
}
