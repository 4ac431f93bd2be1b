/** Light of a hologram's image where a plate takes it up. */
import { nearestWithin, type Range } from '../range.ts';

/** Widths of what diffracts and of its image, m. */
export const imageWidths: Range = { from: 0, to: 1e3 };
/** Distances of an image from its hologram, m: below zero for a virtual one, behind it. */
export const imageDistances: Range = { from: -1e4, to: 1e4 };
/** Nearer than this to its hologram no image is counted, m: there the light of its points goes everywhere. */
const NEAREST = 1e-6;

/**
 * Width, m, over which the light of an image is spread where a plate crosses it, such that light over that width is what its middle gets.
 *
 * Each point of the hologram sends its light through each point of the image: at the distance L the two widths a |1 − L/D| and b |L/D|, folded with each other. In the
 * middle their overlap is as long as the shorter one, so that light there is that of the longer one by itself. In the plane of the image, L = D, that is the image's own width.
 *
 * @param opening a, width of what diffracts: of the hologram, or of the slit before it
 * @param image b, width of the image
 * @param distance D of the image from the hologram, see `imageDistances`
 * @param plate L, distance of the plate from the hologram
 *
 * Validity: an evenly lit opening and an evenly bright flat image, both facing the plate. 0 where light meets in a point. Source: geometry.
 */
export function imageSpread(opening: number, image: number, distance: number, plate: number): number {
  const [a, b] = [opening, image].map(w => nearestWithin(imageWidths, w)) as [number, number];
  const [d, l] = [distance, plate].map(v => nearestWithin(imageDistances, v)) as [number, number];
  const far = l / (Math.sign(d) || 1) / Math.max(NEAREST, Math.abs(d));
  return Math.max(a * Math.abs(1 - far), b * Math.abs(far));
}
