import { pathDifferences as domain } from '../coherence/domains.ts';
import { nearestWithin } from '../range.ts';
import { pathTo, type Source } from '../surface/source.ts';
import type { Vector } from '../vectors.ts';
import { pointAt } from './points.ts';

/**
 * Every pair of a point of the plate and a point of the object, ready for the maps. Path difference of a pair:
 * (source → object point → plate point) − (reference source → plate point) + offset.
 *
 * In a transfer the points of the first hologram stand for the object, and its replay light for the light on the object.
 */
export interface Pairs {
  readonly plate: Columns
  readonly object: Columns
  /** Path of the reference to each point of the plate, m. */
  readonly toPlate: Float64Array
  /** Path of the light to each point of the object, with the offset, m. */
  readonly toObject: Float64Array
}

/** Coordinates of points, each axis by itself, m. */
export interface Columns {
  readonly x: Float64Array
  readonly y: Float64Array
  readonly z: Float64Array
}

/**
 * Makes the pairs ready.
 *
 * @param plate, object points, as `packed` or `platePoints` lay them
 * @param reference where the reference comes from, as the plate sees it
 * @param light where the light on the object comes from, as the object sees it
 * @param offset what the paths from the splitter to the two sources differ by, m; see `pathDifferences` of `coherence/domains.ts`. `offsetFor` finds it
 *   from the path difference of one pair.
 *
 * Validity: both lights have one source each, and nothing but air between it and the points, or glass that adds the same to all pairs.
 * Source: geometry; Collier, Burckhardt & Lin, Optical Holography (1971), ch. 7 (chapter from memory).
 */
export function pairs(plate: Float64Array, object: Float64Array, reference: Source, light: Source, offset: number): Pairs {
  const added = nearestWithin(domain, offset);
  const path = (points: Float64Array, source: Source, more: number): Float64Array => {
    const paths = new Float64Array(Math.floor(points.length / 3));
    for (let i = 0; i < paths.length; i++) paths[i] = pathTo(source, pointAt(points, i)) + more;
    return paths;
  };
  return { plate: columns(plate), object: columns(object), toPlate: path(plate, reference, 0), toObject: path(object, light, added) };
}

/** The offset, m, with which the pair of these two points has this path difference, m: most often the middles, and the mismatch of the arms as it is known. */
export function offsetFor(platePoint: Vector, objectPoint: Vector, reference: Source, light: Source, difference: number): number {
  const between = pathTo({ kind: 'point', at: objectPoint }, platePoint);
  return nearestWithin(domain, difference) - (pathTo(light, objectPoint) + between - pathTo(reference, platePoint));
}

function columns(points: Float64Array): Columns {
  const n = Math.floor(points.length / 3);
  const [x, y, z] = [new Float64Array(n), new Float64Array(n), new Float64Array(n)];
  for (let i = 0; i < n; i++) [x[i], y[i], z[i]] = pointAt(points, i);
  return { x, y, z };
}
