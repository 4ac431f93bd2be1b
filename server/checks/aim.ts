/** How far off a thing may be aimed before it is said. */
import { ONE_DEGREE } from '../model/units.ts';

/** Within this, rad, lasers, mirrors and lenses are aimed by hand anyway. */
const AIM = ONE_DEGREE;

/** Whether an angle, rad, is surely more than that: `u` is its standard uncertainty. */
export const isAimedOff = (angle: number, u: number): boolean => angle - 3 * u > AIM;
