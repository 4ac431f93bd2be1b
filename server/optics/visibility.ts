import { nearestWithin, type Range } from './range.ts';

/** Beam ratios, reference to object, as one number. */
export const beamRatios: Range = { from: 1e-9, to: 1e9 };

/** Fringe visibilities, 1. */
export const visibilities: Range = { from: 0, to: 1 };

/** Brightnesses relative to the best possible, 1. The floor, a trillionth, keeps the number of stops finite. */
export const brightnesses: Range = { from: 1e-12, to: 1 };

/**
 * Fringe visibility that the beam ratio alone allows: 2√K/(1 + K). 1 for equal beams, the same for K and 1/K.
 *
 * @param ratio beam ratio K, light at the plate from the reference to that from the object; see `beamRatios`
 *
 * Validity: one point of the plate, with both beams polarized alike; K is a mean over the speckle of the object light.
 * Source: Born & Wolf, Principles of Optics, on two-beam interference (any optics text).
 */
export function ratioVisibility(ratio: number): number {
  const k = nearestWithin(beamRatios, ratio);
  return (2 * Math.sqrt(k)) / (1 + k);
}

/** The derivative of `ratioVisibility` by the ratio, 1; argument, validity and source as there. */
export function ratioVisibilitySlope(ratio: number): number {
  const k = nearestWithin(beamRatios, ratio);
  return (1 - k) / (Math.sqrt(k) * (1 + k) ** 2);
}

/**
 * How bright a part of the object records, relative to the same part at full visibility: the square of the visibility.
 * Each factor of the visibility enters squared, so factors may be judged one by one.
 *
 * @param visibility see `visibilities`
 *
 * Validity: weak recording, diffracted light in proportion to the square of the fringe contrast. A strong phase hologram
 * saturates, and loses less.
 * Source: Collier, Burckhardt & Lin, Optical Holography (1971) (from memory).
 */
export function recordedBrightness(visibility: number): number {
  return nearestWithin(visibilities, visibility) ** 2;
}

/**
 * A relative brightness in stops: 0 for full, −1 for half, −2 for a quarter.
 *
 * @param brightness see `brightnesses`; nothing at all counts as the floor, −39.9 stops
 * Source: a stop is a factor of two in light (common practice in photography).
 */
export function brightnessInStops(brightness: number): number {
  return Math.log2(nearestWithin(brightnesses, brightness));
}
