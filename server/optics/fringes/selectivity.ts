/** How choosy a thick hologram is: by angle, and by colour. */
import { nearestWithin } from '../range.ts';
import { bisect } from '../numeric.ts';
import { fringeFrequencies, layerIndices, layerThicknesses } from './domains.ts';
import { insideAngles, reflectionEfficiency, strengths } from './efficiency.ts';
import { braggAngle } from './volume.ts';

/**
 * Departure ξ at which a transmission hologram first sends nothing into its image, 1: √((mπ)² − ν²), mπ the first multiple of π beyond ν.
 *
 * @param strength ν, see `strengths`
 * Source: the zeros of `transmissionEfficiency`.
 */
export function departureToDark(strength: number): number {
  const nu = nearestWithin(strengths, strength);
  const zero = Math.PI * (Math.floor(nu / Math.PI) + 1);
  return Math.sqrt((zero - nu) * (zero + nu));
}

/**
 * By how much replay light may be turned inside the layer, in the plane of both beams, before a transmission hologram first goes dark, rad:
 * ξ₀ cos θ_S / (π d f cos θ_B). For upright fringes ξ₀ / (π d f).
 *
 * @param wavelength λ in air, m
 * @param index n of the layer, relative to air; see `layerIndices`
 * @param thickness d of the layer, m; see `layerThicknesses`
 * @param frequency f, fringes per metre in the layer, 1/m; see `fringeFrequencies`
 * @param strength ν, see `hologramStrength` and `strengths`
 * @param leaving θ_S of the light sent off, inside, from the normal of the plate, rad; see `insideAngles`. For upright fringes `braggAngle`.
 * @returns at most π; angles near that only say that the layer is not choosy at all
 *
 * Validity: first order about the Bragg angle θ_B, good to some per cent for 10°.
 * Source: Kogelnik, Bell Syst. Tech. J. 48, 2909 (1969): dephasing K Δθ sin(φ − θ).
 */
export function angularSelectivity(wavelength: number, index: number, thickness: number, frequency: number, strength: number, leaving: number): number {
  const [d, f] = [nearestWithin(layerThicknesses, thickness), nearestWithin(fringeFrequencies, frequency)];
  // fringes met squarely have no first order: the cosine of π/2, not quite 0 in a double, gives a large number and then π
  const slope = (Math.PI * d * f * Math.cos(braggAngle(wavelength, index, f))) / Math.cos(nearestWithin(insideAngles, leaving));
  return Math.min(Math.PI, departureToDark(strength) / slope);
}

/** Strength that stands for a hologram whose strength does not widen its band. */
const WEAK = 1e-6;

/**
 * Width of the band of colours that a reflection hologram sends back, m, full width at half of its best: 4 ξ½ n cos θ_S / (π d f²). For light
 * along the normal of fringes along the plate and a weak hologram that is 0.4429 λ² / (n d); strength widens it.
 *
 * @param index n of the layer, relative to air; see `layerIndices`
 * @param thickness d of the layer, m; see `layerThicknesses`
 * @param frequency f, fringes per metre in the layer, 1/m; see `fringeFrequencies`
 * @param strength ν, see `hologramStrength` and `strengths`; 0 the limit of a weak hologram
 * @param leaving θ_S of the light sent back, inside, from the normal of the plate, rad; see `insideAngles`
 * @returns at most 1e-5 m
 *
 * Validity: light from a fixed direction, a band narrow beside the wavelength, an index that is the same for all of it, even fringes through the
 * layer. A layer that shrank unevenly reflects a wider band.
 * Source: Kogelnik, Bell Syst. Tech. J. 48, 2909 (1969): dephasing Δλ K² / (4πn).
 */
export function reflectionBandwidth(index: number, thickness: number, frequency: number, strength: number, leaving: number): number {
  const nu = Math.max(WEAK, nearestWithin(strengths, strength));
  const half = reflectionEfficiency(nu, 0) / 2;
  // it falls all the way from the Bragg condition to the first zero
  const departure = bisect(0, Math.hypot(nu, Math.PI), xi => reflectionEfficiency(nu, xi) > half);
  const [d, f] = [nearestWithin(layerThicknesses, thickness), nearestWithin(fringeFrequencies, frequency)];
  const width = (4 * departure * nearestWithin(layerIndices, index) * Math.cos(nearestWithin(insideAngles, leaving))) / (Math.PI * d * f ** 2);
  return Math.min(1e-5, width);
}
