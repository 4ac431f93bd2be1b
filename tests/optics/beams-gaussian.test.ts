/** The Gaussian beam. Sources beside the checks; "by hand" is the formula with its numbers worked out outside the code. */
import * as cephes from 'cephes';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { beamQuality, circleShare, edgeRatio, farHalfAngle, lightOffAxis, peakLight, radiusAt, radiusForEvenness, rayleighRange, rectangleShare } from '../../server/optics/beams/gaussian.ts';
import { between, expectNear, expectPrinted, integral, publishedValue } from './outside.ts';

const MM = 1e-3;
const RED = 632.8e-9;
/** 1 µW/cm² in W/m². */
const MICROWATT = 0.01;

/** Beyond 6 it is 1, and cephes reports that its remainder is too small for a number. */
const cephesErf = (x: number): number => cephes.erf(Math.min(x, 6));

beforeAll(async () => { await cephes.compiled; });

describe('a beam from its waist', () => {
  it('reproduces the published radius at 1 m', () => {
    const value = publishedValue('gauss-w1');
    value.check(radiusAt(value.input('w0_mm') * MM, value.input('wavelength_nm') * 1e-9, 1, value.input('z_m')) / MM);
  });

  // Siegman, Lasers (1986) ch. 17 (formulas from memory), by hand for 632.8 nm: waist mm, Rayleigh range m, radius at 1 m and at 2 m mm.
  it('of 0.40 mm at 632.8 nm: z_R 0.79433 m, w(1 m) 0.643101 mm, w(2 m) 1.083659 mm, half-divergence 0.50357 mrad', () => {
    expectPrinted(rayleighRange(0.4 * MM, RED, 1), '0.79433');
    expectPrinted(radiusAt(0.4 * MM, RED, 1, 1) / MM, '0.643101');
    expectPrinted(radiusAt(0.4 * MM, RED, 1, 2) / MM, '1.083659');
    expectPrinted(farHalfAngle(0.4 * MM, RED, 1) / MM, '0.50357');
  });

  it('of 0.35 mm at 632.8 nm: z_R 0.60816 m, w(1 m) 0.673576 mm', () => {
    expectPrinted(rayleighRange(0.35 * MM, RED, 1), '0.60816');
    expectPrinted(radiusAt(0.35 * MM, RED, 1, 1) / MM, '0.673576');
  });

  it('is the same either way, √2 as wide at the Rayleigh range, and far out as wide as its angle says', () => {
    fc.assert(fc.property(between(0.05, 2), between(1, 20), between(0, 5), (waist, quality, z) => {
      const range = rayleighRange(waist * MM, RED, quality);
      expect(radiusAt(waist * MM, RED, quality, -z)).toBe(radiusAt(waist * MM, RED, quality, z));
      expectNear(radiusAt(waist * MM, RED, quality, range) / (waist * MM), Math.SQRT2, 1e-12);
      expectNear(radiusAt(waist * MM, RED, quality, 1e4 * range) / (1e4 * range), farHalfAngle(waist * MM, RED, quality), 1e-8 * farHalfAngle(waist * MM, RED, quality));
    }));
  });

  it('of quality M² spreads M² times as fast (ISO 11146, from memory), and the quality comes back from waist and angle', () => {
    fc.assert(fc.property(between(0.05, 2), between(1, 20), (waist, quality) => {
      expectNear(farHalfAngle(waist * MM, RED, quality) / farHalfAngle(waist * MM, RED, 1), quality, 1e-11 * quality);
      expectNear(beamQuality(waist * MM, farHalfAngle(waist * MM, RED, quality), RED), quality, 1e-11 * quality);
    }));
    // By hand: π · 0.4 mm · 1 mrad / 632.8 nm = 1.98584.
    expectPrinted(beamQuality(0.4 * MM, 1e-3, RED), '1.98584');
    expect(beamQuality(0.4 * MM, 0.3e-3, RED)).toBe(1);
  });
});

describe('light of a beam', () => {
  it('of 5 mW and w 0.4 mm peaks at 19 894 W/m²; of 1 mW and w 50 mm at 0.254648 W/m² = 25.46 µW/cm²', () => {
    expectPrinted(peakLight(5e-3, 0.4 * MM), '19894');
    expectPrinted(peakLight(1e-3, 50 * MM), '0.254648');
    expectPrinted(peakLight(1e-3, 50 * MM) / MICROWATT, '25.46');
  });

  it('sums to the power', () => {
    fc.assert(fc.property(between(0.1, 10), between(0.1, 100), (power, radius) => {
      const sum = integral(r => 2 * Math.PI * r * lightOffAxis(power * MM, radius * MM, r), 0, 6 * radius * MM, 1000);
      expectNear(sum, power * MM, 1e-8 * power * MM);
    }), { numRuns: 30 });
  });

  it('falls to 1/e² at the radius', () => expectNear(edgeRatio(3, 3), Math.exp(-2), 1e-15));
});

describe('the share of the power', () => {
  it('within a circle as large as the beam is the published one: 13.5 % is lost (any laser text)', () => {
    const value = publishedValue('gauss-aperture');
    value.check(circleShare(1, value.input('a_over_w')));
    expectPrinted(100 * (1 - circleShare(1, 1)), '13.5');
  });

  // a/w and 1 − exp(−2a²/w²) by hand.
  it.each([[0.5, '0.393469'], [1, '0.864665'], [1.5, '0.988891'], [2, '0.999665']] as const)('within a circle of a/w %f is %s', (a, printed) => expectPrinted(circleShare(1, a), printed));

  it('within a rectangle is the product of error functions (cephes)', () => {
    fc.assert(fc.property(between(0.1, 3), between(0.1, 3), between(0.1, 3), (w, a, b) => {
      expectNear(rectangleShare(w, a, b), cephesErf((Math.SQRT2 * a) / w) * cephesErf((Math.SQRT2 * b) / w), 1e-14);
    }));
  });

  it('within a rectangle lies between those of the circles inside and outside of it', () => {
    fc.assert(fc.property(between(0.1, 3), between(0.1, 3), between(0.1, 3), (w, a, b) => {
      expect(rectangleShare(w, a, b)).toBeGreaterThanOrEqual(circleShare(w, Math.min(a, b)) - 1e-15);
      expect(rectangleShare(w, a, b)).toBeLessThanOrEqual(circleShare(w, Math.hypot(a, b)) + 1e-15);
    }));
  });
});

describe('a 102 × 127 mm plate (half 50.8 × 63.5, corner at 81.320 mm)', () => {
  const corner = Math.hypot(50.8, 63.5) * MM;
  it('has its corner at 81.320 mm', () => expectPrinted(corner / MM, '81.320'));

  // By hand: erf · erf, and exp(−2 r²/w²).
  it.each([[100, '54.948', '0.26645'], [150, '30.250', '0.55554']] as const)('in a beam of w %f mm uses %s % of the power, corner/centre %s', (w, used, ratio) => {
    expectPrinted(100 * rectangleShare(w * MM, 50.8 * MM, 63.5 * MM), used);
    expectPrinted(edgeRatio(w * MM, corner), ratio);
  });

  it.each([[0.5, '138.13', '34.54'], [0.8, '243.45', '12.88'], [0.9, '354.30', undefined]] as const)('for a corner of at least %f needs w %s mm', (share, w, used) => {
    const radius = radiusForEvenness(corner, share);
    expectPrinted(radius / MM, w);
    if (used !== undefined) expectPrinted(100 * rectangleShare(radius, 50.8 * MM, 63.5 * MM), used);
  });

  it('has just the share asked for at its corner', () => {
    fc.assert(fc.property(between(0.01, 0.99), between(1, 300), (share, r) => { expectNear(edgeRatio(radiusForEvenness(r * MM, share), r * MM), share, 1e-12); }));
  });
});
