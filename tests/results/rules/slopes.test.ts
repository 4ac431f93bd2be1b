/** Slopes by differences, of functions whose slopes are known in closed form. */
import { describe, expect, test } from 'vitest';
import { slopes } from '../../../server/results/rules/slopes.ts';
import { expectNear } from '../read.ts';

describe('slopes by differences', () => {
  // Of a step far finer than the band: exp(−u²) has the slope −2u exp(−u²) by u.
  test.each([['a band of 10 nm about a wavelength', 500e-9, 10e-9], ['the band of a thick layer', 500e-9, 0.5e-9], ['1 µm in the thickness of a layer', 7e-6, 1e-6], ['0.1 mm of a length', 0.3, 1e-4]])('%s', (_, middle, width) => {
    for (const u of [-1, 0.5, 2]) {
      const found = slopes(([x]) => Math.exp(-(((x! - middle) / width) ** 2)))([middle + u * width])[0]!;
      const is = (-2 * u * Math.exp(-u * u)) / width;
      expectNear(found, is, 1e-3 * Math.abs(is), `at ${u}`);
    }
  });
  test('what is nothing, or all but nothing by rounding, is moved by as much as a length', () => {
    for (const x of [0, 1e-17, -1e-12]) expectNear(slopes(([v]) => Math.sin(v! + 1))([x])[0]!, Math.cos(1), 1e-9);
    expectNear(slopes(([v]) => Math.sin(v! + 1))([1e-7])[0]!, Math.cos(1), 1e-5);
  });
  test('each input has its own, one that is not asked for 0, and so has what has no slope', () => {
    expectNear(slopes(([a, b]) => a! * b!)([2, 3])[0]!, 3, 1e-8);
    expect(slopes(([a, b]) => a! * b!)([2, 3], [false, true])[0]).toBe(0);
    expectNear(slopes(([a, b]) => a! * b!)([2, 3], [false, true])[1]!, 2, 1e-8);
    expect(slopes(() => Number.NaN)([2])).toEqual([0]);
  });
});
