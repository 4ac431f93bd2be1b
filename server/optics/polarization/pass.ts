/** What mirrors, splitters, polarizers, wave plates and faces of glass do to a field. */
import { wavelengths } from '../coherence/domains.ts';
import { shares } from '../power.ts';
import { nearestWithin, type Range } from '../range.ts';
import { fresnelAmplitudes, passedShares, type EachPolarization } from '../surfaces/fresnel.ts';
import { reflectedDirection, refractedDirection } from '../surfaces/refract.ts';
import { angleFromNormal, cross, type Vector } from '../vectors.ts';
import { times, turn, type Complex } from '../complex.ts';
import { axisAt, cleaned, component, composed, weakened, type Field } from './field.ts';
import { sAxis } from './incidence.ts';
import { each, type Light } from './states.ts';

/** Each part of an amplitude of something that does not amplify, 1. */
export const amplitudeParts: Range = { from: -1, to: 1 };
/** Delays of a wave plate, rad: up to many waves. */
export const delays: Range = { from: -1e4, to: 1e4 };

/**
 * A field behind an ideal mirror: e' = −e + 2(e·n)n. All of the light is kept.
 *
 * @param field the light that arrives
 * @param normal of the mirror, either way
 * Source: field of a perfect conductor, without a part in its surface (any text on electromagnetism).
 */
export function mirrored(field: Field, normal: Vector): Field {
  return coated(field, normal, { s: [-1, 0], p: [1, 0] });
}

/**
 * A field behind a mirror that changes s and p differently.
 *
 * @param field the light that arrives
 * @param normal of the mirror, either way
 * @param amplitudes r_s and r_p, counted as in `fresnelAmplitudes`: −1 and 1 for an ideal mirror; see `amplitudeParts`, and
 *   `mirrorAmplitudes` to make them
 *
 * Validity: a flat mirror; at normal incidence r_p = −r_s, else what counts as s is arbitrary (see `sAxis`).
 * Source: Born & Wolf, Principles of Optics, §1.5 and §13.4.
 */
export function coated(field: Field, normal: Vector, amplitudes: EachPolarization<Complex>): Field {
  const f = cleaned(field);
  return turned(f, sidesOf(f.direction, normal, reflectedDirection(f.direction, normal)), { s: passive(amplitudes.s), p: passive(amplitudes.p) });
}

/**
 * Amplitudes of a mirror or of the reflecting side of a splitter by what a maker states.
 *
 * @param reflects shares of the light that are reflected, of s and of p; see `shares`
 * @param lag by how much p comes later than s, against an ideal mirror, rad; see `delays`
 * Source: definition.
 */
export function mirrorAmplitudes(reflects: EachPolarization, lag = 0): EachPolarization<Complex> {
  return { s: [-Math.sqrt(nearestWithin(shares, reflects.s)), 0], p: times([Math.sqrt(nearestWithin(shares, reflects.p)), 0], turn(nearestWithin(delays, lag))) };
}

/** The reflected side of a splitter: shares of the light on it, of s and of p, that leave by this side; else as `coated`. */
export function splitReflected(field: Field, normal: Vector, reflects: EachPolarization, lag = 0): Field {
  return coated(field, normal, mirrorAmplitudes(reflects, lag));
}

/**
 * The side of a splitter where light goes through.
 *
 * @param field the light that arrives
 * @param normal of the splitter, either way
 * @param passes shares of the light, of s and of p, that leave by this side; see `shares`
 * @param lag by how much p comes later than s, rad; see `delays`
 *
 * Validity: as `coated`; the light goes on in its direction, a little aside.
 */
export function splitThrough(field: Field, normal: Vector, passes: EachPolarization, lag = 0): Field {
  const f = cleaned(field);
  const { s, p } = mirrorAmplitudes(passes, lag);
  return turned(f, sidesOf(f.direction, normal, f.direction), { s: [-s[0], 0], p });
}

/**
 * A field behind an ideal polarizer: the part along its axis. Of light at an angle to it cos² goes through.
 *
 * @param field the light that arrives
 * @param axis direction of polarization that it lets through, from vertical as in `axisAt`, rad
 *
 * Validity: a polarizer square to the beam, without loss and without leakage; for a loss see `attenuated`.
 * Source: Malus's law (any optics text).
 */
export function polarizerPassed(field: Field, axis: number): Field {
  const f = cleaned(field);
  const a = axisAt(f.direction, axis);
  return composed(f.direction, a, component(f, a), a, [0, 0]);
}

/**
 * A field behind a wave plate: the part square to its fast axis comes later.
 *
 * @param field the light that arrives
 * @param fastAxis from vertical as in `axisAt`, rad
 * @param delay rad: π for half a wave; see `delays` and `delayAt`
 *
 * Validity: a plate square to the beam, without loss. For a half-wave plate it is the same which axis is called fast.
 * Source: Born & Wolf, Principles of Optics, §15.4.
 */
export function retarded(field: Field, fastAxis: number, delay: number): Field {
  const f = cleaned(field);
  const fast = axisAt(f.direction, fastAxis);
  const slow = cross(f.direction, fast);
  return composed(f.direction, fast, component(f, fast), slow, times(component(f, slow), turn(nearestWithin(delays, delay))));
}

/** A field behind a half-wave plate: polarization at α leaves at 2·axis − α. Else as `retarded`. */
export const halfWavePassed = (field: Field, axis: number): Field => retarded(field, axis, Math.PI);
/** A field behind a quarter-wave plate: polarization 45° from its axis becomes circular. Else as `retarded`. */
export const quarterWavePassed = (field: Field, fastAxis: number): Field => retarded(field, fastAxis, Math.PI / 2);

/**
 * Delay of a wave plate at another wavelength than its own, rad.
 *
 * @param delay at its own wavelength, rad; see `delays`
 * @param madeFor its own wavelength, m; see `wavelengths`
 * @param wavelength of the light, m
 *
 * Validity: one plate, not several that correct each other; the change of its birefringence, a few per cent over the visible, is left out.
 * Source: the delay in length stays the same (any optics text).
 */
export function delayAt(delay: number, madeFor: number, wavelength: number): number {
  return (nearestWithin(delays, delay) * nearestWithin(wavelengths, madeFor)) / nearestWithin(wavelengths, wavelength);
}

/** A field behind something that lets a share of the light through, see `shares`, and does not turn it. */
export const attenuated = (field: Field, passes: number): Field => weakened(cleaned(field), Math.sqrt(nearestWithin(shares, passes)));

/**
 * What the square of a field is behind a face: `power`, that of the light that goes on, n₂ cos θ₂ and the width of the beam counted; `amplitude`,
 * that of the field itself (t_s and t_p as they are); `none`: as in front, so that the field is only turned, as by a perfect coating.
 * Between s and p, the first two weigh alike.
 */
export type FaceWeight = 'power' | 'amplitude' | 'none';

/**
 * A field that has passed into another material. No field and no direction where all of it is reflected.
 *
 * @param field the light that arrives
 * @param normal of the surface, either way
 * @param index refractive index behind the surface; see `plateIndices`
 * @param from refractive index in front of it; see `plateIndices`
 * @param weight what the field is behind it
 *
 * Source: Born & Wolf, Principles of Optics, §1.5.
 */
export function refractedField(field: Field, normal: Vector, index: number, from = 1, weight: FaceWeight = 'power'): Field {
  const f = cleaned(field);
  return turned(f, ...faceOf(f.direction, normal, index, from, weight));
}

/** All parts of a light that has passed into another material. Arguments and source as `refractedField`. */
export function refractedLight(light: Light, normal: Vector, index: number, from = 1, weight: FaceWeight = 'power'): Light {
  // They mostly go in one direction, and so the face does the same to all.
  let face: { readonly to: Vector; readonly does: Face } | undefined;
  return each(light, (field) => {
    const f = cleaned(field);
    if (!face || !isSame(face.to, f.direction)) face = { to: f.direction, does: faceOf(f.direction, normal, index, from, weight) };
    return turned(f, ...face.does);
  });
}
const isSame = (a: Vector, b: Vector): boolean => a[0] === b[0] && a[1] === b[1] && a[2] === b[2];

type Face = readonly [Sides, EachPolarization<Complex>];
const faceOf = (light: Vector, normal: Vector, index: number, from: number, weight: FaceWeight): Face =>
  [sidesOf(light, normal, refractedDirection(light, normal, index, from)), faceAmplitudes(angleFromNormal(normal, light), index, from, weight)];

/** The field that such a face reflects, by Fresnel's amplitudes, with their phases where all of it is reflected. Arguments and source as `refractedField`. */
export function faceReflected(field: Field, normal: Vector, index: number, from = 1): Field {
  const f = cleaned(field);
  return coated(f, normal, fresnelAmplitudes(angleFromNormal(normal, f.direction), index, from).reflected);
}

function faceAmplitudes(incidence: number, index: number, from: number, weight: FaceWeight): EachPolarization<Complex> {
  if (weight === 'none') return { s: [1, 0], p: [1, 0] };
  if (weight === 'amplitude') return fresnelAmplitudes(incidence, index, from).passed;
  const { s, p } = passedShares(incidence, index, from);
  return { s: [Math.sqrt(s), 0], p: [Math.sqrt(p), 0] };
}

/** Where s and p lie in front of a surface, and p behind it, where the light goes on in `direction`. */
interface Sides { readonly direction: Vector; readonly s: Vector; readonly p: Vector; readonly behind: Vector }

function sidesOf(light: Vector, normal: Vector, direction: Vector): Sides {
  const s = sAxis(light, normal);
  return { direction, s, p: cross(s, light), behind: cross(s, direction) };
}

/** s and p, each by its amplitude, in the directions that they have behind the surface. */
const turned = (f: Field, { direction, s, p, behind }: Sides, amplitudes: EachPolarization<Complex>): Field =>
  cleaned(composed(direction, s, times(component(f, s), amplitudes.s), behind, times(component(f, p), amplitudes.p)));

const passive = (a: Complex): Complex => [nearestWithin(amplitudeParts, a[0]), nearestWithin(amplitudeParts, a[1])];
