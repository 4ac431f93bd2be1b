/** Values as they are written for people: digits that the uncertainty leaves (JCGM 100:2008, 7.2.6: at most two of the uncertainty), in a unit that suits. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decimalsFor, millimetres, percent, percentBand, plain, readableUnit, show, showWithin } from '../../server/model/show.ts';
import { ANGLE, FREQUENCY, LENGTH, NUMBER, parseUnit, POWER, TEMPERATURE, TIME } from '../../server/model/units.ts';

const unit = (text: string): NonNullable<ReturnType<typeof parseUnit>> => parseUnit(text)!;

describe('with an uncertainty', () => {
  // The band is twice the standard uncertainty.
  test.each<[number, number, string]>([
    [1.4711, 0.0015, '1471 ± 3 mm'], [1.4711, 0.00115, '1471.1 ± 2.3 mm'], [0.0002, 0.0035, '0 ± 7 mm'], [-0.0002, 0.0035, '0 ± 7 mm'], [-0.0842, 0.0035, '−84 ± 7 mm'], [12.5, 0.005, '12.500 ± 0.010 m'], [0.35, 0.00005, '350.00 ± 0.10 mm'],
  ])('%d m, u %d m: %s', (value, u, expected) => { expect(show(value, LENGTH, u)).toBe(expected); });
  test('in the author\'s unit', () => {
    expect(show(1.524, LENGTH, 0.00254, unit('in'))).toBe('60.00 ± 0.20 in');
    // `±` with a per cent sign would be a share of the value: points are meant.
    expect(show(0.35, NUMBER, 0.025, unit('%'))).toBe('35% ± 5 points');
    expect(showWithin(0.8, NUMBER, 0.02, unit('%'))).toBe('80% ± 2 points');
    expect(show(293.15, TEMPERATURE, 1, unit('°C'))).toBe('20.0 ± 2.0 °C');
    expect(show(Math.PI / 4, ANGLE, Math.PI / 36, unit('°'))).toBe('45 ± 10°');
  });
  test('the band has one or two digits, and the value ends where it ends', () => {
    fc.assert(fc.property(fc.double({ min: -9, max: 9, noNaN: true }), fc.double({ min: -5, max: -0.5, noNaN: true }), (value, size) => {
      const u = 10 ** size;
      const text = show(value, NUMBER, u);
      const [, v, give] = /^(−?[\d.]+) ± ([\d.]+)$/.exec(text)!;
      expect(v!.split('.')[1]?.length ?? 0, text).toBe(give!.split('.')[1]?.length ?? 0);
      const digits = give!.replace('.', '').replace(/^0+/, '').length;
      expect(digits === 1 || digits === 2, text).toBe(true);
      // Nothing is rounded away that the band does not hide.
      expect(Math.abs(Number(v!.replace('−', '-')) - value)).toBeLessThanOrEqual(u);
      expect(Math.abs(Number(give!) / (2 * u) - 1)).toBeLessThan(0.2);
      expect(text).not.toMatch(/−0(?:\.0*)? /);
    }));
  });
  test('decimals for an uncertainty', () => { expect([0.5, 0.25, 0.05, 0.029, 3, 12, 0].map(decimalsFor)).toEqual([1, 2, 2, 3, 0, 0, 3]); });
});

describe('without', () => {
  test('lengths on a table are in millimetres, others in what suits their size', () => {
    expect([6.328e-7, 2e-6, 0.0002, 0.084, 1.4711, 9.99, 12.5, 0].map(v => show(v, LENGTH))).toEqual(['632.8 nm', '2 µm', '0.2 mm', '84 mm', '1471.1 mm', '9990 mm', '12.5 m', '0 mm']);
    expect([4.9965e8, 1.5e9, 4.736e14, 50].map(v => show(v, FREQUENCY))).toEqual(['499.65 MHz', '1.5 GHz', '473.6 THz', '50 Hz']);
    expect([0.002, 40, 90].map(v => show(v, TIME))).toEqual(['2 ms', '40 s', '1.5 min']);
    expect(show(0.012, POWER)).toBe('12 mW');
    expect(show(Math.PI / 3, ANGLE)).toBe('60°');
  });
  test('what is left of legs that cancel is no length', () => { expect(show(2.2e-16, LENGTH)).toBe('0 mm'); });
  test('numbers lose useless zeros and never their sense', () => {
    expect([0, 0.5, 1471.099, -84, 0.00012346, 999.96, 123456].map(v => plain(v))).toEqual(['0', '0.5', '1471', '−84', '0.0001235', '1000', '123456']);
    fc.assert(fc.property(fc.double({ min: -6, max: 9, noNaN: true }), fc.boolean(), (size, below) => {
      const value = (below ? -1 : 1) * 10 ** size;
      expect(Math.abs(Number(plain(value).replace('−', '-')) / value - 1)).toBeLessThan(0.0006);
    }));
  });
  test('millimetres and shares', () => {
    expect([0.084, 0.0002, -0.015, 0.01, 0.00999].map(millimetres)).toEqual(['84 mm', '0.2 mm', '−15 mm', '10 mm', '10 mm']);
    expect([0.5, 0.156, 0.019, 0, 1, 1e-6].map(percent)).toEqual(['50 %', '16 %', '1.9 %', '0 %', '100 %', '0 %']);
    expect(percentBand(0.16, 0.534)).toBe('16 to 53 %');
    expect(percentBand(0.501, 0.504)).toBe('50 %');
  });
  test('a unit is found for any size', () => {
    fc.assert(fc.property(fc.double({ min: -20, max: 20, noNaN: true }), fc.constantFrom(LENGTH, FREQUENCY, TIME, POWER, ANGLE, unit('nm/K').dim, unit('mm²·s').dim), (size, dim) => {
      const found = readableUnit(10 ** size, dim);
      expect(found?.dim).toBe(dim);
    }));
  });
});
