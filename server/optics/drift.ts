import { sinOfPi } from './numeric.ts';
import { nearestWithin, type Range } from './range.ts';

/** Fringes that go by, or fringes per second; either sign. */
export const fringes: Range = { from: -1e12, to: 1e12 };

/** Sizes of a drift, fringes per second. Below the floor, a tenth of a fringe in thirty years, nothing creeps. */
export const driftRates: Range = { from: 1e-10, to: 1e12 };

/** The part of a fringe by which the fringes may creep during an exposure: a tenth (common practice; an eighth and a quarter are in use too). */
export const ALLOWED_FRINGE = 0.1;

/**
 * Contrast that is left of fringes that creep evenly during the exposure, 1: |sin(πm) / (πm)|.
 *
 * @param moved m, fringes that go by while the shutter is open (one fringe is one wavelength of path); see `fringes`
 *
 * Validity: an even drift. To and fro, or a jump, leaves another contrast.
 * Source: mean of e^(i 2π m t/T) over the exposure T; Collier, Burckhardt & Lin, Optical Holography (1971) (from memory).
 */
export function driftContrast(moved: number): number {
  const m = nearestWithin(fringes, moved);
  return m === 0 ? 1 : Math.abs(sinOfPi(m) / (Math.PI * m));
}

/**
 * The longest exposure, s, in which the fringes creep by no more than {@link ALLOWED_FRINGE}: 0.1 / rate; 10⁹ s where nothing creeps.
 *
 * @param rate fringes per second, either sign; its size in `driftRates`
 *
 * Validity: a drift that goes on as it was read.
 * Source: a tenth of a wavelength of path (common practice).
 */
export function longestExposure(rate: number): number {
  return ALLOWED_FRINGE / nearestWithin(driftRates, Math.abs(rate));
}
