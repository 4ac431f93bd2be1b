import type { Range } from '../range.ts';

/** Path differences, m. Either sign: only the size matters to coherence. */
export const pathDifferences: Range = { from: -1e6, to: 1e6 };

/** Full widths at half maximum of a line or of a gain curve, Hz. */
export const linewidths: Range = { from: 1e-3, to: 1e15 };

/** Degrees of coherence |γ| to be reached, 1. The floor keeps every reach finite. */
export const coherences: Range = { from: 1e-9, to: 1 };

/** Coherence lengths, m. */
export const coherenceLengths: Range = { from: 1e-8, to: 1e12 };

/** Cavity lengths between the mirrors, m. */
export const cavityLengths: Range = { from: 1e-6, to: 1e5 };

/** Group indices of what fills the cavity, 1. */
export const groupIndices: Range = { from: 1, to: 10 };

/** Distances from one revival of the fringes to the next, m. */
export const revivalDistances: Range = { from: 1e-6, to: 2e6 };

/** Numbers of modes, 1; rounded to a whole number. */
export const modeCounts: Range = { from: 1, to: 1e6 };

/** Wavelengths, m. */
export const wavelengths: Range = { from: 1e-7, to: 1e-5 };
