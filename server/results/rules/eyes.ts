/** Rules of the cautions for eyes. What they give is an estimate, not a hazard assessment. */
import { AVERSION_TIME, eyePowerLimit, eyeWavelengths } from '../../optics/eyes.ts';
import type { Rule } from '../graph.ts';
import { smooth } from './slopes.ts';

/** Power through a wide pupil that makes up the limit for one glance. Input: wavelength. */
export const EYE_LIMIT: Rule = {
  name: 'limit for a glance', formula: 'maximum permissible exposure of a quarter of a second · area of a pupil of 7 mm; an estimate, not a hazard assessment', source: 'IEC 60825-1:2014, annex A; ICNIRP, Health Phys. 105, 271 (2013) (from memory)',
  compute: ([wavelength]) => eyePowerLimit(wavelength!, AVERSION_TIME) ?? Number.NaN, partials: () => [0],
};
/** The same for a long look, from 100 s on, which for blue light is far less. Input: wavelength. Where it begins and ends to rise with that, at 450 and 500 nm, its slope is the mean of both sides. */
export const LONG_LOOK_LIMIT: Rule = smooth({
  name: 'limit for a long look', formula: 'maximum permissible exposure from 100 s on · area of a pupil of 7 mm; an estimate, not a hazard assessment', source: EYE_LIMIT.source!,
  compute: ([wavelength]) => eyePowerLimit(wavelength!, LONG_LOOK) ?? Number.NaN,
});
/** From here on the limit for blue light no longer falls, s. */
const LONG_LOOK = 100;
/** How many times the limit. Inputs: power, limit. */
export const TIMES_LIMIT: Rule = { name: 'times the limit for a glance', formula: 'power / limit; an estimate, not a hazard assessment', compute: ([p, limit]) => p! / limit!, partials: ([p, limit]) => [1 / limit!, -p! / (limit! * limit!)] };
/** Light of which a long look is limited by more than its heat: blue, to 500 nm (IEC 60825-1:2014, from memory). */
export const isBlue = (wavelength: number): boolean => wavelength >= eyeWavelengths.from && wavelength < 500e-9;
