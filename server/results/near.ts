/** What of many things lies near a place: on a full table each is held only against those. */
import Flatbush from 'flatbush';

/** A rectangle with its sides along the axes: left, low, right and high. */
export type Span = readonly [number, number, number, number];

/** A function that finds what touches a rectangle, in the order in which it was given. */
export function finder<T>(all: readonly T[], spanOf: (one: T, i: number) => Span): (span: Span) => T[] {
  if (all.length === 0) return () => [];
  const tree = new Flatbush(all.length);
  all.forEach((one, i) => tree.add(...spanOf(one, i)));
  tree.finish();
  return span => tree.search(...span).sort((a, b) => a - b).map(i => all[i]!);
}

/** A rectangle round a place. */
export const spanRound = ([x, y]: readonly number[], reach: number): Span => [x! - reach, y! - reach, x! + reach, y! + reach];
