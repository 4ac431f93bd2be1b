/** Results as people write them: no digits that a string, a tape or an uncertainty does not bear. */
import { isRatio, isShare, percent, percentBand, ratioBand, show, showBand, showRatio } from '../model/show.ts';
import { ANGLE, parseUnit, type Unit } from '../model/units.ts';
import type { Cell } from './graph.ts';

/** Lengths that a string or a tape would measure. Where nothing says how sure they are, finer digits than these would only look sure. */
const isPath = (cell: Cell): boolean => /(?:\.length|coherence path|mismatch|\.difference|\.plan|\.offset)$|\.hang\b.*\.(?:image|reference|object|master|viewing|other) ?(?:distance|focus|before the plate)?(?: as set up| parallel)?$|\.replay\b.*(?:place|zone|width|height)$/.test(cell.name);
const FINEST = 1e-4;
const FINEST_ANGLE = (0.01 * Math.PI) / 180;
const PERCENT = parseUnit('%')!;

/** Of how delicate things are, and of how fine fringes are, nobody needs more than three digits. */
const isRough = (cell: Cell): boolean => /\.(?:fringes|delicacy|allowed movement(?: in its plane| along its normal)?)$|\.replay\b.*(?:blur|size|depth|colour|parallax)$/.test(cell.name);

/** A value of a cell, give or take twice its standard uncertainty `u`; in the unit of the cell, or in another. */
export function figure(cell: Cell, value: number, u: number, unit: Unit | undefined = cell.unit): string {
  if (isRatio(cell.name)) return showRatio(value, u);
  // More than all, and less than nothing, is no share.
  if (isShare(cell.name) && u > 0 && (value + 2 * u > 1 || value - 2 * u < 0)) return percentBand(Math.max(0, value - 2 * u), Math.min(1, value + 2 * u));
  if (isShare(cell.name)) return u === 0 ? percent(value) : show(value, cell.dim, u, PERCENT);
  // A hundredth of a degree is more than anybody sets by hand.
  if (u === 0 && cell.rule && cell.dim === ANGLE && Math.abs(value) >= FINEST_ANGLE) return show(Math.round(value / FINEST_ANGLE) * FINEST_ANGLE, cell.dim, 0, unit);
  // An uncertainty far below what the digits show, such as that of a beam's width in the angle of its light, is none to look at.
  const digits = isRough(cell) && u < 1e-3 * Math.abs(value) ? 3 : u > 0 && u < 1e-7 * Math.abs(value) ? 5 : 0;
  if (digits > 0) return show(Number(value.toPrecision(digits)), cell.dim, 0, unit);
  const step = u === 0 && cell.rule && isPath(cell) ? finestIn(unit) : 0;
  return show(step > 0 ? Math.round(value / step) * step : value, cell.dim, u, unit);
}

/** Of the decimals of a unit the last one that means something, as a length. */
const finestIn = (unit: Unit | undefined): number => (unit ? unit.factor * 10 ** Math.round(Math.log10(FINEST / unit.factor)) : FINEST);

/** Where a cell lies, as a band: what does not lie evenly about its middle, or is known only roughly. */
export function bandOf(cell: Cell, low: number, high: number, unit: Unit | undefined = cell.unit): string {
  return isShare(cell.name) ? percentBand(low, high) : isRatio(cell.name) ? ratioBand(low, high) : showBand(low, high, cell.dim, unit);
}
