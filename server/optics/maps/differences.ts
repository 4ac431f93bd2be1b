import { distance } from '../vectors.ts';
import type { Pairs } from './pairs.ts';

/** One pair, by the places of its two points, and its path difference, m. */
export interface Pair {
  readonly plate: number
  readonly object: number
  readonly difference: number
}

/**
 * Path difference of every pair, m: above zero where the path by the object is the longer. All object points for the first plate point, then for the second, and so on.
 *
 * @param of see `pairs`
 * @param into array to write into; another is made where it is too short, of 8 bytes a pair
 *
 * Validity and source: as `pairs`.
 */
export function pathDifferences(of: Pairs, into?: Float64Array): Float64Array {
  const { toPlate, toObject } = of;
  const { x: px, y: py, z: pz } = of.plate;
  const { x: ox, y: oy, z: oz } = of.object;
  const objects = toObject.length;
  const plates = toPlate.length;
  const out = into !== undefined && into.length >= plates * objects ? into : new Float64Array(plates * objects);
  // Two rows at a time, so that an object point is read once for both: near half the time. An odd last row is written twice.
  for (let p = 0; p < plates; p += 2) {
    const q = Math.min(p + 1, plates - 1);
    const [x, y, z, reference] = [px[p]!, py[p]!, pz[p]!, toPlate[p]!];
    const [x2, y2, z2, reference2] = [px[q]!, py[q]!, pz[q]!, toPlate[q]!];
    let k = p * objects;
    let k2 = q * objects;
    for (let o = 0; o < objects; o++) {
      const path = toObject[o]!;
      const a = ox[o]!;
      const b = oy[o]!;
      const c = oz[o]!;
      out[k++] = path + distance(a - x, b - y, c - z) - reference;
      out[k2++] = path + distance(a - x2, b - y2, c - z2) - reference2;
    }
  }
  return out;
}

/** Path difference of one pair, m; 0 where there is no such pair. */
export function pathDifference(of: Pairs, plate: number, object: number): number {
  const { plate: p, object: o, toPlate, toObject } = of;
  if (!(plate in toPlate) || !(object in toObject)) return 0;
  return toObject[object]! + distance(o.x[object]! - p.x[plate]!, o.y[object]! - p.y[plate]!, o.z[object]! - p.z[plate]!) - toPlate[plate]!;
}

/** Path difference of one object point, m, averaged over the points of the plate; 0 where there are none. */
export function meanDifference(of: Pairs, object: number): number {
  const plates = of.toPlate.length;
  let sum = 0;
  for (let p = 0; p < plates; p++) sum += pathDifference(of, p, object);
  return plates > 0 ? sum / plates : 0;
}

/**
 * The pairs with the least and the greatest path difference, and of these two the one that is largest in size; the first of several alike. Undefined where there are no pairs.
 * Nothing is stored for each pair.
 */
export function differenceExtremes(of: Pairs): { readonly least: Pair; readonly greatest: Pair; readonly largest: Pair } | undefined {
  const { toPlate, toObject } = of;
  const { x: px, y: py, z: pz } = of.plate;
  const { x: ox, y: oy, z: oz } = of.object;
  const objects = toObject.length;
  const plates = toPlate.length;
  if (objects === 0 || plates === 0) return undefined;
  let low = Infinity;
  let high = -Infinity;
  let lowAt = 0;
  let highAt = 0;
  for (let p = 0; p < plates; p++) {
    const x = px[p]!;
    const y = py[p]!;
    const z = pz[p]!;
    const reference = toPlate[p]!;
    for (let o = 0; o < objects; o++) {
      const difference = toObject[o]! + distance(ox[o]! - x, oy[o]! - y, oz[o]! - z) - reference;
      if (difference < low) {
        low = difference;
        lowAt = p * objects + o;
      }
      if (difference > high) {
        high = difference;
        highAt = p * objects + o;
      }
    }
  }
  const pair = (at: number, difference: number): Pair => ({ plate: Math.floor(at / objects), object: at % objects, difference });
  const [least, greatest] = [pair(lowAt, low), pair(highAt, high)];
  return { least, greatest, largest: Math.abs(low) > Math.abs(high) ? least : greatest };
}
