/** What stands behind a number: its unit, and how sure it is. The meanings are those of grammar/language.md; the arithmetic stands in the comments. */
import { describe, expect, test } from 'vitest';
import { standardUncertainty } from '../../server/model/quantity.ts';
import { ANGLE, LENGTH, NUMBER, TEMPERATURE } from '../../server/model/units.ts';
import { dataOf, ends, found, letValue, quantity, sizes } from './check.ts';

const closeTo = (actual: readonly number[], expected: readonly number[]): void => {
  expect(actual.length).toBe(expected.length);
  actual.forEach((a, i) => { expect(a).toBeCloseTo(expected[i]!, 12); });
};

describe('±', () => {
  test.each([
    ['750 mm ± 2 mm', [0.748, 0.752]],
    ['750 ± 2 mm', [0.748, 0.752]],
    ['(750 ± 2) mm', [0.748, 0.752]],
    ['(750 mm ± 2 mm)', [0.748, 0.752]],
    ['75 cm ± 2 mm', [0.748, 0.752]],
    ['30 in ± 0.5 in', [0.7493, 0.7747]], // 29.5 × 25.4 and 30.5 × 25.4 mm
    ['30 ± 0.5 in', [0.7493, 0.7747]],
    ['750 mm +/- 2 mm', [0.748, 0.752]],
    ['-10 mm ± 1 mm', [-0.011, -0.009]],
    ['85% ± 2%', [0.833, 0.867]], // of 85: 0.02 × 85 = 1.7
    ['85% ± 2 points', [0.83, 0.87]],
    ['(85 ± 2%) %', [0.833, 0.867]],
    ['200 mm ± 10%', [0.18, 0.22]],
    ['-200 mm ± 10%', [-0.22, -0.18]],
    ['1 ± 5%', [0.95, 1.05]],
    ['20 °C ± 2 K', [291.15, 295.15]], // 20 + 273.15
    ['45° ± 30°', [Math.PI / 12, (5 * Math.PI) / 12]], // 15° and 75°
  ] as const)('%s leaves all values between its ends', (text, expected) => { closeTo(ends(text), expected); });

  test('×÷ is a factor either way: 30 % ×÷ 3 is 10 % to 90 %', () => {
    closeTo(ends('30% ×÷ 3'), [0.1, 0.9]);
    closeTo(ends('30% */ 3'), [0.1, 0.9]);
    closeTo(ends('300 mm ×÷ 1.5'), [0.2, 0.45]);
    closeTo(ends('5 mm ×÷ 1'), [0.005, 0.005]);
  });
  test('std states the standard uncertainty itself', () => {
    expect(quantity('752 mm ± 2 mm std').spread).toEqual({ kind: 'std', amount: 0.002 });
    expect(quantity('752 ± 2 mm std').spread).toEqual({ kind: 'std', amount: 0.002 });
    expect(quantity('200 mm ± 10% std').spread).toMatchObject({ kind: 'std' });
    expect((quantity('200 mm ± 10% std').spread as { amount: number }).amount).toBeCloseTo(0.02, 15);
  });
  test('a number without ± is taken as written', () => {
    expect(quantity('750 mm')).not.toHaveProperty('spread');
    expect(standardUncertainty(0.75, undefined)).toBe(0);
  });
});

describe('the standard uncertainty', () => {
  test('of a half-width a is a/√3 (JCGM 100:2008, 4.3.7)', () => {
    // Its first example, from memory: the thermal expansion of copper, known to lie in 16.52 ± 0.40 × 10⁻⁶ /°C, has 0.23 × 10⁻⁶ /°C.
    expect((standardUncertainty(16.52e-6, { kind: 'within', amount: 0.4e-6 }) * 1e6).toFixed(2)).toBe('0.23');
    expect(standardUncertainty(1, { kind: 'within', amount: 0.003 })).toBeCloseTo(0.003 / Math.sqrt(3), 15);
  });
  test('of a stated one is itself', () => { expect(standardUncertainty(5, { kind: 'std', amount: 0.2 })).toBe(0.2); });
  test('of a factor f is |x| ln f / √3 to first order: log x lies within ± ln f, all alike', () => {
    expect(standardUncertainty(-2, { kind: 'factor', amount: 3 })).toBeCloseTo((2 * Math.log(3)) / Math.sqrt(3), 15);
    expect(standardUncertainty(2, { kind: 'factor', amount: 1 })).toBe(0);
  });
  test('of a choice is the standard deviation of its values', () => {
    expect(standardUncertainty(0, { kind: 'one of', values: [2, 4] })).toBe(1);
    expect(standardUncertainty(0, { kind: 'one of', values: [1, 2, 3, 4, 5] })).toBeCloseTo(Math.SQRT2, 15); // (n² − 1)/12 = 2
    expect(standardUncertainty(0, { kind: 'one of', values: [7] })).toBe(0);
  });
});

describe('temperatures', () => {
  test('°C is a place on a scale, K a difference', () => {
    expect(quantity('20 °C')).toMatchObject({ value: 293.15, dim: TEMPERATURE });
    expect(quantity('-5 °C').value).toBeCloseTo(268.15, 10);
    expect(quantity('293 K').value).toBe(293);
    expect(letValue('let room = 20 °C', 'let it = room + 5 K').value).toBeCloseTo(298.15, 10);
    expect(letValue('let room = 20 °C', 'let it = room - 18 °C').value).toBeCloseTo(2, 10);
  });
  test('give or take of a temperature is a difference', () => {
    expect(found('temperature: 20 °C ± 2 K')).toEqual([]);
    expect(found('temperature: 20 °C ± 2 °C')).toEqual(['wrong-unit 2 °C']);
    expect(dataOf('wrong-unit', 'temperature: 20 °C ± 2 °C')['units']).toBe('K');
    expect(found('temperature: (20 ± 2) °C')).toEqual(['wrong-unit 2']);
    expect(found('temperature: 20 °C ± 2%')).toEqual(['wrong-unit 2%']);
    expect(found('let room = 20 °C', 'let bath = room ± 2 °C')).toEqual(['wrong-unit 2 °C']);
  });
  test('two places on the scale have no sum', () => { expect(found('let a = 20 °C + 5 °C')).toEqual(['wrong-unit 5 °C']); });
  test('below absolute zero there is nothing', () => { expect(found('temperature: -280 °C')).toEqual(['impossible-value -280 °C']); });
});

describe('angles and shares', () => {
  test('an angle is no bare number', () => {
    expect(found('mirror M1 at (60, 100) mm heading 30')).toEqual(['missing-unit 30']);
    expect(found('mirror M1 at (60, 100) mm heading 30°')).toEqual([]);
    expect(quantity('180°')).toMatchObject({ dim: ANGLE, value: Math.PI });
    expect(found('let a = sin(30)')).toEqual(['wrong-unit 30']);
    expect(letValue('let it = sin(30°)').value).toBeCloseTo(0.5, 15);
    expect(letValue('let it = 2 * asin(0.5)').value).toBeCloseTo(Math.PI / 3, 15);
  });
  test('a share lies from 0 % to 100 %, in percent or as a number', () => {
    expect(quantity('35%').dim).toBe(NUMBER);
    expect(quantity('35%').value).toBeCloseTo(0.35, 15);
    expect(found('object whelk {', 'tone: 0.35', '}')).toEqual([]);
    expect(found('object whelk {', 'tone: 120%', '}')).toEqual(['impossible-value 120%']);
    expect(found('object whelk {', 'tone: -1%', '}')).toEqual(['impossible-value -1%']);
    expect(found('object whelk {', 'tone: 35 points', '}')).toEqual(['wrong-unit 35 points']);
  });
  test('points are for shares only', () => { expect(found('beam height: 120 mm ± 2 points')).toEqual(['wrong-unit 2 points']); });
});

describe('sizes', () => {
  test('the unit covers all of them, also where some have their own', () => {
    expect(sizes('40 x 60 x 35 mm')).toEqual([40, 60, 35]);
    expect(sizes('40 mm x 60 mm x 35 mm')).toEqual([40, 60, 35]);
    expect(sizes('4 cm x 60 x 35 mm')).toEqual([40, 60, 35]);
    expect(sizes('1 x 2 x 3 in')).toEqual([25.4, 50.8, 76.2]);
    expect(found('table: 1200 x 900')).toEqual(['missing-unit 900']);
    expect(found('table: 1200 x 900 x 10 mm')).toEqual(['wrong-value 1200 x 900 x 10 mm']);
    expect(found('table: 1200 x 0 mm')).toEqual(['impossible-value 0 mm']);
    expect(found('table: 0 x 900 mm')).toEqual(['impossible-value 0']);
    expect(found('table: 1200 x 900 mW')).toEqual(['wrong-unit 900 mW']);
  });
});

describe('wrong and missing units', () => {
  test.each([
    ['beam height: 120', 'missing-unit 120'],
    ['beam height: 120 ± 2', 'missing-unit 120 ± 2'],
    ['beam height: 120 mm ± 2', 'missing-unit 2'],
    ['beam height: 120 mm ± 2 mW', 'wrong-unit 2 mW'],
    ['beam height: 120 mW', 'wrong-unit 120 mW'],
    ['beam height: 120 MM', 'unknown-unit MM'],
    ['beam height: 120 mm²', 'wrong-unit 120 mm²'],
    ['beam height: 120 mm ± 2 MM', 'unknown-unit MM'],
    ['beam height: 120 mm ± -2 mm', 'impossible-value -2 mm'],
    ['beam height: 120 mm ×÷ 2 mm', 'wrong-unit 2 mm'],
    ['beam height: 120 mm ×÷ 0.5', 'impossible-value 0.5'],
    ['beam height: 120 mm ×÷ 2 std', 'wrong-value 2'],
    ['beam height: 0 mm', 'impossible-value 0 mm'],
    ['beam height: -120 mm', 'impossible-value -120 mm'],
    ['beam height: (1, 2) mm', 'wrong-value (1, 2) mm'],
    ['beam height: 120 constructor', 'unknown-unit constructor'],
    ['let gap = 5 mm + 3 mW', 'units-differ +'],
    ['let gap = 5 mm - 3', 'units-differ -'],
    ['let gap = 2 * (5 mm + 3 s)', 'units-differ +'],
    ['let gap = min(5 mm, 3 mW)', 'wrong-unit 3 mW'],
    ['let gap = (5 mm + 2 mm) ± 3', 'missing-unit 3'],
    ['let gap = (5 mm + 2 mm) ± -3 mm', 'impossible-value -3 mm'],
    ['let gap = (5 mm + 2 mm) ± 3 mW', 'wrong-unit 3 mW'],
    ['let gap = (5 mm + 2 mm) mm', 'wrong-unit mm'],
    ['mirror M1 at (60, 100)', 'missing-unit (60, 100)'],
    ['mirror M1 at (60, 100) mW', 'wrong-unit mW'],
    ['mirror M1 at (60, 100) MM', 'unknown-unit MM'],
    ['mirror M1 at (60, 100) mm ± 2', 'missing-unit 2'],
    ['mirror M1 at (60, 100) mm ± -2 mm', 'impossible-value -2 mm'],
    ['mirror M1 at (60, 100) mm ×÷ 2 mm', 'wrong-unit 2 mm'],
  ])('%s', (line, finding) => { expect(found(line)).toEqual([finding]); });

  test('a missing unit lists those that fit, the usual one first', () => {
    expect(dataOf('missing-unit', 'beam height: 120')).toMatchObject({ units: 'mm, cm, m, µm, nm, in', written: '120', suggestion: 'mm' });
  });
  test('a missing unit behind ± is that of the value', () => { expect(dataOf('missing-unit', 'beam height: 12 cm ± 1')['suggestion']).toBe('cm'); });
  test('a count takes no unit, and is whole', () => {
    expect(found('laser red {', 'modes: 3', '}')).toEqual([]);
    expect(found('laser red {', 'modes: 3 modes', '}')).toEqual([]);
    expect(found('laser red {', 'modes: unknown', '}')).toEqual([]);
    expect(found('laser red {', 'modes: 3 mm', '}')).toEqual(['wrong-unit 3 mm']);
    expect(found('laser red {', 'modes: 2.5', '}')).toEqual(['impossible-value 2.5']);
    expect(found('laser red {', 'modes: 0', '}')).toEqual(['impossible-value 0']);
  });
  test('places may be unsure as a whole or one by one', () => {
    for (const place of ['(60, 100) mm ± 2 mm', '(60 ± 2, 100 ± 1) mm', '(60 mm ± 2 mm, 100 mm)', '(60, 100, 120) mm ± 1 mm std']) expect(found(`mirror M1 at ${place}`)).toEqual([]);
  });
});

describe('formulas', () => {
  test('have the value that the arithmetic says', () => {
    expect(letValue('let gap = 300 mm', 'let it = (gap + 2 * 25 mm) / 2').value).toBeCloseTo(0.175, 15);
    expect(letValue('let it = sqrt(9 mm²) + 1 mm').value).toBeCloseTo(0.004, 15);
    expect(letValue('let it = (3 + 4) mm').value).toBeCloseTo(0.007, 15);
    expect(letValue('let it = sqrt(16) mm').value).toBeCloseTo(0.004, 15);
    expect(letValue('let it = 60 in').value).toBeCloseTo(1.524, 12);
    expect(letValue('let it = 10 mm * 20 mm / 5 mm').value).toBeCloseTo(0.04, 15);
    expect(letValue('let it = -(3 mm - 5 mm)').value).toBeCloseTo(0.002, 15);
    expect(letValue('let it = max(3 mm, 1 cm) - min(3 mm, 1 cm)').value).toBeCloseTo(0.007, 15);
    expect(letValue('let it = abs(3 mm - 1 cm)').value).toBeCloseTo(0.007, 15);
    expect(letValue('let it = atan(1) + acos(0)').value).toBeCloseTo((3 * Math.PI) / 4, 15);
    expect(letValue('let it = tan(45°)').value).toBeCloseTo(1, 15);
    expect(LENGTH).toBe(quantity('1 mm').dim);
  });
  test('a formula with its own ± is as unsure as that says', () => {
    expect(letValue('let gap = 300 mm', 'let it = (gap * 2) ± 3 mm').u).toBeCloseTo(0.003 / Math.sqrt(3), 12);
    expect(letValue('let gap = 300 mm', 'let it = gap ± 1%').u).toBeCloseTo(0.003 / Math.sqrt(3), 12);
    expect(letValue('let gap = 300 mm', 'let it = gap ± 1 mm std').u).toBeCloseTo(0.001, 15);
    expect(letValue('let gap = 300 mm', 'let it = gap ×÷ 2').u).toBeCloseTo((0.3 * Math.log(2)) / Math.sqrt(3), 12);
  });
  test('rings of values are one finding that names the ring', () => {
    const ring = (...lines: string[]): unknown => {
      expect(found(...lines)).toHaveLength(1);
      return dataOf('value-ring', ...lines)['ring'];
    };
    expect(ring('let a = b', 'let b = a')).toBe('a → b → a');
    expect(ring('object whelk {', 'depth: cockle.depth', '}', 'object cockle {', 'depth: whelk.depth', '}', 'let a = whelk.depth')).toBe('whelk.depth → cockle.depth → whelk.depth');
    expect(ring('object whelk {', 'depth: a', '}', 'let a = whelk.depth * 2')).toBe('a → whelk.depth → a');
  });
  test('what cannot be read is reported once, however often it is used', () => {
    expect(found('object whelk {', 'depth: 3 mW', '}', 'let a = whelk.depth', 'let b = whelk.depth')).toEqual(['wrong-unit 3 mW']);
    expect(found('let a = gap', 'let b = gap', 'let c = a + b')).toEqual(['unknown-name gap']);
  });
});
