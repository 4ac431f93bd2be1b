import { nearestWithin, type Range } from './range.ts';

/** Light at a surface, W/m². The floor, far below what any meter shows, keeps quotients finite. */
export const lights: Range = { from: 1e-15, to: 1e15 };

/** Angles at which light arrives at a surface, from its normal, rad. */
export const arrivalAngles: Range = { from: -Math.PI / 2, to: Math.PI / 2 };

/** Diameters or sides of the head of a meter, m. */
export const headSizes: Range = { from: 1e-6, to: 10 };

/**
 * Light in the plane of the plate, W/m², from light that was read with the meter's head facing the beam: E cos θ.
 * The same power covers a larger area of a surface that stands askew.
 *
 * @param facing light on a head that faces the beam, W/m²; see `lights`
 * @param angle angle θ of the beam from the normal of the plate, rad; see `arrivalAngles`
 *
 * Validity: one beam whose rays are nearly parallel over the head. Light from a rough object comes from many sides at once and
 * has no single θ.
 * Source: Lambert's cosine law (any optics text).
 */
export function lightInPlane(facing: number, angle: number): number {
  return nearestWithin(lights, facing) * Math.cos(nearestWithin(arrivalAngles, angle));
}

/**
 * The angle from the normal, rad, 0 to π/2, at which a beam arrives that reads `flat` in the plane of the plate and `facing` with
 * the head facing it: arccos(flat / facing). 0 where the first is not the smaller.
 *
 * @param flat light in the plane of the plate, W/m², or any number in proportion to it; see `lights`
 * @param facing light on a head that faces the beam, in the same measure; see `lights`
 *
 * Validity: as `lightInPlane`; a head that sees light from the side as a flat surface does. Near 0 the angle is badly known:
 * 10° differs from 0° by 1.5 % of the light.
 * Source: Lambert's cosine law (any optics text).
 */
export function angleByReadings(flat: number, facing: number): number {
  return Math.acos(Math.min(1, nearestWithin(lights, flat) / nearestWithin(lights, facing)));
}

/**
 * Area of a round head, m²: π d² / 4.
 *
 * @param diameter see `headSizes`
 * Source: geometry.
 */
export function headArea(diameter: number): number {
  return (Math.PI * nearestWithin(headSizes, diameter) ** 2) / 4;
}

/**
 * One light as a multiple of another, 1: the beam ratio of reference and object light, the share of a corner in the centre.
 *
 * @param one light, W/m², or any number in proportion to it; see `lights`
 * @param other light in the same measure; see `lights`
 * Source: definition.
 */
export function lightRatio(one: number, other: number): number {
  return nearestWithin(lights, one) / nearestWithin(lights, other);
}
