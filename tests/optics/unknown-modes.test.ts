import fc from 'fast-check';
import { atomicMass, boltzmann, median, speedOfLight, unit } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { gainLineAt, gainLines } from '../../server/optics/coherence/gain-widths.ts';
import { revivalDistance } from '../../server/optics/coherence/cavity.ts';
import { equalModesCoherence } from '../../server/optics/coherence/equal-modes.ts';
import { areModeCounts, plausibleModeCounts, unknownModesCoherence } from '../../server/optics/coherence/unknown-modes.ts';
import { isWithin } from '../../server/optics/range.ts';
import { between, expectNear } from './outside.ts';

const exactly = (width: number): { from: number; to: number } => ({ from: width, to: width });

describe('number of modes under a gain curve', () => {
  it('holds the published numbers', () => {
    // A problem collection: 1.5 GHz, L = 15 cm, 1.0 GHz apart: "1.5, about 2 modes"; only one below L = 10 cm.
    expect(plausibleModeCounts(exactly(1.5e9), revivalDistance(0.15, 1))).toEqual({ fewest: 1, most: 2 });
    expect(plausibleModeCounts(exactly(1.5e9), revivalDistance(0.0999, 1))).toEqual({ fewest: 1, most: 1 });
    // A maker's primer: 23 cm and 1.4 GHz: two modes; twice as long: four. "Only two": it rounds down.
    expect(plausibleModeCounts(exactly(1.4e9), revivalDistance(0.23, 1)).fewest).toBe(2);
    expect(plausibleModeCounts(exactly(1.4e9), revivalDistance(0.46, 1)).fewest).toBe(4);
    // An optics supplier's page: 730 MHz apart, 3 modes; it rounds up.
    expect(plausibleModeCounts(exactly(1.5e9), 299_792_458 / 730e6).most).toBe(3);
  });

  it('is what fits into a window, wherever the window starts', () => {
    fc.assert(
      fc.property(fc.integer({ min: 64, max: 2560 }), fc.integer({ min: 0, max: 64 }), (windowIn64ths, startIn64ths) => {
        const [window, start] = [windowIn64ths / 64, startIn64ths / 64];
        // whole numbers in [start, start + window); 64ths are exact
        const inside = Math.ceil(start + window) - Math.ceil(start);
        const { fewest, most } = plausibleModeCounts(exactly(window * 299_792_458), 1);
        expect(inside).toBeGreaterThanOrEqual(fewest);
        expect(inside).toBeLessThanOrEqual(most);
        expect(most - fewest).toBeLessThanOrEqual(1);
      }),
    );
  });

  it('is certain for just so many spacings, in spite of rounding', () => {
    for (let n = 1; n <= 50; n++) for (const spacing of [0.1e9, 0.3e9, 0.7e9])
      expect(plausibleModeCounts(exactly(n * spacing), 299_792_458 / spacing)).toEqual({ fewest: n, most: n });
  });

  it('widens with a gain width that is not well known, and takes its ends in either order', () => {
    expect(plausibleModeCounts({ from: 1.4e9, to: 1.6e9 }, 0.7)).toEqual({ fewest: 3, most: 4 });
    expect(plausibleModeCounts({ from: 3.5e9, to: 6.5e9 }, 1.8)).toEqual({ fewest: 21, most: 40 });
    expect(plausibleModeCounts({ from: 6.5e9, to: 3.5e9 }, 1.8)).toEqual({ fewest: 21, most: 40 });
  });
});

describe('coherence with an unknown number of modes', () => {
  it('is the table for 2, 3 and 5 modes at 150 mm, cavity 0.30 m', () => {
    // 0.70711, 0.33333 and, for four, 0 (computed: cos(π/4) cos(π/2)); five has 0.2
    const band = unknownModesCoherence({ fewest: 2, most: 5 }, 0.6, 0.15);
    expectNear(band.lowest, 0, 1e-15);
    expectNear(band.middle, (0.2 + 1 / 3) / 2, 1e-12);
    expectNear(band.highest, Math.SQRT1_2, 1e-12);
  });

  it('brackets the coherence of every count in between', () => {
    const counts = fc.tuple(fc.integer({ min: 1, max: 30 }), fc.integer({ min: 0, max: 30 }));
    fc.assert(
      fc.property(counts, between(-3, 3), ([fewest, more], path) => {
        const band = unknownModesCoherence({ fewest, most: fewest + more }, 0.6, path);
        const values = Array.from({ length: more + 1 }, (_, i) => equalModesCoherence(fewest + i, 0.6, path));
        expect(band.lowest).toBe(Math.min(...values));
        expect(band.highest).toBe(Math.max(...values));
        // mathjs takes numbers within 1e-12 of each other for equal when it sorts.
        expectNear(band.middle, median(values), 1e-11);
        expect(unknownModesCoherence({ fewest: fewest + more, most: fewest }, 0.6, path)).toEqual(band);
      }),
    );
  });

  it('is certain at equal paths and at a revival', () => {
    for (const path of [0, 0.7, -1.4]) expectNear(unknownModesCoherence({ fewest: 1, most: 9 }, 0.7, path).lowest, 1, 1e-12);
  });

  it('takes both ends of very many counts', () => {
    const band = unknownModesCoherence({ fewest: 1000, most: 5000 }, 600, 0.1);
    // On the central peak more modes mean less coherence.
    expect(band.highest).toBe(equalModesCoherence(1000, 600, 0.1));
    expect(band.lowest).toBeLessThanOrEqual(equalModesCoherence(5000, 600, 0.1));
  });

  it('knows counts from other numbers', () => {
    expect(areModeCounts({ fewest: 2, most: 4 })).toBe(true);
    for (const wrong of [{ fewest: 0, most: 4 }, { fewest: 2.5, most: 4 }, { fewest: 4, most: 2 }, { fewest: NaN, most: 4 }])
      expect(areModeCounts(wrong)).toBe(false);
  });
});

describe('gain widths', () => {
  /** Doppler width, Hz, from the constants of mathjs: (ν/c) √(8 ln 2 · kT/m) (Svelto, Principles of Lasers, ch. 2; from memory). */
  function doppler(wavelength: number, kelvin: number, atomicWeight: number): number {
    const k = boltzmann.toNumber('J/K');
    const mass = unit(atomicWeight, 'kg').toNumber('kg') * atomicMass.toNumber('kg');
    const c = speedOfLight.toNumber('m/s');
    return (Math.sqrt((8 * Math.LN2 * k * kelvin) / mass) / c) * (c / wavelength);
  }

  it.each([
    // Atomic weights: IUPAC. Temperatures: common practice for the discharge of each laser.
    ['He-Ne', 400, 20.18],
    ['argon ion', 3000, 39.95],
    ['argon ion', 5000, 39.95],
    ['krypton ion', 3000, 83.8],
    ['krypton ion', 5000, 83.8],
    ['He-Cd', 550, 112.41],
  ])('of %s lines allow for the Doppler width at %i K', (laser, kelvin, weight) => {
    const lines = gainLines.filter((line) => line.laser === laser);
    expect(lines.length).toBeGreaterThan(0);
    for (const line of lines) expect(isWithin(line.plausible, doppler(line.wavelength, kelvin, weight)), `${line.wavelength}`).toBe(true);
  });

  it('of the red He-Ne line is 1.5 GHz, and larger for shorter waves as the Doppler width is', () => {
    expect(gainLineAt(632.8e-9)?.width).toBeCloseTo(1.5e9, -6);
    const [green, red] = [gainLineAt(543.5e-9)?.width ?? NaN, gainLineAt(632.8e-9)?.width ?? NaN];
    expectNear(green / red, doppler(543.365e-9, 400, 20.18) / doppler(632.816e-9, 400, 20.18), 1e-6);
  });

  // Names of the lines in the trade, nm: common practice.
  it.each([
    ['He-Ne', [543.5, 594.1, 611.8, 632.8, 633]],
    ['argon ion', [457.9, 476.5, 488.0, 496.5, 501.7, 514.5]],
    ['krypton ion', [530.9, 568.2, 647.1, 676.4]],
    ['He-Cd', [441.6, 442]],
  ])('of %s are found by their nominal wavelengths', (laser, nominal) => {
    for (const nm of nominal) expect(gainLineAt(nm * 1e-9)?.laser, `${nm}`).toBe(laser);
    // Each name has a line of its own; 633 and 442 are second names.
    const lines = gainLines.filter((line) => line.laser === laser);
    expect(lines.length).toBe(nominal.filter((nm) => !Number.isInteger(nm) || nm === 488).length);
    // The name 543.5 nm of the green He-Ne line is its wavelength in vacuum (543.516 nm, CIPM list, from memory), 0.15 nm above that in air.
    for (const line of lines) expect(Math.min(...nominal.map((nm) => Math.abs(nm * 1e-9 - line.wavelength)))).toBeLessThan(0.15e-9);
  });

  it('are found by vacuum wavelengths, and not in between', () => {
    expect(gainLineAt(632.99e-9)?.laser).toBe('He-Ne');
    expect(gainLineAt(458.06e-9)?.laser).toBe('argon ion');
    for (const nm of [532, 660, 405, NaN]) expect(gainLineAt(nm * 1e-9)).toBeUndefined();
  });

  it('hold their own width, and say where they come from', () => {
    for (const line of gainLines) {
      expect(isWithin(line.plausible, line.width)).toBe(true);
      expect(line.source).toMatch(/common practice/);
      // As sure of every He-Ne line as of the red one: 1.4 to 1.6 around 1.5.
      if (line.laser === 'He-Ne') expectNear(line.plausible.from / line.width, 1.4 / 1.5, 1e-12);
    }
  });
});

it('a number of modes that is known is a range of one', () => {
  expect(areModeCounts({ fewest: 3, most: 3 })).toBe(true);
  expect(areModeCounts({ fewest: 4, most: 3 })).toBe(false);
});
