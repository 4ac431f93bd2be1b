import type { Range } from '../range.ts';

/** Angles from a normal, signed, rad. */
export const signedAngles: Range = { from: -Math.PI / 2, to: Math.PI / 2 };

/** Angles between two directions, rad. */
export const fullAngles: Range = { from: 0, to: Math.PI };

/** Refractive indices of a recording layer, relative to air. */
export const layerIndices: Range = { from: 1, to: 5 };

/** Thicknesses of a recording layer, m. */
export const layerThicknesses: Range = { from: 1e-9, to: 0.1 };

/** Amplitudes n₁ by which the index of a phase hologram swings about its mean, 1. */
export const indexAmplitudes: Range = { from: 0, to: 1 };

/** Fringes per metre. The floor, one fringe on a kilometre, keeps quotients finite. */
export const fringeFrequencies: Range = { from: 1e-3, to: 1e9 };
