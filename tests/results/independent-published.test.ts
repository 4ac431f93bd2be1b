/** Worked examples and printed values that whole setups must reproduce. Sources stand beside each; "computed" is a formula of the source evaluated outside the program. */
import { describe, expect, test } from 'vitest';
import { resultNamed } from '../../server/results/names.ts';
import { variantsOf } from '../../server/results/variants.ts';
import { metered, MICRO } from './light-library.ts';
import { expectNear, read, setup, type Read } from './read.ts';

describe('JCGM 100:2008, H.2: resistance and reactance from voltage, current and phase that were read together, and are correlated (numbers from memory)', () => {
  // V = 4.9990 V, I = 19.6610 mA, φ = 1.04446 rad; u 0.0032 V, 0.0095 mA, 0.00075 rad; r(V, I) = −0.36, r(V, φ) = 0.86, r(I, φ) = −0.65.
  // Correlated numbers as sums of independent ones, by the root of their correlations: 0.36² + 0.93295² = 1; 0.86² + 0.36487² + 0.35680² = 1.
  const [c21, c31] = [-0.36, 0.86];
  const c22 = Math.sqrt(1 - c21 ** 2);
  const c32 = (-0.65 - c21 * c31) / c22;
  const c33 = Math.sqrt(1 - c31 ** 2 - c32 ** 2);
  const r = read(setup(
    'let z1 = 0 ± 1 std', 'let z2 = 0 ± 1 std', 'let z3 = 0 ± 1 std', 'let voltage = 4.999 + 0.0032 * z1', `let current = 0.019661 + 0.0000095 * (${c21} * z1 + ${c22} * z2)`,
    `let phase = (1.04446 + 0.00075 * (${c31} * z1 + ${c32} * z2 + ${c33} * z3)) rad`, 'let resistance = voltage / current * cos(phase)', 'let reactance = voltage / current * sin(phase)', 'let impedance = voltage / current',
  ));
  const correlation = (a: string, b: string): number => {
    const [ga, gb] = [a, b].map(n => r.results.graph.gradient(r.cell(n))) as [ReadonlyMap<unknown, number>, ReadonlyMap<unknown, number>];
    return [...ga].reduce((s, [input, slope]) => s + slope * (gb.get(input) ?? 0) * (['z1', 'z2', 'z3'].some(z => r.cell(z) === input) ? 1 : 0), 0) / (r.u(a) * r.u(b));
  };
  test.each([['resistance', '127.732', '0.071'], ['reactance', '219.847', '0.295'], ['impedance', '254.260', '0.236']])('%s is %s Ω, u = %s Ω (table H.4)', (name, value, u) => {
    expect(r.value(name).toFixed(3)).toBe(value);
    // The correlations are printed with two digits, so that the last digit of u is known to one or two.
    expectNear(r.u(name), Number(u), 0.0025);
  });
  test('and they are correlated as printed: −0.588, −0.485, 0.993', () => {
    expectNear(correlation('resistance', 'reactance'), -0.588, 0.02);
    expectNear(correlation('resistance', 'impedance'), -0.485, 0.02);
    expectNear(correlation('reactance', 'impedance'), 0.993, 0.002);
  });
});

describe('tapes: ±(a + bL), L in metres rounded up (2014/32/EU, annex X, chapter I, table 1), as a reading that says no more', () => {
  // 10 m: 1.1, 2.3, 4.6 mm as printed in the directive; 2 m and 3 m by its formula.
  test.each([['I', 10, 1.1], ['II', 10, 2.3], ['III', 10, 4.6], ['I', 2, 0.3], ['II', 2, 0.7], ['III', 2, 1.4], ['I', 3, 0.4], ['II', 3, 0.9], ['III', 3, 1.8], ['II', 1.999, 0.7], ['II', 2.001, 0.9]] as const)('class %s over %d m: %d mm', (grade, metres, limit) => {
    const r = read(setup('laser red', 'mirror M1', 'string tape {', `  class: ${grade}`, '}', 'beam raw from red', `  -> M1: ${metres} m`, `measured red -> M1: ${metres} m by tape`));
    expectNear(r.u('raw.1.length') * 1000, limit / Math.sqrt(3), 1e-9);
  });
});

describe('published beam ratios (University of Bergen, thesis 404001, 1996)', () => {
  // 12.3: 1.8 and 0.8 µW, 2.25:1; 12.6 or next to it, a rainbow hologram: 0.38 and 0.14 µW, 2.714:1.
  test.each([['1.8', '0.8', 2.25], ['0.38', '0.14', 2.714]])('%s to %s µW are %d:1', (reference, object, ratio) => {
    expectNear(metered([`measured reference at P1: ${reference} µW by m`, `measured object at P1: ${object} µW by m`]).value('beam ratio'), ratio, 5e-4);
  });
});

describe('ratio and split: ρ = A_r / (A_r + K A_o) sends K:1 to the plate (conservation of energy; computed)', () => {
  // For K = 4, and 10 % and 2 % of the power that enters each arm arriving: ρ = 5/9.
  test('K = 4 from 55.5556 %', () => {
    const r = metered(['measured reference at P1: 10 µW/cm² by m', 'measured object at P1: 2 µW/cm² by m', 'variant "solved" {', '  S1.reflects: 55.5555555555556%', '}'], { laser: ['power: 2 mW'], splitter: ['reflects: 50%', 'loss: 0%'] });
    // At one half both arms get 1 mW, of which 10 and 2 µW/cm² arrive.
    expectNear(r.value('beam ratio'), 5, 1e-12);
    expectNear(variantValue(r, 'beam ratio'), 4, 1e-9);
  });
});

describe('times', () => {
  // 60 s, p = 0.9: 60^(1/0.9) = 94.5635; p = 0.85: 123.578; 10 s, p = 0.9: 12.9155; 300 s: 565.40 (Schwarzschild's law; computed)
  test.each([[60, 0.9, 94.5635160089543], [60, 0.85, 123.578], [10, 0.9, 12.9155], [300, 0.9, 565.40]])('%d s with an exponent of %d become %d s', (time, p, expected) => {
    const r = metered(['measured reference at P1: 0.5 µW/cm² by m', 'measured object at P1: 0.5 µW/cm² by m'], { plate: [`sensitivity: ${time} µJ/cm²`, `reciprocity: ${p}`] });
    expectNear(r.value('exposure'), expected, 1e-5 * expected);
  });
  // |sin πm/πm|², m fringes: 0.05, 0.1, 0.25, 0.5 of a fringe leave 0.995893, 0.983632, 0.900316, 0.636620 of the contrast (computed)
  test.each([[0.05, 0.9958927352435614], [0.1, 0.983631643083466], [0.25, 0.9003163161571061], [0.5, 0.6366197723675814], [1, 0]])('%d of a fringe in a minute of exposure', (fringes, contrast) => {
    expectNear(metered([`measured drift at P1: ${fringes} fringes/min`], { facts: ['exposure: 60 s'] }).value('drift brightness'), contrast ** 2, 1e-12);
  });
});

describe('brightness of setups of a known mismatch', () => {
  const arms = (laser: readonly string[], mismatch: number): Read => read(setup('laser red {', ...laser.map(l => `  ${l}`), '}', 'splitter S1', 'object whelk', 'plate P1', 'beam raw from red', '  -> S1', 'beam reference from S1 through', '  -> P1: 1 m', 'beam object from S1 reflected', `  -> whelk: ${700 + mismatch} mm`, '  -> P1: 300 mm'));
  // N equal modes of a tube of 0.30 m: |sin Nπx / (N sin πx)|, x = δ/0.6 m (computed by the closed form and by the sum over modes)
  test.each([[2, 100, 0.8660254038], [2, 150, 0.7071067812], [2, 600, 1], [3, 50, 0.9106836025], [3, 150, 1 / 3], [3, 300, 1 / 3], [5, 50, 0.7464101615], [5, 100, 0.2], [5, 300, 0.2], [5, 600, 1]])('%d modes, %d mm: contrast %d', (modes, mismatch, contrast) => {
    expectNear(arms(['tube length: 300 mm', `modes: ${modes}`], mismatch).value('brightness'), contrast ** 2, 1e-9);
  });
  // x = δ·Δν/c; 100 MHz over 0.1, 0.25 and 1 of c/Δν = 2.99792458 m (Goodman, Statistical Optics, 5.1.3, from memory)
  test.each([['gaussian', 0.25, 0.8005296497422069], ['gaussian', 1, 0.028447149087636497], ['lorentzian', 0.1, 0.7304026910486456], ['lorentzian', 1, 0.04321391826377226]])('a %s line, %d of c/Δν: contrast %d', (shape, x, contrast) => {
    expectNear(arms(['linewidth: 100 MHz', `line shape: ${shape}`], x * 2997.92458).value('brightness'), contrast ** 2, 1e-9);
  });
  // c/2L: 499.654 MHz for 0.30 m. Half of a Gaussian line's contrast at 0.441271 c/Δν, 1/e of a Lorentzian line's at c/(π Δν).
  test('spacing of modes, and coherence lengths of a line', () => {
    expectNear(arms(['tube length: 300 mm', 'modes: 2'], 0).value('red.mode spacing'), 499654096.6666667, 1);
    expectNear(arms(['linewidth: 10 MHz'], 0).value('red.coherence length'), 29.9792458 * 0.4412712003053032, 1e-6);
    expectNear(arms(['coherence length: 9.542690318473885 m', 'coherence contrast: 36.787944117144235%', 'line shape: lorentzian'], 0).value('red.linewidth'), 1e7, 1);
  });
  // z (1 + cos θ): 50 mm at 45° are 85.355 mm, squarely 100 mm (geometry; computed)
  test.each([[45, 85.35533905932738], [0, 100]])('50 mm of depth lit at %d°: %d mm of path', (angle, path) => {
    const r = read(setup('laser red {', '  coherence length: 5 m', '}', 'splitter S1', 'object whelk {', '  depth: 50 mm', `  lit at: ${angle}°`, '}', 'plate P1', 'beam raw from red', '  -> S1', 'beam reference from S1 through', '  -> P1: 1 m', 'beam object from S1 reflected', '  -> whelk: 700 mm', '  -> P1: 300 mm'));
    expectNear(r.mm('P1.object.far.mismatch') - r.mm('P1.object.near.mismatch'), path, 1e-9);
  });
});

test('4 µW/cm² facing a beam at 56° are 2.23677 in the plane of the plate, and 80 µJ/cm² take 35.766 s of it (published inputs; computed)', () => {
  // With next to no object light the exposure is that of the reference alone.
  const r = metered(['measured reference at P1 facing beam: 4 µW/cm² by m'], { plate: ['reference angle: 56°', 'sensitivity: 80 µJ/cm²'], facts: ['beam ratio: 1000000:1'] });
  expectNear(r.value('P1.reference.light') / MICRO, 2.236771613882987, 1e-9);
  expectNear(r.value('exposure'), 35.766, 1e-3);
});

function variantValue(r: Read, name: string): number {
  const { results } = variantsOf(r.results)[0]!;
  return results.graph.value(resultNamed(results.graph, results.aliases, name)!)!;
}
