/** How figures are written: shares within all and nothing, lengths as finely as a string bears. */
import { describe, expect, test } from 'vitest';
import { LENGTH, NUMBER, parseUnit } from '../../server/model/units.ts';
import type { Cell } from '../../server/results/graph.ts';
import { bandOf, figure } from '../../server/results/shown.ts';

const cell = (name: string, dim: Cell['dim'], worked = true): Cell => ({ name, dim, ...(worked ? { rule: {} } : {}) }) as Cell;
const MM = parseUnit('mm')!;

describe('a share', () => {
  const share = (value: number, u: number): string => figure(cell('P1.object.brightness', NUMBER), value, u);
  test('that would be more than all, or less than nothing, is a band up to there', () => {
    expect(share(0.1, 0.1)).toBe('0 to 30 %');
    expect(share(0.9, 0.1)).toBe('70 to 100 %');
    expect(share(0.5, 0.4)).toBe('0 to 100 %');
  });
  test('that ends there is one give or take', () => { for (const value of [0.25, 0.5, 0.75]) expect(share(value, 0.125)).toBe(`${value * 100}% ± 25 points`); });
  test('that is sure is a number', () => { expect([share(1, 0), share(0, 0), share(0.41, 0)]).toEqual(['100 %', '0 %', '41 %']); });
  test('as a band', () => { expect(bandOf(cell('P1.object.brightness', NUMBER), 0.41, 0.71)).toBe('41 to 71 %'); });
});

describe('a length', () => {
  test('that a string would measure ends at a tenth of a millimetre, where nothing says how sure it is; another has five digits', () => {
    expect(figure(cell('P1.object.mismatch', LENGTH), 0.0123456, 0, MM)).toBe('12.3 mm');
    expect(figure(cell('P1.object.mismatch', LENGTH, false), 0.0123456, 0, MM)).toBe('12.346 mm');
    expect(figure(cell('red.coherence length', LENGTH), 0.0123456, 0, MM)).toBe('12.346 mm');
  });
});

test('of how fine fringes are three digits are told, of what is all but sure five', () => {
  expect(figure(cell('P1.object.fringes', LENGTH), 0.3456789e-6, 1e-11, parseUnit('µm'))).toBe('0.346 µm');
  expect(figure(cell('P1.light', NUMBER), 1.23456789, 1e-9)).toBe('1.2346');
});
