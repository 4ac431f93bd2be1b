import type { Range } from '../range.ts';

/** Curvatures 1/R of light at a plate, 1/m: above zero it spreads, 0 it is parallel, below zero it runs together. */
export const lightCurvatures: Range = { from: -1e6, to: 1e6 };

/** Distances of images from a plate, m: above zero behind it, where light seems to come from; below zero before it, where light runs together. */
export const imageDistances: Range = { from: -1e6, to: 1e6 };

/** Wavelength at replay beside that of the recording, 1. */
export const wavelengthRatios: Range = { from: 0.05, to: 20 };

/** Widths of a slit, m. */
export const slitWidths: Range = { from: 0, to: 1 };

/** Distances from a slit to a plate, m. */
export const slitDistances: Range = { from: 1e-3, to: 1e3 };

/** Thickness of a layer at replay beside that at the recording, 1. */
export const thicknessFactors: Range = { from: 0.01, to: 10 };

/** Size of a finished plate beside that at the recording, 1. */
export const plateScales: Range = { from: 0.1, to: 10 };

/** Widths of what glows, m. */
export const lampWidths: Range = { from: 0, to: 1e3 };

/** Distances of lamps and eyes from a plate, m. */
export const lampDistances: Range = { from: 1e-3, to: 1e6 };

/** Widths of plates and images, m. */
export const plateWidths: Range = { from: 0, to: 1e3 };

/** Angles from a normal within which light passes a plate, rad: 89.9° either way. */
export const passingAngles: Range = { from: -1.569, to: 1.569 };
