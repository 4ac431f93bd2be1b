/** How sharp an image is that stands off its plate. */
import { nearestWithin } from '../range.ts';
import { imageDistances, lampDistances, lampWidths, passingAngles } from './domains.ts';

/** What an eye tells apart in good light, rad: one minute of arc. Common practice. */
export const EYE = Math.PI / (180 * 60);

/**
 * Smear of a part of an image by the width of the lamp, m: D (S / Z) cos θ_C / cos θ_I.
 *
 * @param width S of what glows, across the line to the plate, m; see `lampWidths`
 * @param distance Z of the lamp, m; see `lampDistances`
 * @param depth D of the part from the plate, m, either way; see `imageDistances`
 * @param angles of lamp and image from the normal, rad; see `passingAngles`
 *
 * Validity: in the plane of the beams; across it the cosines fall out.
 * Source: derivative of `imageSine` by the angle of the lamp.
 */
export function lampSmear(width: number, distance: number, depth: number, { lamp, image }: { readonly lamp: number; readonly image: number }): number {
  const [c, i] = [lamp, image].map(a => Math.cos(nearestWithin(passingAngles, a))) as [number, number];
  return (Math.abs(nearestWithin(imageDistances, depth)) * nearestWithin(lampWidths, width) * c) / (nearestWithin(lampDistances, distance) * i);
}

/** Smears of one part of an image together, m: the root of the sum of their squares, as they have nothing to do with each other. Each counts as no less than 0. */
export const smearsTogether = (...smears: readonly number[]): number => Math.sqrt(smears.reduce((sum, s) => sum + nearestWithin(imageDistances, s) ** 2, 0));

/**
 * How wide a smear is that an eye does not see, m: its distance from the image times one minute of arc.
 *
 * @param eye distance of the eye from the plate, m; see `lampDistances`
 * @param image distance of the image behind the plate, m, below zero before it; see `imageDistances`
 */
export function unseenSmear(eye: number, image: number): number {
  return EYE * Math.max(lampDistances.from, nearestWithin(lampDistances, eye) + nearestWithin(imageDistances, image));
}

/** Width of a pupil in the light of a room, m. Common practice: 3 to 5 mm. */
export const PUPIL = 4e-3;

/**
 * Least smear, at the image, of a point whose upright and level lines are sharp at different distances, m: an eye between them has p/2 · |1/v₁ − 1/v₂| of it, v the distances from the eye.
 *
 * @param pupil p, m; see `lampWidths`
 * @param eye distance of the eye from the plate, m; see `lampDistances`
 * @param image, other both distances behind the plate, m, below zero before it; see `imageDistances`
 *
 * Validity: near the axis; an image at the eye or behind it counts as if it were 1 mm before it.
 * Source: the circle of least confusion of an astigmatic pencil (Born & Wolf, Principles of Optics, 4.6, from memory).
 */
export function astigmaticSmear(pupil: number, eye: number, image: number, other: number): number {
  const v = nearestWithin(lampDistances, eye);
  const [a, b] = [image, other].map(d => Math.max(lampDistances.from, v + nearestWithin(imageDistances, d))) as [number, number];
  return (nearestWithin(lampWidths, pupil) / 2) * Math.abs(1 / a - 1 / b) * a;
}
