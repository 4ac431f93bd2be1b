/** How far off a thing may be aimed before it is said. */

/** Within this, rad, lasers, mirrors and lenses are aimed by hand anyway. */
const AIM = Math.PI / 180;

/** Whether an angle, rad, is surely more than that: `u` is its standard uncertainty. */
export const isAimedOff = (angle: number, u: number): boolean => angle - 3 * u > AIM;
