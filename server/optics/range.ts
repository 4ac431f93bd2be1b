/**
 * The rule for numbers outside the domain of a formula, the same for every function under `optics`:
 * nothing throws and nothing returns NaN. An argument outside its range counts as the nearest value
 * inside it (NaN counts as the lower end), so that every result is finite; a caller who wants to say
 * so first asks `isWithin` with the range that the docstring of the function names.
 */

/** A closed interval, in the SI unit of the quantity that it bounds. */
export interface Range {
  readonly from: number
  readonly to: number
}

/** True if `value` lies in `range`, ends included. False for NaN. */
export function isWithin(range: Range, value: number): boolean {
  return value >= range.from && value <= range.to;
}

/** The value of `range` that is nearest to `value`; its lower end for NaN. Never NaN. */
export function nearestWithin(range: Range, value: number): number {
  if (value > range.to) return range.to;
  return value >= range.from ? value : range.from;
}
