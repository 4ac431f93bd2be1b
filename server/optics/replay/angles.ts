/** Angles of replay, and back to those of the recording. All are those of where light comes from, from the normal of the plate, counted to one side. */
import { layerIndices, signedAngles } from '../fringes/domains.ts';
import { nearestWithin } from '../range.ts';
import { wavelengthRatios } from './domains.ts';
import type { Order } from './focus.ts';

/**
 * Sine of the angle at which the light of the image seems to come, 1: m μ (sin θ_O − sin θ_R) + sin θ_C. Beyond ±1 there is no image.
 *
 * @param order m, 1 or −1; see `Order`
 * @param ratio μ, wavelength at replay divided by that of the recording; see `wavelengthRatios`
 * @param object θ_O, rad; see `signedAngles`
 * @param reference θ_R, rad
 * @param lamp θ_C, rad
 *
 * Validity: exact along the surface of a plate that keeps its size.
 * Source: the grating equation; MIT OpenCourseWare MAS.450, "Transmission hologram equations".
 */
export function imageSine(order: Order, ratio: number, object: number, reference: number, lamp: number): number {
  const [o, r, c] = [object, reference, lamp].map(a => Math.sin(nearestWithin(signedAngles, a))) as [number, number, number];
  return order * nearestWithin(wavelengthRatios, ratio) * (o - r) + c;
}

/** Sines of the angles in air at which a plate is recorded; those beyond ±1 no light from air has. Undefined where the laser's wavelength is too long for such fringes. */
export interface RecordingSines { readonly reference: number; readonly object: number }

/**
 * Angles of the recording by those of the replay: the fringes in the layer are the same for both. In the layer the fringe vector K = k_I − k_C of replay is k_O − k_R of the recording, with k of length n/λ_C and n/λ_R.
 * It lies as the fringes of reference and object do, and so is met at Bragg's angle. With one wavelength the angles are those of the replay.
 *
 * @param reflection reference and object come from opposite sides
 * @param ratio μ, wavelength at replay divided by that of the recording; see `wavelengthRatios`
 * @param index n of the layer; see `layerIndices`
 * @param lamp θ_C, rad; see `signedAngles`
 * @param image θ_I, from where the light of the image seems to come, rad
 *
 * Validity: a layer that keeps its thickness and index from the recording to the replay; all in one plane.
 * Source: Bragg's condition in a layer (Kogelnik, Bell Syst. Tech. J. 48, 2909, 1969); Snell's law.
 */
export function recordingSines(reflection: boolean, ratio: number, index: number, lamp: number, image: number): RecordingSines | undefined {
  const [mu, n] = [nearestWithin(wavelengthRatios, ratio), nearestWithin(layerIndices, index)];
  const [c, i] = [Math.sin(nearestWithin(signedAngles, lamp)), Math.sin(nearestWithin(signedAngles, image))];
  if (mu === 1) return { reference: c, object: i };
  // In parts of 1/λ of the recording: along the plate, and along its normal.
  const [kc, ki] = [[c / mu, (reflection ? -1 : 1) * Math.sqrt(n ** 2 - c ** 2) / mu], [i / mu, Math.sqrt(n ** 2 - i ** 2) / mu]] as const;
  const half = [(ki[0] - kc[0]) / 2, (ki[1] - kc[1]) / 2] as const;
  const square = n ** 2 - half[0] ** 2 - half[1] ** 2;
  if (square < 0) return undefined;
  // Both run to the same side of the fringe vector as at replay; where they ran against each other along it, to the side of the lamp.
  const mean = [(ki[0] + kc[0]) / 2, (ki[1] + kc[1]) / 2] as const;
  const length = Math.hypot(...mean);
  const along = length > 1e-12 ? mean[0] / length : ((c < 0 ? -1 : 1) * half[1]) / Math.hypot(...half);
  const t = Math.sqrt(square);
  return { reference: t * along - half[0], object: t * along + half[0] };
}
