import { nearestWithin, type Range } from './range.ts';

/** Accuracy classes of measuring tapes, as printed on the tape; I is the best. */
export type TapeClass = 'I' | 'II' | 'III'

/** Lengths measured with one tape, m. */
export const tapeLengths: Range = { from: 0, to: 1000 };

/**
 * The largest error, m, either way, that a tape of an accuracy class may have between two of its marks:
 * a + bL, with the length L in metres rounded up to the next whole metre; plus c if measured from its end or hook.
 *
 * @param length measured length, m; see `tapeLengths`
 * @param fromEnd true if one end of the length is the end surface or hook of the tape, not a mark
 *
 * Validity: marks that are not neighbours, 20 °C, the pull that the tape states. Errors of placing the tape come on top.
 * Source: Directive 2014/32/EU, Annex X (MI-008), chapter I, table 1.
 */
export function tapeError(tapeClass: TapeClass, length: number, fromEnd: boolean): number {
  const { a, b, c } = table[tapeClass];
  // A whole number of metres must not be rounded up for a rounding error of a unit conversion.
  const metres = Math.ceil(nearestWithin(tapeLengths, length) - 1e-9);
  return (a + b * Math.max(0, metres) + (fromEnd ? c : 0)) / 1000;
}

// In millimetres, b per metre.
const table: Readonly<Record<TapeClass, { a: number; b: number; c: number }>> = {
  I: { a: 0.1, b: 0.1, c: 0.1 },
  II: { a: 0.3, b: 0.2, c: 0.2 },
  III: { a: 0.6, b: 0.4, c: 0.3 },
};
