import { nearestWithin, type Range } from './range.ts';
import { lights } from './light.ts';

/** Exposures as energy per area, J/m². */
export const doses: Range = { from: 0, to: 1e12 };

/**
 * How long the shutter has to be open, s: t = H / E.
 *
 * @param dose exposure H that the plate needs, J/m²; see `doses`
 * @param light all light E that falls on the plate, in its plane, reference and object together, W/m²; see `lights`
 *
 * Validity: as long as only the product of light and time counts; very long exposures of some materials need more.
 * Source: definition of exposure (any photographic text).
 */
export function exposureTime(dose: number, light: number): number {
  return nearestWithin(doses, dose) / nearestWithin(lights, light);
}

/** Exponents of the reciprocity law, 1. */
export const reciprocities: Range = { from: 0.1, to: 1 };

/** Times for which a shutter is open, s. */
export const times: Range = { from: 0, to: 1e9 };

/**
 * The time, s, that a plate needs whose answer to long exposures is weak: t^(1/p), both in seconds. The same for p = 1, and for one second.
 *
 * @param time what the product of light and time asks for, s; see `times`
 * @param exponent p; see `reciprocities`. For fine-grain silver halide 0.85 to 0.95 is often quoted, and measurements disagree.
 *
 * Validity: silver halide, times around those for which p was found, a time of 1 s being the one at which the sensitivity is stated; less than
 * 1 s counts as needing no correction. Photopolymers and dichromated gelatin follow other laws.
 * Source: Schwarzschild, Astrophysical Journal 11, 89 (1900) (from memory).
 */
export function reciprocityTime(time: number, exponent: number): number {
  const t = nearestWithin(times, time);
  return t <= 1 ? t : Math.min(times.to, t ** (1 / nearestWithin(reciprocities, exponent)));
}
