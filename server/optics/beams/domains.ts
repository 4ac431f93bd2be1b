import { nearestWithin, type Range } from '../range.ts';

/** Radii of beams, where the light has fallen to 1/e² (13.5 %) of that on the axis, m. */
export const beamRadii: Range = { from: 1e-8, to: 1e4 };

/** Beam qualities M², 1: how many times more than the ideal Gaussian beam of the same waist a beam spreads. */
export const beamQualities: Range = { from: 1, to: 1e4 };

/** Distances along or across a beam, m. */
export const distances: Range = { from: -1e6, to: 1e6 };

/** Powers of beams, W. The floor keeps quotients finite. */
export const powers: Range = { from: 1e-15, to: 1e6 };

/** Half angles at which a beam spreads, from the axis to 1/e², rad. */
export const halfAngles: Range = { from: 1e-9, to: 1.5 };

/** Curvatures of wavefronts, 1/m: above 0 where the light spreads, below where it draws together, 0 where it is parallel. */
export const curvatures: Range = { from: -1e7, to: 1e7 };

/** Sizes of focal lengths, m; the sign is kept apart. */
export const focalSizes: Range = { from: 1e-5, to: 1e7 };

/** Half widths, half heights and radii of openings, m. */
export const halfSizes: Range = { from: 0, to: 1e3 };

/** Half of the angles by which a focal mirror turns the light, rad. */
export const halfFolds: Range = { from: 0, to: 1.5 };

/** A focal length, m: above 0 gathers, below 0 spreads. Its size counts as the nearest of `focalSizes`. */
export function nearestFocalLength(focalLength: number): number {
  const size = nearestWithin(focalSizes, Math.abs(focalLength));
  return focalLength < 0 ? -size : size;
}
