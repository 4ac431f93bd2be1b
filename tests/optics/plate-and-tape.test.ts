import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { depthPathChange, pathWalk } from '../../server/optics/depth.ts';
import { tapeError, type TapeClass } from '../../server/optics/tape.ts';
import {
  brightnessInStops,
  ratioVisibility,
  ratioVisibilitySlope,
  recordedBrightness,
} from '../../server/optics/visibility.ts';
import { between, centralDifference, expectNear, expectPrinted, publishedIds, publishedValue } from './outside.ts';

const degrees = (angle: number): number => (angle * Math.PI) / 180;

describe('visibility for a beam ratio', () => {
  it.each(publishedIds('vis-'))('reproduces %s', (id) => {
    const value = publishedValue(id);
    value.check(ratioVisibility(value.input('K')));
  });

  // 2√K/(1 + K), six digits, computed outside (any optics text).
  it.each([
    [1.5, '0.979796'],
    [2, '0.942809'],
    [5, '0.745356'],
    [8, '0.628539'],
    [20, '0.425918'],
  ])('of %f to 1 is %s', (ratio, printed) => expectPrinted(ratioVisibility(ratio), printed));

  const ratio = between(-3, 3).map((power) => 10 ** power);

  it('is (max − min)/(max + min) of two interfering beams, the same with the beams exchanged', () => {
    fc.assert(
      fc.property(ratio, (k) => {
        const [most, least] = [(Math.sqrt(k) + 1) ** 2, (Math.sqrt(k) - 1) ** 2];
        expectNear(ratioVisibility(k), (most - least) / (most + least), 1e-12);
        expectNear(ratioVisibility(1 / k), ratioVisibility(k), 1e-12);
      }),
    );
  });

  it('has a slope that agrees with central differences', () => {
    fc.assert(fc.property(ratio, (k) => expectNear(ratioVisibilitySlope(k) * k, centralDifference(ratioVisibility, k, k / 100) * k, 1e-7)));
  });
});

describe('recorded brightness', () => {
  it('enters squared: 4 to 1, a Gaussian line at 0.827, polarizations 30° apart', () => {
    // Worked example, computed outside: visibility 0.57296.
    const visibility = ratioVisibility(4) * 0.827 * Math.cos(degrees(30));
    expectPrinted(visibility, '0.57296');
    expectNear(recordedBrightness(visibility), 0.57296 ** 2, 1e-5);
  });

  it('is a stop less for half, and nothing for the best', () => {
    expect(brightnessInStops(1)).toBe(0);
    expect(brightnessInStops(0.5)).toBe(-1);
    expect(brightnessInStops(0.125)).toBe(-3);
    // Half a stop is a factor of √2 (common practice).
    expectNear(brightnessInStops(1 / 1.41421356), -0.5, 1e-8);
    expectNear(brightnessInStops(recordedBrightness(Math.SQRT1_2)), -1, 1e-12);
  });
});

describe('path change by depth', () => {
  it('reproduces 50 mm of depth at 45°', () => {
    const value = publishedValue('denisyuk');
    value.check(depthPathChange(value.input('z_mm') / 1000, degrees(value.input('angle_deg'))) * 1000);
  });

  it('is twice the depth from the front, once from the side, nothing from behind', () => {
    expectNear(depthPathChange(0.035, 0), 0.07, 1e-15);
    expectNear(depthPathChange(0.035, Math.PI / 2), 0.035, 1e-15);
    expectNear(depthPathChange(0.035, Math.PI), 0, 1e-15);
  });

  it('follows from distances between points', () => {
    fc.assert(
      fc.property(between(0.001, 0.1), between(-Math.PI, Math.PI), (depth, angle) => {
        // Source and plate a kilometre away; a part of the object at 0 and one farther from the plate by the depth. Distances to a
        // point as (a² − b²)/(a + b), so that no digits are lost.
        const far = 1000;
        const source = { x: far * Math.sin(angle), z: far * Math.cos(angle) };
        const longer = (x: number, z: number): number => ((z + depth) ** 2 - z ** 2) / (Math.hypot(x, z + depth) + Math.hypot(x, z));
        expectNear(depthPathChange(depth, angle), longer(source.x, source.z) + longer(0, far), 1e-5);
      }),
    );
  });
});

describe('walk of the path over the plate', () => {
  // Computed outside: sin 45° of the width of 4, 5 and 10 inch plates.
  it.each([
    [102, '72'],
    [127, '90'],
    [254, '180'],
  ])('of %f mm at 45° is %s mm', (width, printed) => expectPrinted(pathWalk(width / 1000, degrees(45), 0) * 1000, printed));

  it('follows from distances between points', () => {
    const angle = between(-1.4, 1.4);
    fc.assert(
      fc.property(angle, angle, (reference, object) => {
        // Both sources ten kilometres away; distances to the edges of a plate 0.1 m wide.
        const far = 1e4;
        const walk = (a: number): number => {
          const [x, z] = [far * Math.sin(a), far * Math.cos(a)];
          return ((x + 0.05) ** 2 - (x - 0.05) ** 2) / (Math.hypot(x + 0.05, z) + Math.hypot(x - 0.05, z));
        };
        expectNear(pathWalk(0.1, reference, object), Math.abs(walk(reference) - walk(object)), 1e-7);
      }),
    );
  });
});

describe('error of a tape', () => {
  it.each([
    ['tape-I', 'I'],
    ['tape-II', 'II'],
  ] as const)('reproduces %s', (id, tapeClass) => {
    const value = publishedValue(id);
    value.check(tapeError(tapeClass, value.input('L_m'), false) * 1000);
  });

  // Directive 2014/32/EU, MI-008, table 1: a 0.1/0.3/0.6 mm, b 0.1/0.2/0.4, c 0.1/0.2/0.3 mm; worked out by hand.
  it.each([
    ['III', 10, false, 4.6],
    ['I', 0, false, 0.1],
    ['I', 2, false, 0.3],
    ['II', 2, false, 0.7],
    ['III', 2, false, 1.4],
    ['I', 3, false, 0.4],
    ['II', 3, false, 0.9],
    ['III', 3, false, 1.8],
    ['I', 0.75, true, 0.3],
    ['II', 0.75, true, 0.7],
    ['III', 0.75, true, 1.3],
    ['II', 2.001, false, 0.9],
  ] as [TapeClass, number, boolean, number][])('of class %s over %f m, from its end %s, is %f mm', (tapeClass, metres, fromEnd, mm) => {
    expectNear(tapeError(tapeClass, metres, fromEnd) * 1000, mm, 1e-9);
  });

  it('is not a metre more for the rounding error of a unit', () => {
    const length = 1.1 * 100;
    expect(length).toBeGreaterThan(110);
    expectNear(tapeError('II', length, false) * 1000, 22.3, 1e-9);
  });
});
