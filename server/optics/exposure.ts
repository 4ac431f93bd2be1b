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
