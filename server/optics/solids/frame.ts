/** Frames: a place with three axes of its own. Geometry throughout. */
import { cross, dot, leftOf, turns, unit, within, type Vector } from '../vectors.ts';
import { nearestWithin } from '../range.ts';

/** A place, m, and three axes of length 1 at right angles to each other, right-handed. Of what has a face the third axis is the normal. */
export interface Frame {
  readonly origin: Vector
  readonly axes: readonly [Vector, Vector, Vector]
}

/**
 * The frame of a thing that faces a direction. For somebody who looks at its face the first axis goes to the right and is level, the
 * second goes up; the third goes towards him. A face that looks straight up or down has its first axis along x.
 *
 * @param origin its middle, m; components see `coordinates` of `vectors.ts`
 * @param normal direction that it faces; without direction it faces up
 * @param turned how far it is turned about its normal, counter-clockwise for somebody who looks at its face, rad; see `turns` of `vectors.ts`
 */
export function facing(origin: Vector, normal: Vector, turned = 0): Frame {
  const given = unit(normal);
  const n: Vector = dot(given, given) === 0 ? [0, 0, 1] : given;
  const level = leftOf(n);
  const right: Vector = dot(level, level) === 0 ? [1, 0, 0] : level;
  const up = unit(cross(n, right));
  if (turned === 0) return new Made(within(origin), [right, up, n]);
  const angle = nearestWithin(turns, turned);
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const first = unit(combined(right, c, up, s));
  return new Made(within(origin), [first, cross(n, first), n]);
}

/** The frame of what stands upright, without a direction of its own: that of `facing` straight up. */
export const upright = (origin: Vector): Frame => new Made(within(origin), UPRIGHT);

/** A frame whose axes are known to be of length 1: of any other they are made so first, each time that it is used. */
class Made implements Frame {
  constructor(readonly origin: Vector, readonly axes: readonly [Vector, Vector, Vector]) {}
}
const UPRIGHT: Frame['axes'] = [[1, 0, 0], [0, 1, 0], [0, 0, 1]];
const originOf = (frame: Frame): Vector => (frame instanceof Made ? frame.origin : within(frame.origin));
const axesOf = (frame: Frame): Frame['axes'] => (frame instanceof Made ? frame.axes : [unit(frame.axes[0]), unit(frame.axes[1]), unit(frame.axes[2])]);

/** Coordinates of a point along the axes of a frame, m. */
export function inFrame(frame: Frame, point: Vector): Vector {
  const [o, p] = [originOf(frame), within(point)];
  return turnedIntoFrame(frame, [p[0] - o[0], p[1] - o[1], p[2] - o[2]]);
}

/** Components of a direction, or of the way from one point to another, along the axes of a frame. */
export function turnedIntoFrame(frame: Frame, way: Vector): Vector {
  const w = within(way);
  const [a, b, c] = axesOf(frame);
  return [dot(a, w), dot(b, w), dot(c, w)];
}

/** The point, m, with these coordinates along the axes of a frame, m. The inverse of `inFrame`. */
export function fromFrame(frame: Frame, coordinates: Vector): Vector {
  const [o, w] = [originOf(frame), turnedFromFrame(frame, coordinates)];
  return [o[0] + w[0], o[1] + w[1], o[2] + w[2]];
}

/** The direction, or way, that has these components along the axes of a frame. The inverse of `turnedIntoFrame`. */
export function turnedFromFrame(frame: Frame, components: Vector): Vector {
  const [x, y, z] = within(components);
  const [a, b, c] = axesOf(frame);
  return [a[0] * x + b[0] * y + c[0] * z, a[1] * x + b[1] * y + c[1] * z, a[2] * x + b[2] * y + c[2] * z];
}

const combined = (a: Vector, s: number, b: Vector, t: number): Vector => [a[0] * s + b[0] * t, a[1] * s + b[1] * t, a[2] * s + b[2] * t];
