/** Light of a beam on a plane that stands in it anyhow, such as a plate: spread, parallel or drawing together. */
import { nearestWithin } from '../range.ts';
import { coordinates, unit, type Vector } from '../vectors.ts';
import { facing, turnedIntoFrame } from '../solids/frame.ts';
import { fromTo, inner, type Axis } from './axis.ts';
import { sections, type Beam } from './beam.ts';
import { powers } from './domains.ts';

/**
 * Light at a point of a plane, W/m²: 2P/(π w²) exp(−2 r²/w²) cos θ / cos β, with the radius w of the beam at the point's distance along
 * the axis, r from the axis, θ fromTo ray and normal, β fromTo ray and axis. Squarely before the beam that is the Gaussian profile
 * itself; a parallel beam has β = 0 and leaves the cosine alone. Corner by centre is a quotient of two of these.
 *
 * @param beam as it is at the first point of its axis; for a spread beam mostly at the focus that it spreads from, real or virtual
 * @param axis where it runs
 * @param power P of the whole beam, W; see `powers`
 * @param point of the plane, m; see `coordinates` of vectors
 * @param normal of the plane there, either way
 *
 * Validity: a beam that spreads by less than about 0.3 rad. No power is won or lost, however the plane is tilted: without cos β, as it is
 * often written, a tilted or wide plane would collect too little. Before the last lens the beam is another one, and the caller's matter.
 * Source: the power goes along the rays, on which x/w and y/w stay the same (Siegman, Lasers (1986) ch. 17; from memory).
 */
export function lightOnPlane(beam: Beam, axis: Axis, power: number, point: Vector, normal: Vector): number {
  return lightOverPlane(beam, axis, power, point, normal)(0, 0);
}

/**
 * `lightOnPlane` for many points of one plane: a function of how far a point lies across and up from `middle`, m, along the axes of a thing there that faces along `normal`,
 * see `facing` of `solids/frame.ts`.
 */
export function lightOverPlane(beam: Beam, axis: Axis, power: number, middle: Vector, normal: Vector): (across: number, up: number) => number {
  const frame = facing(axis.from, axis.along);
  const [right, upward] = facing(middle, normal).axes;
  const start = turnedIntoFrame(frame, fromTo(axis.from, middle));
  const [byAcross, byUp] = [turnedIntoFrame(frame, right), turnedIntoFrame(frame, upward)];
  const [m, k, n] = turnedIntoFrame(frame, unit(normal));
  const section = sections(beam);
  const peak = (2 * nearestWithin(powers, power)) / Math.PI;
  return (across, up) => {
    const s = nearestWithin(coordinates, across);
    const t = nearestWithin(coordinates, up);
    const x = start[0] + s * byAcross[0] + t * byUp[0];
    const y = start[1] + s * byAcross[1] + t * byUp[1];
    const { radius: { level: a, upright: b }, curvature: { level: c, upright: d } } = section(start[2] + s * byAcross[2] + t * byUp[2]);
    const squarely = (peak / (a * b)) * Math.exp(-2 * ((x / a) ** 2 + (y / b) ** 2));
    return squarely * Math.abs(n + m * x * c + k * y * d);
  };
}

/**
 * Direction in which the light of a beam goes at a point, of length 1: away from the focus for a spread beam. Arguments and validity
 * as `lightOnPlane`.
 * Source: at right angles to the wavefront.
 */
export function rayAt(beam: Beam, axis: Axis, point: Vector): Vector {
  const [level, upright, along] = facing(axis.from, axis.along).axes;
  const way = fromTo(axis.from, point);
  const bent = sections(beam)(inner(way, along)).curvature;
  const [p, q] = [inner(way, level) * bent.level, inner(way, upright) * bent.upright];
  const part = (i: 0 | 1 | 2): number => along[i] + p * level[i] + q * upright[i];
  return unit([part(0), part(1), part(2)]);
}
