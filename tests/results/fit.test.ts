/** Weighted least squares with unknowns that the readings may leave open, against arithmetic by hand. */
import { describe, expect, it } from 'vitest';
import { fit } from '../../server/results/solve/fit.ts';

const row = (by: readonly number[], value: number, u = 1) => ({ by, value, u });

describe('a fit', () => {
  it('of one unknown read twice is the mean weighted by 1/u²', () => {
    // (10/1² + 16/2²) / (1/1² + 1/2²) = 14/1.25 = 11.2; 1/√1.25 = 0.8944; ((11.2 − 10)/1)² + ((11.2 − 16)/2)² = 1.44 + 5.76 = 7.2, one reading more than needed
    const f = fit([row([1], 10, 1), row([1], 16, 2)]);
    expect(f.told([1])!.value).toBeCloseTo(11.2, 12);
    expect(f.told([1])!.u).toBeCloseTo(1 / Math.sqrt(1.25), 12);
    expect(f.left).toBeCloseTo(7.2, 12);
    expect(f.spare).toBe(1);
  });
  it('of a line through three points is that of the textbook', () => {
    // y at x = 0, 1, 2 is 1, 3, 4: slope (0·1 + 1·3 + 2·4 − 3·1·8/3) / (0 + 1 + 4 − 3·1²) = 3/2; start 8/3 − 3/2 = 7/6; u of the slope 1/√2; residuals −1/6, 1/3, −1/6: 1/6 in squares
    const f = fit([row([1, 0], 1), row([1, 1], 3), row([1, 2], 4)]);
    expect(f.told([0, 1])).toMatchObject({ value: expect.closeTo(1.5, 12) as number, u: expect.closeTo(Math.SQRT1_2, 12) as number });
    expect(f.told([1, 0])!.value).toBeCloseTo(7 / 6, 12);
    expect(f.left).toBeCloseTo(1 / 6, 12);
  });
  it('leaves open what no reading tells apart, and tells their sum', () => {
    const f = fit([row([1, 1, 0], 5, 0.5), row([0, 0, 1], 2)]);
    expect([f.told([1, 0, 0]), f.told([0, 1, 0]), f.told([1, -1, 0])]).toEqual([undefined, undefined, undefined]);
    expect(f.told([1, 1, 0])).toMatchObject({ value: expect.closeTo(5, 12) as number, u: expect.closeTo(0.5, 12) as number });
    expect(f.told([0, 0, 1])!.value).toBeCloseTo(2, 12);
    expect(f.spare).toBe(0);
  });
  it('of differences has their errors together', () => {
    // x = b − a: √(0.3² + 0.4²) = 0.5; of x + y, read from a to c, a and c only
    const f = fit([row([1, 0, 0], 1, 0.3), row([1, 1, 0], 3, 0.4), row([1, 1, 1], 7, 1.2)]);
    expect(f.told([0, 1, 0])).toMatchObject({ value: expect.closeTo(2, 12) as number, u: expect.closeTo(0.5, 12) as number });
    expect(f.told([0, 1, 1])!.u).toBeCloseTo(Math.hypot(0.3, 1.2), 12);
  });
  it('of nothing tells nothing', () => { expect(fit([]).told([])).toBeUndefined(); });
});
