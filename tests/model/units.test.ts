/** Units against two general-purpose unit libraries, js-quantities 1.8 and mathjs 15, and the SI brochure (BIPM, 9th edition, 2019) where neither has one. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import Qty from 'js-quantities';
import { unit as mathUnit } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { dimName, multiply, nearestUnit, NUMBER, parseUnit, power, TEMPERATURE, unitsFor, type Dim, type Unit } from '../../server/model/units.ts';

/** The unit as mathjs spells it and as js-quantities does; a dash where the library lacks it. */
const TABLE = `
  nm nm nm | µm um µm | mm mm mm | cm cm cm | m m m | in in in | ft ft ft
  ns ns ns | µs us µs | ms ms ms | s s s | min min min | h h h
  Hz Hz Hz | kHz kHz kHz | MHz MHz MHz | GHz GHz GHz | THz THz THz
  nW nW nW | µW uW µW | mW mW mW | W W W
  nJ nJ nJ | µJ uJ µJ | mJ mJ mJ | J J J
  ° deg deg | deg deg deg | rad rad rad | mrad mrad mrad | arcmin arcmin arcmin | arcsec arcsec arcsec
  K K degK | Pa Pa Pa | hPa hPa hPa | kPa kPa kPa | % - %
  mW/cm² mW/cm^2 mW/cm2 | µW/cm² uW/cm^2 uW/cm2 | W/m² W/m^2 W/m2 | µJ/cm² uJ/cm^2 uJ/cm2 | mJ/cm² mJ/cm^2 mJ/cm2 | J/m² J/m^2 J/m2
  lines/mm 1/mm 1/mm | fringes/min 1/min 1/min | nm/K nm/K nm/degK | nm/s nm/s nm/s | mm² mm^2 mm2 | cm² cm^2 cm2
`.trim().split(/\s*[|\n]\s*/).map(row => row.split(' ') as [string, string, string]);

/** Counted things have the unit one (SI brochure, 2.3.3 and 5.4.7); no library has these names. */
const COUNTS = ['fringes', 'lines', 'modes', 'stops'];
/** Read by other rules than a factor, each with tests of its own below. */
const OTHERS = ['°C', 'points'];

const si = (text: string): Unit => {
  const unit = parseUnit(text);
  if (!unit) throw new Error(`${text} is no unit`);
  return unit;
};
const near = (value: number, expected: number, relative = 1e-13): void => { expect(Math.abs(value / expected - 1), `${value} should be ${expected}`).toBeLessThanOrEqual(relative); };

describe('every unit of the language', () => {
  const [, listed] = /\n(Lengths `[\s\S]*?)\n\n/.exec(readFileSync(new URL('../../grammar/language.md', import.meta.url), 'utf8'))!;
  const words = [...listed!.matchAll(/`([^`]+)`/g)].flatMap(m => m[1]!.split(' '));

  test('of the reference page stands in the tables below', () => {
    expect(words.length).toBeGreaterThan(40);
    const known = new Set([...TABLE.map(r => r[0]), ...COUNTS, ...OTHERS]);
    expect(words.filter(w => !known.has(w))).toEqual([]);
  });
  test.each(TABLE)('%s is that of mathjs (%s) and js-quantities (%s)', (ours, theirs, others) => {
    const unit = si(ours);
    expect(unit.offset).toBe(0);
    // Asked here, where each unit is read for the first time.
    expect([unit.percent, unit.points]).toEqual([ours === '%' ? true : undefined, undefined]);
    if (theirs !== '-') {
      const known = mathUnit(1, theirs) as unknown as { dimensions: readonly number[]; toSI(): { toNumeric(): number } };
      near(unit.factor, known.toSI().toNumeric());
      // mathjs: mass, length, time, current, temperature, luminous intensity, amount, angle, bits
      const [kg, m, s, , k, , , angle] = known.dimensions;
      expect(unit.dim.powers).toEqual([m, kg, s, k, angle]);
    }
    // js-quantities has π to 15 digits, and counts shares and counts as numbers.
    near(unit.factor, Qty(1, others).baseScalar, 1e-14);
  });
  test.each(COUNTS)('%s counts things, so that it is one', name => {
    expect(si(name)).toMatchObject({ factor: 1, offset: 0, dim: NUMBER });
    expect(si(name.slice(0, -1))).toMatchObject({ factor: 1, dim: NUMBER });
  });
  test('percent is one hundredth (SI brochure, 5.4.7), and points are hundredths that do not scale', () => {
    expect(si('%')).toMatchObject({ factor: 0.01, dim: NUMBER, percent: true });
    expect(si('points')).toMatchObject({ factor: 0.01, dim: NUMBER, points: true });
  });
  test.each([['°C', -273.15], ['degC', -40], ['°C', 0], ['degC', 20], ['°C', 37.5], ['degC', 100]] as const)('in %s, %s is the place on the scale that both libraries say', (written, t) => {
    const unit = si(written);
    expect(unit.dim).toBe(TEMPERATURE);
    const kelvin = t * unit.factor + unit.offset;
    expect(kelvin).toBeCloseTo(mathUnit(t, 'degC').toNumber('K'), 10);
    expect(kelvin).toBeCloseTo(Qty(t, 'tempC').to('tempK').scalar, 10);
  });
  test('what is offered for a kind of quantity is of that kind', () => {
    for (const [text] of TABLE) for (const offered of unitsFor(si(text).dim)) expect(si(offered).dim, `${offered} for ${text}`).toBe(si(text).dim);
  });
  test('kinds of quantities are told apart by their names', () => {
    expect(['mm', 's', 'GHz', 'K', '°', 'mW', 'µJ', 'µW/cm²', 'µJ/cm²', 'hPa', 'lines/mm', 'nm/s', 'mm²', '%'].map(u => dimName(si(u).dim))).toEqual([
      'a length', 'a time', 'a frequency', 'a temperature', 'an angle', 'a power', 'an energy', 'light at a surface', 'an exposure', 'a pressure', 'a number per length', 'a speed', 'an area', 'a plain number',
    ]);
  });
});

describe('prefixes', () => {
  /** SI brochure, table 7. */
  const PREFIXES: Readonly<Record<string, number>> = { p: 1e-12, n: 1e-9, µ: 1e-6, u: 1e-6, m: 1e-3, c: 1e-2, h: 1e2, k: 1e3, M: 1e6, G: 1e9, T: 1e12 };
  test('scale by their power of ten, whatever they stand before', () => {
    for (const [prefix, factor] of Object.entries(PREFIXES)) {
      for (const base of ['m', 's', 'Hz', 'W', 'J', 'Pa', 'K', 'rad']) {
        const unit = parseUnit(prefix + base);
        // `min` and `h` are units of their own.
        if (!unit || prefix + base === 'min') continue;
        near(unit.factor, factor * si(base).factor);
        expect(unit.dim).toBe(si(base).dim);
      }
    }
  });
  test('the two micro signs (U+00B5, U+03BC) and u are one', () => {
    for (const base of ['m', 's', 'W', 'J', 'rad', 'W/cm²']) {
      expect(si(`\u00b5${base}`)).toMatchObject({ factor: si(`u${base}`).factor, dim: si(`u${base}`).dim });
      expect(si(`\u03bc${base}`).factor).toBe(si(`u${base}`).factor);
    }
  });
  test.each(['kmin', 'mh', 'µin', 'kft', 'm%', 'm°', 'mfringes', 'cs', 'hW', 'kkm', 'mµm', 'k', 'µ', 'm°C', 'mdeg'])('%s is no unit', text => {
    expect(parseUnit(text)).toBeUndefined();
  });
});

describe('what is no unit', () => {
  test.each(['', ' ', 'mm ', ' mm', 'm m', '/mm', 'mm/', 'mm//s', '·', 'mm^', 'mm-', 'mm^-', 'mm²²', '2mm', 'mm1.5', 'mm/2', '°C/s', 'nm/°C', 'points/mm ', 'x', 'm,', 'mm±', '🐚'])('“%s”', text => {
    expect(parseUnit(text)).toBeUndefined();
  });
  test.each(['constructor', 'toString', 'valueOf', 'hasOwnProperty', '__proto__', 'mconstructor', 'mm/constructor'])('the inner word %s', text => {
    expect(parseUnit(text)).toBeUndefined();
    expect(() => nearestUnit(text)).not.toThrow();
  });
  test('any text is read without failing, and gives a unit with finite numbers or none', () => {
    const piece = fc.constantFrom('m', 'W', 'mm', 'µ', 'u', '°', '°C', 'C', '/', '·', '*', '^', '²', '⁻¹', '-', '2', '0', '%', 'points', 'lines', 'constructor', ' ', '🐚');
    fc.assert(fc.property(fc.oneof(fc.array(piece, { maxLength: 6 }).map(p => p.join('')), fc.string({ unit: 'binary', maxLength: 8 })), text => {
      const unit = parseUnit(text);
      if (unit) expect([unit.factor, unit.offset, ...unit.dim.powers].every(Number.isFinite)).toBe(true);
      const suggestion = nearestUnit(text);
      if (suggestion !== undefined) expect(parseUnit(suggestion)).toBeDefined();
    }), { numRuns: 250 });
  });
});

describe('the algebra of units', () => {
  const atoms = [...TABLE.map(r => r[0]).filter(u => !/[/²]/.test(u)), ...COUNTS];
  const atom = fc.constantFrom(...atoms);
  const expectUnit = (text: string, factor: number, dim: Dim): void => {
    near(si(text).factor, factor, 1e-12);
    expect(si(text).dim, text).toBe(dim);
  };
  const always = <T>(arbitrary: fc.Arbitrary<T>, holds: (value: T) => void): void => { fc.assert(fc.property(arbitrary, holds), { numRuns: 300 }); };

  test('a quotient divides factors and subtracts dimensions, a product multiplies and adds', () => {
    always(fc.tuple(atom, atom), ([a, b]) => {
      expectUnit(`${a}/${b}`, si(a).factor / si(b).factor, multiply(si(a).dim, si(b).dim, -1));
      for (const sign of ['·', '*']) expectUnit(`${a}${sign}${b}`, si(a).factor * si(b).factor, multiply(si(a).dim, si(b).dim));
    });
  });
  test('each slash divides by what stands behind it alone', () => {
    always(fc.tuple(atom, atom, atom), ([a, b, c]) => {
      expectUnit(`${a}/${b}/${c}`, si(a).factor / si(b).factor / si(c).factor, multiply(multiply(si(a).dim, si(b).dim, -1), si(c).dim, -1));
      expectUnit(`${a}/${b}·${c}`, (si(a).factor / si(b).factor) * si(c).factor, multiply(multiply(si(a).dim, si(b).dim, -1), si(c).dim));
    });
  });
  test('powers, as superscripts, as digits and behind ^, are repeated products', () => {
    always(fc.tuple(atom, fc.constantFrom<[string, string, number]>(['²', '2', 2], ['³', '3', 3], ['¹', '1', 1], ['⁴', '4', 4])), ([a, [raised, digit, n]]) => {
      for (const text of [a + raised, a + digit, `${a}^${digit}`]) expectUnit(text, si(a).factor ** n, power(si(a).dim, n));
      for (const text of [`${a}⁻${raised}`, `${a}^-${digit}`, `lines/${a}${digit}`]) expectUnit(text, si(a).factor ** -n, power(si(a).dim, -n));
    });
  });
  test('a unit over itself is a plain number', () => {
    always(atom, a => { expectUnit(`${a}/${a}`, 1, NUMBER); });
  });
  test('equal dimensions are one object, so that they compare by identity', () => {
    expect(si('mW·s').dim).toBe(si('µJ').dim);
    expect(si('J/m²').dim).toBe(si('mW·s/cm²').dim);
    expect(si('W/m²').dim).not.toBe(si('J/m²').dim);
    expect(si('lines/mm').dim).toBe(si('mm⁻¹').dim);
    expect(si('rad').dim).not.toBe(NUMBER);
  });
  test('products of units have the factor that js-quantities gives them', () => {
    for (const [ours, theirs] of [['µW/cm²', 'uW/cm2'], ['mJ/cm2', 'mJ/cm2'], ['nm/K', 'nm/degK'], ['mm/s', 'mm/s'], ['lines/mm', '1/mm'], ['W·s', 'W*s'], ['kPa/min', 'kPa/min'], ['mrad/h', 'mrad/h']] as const) near(si(ours).factor, Qty(1, theirs).baseScalar, 1e-14);
  });
});

describe('spelling', () => {
  test('mW and MW, ms and Ms, mHz and MHz are not one another', () => {
    near(si('MW').factor / si('mW').factor, 1e9);
    near(si('MHz').factor / si('mHz').factor, 1e9);
    expect(parseUnit('Ms')).toBeUndefined();
  });
  test.each([
    ['MM', 'mm'], ['Mm', 'mm'], ['NM', 'nm'], ['Cm', 'cm'], ['IN', 'in'], ['Ft', 'ft'], ['mw', 'mW'], ['nw', 'nW'], ['w', 'W'], ['hz', 'Hz'], ['MHZ', 'MHz'], ['mhz', 'MHz'], ['khz', 'kHz'], ['Ghz', 'GHz'], ['S', 's'], ['Min', 'min'],
    ['H', 'h'], ['mj', 'mJ'], ['pa', 'Pa'], ['KPA', 'kPa'], ['k', 'K'], ['DEG', 'deg'], ['Fringes', 'fringes'], ['Lines/MM', 'lines/mm'],
  ])('%s differs in case only: %s is suggested, never taken', (written, meant) => {
    expect(parseUnit(written)).toBeUndefined();
    expect(nearestUnit(written)).toBe(meant);
  });
  test.each([['mj/cm2', 'mJ/cm²'], ['uj/cm2', 'µJ/cm²'], ['uw/cm2', 'µW/cm²'], ['µw/cm²', 'µW/cm²'], ['\u03bcw/cm2', 'µW/cm²'], ['mw/CM^2', 'mW/cm²'], ['w/m2', 'W/m²'], ['Nm/k', 'nm/K'], ['UM', 'µm'], ['Us', 'µs']])(
    '%s is %s with other letters', (written, meant) => {
      expect(parseUnit(written)).toBeUndefined();
      expect(nearestUnit(written)).toBe(meant);
    });
  test.each([['mmm', 'mm'], ['mins', 'min'], ['Wq', 'W'], ['inch', 'in'], ['foot', 'ft'], ['degr', 'deg'], ['minn', 'min'], ['liens', 'lines'], ['lines/m m', 'lines/mm'], ['modus', 'modes'], ['°c', '°C'], ['C', '°C'], ['nm/°C', 'nm/K'], ['point s', 'points']])(
    '%s is a slip for %s', (written, meant) => { expect(nearestUnit(written)).toBe(meant); });
  test.each(['x', 'q', 'qqm', 'gauss', 'furlong', 'banana', '🐚', '', '°F', 'degF', 'F', 'lux', 'lx'])('nothing is suggested for “%s”', written => { expect(nearestUnit(written)).toBeUndefined(); });
  test('any unit in other capitals keeps its letters in what is suggested', () => {
    const units = [...TABLE.map(r => r[0]), ...COUNTS];
    const plain = (s: string): string => s.toLowerCase().replace(/[µμ]/g, 'u').replaceAll('²', '2');
    fc.assert(fc.property(fc.constantFrom(...units), fc.array(fc.boolean(), { minLength: 12, maxLength: 12 }), (unit, up) => {
      const written = [...unit].map((c, i) => (up[i] ? c.toUpperCase() : c.toLowerCase())).join('');
      if (parseUnit(written)) return;
      expect(plain(nearestUnit(written) ?? '')).toBe(plain(written));
    }), { numRuns: 300 });
  });
});

test('a unit that has no usual one is written with raised powers, and read again', () => {
  expect(unitsFor(power(parseUnit('mm')!.dim, -2))).toEqual(['m⁻²']);
  expect(dimName(multiply(parseUnit('mW')!.dim, parseUnit('mm')!.dim))).toBe('a quantity in m³·kg·s⁻³');
  for (const n of [5, 6, 7, 8, 9, -5, -9]) expect(parseUnit(unitsFor(power(parseUnit('s')!.dim, n))[0]!)!.dim).toBe(power(parseUnit('s')!.dim, n));
});

test.each([['microns', 'µm'], ['inches', 'in'], ['metres', 'm'], ['seconds', 's'], ['minutes', 'min'], ['hours', 'h'], ['degrees', '°'], ['milliwatts', 'mW'], ['percent', '%'], ['C', '°C'], ['"', 'in']])('%s is the name of %s', (said, unit) => { expect(nearestUnit(said)).toBe(unit); });

test('a share, and points of it, are told apart from each other and from plain numbers', () => {
  const flags = (unit: string): unknown[] => { const u = parseUnit(unit)!; return [u.dim, u.factor, u.percent, u.points]; };
  expect(flags('%')).toEqual([NUMBER, 0.01, true, undefined]);
  for (const unit of ['points', 'point']) expect(flags(unit)).toEqual([NUMBER, 0.01, undefined, true]);
  expect(flags('modes').slice(2)).toEqual([undefined, undefined]);
});

test('a dimension without a unit of the trade is shown by its powers, of several digits too', () => {
  const metre = parseUnit('m')!.dim;
  expect([unitsFor(power(metre, 12)), unitsFor(power(metre, -4))]).toEqual([['m¹²'], ['m⁻⁴']]);
});
