/** Light that an object throws onto the plate, small patch by small patch. */
import { nearestWithin, type Range } from '../range.ts';
import { shares } from '../power.ts';
import { lights } from '../light.ts';
import { unit, type Vector } from '../vectors.ts';
import { fromTo, inner } from './axis.ts';

/** Areas of patches, m². */
export const patchAreas: Range = { from: 0, to: 1e4 };

/** Half widths of the lobe of a gloss, from the mirror direction to half the light, rad: 0.02 polished, 0.3 satin. */
export const lobeHalfWidths: Range = { from: 1e-3, to: 1.2 };

/** A small piece of an object's surface. */
export interface Patch {
  readonly at: Vector
  /** Away from the object: nothing is thrown to the other side. */
  readonly normal: Vector
  /** m²; see `patchAreas` */
  readonly area: number
  /** Light on it, W/m²; see `lights` of light */
  readonly light: number
  /** Share of that light which it throws back in all; see `shares` of power */
  readonly reflectance: number
}

/** How a surface shines. */
export interface Gloss {
  /** Share of the light thrown back that goes into the lobe; the rest is diffuse; see `shares` of power */
  readonly share: number
  /** see `lobeHalfWidths` */
  readonly halfWidth: number
}

/**
 * Light at a point from a matt patch, W/m²: R_d E_s cos θ_s cos θ_p dA / (π r² + dA). 0 where the point lies behind the patch.
 *
 * @param patch small compared with its distance: cut a large surface into patches and add their light
 * @param point m; see `coordinates` of vectors
 * @param normal of the surface there, either way
 *
 * Validity: a patch that looks equally bright from every side, seen without speckle. The dA below the line is that of a disc seen from
 * its axis, exact there, and keeps the light below R_d E_s however near the point is; from far away it is nothing. Light scattered
 * diffusely has lost part of its polarization, and only what is polarized along the reference records.
 * Source: Lambert's law; the disc is in any radiometry text.
 */
export function diffuseLight(patch: Patch, point: Vector, normal: Vector): number {
  const { area, sent, towards, square } = sight(patch, point);
  const leaving = Math.max(0, inner(unit(patch.normal), towards));
  return (sent * leaving * arriving(towards, normal)) / (Math.PI * square + area);
}

/**
 * Light at a point from a patch of which all that is thrown back goes into a lobe round the mirror direction, W/m². The light per solid
 * angle falls as cosⁿ of the angle from that direction, to half at the half width, and is nothing beyond 90° or behind the surface.
 *
 * @param light direction of the light that falls on the patch
 * @param halfWidth of the lobe, rad; see `lobeHalfWidths`
 *
 * Validity: never more in all than what is thrown back, and within a few percent just that while the mirror direction is two half widths or more
 * clear of the surface; what would go into the surface is lost. Not for a mirror or lacquer, which keep the light's
 * wavefront and show an image of its source; not for grazing light, which real gloss throws back more strongly and lower than the mirror
 * direction; not for metals with a brushed grain. The patch must be small beside distance times half width.
 * Other arguments as `diffuseLight`. Source: a cosine lobe of unit content, (n + 1)/(2π) cosⁿ (geometry).
 */
export function glossLight(patch: Patch, light: Vector, halfWidth: number, point: Vector, normal: Vector): number {
  const { area, sent, towards, square } = sight(patch, point);
  const [n, u] = [unit(patch.normal), unit(light)];
  const into = inner(n, u);
  // Light from behind has no mirror direction in front.
  if (into >= 0 || inner(n, towards) <= 0) return 0;
  const mirror = unit([u[0] - 2 * into * n[0], u[1] - 2 * into * n[1], u[2] - 2 * into * n[2]]);
  const power = Math.LN2 / -Math.log(Math.cos(nearestWithin(lobeHalfWidths, halfWidth)));
  const strength = ((power + 1) / (2 * Math.PI)) * Math.max(0, inner(mirror, towards)) ** power;
  // A lobe of any strength gives no more than the whole of what is sent, through an area as small as the patch.
  return (sent * strength * arriving(towards, normal)) / (square + strength * area);
}

/**
 * Light at a point from a patch that is partly matt, partly glossy, W/m²: the one share by `diffuseLight`, the other by `glossLight`,
 * validity as there.
 */
export function scatteredLight(patch: Patch, gloss: Gloss, light: Vector, point: Vector, normal: Vector): number {
  const share = nearestWithin(shares, gloss.share);
  return (1 - share) * diffuseLight(patch, point, normal) + share * glossLight(patch, light, gloss.halfWidth, point, normal);
}

/** Area, W sent out in all, direction to the point and square of the distance; the floor of that keeps the quotient finite. */
function sight(patch: Patch, point: Vector): { area: number; sent: number; towards: Vector; square: number } {
  const area = nearestWithin(patchAreas, patch.area);
  const way = fromTo(patch.at, point);
  const sent = nearestWithin(shares, patch.reflectance) * nearestWithin(lights, patch.light) * area;
  return { area, sent, towards: unit(way), square: Math.max(1e-18, inner(way, way)) };
}

/** Cosine at which light in this direction meets a surface, from either side. */
function arriving(towards: Vector, normal: Vector): number {
  return Math.abs(inner(towards, unit(normal)));
}
