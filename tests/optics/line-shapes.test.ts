import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { speedOfLight as c } from '../../server/optics/constants.ts';
import {
  lineCoherence,
  lineCoherencePartials,
  lineCoherenceReach,
  lineShapes,
  type LineShape,
} from '../../server/optics/coherence/line-shapes.ts';
import { between, centralDifference, expectNear, integral, publishedIds, publishedValue } from './outside.ts';

/** |γ| at x = linewidth · path difference / c. */
const at = (shape: LineShape, x: number): number => lineCoherence(shape, c, x);

const shape = fc.constantFrom(...lineShapes);
const linewidth = between(5, 13).map((power) => 10 ** power);
const inLines = between(-4, 4);

describe('coherence of one spectral line', () => {
  it.each(publishedIds('gamma-'))('reproduces %s', (id) => {
    const value = publishedValue(id);
    value.check(at(id.includes('gauss') ? 'gaussian' : 'lorentzian', value.input('x')));
  });

  // The theorem of Wiener and Khinchin: |γ| is the Fourier transform of the line, whose area is 1 (Goodman, Statistical Optics, ch. 3).
  // The line is written down here by its half width alone and transformed by quadrature.
  describe.each([0.05, 0.25, 0.441, 0.8, 1.3])('is the Fourier transform of the line at x = %f', (x) => {
    it('Gaussian', () => {
      const line = (f: number): number => 0.5 ** ((2 * f) ** 2);
      const transform = integral((f) => line(f) * Math.cos(2 * Math.PI * x * f), -6, 6, 4000);
      expectNear(at('gaussian', x), transform / integral(line, -6, 6, 4000), 1e-9);
    });
    it('Lorentzian', () => {
      // With f = s/2 the half width is 1 in s. The quadrature stops where the cosine is at a turning point; the first term of the
      // rest is then ∓2s/(1+s²)²/(πx)², below 1e-9.
      const end = Math.round(3000 * x) / x;
      const transform = integral((s) => Math.cos(Math.PI * x * s) / (1 + s ** 2), 0, end, 600_000);
      expectNear(at('lorentzian', x), transform / (Math.PI / 2), 1e-7);
    });
    it('rectangular', () => {
      expectNear(at('rectangular', x), Math.abs(integral((f) => Math.cos(2 * Math.PI * x * f), -0.5, 0.5, 4000)), 1e-12);
    });
  });

  // Table of the four reaches in c/linewidth: closed forms √(2 ln2·…)/π and roots of sinc, computed outside with 6 digits.
  it.each([
    ['gaussian', Math.SQRT1_2, 0.312026],
    ['gaussian', 0.5, 0.441271],
    ['gaussian', 1 / Math.E, 0.530021],
    ['lorentzian', Math.SQRT1_2, 0.110318],
    ['lorentzian', 0.5, 0.220636],
    ['lorentzian', 1 / Math.E, 0.31831],
    ['rectangular', Math.SQRT1_2, 0.442946],
    ['rectangular', 0.5, 0.603355],
  ] as const)('%s falls to %f at %f c/linewidth', (name, coherence, x) => {
    expectNear(lineCoherenceReach(name, c, coherence), x, 1e-6);
  });

  it('falls to one half at 88.19 mm with 1.5 GHz of Doppler width (computed: 2 ln 2/π · c/1.5 GHz)', () => {
    expectNear(lineCoherenceReach('gaussian', 1.5e9, 0.5), 0.08819, 5e-6);
  });

  it('lies between 0 and 1, is 1 at equal paths, and does not care which arm is longer', () => {
    fc.assert(
      fc.property(shape, linewidth, inLines, (name, width, x) => {
        const value = lineCoherence(name, width, (x * c) / width);
        expect(value).toBeGreaterThanOrEqual(0);
        expect(value).toBeLessThanOrEqual(1);
        expect(lineCoherence(name, width, (-x * c) / width)).toBe(value);
        expect(lineCoherence(name, width, 0)).toBe(1);
      }),
    );
  });

  it('depends on the product of linewidth and path difference alone', () => {
    fc.assert(
      fc.property(shape, linewidth, inLines, (name, width, x) => expectNear(lineCoherence(name, width, (x * c) / width), at(name, x), 1e-12)),
    );
  });

  it('has partials that agree with central differences', () => {
    fc.assert(
      fc.property(shape, linewidth, inLines, (name, width, x) => {
        // Away from the kinks, where there is no derivative.
        fc.pre(Math.abs(x) > 0.02 && (name !== 'rectangular' || Math.abs(x - Math.round(x)) > 0.02));
        const path = (x * c) / width;
        const partials = lineCoherencePartials(name, width, path);
        const byPath = centralDifference((d) => lineCoherence(name, width, d), path, (1e-3 * c) / width);
        const byWidth = centralDifference((w) => lineCoherence(name, w, path), width, (1e-3 * width) / Math.max(1, Math.abs(x)));
        expectNear((partials.pathDifference * c) / width, (byPath * c) / width, 1e-7);
        expectNear(partials.linewidth * width, byWidth * width, 1e-7);
      }),
    );
  });

  it('has the mean slope, none, at its kinks and tops', () => {
    for (const name of lineShapes) expect(lineCoherencePartials(name, 1e9, 0).pathDifference).toBeCloseTo(0, 15);
    expect(lineCoherencePartials('rectangular', c, 2).pathDifference).toBe(0);
  });

  it('keeps its slope where the series takes over from the closed form', () => {
    // d sinc(πx)/dx = −π²x/3 + π⁴x³/30 for small x
    for (const x of [1e-9, 1e-6, 0.99e-3 / Math.PI, 1.01e-3 / Math.PI]) {
      expectNear(lineCoherence('rectangular', c, x), Math.sin(Math.PI * x) / (Math.PI * x), 1e-15);
      expectNear(lineCoherencePartials('rectangular', c, x).pathDifference / (-(Math.PI ** 2) * x / 3), 1 - (Math.PI * x) ** 2 / 10, 1e-8);
    }
  });

  it('reaches the coherence that was asked for, and never later than it first falls there', () => {
    fc.assert(
      fc.property(shape, linewidth, between(1e-6, 0.999), (name, width, coherence) => {
        const reach = lineCoherenceReach(name, width, coherence);
        expectNear(lineCoherence(name, width, reach), coherence, 1e-12);
        expect(lineCoherence(name, width, reach * 0.99)).toBeGreaterThan(coherence);
      }),
    );
  });
});
