import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { speedOfLight as c } from '../../server/optics/constants.ts';
import {
  coherenceLength,
  coherenceLengthFactor,
  coherenceLengthMeanings,
  linewidthOfCoherenceLength,
  linewidthOfWavelengthWidth,
} from '../../server/optics/coherence/coherence-length.ts';
import { lineShapes } from '../../server/optics/coherence/line-shapes.ts';
import { between, expectNear, expectPrinted, integral, publishedValue } from './outside.ts';

describe('coherence length', () => {
  it('reproduces the published 30 m of a 10 MHz line', () => {
    const value = publishedValue('lc-10MHz');
    value.check(coherenceLength('c-over-linewidth', 'gaussian', value.input('dnu_Hz')));
  });

  it('tells the two numbers of a Gaussian line apart that are easily mixed up', () => {
    publishedValue('lc-gauss-half').check(coherenceLengthFactor('to-half-visibility', 'gaussian'));
    // Goodman, Statistical Optics §5.1.3: τ_c = √(2 ln 2/π)/Δν = 0.664/Δν (from memory; 0.664282 computed)
    expectNear(coherenceLengthFactor('integral', 'gaussian'), 0.664282, 5e-7);
  });

  it('is 1/π of c/linewidth for a Lorentzian line by two meanings', () => {
    // c/(πΔν) with |γ| = 1/e is the definition of several physics pages; Goodman's table has 0.318/Δν (from memory).
    publishedValue('lc-lorentz').check(coherenceLengthFactor('to-1/e-visibility', 'lorentzian'));
    publishedValue('lc-lorentz').check(coherenceLengthFactor('integral', 'lorentzian'));
  });

  // Mandel's integral of |γ|² over all delays, here by quadrature of functions written down anew.
  it.each([
    ['gaussian', (x: number) => Math.exp(-2 * ((Math.PI * x) ** 2 / (4 * Math.log(2)))), 6],
    ['lorentzian', (x: number) => Math.exp(-2 * Math.PI * x), 8],
  ] as const)('has the integral of the squared coherence of a %s line', (shape, squared, end) => {
    expectNear(coherenceLengthFactor('integral', shape), 2 * integral(squared, 0, end, 40_000), 1e-9);
  });
  it('has the integral of the squared coherence of a rectangular line', () => {
    const sinc2 = (x: number): number => (x === 0 ? 1 : (Math.sin(Math.PI * x) / (Math.PI * x)) ** 2);
    // ∫ over |x| > n of sin²(πx)/(πx)² is 1/(π²n) but for terms of order 1/n³
    expectNear(coherenceLengthFactor('integral', 'rectangular'), 2 * integral(sinc2, 0, 500, 200_000) + 1 / (Math.PI ** 2 * 500), 1e-6);
  });

  // Published, rounded: 1 GHz → "about 30 cm", 30 MHz → "10 m" (trade pages); the digits are computed from c/Δν.
  it.each([
    ['c-over-linewidth', 'gaussian', 1e9, '0.29979'],
    ['c-over-linewidth', 'gaussian', 30e6, '9.993'],
    ['c-over-linewidth', 'gaussian', 1e6, '299.79'],
    ['integral', 'gaussian', 1e6, '199.15'],
    ['integral', 'lorentzian', 1e6, '95.43'],
    ['c-over-linewidth', 'gaussian', 1.5e9, '0.19986'],
    ['integral', 'gaussian', 1.5e9, '0.13276'],
    ['to-half-visibility', 'gaussian', 1.5e9, '0.08819'],
  ] as const)('by %s of a %s line of %f Hz is %s m', (meaning, shape, linewidth, printed) => {
    expectPrinted(coherenceLength(meaning, shape, linewidth), printed);
  });

  // λ²/Δλ: US Federal Standard 1037C; numbers computed from it.
  it.each([
    [0.1, 650, '4.225'],
    [0.01, 532.2, '28.32'],
  ])('of a line %f nm wide at %f nm is %s mm, λ²/Δλ', (width, wavelength, printed) => {
    expectPrinted(coherenceLength('c-over-linewidth', 'gaussian', linewidthOfWavelengthWidth(width * 1e-9, wavelength * 1e-9)) * 1000, printed);
  });

  it('to half the brightness of fringes of a Gaussian line is √2 ln 2/π, to half their visibility 2 ln 2/π', () => {
    // |γ| = exp(−(πx)²/(4 ln 2)) in units of c/linewidth: 1/√2 where (πx)² = 4 ln 2 · ln 2/2
    expectNear(coherenceLengthFactor('to-half-brightness', 'gaussian'), (Math.SQRT2 * Math.LN2) / Math.PI, 1e-9);
    expectNear(coherenceLengthFactor('to-half-visibility', 'gaussian'), (2 * Math.LN2) / Math.PI, 1e-9);
  });

  it('takes a width above a tenth of the wavelength for a tenth of it', () => {
    // c · 60 nm/(600 nm)²
    expectNear(linewidthOfWavelengthWidth(120e-9, 600e-9) / 1e13, (299_792_458 * 60e-9) / 600e-9 ** 2 / 1e13, 1e-9);
  });

  it('is 1 for half of what it is for the other catalogue meaning', () => {
    expect(2 * coherenceLength('half-c-over-linewidth', 'gaussian', 1e9)).toBe(coherenceLength('c-over-linewidth', 'gaussian', 1e9));
  });

  it('turns back into the linewidth it came from, for every meaning and shape', () => {
    const linewidth = between(3, 13).map((power) => 10 ** power);
    fc.assert(
      fc.property(fc.constantFrom(...coherenceLengthMeanings), fc.constantFrom(...lineShapes), linewidth, (meaning, shape, hertz) =>
        expectNear(linewidthOfCoherenceLength(meaning, shape, coherenceLength(meaning, shape, hertz)) / hertz, 1, 1e-12),
      ),
    );
  });

  it('gives the difference of the two frequencies at the edges of a narrow line', () => {
    fc.assert(
      fc.property(between(4e-7, 8e-7), between(1e-13, 1e-10), (lambda, width) => {
        const edges = c / (lambda - width / 2) - c / (lambda + width / 2);
        expectNear(linewidthOfWavelengthWidth(width, lambda) / edges, 1, 1e-6);
      }),
    );
  });
});
