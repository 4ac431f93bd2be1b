import { bisect, cosOfPi, sinOfPi } from '../numeric.ts';
import { nearestWithin } from '../range.ts';
import { nearestRevival } from './cavity.ts';
import { coherences, modeCounts, pathDifferences, revivalDistances } from './domains.ts';

/**
 * Degree of coherence |γ| of a laser with equally strong, equally spaced modes: |sin(Nπu)/(N sin πu)|,
 * u = path difference / revival distance. Multiply by `lineCoherence` of a single mode for its own width.
 *
 * @param count number of modes N, a whole number; see `modeCounts`
 * @param revival distance between revivals, m, 2 n_g L; see `revivalDistances`
 * @param pathDifference optical path difference between the two arms, m; see `pathDifferences`
 * @returns |γ|, 0 to 1; 1 at every revival; first zero at revival/N
 *
 * Validity: modes of a real laser are unequal and wander under the gain curve while it warms up. Weaker outer modes
 * only make the central peak broader, so equal modes are the cautious end: use a band over counts, not one number.
 * Source: Collier, Burckhardt & Lin, Optical Holography (1971), ch. 7 (chapter from memory).
 */
export function equalModesCoherence(count: number, revival: number, pathDifference: number): number {
  return Math.abs(comb(modes(count), fraction(revival, pathDifference)));
}

/**
 * The partial derivatives of `equalModesCoherence` by revival distance and by path difference, 1/m.
 *
 * Validity as there. At a zero of |γ|, which is a kink, the result is the mean of both sides, 0.
 * Source: derived from the closed form.
 */
export function equalModesCoherencePartials(
  count: number,
  revival: number,
  pathDifference: number,
): { revival: number; pathDifference: number } {
  const distance = nearestWithin(revivalDistances, revival);
  const path = nearestWithin(pathDifferences, pathDifference);
  const [n, u] = [modes(count), fraction(distance, path)];
  const byPath = (Math.sign(comb(n, u)) * combSlope(n, u)) / distance;
  return { revival: (-byPath * path) / distance, pathDifference: byPath };
}

/**
 * The path difference, m, at which the degree of coherence of equal modes first falls to a given value.
 * Half the revival distance for one mode, which never falls: no path difference is farther from a revival.
 *
 * @param coherence |γ| to fall to; see `coherences`. Other arguments as `equalModesCoherence`.
 * Source: the inverse of `equalModesCoherence` on its central peak.
 */
export function equalModesReach(count: number, revival: number, coherence: number): number {
  const n = modes(count);
  const distance = nearestWithin(revivalDistances, revival);
  if (n === 1) return distance / 2;
  const value = nearestWithin(coherences, coherence);
  return distance * bisect(0, 1 / n, (u) => comb(n, u) > value);
}

function modes(count: number): number {
  return Math.round(nearestWithin(modeCounts, count));
}

/** Path difference from the nearest revival, in revival distances: −1/2 to 1/2. */
function fraction(revival: number, pathDifference: number): number {
  return nearestRevival(revival, pathDifference).beyond / nearestWithin(revivalDistances, revival);
}

/** sin(nπu)/(n sin πu) for |u| ≤ 1/2. */
function comb(n: number, u: number): number {
  const a = Math.PI * u;
  // Near a revival the closed form is 0/0; the series of its logarithm is exact to the last digit here.
  if (isNear(n, a)) return Math.exp(-((n ** 2 - 1) * a ** 2) / 6 - ((n ** 4 - 1) * a ** 4) / 180);
  return sinOfPi(n * u) / (n * sinOfPi(u));
}

/** Its derivative by u. */
function combSlope(n: number, u: number): number {
  const a = Math.PI * u;
  const value = comb(n, u);
  if (isNear(n, a)) return Math.PI * value * (-((n ** 2 - 1) * a) / 3 - ((n ** 4 - 1) * a ** 3) / 45);
  return (Math.PI * (cosOfPi(n * u) - value * cosOfPi(u))) / sinOfPi(u);
}

const isNear = (n: number, a: number): boolean => Math.abs(n * a) < 0.01;
