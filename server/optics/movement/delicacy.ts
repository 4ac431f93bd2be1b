/**
 * How much the path changes when a thing moves. Light takes a path whose length does not depend on small detours (Fermat), so whatever turns
 * light from one direction into another, moved by d, changes the path by d · (arriving − leaving), directions of length 1. That holds for
 *
 * - a mirror, or a splitter where it reflects: only the movement along its normal counts, 2 cos θ times
 * - a splitter where it lets light through, or a flat glass: nothing, as the light is not turned
 * - a point of an object or a ground glass: at most twice, where it sends the light straight back
 * - a lens in plane-parallel light, or a pinhole: `leaving` towards the point of the plate that is looked at; nothing sideways on the axis
 * - a hologram that sends light on
 *
 * A plate moves against both beams: the path of the one minus that of the other changes by d · (one − other), so `pathGradient(object,
 * reference)` serves it. A thing that light of both arms meets, before they part or after, counts with the difference of its two gradients.
 */
import { wavelengths } from '../coherence/domains.ts';
import { ALLOWED_FRINGE } from '../drift.ts';
import { incidences, plateIndices, plateThicknesses } from '../glass.ts';
import { nearestWithin, type Range } from '../range.ts';
import { coordinates, cross, dot, unit, type Vector } from '../vectors.ts';

/** Small angles by which a thing is tilted, rad. */
export const tilts: Range = { from: -0.1, to: 0.1 };

/** Distances along a beam, m. */
export const distances: Range = { from: 0, to: 1e3 };

/** Movements too large to cost a tenth of a fringe; stands for "any", m or rad. */
export const ANY_MOVEMENT = 1;

/**
 * Change of the path per movement of a thing, m per m, as a vector: arriving − leaving. Its direction is that in which the thing is most
 * delicate, its length, 0 to 2, how delicate.
 *
 * @param arriving direction in which the light arrives at the thing
 * @param leaving direction in which it leaves; for a plate the two beams that meet there. (0, 0, 0) where the thing ends or starts the light.
 *
 * Validity: movements far below the distances to the things around it. Which things this holds for: see the head of the file.
 * Source: Fermat's principle; for objects known from holographic interferometry as the sensitivity vector (Collier, Burckhardt & Lin,
 * Optical Holography, 1971, from memory).
 */
export function pathGradient(arriving: Vector, leaving: Vector): Vector {
  const [u, v] = [unit(arriving), unit(leaving)];
  return [u[0] - v[0], u[1] - v[1], u[2] - v[2]];
}

/**
 * Change of the path per turn of a thing, m per rad, as a vector: along the axis round which a turn (right-handed) changes it most.
 * (0, 0, 0) where the thing turns about the point that the light meets: then the path changes in second order only, and the light walks instead.
 *
 * @param gradient of the thing, see `pathGradient`
 * @param fromPivot from the point about which the thing turns to the point that the light meets, m; components see `coordinates`
 *
 * Validity: small turns of a thing that the light meets at one surface.
 * Source: the point that the light meets moves by turn × fromPivot.
 */
export function turnGradient(gradient: Vector, fromPivot: Vector): Vector {
  return cross(within(fromPivot), within(gradient));
}

/**
 * The movement that costs a tenth of a fringe, m, or rad for the gradient of a turn: 0.1 λ / |gradient|; {@link ANY_MOVEMENT} at most, which says
 * that none that a table makes does.
 *
 * @param wavelength λ in air, m; see `wavelengths`
 * @param gradient see `pathGradient`, `turnGradient`; of several, the difference
 * @param along the direction of the movement, or the axis of the turn; without it the worst
 *
 * Validity: {@link ALLOWED_FRINGE}, a drift during the exposure (common practice).
 */
export function allowedMovement(wavelength: number, gradient: Vector, along?: Vector): number {
  const g = within(gradient);
  const change = along === undefined ? Math.hypot(...g) : Math.abs(dot(g, unit(along)));
  return allowed(wavelength, change);
}

/**
 * Path change per movement of a flat mirror along its normal, 1: 2 cos θ.
 *
 * @param incidence θ of the light on it, rad; see `incidences`
 * Source: geometry; the length of `pathGradient` of a mirror.
 */
export function mirrorPathChange(incidence: number): number {
  return 2 * Math.cos(nearestWithin(incidences, incidence));
}

/**
 * How far along its normal a flat mirror may move for a tenth of a fringe, m: 0.1 λ / (2 cos θ).
 *
 * @param wavelength λ in air, m; see `wavelengths`
 * @param incidence θ of the light on it, rad; see `incidences`
 *
 * Validity and source as `allowedMovement`.
 */
export function allowedMirrorMovement(wavelength: number, incidence: number): number {
  return allowed(wavelength, mirrorPathChange(incidence));
}

/**
 * How far along its surface a plate may move for a tenth of a fringe, m: 0.1 / f.
 *
 * @param frequency f of the fringes along the plate, see `plateFrequency`, 1/m; 0 to 1e9
 *
 * Validity and source as `allowedMovement`. The movement across the fringes counts; along them it costs nothing.
 */
export function allowedPlateSlide(frequency: number): number {
  return Math.min(ANY_MOVEMENT, ALLOWED_FRINGE / nearestWithin({ from: ALLOWED_FRINGE, to: 1e9 }, frequency));
}

/**
 * How far a beam walks on what it lands on when a mirror tilts about the point that it meets, m: 2 L × tilt.
 *
 * @param distance L from the mirror, m; see `distances`
 * @param tilt of the mirror about an axis across the plane of the light, rad; see `tilts`. About an axis in that plane the walk is less, by cos θ.
 *
 * Validity: small tilts. The path itself changes in second order only.
 * Source: law of reflection.
 */
export function beamWalk(distance: number, tilt: number): number {
  return 2 * nearestWithin(distances, distance) * nearestWithin(tilts, tilt);
}

/**
 * Change of the path through a flat glass, a splitter let through among them, per turn of it, m per rad: t sin θ (1 − cos θ / √(n² − sin²θ)).
 * 0 squarely, where the change is of second order.
 *
 * @param index n of the glass, relative to air; see `plateIndices`
 * @param thickness t, m; see `plateThicknesses`
 * @param incidence θ in air, rad; see `incidences`
 *
 * Validity: parallel faces, a turn in the plane of incidence. The beam also moves aside.
 * Source: derivative of the phase path t (√(n² − sin²θ) − cos θ) (Born & Wolf, on plane-parallel plates).
 */
export function glassTurnSlope(index: number, thickness: number, incidence: number): number {
  const [n, angle] = [nearestWithin(plateIndices, index), nearestWithin(incidences, incidence)];
  const inside = Math.sqrt(n ** 2 - Math.sin(angle) ** 2);
  // only light that grazes a glass of index 1 gives 0/0; there is no glass
  return inside === 0 ? 0 : nearestWithin(plateThicknesses, thickness) * Math.sin(angle) * (1 - Math.cos(angle) / inside);
}

function allowed(wavelength: number, change: number): number {
  const path = ALLOWED_FRINGE * nearestWithin(wavelengths, wavelength);
  return change * ANY_MOVEMENT <= path ? ANY_MOVEMENT : path / change;
}

function within(v: Vector): Vector {
  return [nearestWithin(coordinates, v[0]), nearestWithin(coordinates, v[1]), nearestWithin(coordinates, v[2])];
}
