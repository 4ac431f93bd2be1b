/** A scene that is tipped and stands elsewhere on a table that is turned: what can be told by hand of one that lies simply has to hold of it. */
import type { Vector } from '../../../server/optics/vectors.ts';

export const rad = (degrees: number): number => (degrees * Math.PI) / 180;

/** Tipped about x first, then turned about the upright, degrees. */
export function turned([x, y, z]: Vector, tipped: number, table: number): Vector {
  const [back, high] = [y * Math.cos(rad(tipped)) + z * Math.sin(rad(tipped)), z * Math.cos(rad(tipped)) - y * Math.sin(rad(tipped))];
  return [x * Math.cos(rad(table)) - back * Math.sin(rad(table)), x * Math.sin(rad(table)) + back * Math.cos(rad(table)), high];
}

/** Degrees by which scenes are tipped and turned. */
export const WAYS: readonly (readonly [number, number])[] = [[0, 0], [25, 0], [0, 50], [-20, 130], [35, 250]];
