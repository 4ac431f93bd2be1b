import { nearestWithin, type Range } from './range.ts';

/** Optical densities, 1. */
export const densities: Range = { from: 0, to: 30 };

/** Shares of light, 1. */
export const shares: Range = { from: 0, to: 1 };

/** Marks of a wheel, 1. */
export const wheelMarks: Range = { from: -1e6, to: 1e6 };

/**
 * Share of the light that an optical density lets through, 1: 10^(−D). 0.3 lets half through.
 *
 * @param density see `densities`
 * Source: definition of optical density (ISO 5-1; from memory).
 */
export function densityTransmission(density: number): number {
  return 10 ** -nearestWithin(densities, density);
}

/**
 * Share of the light on a splitter that leaves by one side, 1: (1 − loss) ρ, with ρ the share of that side in what is not lost.
 *
 * @param side ρ, for the other side 1 − ρ; see `shares`
 * @param loss share of the light that leaves by neither side; see `shares`
 *
 * Validity: one reflection and one passage; what the second face of a plain glass reflects counts as lost.
 * Source: conservation of energy.
 */
export function splitterShare(side: number, loss: number): number {
  return nearestWithin(shares, side) * (1 - nearestWithin(shares, loss));
}

/**
 * The reading of a graduated wheel between two of its marks, joined by straight lines, 1.
 *
 * @param marks where the wheel was metered, rising; at least one; see `wheelMarks`
 * @param values share at each mark; see `shares`
 * @param setting where the wheel stands; see `wheelMarks`
 *
 * Validity: between the outermost marks; beyond them the outermost value is given, and a caller who must not guess asks first.
 * A wheel whose layer varies evenly in density is not quite straight between its marks: meter more of them.
 * Source: interpolation by straight lines.
 */
export function shareAtMark(marks: readonly number[], values: readonly number[], setting: number): number {
  return weightsAtMark(marks, setting).reduce((sum, weight, i) => sum + weight * nearestWithin(shares, values[i] ?? 0), 0);
}

/** How much each mark counts in `shareAtMark`: two weights that add up to 1, else zeros. Arguments and validity as there. */
export function weightsAtMark(marks: readonly number[], setting: number): number[] {
  const at = marks.map(m => nearestWithin(wheelMarks, m));
  const here = nearestWithin(wheelMarks, setting);
  const weights = at.map(() => 0);
  const last = at.length - 1;
  if (last < 0) return weights;
  const above = at.findIndex(m => m > here);
  if (above < 0) weights[last] = 1;
  else if (above === 0) weights[0] = 1;
  else {
    const along = (here - at[above - 1]!) / (at[above]! - at[above - 1]!);
    weights[above - 1] = 1 - along;
    weights[above] = along;
  }
  return weights;
}
