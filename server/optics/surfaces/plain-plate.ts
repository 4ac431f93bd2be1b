/** A plate of plain glass in air, whose two faces both reflect. */
import { reflectedShares, type EachPolarization } from './fresnel.ts';

/** Shares of the light on a plain plate, 1. */
export interface PlateShares {
  /** What goes through and what comes back in all, every bounce inside counted: together 1. */
  readonly through: number
  readonly reflected: number
  /** The one beam that goes straight through, the one that the first face reflects, and the one that the second face sends back out. */
  readonly straight: number
  readonly front: number
  readonly back: number
}

/**
 * What a plain glass plate passes and reflects, for s and p. `through` = (1 − R)/(1 + R) and `reflected` = 2R/(1 + R) add up the
 * powers of all bounces, as if they did not interfere (incoherent sum); `straight` = (1 − R)², `front` = R and `back` = R(1 − R)²
 * are the first beams alone (first order).
 *
 * @param incidence angle from the normal in air, rad; see `incidences`
 * @param index refractive index of the glass; see `plateIndices`
 *
 * Validity: parallel faces, no coating, no absorption. Light that is coherent over twice the thickness makes fringes about the sums.
 * Source: geometric series of Fresnel's shares (Born & Wolf, Principles of Optics, §1.5 and §7.6).
 */
export function plainPlateShares(incidence: number, index: number): EachPolarization<PlateShares> {
  // The second face has the same share as the first: the light leaves as it came, seen backwards.
  const { s, p } = reflectedShares(incidence, index);
  return { s: shares(s), p: shares(p) };
}

const shares = (R: number): PlateShares => ({
  through: (1 - R) / (1 + R), reflected: (2 * R) / (1 + R),
  straight: (1 - R) ** 2, front: R, back: R * (1 - R) ** 2,
});
