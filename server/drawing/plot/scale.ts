/** Scales of a plot: where numbers lie on paper, and which of them are written beside it. */
import { nice, ticks } from 'd3-array';

export interface Scale {
  /** between which numbers it goes */
  readonly from: number;
  readonly to: number;
  readonly ticks: readonly number[];
  /** how far along a number lies, 0 to 1 */
  readonly along: (v: number) => number;
}

/** Below this nothing differs from nothing. */
const LEAST = 1e-100;

/** Evenly over the numbers. */
export function even(from: number, to: number, count: number): Scale {
  const size = Math.max(Math.abs(from), Math.abs(to));
  const room = size > LEAST ? 0.1 * size : 1;
  // One number alone, or some that only rounding tells apart, stand in the middle.
  const [a, b] = to - from > LEAST + 1e-9 * size ? [from, to] : [from - room, from + room];
  return { from: a, to: b, ticks: ticks(a, b, count), along: v => (v - a) / (b - a) };
}

/** For numbers of many sizes: evenly over their logarithms. All are above zero. */
function bySize(low: number, high: number): Scale {
  const first = Math.floor(Math.log10(low));
  const decades = Array.from({ length: Math.ceil(Math.log10(high)) - first + 1 }, (_, i) => 10 ** (first + i));
  const steps = decades.flatMap(d => [d, 2 * d, 5 * d]);
  // From the step below to the step above, so that the ends are written.
  const from = steps.findLast(s => s <= low * (1 + 1e-9)) ?? low;
  const to = steps.find(s => s >= high * (1 - 1e-9)) ?? high;
  const within = steps.filter(s => s >= from && s <= to);
  return { from, to, ticks: within.length > MOST_TICKS ? decades.filter(d => d >= from && d <= to) : within, along: v => Math.log(Math.max(v, from) / from) / Math.log(to / from) };
}
const MOST_TICKS = 9;
/** From that many times on, the least of some numbers could not be read beside the greatest; beyond the other, nobody asks how near to nothing it is. */
const [MANY, TOO_MANY] = [30, 1e6];

/** For what some numbers are read best on. @param shares they are shares of a whole: evenly */
export function scaleFor(numbers: readonly number[], shares: boolean, count = 5): Scale {
  const [low, high] = [numbers.reduce((a, b) => Math.min(a, b), Infinity), numbers.reduce((a, b) => Math.max(a, b), -Infinity)];
  if (!(low <= high)) return even(0, 1, count);
  if (!shares && low > LEAST && high / low > MANY && high / low < TOO_MANY) return bySize(low, high);
  // A share that goes far down is seen against nothing.
  const from = low > 0 && low < 0.4 * high ? 0 : low;
  const { from: a, to: b } = even(from, high, count);
  const [below, above] = nice(a, b, count);
  return even(below, above, count);
}
