import { wavelengths } from '../coherence/domains.ts';
import { signedAngles } from '../fringes/domains.ts';
import { nearestWithin } from '../range.ts';
import { imageDistances, slitDistances, slitWidths } from './domains.ts';

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
