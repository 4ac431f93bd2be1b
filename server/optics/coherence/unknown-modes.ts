import { speedOfLight } from '../constants.ts';
import { isWithin, nearestWithin, type Range } from '../range.ts';
import { linewidths, modeCounts, revivalDistances } from './domains.ts';
import { equalModesCoherence } from './equal-modes.ts';

/** Numbers of modes that a laser may run on. */
export interface ModeCounts {
  readonly fewest: number
  readonly most: number
}

/** True for whole numbers in `modeCounts`, the fewest not above the most. */
export function areModeCounts(counts: ModeCounts): boolean {
  const { fewest, most } = counts;
  return [fewest, most].every((count) => Number.isInteger(count) && isWithin(modeCounts, count)) && fewest <= most;
}

/**
 * The numbers of modes that fit under a gain curve, wherever they happen to lie under it: W/spacing rounded down and up.
 *
 * @param gainWidth full width at half maximum W of the gain curve, Hz, as a range if it is not well known; ends in `linewidths`
 * @param revival distance between revivals, m, c/spacing; see `revivalDistances`
 * @returns at least one mode. A range given the wrong way round counts as turned.
 *
 * Validity: a laser at about twice its threshold, where just the modes inside the half width run; a weak tube runs
 * on fewer, a strong one on more.
 * Source: common practice; a published example has 1.5 GHz of gain and 1.0 GHz spacing run on 2 modes at most.
 */
export function plausibleModeCounts(gainWidth: Range, revival: number): ModeCounts {
  const ends = [gainWidth.from, gainWidth.to].map((width) => modesUnder(nearestWithin(linewidths, width), revival));
  return {
    // A width of just so many spacings must not gain or lose a mode to rounding.
    fewest: nearestWithin(modeCounts, Math.floor(Math.min(...ends) + 1e-9)),
    most: nearestWithin(modeCounts, Math.ceil(Math.max(...ends) - 1e-9)),
  };
}

/** What can be said of the degree of coherence when the number of modes is not known. */
export interface CoherenceBand {
  readonly lowest: number
  /** The median over the counts. */
  readonly middle: number
  readonly highest: number
}

/**
 * The degree of coherence |γ| at a path difference when the number of modes is not known: the lowest, the median and the
 * highest of `equalModesCoherence` over all counts from the fewest to the most. Multiply each by `lineCoherence` of a single mode.
 *
 * @param counts see `areModeCounts`; given the wrong way round they count as turned
 * @param revival distance between revivals, m; see `revivalDistances`
 * @param pathDifference optical path difference between the two arms, m; see `pathDifferences`
 *
 * Validity: as `equalModesCoherence`. Above a hundred counts a hundred evenly spread ones, both ends included, stand for all.
 * Source: as `equalModesCoherence`.
 */
export function unknownModesCoherence(counts: ModeCounts, revival: number, pathDifference: number): CoherenceBand {
  const [one, other] = [nearestWithin(modeCounts, counts.fewest), nearestWithin(modeCounts, counts.most)];
  const [fewest, most] = [Math.round(Math.min(one, other)), Math.round(Math.max(one, other))];
  const size = Math.min(most - fewest + 1, 100);
  const step = size === 1 ? 0 : (most - fewest) / (size - 1);
  const values = Array.from({ length: size }, (_, i) => equalModesCoherence(fewest + i * step, revival, pathDifference));
  values.sort((a, b) => a - b);
  return { lowest: at(values, 0), middle: median(values), highest: at(values, size - 1) };
}

function modesUnder(width: number, revival: number): number {
  return (width * nearestWithin(revivalDistances, revival)) / speedOfLight;
}

function median(sorted: readonly number[]): number {
  const half = (sorted.length - 1) / 2;
  return (at(sorted, Math.floor(half)) + at(sorted, Math.ceil(half))) / 2;
}

function at(values: readonly number[], index: number): number {
  return values[index] ?? 0;
}
