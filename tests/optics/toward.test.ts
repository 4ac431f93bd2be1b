/** Where a surface lies in a direction from its middle: by places that can be told by hand, and against the rays that meet it. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { facing } from '../../server/optics/solids/frame.ts';
import { firstMeeting } from '../../server/optics/solids/meeting.ts';
import type { Solid } from '../../server/optics/solids/solid.ts';
import { surfaceToward } from '../../server/optics/surface/toward.ts';
import type { Vector } from '../../server/optics/vectors.ts';

// Faces −y: its first axis is x, its second z.
const frame = facing([0, 0, 0], [0, -1, 0]);
const box: Solid = { kind: 'box', frame, size: [0.06, 0.08, 0.02] };
const upright: Solid = { kind: 'cylinder', middle: [0, 0, 0], axis: [0, 0, 1], radius: 0.03, height: 0.1 };
const ball: Solid = { kind: 'sphere', middle: [0, 0, 0], radius: 0.05 };
const told = (solid: Solid, direction: Vector): readonly number[] | undefined => {
  const is = surfaceToward(solid, direction);
  return is && [is.reach, ...is.normal].map(v => Number(v.toFixed(9)) + 0);
};

describe('surfaceToward', () => {
  it.each([
    ['front', [0, -2, 0], [0.01, 0, -1, 0]], ['back', [0, 1, 0], [0.01, 0, 1, 0]], ['right', [1, 0, 0], [0.03, 1, 0, 0]], ['left', [-1, 0, 0], [0.03, -1, 0, 0]], ['top', [0, 0, 1], [0.04, 0, 0, 1]], ['below', [0, 0, -3], [0.04, 0, 0, -1]],
    // 3 : 4 : 5, which reaches a depth of 10 mm after 12.5 mm, 30 mm to the side after 50 mm
    ['front, aslant', [0.6, -0.8, 0], [0.0125, 0, -1, 0]],
    // 0.03 / 0.96 is less than 0.01 / 0.28
    ['right, aslant', [0.96, -0.28, 0], [0.03125, 1, 0, 0]],
  ] as const)('of a box: %s', (_, direction, is) => expect(told(box, direction)).toEqual(is));
  it.each([
    ['its mantle', [0, -1, 0], [0.03, 0, -1, 0]], ['its mantle, aslant', [0.36, 0.48, 0.8], [0.05, 0.6, 0.8, 0]], ['its end', [0, 0, 1], [0.05, 0, 0, 1]], ['its other end, aslant', [0.28, 0, -0.96], [0.052083333, 0, 0, -1]],
  ] as const)('of a cylinder: %s', (_, direction, is) => expect(told(upright, direction)).toEqual(is));
  it('of a ball: the direction itself', () => expect(told(ball, [0, 3, 4])).toEqual([0.05, 0, 0.6, 0.8]));
  it('of what is thin: at its middle, and along it at its rim', () => {
    const thin: Solid = { ...box, size: [0.06, 0.08, 0] };
    expect(told(thin, [0.6, -0.8, 0])).toEqual([0, 0, -1, 0]);
    expect(told(thin, [1, 0, 0])).toEqual([0.03, 1, 0, 0]);
    expect(told({ ...upright, height: 0 }, [0.6, 0, 0.8])).toEqual([0, 0, 0, 1]);
    expect(told({ ...upright, height: 0 }, [1, 0, 0])).toEqual([0.03, 1, 0, 0]);
  });
  it('is nothing of no direction', () => { for (const solid of [box, upright, ball]) expect(surfaceToward(solid, [0, 0, 0])).toBeUndefined(); });
  it('is where a ray towards the middle meets the solid', () => {
    const part = fc.double({ min: -1, max: 1, noNaN: true });
    fc.assert(fc.property(fc.constantFrom(box, upright, ball), part, part, part, (solid, x, y, z) => {
      const length = Math.hypot(x, y, z);
      fc.pre(length > 0.1);
      const from: Vector = [x / length, y / length, z / length];
      expect(1 - firstMeeting(solid, from, [0, 0, 0])!).toBeCloseTo(surfaceToward(solid, from)!.reach, 12);
    }));
  });
});
