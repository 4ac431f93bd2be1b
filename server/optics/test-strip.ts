/** Exposures side by side on one plate. */
import { lights } from './light.ts';
import { nearestWithin, type Range } from './range.ts';
import { times } from './exposure.ts';

/** A half stop, the usual step of a test strip (common practice). A stop is a factor of two. */
export const HALF_STOP = 0.5;

/** Steps between two neighbours of a strip, in stops. */
export const stripSteps: Range = { from: 0.01, to: 5 };

/** Numbers of exposures on a strip; rounded to a whole number. */
export const stripCounts: Range = { from: 1, to: 99 };

/** Exposures in the middle of a strip, J/m² or s. */
export const stripCentres: Range = { from: 1e-9, to: 1e9 };

/**
 * The exposures of a test strip, rising, in the unit of the middle one: each 2^step times the one before, the middle one in the middle. With half
 * stops and five exposures 0.5, 0.71, 1, 1.41 and 2 times the middle one; an even number leaves the middle one out and stands evenly about it.
 *
 * @param middle energy per area or time that is thought right; see `stripCentres`
 * @param step from one to the next, in stops; see `stripSteps`
 * @param count how many; see `stripCounts`
 *
 * Validity: as far as only the product of light and time counts.
 * Source: steps of half stops or stops about what is thought right (common practice).
 */
export function stripExposures(middle: number, step: number, count: number): number[] {
  const n = Math.round(nearestWithin(stripCounts, count));
  const [centre, stops] = [nearestWithin(stripCentres, middle), nearestWithin(stripSteps, step)];
  return Array.from({ length: n }, (_, i) => centre * 2 ** (stops * (i - (n - 1) / 2)));
}

/**
 * From one exposure to another, in stops: log₂(other / one). 1 for twice as much, −1 for half.
 *
 * @param one energy per area, light or time; see `lights`
 * @param other the same kind in the same unit
 * Source: a stop is a factor of two (common practice in photography).
 */
export function stopsBetween(one: number, other: number): number {
  return Math.log2(nearestWithin(lights, other) / nearestWithin(lights, one));
}

/** Steps in which a hand with a clock times a shutter, s. */
const HAND_STEPS = [30, 10, 5, 2, 1] as const;
/** The finest step, s; also the shortest time. */
export const HAND_FINEST = 0.5;

/**
 * The nearest time, s, that a hand with a clock can keep: in steps of half a second, and of 1, 2, 5, 10 or 30 s from where such a step is no more than
 * a tenth of the time, so that rounding costs 5 % or 0.08 stop at most. Times under 5 s round by more, and none is shorter than {@link HAND_FINEST}:
 * `stopsBetween` tells by how much. A light that has to be opened for less wants a filter or a shutter that times itself.
 *
 * @param time see `times`
 * Source: common practice.
 */
export function handTime(time: number): number {
  const t = nearestWithin(times, time);
  const step = HAND_STEPS.find(s => s <= t / 10) ?? HAND_FINEST;
  return Math.max(HAND_FINEST, step * Math.round(t / step));
}
