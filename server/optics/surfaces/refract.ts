import { plateIndices } from '../glass.ts';
import { nearestWithin } from '../range.ts';
import { dot, unit, type Vector } from '../vectors.ts';

/**
 * Direction of light behind a mirror or a face: length 1. The light itself where the surface has no direction.
 *
 * @param light direction of the light
 * @param normal of the surface, either way
 * Source: law of reflection.
 */
export function reflectedDirection(light: Vector, normal: Vector): Vector {
  const [u, n] = [unit(light), unit(normal)];
  const along = 2 * dot(u, n);
  return unit([u[0] - along * n[0], u[1] - along * n[1], u[2] - along * n[2]]);
}

/**
 * Direction of light that has passed into another material: length 1; (0, 0, 0) where all of it is reflected, and where
 * the light or the surface has no direction.
 *
 * @param light direction of the light
 * @param normal of the surface, either way
 * @param index refractive index behind the surface; see `plateIndices`
 * @param from refractive index in front of it; see `plateIndices`
 *
 * Source: Snell's law for vectors: n (direction) × (normal) is the same on both sides (Born & Wolf, Principles of Optics, §3.2).
 */
export function refractedDirection(light: Vector, normal: Vector, index: number, from = 1): Vector {
  const [u, n] = [unit(light), unit(normal)];
  if (dot(u, u) === 0 || dot(n, n) === 0) return NOWHERE;
  const m = nearestWithin(plateIndices, from) / nearestWithin(plateIndices, index);
  const cos1 = dot(u, n);
  const square = 1 - m ** 2 + (m * cos1) ** 2;
  if (square < 0) return NOWHERE;
  const onward = (cos1 < 0 ? -1 : 1) * Math.sqrt(square) - m * cos1;
  return unit([m * u[0] + onward * n[0], m * u[1] + onward * n[1], m * u[2] + onward * n[2]]);
}

const NOWHERE: Vector = [0, 0, 0];
