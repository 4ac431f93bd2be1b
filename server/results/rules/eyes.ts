/** Rules of the cautions for eyes. What they give is an estimate, not a hazard assessment. */
import { AVERSION_TIME, eyePowerLimit } from '../../optics/eyes.ts';
import type { Rule } from '../graph.ts';

/** Power through a wide pupil that makes up the limit for one glance. Input: wavelength. */
export const EYE_LIMIT: Rule = {
  name: 'limit for a glance', formula: 'maximum permissible exposure of a quarter of a second · area of a pupil of 7 mm; an estimate, not a hazard assessment', source: 'IEC 60825-1:2014, annex A; ICNIRP, Health Phys. 105, 271 (2013) (from memory)',
  compute: ([wavelength]) => eyePowerLimit(wavelength!, AVERSION_TIME) ?? Number.NaN, partials: () => [0],
};
/** How many times the limit. Inputs: power, limit. */
export const TIMES_LIMIT: Rule = { name: 'times the limit for a glance', formula: 'power / limit; an estimate, not a hazard assessment', compute: ([p, limit]) => p! / limit!, partials: ([p, limit]) => [1 / limit!, -p! / (limit! * limit!)] };
