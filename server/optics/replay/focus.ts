/**
 * Where a hologram has its image, and back: where the object has to be so that the image is where it is wanted. Distances and curvatures are those of the light at the plate.
 * `order` 1 is the image that the reference itself shows, −1 that of light which runs the way of the reference backwards, as when a master is turned round.
 */
import { signedAngles } from '../fringes/domains.ts';
import { nearestWithin } from '../range.ts';
import { imageDistances, lightCurvatures, plateScales, wavelengthRatios } from './domains.ts';

export type Order = 1 | -1;

/** What is smaller than this in a denominator counts as it: an image farther than any room. */
const LEAST = 1e-9;
const apart = (v: number): number => (Math.abs(v) >= LEAST ? v : v < 0 ? -LEAST : LEAST);

/**
 * Curvature of the light of the image at the plate, 1/m: m μ (1/R_O − 1/R_R) + 1/R_C, across the plane in which reference and object lie.
 *
 * @param order m
 * @param ratio μ, wavelength at replay divided by that of the recording; see `wavelengthRatios`
 * @param object 1/R_O, 1/m; see `lightCurvatures`
 * @param reference 1/R_R, 1/m
 * @param lamp 1/R_C of the light that shows it, 1/m
 *
 * Validity: near the axis; a plate that keeps its size. In the plane of the beams see `inPlaneCurvature`.
 * Source: Meier, J. Opt. Soc. Am. 55, 987 (1965); MIT OpenCourseWare MAS.450, "Transmission hologram equations".
 */
export function imageCurvature(order: Order, ratio: number, object: number, reference: number, lamp: number): number {
  const [o, r, c] = [nearestWithin(lightCurvatures, object), nearestWithin(lightCurvatures, reference), nearestWithin(lightCurvatures, lamp)];
  return order * nearestWithin(wavelengthRatios, ratio) * (o - r) + c;
}

/** Angles from the normal, rad, each under π/2. */
export interface ReplayAngles { readonly object: number; readonly reference: number; readonly lamp: number; readonly image: number }

/** No light runs along a plate: cosines are at least this. */
const GRAZING = 1e-3;

/**
 * The same in the plane in which reference and object lie: (m μ (cos²θ_O/R_O − cos²θ_R/R_R) + cos²θ_C/R_C) / cos²θ_I. Where it differs from `imageCurvature`, level and upright lines of the image are sharp at different distances.
 *
 * Arguments, validity and sources as there; Champagne, J. Opt. Soc. Am. 57, 51 (1967).
 */
export function inPlaneCurvature(order: Order, ratio: number, object: number, reference: number, lamp: number, { object: o, reference: r, lamp: c, image: i }: ReplayAngles): number {
  const square = (angle: number): number => Math.max(GRAZING, Math.cos(nearestWithin(signedAngles, angle))) ** 2;
  return imageCurvature(order, ratio, nearestWithin(lightCurvatures, object) * square(o), nearestWithin(lightCurvatures, reference) * square(r), nearestWithin(lightCurvatures, lamp) * square(c)) / square(i);
}

/**
 * Distance R_O at which the object has to be, m, so that the image lies at R_I: m μ R_I / (1 + R_I (m μ / R_R − 1 / R_C)). Above zero its light spreads, as from an object; below zero it has to run together behind the plate, as that of
 * another hologram's real image does. At most 1e9 times μ R_I.
 *
 * @param order m
 * @param ratio μ; see `wavelengthRatios`
 * @param image R_I, m: above zero behind the plate, below zero before it; see `imageDistances`
 * @param reference 1/R_R, 1/m; see `lightCurvatures`
 * @param lamp 1/R_C, 1/m
 *
 * Source: `imageCurvature`, solved for R_O; so that an image in the plate itself has an answer.
 */
export function objectDistance(order: Order, ratio: number, image: number, reference: number, lamp: number): number {
  const mu = order * nearestWithin(wavelengthRatios, ratio);
  const at = nearestWithin(imageDistances, image);
  return (mu * at) / apart(1 + at * (mu * nearestWithin(lightCurvatures, reference) - nearestWithin(lightCurvatures, lamp)));
}

/**
 * Curvature of the reference with which the image is as wide as the object, 1/m: 1 / (m μ R_C). With μ = 1 it is the light of the lamp itself, or that run backwards, and the image is the object without any fault.
 * The object is then at m μ R_I, and the image 1/μ times as deep as it.
 *
 * @param order m
 * @param ratio μ; see `wavelengthRatios`
 * @param lamp 1/R_C, 1/m; see `lightCurvatures`
 * Source: `imageCurvature` and `widthOfImage`, solved for a width of 1.
 */
export function matchedReference(order: Order, ratio: number, lamp: number): number {
  return nearestWithin(lightCurvatures, lamp) / (order * nearestWithin(wavelengthRatios, ratio));
}

/**
 * Width of the image as a multiple of the object's, 1: 1 + R_I (m μ / R_R − 1 / R_C), which is m μ R_I / R_O. Its depth is that of the object times the square of this divided by m μ; below zero it is turned inside out.
 *
 * Arguments as `objectDistance`.
 * Source: Meier, J. Opt. Soc. Am. 55, 987 (1965).
 */
export function widthOfImage(order: Order, ratio: number, image: number, reference: number, lamp: number): number {
  const mu = order * nearestWithin(wavelengthRatios, ratio);
  return 1 + nearestWithin(imageDistances, image) * (mu * nearestWithin(lightCurvatures, reference) - nearestWithin(lightCurvatures, lamp));
}

/** The light of a recording and of its replay, as curvatures at the plate, 1/m; see `lightCurvatures`. */
export interface Lights { readonly reference: number; readonly lamp: number }

/**
 * Width of the image as a multiple of the object's, by where the object was: m μ / (m μ (1 − R_O/R_R) + R_O/R_C), which is m μ R_I / R_O and holds for an object in the plate too.
 *
 * @param order m
 * @param ratio μ; see `wavelengthRatios`
 * @param object R_O, m: above zero its light spreads at the plate, below zero it runs together behind it; see `imageDistances`
 * @param lights 1/R_R of the reference, 1/R_C of the light that shows it
 * @returns below zero where the image is turned upside down as well
 *
 * Validity: near the axis; at most 1e9 μ.
 * Source: Meier, J. Opt. Soc. Am. 55, 987 (1965).
 */
export function widthByObject(order: Order, ratio: number, object: number, { reference, lamp }: Lights): number {
  const [mu, at] = [order * nearestWithin(wavelengthRatios, ratio), nearestWithin(imageDistances, object)];
  return mu / apart(mu * (1 - at * nearestWithin(lightCurvatures, reference)) + at * nearestWithin(lightCurvatures, lamp));
}

/**
 * Where the image lies, m: above zero behind the plate, below zero before it, at most 1e9 times as far as the object; across the plane of the beams. It is 1 / `imageCurvature`, and 0 for an object in the plate.
 *
 * Arguments, validity and source as `widthByObject`.
 */
export function imagePlace(order: Order, ratio: number, object: number, lights: Lights): number {
  const mu = order * nearestWithin(wavelengthRatios, ratio);
  return (widthByObject(order, ratio, object, lights) * nearestWithin(imageDistances, object)) / mu;
}

/**
 * The same in the plane of the beams: where lines are sharp that run across it. It is 1 / `inPlaneCurvature`, and 0 for an object in the plate.
 *
 * Arguments and validity as `widthByObject`; source as `inPlaneCurvature`.
 */
export function inPlanePlace(order: Order, ratio: number, object: number, { reference, lamp }: Lights, { object: o, reference: r, lamp: c, image: i }: ReplayAngles): number {
  const square = (angle: number): number => Math.max(GRAZING, Math.cos(nearestWithin(signedAngles, angle))) ** 2;
  const [mu, at] = [order * nearestWithin(wavelengthRatios, ratio), nearestWithin(imageDistances, object)];
  const [cr, cc] = [nearestWithin(lightCurvatures, reference) * square(r), nearestWithin(lightCurvatures, lamp) * square(c)];
  return (square(i) * at) / apart(mu * (square(o) - at * cr) + at * cc);
}

/**
 * Depth of a thin part of the image as a multiple of that of the object, 1: width² / (m μ), the derivative of `imagePlace` by R_O. Below zero the image is turned inside out.
 *
 * @param order m
 * @param ratio μ; see `wavelengthRatios`
 * @param width as `widthByObject` gives it, at most 1e9 either way
 *
 * Source: Meier, J. Opt. Soc. Am. 55, 987 (1965).
 */
export function depthOfImage(order: Order, ratio: number, width: number): number {
  return nearestWithin({ from: -1e9, to: 1e9 }, width) ** 2 / (order * nearestWithin(wavelengthRatios, ratio));
}

/**
 * Ratios of wavelengths with which angles and curvatures of a plate come out that is larger or smaller at replay than at the recording, 1: μ/s and μ/s².
 *
 * @param ratio μ; see `wavelengthRatios`
 * @param scale s, size of the finished plate beside that at the recording; see `plateScales`
 *
 * Source: Meier, J. Opt. Soc. Am. 55, 987 (1965); its fringes lie s times as far apart.
 */
export function scaledRatios(ratio: number, scale: number): { readonly angles: number; readonly curvatures: number } {
  const [mu, s] = [nearestWithin(wavelengthRatios, ratio), nearestWithin(plateScales, scale)];
  return { angles: mu / s, curvatures: mu / s ** 2 };
}
