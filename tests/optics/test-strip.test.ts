/** Test strips against arithmetic by hand. */
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { HALF_STOP, HAND_FINEST, handTime, stopsBetween, stripExposures } from '../../server/optics/test-strip.ts';
import { between, expectNear, expectPrinted } from './outside.ts';

describe('the exposures of a strip', () => {
  it('in half stops are √2 apart', () => {
    // 2^(1/2) = 1.4142; the series 0.5, 0.71, 1, 1.41, 2 is common practice.
    const strip = stripExposures(1, HALF_STOP, 5);
    ['0.50', '0.71', '1.00', '1.41', '2.00'].forEach((printed, i) => { expectPrinted(strip[i]!, printed); });
    expectPrinted(strip[3]!, '1.4142');
  });

  it('in stops, in thirds, and an even number of them', () => {
    // By hand: 20 s in stops is 10, 20, 40; thirds 2^(1/3) = 1.259921; four in stops stand half a stop to each side of the middle.
    stripExposures(20, 1, 3).forEach((t, i) => { expectNear(t, [10, 20, 40][i]!, 1e-12); });
    expectPrinted(stripExposures(1, 1 / 3, 3)[2]!, '1.259921');
    stripExposures(1, 1, 4).forEach((t, i) => { expectNear(t, [0.353553, 0.707107, 1.414214, 2.828427][i]!, 1e-6); });
    expect(stripExposures(7, 1, 1)).toEqual([7]);
  });

  it('rise by the step, and their mean in stops is the middle', () => {
    fc.assert(fc.property(between(0.01, 1e4), between(0.1, 3), fc.integer({ min: 2, max: 15 }), (middle, step, count) => {
      const strip = stripExposures(middle, step, count);
      expect(strip).toHaveLength(count);
      strip.slice(1).forEach((t, i) => { expectNear(stopsBetween(strip[i]!, t), step, 1e-9); });
      expectNear(strip.reduce((sum, t) => sum + stopsBetween(middle, t), 0), 0, 1e-9);
      // another unit changes nothing
      stripExposures(middle * 1e3, step, count).forEach((t, i) => { expectNear(t / strip[i]! / 1e3, 1, 1e-12); });
    }));
  });
});

test('stops between two exposures', () => {
  // By hand: 40 / 20 = 2¹; 2.5 / 20 = 2⁻³; log₂ 3 = 1.584963 (handbook table).
  expectNear(stopsBetween(20, 40), 1, 1e-12);
  expectNear(stopsBetween(20, 2.5), -3, 1e-12);
  expectPrinted(stopsBetween(1, 3), '1.584963');
});

describe('what a hand can time', () => {
  // By hand: the step is the largest of 0.5, 1, 2, 5, 10, 30 s up to a tenth of the time.
  it.each([[0, 0.5], [0.1, 0.5], [0.8, 1], [1.41, 1.5], [7.07, 7], [9.9, 10], [14.14, 14], [35.766, 36], [94.56, 95], [123.578, 120], [565.4, 570], [1234, 1230]])('%f s: %f s', (time, kept) => expect(handTime(time)).toBe(kept));

  it('is off by half a second or 5 %, never more than half a step', () => {
    fc.assert(fc.property(between(HAND_FINEST, 1e4), time => {
      expect(Math.abs(handTime(time) - time)).toBeLessThanOrEqual(Math.max(HAND_FINEST / 2, 0.05 * time) + 1e-9);
      expect(handTime(time) % HAND_FINEST).toBe(0);
      if (time >= 5) expect(Math.abs(stopsBetween(time, handTime(time)))).toBeLessThan(0.075);
    }));
  });

  it('does not change when it is rounded again, and a longer time is never a shorter one', () => {
    fc.assert(fc.property(between(0, 1e4), between(0, 1e3), (time, more) => {
      expect(handTime(handTime(time))).toBe(handTime(time));
      expect(handTime(time + more)).toBeGreaterThanOrEqual(handTime(time));
    }));
  });
});

it('numbers outside all domains give finite results', () => {
  const any = fc.oneof(fc.double(), fc.constantFrom(0, -0, 1, 1e-300, 1e300, Infinity, -Infinity, NaN));
  fc.assert(fc.property(any, any, any, (a, b, c) => {
    const all = [...stripExposures(a, b, c), stopsBetween(a, b), handTime(a)];
    expect(all.every(Number.isFinite), JSON.stringify(all)).toBe(true);
  }), { numRuns: 1000 });
});
