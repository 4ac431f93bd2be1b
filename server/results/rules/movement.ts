/** Rules of movement: how delicate a thing is, and how far it may move. */
import { ALLOWED_FRINGE } from '../../optics/drift.ts';
import { ANY_MOVEMENT } from '../../optics/movement/delicacy.ts';
import { thermalExpansion } from '../../optics/movement/materials.ts';
import type { Rule } from '../graph.ts';

const SOURCE = 'Fermat’s principle; the sensitivity vector of holographic interferometry (Collier, Burckhardt & Lin, Optical Holography, 1971, from memory)';
const TENTH = 'a tenth of a wavelength of path (common practice)';

/** How far the sum of weighted directions reaches, and its parts. Inputs: directions of light, three components each. */
function sum(weights: readonly number[], x: readonly number[]): [number, number, number] {
  const total: [number, number, number] = [0, 0, 0];
  weights.forEach((w, i) => { for (const axis of [0, 1, 2] as const) total[axis] += w * x[3 * i + axis]!; });
  return total;
}

/**
 * Fringes that go by for each metre that a thing moves in its most delicate direction. Inputs: the directions of the light that comes to it and goes from it, three components each, then the wavelength.
 * `weights`: 1 for light of the object arm that comes and light of the reference that goes, −1 for the other two. What both arms have in common falls out.
 */
export const delicacy = (weights: readonly number[]): Rule => ({
  name: 'delicacy', of: weights, formula: '|arriving − leaving| / λ, directions of length 1; 2 cos θ / λ for a mirror', source: SOURCE,
  compute: x => Math.hypot(...sum(weights, x)) / x[x.length - 1]!,
  partials: x => {
    const [total, wavelength] = [sum(weights, x), x[x.length - 1]!];
    const size = Math.hypot(...total);
    return [...weights.flatMap(w => total.map(t => (size === 0 ? 0 : (w * t) / size / wavelength))), -size / wavelength ** 2];
  },
});
/** Plain numbers: the direction in which it is most delicate, not of length 1. */
export const mostDelicate = sum;

/** Fringes for each metre, by the path change for each metre. Inputs: path change, wavelength. */
export const BY_PATH: Rule = { name: 'delicacy', formula: 'path change / λ', source: SOURCE, compute: ([c, wavelength]) => c! / wavelength!, partials: ([c, wavelength]) => [1 / wavelength!, -c! / wavelength! ** 2] };
/** Of an object, by the angle between light and line of sight. Inputs: that angle, the wavelength. */
export const OBJECT: Rule = {
  name: 'delicacy of an object', formula: '2 cos(ψ/2) / λ, ψ between the light and the line of sight: along the middle of both', source: SOURCE,
  compute: ([psi, wavelength]) => (2 * Math.abs(Math.cos(psi! / 2))) / wavelength!, partials: ([psi, wavelength]) => [-Math.sin(psi! / 2) / wavelength!, (-2 * Math.abs(Math.cos(psi! / 2))) / wavelength! ** 2],
};
/**
 * Of a spreading lens, or a ground glass, moved across its beam, for the corner of what it lights. Inputs: how far that is past the focus that the light spreads from, the Rayleigh range there, width and
 * height of what is lit, the wavelength.
 */
export const SIDEWAYS: Rule = {
  name: 'delicacy across the beam', formula: '2 sin(α/2) / λ, α from the axis to the corner: across the beam', source: SOURCE,
  compute: ([past, rayleigh, width, height, wavelength]) => {
    const tangent = (Math.hypot(width!, height!) / 2) * Math.abs(past! / (past! * past! + rayleigh! * rayleigh! || 1));
    return (2 * Math.sin(Math.atan(tangent) / 2)) / wavelength!;
  },
};
/** Input: fringes per metre. */
export const ALLOWED: Rule = {
  name: 'allowed movement', formula: '0.1 fringe / delicacy', source: TENTH, compute: ([d]) => Math.min(ANY_MOVEMENT, ALLOWED_FRINGE / Math.max(ALLOWED_FRINGE, d!)),
  partials: ([d]) => [d! > ALLOWED_FRINGE / ANY_MOVEMENT ? -ALLOWED_FRINGE / d! ** 2 : 0],
};

/** How long a table rings, as a share of the exposure. Inputs: ring time, exposure. */
export const RING_SHARE: Rule = { name: 'share of the exposure', formula: 'ring time / exposure', compute: ([ring, exposure]) => ring! / exposure!, partials: ([ring, exposure]) => [1 / exposure!, -ring! / exposure! ** 2] };

/** Fringes for each kelvin, as the table grows. Inputs: by how much the arms differ, the coefficient of what they stand on, the wavelength. */
export const BY_WARMTH: Rule = { name: 'fringes in a kelvin', formula: '|object path − reference path| · α / λ', source: 'definition of the coefficient (any physics text)', curved: true, compute: ([l, a, wavelength]) => (Math.abs(l!) * a!) / wavelength! };
/** And as the laser's wavelength drifts with it. Inputs as of {@link BY_WARMTH}, then the drift of the wavelength for each kelvin. */
export const BY_WARMTH_AND_LASER: Rule = {
  name: 'fringes in a kelvin', formula: '|object path − reference path| · (α / λ + dλ/dT / λ²), as if both added', source: 'phase 2πL/λ', curved: true,
  compute: ([l, a, wavelength, drift]) => Math.abs(l!) * (a! / wavelength! + Math.abs(drift!) / wavelength! ** 2),
};
/** Input: fringes for each kelvin. */
export const ALLOWED_WARMING: Rule = { name: 'allowed warming', formula: '0.1 fringe / fringes in a kelvin', source: TENTH, curved: true, compute: ([f]) => ALLOWED_FRINGE / Math.max(1e-6, f!) };

/** No two castings of one material grow alike: at least this share is left open; from memory. */
const ALLOYS = 0.05;
/** Coefficient of expansion of a material, 1/K, with how far it may be off and the tables that it is from. Plain numbers. */
export function expansionOf(material: keyof typeof thermalExpansion): { readonly value: number; readonly amount: number; readonly source: string } {
  const { usual, band, source } = thermalExpansion[material];
  return { value: usual, amount: Math.max(band.to - usual, usual - band.from, ALLOYS * usual), source };
}
