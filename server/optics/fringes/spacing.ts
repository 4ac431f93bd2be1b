import { wavelengths } from '../coherence/domains.ts';
import { nearestWithin } from '../range.ts';
import { refractedDirection } from '../surfaces/refract.ts';
import { angleFromNormal, dot, unit, type Vector } from '../vectors.ts';
import { fringeFrequencies, fullAngles, layerIndices, signedAngles } from './domains.ts';

/**
 * Fringes per metre along a plate, 1/m: |sin θ₁ − sin θ₂| / λ. The same on the plate and in its layer, whatever the layer is made of.
 *
 * @param wavelength λ in air, m; see `wavelengths`
 * @param one angle at which one beam arrives, from the normal, signed, rad; see `signedAngles`
 * @param other that of the other beam, signed on the same side, rad
 *
 * Validity: both beams and the normal in one plane; in space see `plateFringes`. Enough for the resolving power that a thin transmission
 * hologram needs; a reflection hologram needs that of `layerFringes`.
 * Source: MIT OpenCourseWare MAS.450, "Transmission hologram equations".
 */
export function plateFrequency(wavelength: number, one: number, other: number): number {
  const [a, b] = [nearestWithin(signedAngles, one), nearestWithin(signedAngles, other)];
  return Math.abs(Math.sin(a) - Math.sin(b)) / nearestWithin(wavelengths, wavelength);
}

/**
 * The fringes on the surface of a plate as a vector, 1/m: along the plate, across the fringes, as long as there are fringes per metre;
 * the parts of (k₁ − k₂) / λ along the plate, k of length 1. Zero where the light of both runs alike along the plate.
 *
 * @param wavelength λ in air, m; see `wavelengths`
 * @param normal of the plate, either way
 * @param one direction of one beam in air
 * @param other direction of the other beam in air; the same from whichever side it arrives
 *
 * Validity: plane waves over the piece of the plate that is looked at; a missing direction counts as light along the normal.
 * Source: Collier, Burckhardt & Lin, Optical Holography (1971) (from memory).
 */
export function plateFringes(wavelength: number, normal: Vector, one: Vector, other: Vector): Vector {
  const n = unit(normal);
  const [a, b] = [alongSurface(n, unit(one)), alongSurface(n, unit(other))];
  const lambda = nearestWithin(wavelengths, wavelength);
  return [(a[0] - b[0]) / lambda, (a[1] - b[1]) / lambda, (a[2] - b[2]) / lambda];
}

/**
 * The fringes inside a layer as a vector, 1/m: across the fringe planes, as long as there are fringes per metre; (n / λ) (k₁ − k₂), k of
 * length 1 inside the layer. Holds for transmission and for reflection: there the beams only enter from opposite sides.
 *
 * @param wavelength λ in air, m; see `wavelengths`
 * @param index n of the layer, relative to air; see `layerIndices`
 * @param normal of the layer, either way
 * @param one direction of one beam in air, see `refractedDirection`; light that grazes counts as arriving along `normal`
 * @param other direction of the other beam in air
 *
 * Validity: plane waves over the piece of the plate that is looked at; a layer that keeps its thickness.
 * Source: Kogelnik, Bell Syst. Tech. J. 48, 2909 (1969); Collier, Burckhardt & Lin, Optical Holography (1971) (from memory).
 */
export function layerFringes(wavelength: number, index: number, normal: Vector, one: Vector, other: Vector): Vector {
  const [a, b] = [refractedDirection(one, normal, index), refractedDirection(other, normal, index)];
  const perMetre = nearestWithin(layerIndices, index) / nearestWithin(wavelengths, wavelength);
  return [(a[0] - b[0]) * perMetre, (a[1] - b[1]) * perMetre, (a[2] - b[2]) * perMetre];
}

/**
 * Fringes per metre inside a layer, 1/m: (2n / λ) sin(δ/2), δ the angle of the beams inside. This is what a layer has to resolve.
 *
 * Arguments, validity and source as `layerFringes`.
 */
export function layerFrequency(wavelength: number, index: number, normal: Vector, one: Vector, other: Vector): number {
  return Math.hypot(...layerFringes(wavelength, index, normal, one, other));
}

/**
 * Tilt of the fringe planes in a layer against the surface of the plate, rad, 0 to π/2: 0 parallel to it, as in a reflection hologram whose
 * beams come at the same angle from opposite sides; π/2 upright, as between beams at the same angle from one side. 0 where there are no fringes.
 *
 * @param index n of the layer, relative to air; see `layerIndices`
 * @param normal of the layer, either way
 * @param one direction of one beam in air, see `refractedDirection`; light that grazes counts as arriving along `normal`
 * @param other direction of the other beam in air
 *
 * Validity: as recorded; a layer that shrinks or swells tilts them.
 * Source: the fringe planes halve the angle of the beams inside (Kogelnik, Bell Syst. Tech. J. 48, 2909, 1969).
 */
export function fringeTilt(index: number, normal: Vector, one: Vector, other: Vector): number {
  const [a, b] = [refractedDirection(one, normal, index), refractedDirection(other, normal, index)];
  return angleFromNormal(normal, [a[0] - b[0], a[1] - b[1], a[2] - b[2]]);
}

/**
 * Distance of the fringes between two beams that meet at a full angle θ, m: λ / (2 sin(θ/2)), across the planes that halve that angle;
 * at most 1 km. On a plate that both beams meet at the same angle from one side it is the distance along the plate.
 *
 * @param wavelength λ in air, m; see `wavelengths`
 * @param angle θ in air, rad; see `fullAngles`
 *
 * Source: Young's fringes (any optics text).
 */
export function pairPeriod(wavelength: number, angle: number): number {
  const frequency = (2 * Math.sin(nearestWithin(fullAngles, angle) / 2)) / nearestWithin(wavelengths, wavelength);
  return 1 / nearestWithin(fringeFrequencies, frequency);
}

/**
 * Fringes per metre between two beams that run against each other inside a layer, 1/m: 2n / λ. The most that the layer can be asked for.
 *
 * @param wavelength λ in air, m; see `wavelengths`
 * @param index n of the layer, relative to air; see `layerIndices`
 *
 * Source: Bragg's law for light along the normal of its planes (any optics text).
 */
export function opposedFrequency(wavelength: number, index: number): number {
  return (2 * nearestWithin(layerIndices, index)) / nearestWithin(wavelengths, wavelength);
}

/** The part of a vector that lies in a surface whose normal has length 1. */
function alongSurface(normal: Vector, v: Vector): Vector {
  const across = dot(v, normal);
  return [v[0] - across * normal[0], v[1] - across * normal[1], v[2] - across * normal[2]];
}
