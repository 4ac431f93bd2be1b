/** Sines of multiples of π against plain trigonometry and their limits, and halving against square roots and simple numbers. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bisect, cosOfPi, sinOfPi } from '../../server/optics/numeric.ts';
import { expectNear } from './outside.ts';

describe('sine and cosine of multiples of π', () => {
  it('have exact zeros and keep their digits far out', () => {
    for (const k of [-7, -1, 0, 1, 2, 1e6 + 1]) {
      expect(Math.abs(sinOfPi(k))).toBe(0);
      expect(Math.abs(cosOfPi(k + 0.5))).toBe(0);
    }
    fc.assert(
      fc.property(fc.integer({ min: -1e9, max: 1e9 }), fc.integer({ min: -1024, max: 1024 }), (turns, part) => {
        // Multiples of 1/1024 are exact in binary, so whole turns change nothing.
        const x = part / 1024;
        expect(sinOfPi(2 * turns + x)).toBeCloseTo(Math.sin(Math.PI * x), 14);
        expect(cosOfPi(2 * turns + x)).toBeCloseTo(Math.cos(Math.PI * x), 14);
      }),
    );
  });

  it('count the last bit of a large number', () => {
    // 2²⁰ + 1/4 + 2⁻³² takes all 53 bits of a number, and 2²⁰ is whole turns.
    const part = 0.25 + 2 ** -32;
    for (const large of [2 ** 20 + part, -(2 ** 20) - part]) {
      expectNear(cosOfPi(large), Math.cos(Math.PI * part), 2e-16);
      expectNear(Math.abs(sinOfPi(large)), Math.sin(Math.PI * part), 2e-16);
    }
  });

  it('keep their digits beside a zero, where the sine is π times what is missing to it', () => {
    // sin(π (1 − d)) = sin(πd) = πd (1 − (πd)²/6 …): for d = 2⁻³⁰ the second term is below 10⁻¹⁷ of the first.
    const d = 2 ** -30;
    for (const whole of [0, 1, -1, 2, -2, 3, 1001]) {
      const falling = Math.abs(whole) % 2 === 1 ? -1 : 1;
      for (const side of [d, -d]) {
        expectNear(sinOfPi(whole + side) / (Math.PI * side), falling, 3e-16, `sin π(${whole} + ${side})`);
        // cos π(1/2 + d) = −sin πd
        if (whole >= 0) expectNear(cosOfPi(whole + 0.5 + side) / (Math.PI * side), -falling, 3e-16, `cos π(${whole} + 1/2 + ${side})`);
      }
    }
  });
});

describe('halving', () => {
  /** The distance of two neighbours between 1 and 2. */
  const bit = 2 ** -52;
  it('finds where a square reaches 2, and where 1/x falls to 1/3, to the last bit', () => {
    expectNear(bisect(0, 2, x => x * x < 2), Math.SQRT2, bit);
    expectNear(bisect(1, 100, x => 1 / x > 1 / 3), 3, 2 * bit);
    expectNear(bisect(-2, 0, x => x * x > 2), -Math.SQRT2, bit);
  });
  it('ends at the end towards which it is always, or never, before', () => {
    expectNear(bisect(1, 2, () => true), 2, bit);
    expectNear(bisect(1, 2, () => false), 1, bit);
  });
});
