import { wavelengths } from '../coherence/domains.ts';
import { signedAngles } from '../fringes/domains.ts';
import { nearestWithin } from '../range.ts';
import { imageDistances, slitDistances, slitWidths, wavelengthRatios } from './domains.ts';

/** Less slant than this does not part colours, 1. */
const LEAST_SINE = 1e-6;

/**
 * Width of the band of colours that an eye sees at once of a rainbow hologram, m: λ a / (R sin θ).
 *
 * @param wavelength λ of the recording, m; see `wavelengths`
 * @param width a of the slit before the master, with the pupil where that counts, m; see `slitWidths`
 * @param distance R from the slit to the plate, m; see `slitDistances`
 * @param reference θ of the plate's reference from its normal, rad; see `signedAngles`
 * @returns at most the wavelength itself
 *
 * Validity: object light about squarely; the eye where the slit is imaged.
 * Source: `imageSine` by wavelength: dθ = sin θ_R dλ / λ, a the width that passes an angle of a / R (Benton & Bove, Holographic Imaging, 2008, from memory).
 */
export function slitColours(wavelength: number, width: number, distance: number, reference: number): number {
  const lambda = nearestWithin(wavelengths, wavelength);
  const sine = Math.max(LEAST_SINE, Math.abs(Math.sin(nearestWithin(signedAngles, reference))));
  return Math.min(lambda, (lambda * nearestWithin(slitWidths, width)) / (nearestWithin(slitDistances, distance) * sine));
}

/** Widths of a band of colours, m. */
const bands = { from: 0, to: 1e-5 };

/**
 * Smear of a part of an image by the colours of the light that shows it, m: D Δλ |sin θ_O − sin θ_R| / (λ cos θ_I).
 *
 * @param wavelength λ of the recording, m; see `wavelengths`
 * @param band Δλ of the light that shows it, m, up to 10 µm
 * @param distance D from the plate to the part of the image, m, either way; see `imageDistances`
 * @param angles of the object light, of the reference and of the light of the image, rad; see `signedAngles`; the last one counts as no more than 89.9°
 *
 * Validity: a transmission hologram of a thin layer, which sends all colours on; a narrow band.
 * Source: derivative of `imageSine` by the wavelength at replay.
 */
export function colourSmear(wavelength: number, band: number, distance: number, { object, reference, image }: { readonly object: number; readonly reference: number; readonly image: number }): number {
  const sine = (angle: number): number => Math.sin(nearestWithin(signedAngles, angle));
  const turned = (nearestWithin(bands, band) * Math.abs(sine(object) - sine(reference))) / (nearestWithin(wavelengths, wavelength) * Math.max(1e-3, Math.cos(nearestWithin(signedAngles, image))));
  return Math.abs(nearestWithin(imageDistances, distance)) * turned;
}

/**
 * Ratio μ of the wavelength that white light sends from a hologram to an eye, beside that of the recording, 1: (sin θ_I − sin θ_C) / (sin θ_O − sin θ_R). Nothing where the plate does not part colours.
 *
 * @param angles of object light, reference, lamp, and of the light of the image that the eye sees, rad; see `signedAngles`
 *
 * Source: `imageSine`, solved for μ.
 */
export function colourSeen({ object, reference, lamp, image }: { readonly object: number; readonly reference: number; readonly lamp: number; readonly image: number }): number | undefined {
  const [o, r, c, i] = [object, reference, lamp, image].map(a => Math.sin(nearestWithin(signedAngles, a))) as [number, number, number, number];
  const ratio = Math.abs(o - r) < LEAST_SINE ? 0 : (i - c) / (o - r);
  return ratio > 0 ? nearestWithin(wavelengthRatios, ratio) : undefined;
}

/**
 * Angle by which a strip of slits is tipped out of the plane of the plate so that the images of one slit in all colours lie in it, rad: arctan(sin θ_R).
 *
 * @param reference θ_R, rad; see `signedAngles`
 *
 * Validity: object light about squarely, the lamp at the angle of the reference; near the axis.
 * Source: R_I = R_O / μ at the angle of `imageSine`, to first order in μ − 1 (Benton & Bove, Holographic Imaging, 2008, from memory).
 */
export function achromaticAngle(reference: number): number {
  return Math.atan(Math.abs(Math.sin(nearestWithin(signedAngles, reference))));
}

/**
 * Band of colours from edge to edge of a rainbow hologram for an eye that is not where its slit is imaged, m: `slitColours` of a slit that is H |1 − S/V| / M wide. An eye at S has one colour all over.
 *
 * @param wavelength of the recording, m
 * @param plate H of the plate in the plane of its beams, m; see `slitWidths`
 * @param slit S, where the slit is imaged before the plate, and its width there as a multiple of itself, M
 * @param eye V from the plate, m; see `slitDistances`
 * @param distance from the slit to the plate at the recording, m
 * @param reference angle of the reference, rad
 *
 * Validity: the image near its plate; at most the wavelength itself.
 * Source: similar triangles; `slitColours`.
 */
export function coloursOver(wavelength: number, plate: number, slit: { readonly place: number; readonly width: number }, eye: number, distance: number, reference: number): number {
  const [h, v] = [nearestWithin(slitWidths, plate), nearestWithin(slitDistances, eye)];
  const wide = Math.max(1e-3, Math.abs(nearestWithin(imageWidths, slit.width)));
  return slitColours(wavelength, (h * Math.abs(1 - nearestWithin(slitDistances, slit.place) / v)) / wide, distance, reference);
}
/** Widths of an image as multiples, 1. */
const imageWidths = { from: -1e9, to: 1e9 };
