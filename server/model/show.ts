/** Values as people write them: with the digits that they deserve, in a unit that suits. */
import { ANGLE, FREQUENCY, LENGTH, NUMBER, parseUnit, POWER, TIME, unitsFor, type Dim, type Unit } from './units.ts';

const UNITS = new Map<Dim, readonly string[]>([[LENGTH, ['nm', 'µm', 'mm', 'm']], [FREQUENCY, ['Hz', 'kHz', 'MHz', 'GHz', 'THz']], [TIME, ['ms', 's', 'min', 'h', 'd']], [POWER, ['nW', 'µW', 'mW', 'W']]]);

const FROM: Readonly<Record<string, number>> = { h: 5400, d: 172_800 };

/** The unit in which a value reads well: the author's, else the usual one of its size. Lengths on a table stay in mm up to 10 m, powers in mW from 0.1 mW. */
export function readableUnit(value: number, dim: Dim, written?: Unit): Unit | undefined {
  if (written) return written;
  if (dim === NUMBER) return undefined;
  if (dim === LENGTH && (value === 0 || Math.abs(value) >= 1e-4) && Math.abs(value) < 10) return parseUnit('mm');
  if (dim === POWER && Math.abs(value) >= 1e-4 && Math.abs(value) < 1) return parseUnit('mW');
  const all = UNITS.get(dim);
  if (!all) return parseUnit(unitsFor(dim)[0]!);
  // People count minutes up to an hour and a half, and hours up to two days.
  const fits = all.map(u => parseUnit(u)!).filter(u => Math.abs(value) >= (FROM[u.text] ?? u.factor));
  return fits[fits.length - 1] ?? parseUnit(all[0]!);
}

/** Decimals that an uncertainty leaves meaningful: the uncertainty keeps two digits below 3, else one (JCGM 100:2008, 7.2.6, asks for at most two). */
export function decimalsFor(u: number): number {
  if (!(u > 0)) return 3;
  const exponent = Math.floor(Math.log10(u));
  return Math.max(0, Math.min(6, -exponent + (u / 10 ** exponent < 3 ? 1 : 0)));
}

const trim = (s: string): string => (s.includes('.') ? s.replace(/(?<!0)0+$/, '').replace(/\.$/, '') : s);
const minus = (s: string): string => s.replace(/^-/, '−');

/** A number with at most `digits` significant digits and no useless zeros. */
export function plain(value: number, digits = 4): string {
  if (value === 0) return '0';
  const size = Math.floor(Math.log10(Math.abs(value)));
  return minus(trim(value.toFixed(Math.max(0, Math.min(12, digits - 1 - size)))));
}

/** A quantity in words: `1471 ± 3 mm`. `u` is a standard uncertainty; the band shown is twice that. */
export function show(exact: number, dim: Dim, u = 0, written?: Unit): string {
  // What is left of legs that cancel is rounding, not a length.
  const value = dim === LENGTH && Math.abs(exact) < 1e-12 ? 0 : exact;
  const unit = readableUnit(Math.max(Math.abs(value), 2 * u), dim, written);
  const [v, spread] = unit ? [(value - unit.offset) / unit.factor, u / unit.factor] : [value, u];
  if (spread > 0) {
    const decimals = decimalsFor(2 * spread);
    return giveOrTake(minus(v.toFixed(decimals).replace(/^-(0(?:\.0+)?)$/, '$1')), (2 * spread).toFixed(decimals), unit);
  }
  return `${plain(v, dim === ANGLE ? 3 : 5)}${behind(unit)}`;
}

/** Both numbers as they are shown: `750 ± 2 mm`; of a percentage `80% ± 2 points`, since `± 2%` would be a share of the value. */
export const giveOrTake = (value: string, amount: string, unit?: Unit): string => (unit?.percent ? `${value}% ± ${amount} points` : `${value} ± ${amount}${behind(unit)}`);
const behind = (unit: Unit | undefined): string => (unit ? gapBefore(unit.text) + unit.text : '');

/** A quantity with the half-width that its author gave: `750 ± 2 mm`. */
export function showWithin(value: number, dim: Dim, amount: number, written?: Unit): string {
  const unit = readableUnit(Math.max(Math.abs(value), amount), dim, written);
  const [v, give] = unit ? [(value - unit.offset) / unit.factor, amount / unit.factor] : [value, amount];
  return giveOrTake(plain(v, 7), plain(give), unit);
}
/** What stands between a number and its unit. */
export const gapBefore = (unit: string): string => (/^[°%′″]$/.test(unit) ? '' : ' ');

/** A length in whole millimetres, finer below 10 mm: `84 mm`, `0.2 mm`. */
export function millimetres(metres: number): string {
  const mm = metres * 1000;
  return `${minus(Math.abs(mm) >= 10 ? mm.toFixed(0) : trim(mm.toFixed(1)))} mm`;
}

/** A share in whole percent, finer below 2 %. */
export function percent(share: number): string {
  const p = share * 100;
  return `${p >= 2 || p < 0.05 ? p.toFixed(0) : p.toFixed(1)} %`;
}

/** A band of shares: `16 to 53 %`; one figure where both ends read the same. */
export function percentBand(low: number, high: number): string {
  const [a, b] = [percent(low), percent(high)];
  return a === b ? a : `${a.replace(' %', '')} to ${b}`;
}

/** Beam ratios are written as such: `4:1`. */
export const isRatio = (name: string): boolean => /(?:^|[. ])(?:beam|effective) ratio(?: as written)?$/.test(name);

/** How brightly something records is a share, shown in percent. */
export const isShare = (name: string): boolean => name.endsWith('brightness') || /(?:\w loss|second spot share|(?:^|\.)polarization|(?:ghost|back face) fringes)$/.test(name);

/** A ratio with its give: `4.2:1 ± 0.3`, and as a band where it is only roughly known: `2:1 to 12:1`. `u` is a standard uncertainty. */
export function showRatio(value: number, u = 0): string {
  if (!(u > 0)) return `${plain(value, 3)}:1`;
  if (2 * u < 0.1 * value) {
    const [v, give] = show(value, NUMBER, u).split(' ± ') as [string, string];
    return `${v}:1 ± ${give}`;
  }
  return ratioBand(Math.max(0, value - 2 * u), value + 2 * u);
}

/** `2:1 to 12:1` */
export const ratioBand = (low: number, high: number): string => {
  const [a, b] = [low, high].map(v => `${plain(v, 2)}:1`) as [string, string];
  return a === b ? a : `${a} to ${b}`;
};

/** A band between two values of one unit, two digits each: `11 to 46 s`. What reaches over several units is shown in that of its middle: `0.6 to 35 s`. */
export function showBand(low: number, high: number, dim: Dim, written?: Unit): string {
  const unit = readableUnit(low > 0 ? Math.sqrt(low) * Math.sqrt(high) : high, dim, written);
  const text = (v: number): string => plain(unit ? (v - unit.offset) / unit.factor : v, 2);
  return `${text(low)} to ${text(high)}${behind(unit)}`;
}
