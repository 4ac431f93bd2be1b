/** The ideal laser beam (TEM₀₀), and by M² the beam that spreads more than it. Radii are those at 1/e² of the light on the axis. */
import { wavelengths } from '../coherence/domains.ts';
import { nearestWithin, type Range } from '../range.ts';
import { erf } from '../special.ts';
import { beamQualities, beamRadii, distances, halfAngles, halfSizes, powers } from './domains.ts';

/** Shares of the centre's light that a corner has at least, 1. 0 and 1 themselves would take a beam of no size or of any. */
export const evennesses: Range = { from: 1e-12, to: 1 - 1e-12 };

/**
 * Rayleigh range z_R, m: π w₀² / (M² λ). So far from its waist a beam is √2 times as wide, and from there on it spreads.
 *
 * @param waist radius w₀ at the waist, m; see `beamRadii`
 * @param wavelength λ in air, m; see `wavelengths` of coherence
 * @param quality M²; see `beamQualities`
 * Source: Siegman, Lasers (1986) ch. 17; ISO 11146 for M² (from memory).
 */
export function rayleighRange(waist: number, wavelength: number, quality: number): number {
  return (Math.PI * nearestWithin(beamRadii, waist) ** 2) / (nearestWithin(beamQualities, quality) * nearestWithin(wavelengths, wavelength));
}

/**
 * Radius of a beam at a distance z from its waist, m: w₀ √(1 + (z/z_R)²).
 *
 * @param distance z, m, either way; see `distances`
 *
 * Validity: a beam that spreads by less than about 0.3 rad. Other arguments and source as `rayleighRange`.
 */
export function radiusAt(waist: number, wavelength: number, quality: number, distance: number): number {
  return nearestWithin(beamRadii, waist) * Math.hypot(1, nearestWithin(distances, distance) / rayleighRange(waist, wavelength, quality));
}

/**
 * Half angle at which a beam spreads far from its waist, as the slope radius by distance, rad: M² λ / (π w₀).
 *
 * Validity and source as `radiusAt`, arguments as `rayleighRange`.
 */
export function farHalfAngle(waist: number, wavelength: number, quality: number): number {
  return nearestWithin(beamRadii, waist) / rayleighRange(waist, wavelength, quality);
}

/**
 * Beam quality M² of a laser of which waist and spreading are known, 1: π w₀ θ / λ. A sheet that gives less than 1 is rounded
 * or means other widths, and counts as 1.
 *
 * @param halfAngle θ at which the beam spreads; half of the full angle that data sheets mostly give, rad; see `halfAngles`
 *
 * Other arguments, validity and source as `farHalfAngle`.
 */
export function beamQuality(waist: number, halfAngle: number, wavelength: number): number {
  return nearestWithin(beamQualities, nearestWithin(halfAngles, halfAngle) / farHalfAngle(waist, wavelength, 1));
}

/**
 * Light on the axis, W/m²: 2P / (π w²), twice what the power would give if it were spread evenly over the radius.
 *
 * @param power P of the whole beam, W; see `powers`
 * @param radius w where the light is looked at, m; see `beamRadii`
 * Source: Siegman (1986) ch. 17 (from memory).
 */
export function peakLight(power: number, radius: number): number {
  return (2 * nearestWithin(powers, power)) / (Math.PI * nearestWithin(beamRadii, radius) ** 2);
}

/**
 * Light at a distance from the axis, W/m², on a surface that faces the beam: the peak times `edgeRatio`.
 *
 * @param distance r from the axis, m; see `distances`
 *
 * Other arguments and source as `peakLight`.
 */
export function lightOffAxis(power: number, radius: number, distance: number): number {
  return peakLight(power, radius) * edgeRatio(radius, distance);
}

/**
 * Light at a distance from the axis as a share of that on the axis, 1: exp(−2 r²/w²). Arguments and source as `lightOffAxis`.
 */
export function edgeRatio(radius: number, distance: number): number {
  return Math.exp(-2 * (nearestWithin(distances, distance) / nearestWithin(beamRadii, radius)) ** 2);
}

/**
 * Share of the power within a circle round the axis, 1: 1 − exp(−2 a²/w²). A circle as large as the beam loses 13.5 %.
 *
 * @param radius w of the beam, m; see `beamRadii`
 * @param circle radius a of the circle, m; see `halfSizes`
 * Source: integral of `lightOffAxis`.
 */
export function circleShare(radius: number, circle: number): number {
  return -Math.expm1(-2 * (nearestWithin(halfSizes, circle) / nearestWithin(beamRadii, radius)) ** 2);
}

/**
 * Share of the power within a rectangle round the axis, 1: erf(√2 a/w) erf(√2 b/w).
 *
 * @param radius w of the beam, m; see `beamRadii`
 * @param halfWidth a, m; see `halfSizes`
 * @param halfHeight b, m; see `halfSizes`
 * Source: integral of `lightOffAxis`.
 */
export function rectangleShare(radius: number, halfWidth: number, halfHeight: number): number {
  const scale = Math.SQRT2 / nearestWithin(beamRadii, radius);
  return erf(nearestWithin(halfSizes, halfWidth) * scale) * erf(nearestWithin(halfSizes, halfHeight) * scale);
}

/**
 * Radius that a beam must have so that a corner gets at least a share of the centre's light, m: r √(2 / ln(1/u)).
 *
 * @param corner distance r of the corner from the axis, m; see `halfSizes`
 * @param share u, 1; see `evennesses`
 * Source: `edgeRatio` solved for the radius.
 */
export function radiusForEvenness(corner: number, share: number): number {
  return nearestWithin(halfSizes, corner) * Math.sqrt(-2 / Math.log(nearestWithin(evennesses, share)));
}
