/** The pinhole in the focus of a lens, which keeps the clean middle of a beam and stops what dust and faults have thrown aside. */
import { wavelengths } from '../coherence/domains.ts';
import { nearestWithin, type Range } from '../range.ts';
import { beamRadii, focalSizes } from './domains.ts';

/** Diameters of pinholes, m. */
export const pinholeDiameters: Range = { from: 1e-7, to: 1 };

/** Magnifications printed on microscope objectives, 1. */
export const magnifications: Range = { from: 0.1, to: 1e3 };

/** Tube lengths, m, for which the magnification of an objective is meant: 160 mm for most older ones, 180 to 200 mm for others. */
export const tubeLengths: Range = { from: 1e-3, to: 10 };

/** How much wider than the contour of 99 % a pinhole is chosen, so that it is not all in the setting of it. */
const CHOICE = 1.3;

/**
 * Diameter of the circle in the focus that holds 99 % of the power, m: λ f / r. It is π/2 times the spot at 1/e².
 *
 * @param wavelength λ in air, m; see `wavelengths` of coherence
 * @param focalLength f of the lens, m; see `focalSizes`
 * @param radius r of the beam on the lens at 1/e², m: half of the diameter; see `beamRadii`
 *
 * Validity: a clean parallel beam that the lens does not cut. A lens filled evenly to its rim gives rings instead, the first dark
 * one at a radius of 1.22 λ f / diameter.
 * Source: an optics supplier's tutorial on spatial filters; the share of 99.3 % follows from the Gaussian profile.
 */
export function contourDiameter(wavelength: number, focalLength: number, radius: number): number {
  return (nearestWithin(wavelengths, wavelength) * nearestWithin(focalSizes, focalLength)) / nearestWithin(beamRadii, radius);
}

/**
 * Diameter of the pinhole to choose, m: 1.3 times `contourDiameter`; arguments and validity as there.
 * Source: the same tutorial, and common practice.
 */
export function pinholeToChoose(wavelength: number, focalLength: number, radius: number): number {
  return CHOICE * contourDiameter(wavelength, focalLength, radius);
}

/**
 * A pinhole as a multiple of the one to choose, 1.
 *
 * Near 1 it fits: anything from 0.77, the contour of 99 %, to about 1.5 is common. Well below it the pinhole costs light, as `pinholeShare`
 * says, throws rings on the plate, and is hard to hit and to keep. Well above it lets through faults of the beam down to the fineness
 * that `finestRipple` says, and the beam is as dirty as without.
 *
 * @param diameter of the pinhole, m; see `pinholeDiameters`
 *
 * Other arguments, validity and source as `pinholeToChoose`.
 */
export function pinholeFit(diameter: number, wavelength: number, focalLength: number, radius: number): number {
  return nearestWithin(pinholeDiameters, diameter) / pinholeToChoose(wavelength, focalLength, radius);
}

/**
 * Share of the power that a pinhole lets through, 1: 1 − exp(−(π²/2) (D/D₉₉)²).
 *
 * Validity: a clean Gaussian beam, the pinhole in the focus and centred. What a pinhole stops of a real beam is mostly its dirt.
 * Arguments as `pinholeFit`. Source: `circleShare` at the focus, whose radius is λ f / (π r).
 */
export function pinholeShare(diameter: number, wavelength: number, focalLength: number, radius: number): number {
  const multiple = nearestWithin(pinholeDiameters, diameter) / contourDiameter(wavelength, focalLength, radius);
  return -Math.expm1(-((Math.PI * multiple) ** 2) / 2);
}

/**
 * The finest ripple across the beam on the lens, crest to crest, that still gets through a pinhole, m: 2 λ f / D. Finer ones, such as
 * the rings round a speck of dust, are stopped by it.
 *
 * @param diameter D of the pinhole, m; see `pinholeDiameters`
 *
 * Validity: as `contourDiameter`. Source: a grating of period Λ throws its first order λ f / Λ beside the focus (Goodman,
 * Introduction to Fourier Optics; from memory).
 */
export function finestRipple(diameter: number, wavelength: number, focalLength: number): number {
  return (2 * nearestWithin(wavelengths, wavelength) * nearestWithin(focalSizes, focalLength)) / nearestWithin(pinholeDiameters, diameter);
}

/**
 * Focal length of a microscope objective, m: tube length by magnification. A focal length that is printed or measured is better.
 *
 * @param magnification printed on it, 1; see `magnifications`
 * @param tubeLength for which that is meant, m; see `tubeLengths`
 *
 * Validity: within about 10 %, as makers round the magnification.
 * Source: definition of the magnification; 160 mm is the older convention (common practice).
 */
export function objectiveFocalLength(magnification: number, tubeLength: number): number {
  return nearestWithin(tubeLengths, tubeLength) / nearestWithin(magnifications, magnification);
}
