import { pathDifferences as domain } from '../coherence/domains.ts';
import { nearestWithin, type Range } from '../range.ts';
import { visibilities } from '../visibility.ts';
import { distance } from '../vectors.ts';
import type { Pairs } from './pairs.ts';

/** Fringe contrast by the size of the path difference, in even steps from 0. Beyond the last it stays as it is there. */
export interface ContrastTable {
  /** One more than there are steps, and the last one twice. */
  readonly contrasts: Float64Array
  /** m */
  readonly step: number
}

/** Numbers of steps of a table, 1; rounded. */
export const stepCounts: Range = { from: 1, to: 1_000_000 };
/** Path differences that a table reaches to, m. */
const reaches: Range = { from: 1e-6, to: domain.to };

/**
 * Samples a contrast for the maps.
 *
 * @param contrast fringe contrast at a path difference, m, that is the same for either sign; see `visibilities`
 * @param reach largest path difference, m, 1 µm to 1e6 m: `differenceExtremes` finds it
 * @param steps how many to there; see `stepCounts`
 *
 * Validity: between samples the contrast is taken to run straight, which misses it by step² / 8 times its second derivative at most: 3 · 10⁻⁵ with a
 * hundred steps from full contrast to none of two modes. Several modes want some tens of steps for each dark and bright.
 * Source: linear interpolation (any text on numerical analysis).
 */
export function contrastTable(contrast: (pathDifference: number) => number, reach: number, steps: number): ContrastTable {
  const n = Math.round(nearestWithin(stepCounts, steps));
  const step = nearestWithin(reaches, reach) / n;
  const contrasts = Float64Array.from({ length: n + 2 }, (_, i) => nearestWithin(visibilities, contrast(step * Math.min(i, n))));
  return { contrasts, step };
}

/**
 * How bright each object point records, relative to full contrast: the square of the contrast, averaged over the points of the plate.
 *
 * @param of see `pairs`
 * @param table see `contrastTable`
 * @param into array to write into; another is made where it is too short
 *
 * Validity: weak recording, as `recordedBrightness`; every point of the plate takes part alike, and sees the object point. All 0 without plate points.
 * Source: Collier, Burckhardt & Lin, Optical Holography (1971) (from memory).
 */
export function recordedBrightnesses(of: Pairs, table: ContrastTable, into?: Float64Array): Float64Array {
  const { toPlate, toObject } = of;
  const { x: px, y: py, z: pz } = of.plate;
  const { x: ox, y: oy, z: oz } = of.object;
  const { contrasts } = table;
  const objects = toObject.length;
  const plates = toPlate.length;
  const last = contrasts.length - 2;
  const perStep = 1 / table.step;
  const share = plates > 0 ? 1 / plates : 0;
  const out = into !== undefined && into.length >= objects ? into : new Float64Array(objects);
  // Two object points at a time, so that a plate point is read once for both. An odd last one is written twice.
  for (let o = 0; o < objects; o += 2) {
    const q = Math.min(o + 1, objects - 1);
    const [x, y, z, path] = [ox[o]!, oy[o]!, oz[o]!, toObject[o]!];
    const [x2, y2, z2, path2] = [ox[q]!, oy[q]!, oz[q]!, toObject[q]!];
    let sum = 0;
    let sum2 = 0;
    for (let p = 0; p < plates; p++) {
      const a = px[p]!;
      const b = py[p]!;
      const c = pz[p]!;
      const reference = toPlate[p]!;
      const one = contrastAt(contrasts, last, Math.abs(path + distance(a - x, b - y, c - z) - reference) * perStep);
      const other = contrastAt(contrasts, last, Math.abs(path2 + distance(a - x2, b - y2, c - z2) - reference) * perStep);
      sum += one * one;
      sum2 += other * other;
    }
    out[o] = sum * share;
    out[q] = sum2 * share;
  }
  return out;
}

/** The object point that records worst, and how bright; the first of several alike. Undefined where there is none. */
export function darkest(brightnesses: Float64Array): { readonly object: number; readonly brightness: number } | undefined {
  if (brightnesses.length === 0) return undefined;
  let object = 0;
  for (let o = 1; o < brightnesses.length; o++) if (brightnesses[o]! < brightnesses[object]!) object = o;
  return { object, brightness: brightnesses[object]! };
}

function contrastAt(contrasts: Float64Array, last: number, steps: number): number {
  const at = Math.min(last, steps);
  const i = at | 0;
  const before = contrasts[i]!;
  return before + (at - i) * (contrasts[i + 1]! - before);
}
