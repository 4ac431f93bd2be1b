/** What share of the light a splitter has to send to the object for a beam ratio at the plate, and back. */
import { nearestWithin, type Range } from '../range.ts';
import { shares } from '../power.ts';
import { beamRatios } from '../visibility.ts';
import { powers } from './domains.ts';

/** Light at the plate for each watt that enters an arm, 1/m²: spreading, losses, slant and the object's scattering all counted. */
export const armYields: Range = { from: 1e-12, to: 1e12 };

/** Shares that a diffuse object throws back, and that a surface lets through, 1. The floor keeps the ratio finite. */
export const returns: Range = { from: 1e-4, to: 1 };

/**
 * Share ρ of the light that has to enter the object arm for a beam ratio, 1: A_r / (A_r + K A_o).
 *
 * @param ratio K, light at the plate from the reference to that from the object; see `beamRatios`
 * @param reference A_r of the reference arm, 1/m²; see `armYields`
 * @param object A_o of the object arm, 1/m²; see `armYields`
 *
 * Validity: one splitter, whose losses are the same for both sides or none.
 * Source: conservation of energy: K = (1 − ρ) A_r / (ρ A_o).
 */
export function objectShare(ratio: number, reference: number, object: number): number {
  const [toReference, toObject] = [nearestWithin(armYields, reference), nearestWithin(armYields, object)];
  return toReference / (toReference + nearestWithin(beamRatios, ratio) * toObject);
}

/**
 * Beam ratio K that a share of the light for the object arm gives, 1: (1 − ρ) A_r / (ρ A_o), the inverse of `objectShare`.
 * At a share of 0 or 1 it is the end of `beamRatios`.
 *
 * @param share ρ; see `shares` of power
 *
 * Other arguments, validity and source as `objectShare`.
 */
export function ratioOfShare(share: number, reference: number, object: number): number {
  const rho = nearestWithin(shares, share);
  return nearestWithin(beamRatios, ((1 - rho) * nearestWithin(armYields, reference)) / (rho * nearestWithin(armYields, object)));
}

/**
 * Light at the plate from both arms, W/m²: P ((1 − ρ) A_r + ρ A_o).
 *
 * @param power P that the splitter shares out, W; see `powers`
 * @param share ρ that enters the object arm; see `shares` of power
 *
 * Other arguments, validity and source as `objectShare`.
 */
export function totalLight(power: number, share: number, reference: number, object: number): number {
  const rho = nearestWithin(shares, share);
  return nearestWithin(powers, power) * ((1 - rho) * nearestWithin(armYields, reference) + rho * nearestWithin(armYields, object));
}

/**
 * Beam ratio of a single-beam reflection hologram, 1: 1 / (R_d T²). Nothing can set it but the tone of the object.
 *
 * @param reflectance share R_d of the light that the object throws back evenly to all sides; see `returns`
 * @param transmission share T that passes from the layer to the object, once: 0.96 for one bare face of glass; see `returns`
 *
 * Validity: a matt object that all but touches the plate. Farther off its light is spread and the ratio is higher.
 * Source: the light passes twice between layer and object (conservation of energy).
 */
export function singleBeamRatio(reflectance: number, transmission: number): number {
  return nearestWithin(beamRatios, 1 / (nearestWithin(returns, reflectance) * nearestWithin(returns, transmission) ** 2));
}
