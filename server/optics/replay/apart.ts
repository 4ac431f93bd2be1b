/** How far the images of two recordings on one plate stand beside each other, for an eye: the register of colours. */
import { nearestWithin } from '../range.ts';
import { imageDistances, lampDistances, passingAngles, plateWidths } from './domains.ts';
import type { Off } from './view.ts';

/** Where the image of the middle of the object is, see `meetsPlate`, and its width as a multiple of the object's. */
export interface Imaged extends Off { readonly width: number }

/**
 * The farthest that a point of one image is seen beside the same point of the other, m where the first one stands: at the middle of the object and at both its
 * edges in the plane of the beams.
 *
 * @param first its distance m along its line, below zero before the plate, see `imageDistances`; angle of that line, rad, see `passingAngles`; width
 * @param other of the other image
 * @param eye from where it looks, rad; its distance m, see `lampDistances`
 * @param half from the middle of the object to its edge, m; see `plateWidths`
 *
 * Source: geometry: lines from the eye through both points to the plane of the plate. An image at or behind the eye is met as if it were 1 mm before it.
 */
export function imagesApart(first: Imaged, other: Imaged, eye: Off, half: number): number {
  const [v, e, h] = [nearestWithin(lampDistances, eye.distance), nearestWithin(passingAngles, eye.angle), nearestWithin(plateWidths, half)];
  const [xe, before] = [v * Math.sin(e), v * Math.cos(e)];
  const seen = ({ distance, angle, width }: Imaged, side: number): number => {
    const [d, i] = [nearestWithin(imageDistances, distance), nearestWithin(passingAngles, angle)];
    const [x, behind] = [d * Math.sin(i) + side * h * width, d * Math.cos(i)];
    return x + ((xe - x) * behind) / Math.max(1e-3, behind + before);
  };
  const atPlate = Math.max(...[-1, 0, 1].map(side => Math.abs(seen(first, side) - seen(other, side))));
  const behind = nearestWithin(imageDistances, first.distance) * Math.cos(nearestWithin(passingAngles, first.angle));
  return (atPlate * Math.max(1e-3, before + behind)) / before;
}
