/**
 * Units as types. A unit has a dimension and a factor to SI; a dimension is a product of powers of the base dimensions
 * length, mass, time, temperature and angle. Angle is a base dimension of its own here, so that `5° + 3 mm` and `heading 30` are errors.
 * Names and factors: SI brochure (BIPM, 9th edition, tables 2, 4, 7, 8); inch and foot: international yard and pound agreement (1959).
 */
import { distance } from 'fastest-levenshtein';

/** Exponents of length, mass, time, temperature, angle. Equal dimensions are the same object. */
export interface Dim {
  readonly key: string;
  readonly powers: readonly [number, number, number, number, number];
}

const dims = new Map<string, Dim>();
export function dim(m: number, kg = 0, s = 0, k = 0, angle = 0): Dim {
  const key = `${m} ${kg} ${s} ${k} ${angle}`;
  let d = dims.get(key);
  if (!d) dims.set(key, d = { key, powers: [m, kg, s, k, angle] });
  return d;
}
export const multiply = (a: Dim, b: Dim, sign = 1): Dim => dim(...(a.powers.map((p, i) => p + sign * b.powers[i]!) as [number, number, number, number, number]));
export const power = (a: Dim, n: number): Dim => dim(...(a.powers.map(p => p * n) as [number, number, number, number, number]));

export const NUMBER = dim(0);
export const LENGTH = dim(1);
export const TIME = dim(0, 0, 1);
export const FREQUENCY = dim(0, 0, -1);
export const TEMPERATURE = dim(0, 0, 0, 1);
export const ANGLE = dim(0, 0, 0, 0, 1);
export const POWER = dim(2, 1, -3);
export const ENERGY = dim(2, 1, -2);
/** light at a surface, power per area */
export const LIGHT = dim(0, 1, -3);
/** exposure, energy per area */
export const EXPOSURE = dim(0, 1, -2);
export const PRESSURE = dim(-1, 1, -2);
export const PER_LENGTH = dim(-1);
/** speed, and a rate of drift per time has {@link FREQUENCY} */
export const SPEED = dim(1, 0, -1);
export const AREA = dim(2);
export const PER_TEMPERATURE = dim(1, 0, 0, -1);

const NAMES = new Map<Dim, string>([
  [NUMBER, 'a plain number'], [LENGTH, 'a length'], [TIME, 'a time'], [FREQUENCY, 'a frequency'], [TEMPERATURE, 'a temperature'], [ANGLE, 'an angle'],
  [POWER, 'a power'], [ENERGY, 'an energy'], [LIGHT, 'light at a surface'], [EXPOSURE, 'an exposure'], [PRESSURE, 'a pressure'], [PER_LENGTH, 'a number per length'],
  [SPEED, 'a speed'], [AREA, 'an area'], [dim(0, 1), 'a mass'],
]);
/** The dimension in words, with its article: "a length". */
export const dimName = (d: Dim): string => NAMES.get(d) ?? `a quantity in ${written(siUnit(d)) || '1'}`;

const FITTING = new Map<Dim, readonly string[]>([
  [NUMBER, ['%']], [LENGTH, ['mm', 'cm', 'm', 'µm', 'nm', 'in']], [TIME, ['s', 'ms', 'min', 'h']], [FREQUENCY, ['MHz', 'GHz', 'kHz', 'Hz']], [TEMPERATURE, ['°C', 'K']],
  [ANGLE, ['°', 'mrad', 'rad']], [POWER, ['mW', 'µW', 'W']], [ENERGY, ['mJ', 'µJ', 'J']], [LIGHT, ['µW/cm²', 'mW/cm²', 'W/m²']], [EXPOSURE, ['µJ/cm²', 'mJ/cm²', 'J/m²']],
  [PRESSURE, ['hPa', 'kPa']], [PER_LENGTH, ['lines/mm']], [SPEED, ['nm/s', 'mm/s']], [AREA, ['mm²', 'cm²']], [PER_TEMPERATURE, ['nm/K']],
]);
/** Units that a holographer would write for a dimension, the usual one first. */
export const unitsFor = (d: Dim): readonly string[] => FITTING.get(d) ?? [written(siUnit(d))];
/** `m^-2` with raised powers, `m⁻²`. */
const written = (unit: string): string => unit.replace(/\^(-?)(\d+)/g, (_, sign: string, digits: string) => (sign ? '⁻' : '') + [...digits].map(c => '⁰¹²³⁴⁵⁶⁷⁸⁹'[Number(c)]!).join(''));

export function siUnit(d: Dim): string {
  const base = ['m', 'kg', 's', 'K', 'rad'];
  return d.powers.map((p, i) => (p === 0 ? '' : p === 1 ? base[i]! : `${base[i]!}^${p}`)).filter(Boolean).join('·');
}

export interface Unit {
  /** as written */
  readonly text: string;
  readonly dim: Dim;
  /** SI value = written value × factor + offset */
  readonly factor: number;
  readonly offset: number;
  /** `points`: percentage points, only after `±` */
  readonly points?: boolean;
  /** `%`, which is relative after `±` */
  readonly percent?: boolean;
}

const PREFIX: Readonly<Record<string, number>> = { f: 1e-15, p: 1e-12, n: 1e-9, µ: 1e-6, μ: 1e-6, u: 1e-6, m: 1e-3, c: 1e-2, d: 1e-1, h: 1e2, k: 1e3, M: 1e6, G: 1e9, T: 1e12 };
interface Base { readonly dim: Dim; readonly factor: number; readonly prefixes?: string }
/** rad */
export const ONE_DEGREE = Math.PI / 180;
const BASES: Readonly<Record<string, Base>> = {
  m: { dim: LENGTH, factor: 1, prefixes: 'pnµμumcdk' }, in: { dim: LENGTH, factor: 0.0254 }, ft: { dim: LENGTH, factor: 0.3048 },
  s: { dim: TIME, factor: 1, prefixes: 'fpnµμum' }, min: { dim: TIME, factor: 60 }, h: { dim: TIME, factor: 3600 }, d: { dim: TIME, factor: 86400 },
  Hz: { dim: FREQUENCY, factor: 1, prefixes: 'mkMGT' },
  W: { dim: POWER, factor: 1, prefixes: 'pnµμumkM' }, J: { dim: ENERGY, factor: 1, prefixes: 'nµμumk' }, g: { dim: dim(0, 1), factor: 1e-3, prefixes: 'µμumk' },
  Pa: { dim: PRESSURE, factor: 1, prefixes: 'hkM' }, K: { dim: TEMPERATURE, factor: 1, prefixes: 'mµμu' },
  rad: { dim: ANGLE, factor: 1, prefixes: 'mµμu' }, deg: { dim: ANGLE, factor: ONE_DEGREE }, '°': { dim: ANGLE, factor: ONE_DEGREE },
  arcmin: { dim: ANGLE, factor: ONE_DEGREE / 60 }, arcsec: { dim: ANGLE, factor: ONE_DEGREE / 3600 }, '′': { dim: ANGLE, factor: ONE_DEGREE / 60 }, '″': { dim: ANGLE, factor: ONE_DEGREE / 3600 },
  '%': { dim: NUMBER, factor: 0.01 },
  lines: { dim: NUMBER, factor: 1 }, line: { dim: NUMBER, factor: 1 }, fringes: { dim: NUMBER, factor: 1 }, fringe: { dim: NUMBER, factor: 1 },
  modes: { dim: NUMBER, factor: 1 }, mode: { dim: NUMBER, factor: 1 }, stops: { dim: NUMBER, factor: 1 }, stop: { dim: NUMBER, factor: 1 },
};
const SUPER: Readonly<Record<string, string>> = { '⁰': '0', '¹': '1', '²': '2', '³': '3', '⁴': '4', '⁵': '5', '⁶': '6', '⁷': '7', '⁸': '8', '⁹': '9', '⁻': '-' };

const baseOf = (symbol: string): Base | undefined => (Object.hasOwn(BASES, symbol) ? BASES[symbol] : undefined);

function simple(symbol: string): Base | undefined {
  const whole = baseOf(symbol);
  if (whole) return whole;
  const base = baseOf(symbol.slice(1));
  const factor = PREFIX[symbol[0]!];
  return base?.prefixes?.includes(symbol[0]!) && factor !== undefined ? { dim: base.dim, factor: base.factor * factor } : undefined;
}

const known = new Map<string, Unit | undefined>();
/** Reads a unit as written, such as `mW/cm²`, `µJ/cm2`, `nm/K`. Undefined when it isn't one. */
export function parseUnit(text: string): Unit | undefined {
  if (known.has(text)) return known.get(text);
  const unit = read(text);
  if (known.size > 2000) known.clear();
  known.set(text, unit);
  return unit;
}

function read(text: string): Unit | undefined {
  if (text === '°C' || text === 'degC') return { text, dim: TEMPERATURE, factor: 1, offset: 273.15 };
  if (text === 'points' || text === 'point') return { text, dim: NUMBER, factor: 0.01, offset: 0, points: true };
  const plain = [...text].map(c => SUPER[c] ?? c).join('');
  let d = NUMBER;
  let factor = 1;
  const parts = plain.split(/([/·*])/);
  for (let i = 0; i < parts.length; i += 2) {
    const m = /^([^\d^-]+)(?:\^?(-?\d))?$/.exec(parts[i]!);
    if (!m) return undefined;
    const base = simple(m[1]!);
    if (!base) return undefined;
    const n = (m[2] === undefined ? 1 : Number(m[2])) * (parts[i - 1] === '/' ? -1 : 1);
    d = multiply(d, power(base.dim, n));
    factor *= base.factor ** n;
  }
  return { text, dim: d, factor, offset: 0, ...(text === '%' ? { percent: true } : {}) };
}

const COMMON = ['nm', 'µm', 'mm', 'cm', 'm', 'in', 'ft', 'ns', 'µs', 'ms', 's', 'min', 'h', 'Hz', 'kHz', 'MHz', 'GHz', 'THz', 'nW', 'µW', 'mW', 'W', 'nJ', 'µJ', 'mJ', 'J', '°', 'deg', 'rad', 'mrad',
  'arcmin', 'arcsec', '°C', 'K', 'Pa', 'hPa', 'kPa', '%', 'points', 'fringes', 'lines', 'modes', 'stops', 'µW/cm²', 'mW/cm²', 'W/m²', 'µJ/cm²', 'mJ/cm²', 'J/m²', 'lines/mm', 'fringes/min', 'nm/K', 'nm/s', 'mm/s', 'mm²', 'cm²', 'm²'];
/** Spelled alike but for case and for the two ways to write micro and powers. */
const fold = (unit: string): string => [...unit.toLowerCase()].map(c => SUPER[c] ?? (c === 'µ' || c === 'μ' ? 'u' : c)).join('').replaceAll('^', '');

/** Units that no other can take the place of without another number. */
const MEANT_OTHERWISE: ReadonlySet<string> = new Set(['°f', 'f', 'degf', 'lux', 'lx']);
/** Names of units, as they are said. */
const CALLED: Readonly<Record<string, string>> = {
  '"': 'in', '″': 'in', inch: 'in', inches: 'in', foot: 'ft', feet: 'ft', micron: 'µm', microns: 'µm', micrometre: 'µm', micrometer: 'µm', nanometre: 'nm', nanometer: 'nm', millimetre: 'mm', millimeter: 'mm', centimetre: 'cm', centimeter: 'cm',
  metre: 'm', metres: 'm', meter: 'm', meters: 'm', sec: 's', secs: 's', seconds: 's', second: 's', minutes: 'min', minute: 'min', mins: 'min', hours: 'h', hour: 'h', hr: 'h', degrees: '°', degree: '°', milliwatt: 'mW', milliwatts: 'mW', percent: '%',
  c: '°C',
};

/** The known unit nearest to a misspelt one; a difference in case counts least. */
export function nearestUnit(text: string): string | undefined {
  const folded = fold(text);
  if (MEANT_OTHERWISE.has(folded)) return undefined;
  const called = Object.hasOwn(CALLED, folded) ? CALLED[folded] : undefined;
  if (called !== undefined) return called;
  const near = COMMON.map(u => [distance(fold(u), folded), u] as const).filter(([d, u]) => d < Math.max(u.length, text.length)).sort((a, b) => a[0] - b[0] || distance(a[1], text) - distance(b[1], text))[0];
  return near && near[0] <= (text.length > 3 ? 2 : 1) ? near[1] : undefined;
}
