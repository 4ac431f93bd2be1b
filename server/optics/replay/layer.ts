/** What a layer that has shrunk or swollen since the recording sends on: in which colour, and where to. Angles are those of where light comes from, from the normal of the plate, counted to one side. */
import { wavelengths } from '../coherence/domains.ts';
import { indexAmplitudes, layerIndices, layerThicknesses, signedAngles } from '../fringes/domains.ts';
import { layerEfficiency, meeting } from '../fringes/efficiency.ts';
import { nearestWithin } from '../range.ts';
import { plateScales, thicknessFactors } from './domains.ts';

/** How a plate was recorded. */
export interface Recorded {
  /** reference and object came from opposite sides */
  readonly reflection: boolean;
  /** λ, m; see `wavelengths` */
  readonly wavelength: number;
  /** n of the layer; see `layerIndices` */
  readonly index: number;
  /** rad; see `signedAngles` */
  readonly reference: number;
  readonly object: number;
}

/** The layer at replay beside that at the recording. */
export interface Layer {
  /** its thickness, see `thicknessFactors`; below 1 it has shrunk */
  readonly thickness: number;
  /** n at replay; see `layerIndices` */
  readonly index: number;
  /** size of the plate along its surface, see `plateScales`; 1 where it is left out */
  readonly scale?: number;
}

/** The fringe vector k_O − k_R at replay without its 2π, 1/m: along the plate, and along its normal. Its planes come nearer together as the layer shrinks, and keep their distance along the surface. */
export function fringesAtReplay({ reflection, wavelength, index, reference, object }: Recorded, { thickness, scale = 1 }: Layer): readonly [number, number] {
  const [lambda, n] = [nearestWithin(wavelengths, wavelength), nearestWithin(layerIndices, index)];
  const [r, o] = [Math.sin(nearestWithin(signedAngles, reference)), Math.sin(nearestWithin(signedAngles, object))];
  // k points to where the light comes from; of a reflection hologram the reference comes from the other side.
  const along = Math.sqrt(n ** 2 - o ** 2) - (reflection ? -1 : 1) * Math.sqrt(n ** 2 - r ** 2);
  return [(o - r) / (lambda * nearestWithin(plateScales, scale)), along / (lambda * nearestWithin(thicknessFactors, thickness))];
}

/** Light that a layer sends into its image. */
export interface Sent {
  /** m, in air */
  readonly wavelength: number;
  /** of the angle from which it seems to come, in air: beyond ±1 it does not leave the plate */
  readonly sine: number;
}

/**
 * The colour that a layer sends into its image most brightly, and where to: λ = 2 n k̂·K / |K|² with both inside the layer, then k_I = k_C + K.
 *
 * @param recorded how it was recorded
 * @param layer as it is at replay
 * @param lamp θ_C, rad; see `signedAngles`
 * @returns undefined where no colour of that light meets the fringes
 *
 * Validity: a thick layer; all in one plane. Of a thin one, of which a transmission hologram often is, other colours are nearly as bright.
 * Source: Bragg's condition in a layer (Kogelnik, Bell Syst. Tech. J. 48, 2909, 1969); K_z → K_z/s of a layer that has shrunk (Bjelkhagen, Silver-Halide Recording Materials, 1993, from memory).
 */
export function sentColour(recorded: Recorded, layer: Layer, lamp: number): Sent | undefined {
  const [kx, kz] = fringesAtReplay(recorded, layer);
  const square = kx ** 2 + kz ** 2;
  const n = nearestWithin(layerIndices, layer.index);
  const sine = Math.sin(nearestWithin(signedAngles, lamp));
  const inside = [sine, (recorded.reflection ? -1 : 1) * Math.sqrt(n ** 2 - sine ** 2)] as const;
  // |k_C + K| = |k_C|, with k of length n/λ
  const wavelength = square > 0 ? (-2 * (inside[0] * kx + inside[1] * kz)) / square : 0;
  if (!(wavelength >= wavelengths.from && wavelength <= wavelengths.to)) return undefined;
  return { wavelength, sine: sine + wavelength * kx };
}

/**
 * Light of one colour that a layer sends into its image, as a share of what it sends at its best, 1: by how far that light misses the fringes.
 *
 * @param recorded how it was recorded
 * @param layer as it is at replay
 * @param thickness of the layer at the recording, m; see `layerThicknesses`
 * @param amplitude n₁ of its index; see `indexAmplitudes`
 * @param light λ at replay, m, and the angle of the lamp, rad
 *
 * Validity: a phase hologram whose light is neither taken up nor thrown to and fro by its faces; 0 where no light leaves. The best is that of the lamp at the angle of the reference in the colour of the laser, the layer as recorded.
 * Source: Kogelnik, Bell Syst. Tech. J. 48, 2909 (1969).
 */
export function shareSent(recorded: Recorded, layer: Layer, thickness: number, amplitude: number, light: { readonly wavelength: number; readonly lamp: number }): number {
  const d = nearestWithin(layerThicknesses, thickness);
  const n1 = nearestWithin(indexAmplitudes, amplitude);
  const sent = (as: Layer, wavelength: number, lamp: number, deep: number): number => {
    const [kx, kz] = fringesAtReplay(recorded, as);
    const angle = nearestWithin(signedAngles, lamp);
    // The light runs away from where it comes from: on through the plate, or against its normal.
    const ray = [-Math.sin(angle), 0, (recorded.reflection ? 1 : -1) * Math.cos(angle)] as const;
    return layerEfficiency(wavelength, deep, n1, meeting(wavelength, as.index, [0, 0, 1], ray, [kx, 0, kz]));
  };
  const best = sent({ thickness: 1, index: recorded.index }, recorded.wavelength, recorded.reference, d);
  return best > 0 ? Math.min(1, sent(layer, light.wavelength, light.lamp, d * nearestWithin(thicknessFactors, layer.thickness)) / best) : 0;
}

/**
 * Tilt of fringe planes from the normal of the plate, rad, after the layer has shrunk or swollen: arctan(tan φ / s).
 *
 * @param tilt φ at the recording, rad; see `signedAngles`
 * @param thickness s; see `thicknessFactors`
 * Source: geometry; physics of shrinkage as `sentColour`.
 */
export function tiltAfter(tilt: number, thickness: number): number {
  return Math.atan(Math.tan(nearestWithin(signedAngles, tilt)) / nearestWithin(thicknessFactors, thickness));
}
