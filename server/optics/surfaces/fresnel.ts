/**
 * What one plane surface between two clear materials reflects and lets through.
 *
 * s is the part of the field that lies in the surface, square to the plane of incidence; p the part in that plane. Amplitudes
 * count p along s × (direction of the light), for arriving, reflected and passed light alike: so r_s and r_p differ in sign at
 * normal incidence, although nothing tells s from p there. Waves go as exp(−iωt).
 */
import { incidences, plateIndices } from '../glass.ts';
import { over, squared, type Complex } from '../complex.ts';
import { nearestWithin } from '../range.ts';

/** One number for each of the two polarizations. */
export interface EachPolarization<T = number> { readonly s: T; readonly p: T }

/** Field that leaves a surface by each way, as a multiple of the field that arrives. */
export interface SurfaceAmplitudes { readonly reflected: EachPolarization<Complex>; readonly passed: EachPolarization<Complex> }

/**
 * Fresnel's amplitudes r_s, r_p (`reflected`) and t_s, t_p (`passed`), complex where all light is reflected, real otherwise.
 * There `phase` of the reflected ones is the phase step, and the passed ones are those of the field that clings to the surface.
 *
 * @param incidence angle from the normal on the side where the light arrives, rad; see `incidences`
 * @param index refractive index behind the surface; see `plateIndices`
 * @param from refractive index in front of it; see `plateIndices`
 *
 * Validity: plane waves; no coating, no absorption. The square of `passed` is not yet the share of the power: see `passedShares`.
 * Source: Born & Wolf, Principles of Optics, §1.5.
 */
export function fresnelAmplitudes(incidence: number, index: number, from = 1): SurfaceAmplitudes {
  const { near, s, p } = sums(incidence, index, from);
  return {
    reflected: { s: over([s.near - s.far[0], -s.far[1]], [s.near + s.far[0], s.far[1]]), p: over([p.near - p.far[0], -p.far[1]], [p.near + p.far[0], p.far[1]]) },
    passed: { s: over([2 * near, 0], [s.near + s.far[0], s.far[1]]), p: over([2 * near, 0], [p.near + p.far[0], p.far[1]]) },
  };
}

/** Shares R_s, R_p of the light that a surface reflects, 1. Arguments, validity and source as `fresnelAmplitudes`. */
export function reflectedShares(incidence: number, index: number, from = 1): EachPolarization {
  const { reflected } = fresnelAmplitudes(incidence, index, from);
  return { s: squared(reflected.s), p: squared(reflected.p) };
}

/**
 * Shares T_s, T_p of the power that goes on behind a surface, 1: (n₂ cos θ₂ / n₁ cos θ₁) t²; 0 where all is reflected.
 * Arguments, validity and source as `fresnelAmplitudes`.
 */
export function passedShares(incidence: number, index: number, from = 1): EachPolarization {
  const { s, p } = sums(incidence, index, from);
  const share = ({ near, far }: Sum): number => (4 * near * far[0]) / squared([near + far[0], far[1]]);
  return { s: share(s), p: share(p) };
}

/**
 * Angle of the light behind a surface from its normal, rad, with the sign of the incidence: Snell's law. ±π/2 where nothing goes
 * on, which is from `criticalAngle` on. Arguments as `fresnelAmplitudes`.
 *
 * Source: Snell's law (any optics text).
 */
export function refractionAngle(incidence: number, index: number, from = 1): number {
  const sine = (nearestWithin(plateIndices, from) / nearestWithin(plateIndices, index)) * Math.sin(nearestWithin(incidences, incidence));
  return Math.asin(Math.max(-1, Math.min(1, sine)));
}

/** Incidence, rad, from which on all light is reflected; π/2 where the index behind the surface is not the smaller. Arguments as `fresnelAmplitudes`. */
export function criticalAngle(index: number, from: number): number {
  return Math.asin(Math.min(1, nearestWithin(plateIndices, index) / nearestWithin(plateIndices, from)));
}

/**
 * Brewster's angle, rad: the incidence at which p is wholly passed, and the reflected light is wholly s. tan θ = n₂ / n₁.
 * Arguments as `fresnelAmplitudes`.
 *
 * Source: Brewster's law (Born & Wolf, Principles of Optics, §1.5).
 */
export function brewsterAngle(index: number, from = 1): number {
  return Math.atan2(nearestWithin(plateIndices, index), nearestWithin(plateIndices, from));
}

interface Sum { readonly near: number; readonly far: Complex }

/** The terms of Fresnel's fractions: n₁ cos θ₁ and n₂ cos θ₂ for s, n₂ cos θ₁ and n₁ cos θ₂ for p; `near` is n₁ cos θ₁. */
function sums(incidence: number, index: number, from: number): { near: number; s: Sum; p: Sum } {
  const [n1, n2] = [nearestWithin(plateIndices, from), nearestWithin(plateIndices, index)];
  // Never quite 0 for the double next to π/2, so that no sum below is 0.
  const cos1 = Math.cos(nearestWithin(incidences, incidence));
  const m2 = (n1 / n2) ** 2;
  // 1 − m² sin²θ₁ in a shape that is exact at grazing incidence and for equal indices
  const square = 1 - m2 + m2 * cos1 ** 2;
  const root = Math.sqrt(Math.abs(square));
  const cos2: Complex = square < 0 ? [0, root] : [root, 0];
  return {
    near: n1 * cos1,
    s: { near: n1 * cos1, far: [n2 * cos2[0], n2 * cos2[1]] },
    p: { near: n2 * cos1, far: [n1 * cos2[0], n1 * cos2[1]] },
  };
}
