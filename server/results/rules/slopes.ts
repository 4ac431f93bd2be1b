/** Slopes by differences, for rules whose inputs are lengths on a table, angles, and components of directions. */
import type { Rule } from '../cell.ts';

/** The largest step; and the least, next to which differences would be rounding. */
const [STEP, LEAST] = [1e-6, 1e-11];
/** Of a wavelength, the thickness of a layer or a Rayleigh range a micrometre is too much: a step between both is that share of its input. The band of a thick layer is a thousandth of its wavelength and has steep edges. */
const SHARE = 1e-5;
/** A component of a direction may be 1e-17 by rounding, where it is nothing: next to that no difference tells anything. */
const NOTHING = 1e-9;

/** Partials of a rule of such inputs. */
export const slopes = (compute: Rule['compute']): NonNullable<Rule['partials']> => (x, wanted) => x.map((v, i) => {
  if (wanted?.[i] === false) return 0;
  const h = Math.abs(v) > NOTHING ? Math.min(STEP, Math.max(LEAST, Math.abs(v) * SHARE)) : STEP;
  const at = (to: number): number => compute(x.map((o, j) => (j === i ? to : o)));
  const d = (at(v + h) - at(v - h)) / (2 * h);
  return Number.isFinite(d) ? d : 0;
});

/** The rule with such partials. */
export const smooth = (rule: Omit<Rule, 'partials'>): Rule => ({ ...rule, partials: slopes(rule.compute) });
