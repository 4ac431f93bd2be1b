/** Light in the eye against published limits and worked examples. None of it makes a beam safe. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as eyes from '../../server/optics/eyes.ts';
import { AVERSION_TIME, classLimits, eyeLimit, eyePowerLimit, PUPIL } from '../../server/optics/eyes.ts';
import { between, expectNear, expectPrinted, integral, publishedValue } from './outside.ts';

const NM = 1e-9;
const limit = (nm: number, time: number): number => eyeLimit(nm * NM, time) ?? NaN;
/** The figure, or NaN, which equals nothing, where there is none. */
const figure = <A extends readonly number[]>(f: (...a: A) => number | undefined) => (...a: A): number => f(...a) ?? NaN;
const cardLight = figure(eyes.cardLight);
const hazardDistance = figure(eyes.hazardDistance);
const radiusAtLimit = figure(eyes.radiusAtLimit);
const spreadBeamLight = figure(eyes.spreadBeamLight);
const power = (nm: number, time: number): number => eyePowerLimit(nm * NM, time) ?? NaN;

describe('the limit of a glance, 0.25 s', () => {
  it('reproduces the published value', () => {
    const value = publishedValue('mpe-025');
    value.check(limit(632.8, value.input('t_s')));
    expect(AVERSION_TIME).toBe(0.25);
  });

  it('in the words of others', () => {
    // ANSI Z136.1 in a list on health physics (2000): 1.8 t^(3/4) = 6.36e-4 J/cm², 2.5e-3 W/cm². 18 · 0.25^0.75 = 6.36396 J/m², over 0.25 s 25.4558 W/m².
    expectPrinted(limit(632.8, 0.25) * 0.25, '6.36396');
    expectPrinted(limit(632.8, 0.25), '25.4558');
    expectPrinted((limit(632.8, 0.25) * 0.25) / 10, '0.636'); // 1 J/m² is 10⁻⁴ J/cm²: 10⁻³ J/cm²
    expectPrinted(limit(632.8, 0.25) / 10, '2.5');
    // The same list: 2 mW over the 0.385 cm² of a wide pupil is 5.19e-3 W/cm², exactly 5.1948 with 0.385: above the limit.
    expectPrinted(2 / 0.385, '5.1948');
    expect(2e-3 / ((Math.PI * PUPIL ** 2) / 4)).toBeGreaterThan(limit(632.8, 0.25));
  });

  it('through a wide pupil is about a milliwatt', () => {
    // Area of 7 mm: π · 12.25 mm² = 38.485 mm²; 25.4558 W/m² · 3.8485e-5 m² = 0.97966 mW; class 2 says 1 mW.
    expectPrinted(((Math.PI * PUPIL ** 2) / 4) * 1e6, '38.485');
    expectPrinted(power(632.8, 0.25) * 1e3, '0.97966');
    expectPrinted(power(632.8, 0.25) * 1e3, '1');
  });
});

describe('the limit of a long stare', () => {
  it('in green and red is 10 W/m²', () => {
    expect(limit(532, 10)).toBe(10);
    expect(limit(632.8, 30e3)).toBe(10);
    // 10 W/m² · 3.8485e-5 m² = 0.38485 mW, class 1 from 500 nm on: 0.39 mW. For heat 18 · 10^0.75 / 10 = 10.12 just before 10 s.
    expectPrinted(power(632.8, 1000) * 1e3, '0.38485');
    expectPrinted(limit(632.8, 10 - 1e-9), '10.12');
  });

  it('in blue is less, and falls until 100 s', () => {
    // C = 1 to 450 nm: 100/t from 10 to 100 s, then 1 W/m², of which a wide pupil takes 0.0385 mW, class 1 there 0.039 mW.
    for (const nm of [400, 441.6, 450]) {
      expect(limit(nm, 100)).toBe(1);
      expect(limit(nm, 105)).toBe(1);
      expect(limit(nm, 30e3)).toBe(1);
      expectNear(limit(nm, 50), 2, 1e-12);
      expectPrinted(power(nm, 1e4) * 1e3, '0.0385');
    }
    // 10^(0.02 · 7.9) = 1.43880 at 457.9 nm, 10^(0.02 · 38) = 5.75440 at 488 nm.
    expectPrinted(limit(457.9, 1000), '1.43880');
    expectPrinted(limit(488, 1000), '5.75440');
  });

  it('in blue takes over from that for heat at T₁', () => {
    // T₁ = 10 s to 450 nm, 10 · 10^(0.02 (λ − 450)) s to 500 nm, 100 s above (Norwegian regulation that transposes 2006/25/EC).
    for (const [nm, from] of [[430, 10], [450, 10], [475, 31.6228], [488, 57.544], [500, 100]] as const) {
      expectNear(limit(nm, Math.max(10, from * 0.999)), 10, 1e-9);
      if (nm < 500) expect(limit(nm, from * 1.01)).toBeLessThan(10);
      expectNear(limit(nm, from), 10, 1e-4);
    }
    for (const nm of [501, 532, 600, 700]) expect(limit(nm, 1e4)).toBe(10);
  });

  it('never rises with time nor falls with wavelength', () => {
    fc.assert(fc.property(between(400, 700), between(-5, 4.4), between(0, 50), between(0, 1), (nm, power10, longer, further) => {
      const time = 10 ** power10;
      expect(limit(nm, Math.min(30e3, time + longer))).toBeLessThanOrEqual(limit(nm, time));
      expect(limit(nm + further * (700 - nm), time)).toBeGreaterThanOrEqual(limit(nm, time));
    }));
  });
});

describe('there is no figure', () => {
  it.each([[399.9, 0.25], [700.1, 0.25], [1064, 0.25], [808, 100], [NaN, 0.25], [632.8, NaN], [632.8, 1e-6], [632.8, 1e5], [632.8, Infinity], [0, 1], [632.8, -1]])('for %f nm and %f s', (nm, time) => {
    expect(eyeLimit(nm * NM, time)).toBeUndefined();
    expect(eyePowerLimit(nm * NM, time)).toBeUndefined();
  });
  it('of light and distances for numbers that cannot be: none is taken for a smaller hazard', () => {
    for (const P of [-1, 1e7, NaN, Infinity]) for (const f of [eyes.hazardDistance(P, 25, 0, 1e-3), eyes.spreadBeamLight(P, 0.05), eyes.radiusAtLimit(P, 10), eyes.cardLight(P, 0.9, 0.5)]) expect(f).toBeUndefined();
    for (const phi of [0, -1, 1e-9, 4, NaN]) expect(eyes.hazardDistance(1, 25, 0, phi)).toBeUndefined();
    for (const E of [0, NaN, Infinity]) expect([eyes.hazardDistance(1, E, 0, 1e-3), eyes.radiusAtLimit(1, E)]).toEqual([undefined, undefined]);
    expect([eyes.hazardDistance(1, 25, -1, 1e-3), eyes.spreadBeamLight(1, 0), eyes.cardLight(1, 1.1, 1), eyes.cardLight(1, 1, 0), eyes.cardLight(1, 1, 1, 2)]).toEqual([undefined, undefined, undefined, undefined, undefined]);
  });
  it.each([355, 399.9, 700.1, 808, 1064, NaN, Infinity])('of classes for %f nm', nm => expect(classLimits(nm * NM)).toBeUndefined());
});

describe('classes', () => {
  // Class 1 in µW at 400 to 450, 457.9, 488 and from 500 nm on: 39, 39 · 1.43880 = 56.11, 39 · 5.75440 = 224.4, 390.
  it.each([[400, '39'], [441.6, '39'], [450, '39'], [457.9, '56.11'], [488, '224.4'], [500, '390'], [532, '390'], [632.8, '390'], [700, '390']] as const)('at %f nm: class 1 to %s µW', (nm, printed) => expectPrinted((classLimits(nm * NM)?.class1 ?? NaN) * 1e6, printed));

  it('2, 3R and 3B', () => {
    // In several published guides: class 2 to 1 mW, 3R to five times that, 3B to 500 mW.
    expect(classLimits(532 * NM)).toEqual({ class1: 390e-6, class2: 1e-3, class3R: 5e-3, class3B: 0.5 });
  });
});

describe('the distance within which a limit is exceeded', () => {
  it('reproduces 5 mW, 1 mrad', () => {
    const value = publishedValue('nohd-5mW');
    value.check(hazardDistance(value.input('P_W'), value.input('E'), value.input('a_m'), value.input('phi_rad')));
    value.check(hazardDistance(value.input('P_W'), limit(632.8, 0.25), value.input('a_m'), value.input('phi_rad')));
  });

  // Power in mW, spread in mrad, width in mm, limit in W/m²; computed outside by (√(4P/πE) − a)/φ, in m.
  it.each([[5, 1, 0.8, limit(632.8, 0.25), '15.014'], [5, 1, 0.8, 10, '24.431'], [20, 1.2, 0.7, limit(632.8, 0.25), '25.774'], [100, 1, 1, limit(532, 0.25), '69.723']] as const)(
    '%f mW, %f mrad, %f mm at the exit, %f W/m²', (mW, mrad, mm, most, printed) => expectPrinted(hazardDistance(mW * 1e-3, most, mm * 1e-3, mrad * 1e-3), printed));

  it('after a lens is short, and nothing where the beam leaves below the limit', () => {
    // 5 mW, 50 mrad, 0.8 mm: (15.8142 mm − 0.8 mm) / 0.05 = 0.300 m.
    expectPrinted(hazardDistance(5e-3, limit(632.8, 0.25), 0.8e-3, 0.05), '0.300');
    expect(hazardDistance(1e-6, 25, 10e-3, 1e-3)).toBe(0);
  });

  it('of a watt is the published 225 m only with rounded figures', () => {
    // A published "1 W, 1 mrad: 225 m" takes 25 W/m² and no width: 225.68 m; with 25.456 W/m² it is 223.65 m.
    expectPrinted(hazardDistance(1, 25, 0, 1e-3), '225.68');
    expectPrinted(hazardDistance(1, limit(532, 0.25), 0, 1e-3), '223.65');
  });

  it('is where the width of the beam spreads the power to the limit', () => {
    fc.assert(fc.property(between(1e-3, 1), between(1, 30), between(1e-4, 1e-3), between(1e-4, 1e-2), (P, E, a, phi) => {
      const width = a + phi * hazardDistance(P, E, a, phi);
      expectNear(P / ((Math.PI * width ** 2) / 4) / E, 1, 1e-9);
    }));
  });
});

describe('spread light', () => {
  it('of 100 mW is at 10 W/m² when its radius is 79.79 mm', () => {
    expectPrinted(radiusAtLimit(0.1, limit(532, 1000)) * 1e3, '79.79');
    expectNear(spreadBeamLight(0.1, 79.79e-3), 10, 0.002);
    // 2 · 1 mW / (π · 50² mm²) = 0.254648 W/m² (by hand)
    expectPrinted(spreadBeamLight(1e-3, 50e-3), '0.254648');
  });

  it('holds all the power of the beam', () => {
    // ∫ E₀ exp(−2r²/w²) 2πr dr = P
    fc.assert(fc.property(between(1e-3, 1), between(0.01, 1), (P, w) => {
      const all = integral(r => spreadBeamLight(P, w) * Math.exp((-2 * r ** 2) / w ** 2) * 2 * Math.PI * r, 0, 5 * w, 2000);
      expectNear(all / P, 1, 1e-9);
      expectNear(spreadBeamLight(P, radiusAtLimit(P, 10)), 10, 1e-9);
    }));
  });

  it('from a dull card', () => {
    // 100 mW, 90 %, 0.5 m: 0.09 / (π · 0.25) = 0.1146 W/m².
    expectPrinted(cardLight(0.1, 0.9, 0.5), '0.1146');
    // At 60° half of it.
    expectNear(cardLight(0.1, 0.9, 0.5, Math.PI / 3), cardLight(0.1, 0.9, 0.5) / 2, 1e-12);
    fc.assert(fc.property(between(1e-3, 1), between(0.1, 1), between(0.1, 5), (P, R, r) => {
      // over the half-space all that the card sends back: ∫ E(θ) r² 2π sin θ dθ = R P
      expectNear(integral(t => cardLight(P, R, r, t) * r ** 2 * 2 * Math.PI * Math.sin(t), 0, Math.PI / 2, 200) / (R * P), 1, 1e-8);
    }));
  });
});

it('numbers outside all domains give finite results or none', () => {
  const any = fc.oneof(fc.double(), fc.constantFrom(0, -0, 1, 500e-9, 1e-300, 1e300, Infinity, -Infinity, NaN));
  fc.assert(fc.property(any, any, any, any, (a, b, c, d) => {
    const all = [eyeLimit(a, b), eyePowerLimit(a, b), ...Object.values(classLimits(a) ?? {}) as number[], eyes.hazardDistance(a, b, c, d), eyes.spreadBeamLight(a, b), eyes.radiusAtLimit(a, b), eyes.cardLight(a, b, c, d)];
    expect(all.every(value => value === undefined || Number.isFinite(value)), JSON.stringify(all)).toBe(true);
  }), { numRuns: 1000 });
});
