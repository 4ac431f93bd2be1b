import { speedOfLight } from '../constants.ts';
import { nearestWithin } from '../range.ts';
import { cavityLengths, groupIndices, pathDifferences, revivalDistances } from './domains.ts';

/**
 * The frequency from one longitudinal mode of a laser to the next, Hz: c/(2 n_g L).
 *
 * @param cavityLength distance L between the mirrors, m; see `cavityLengths`
 * @param groupIndex group index n_g of what fills the cavity, 1; see `groupIndices`. 1 in a gas laser, about 3.8 in a red diode (common practice)
 *
 * Validity: a cavity with two end mirrors; in a ring the length is half the way round.
 * Source: Saleh & Teich, Fundamentals of Photonics (1991), ch. 9 and 14 (chapters from memory); any laser text.
 */
export function modeSpacing(cavityLength: number, groupIndex: number): number {
  return speedOfLight / revivalDistance(cavityLength, groupIndex);
}

/**
 * The path difference, m, from one revival of the fringes of a multi-mode laser to the next: 2 n_g L,
 * once round the cavity. There all modes are in step again, and the coherence is that of a single mode.
 *
 * Arguments and validity as `modeSpacing`.
 * Source: Collier, Burckhardt & Lin, Optical Holography (1971), ch. 7 (chapter from memory).
 */
export function revivalDistance(cavityLength: number, groupIndex: number): number {
  return 2 * nearestWithin(groupIndices, groupIndex) * nearestWithin(cavityLengths, cavityLength);
}

/** The distance, m, between revivals of a laser of known mode spacing (Hz, 1 to 1e15). The inverse of c/distance. */
export function revivalDistanceOfModeSpacing(spacing: number): number {
  const hertz = nearestWithin({ from: speedOfLight / revivalDistances.to, to: speedOfLight / revivalDistances.from }, spacing);
  return speedOfLight / hertz;
}

/**
 * The revival of the fringes that is nearest to a path difference: which one, counted from 0 at equal paths (its sign is
 * that of the path difference), and how far the path difference lies beyond it, m (half a revival distance at most, either sign).
 *
 * @param revival distance between revivals, m; see `revivalDistances`
 * @param pathDifference m; see `pathDifferences`
 * Source: as `revivalDistance`.
 */
export function nearestRevival(revival: number, pathDifference: number): { order: number; beyond: number } {
  const distance = nearestWithin(revivalDistances, revival);
  const path = nearestWithin(pathDifferences, pathDifference);
  // Rounding the size keeps the result mirror-symmetric at half-way points.
  const order = Math.sign(path) * Math.round(Math.abs(path) / distance) + 0;
  return { order, beyond: path - order * distance };
}
