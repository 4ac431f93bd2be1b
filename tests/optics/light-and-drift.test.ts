import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { driftContrast, longestExposure } from '../../server/optics/drift.ts';
import { exposureTime, reciprocityTime } from '../../server/optics/exposure.ts';
import { angleByReadings, headArea, lightInPlane, lightRatio } from '../../server/optics/light.ts';
import { densityTransmission, shareAtMark, splitterShare, weightsAtMark } from '../../server/optics/power.ts';
import { recordedBrightness } from '../../server/optics/visibility.ts';
import { between, expectNear, expectPrinted, integral, publishedIds, publishedValue } from './outside.ts';

const degrees = (angle: number): number => (angle * Math.PI) / 180;
// 1 µW = 10⁻⁶ W and 1 cm² = 10⁻⁴ m², so that 1 µW/cm² is 0.01 W/m² and 1 µJ/cm² is 0.01 J/m².
const MICRO = 0.01;

describe('light in the plane of the plate', () => {
  it('reproduces 4 µW/cm² at 56°', () => {
    const value = publishedValue('cos56');
    value.check(lightInPlane(value.input('E_uW_cm2') * MICRO, degrees(value.input('angle_deg'))) / MICRO);
  });

  it('gives the angle back', () => {
    // 1.31 / 1.6 = 0.81875, of which the arc cosine is 35.04° (cos 35° = 0.819152, handbook table).
    expectNear(angleByReadings(1.31, 1.6), degrees(35.04), degrees(0.01));
    fc.assert(fc.property(between(0.05, 1.5), between(1e-6, 1e3), (angle, facing) => expectNear(angleByReadings(lightInPlane(facing, angle), facing), angle, 1e-9)));
  });

  it('is the square of the radius times π for a round head', () => {
    // A head of 10 mm: 3.14159 · 0.25 cm² = 0.785398 cm².
    expectPrinted(headArea(0.01) * 1e4, '0.785398');
  });
});

describe('beam ratio', () => {
  // Published pairs, in µW on one head: 1.8 and 0.8 make 2.25, 0.38 and 0.14 make 2.714 (University of Bergen, thesis 404001, 1996, 12.3 and 12.6).
  it.each([[1.8, 0.8, '2.25'], [0.38, 0.14, '2.714']])('of %f and %f is %s', (reference, object, printed) => expectPrinted(lightRatio(reference, object), printed));
});

describe('power along a beam', () => {
  // Densities 0.3, 1 and 2 let 50.1187 %, 10 % and 1 % through: 10^(−0.3) = 0.501187 (handbook table).
  it.each([[0.3, '0.501187'], [1, '0.100000'], [2, '0.010000'], [0, '1.000000']] as const)('through a density of %f', (density, printed) => expectPrinted(densityTransmission(density), printed));

  it('behind a splitter adds up to what is not lost', () => {
    // 4 % lost, 88 % of the rest reflected: 0.96 · 0.88 = 0.8448 and 0.96 · 0.12 = 0.1152; together 0.96.
    expectPrinted(splitterShare(0.88, 0.04), '0.8448');
    expectPrinted(splitterShare(0.12, 0.04), '0.1152');
  });
});

describe('marks of a wheel', () => {
  const [marks, values] = [[3, 4, 5], [0.7, 0.84, 0.92]];
  // By hand: a quarter of the way from 4 to 5 is 0.84 + 0.25 · 0.08 = 0.86.
  it.each([[3, 0.7], [3.5, 0.77], [4, 0.84], [4.25, 0.86], [5, 0.92]])('at %f is %f', (setting, share) => expectNear(shareAtMark(marks, values, setting), share, 1e-12));

  it('beyond the outermost stays at the outermost', () => {
    expect(shareAtMark(marks, values, 2)).toBe(0.7);
    expect(shareAtMark(marks, values, 9)).toBe(0.92);
    expect(shareAtMark([4], [0.5], 4)).toBe(0.5);
    expect(shareAtMark([], [], 4)).toBe(0);
    // A quarter of the way from 2 to 6: 0.2 + 0.25 · 0.6
    expectNear(shareAtMark([2, 6], [0.2, 0.8], 3), 0.35, 1e-12);
  });

  it('weighs two marks, and both add up to one', () => {
    fc.assert(fc.property(between(2, 6), setting => {
      const weights = weightsAtMark(marks, setting);
      expectNear(weights.reduce((a, b) => a + b, 0), 1, 1e-12);
      expect(weights.filter(w => w > 0).length).toBeLessThanOrEqual(2);
    }));
  });
});

describe('exposure', () => {
  it('is the energy divided by the light', () => {
    // 50 µJ/cm² at 2.5 µW/cm² takes 20 s; 80 µJ/cm² at 2.23677 µW/cm², the light above, 35.766 s (by hand).
    expectNear(exposureTime(50 * MICRO, 2.5 * MICRO), 20, 1e-12);
    expectPrinted(exposureTime(80 * MICRO, lightInPlane(4 * MICRO, degrees(56))), '35.766');
  });

  it('reproduces 60 s with an exponent of 0.9', () => {
    const value = publishedValue('schw-60-.9');
    value.check(reciprocityTime(value.input('t_s'), value.input('p')));
  });

  // t^(1/p), by hand: 60^(1/0.85) = e^(4.094345 / 0.85) = 123.578; 10^(1/0.9) = 12.9155; 300^(1/0.9) = 565.40.
  it.each([[60, 0.85, '123.578'], [10, 0.9, '12.9155'], [300, 0.9, '565.40'], [60, 1, '60'], [0.5, 0.9, '0.50000']])('of %f s with %f is %s s', (time, p, printed) => expectPrinted(reciprocityTime(time, p), printed));
});

describe('drift', () => {
  it.each(publishedIds('drift-'))('reproduces %s', id => {
    const value = publishedValue(id);
    value.check(driftContrast(value.input('waves')));
  });

  // Contrast and its square, computed outside by quadrature.
  it.each([[0.05, '0.995893', '0.991802'], [0.1, '0.983632', '0.967531'], [0.125, '0.974495', '0.949641'], [0.25, '0.900316', '0.810569'], [0.5, '0.636620', '0.405285'], [1, '0.000000', '0.000000']] as const)(
    'of %f fringes leaves %s, a brightness of %s', (moved, contrast, brightness) => {
      expectPrinted(driftContrast(moved), contrast);
      expectPrinted(recordedBrightness(driftContrast(moved)), brightness);
    });

  it('is the mean of a phase that runs evenly', () => {
    fc.assert(fc.property(between(-3, 3), moved => {
      const [re, im] = [Math.cos, Math.sin].map(f => integral(t => f(2 * Math.PI * moved * t), 0, 1, 400)) as [number, number];
      expectNear(driftContrast(moved), Math.hypot(re, im), 1e-7);
    }), { numRuns: 50 });
  });

  it('of half a fringe a minute bears 12 s', () => {
    // 0.1 fringe / (0.5 fringes / 60 s) = 12 s.
    expectNear(longestExposure(0.5 / 60), 12, 1e-12);
    expectNear(longestExposure(-0.5 / 60), 12, 1e-12);
  });
});
