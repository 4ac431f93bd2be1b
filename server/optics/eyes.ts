/**
 * Published limits for light in the eye, as figures to set beside those of a beam. Every figure here is an estimate, not a hazard assessment: none makes
 * a beam safe, none replaces the label of the laser, the standard in force, local rules or the person responsible for laser safety. Steady visible
 * beams only; of other wavelengths, of pulses and of skin nothing is said, and what has no figure is `undefined`, never a number that looks like one:
 * here, other than elsewhere, so is what is asked with a number outside its range.
 */
import { arrivalAngles } from './light.ts';
import { shares } from './power.ts';
import { isWithin, type Range } from './range.ts';

/** Wavelengths of which these limits tell, m: 400 to 700 nm, with a hair's breadth more, as 700 nm worked out in m need not be the number 7e-7. */
export const eyeWavelengths: Range = { from: 399.9999e-9, to: 700.0001e-9 };

/** Times for which an eye looks into the light, s: 5 µs to 30 000 s, a working day. */
export const stareTimes: Range = { from: 5e-6, to: 30e3 };

/** The time in which an eye turns away from a bright light, s, as the limits reckon it; not everybody's does. */
export const AVERSION_TIME = 0.25;

/** Diameter of the wide pupil over which the limits are taken, m. */
export const PUPIL = 7e-3;

/** Powers of beams, W. */
export const beamPowers: Range = { from: 0, to: 1e6 };

/** Diameters of beams as they leave, m; 0 for a beam from a point. */
export const exitWidths: Range = { from: 0, to: 1e3 };

/** Radii of spread beams, m. */
export const beamRadii: Range = { from: 1e-6, to: 1e3 };

/** Full angles by which beams spread, rad. */
export const divergences: Range = { from: 1e-6, to: Math.PI };

/** Distances from what sends out the light, m. */
export const eyeDistances: Range = { from: 1e-3, to: 1e6 };

/** Limits and other light at an eye, W/m². */
export const eyeLights: Range = { from: 1e-6, to: 1e6 };

/**
 * The maximum permissible exposure of an eye to a steady beam, W/m² at the cornea; `undefined` outside `eyeWavelengths` and `stareTimes`.
 * An estimate, not a hazard assessment.
 *
 * The lesser of the limit for heat, 18 t^0.75 / t up to 10 s and 10 W/m² beyond, and from 10 s on that for the photochemical harm of blue light,
 * 100 C / t up to 100 s and C W/m² beyond, with C = 1 to 450 nm and 10^(0.02 (λ − 450)) with λ in nm above.
 *
 * @param wavelength λ, m; see `eyeWavelengths`
 * @param time t of the stare, s; see `stareTimes`. {@link AVERSION_TIME} for one glance into a visible beam.
 *
 * Validity: a source that the eye sees as a point, as any laser beam and its mirror images; light averaged over {@link PUPIL}.
 * Source: IEC 60825-1:2014, annex A; IEC TR 60825-14; ICNIRP, Health Phys. 105, 271 (2013); directive 2006/25/EC, annex II (from memory).
 */
export function eyeLimit(wavelength: number, time: number): number | undefined {
  if (!isWithin(eyeWavelengths, wavelength) || !isWithin(stareTimes, time)) return undefined;
  if (time < 10) return 18 * time ** -0.25;
  return Math.min(10, time < 100 ? (100 * blueFactor(wavelength)) / time : blueFactor(wavelength));
}

/**
 * The power through a wide pupil that makes up `eyeLimit`, W: the limit times the area of {@link PUPIL}. `undefined` where that is.
 * An estimate, not a hazard assessment.
 *
 * Arguments, validity and source as `eyeLimit`. A beam narrower than the pupil goes in with all its power.
 */
export function eyePowerLimit(wavelength: number, time: number): number | undefined {
  const limit = eyeLimit(wavelength, time);
  return limit === undefined ? undefined : (limit * Math.PI * PUPIL ** 2) / 4;
}

/** The most power that a steady laser of a class can give off, W. Above class 3B it is class 4. */
export interface ClassLimits {
  readonly class1: number
  readonly class2: number
  readonly class3R: number
  readonly class3B: number
}

/**
 * Limits of the laser classes at a wavelength, W; `undefined` outside `eyeWavelengths`. The class itself is the maker's to state, by tests that a
 * power alone does not replace. An estimate, not a hazard assessment.
 *
 * Class 1: 39 µW to 450 nm, 39 µW · 10^(0.02 (λ − 450)) to 500 nm, 390 µW above. Class 2: 1 mW, 3R: 5 mW, 3B: 500 mW.
 *
 * @param wavelength λ, m; see `eyeWavelengths`
 *
 * Validity: steady beams from sources that the eye sees as a point.
 * Source: IEC 60825-1:2014 (from memory).
 */
export function classLimits(wavelength: number): ClassLimits | undefined {
  if (!isWithin(eyeWavelengths, wavelength)) return undefined;
  return { class1: Math.min(390e-6, 39e-6 * blueFactor(wavelength)), class2: 1e-3, class3R: 5e-3, class3B: 0.5 };
}

/**
 * The distance from a laser within which a stare into the bare beam exceeds a limit, m: (√(4P / (πE)) − a) / φ, and 0 where the beam is below it as it
 * leaves. An estimate, not a hazard assessment; mirrors, and above all binoculars and lenses, lengthen it.
 *
 * @param power P, W; see `beamPowers`
 * @param limit E, W/m²: `eyeLimit`; see `eyeLights`
 * @param exit a, diameter of the beam as it leaves, where the light is down to 1/e, m; see `exitWidths`. From that at 1/e² divide by √2.
 * @param divergence φ, full angle by which it spreads, likewise at 1/e, rad; see `divergences`
 *
 * Validity: a round beam from a laser or a lens in empty air.
 * Source: IEC TR 60825-14, nominal ocular hazard distance (from memory).
 */
export function hazardDistance(power: number, limit: number, exit: number, divergence: number): number | undefined {
  if (!areWithin([beamPowers, power], [eyeLights, limit], [exitWidths, exit], [divergences, divergence])) return undefined;
  return Math.max(0, Math.sqrt((4 * power) / (Math.PI * limit)) - exit) / divergence;
}

/**
 * Light in the middle of a spread beam, W/m²: 2P / (πw²). To be set beside `eyeLimit`. An estimate, not a hazard assessment: what leaves the middle of a
 * lens unspread, and what its faces reflect, is not in it.
 *
 * @param power P, W; see `beamPowers`
 * @param radius w of the beam where the eye would be, to where the light is down to 1/e², m; see `beamRadii`. Beams narrower than {@link PUPIL} put less
 *   on its area than this.
 *
 * Validity: a round beam of Gaussian profile.
 * Source: Siegman, Lasers (1986), ch. 17 (from memory).
 */
export function spreadBeamLight(power: number, radius: number): number | undefined {
  return areWithin([beamPowers, power], [beamRadii, radius]) ? (2 * power) / (Math.PI * radius ** 2) : undefined;
}

/**
 * The radius w of a beam at which the light in its middle is down to a limit, m: √(2P / (πE)). An estimate, not a hazard assessment.
 *
 * @param power P, W; see `beamPowers`
 * @param limit E, W/m²: `eyeLimit`; see `eyeLights`
 *
 * Validity and source as `spreadBeamLight`.
 */
export function radiusAtLimit(power: number, limit: number): number | undefined {
  return areWithin([beamPowers, power], [eyeLights, limit]) ? Math.sqrt((2 * power) / (Math.PI * limit)) : undefined;
}

/**
 * Light that a dull card in the beam sends to an eye, W/m²: R P cos θ / (π r²). To be set beside `eyeLimit`. An estimate, not a hazard assessment: a card
 * with a gloss, paint or tape among them, sends far more where it mirrors.
 *
 * @param power P on the card, W; see `beamPowers`
 * @param reflectance R, share of the light that it sends back, 1; see `shares`
 * @param distance r of the eye, m; see `eyeDistances`
 * @param angle θ of the eye from the normal of the card, rad; see `arrivalAngles`
 *
 * Validity: a card that scatters by the cosine of the angle, a spot small beside the distance; large or near spots the eye no longer sees as points.
 * Source: Lambert's cosine law (any optics text).
 */
export function cardLight(power: number, reflectance: number, distance: number, angle = 0): number | undefined {
  if (!areWithin([beamPowers, power], [shares, reflectance], [eyeDistances, distance], [arrivalAngles, angle])) return undefined;
  return (reflectance * power * Math.cos(angle)) / (Math.PI * distance ** 2);
}

/** Everything lies in its range. Nothing is taken to the nearest value here: that could make a hazard look smaller than it is. */
function areWithin(...values: readonly (readonly [Range, number])[]): boolean {
  return values.every(([range, value]) => isWithin(range, value));
}

/** By how much light of a wavelength harms less than blue light. */
function blueFactor(wavelength: number): number {
  // to a millionth of a nm, for the same reason
  const nm = Math.round(wavelength * 1e15) / 1e6;
  return 10 ** (0.02 * Math.max(0, nm - 450));
}
