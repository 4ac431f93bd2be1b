import { wavelengths } from '../coherence/domains.ts';
import { nearestWithin } from '../range.ts';
import { fringeFrequencies, indexAmplitudes, layerIndices, layerThicknesses } from './domains.ts';

/** Klein and Cook's Q up to which a hologram is thin, and from which on it is thick; between them it is neither (Klein & Cook, 1967; from memory). */
export const THIN_TO_Q = 1;
export const THICK_FROM_Q = 10;

/** Moharam and Young's ρ from which on a hologram is thick, whatever its Q (Moharam & Young, 1978; from memory). */
export const THICK_FROM_RHO = 10;

/**
 * How thick a hologram is optically, 1: Q = 2π λ d f² / n, with f = 1/Λ fringes per metre. See {@link THIN_TO_Q} and {@link THICK_FROM_Q}.
 *
 * @param wavelength λ in air, m; see `wavelengths`
 * @param index n of the layer, relative to air; see `layerIndices`
 * @param thickness d of the layer, m; see `layerThicknesses`
 * @param frequency f, fringes per metre in the layer, 1/m; see `fringeFrequencies`
 *
 * Validity: light near the normal; some authors divide by the cosine of the angle inside, for the longer way through the layer.
 * With strong fringes `moharamYoungRho` tells better.
 * Source: Klein & Cook, IEEE Trans. Sonics Ultrason. SU-14, 123 (1967).
 */
export function kleinCookQ(wavelength: number, index: number, thickness: number, frequency: number): number {
  const [lambda, n] = [nearestWithin(wavelengths, wavelength), nearestWithin(layerIndices, index)];
  return (2 * Math.PI * lambda * nearestWithin(layerThicknesses, thickness) * nearestWithin(fringeFrequencies, frequency) ** 2) / n;
}

/** The floor under the index amplitude in `moharamYoungRho`: fringes fainter than this are none. */
const FAINTEST = 1e-9;

/**
 * How far a hologram sends light into one order only, 1: ρ = λ² f² / (n n₁). From {@link THICK_FROM_RHO} on it counts as thick.
 *
 * @param wavelength λ in air, m; see `wavelengths`
 * @param index n of the layer, relative to air; see `layerIndices`
 * @param amplitude n₁ of the index, 1; see `indexAmplitudes`; at least 1e-9
 * @param frequency f, fringes per metre in the layer, 1/m; see `fringeFrequencies`
 *
 * Validity: phase holograms at the Bragg angle.
 * Source: Moharam & Young, Appl. Opt. 17, 1757 (1978).
 */
export function moharamYoungRho(wavelength: number, index: number, amplitude: number, frequency: number): number {
  const n1 = Math.max(FAINTEST, nearestWithin(indexAmplitudes, amplitude));
  return (nearestWithin(wavelengths, wavelength) * nearestWithin(fringeFrequencies, frequency)) ** 2 / (nearestWithin(layerIndices, index) * n1);
}

/**
 * Bragg angle of a layer, rad: between the light inside and the fringe planes, arcsin(λ f / 2n). π/2 where the fringes are finer than any
 * light of this wavelength can make in the layer.
 *
 * @param wavelength λ in air, m; see `wavelengths`
 * @param index n of the layer, relative to air; see `layerIndices`
 * @param frequency f, fringes per metre in the layer, 1/m; see `fringeFrequencies`
 *
 * Source: Bragg's law (any optics text).
 */
export function braggAngle(wavelength: number, index: number, frequency: number): number {
  const [lambda, n] = [nearestWithin(wavelengths, wavelength), nearestWithin(layerIndices, index)];
  return Math.asin(Math.min(1, (lambda * nearestWithin(fringeFrequencies, frequency)) / (2 * n)));
}

/** A type of hologram by what its layer does to the light. */
export type HologramType =
  | 'thin amplitude, sinusoidal' | 'thin amplitude, square' | 'thin phase, sinusoidal' | 'thin phase, square' | 'thin phase, blazed'
  | 'volume amplitude, transmission' | 'volume amplitude, reflection' | 'volume phase, transmission' | 'volume phase, reflection';

/**
 * The most that a hologram of each type can send into its image, share of the light on it.
 *
 * Validity: lossless but for the absorption that makes an amplitude hologram; faces that reflect nothing.
 * Sources: thin types from the orders of a grating (Goodman, Introduction to Fourier Optics, from memory); volume types Kogelnik, Bell Syst.
 * Tech. J. 48, 2909 (1969); all in Collier, Burckhardt & Lin, Optical Holography (1971) (from memory).
 */
export const mostEfficient: Readonly<Record<HologramType, number>> = {
  'thin amplitude, sinusoidal': 1 / 16,
  'thin amplitude, square': 1 / Math.PI ** 2,
  // the square of the first maximum of the Bessel function J₁, at 1.841184
  'thin phase, sinusoidal': 0.5818652242815963 ** 2,
  'thin phase, square': 4 / Math.PI ** 2,
  'thin phase, blazed': 1,
  'volume amplitude, transmission': 1 / 27,
  'volume amplitude, reflection': 1 / (2 + Math.sqrt(3)) ** 2,
  'volume phase, transmission': 1,
  'volume phase, reflection': 1,
};
