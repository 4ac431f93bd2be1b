import { nearestWithin, type Range } from './range.ts';

/** Depths of an object or widths of a plate, m. */
export const extents: Range = { from: 0, to: 100 };

/** Any angle, rad. */
export const angles: Range = { from: -2 * Math.PI, to: 2 * Math.PI };

/**
 * How much the object path changes from the front to the back of an object, m: z (1 + cos ψ).
 * Twice the depth lit from the front, once lit from the side, not at all lit from behind.
 *
 * @param depth z, from the plate away, m; see `extents`
 * @param illumination angle ψ at the object between where its light comes from and where the plate is:
 *   0 lit from the front, π/2 from the side, π from behind, rad; see `angles`
 *
 * Validity: light from far away compared with the depth, and a plate far compared with it. In a single-beam
 * reflection hologram the same holds with the angle of the reference from the normal of the plate.
 * Source: geometry.
 */
export function depthPathChange(depth: number, illumination: number): number {
  return nearestWithin(extents, depth) * (1 + Math.cos(nearestWithin(angles, illumination)));
}

/**
 * How much the path difference changes from one edge of the plate to the other, m: W |sin θ_ref − sin θ_obj|.
 * A mismatch is not one number: at 45° to an object straight ahead it walks by 0.7 of the width.
 *
 * @param width W of the plate in the plane of both beams, m; see `extents`
 * @param reference angle of the reference from the normal of the plate, signed, rad; see `angles`
 * @param object angle of the object light, signed on the same side, rad; see `angles`
 *
 * Validity: both sources far away compared with the width; else take the difference of the true distances.
 * Source: geometry of a plane wave on a plate.
 */
export function pathWalk(width: number, reference: number, object: number): number {
  const [r, o] = [nearestWithin(angles, reference), nearestWithin(angles, object)];
  return nearestWithin(extents, width) * Math.abs(Math.sin(r) - Math.sin(o));
}
