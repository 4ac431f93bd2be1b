/** Efficiency of thick phase holograms by Kogelnik's theory of two coupled waves. */
import { wavelengths } from '../coherence/domains.ts';
import { nearestWithin, type Range } from '../range.ts';
import { dot, unit, type Vector } from '../vectors.ts';
import { indexAmplitudes, layerIndices, layerThicknesses } from './domains.ts';
import { refractedDirection } from '../surfaces/refract.ts';

/** Strengths ν of a hologram, 1. */
export const strengths: Range = { from: 0, to: 1e6 };

/** Departures ξ from the Bragg condition, 1; the sign does not count. */
export const departures: Range = { from: -1e9, to: 1e9 };

/** Angles inside a layer, from the normal of the plate, rad, either sign. The ends are 0.001 rad short of a light that grazes. */
export const insideAngles: Range = { from: 0.001 - Math.PI / 2, to: Math.PI / 2 - 0.001 };

/** Components of a vector of fringes, 1/m. */
export const fringeComponents: Range = { from: -1e9, to: 1e9 };

/**
 * Strength ν of a phase hologram, 1: π n₁ d / (λ √(cos θ_R cos θ_S)).
 *
 * @param wavelength λ in air, m; see `wavelengths`
 * @param thickness d of the layer, m; see `layerThicknesses`
 * @param amplitude n₁ of the index, 1; see `indexAmplitudes`
 * @param arriving θ_R of the light that arrives, inside the layer, from the normal of the plate, rad; see `insideAngles`
 * @param leaving θ_S of the light that the hologram sends off, likewise
 *
 * Validity: light polarized across the plane of both beams; else ν is less by the cosine of their angle inside. n₁ far below n.
 * Source: Kogelnik, Bell Syst. Tech. J. 48, 2909 (1969).
 */
export function hologramStrength(wavelength: number, thickness: number, amplitude: number, arriving: number, leaving: number): number {
  return strengthBetween(wavelength, thickness, amplitude, Math.cos(nearestWithin(insideAngles, arriving)), Math.cos(nearestWithin(insideAngles, leaving)));
}

/**
 * Share of the light that a thick transmission phase hologram sends into its image, 1: sin²√(ν² + ξ²) / (1 + ξ²/ν²).
 *
 * @param strength ν, see `hologramStrength` and `strengths`
 * @param departure ξ from the Bragg condition, see `meeting` and `departures`
 *
 * Validity: thick holograms, light in two directions only, no absorption, nothing reflected by the faces. Very strong fringes in thin layers
 * do otherwise.
 * Source: Kogelnik, Bell Syst. Tech. J. 48, 2909 (1969), about equation 43 (number from memory).
 */
export function transmissionEfficiency(strength: number, departure: number): number {
  const nu = nearestWithin(strengths, strength);
  const x = Math.hypot(nu, nearestWithin(departures, departure));
  return x === 0 ? 0 : (nu * Math.sin(x) / x) ** 2;
}

/**
 * Share of the light that a thick reflection phase hologram sends into its image, 1: 1 / (1 + (1 − ξ²/ν²) / sinh²√(ν² − ξ²)).
 * Where ξ is the larger the root is imaginary, and the hyperbolic sine becomes a sine.
 *
 * @param strength ν, see `hologramStrength` and `strengths`
 * @param departure ξ from the Bragg condition, see `meeting` and `departures`
 *
 * Validity: as `transmissionEfficiency`.
 * Source: Kogelnik, Bell Syst. Tech. J. 48, 2909 (1969), about equations 57 and 58 (numbers from memory).
 */
export function reflectionEfficiency(strength: number, departure: number): number {
  const nu = nearestWithin(strengths, strength);
  const rise = growth(nu, nearestWithin(departures, departure));
  return nu === 0 ? 0 : 1 / (1 + 1 / (nu * rise) ** 2);
}

/** How replay light meets the fringes of a layer. */
export interface Meeting {
  /** ϑ, by how much the light that is sent off lags behind in phase, rad per metre of the layer; 0 on the Bragg condition. */
  readonly dephasing: number
  /** Cosine to the normal of the plate of the light that arrives inside; above zero. */
  readonly arriving: number
  /** The same for the light that is sent off, after Kogelnik: above zero it goes on (transmission), below zero it turns back (reflection). */
  readonly leaving: number
}

/**
 * How light meets recorded fringes: its departure ϑ from the Bragg condition and both obliquities. ξ = ϑ d / (2 · leaving).
 *
 * @param wavelength λ of the light in air, m; see `wavelengths`
 * @param index n of the layer, relative to air; see `layerIndices`
 * @param normal of the plate, either way
 * @param light direction of the light in air, see `refractedDirection`
 * @param fringes as `layerFringes` gives them, 1/m; see `fringeComponents`. Their sign chooses the order: the light that is sent off is
 *   light − fringes, so that `layerFringes(…, light, other)` sends it along `other`.
 *
 * Validity: directions near the Bragg condition; far from it Kogelnik's theory sends off nothing worth a figure.
 * Source: Kogelnik, Bell Syst. Tech. J. 48, 2909 (1969): ϑ = (β² − |σ|²) / 2β with σ = ρ − K and β = 2πn/λ.
 */
export function meeting(wavelength: number, index: number, normal: Vector, light: Vector, fringes: Vector): Meeting {
  const ray = refractedDirection(light, normal, index);
  // all in units of β, so that the numbers stay near 1
  const perMetre = nearestWithin(layerIndices, index) / nearestWithin(wavelengths, wavelength);
  const [x, y, z] = fringes.map(component => nearestWithin(fringeComponents, component) / perMetre) as [number, number, number];
  const n = unit(normal);
  const inwards = dot(ray, n) < 0 ? -1 : 1;
  // (1 − |ray − fringes|²) / 2, of which 1 − |ray|² falls out
  const lag = dot(ray, [x, y, z]) - dot([x, y, z], [x, y, z]) / 2;
  return { dephasing: 2 * Math.PI * perMetre * lag, arriving: Math.abs(dot(ray, n)), leaving: inwards * dot([ray[0] - x, ray[1] - y, ray[2] - z], n) };
}

/** A cosine nearer to zero than this is light that runs along the layer, of which the theory knows nothing. */
const ALONG = 1e-3;

/**
 * Share of the light that a thick phase hologram sends into its image when it is lit in any way, 1. 0 for light that runs along the layer.
 *
 * @param wavelength λ of the light in air, m; see `wavelengths`
 * @param thickness d of the layer, m; see `layerThicknesses`
 * @param amplitude n₁ of the index, 1; see `indexAmplitudes`
 * @param met how the light meets the fringes, see `meeting`
 *
 * Validity and source as `transmissionEfficiency`, `reflectionEfficiency` and `hologramStrength`.
 */
export function layerEfficiency(wavelength: number, thickness: number, amplitude: number, met: Meeting): number {
  const [arriving, leaving] = [met.arriving, Math.abs(met.leaving)];
  if (!(arriving >= ALONG && leaving >= ALONG)) return 0;
  const strength = strengthBetween(wavelength, thickness, amplitude, arriving, leaving);
  const departure = (met.dephasing * nearestWithin(layerThicknesses, thickness)) / (2 * leaving);
  return met.leaving > 0 ? transmissionEfficiency(strength, departure) : reflectionEfficiency(strength, departure);
}

function strengthBetween(wavelength: number, thickness: number, amplitude: number, arriving: number, leaving: number): number {
  return (Math.PI * nearestWithin(indexAmplitudes, amplitude) * nearestWithin(layerThicknesses, thickness)) / (nearestWithin(wavelengths, wavelength) * Math.sqrt(arriving * leaving));
}

/** sinh(x)/x with x² = ν² − ξ², whichever sign that has; at most 1e300. */
function growth(nu: number, xi: number): number {
  const square = (nu - xi) * (nu + xi);
  const x = Math.sqrt(Math.abs(square));
  if (x === 0) return 1;
  return square > 0 ? Math.min(1e300, Math.sinh(x) / x) : Math.sin(x) / x;
}
