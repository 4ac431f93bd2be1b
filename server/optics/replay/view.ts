/** From where an image is seen, through the plate as through a window. */
import { nearestWithin } from '../range.ts';
import { imageDistances, lampDistances, passingAngles, plateWidths } from './domains.ts';

/**
 * Angle through which an eye may go round the middle of an image and still see it, rad: 2 arctan(W / 2D). π for an image in the plate.
 *
 * @param width W of the plate in that direction, m; see `plateWidths`
 * @param image D from the plate, m, either way; see `imageDistances`
 *
 * Validity: the plate sends light to all sides; an image about squarely behind or before it.
 * Source: geometry.
 */
export function parallaxAngle(width: number, image: number): number {
  return 2 * Math.atan2(nearestWithin(plateWidths, width) / 2, Math.abs(nearestWithin(imageDistances, image)));
}

/**
 * How far aside an eye may go and still see all of an image, m: W (V + D)/D − B V/D, or of an image before the plate W (V − |D|)/|D| − B V/|D|. Below zero it sees no more than a part from any place.
 *
 * @param plate W, m; see `plateWidths`
 * @param image D from the plate, m: above zero behind it, below zero before it; see `imageDistances`. In the plate itself there is no bound: the zone is then told for 1 mm.
 * @param size B of the image in that direction, m; see `plateWidths`
 * @param eye V from the plate, m; see `lampDistances`
 *
 * Source: similar triangles.
 */
export function viewingZone(plate: number, image: number, size: number, eye: number): number {
  const [d, v] = [nearestWithin(imageDistances, image), nearestWithin(lampDistances, eye)];
  const off = Math.max(1e-3, Math.abs(d));
  return (nearestWithin(plateWidths, plate) * Math.max(0, v + d) - nearestWithin(plateWidths, size) * v) / off;
}

/** An eye or an image: how far from the middle of the plate along the line to it, and that line's angle from the normal. */
export interface Off { readonly distance: number; readonly angle: number }

/**
 * Where the line from an eye to the middle of an image meets the plane of the plate, m from its middle, above zero to the side to which angles count. Within the plate the eye sees it.
 *
 * @param image from where its light seems to come, rad, see `passingAngles`; its distance m, below zero before the plate, see `imageDistances`
 * @param eye from where it looks, rad; its distance m, see `lampDistances`
 *
 * Source: geometry. An image at or behind the eye is met as if it were 1 mm before it.
 */
export function meetsPlate(image: Off, eye: Off): number {
  const [i, e] = [image.angle, eye.angle].map(a => nearestWithin(passingAngles, a)) as [number, number];
  const [d, v] = [nearestWithin(imageDistances, image.distance), nearestWithin(lampDistances, eye.distance)];
  const [xi, xe] = [d * Math.sin(i), v * Math.sin(e)];
  const [behind, before] = [d * Math.cos(i), v * Math.cos(e)];
  return xi + ((xe - xi) * behind) / Math.max(1e-3, behind + before);
}
