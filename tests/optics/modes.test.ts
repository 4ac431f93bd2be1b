import fc from 'fast-check';
import { abs, add, complex, exp, multiply, type Complex } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { modeSpacing, nearestRevival, revivalDistance, revivalDistanceOfModeSpacing } from '../../server/optics/coherence/cavity.ts';
import { equalModesCoherence, equalModesCoherencePartials, equalModesReach } from '../../server/optics/coherence/equal-modes.ts';
import { gaussianGainCoherence, gaussianGainCoherenceSlope } from '../../server/optics/coherence/gaussian-gain.ts';
import { lineCoherence } from '../../server/optics/coherence/line-shapes.ts';
import { weightedModesCoherence, weightedModesCoherenceSlope } from '../../server/optics/coherence/weighted-modes.ts';
import { between, centralDifference, expectNear, expectPrinted, publishedIds, publishedValue } from './outside.ts';

/** |Σ wₖ exp(2πi νₖ u)|/Σ wₖ term by term in mathjs, modes at the frequencies νₖ in mode spacings. */
function directSum(powers: readonly number[], frequencies: readonly number[], u: number): number {
  const sum = powers.reduce<Complex>(
    (total, power, k) => add(total, multiply(power, exp(complex(0, 2 * Math.PI * (frequencies[k] ?? NaN) * u)))) as Complex,
    complex(0, 0),
  );
  return abs(sum) / powers.reduce((a, b) => a + b, 0);
}

const count = fc.integer({ min: 1, max: 60 });
const revival = between(-3, 1).map((power) => 10 ** power);
const inRevivals = between(-3, 3);
const offset = between(-0.5, 0.5);

describe('cavity', () => {
  it('reproduces the published mode spacing of a 30 cm He-Ne laser', () => {
    const value = publishedValue('modespacing-30');
    value.check(modeSpacing(value.input('L_m'), 1));
  });

  it('has the published spacing of other cavities', () => {
    // An optics supplier's page: 730 MHz, 3 modes, 1.460 GHz from the first to the last; c/(2 · 730 MHz) = 205.3 mm.
    expectNear(revivalDistanceOfModeSpacing(730e6) / 2, 0.2053, 5e-5);
    expectNear(2 * modeSpacing(0.2053, 1), 1.46e9, 1e6);
    // A problem collection: L = 15 cm, 1.0 GHz.
    expectNear(modeSpacing(0.15, 1), 1e9, 1e6);
    // Computed: red diode 0.3 mm long, n_g 3.8, and 15 mm of optical length.
    expectNear(modeSpacing(0.3e-3, 3.8), 131.5e9, 5e7);
    expectNear(revivalDistance(0.3e-3, 3.8), 2.28e-3, 1e-12);
    expectNear(modeSpacing(0.015, 1), 9.99e9, 5e6);
  });

  it('finds the nearest revival', () => {
    expect(nearestRevival(0.6, 0.65).order).toBe(1);
    expectNear(nearestRevival(0.6, 0.65).beyond, 0.05, 1e-15);
    expect(nearestRevival(0.6, -1.25).order).toBe(-2);
    expectNear(nearestRevival(0.6, -1.25).beyond, -0.05, 1e-15);
    expect(Object.is(nearestRevival(0.6, -0.1).order, 0)).toBe(true);
  });
});

describe('equal modes', () => {
  it.each(publishedIds('modes-N'))('reproduce %s', (id) => {
    const value = publishedValue(id);
    value.check(equalModesCoherence(value.input('N'), revivalDistance(value.input('L_m'), 1), value.input('dL_m')));
  });

  // Cavity 0.30 m; closed form and direct sum computed outside, 5 digits (formula: Collier, Burckhardt & Lin 1971, ch. 7).
  it.each([
    [50, 0.96593, 0.91068, 0.74641],
    [100, 0.86603, 0.66667, 0.2],
    [150, 0.70711, 0.33333, 0.2],
    [200, 0.5, 0, 0.2],
    [300, 0, 0.33333, 0.2],
    [600, 1, 1, 1],
  ])('at %f mm of path difference in 2, 3 and 5 modes', (mm, two, three, five) => {
    expectNear(equalModesCoherence(2, 0.6, mm / 1000), two, 5e-6);
    expectNear(equalModesCoherence(3, 0.6, mm / 1000), three, 5e-6);
    expectNear(equalModesCoherence(5, 0.6, mm / 1000), five, 5e-6);
  });

  // The same source; path difference in mm up to which |γ| ≥ 1/√2 and ≥ 1/2.
  it.each([
    [2, '150.0', '200.0'],
    [3, '93.2', '125.9'],
    [4, '68.3', '92.6'],
    [5, '54.1', '73.5'],
  ])('%i keep up to a path difference', (modes, brightHalf, half) => {
    expectPrinted(equalModesReach(modes, 0.6, Math.SQRT1_2) * 1000, brightHalf);
    expectPrinted(equalModesReach(modes, 0.6, 0.5) * 1000, half);
  });

  it('agree with the sum of the modes', () => {
    fc.assert(
      fc.property(count, revival, inRevivals, (n, distance, u) => {
        const powers = Array<number>(n).fill(1);
        expectNear(equalModesCoherence(n, distance, u * distance), directSum(powers, powers.map((_, k) => k), u), 1e-11);
      }),
    );
  });

  it('lie between 0 and 1, the same for either arm longer, and come back at every revival', () => {
    fc.assert(
      fc.property(count, revival, inRevivals, fc.integer({ min: -1000, max: 1000 }), (n, distance, u, m) => {
        const value = equalModesCoherence(n, distance, u * distance);
        expect(value).toBeGreaterThanOrEqual(0);
        expect(value).toBeLessThanOrEqual(1);
        expect(equalModesCoherence(n, distance, -u * distance)).toBe(value);
        expectNear(equalModesCoherence(n, distance, (u + m) * distance), value, 1e-10);
        expectNear(equalModesCoherence(n, distance, m * distance), 1, 1e-12);
      }),
    );
  });

  it('stay right close to a revival, where the closed form is 0/0', () => {
    // sin(Na)/(N sin a) = 1 − (N²−1)a²/6 + … (Taylor series)
    for (const n of [2, 3, 50])
      for (const u of [0, 1e-300, 1e-12, 1e-8, 1e-6, 1e-5])
        expectNear(equalModesCoherence(n, 1, u), 1 - ((n ** 2 - 1) * (Math.PI * u) ** 2) / 6, ((n * Math.PI * u) ** 4) / 100 + 2e-16);
  });

  it('have partials that agree with central differences', () => {
    fc.assert(
      fc.property(count, revival, inRevivals, (n, distance, u) => {
        // Away from the zeros, where there is no derivative: |γ| above 0.01, and steps far below the distance to one.
        fc.pre(equalModesCoherence(n, distance, u * distance) > 0.01);
        const path = u * distance;
        const partials = equalModesCoherencePartials(n, distance, path);
        const step = (2e-4 / n) * distance;
        const byPath = centralDifference((d) => equalModesCoherence(n, distance, d), path, step);
        const byRevival = centralDifference((r) => equalModesCoherence(n, r, path), distance, step / 3);
        expectNear(partials.pathDifference * distance, byPath * distance, 1e-6 * n);
        expectNear(partials.revival * distance, byRevival * distance, 4e-6 * n);
      }),
    );
  });

  it('have partials without a jump where the series takes over', () => {
    for (const n of [2, 5, 40]) {
      const seam = 0.01 / (Math.PI * n);
      const [inside, outside] = [0.9999, 1.0001].map((share) => equalModesCoherencePartials(n, 1, share * seam).pathDifference / (share * seam));
      expectNear((inside ?? NaN) / (outside ?? NaN), 1, 1e-7);
    }
  });

  it('have the mean slope, none, at a zero', () => {
    expect(equalModesCoherencePartials(4, 1, 0.25).pathDifference).toBe(0);
  });

  it('reach the coherence that was asked for, before their first zero', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 60 }), revival, between(1e-6, 0.999), (n, distance, value) => {
        const reach = equalModesReach(n, distance, value);
        expectNear(equalModesCoherence(n, distance, reach), value, 1e-11);
        expect(reach).toBeLessThan(distance / n);
      }),
    );
    expect(equalModesReach(1, 0.6, 0.5)).toBe(0.3);
  });

  it('become a rectangular line when there are many', () => {
    // 10 000 modes 1 MHz apart are a rectangle 10 GHz wide; the combs of neighbouring revivals are 300 m away.
    for (const path of [0.001, 0.01, 0.02, 0.05]) expectNear(equalModesCoherence(10_000, 299.792458, path), lineCoherence('rectangular', 10e9, path), 1e-6);
  });
});

describe('weighted modes', () => {
  it.each(publishedIds('modes-3weighted'))('reproduce %s', (id) => {
    const value = publishedValue(id);
    value.check(weightedModesCoherence([0.73518, 1, 0.73518], revivalDistance(value.input('L_m'), 1), value.input('dL_m')));
  });

  it.each([
    [50, 0.92026],
    [100, 0.7024],
    [150, 0.4048],
    [200, 0.1072],
    [300, 0.1904],
    [600, 1],
  ])('0.735 : 1 : 0.735 at %f mm is %f (computed outside; cavity 0.30 m)', (mm, value) => {
    // The table's weights are the Gaussian gain curve of 1.5 GHz at half a GHz from its middle, rounded.
    expectNear(weightedModesCoherence([0.73518, 1, 0.73518], 0.6, mm / 1000), value, 6e-6);
  });

  const powers = fc.array(between(0.01, 1), { minLength: 1, maxLength: 12 });

  it('agree with the sum of the modes and with equal modes', () => {
    fc.assert(
      fc.property(powers, revival, inRevivals, (weights, distance, u) => {
        const value = weightedModesCoherence(weights, distance, u * distance);
        expectNear(value, directSum(weights, weights.map((_, k) => k), u), 1e-12);
        expectNear(weightedModesCoherence(weights.map(() => 0.7), distance, u * distance), equalModesCoherence(weights.length, distance, u * distance), 1e-12);
      }),
    );
  });

  it('have a slope that agrees with central differences', () => {
    fc.assert(
      fc.property(powers, revival, inRevivals, (weights, distance, u) => {
        fc.pre(weightedModesCoherence(weights, distance, u * distance) > 0.02);
        const slope = weightedModesCoherenceSlope(weights, distance, u * distance);
        const difference = centralDifference((d) => weightedModesCoherence(weights, distance, d), u * distance, 1e-5 * distance);
        expectNear(slope * distance, difference * distance, 1e-6);
      }),
    );
  });

  it('count as one mode when nothing is given', () => {
    expect(weightedModesCoherence([], 0.6, 0.1)).toBe(1);
    expect(weightedModesCoherence([0, 0], 0.6, 0.1)).toBe(1);
    expect(weightedModesCoherenceSlope([0, 0], 0.6, 0.1)).toBe(0);
    expect(weightedModesCoherence([5], 0.6, 0.1)).toBe(1);
  });

  it('have nothing, and the mean slope, at a zero', () => {
    expect(weightedModesCoherence([1, 1], 0.5, 0.25)).toBe(0);
    expect(weightedModesCoherenceSlope([1, 1], 0.5, 0.25)).toBe(0);
  });
});

describe('modes under a Gaussian gain curve', () => {
  // Computed outside for 1.5 GHz and a cavity of 0.30 m; at 300 mm the value hangs on where the modes lie.
  it.each([
    [50, 0.80028],
    [100, 0.41018],
    [150, 0.13465],
    [200, 0.02831],
    [600, 1],
  ])('of 1.5 GHz at %f mm is %f', (mm, value) => {
    expectNear(gaussianGainCoherence(1.5e9, 0.6, 0.25, mm / 1000), value, 6e-6);
  });
  it('hangs on where the modes lie only between the revivals', () => {
    // Published as 0.0003 to 0.0007: up to twice the single line's 0.00033 with a mode in the middle, none with the middle between two.
    expectNear(gaussianGainCoherence(1.5e9, 0.6, 0, 0.3), 2 * lineCoherence('gaussian', 1.5e9, 0.3), 1e-9);
    expectNear(gaussianGainCoherence(1.5e9, 0.6, 0.5, 0.3), 0, 1e-15);
  });

  it('agrees with the sum of the modes for narrow and wide curves', () => {
    const width = between(-1, 1.3).map((power) => 10 ** power);
    fc.assert(
      fc.property(width, revival, offset, inRevivals, (inModes, distance, off, u) => {
        const reach = Math.ceil(5 * inModes) + 2;
        const orders = Array.from({ length: 2 * reach + 1 }, (_, i) => i - reach + off);
        const powers = orders.map((order) => 0.5 ** ((2 * order) / inModes) ** 2);
        fc.pre(powers.some((power) => power > 1e-250));
        const gain = (inModes * 299_792_458) / distance;
        expectNear(gaussianGainCoherence(gain, distance, off, u * distance), directSum(powers, orders, u), 1e-11);
      }),
      { numRuns: 200 },
    );
  });

  it('has a slope that agrees with central differences', () => {
    const width = between(-0.5, 0.5).map((power) => 10 ** power);
    fc.assert(
      fc.property(width, revival, offset, inRevivals, (inModes, distance, off, u) => {
        const gain = (inModes * 299_792_458) / distance;
        const value = (d: number): number => gaussianGainCoherence(gain, distance, off, d);
        fc.pre(value(u * distance) > 0.02);
        const difference = centralDifference(value, u * distance, 1e-5 * distance);
        expectNear(gaussianGainCoherenceSlope(gain, distance, off, u * distance) * distance, difference * distance, 1e-6);
      }),
    );
  });

  it('is nothing far from the revivals of a wide curve', () => {
    expect(gaussianGainCoherence(5e9, 600, 0, 150)).toBe(0);
    expect(gaussianGainCoherenceSlope(5e9, 600, 0, 150)).toBe(0);
  });

  it('is one Gaussian line between the revivals when the curve holds many modes', () => {
    for (const path of [0.001, 0.01, 0.03]) expectNear(gaussianGainCoherence(5.5e9, 2, 0.3, path), lineCoherence('gaussian', 5.5e9, path), 1e-12);
  });
});

it('a gain curve far narrower than the spacing of the modes keeps the nearest one, however far it is off', () => {
  // 0.6 m from revival to revival: 500 MHz apart, and 0.5 MHz wide. One mode alone has contrast 1 at any path.
  for (const offset of [0, 0.2, -0.4]) for (const path of [0, 0.1, 0.3]) expectNear(gaussianGainCoherence(0.5e6, 0.6, offset, path), 1, 1e-12);
});
