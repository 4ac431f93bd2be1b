import { speedOfLight } from '../constants.ts';
import { nearestWithin } from '../range.ts';
import { coherenceLengths, linewidths, wavelengths } from './domains.ts';
import { lineCoherenceReach, type LineShape } from './line-shapes.ts';

/**
 * What somebody means by "coherence length". The meanings differ by up to a factor of nine for one and the
 * same laser, and data sheets rarely say which they use, so the meaning is always stored with the number.
 *
 * - `c-over-linewidth`: c/Δν = λ²/Δλ, whatever the line shape. The commonest in catalogues.
 *   Source: US Federal Standard 1037C (1996), "coherence length", in air.
 * - `half-c-over-linewidth`: c/(2Δν) = λ²/(2Δλ), whatever the line shape. Source: common practice.
 * - `integral`: c ∫|γ(τ)|² dτ over all delays of both signs; 0.664 c/Δν (Gaussian), 0.318 (Lorentzian), 1 (rectangular).
 *   Source: Mandel's definition, as in Goodman, Statistical Optics (1985), §5.1.3 (section from memory).
 * - `to-half-brightness`: the path difference at which |γ| = 1/√2, where a hologram records half as bright.
 * - `to-half-visibility`: the path difference at which |γ| = 1/2. Source: common practice.
 * - `to-1/e-visibility`: the path difference at which |γ| = 1/e; c/(πΔν) for a Lorentzian line. Source: common practice.
 *
 * The path differences are one-sided: fringes are seen from minus to plus the coherence length.
 */
export type CoherenceLengthMeaning =
  | 'c-over-linewidth'
  | 'half-c-over-linewidth'
  | 'integral'
  | 'to-half-brightness'
  | 'to-half-visibility'
  | 'to-1/e-visibility'

export const coherenceLengthMeanings: readonly CoherenceLengthMeaning[] = [
  'c-over-linewidth',
  'half-c-over-linewidth',
  'integral',
  'to-half-brightness',
  'to-half-visibility',
  'to-1/e-visibility',
];

/**
 * The coherence length, m, of one spectral line of full width at half maximum `linewidth` (Hz; see `linewidths`).
 *
 * Validity: a single line. A laser with several modes has no such number: use its mode spacing and count.
 * Source: see `CoherenceLengthMeaning`.
 */
export function coherenceLength(meaning: CoherenceLengthMeaning, shape: LineShape, linewidth: number): number {
  return (coherenceLengthFactor(meaning, shape) * speedOfLight) / nearestWithin(linewidths, linewidth);
}

/**
 * The full width at half maximum, Hz, of one spectral line with a stated coherence length (m; see `coherenceLengths`).
 * The inverse of `coherenceLength`; validity and source as there.
 */
export function linewidthOfCoherenceLength(meaning: CoherenceLengthMeaning, shape: LineShape, length: number): number {
  return (coherenceLengthFactor(meaning, shape) * speedOfLight) / nearestWithin(coherenceLengths, length);
}

/** The coherence length in units of c/linewidth, 1. Source: see `CoherenceLengthMeaning`. */
export function coherenceLengthFactor(meaning: CoherenceLengthMeaning, shape: LineShape): number {
  switch (meaning) {
    case 'c-over-linewidth':
      return 1;
    case 'half-c-over-linewidth':
      return 1 / 2;
    case 'integral':
      return integralFactors[shape];
    case 'to-half-brightness':
      return reachFactor(shape, Math.SQRT1_2);
    case 'to-half-visibility':
      return reachFactor(shape, 1 / 2);
    case 'to-1/e-visibility':
      return reachFactor(shape, 1 / Math.E);
  }
}

/**
 * The linewidth in frequency, Hz, of a line whose width is stated in wavelength: Δν = cΔλ/λ².
 *
 * @param wavelengthWidth full width at half maximum Δλ, m, from 0; far below the wavelength
 * @param wavelength centre wavelength λ, m; see `wavelengths`
 *
 * Validity: Δλ ≪ λ (the next term is a share (Δλ/2λ)² of the result). A width above λ/10 counts as λ/10.
 * Source: the differential of ν = c/λ.
 */
export function linewidthOfWavelengthWidth(wavelengthWidth: number, wavelength: number): number {
  const centre = nearestWithin(wavelengths, wavelength);
  return (speedOfLight * nearestWithin({ from: 0, to: centre / 10 }, wavelengthWidth)) / centre ** 2;
}

// √(2 ln 2/π) = 0.6643; not to be confused with 2 ln 2/π = 0.4413, where a Gaussian line falls to |γ| = 1/2.
const integralFactors: Readonly<Record<LineShape, number>> = {
  gaussian: Math.sqrt((2 * Math.LN2) / Math.PI),
  lorentzian: 1 / Math.PI,
  rectangular: 1,
};

function reachFactor(shape: LineShape, coherence: number): number {
  return lineCoherenceReach(shape, speedOfLight, coherence);
}
