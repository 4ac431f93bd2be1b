/**
 * Worked examples of JCGM 100:2008, "Guide to the expression of uncertainty in measurement" (GUM), and of its supplement JCGM 101:2008, written
 * as `let` lines. Formulas and input values are those of the documents, numbers from memory where it says so; what they lead to is worked out here.
 */
import { describe, expect, test } from 'vitest';
import { sample } from '../../server/results/sampling.ts';
import { expectNear, read, setup } from './read.ts';

const squares = (...x: number[]): number => Math.sqrt(x.reduce((s, v) => s + v ** 2, 0));

describe('GUM H.1, calibration of an end gauge by comparison (input values from memory)', () => {
  const gauge = read(setup(
    'let standard = 50.000623 mm ± 25 nm std',
    'let difference = 215 nm ± 9.7 nm std',
    'let expansion = 11.5e-6 K^-1 ± 2e-6 K^-1',
    'let expansions-differ = 0 K^-1 ± 1e-6 K^-1',
    'let temperature = -0.1 K ± 0.41 K std',
    'let temperatures-differ = 0 K ± 0.05 K',
    'let gauge = standard + difference - standard * (expansions-differ * temperature + expansion * temperatures-differ)',
  ));
  // l = l_S + d − l_S (δα·θ + α_S·δθ), eq. H.2
  const [ls, us, ud, alpha, theta] = [50.000623e-3, 25e-9, 9.7e-9, 11.5e-6, -0.1];
  const byExpansions = ls * theta * (1e-6 / Math.sqrt(3));
  const byTemperatures = ls * alpha * (0.05 / Math.sqrt(3));

  test('the length of the gauge', () => { expect(gauge.mm('gauge').toFixed(6)).toBe('50.000838'); });
  test('its standard uncertainty to first order, 32 nm', () => {
    const u = squares(us, ud, byExpansions, byTemperatures);
    expect((u * 1e9).toFixed(0)).toBe('32');
    expectNear(gauge.u('gauge'), u, u * 1e-9);
  });
  test('each term of the sum, and none for what is only multiplied by zero', () => {
    const slopes = gauge.results.graph.gradient(gauge.cell('gauge'));
    const by = (name: string): number => slopes.get(gauge.cell(name))!;
    expectNear(by('standard'), 1, 1e-15);
    expectNear(by('difference'), 1, 1e-15);
    expectNear(by('expansions-differ'), -ls * theta, 1e-15);
    expectNear(by('temperatures-differ'), -ls * alpha, 1e-18);
    expect(Math.abs(by('expansion'))).toBe(0);
    expect(Math.abs(by('temperature'))).toBe(0);
  });
  test('drawn, it has the second-order terms of H.1.7 as well: 34 nm', () => {
    // u(δα)·u(θ) and u(α_S)·u(δθ), each times l_S
    const second = squares(ls * (1e-6 / Math.sqrt(3)) * 0.41, ls * (2e-6 / Math.sqrt(3)) * (0.05 / Math.sqrt(3)));
    const u = squares(us, ud, byExpansions, byTemperatures, second);
    expect((u * 1e9).toFixed(0)).toBe('34');
    const band = sample(gauge.results.graph, gauge.cell('gauge'))!;
    // The standard deviation of n normal draws is known to 1/√(2n).
    expectNear(band.std, u, (4 * u) / Math.sqrt(2 * band.draws));
    expectNear(band.mean, 50.000838e-3, (4 * u) / Math.sqrt(band.draws));
  });
  test('what makes it unsure is the standard first, then the temperatures', () => {
    const ranking = gauge.results.graph.ranking(gauge.cell('gauge'));
    expect(ranking.slice(0, 4).map(r => r.input.name)).toEqual(['standard', 'temperatures-differ', 'difference', 'expansions-differ']);
    const total = us ** 2 + ud ** 2 + byExpansions ** 2 + byTemperatures ** 2;
    [us, byTemperatures, ud, byExpansions].forEach((x, i) => { expectNear(ranking[i]!.share, x ** 2 / total, 1e-9); });
  });
});

describe('GUM 5.1, products and quotients', () => {
  test('5.1.3: the power that a resistor takes up, P = V²/(R₀(1 + α(t − t₀))), has the derivatives printed there', () => {
    const { value, cell, results: { graph } } = read(setup('let v = 12 ± 0.1 std', 'let r = 47 ± 0.5 std', 'let a = 0.004 ± 0.0001 std', 'let t = 35 ± 2 std', 'let p = v * v / (r * (1 + a * (t - 20)))'));
    const slopes = graph.gradient(cell('p'));
    const [P, warm] = [value('p'), 1 + 0.004 * 15];
    expectNear(P, 144 / (47 * warm), 1e-12);
    for (const [name, slope] of [['v', (2 * P) / 12], ['r', -P / 47], ['a', (-P * 15) / warm], ['t', (-P * 0.004) / warm]] as const) expectNear(slopes.get(cell(name))!, slope, 1e-12 * Math.abs(slope), name);
  });
  test('5.1.6: the relative variance of a product of powers is the sum of (p·u(x)/x)²', () => {
    const { value, u } = read(setup('let a = 3 ± 1% std', 'let b = 5 ± 2% std', 'let c = 7 ± 3% std', 'let y = a * a * b / (c * c * c)', 'let z = sqrt(a) / b'));
    expectNear(u('y') / value('y'), squares(2 * 0.01, 0.02, 3 * 0.03), 1e-12);
    expectNear(u('z') / value('z'), squares(0.01 / 2, 0.02), 1e-12);
  });
  test('5.2.2, example: ten resistors compared with one standard, 100 mΩ sure: ten in series are 1 Ω sure, not 0.32 Ω (from memory)', () => {
    const shared = read(setup('let standard = 1000 ± 0.1 std', `let series = ${Array.from({ length: 10 }, () => 'standard').join(' + ')}`));
    expectNear(shared.u('series'), 1, 1e-12);
    const apart = read(setup(...Array.from({ length: 10 }, (_, i) => `let r${i} = 1000 ± 0.1 std`), `let series = ${Array.from({ length: 10 }, (_, i) => `r${i}`).join(' + ')}`));
    expect(apart.u('series').toFixed(2)).toBe('0.32');
  });
});

describe('GUM, distributions that are only known by their bounds', () => {
  const u = (text: string): number => read(setup(`let it = ${text}`)).u('it');
  test('4.3.7: rectangular, a/√3', () => { expectNear(u('100 mm ± 3 mm'), 3e-3 / Math.sqrt(3), 1e-15); });
  test('4.3.9: two alike make a triangle of half-width a, a/√6', () => { expectNear(u('(100 mm ± 1.5 mm) + (100 mm ± 1.5 mm)'), 3e-3 / Math.sqrt(6), 1e-15); });
  test('F.2.2.1: a display of steps δ, half a step either way, 0.29 δ', () => { expect((u('100 mm ± 0.5 mm') * 1e3).toFixed(2)).toBe('0.29'); });
});

describe('JCGM 101:2008, 9.2: the sum of four rectangular numbers', () => {
  /** Half-width of a rectangular number of standard uncertainty s. */
  const four = (...s: number[]): ReturnType<typeof read> => read(setup(...s.map((x, i) => `let x${i} = 0 mm ± ${x * Math.sqrt(3)} mm`), 'let y = x0 + x1 + x2 + x3', 'let bent = abs(100 mm + y)'));
  /** How unsure the end of a 95 % interval of n draws is, for a density there. */
  const endUnsure = (draws: number, density: number): number => Math.sqrt((0.025 * 0.975) / draws) / density;

  test('9.2.3: of one size, the interval is ±2√3(2 − (3/5)^¼) = ±3.88', () => {
    const { results: { graph }, cell, u } = four(1, 1, 1, 1);
    expectNear(u('y'), 2e-3, 1e-15);
    const end = 2 * Math.sqrt(3) * (2 - 0.6 ** 0.25);
    expect(end.toFixed(2)).toBe('3.88');
    for (const [name, middle] of [['y', 0], ['bent', 100]] as const) {
      const band = sample(graph, cell(name))!;
      // Density of the sum of four at s = 0.6^¼ from its end, in units of their width 2√3: s³/6.
      const allowed = 4 * endUnsure(band.draws, 0.6 ** 0.75 / 6 / (2 * Math.sqrt(3)));
      expectNear(band.low * 1e3, middle - end, allowed, name);
      expectNear(band.high * 1e3, middle + end, allowed, name);
    }
  });
  test('9.2.4: where one dwarfs the others, the interval is ±17.0, and not the ±19.9 of a normal number', () => {
    const { results: { graph }, cell, u } = four(1, 1, 1, 10);
    expect((u('y') * 1e3).toFixed(1)).toBe('10.1');
    for (const [name, middle] of [['y', 0], ['bent', 100]] as const) {
      const band = sample(graph, cell(name))!;
      // A rectangle of half-width 10√3, blurred: 1/(20√3) inside. At three standard errors 17.0 and 19.9 are well apart.
      const allowed = 3 * endUnsure(band.draws, 1 / (20 * Math.sqrt(3)));
      expect(allowed).toBeLessThan((19.9 - 17) / 2);
      expectNear(band.low * 1e3, middle - 17, allowed, name);
      expectNear(band.high * 1e3, middle + 17, allowed, name);
    }
  });
});
