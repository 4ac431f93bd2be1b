import { nearestWithin } from '../range.ts';
import { fringeFrequencies } from './domains.ts';

/** By how much a stock's rated resolving power should exceed the finest fringes, 1 (common practice). */
export const RESOLVING_MARGIN = 1.3;

/**
 * Fringes per metre that have to be resolved, as a multiple of the resolving power that a stock is rated at, 1. Above 1 the stock is not
 * made for them; above 1 / {@link RESOLVING_MARGIN} there is little to spare.
 *
 * This is a ratio and no contrast on purpose. A single rated number does not say at which contrast it was found, and makers differ;
 * no curve through it has been published, so that any contrast made from it would be invented.
 *
 * @param needed fringes per metre: `layerFrequency`, for thin transmission holograms `plateFrequency`, 1/m; see `fringeFrequencies`
 * @param rated resolving power of the stock, 1/m; see `fringeFrequencies`
 *
 * Source: definition.
 */
export function shareOfResolvingPower(needed: number, rated: number): number {
  return nearestWithin(fringeFrequencies, needed) / nearestWithin(fringeFrequencies, rated);
}
