import { nearestWithin, type Range } from './range.ts';

/** A clear material with its published dispersion formula, λ in µm. */
export interface Glass {
  /** n² = 1 + Σ Bλ²/(λ² − C), or n = a + bλ² + cλ⁻². */
  readonly formula:
    | { readonly kind: 'sellmeier'; readonly terms: readonly { readonly b: number; readonly c: number }[] }
    | { readonly kind: 'polynomial'; readonly a: number; readonly b: number; readonly c: number }
  /** Wavelengths in air that the formula was fitted to, m. */
  readonly wavelengths: Range
  readonly source: string
}

/** Borosilicate crown of the BK7 type: n 1.5168, V 64.17 at the yellow d line. */
export const borosilicateCrown: Glass = {
  formula: {
    kind: 'sellmeier',
    terms: [
      { b: 1.03961212, c: 0.00600069867 },
      { b: 0.231792344, c: 0.0200179144 },
      { b: 1.01046945, c: 103.560653 },
    ],
  },
  wavelengths: { from: 0.3e-6, to: 2.5e-6 },
  source: 'manufacturer data sheet (2017), in the refractiveindex.info database (CC0; Polyanskiy, Sci. Data 11, 94, 2024)',
};

export const fusedSilica: Glass = {
  formula: {
    kind: 'sellmeier',
    terms: [
      { b: 0.6961663, c: 0.0684043 ** 2 },
      { b: 0.4079426, c: 0.1162414 ** 2 },
      { b: 0.8974794, c: 9.896161 ** 2 },
    ],
  },
  wavelengths: { from: 0.21e-6, to: 3.71e-6 },
  source: 'Malitson, J. Opt. Soc. Am. 55, 1205 (1965)',
};

/** Clear soda-lime float glass, as window panes and most plates; makers and the tin side differ by ±0.005 (common practice). */
export const sodaLime: Glass = {
  formula: { kind: 'polynomial', a: 1.513, b: -0.003169, c: 0.003962 },
  wavelengths: { from: 0.31e-6, to: 4.6e-6 },
  source: 'Rubin, Sol. Energy Mater. 12, 275 (1985)',
};

/** Acrylic sheet, PMMA. */
export const acrylic: Glass = {
  formula: { kind: 'sellmeier', terms: [{ b: 1.1819, c: 0.011313 }] },
  wavelengths: { from: 0.4368e-6, to: 1.052e-6 },
  source: 'fit to Sultanova et al., Acta Phys. Pol. A 116, 585 (2009), in the refractiveindex.info database (CC0)',
};

/** Thicknesses of a plate, m. */
export const plateThicknesses: Range = { from: 0, to: 1 };

/** Indices of a plate, phase or group, relative to air. */
export const plateIndices: Range = { from: 1, to: 5 };

/** Angles of incidence from the normal, rad, either sign. */
export const incidences: Range = { from: -Math.PI / 2, to: Math.PI / 2 };

/**
 * Refractive index n of a glass, relative to air, 1: for directions (refraction) and phases.
 *
 * @param wavelength in air, m; see `glass.wavelengths`, which also holds how far the formula is valid
 * Source: `glass.source`.
 */
export function refractiveIndex(glass: Glass, wavelength: number): number {
  return dispersion(glass, wavelength).index;
}

/**
 * Group index N = n − λ dn/dλ of a glass, relative to air, 1: for the path that counts for coherence, since
 * wave packets travel with the group. Arguments, validity and source as `refractiveIndex`.
 */
export function groupIndex(glass: Glass, wavelength: number): number {
  const { index, lambdaTimesSlope } = dispersion(glass, wavelength);
  return index - lambdaTimesSlope;
}

/**
 * How much a plane-parallel plate adds to the coherence path of a beam through it, m, compared with the air it replaces:
 * t ((nN − sin²θ)/√(n² − sin²θ) − cos θ); (N − 1)t at normal incidence.
 *
 * @param index refractive index n, at least 1; see `plateIndices`
 * @param group group index N; see `plateIndices`
 * @param thickness t, m; see `plateThicknesses`
 * @param incidence angle θ from the normal in air, rad; see `incidences`
 *
 * Validity: the beam leaves parallel to itself, a little aside; path measured along its direction.
 * Source: derived, as the derivative by frequency of the phase path t (√(n² − sin²θ) − cos θ) (Born & Wolf, on plane-parallel plates).
 */
export function plateCoherencePath(index: number, group: number, thickness: number, incidence: number): number {
  const n = nearestWithin(plateIndices, index);
  const N = nearestWithin(plateIndices, group);
  const angle = nearestWithin(incidences, incidence);
  const sin2 = Math.sin(angle) ** 2;
  // Only an index of 1 at grazing incidence gives 0/0; there is nothing to cross the plate, and the limit for N = 1 is 0.
  const inside = Math.sqrt(n ** 2 - sin2);
  if (inside === 0) return 0;
  return nearestWithin(plateThicknesses, thickness) * ((n * N - sin2) / inside - Math.cos(angle));
}

/** n and λ dn/dλ, both without a unit. */
function dispersion(glass: Glass, wavelength: number): { index: number; lambdaTimesSlope: number } {
  const lambda2 = (nearestWithin(glass.wavelengths, wavelength) * 1e6) ** 2;
  const { formula } = glass;
  if (formula.kind === 'polynomial') {
    const [square, inverse] = [formula.b * lambda2, formula.c / lambda2];
    return { index: formula.a + square + inverse, lambdaTimesSlope: 2 * square - 2 * inverse };
  }
  let [squared, squaredSlope] = [1, 0];
  for (const { b, c } of formula.terms) {
    squared += (b * lambda2) / (lambda2 - c);
    squaredSlope -= (2 * b * c * lambda2) / (lambda2 - c) ** 2;
  }
  const index = Math.sqrt(squared);
  return { index, lambdaTimesSlope: squaredSlope / (2 * index) };
}
