/** A value with its unit, and how sure it is. */
import type { Dim, Unit } from './units.ts';

/**
 * How far the true value may lie from the written one, in SI:
 * `within` is a half-width with all values in it equally likely, `std` a standard uncertainty, `factor` a factor either way, `one of` a choice.
 */
export type Spread =
  | { readonly kind: 'within' | 'std'; readonly amount: number }
  | { readonly kind: 'factor'; readonly amount: number }
  | { readonly kind: 'one of'; readonly values: readonly number[] };

export interface Quantity {
  /** in SI */
  readonly value: number;
  readonly dim: Dim;
  /** the unit as written, for showing and writing back */
  readonly unit?: Unit;
  readonly spread?: Spread;
}

/**
 * Standard uncertainty of a spread about a value, in SI. A half-width a counts as a / √3 (rectangular distribution,
 * JCGM 100:2008 "GUM" 4.3.7); a factor f as |value| · ln f / √3 to first order; a choice as the spread of its values.
 */
export function standardUncertainty(value: number, spread: Spread | undefined): number {
  if (!spread) return 0;
  switch (spread.kind) {
    case 'within': return spread.amount / Math.sqrt(3);
    case 'std': return spread.amount;
    case 'factor': return (Math.abs(value) * Math.log(spread.amount)) / Math.sqrt(3);
    case 'one of': {
      const mean = spread.values.reduce((a, b) => a + b, 0) / spread.values.length;
      return Math.sqrt(spread.values.reduce((s, v) => s + (v - mean) ** 2, 0) / spread.values.length);
    }
  }
}
