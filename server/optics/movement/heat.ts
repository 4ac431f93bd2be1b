import { airIndex, airPressures, airTemperatures, relativeHumidities } from '../air.ts';
import { pathDifferences } from '../coherence/domains.ts';
import { speedOfLight } from '../constants.ts';
import { nearestWithin, type Range } from '../range.ts';

/** Coefficients of linear expansion, 1/K. */
export const expansions: Range = { from: 0, to: 1e-3 };

/** Lengths of what expands, m. */
export const expandingLengths: Range = { from: 0, to: 1e3 };

/** Differences of temperature, K. */
export const warmings: Range = { from: -1e3, to: 1e3 };

/** Drifts of the frequency of a laser, Hz, either sign. */
export const frequencyDrifts: Range = { from: -1e15, to: 1e15 };

/**
 * How much a thing grows, m: α L ΔT.
 *
 * @param coefficient α, 1/K; see `expansions` and `thermalExpansion`
 * @param length L, m; see `expandingLengths`. Of what both arms stand on only the part counts that is not common to both.
 * @param warming ΔT, K; see `warmings`
 *
 * Validity: a few kelvin about room temperature, evenly warm.
 * Source: definition of the coefficient (any physics text).
 */
export function expansion(coefficient: number, length: number, warming: number): number {
  return nearestWithin(expansions, coefficient) * nearestWithin(expandingLengths, length) * nearestWithin(warmings, warming);
}

/**
 * The warming that makes a thing grow by a given length, K: ΔL / (α L); the upper end of `warmings` at most.
 *
 * @param growth ΔL, m: for a tenth of a fringe 0.1 λ divided by how often the path counts it (twice for a mirror that light meets squarely)
 * @param coefficient α, 1/K; see `expansions` and `thermalExpansion`
 * @param length L, m; see `expandingLengths`
 *
 * Validity and source as `expansion`.
 */
export function warmingFor(growth: number, coefficient: number, length: number): number {
  const perKelvin = expansion(coefficient, length, 1);
  const wanted = nearestWithin(expandingLengths, growth);
  return wanted >= perKelvin * warmings.to ? warmings.to : wanted / perKelvin;
}

/** Air as the arguments of `airIndex` have it: K, Pa, 0 to 1, 0 to 2000e-6. `roomAir` is one. */
export interface Air {
  readonly temperature: number
  readonly pressure: number
  readonly relativeHumidity: number
  readonly carbonDioxide: number
}

/**
 * By how much the path difference of two arms changes as the air around both does, m: L (n after − n before).
 *
 * @param vacuumWavelength m, see `airWavelengths`
 * @param imbalance L, by how much the one arm is longer in air, m; see `pathDifferences`
 * @param before the air at the start of the exposure
 * @param after the air at its end; a room that warms with its door shut keeps its vapour, not its relative humidity
 *
 * Validity: air that is the same along both arms. A draught of warm air in one arm counts with its own length in place of L.
 * Source: `airIndex`.
 */
export function airPathChange(vacuumWavelength: number, imbalance: number, before: Air, after: Air): number {
  const index = (air: Air): number => airIndex(vacuumWavelength, air.temperature, air.pressure, air.relativeHumidity, air.carbonDioxide);
  return nearestWithin(pathDifferences, imbalance) * (index(after) - index(before));
}

/**
 * The derivatives of the index of air: by temperature at constant relative humidity, 1/K, by pressure, 1/Pa, and by relative humidity, 1.
 * About −9.5e-7 per K, 2.7e-9 per Pa and −8.5e-7 from dry to saturated in a room.
 *
 * @param vacuumWavelength m, see `airWavelengths`
 * @param air see `airTemperatures`, `airPressures`, `relativeHumidities`; at the end of a range that of the half inside it
 *
 * Validity and source as `airIndex`, by differences over 0.2 K, 200 Pa and 2 % humidity.
 */
export function airSlopes(vacuumWavelength: number, air: Air): { temperature: number; pressure: number; relativeHumidity: number } {
  const slope = (key: keyof Air, range: Range, step: number): number => {
    const middle = nearestWithin(range, air[key]);
    const [low, high] = [nearestWithin(range, middle - step), nearestWithin(range, middle + step)];
    return airPathChange(vacuumWavelength, 1, { ...air, [key]: low }, { ...air, [key]: high }) / (high - low);
  };
  return {
    temperature: slope('temperature', airTemperatures, 0.1),
    pressure: slope('pressure', airPressures, 100),
    relativeHumidity: slope('relativeHumidity', relativeHumidities, 0.01),
  };
}

/**
 * Fringes that go by as the laser's frequency drifts while the paths do not match, 1: Δν ΔL / c. Matched paths need no steady laser.
 *
 * @param drift Δν during the exposure, Hz; see `frequencyDrifts`
 * @param mismatch ΔL of the optical paths, m; see `pathDifferences`
 *
 * Source: phase 2πνΔL/c.
 */
export function laserDriftFringes(drift: number, mismatch: number): number {
  return (nearestWithin(frequencyDrifts, drift) * nearestWithin(pathDifferences, mismatch)) / speedOfLight;
}
