/** Directions of light in space: x to the right and y away in the plan, z up; right-handed. Geometry throughout. */
import { nearestWithin, type Range } from './range.ts';

export type Vector = readonly [number, number, number];

/** Coordinates, m, and components of directions. */
export const coordinates: Range = { from: -1e6, to: 1e6 };
/** Angles of a direction, rad: a few whole turns. */
export const turns: Range = { from: -1e3, to: 1e3 };

/** Shorter than this a vector has no direction. */
const NOTHING = 1e-9;
const NOWHERE: Vector = [0, 0, 0];

/** Scalar product of two vectors with finite components. */
export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
/** Vector product of two vectors with finite components: at right angles to both, right-handed. */
export const cross = (a: Vector, b: Vector): Vector => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
/** Length of a way, m, by the plain root: `Math.hypot` guards against overflow, which coordinates within their range cannot reach, and takes several times as long. */
export const distance = (dx: number, dy: number, dz: number): number => Math.sqrt(dx * dx + dy * dy + dz * dz);
/** The vector with each component taken as the nearest inside `coordinates`. */
export const within = (v: Vector): Vector => [nearestWithin(coordinates, v[0]), nearestWithin(coordinates, v[1]), nearestWithin(coordinates, v[2])];

/**
 * A vector of length 1 in the same direction; (0, 0, 0) where there is none.
 *
 * @param v any vector; components see `coordinates`
 */
export function unit(v: Vector): Vector {
  const x = nearestWithin(coordinates, v[0]);
  const y = nearestWithin(coordinates, v[1]);
  const z = nearestWithin(coordinates, v[2]);
  // No component is large enough to overflow; the root is many times quicker than `Math.hypot`.
  const l = Math.sqrt(x * x + y * y + z * z);
  return l < NOTHING ? NOWHERE : [x / l, y / l, z / l];
}

/**
 * Direction of an azimuth and an elevation: length 1.
 *
 * @param azimuth from +x, counter-clockwise seen from above, rad; see `turns`
 * @param elevation above the horizontal, rad; see `turns`
 */
export function direction(azimuth: number, elevation: number): Vector {
  const [a, e] = [nearestWithin(turns, azimuth), nearestWithin(turns, elevation)];
  return [Math.cos(e) * Math.cos(a), Math.cos(e) * Math.sin(a), Math.sin(e)];
}

/**
 * Left of somebody who looks along the light: level, and at right angles to it. (0, 0, 0) for light that goes straight up or down.
 *
 * @param light direction of the light
 */
export function leftOf(light: Vector): Vector {
  const [x, y] = unit(light);
  return unit([-y, x, 0]);
}

/**
 * Above somebody who looks along the light: at right angles to it and to `leftOf`. (0, 0, 0) for light that goes straight up or down.
 *
 * @param light direction of the light
 */
export function above(light: Vector): Vector {
  const u = unit(light);
  return cross(u, leftOf(u));
}

/**
 * The light turned to its left by an angle, in the plane of the light and its left; length 1.
 *
 * @param light direction of the light
 * @param angle counter-clockwise seen from above, rad; see `turns`
 */
export function turnedLeft(light: Vector, angle: number): Vector {
  const a = nearestWithin(turns, angle);
  const [u, l] = [unit(light), leftOf(light)];
  return unit([u[0] * Math.cos(a) + l[0] * Math.sin(a), u[1] * Math.cos(a) + l[1] * Math.sin(a), u[2] * Math.cos(a) + l[2] * Math.sin(a)]);
}

/**
 * Angle between two directions, rad: 0 along each other, π against each other. Exact near both ends, unlike an arc cosine.
 *
 * @param a, b directions of any length; 0 where one of them is none
 */
export function angleBetween(a: Vector, b: Vector): number {
  const [u, v] = [unit(a), unit(b)];
  return Math.atan2(size(cross(u, v)), dot(u, v));
}

/**
 * Angle at which light meets a surface, from its normal, rad: 0 squarely, π/2 grazing; the same from either side.
 *
 * @param normal of the surface, either way
 * @param light direction of the light
 */
export function angleFromNormal(normal: Vector, light: Vector): number {
  const [n, u] = [unit(normal), unit(light)];
  return Math.atan2(size(cross(n, u)), Math.abs(dot(n, u)));
}

/**
 * Normal of the mirror that sends light from one direction into another, towards the light; (0, 0, 0) where the light is not turned.
 *
 * @param arriving direction in which the light arrives
 * @param leaving direction in which it leaves
 */
export function mirrorNormal(arriving: Vector, leaving: Vector): Vector {
  const [u, v] = [unit(arriving), unit(leaving)];
  return unit([v[0] - u[0], v[1] - u[1], v[2] - u[2]]);
}

/** Length of a vector whose components are too small to overflow; many times quicker than `Math.hypot`. */
const size = (v: Vector): number => Math.sqrt(dot(v, v));
