/** What movement during the exposure leaves of the fringes, besides an even drift (`driftContrast`). Brightness follows the square. */
import { fringes } from '../drift.ts';
import { sinOfPi } from '../numeric.ts';
import { shares } from '../power.ts';
import { nearestWithin, type Range } from '../range.ts';
import { besselJ0 } from '../special.ts';

/** Times between two samples of a movement, in any unit. */
const durations: Range = { from: 0, to: 1e12 };

/**
 * Contrast that is left of fringes that swing to and fro during the exposure, 1: |J₀(2πA)|.
 *
 * @param amplitude A, fringes from the middle to one end of the swing (one fringe is one wavelength of path); see `fringes`
 *
 * Validity: a sine, and many swings or whole ones; a part of one swing leaves what `movementContrast` says. Independent of a drift, whose
 * contrast multiplies.
 * Source: Powell & Stetson, J. Opt. Soc. Am. 55, 1593 (1965).
 */
export function vibrationContrast(amplitude: number): number {
  return Math.abs(besselJ0(2 * Math.PI * nearestWithin(fringes, amplitude)));
}

/**
 * Contrast that is left of fringes that jump once during the exposure and else stand still, 1: √(1 − 4 s (1 − s) sin²πm).
 * In the middle of the exposure that is |cos πm|, the worst.
 *
 * @param jump m, fringes (one fringe is one wavelength of path); see `fringes`
 * @param before s, share of the exposure that was over; see `shares`
 *
 * Source: mean of two phases, |s + (1 − s) e^(i2πm)|.
 */
export function jumpContrast(jump: number, before = 0.5): number {
  const s = nearestWithin(shares, before);
  return Math.sqrt(Math.max(0, 1 - 4 * s * (1 - s) * sinOfPi(nearestWithin(fringes, jump)) ** 2));
}

/**
 * Contrast that is left of fringes whose movement was followed during the exposure, 1: |mean of e^(i2πm)|, the samples joined by straight lines.
 *
 * @param times of the samples, in any unit, rising. One that is not after the one before takes no time.
 * @param moved m at each time, fringes from any start; see `fringes`. Samples without a partner are left out.
 * @returns 1 where no time goes by
 *
 * Validity: samples close enough for what happens between them, two or more for each swing to and fro.
 * Source: mean of the phase over the exposure; Collier, Burckhardt & Lin, Optical Holography (1971) (from memory).
 */
export function movementContrast(times: readonly number[], moved: readonly number[]): number {
  let [real, imaginary, total] = [0, 0, 0];
  for (let i = 1; i < Math.min(times.length, moved.length); i++) {
    const took = nearestWithin(durations, times[i]! - times[i - 1]!);
    const [from, to] = [nearestWithin(fringes, moved[i - 1]!), nearestWithin(fringes, moved[i]!)];
    const step = to - from;
    // the mean over a straight piece lies at the phase of its middle
    const weight = took * (step === 0 ? 1 : sinOfPi(step) / (Math.PI * step));
    real += weight * sinOfPi(0.5 + from + to);
    imaginary += weight * sinOfPi(from + to);
    total += took;
  }
  return total === 0 ? 1 : Math.min(1, Math.hypot(real, imaginary) / total);
}
