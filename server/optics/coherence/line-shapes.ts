import { speedOfLight } from '../constants.ts';
import { bisect, cosOfPi, sinOfPi } from '../numeric.ts';
import { nearestWithin } from '../range.ts';
import { coherences, linewidths, pathDifferences } from './domains.ts';

/**
 * The shape of one spectral line. A line broadened by moving atoms (Doppler) is Gaussian; one broadened by
 * phase noise, as a single mode of a laser, is Lorentzian; a rectangular one is the limit of many equal modes.
 */
export type LineShape = 'gaussian' | 'lorentzian' | 'rectangular'

export const lineShapes: readonly LineShape[] = ['gaussian', 'lorentzian', 'rectangular'];

/**
 * Degree of coherence |γ| of light with one spectral line, at a path difference.
 *
 * With x = linewidth · path difference / c: Gaussian exp(−(πx)²/(4 ln 2)), Lorentzian exp(−π|x|),
 * rectangular |sin πx/(πx)|. It is the visibility of the fringes of two equally bright beams.
 *
 * @param linewidth full width at half maximum, Hz; see `linewidths`
 * @param pathDifference optical path difference between the two arms, m; see `pathDifferences`
 * @returns |γ|, 0 to 1
 *
 * Source: Goodman, Statistical Optics (1985), §5.1.3 (section from memory).
 */
export function lineCoherence(shape: LineShape, linewidth: number, pathDifference: number): number {
  return profile(shape, linesWithin(linewidth, pathDifference)).value;
}

/**
 * The partial derivatives of `lineCoherence`: by linewidth in 1/Hz, by path difference in 1/m.
 *
 * Validity as `lineCoherence`. At a kink (a Lorentzian line at zero path difference, a zero of a rectangular one)
 * the slopes of both sides have opposite signs; the result is their mean, 0.
 *
 * Source: derived from the closed forms.
 */
export function lineCoherencePartials(
  shape: LineShape,
  linewidth: number,
  pathDifference: number,
): { linewidth: number; pathDifference: number } {
  const slope = profile(shape, linesWithin(linewidth, pathDifference)).slope;
  return {
    linewidth: (slope * nearestWithin(pathDifferences, pathDifference)) / speedOfLight,
    pathDifference: (slope * nearestWithin(linewidths, linewidth)) / speedOfLight,
  };
}

/**
 * The path difference, m, at which the degree of coherence of one line first falls to a given value.
 *
 * A rectangular line comes back beyond its first zero; the result is always before it.
 *
 * @param linewidth full width at half maximum, Hz; see `linewidths`
 * @param coherence |γ| to fall to; see `coherences` (its floor keeps the result finite)
 *
 * Source: the inverse of `lineCoherence`; 2 ln 2/π = 0.4413 of c/linewidth for a Gaussian line at |γ| = 1/2.
 */
export function lineCoherenceReach(shape: LineShape, linewidth: number, coherence: number): number {
  const value = nearestWithin(coherences, coherence);
  return (reachInLines(shape, value) * speedOfLight) / nearestWithin(linewidths, linewidth);
}

/** x = linewidth · path difference / c, both taken into their ranges. */
function linesWithin(linewidth: number, pathDifference: number): number {
  return (nearestWithin(linewidths, linewidth) * nearestWithin(pathDifferences, pathDifference)) / speedOfLight;
}

/** |γ| and d|γ|/dx as functions of x. */
function profile(shape: LineShape, x: number): { value: number; slope: number } {
  switch (shape) {
    case 'gaussian': {
      const value = Math.exp(-((Math.PI * x) ** 2) / (4 * Math.LN2));
      return { value, slope: (-value * Math.PI ** 2 * x) / (2 * Math.LN2) };
    }
    case 'lorentzian': {
      const value = Math.exp(-Math.PI * Math.abs(x));
      return { value, slope: -Math.PI * Math.sign(x) * value };
    }
    case 'rectangular': {
      const a = Math.PI * x;
      // Below this the closed form of the slope subtracts nearly equal numbers.
      if (Math.abs(a) < 1e-3) return { value: 1 - a ** 2 / 6 + a ** 4 / 120, slope: Math.PI * (-a / 3 + a ** 3 / 30) };
      const sinc = sinOfPi(x) / a;
      return { value: Math.abs(sinc), slope: (Math.PI * Math.sign(sinc) * (cosOfPi(x) - sinc)) / a };
    }
  }
}

function reachInLines(shape: LineShape, value: number): number {
  switch (shape) {
    case 'gaussian':
      return (2 / Math.PI) * Math.sqrt(-Math.LN2 * Math.log(value));
    case 'lorentzian':
      return -Math.log(value) / Math.PI;
    case 'rectangular':
      return bisect(0, 1, (x) => profile('rectangular', x).value > value);
  }
}
