/** From where a finished hologram takes its light, and at which angle its object stood, by places that can be told by hand. */
import { describe, expect, test } from 'vitest';
import type { Vector } from '../../../server/optics/vectors.ts';
import { COLOUR, lampSide, OBJECT_BESIDE, TIMES, type LampSide, type Order } from '../../../server/results/rules/replay.ts';
import { expectNear } from '../read.ts';
import { rad, turned, WAYS } from './turned.ts';

/** A plate somewhere, an object that stands 0.3 m before it, aside by an angle, and light that comes at another from the normal. Both go round from the right, as one sees the plate from the object. */
function places([tipped, table]: readonly [number, number], light: number, round: number, object = 0, objectRound = 0, faces: 1 | -1 = 1): number[] {
  const at: Vector = [0.4, -0.3, 2];
  const toward = (angle: number, about: number): Vector => [Math.sin(rad(angle)) * Math.cos(rad(about)), -Math.cos(rad(angle)), Math.sin(rad(angle)) * Math.sin(rad(about))];
  const now = (v: Vector, by: number): Vector => turned([v[0] * by, v[1] * by, v[2] * by], tipped, table);
  const away = now(toward(object, objectRound), 0.3);
  return [...at, ...now([0, -1, 0], faces), at[0] + away[0], at[1] + away[1], at[2] + away[2], ...now(toward(light, round), -1)];
}

describe('from where a finished hologram takes its light', () => {
  // As recorded one looks at it from behind, where what was to the right of who looked from the object is to the left.
  const behind = { 0: 'the left', 90: 'above', 180: 'the right', 270: 'below' } as const;
  // Flipped one looks at it from the object, and the light runs backwards: it comes from where it went, which lies across.
  const flipped = { 0: 'the left', 90: 'below', 180: 'the right', 270: 'above' } as const;
  /** The same with the plate turned, so that the edge that was on this side is its top. */
  const TOPS = { up: 0, right: 90, down: 180, left: 270 } as const;

  test.each(WAYS)('tipped by %s° and turned by %s°', (...way) => {
    for (const light of [45, 130]) for (const round of [0, 90, 180, 270] as const) for (const [top, by] of Object.entries(TOPS)) for (const faces of [1, -1] as const) {
      // A plate whose right edge goes up has been turned to the left by a quarter: what was to its right is above.
      const seen = ((round + by) % 360) as typeof round;
      const at = (aside: number, order: Order): LampSide | undefined => lampSide(places(way, light, round + aside, 20, 300, faces), top, order);
      for (const aside of [0, 40, -40]) {
        expect(at(aside, 1), `light from ${round + aside}°, ${top} up`).toBe(behind[seen]);
        expect(at(aside, -1), `light from ${round + aside}°, ${top} up, flipped`).toBe(flipped[seen]);
      }
    }
  });
  test('within five degrees of the normal from no side', () => {
    for (const order of [1, -1] as const) {
      expect(lampSide(places([0, 0], 4, 90), 'up', order)).toBeUndefined();
      expect(lampSide(places([0, 0], 6, 90), 'up', order)).toBeDefined();
    }
  });
});

describe('the angle of the object light, above zero on the side of the reference', () => {
  test.each(WAYS)('tipped by %s° and turned by %s°', (...way) => {
    for (const round of [0, 90, 200]) for (const light of [45, 130]) {
      const at = (angle: number, about: number): number => OBJECT_BESIDE.compute(places(way, light, round, angle, about));
      expectNear(at(20, round), rad(20), 1e-9);
      expectNear(at(20, round + 180), rad(-20), 1e-9);
      expectNear(at(20, round + 90), 0, 1e-9);
      // sin 30° · cos 60°
      expectNear(at(30, round + 60), Math.asin(0.25), 1e-9);
    }
  });
});

test('a layer that sends no colour of the light has none', () => {
  // A reflection hologram for 500 nm that has shrunk to a hundredth.
  expect(COLOUR.compute([500e-9, 1.5, 0, 0, 0.01, 1.5, 0])).toBeNaN();
});
test('an image that is inside out is as wide as it is', () => {
  expect([TIMES.compute([0.1, -2]), ...TIMES.partials!([0.1, -2])]).toEqual([0.2, 2, -0.1]);
});
