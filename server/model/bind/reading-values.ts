/** Values of readings: what is measured says which units fit, and which of its two meanings a word has. */
import type { Expr } from '../../../grammar/tree.ts';
import { checkSign, describe, fail, isLiteral, readQuantity, type Read, type ValueProblem } from '../literal.ts';
import type { Bound, Measured } from '../model.ts';
import type { Quantity } from '../quantity.ts';
import { dimName, FREQUENCY, LENGTH, LIGHT, multiply, NUMBER, parseUnit, POWER, type Dim } from '../units.ts';
import type { Sign } from '../things/kind.ts';

export interface Fit {
  readonly dims: readonly Dim[];
  readonly sign: Sign;
  /** what is read, with its article */
  readonly wanted: string;
  readonly units: string;
}

const PATH: Fit = { dims: [LENGTH], sign: 'positive', wanted: 'a length', units: 'mm, cm, m, in' };
const LIGHTS: Fit = { dims: [LIGHT, POWER, NUMBER], sign: 'not negative', wanted: 'light at a surface, a power or a plain number', units: 'µW/cm², mW/cm², mW, µW' };
/** What fits each of them. */
export const FITS: Readonly<Record<Measured['kind'], Fit>> = {
  legs: PATH, arm: PATH, difference: { ...PATH, sign: 'any' }, image: PATH, light: LIGHTS, dark: { ...LIGHTS, units: 'nW, µW, nW/cm², µW/cm²' },
  wheel: { dims: [NUMBER], sign: 'not negative', wanted: 'the mark of the wheel, a plain number', units: '' },
  drift: { dims: [FREQUENCY], sign: 'any', wanted: 'a number of fringes in a time', units: 'fringes/min, fringes/s' },
};

/** Of a beam or an arm alone, the value says whether its path or its light was read. */
export const PATH_OR_LIGHT: Fit = { dims: [LENGTH, LIGHT, POWER, NUMBER], sign: 'any', wanted: 'a length, or light', units: 'mm, cm, m, µW/cm², mW/cm², mW, µW' };

export function readReading(value: Expr, measured: Measured): Read<Bound> {
  return readFit(value, FITS[measured.kind]);
}

export function readFit(value: Expr, fit: Fit): Read<Bound> {
  if (value.kind === 'unknown') return fail('wrong-value', value, { found: '?', wanted: 'what was read' });
  if (!isLiteral(value)) {
    return value.kind === 'list' || value.kind === 'path' || value.kind === 'row' || value.kind === 'sizes' || (value.kind === 'group' && value.items.length !== 1)
      ? fail('wrong-value', value, { found: describe(value), wanted: 'one number with its unit' })
      : { ok: { kind: 'formula', expr: value } };
  }
  const read = readQuantity(value);
  if ('problem' in read) return read;
  return checkFit(value, read.ok, fit) ?? { ok: { kind: 'quantity', quantity: read.ok } };
}

/** What is wrong with a value that was read, of whatever it was computed. */
export function checkFit(value: Expr, q: Quantity, fit: Fit): { problem: ValueProblem } | undefined {
  const bare = q.dim === NUMBER && !q.unit;
  const points = q.unit?.points === true;
  if (!fit.dims.includes(q.dim) || points) {
    const [first] = fit.units.split(', ');
    return bare && first ? fail('missing-unit', value, { wanted: fit.wanted, units: fit.units, written: String(q.value), suggestion: first })
      : fail('wrong-unit', value, { found: points ? 'percentage points' : dimName(q.dim), wanted: fit.wanted, units: fit.units, unit: q.unit?.text ?? '' });
  }
  return checkSign(value, q, fit.sign);
}

/** The dimension of a value, as far as its text tells: that of a literal, or that to which the units of a formula add up; of what is not told the rest counts. `named` gives the expression behind a name. */
export function dimOf(value: Expr, named: (name: string) => Expr | undefined, depth = 0): Dim | undefined {
  const of = (e: Expr): Dim | undefined => dimOf(e, named, depth + 1);
  if (depth > 20) return undefined;
  switch (value.kind) {
    case 'number': return value.unit ? parseUnit(value.unit.text)?.dim : NUMBER;
    case 'unary': return of(value.arg);
    case 'tolerance': { const d = of(value.value); return d === NUMBER ? (of(value.by) ?? d) : d; }
    case 'group': return value.unit ? parseUnit(value.unit.text)?.dim : value.items[0] && of(value.items[0]);
    case 'binary': {
      const [a, b] = [of(value.left), of(value.right)];
      if (!a || !b) return a ?? b;
      return value.op === '*' ? multiply(a, b) : value.op === '/' ? multiply(a, b, -1) : a;
    }
    case 'call': return value.unit ? parseUnit(value.unit.text)?.dim : value.args[0] && of(value.args[0]);
    case 'phrase': { const e = value.words.length === 1 ? named(value.words[0]!.text) : undefined; return e && of(e); }
    default: return undefined;
  }
}
