/** Compiles expressions into cells, checking units on the way: an error stands at its operator. */
import type { BinaryExpr, CallExpr, Expr, Span, Word } from '../../grammar/tree.ts';
import { beyond, describe, isLiteral, readNumber, readQuantity, readSpread, readUnit, type ValueProblem } from '../model/literal.ts';
import type { Place } from '../model/model.ts';
import { written } from '../model/written.ts';
import { ANGLE, dimName, multiply, NUMBER, parseUnit, power, type Dim, type Unit } from '../model/units.ts';
import type { Cell, Graph, Rule } from './graph.ts';

export interface Names {
  /** the cell of a name or phrase; undefined when nothing is called so */
  cell(name: string, at: Place): Cell | undefined;
  /** what is reported for a name that is nothing */
  unknown(name: string, span: Span): void;
}

export interface Compile {
  readonly graph: Graph;
  readonly names: Names;
  readonly name: string;
  readonly words: string;
  place(span: Span): Place;
  problem(p: ValueProblem): void;
}

const ADD: Rule = { name: 'sum', formula: 'a + b', linear: true, compute: ([a, b]) => a! + b!, partials: () => [1, 1] };
const SUBTRACT: Rule = { name: 'difference', formula: 'a − b', linear: true, compute: ([a, b]) => a! - b!, partials: () => [1, -1] };
const MULTIPLY: Rule = { name: 'product', formula: 'a · b', compute: ([a, b]) => a! * b!, partials: ([a, b]) => [b!, a!] };
const DIVIDE: Rule = { name: 'quotient', formula: 'a / b', compute: ([a, b]) => a! / b!, partials: ([a, b]) => [1 / b!, -a! / (b! * b!)] };
const NEGATE: Rule = { name: 'negative', formula: '−a', linear: true, compute: ([a]) => -a!, partials: () => [-1] };
const KELVIN = parseUnit('K')!;
const scaled = (f: number): Rule => ({ name: 'in a unit', formula: `${f} · a`, of: [f], linear: true, compute: ([a]) => a! * f, partials: () => [f] });

interface Fn { readonly rule: Rule; readonly args: number; readonly takes: Dim | 'any' | 'same'; readonly gives: Dim | 'same' | 'root' }
const fn = (name: string, f: (...x: number[]) => number, takes: Fn['takes'], gives: Fn['gives'], d?: (x: readonly number[]) => readonly number[], args = 1, curved = false): [string, Fn] =>
  [name, { args, takes, gives, rule: { name, formula: `${name}(a)`, compute: x => f(...x), ...(d ? { partials: d } : {}), ...(curved ? { curved } : {}) } }];
export const FUNCTIONS: ReadonlyMap<string, Fn> = new Map([
  fn('sqrt', Math.sqrt, 'any', 'root', ([a]) => [0.5 / Math.sqrt(a!)]),
  fn('abs', Math.abs, 'any', 'same', ([a]) => [Math.sign(a!)], 1, true),
  fn('min', Math.min, 'same', 'same', ([a, b]) => (a! <= b! ? [1, 0] : [0, 1]), 2, true),
  fn('max', Math.max, 'same', 'same', ([a, b]) => (a! >= b! ? [1, 0] : [0, 1]), 2, true),
  fn('sin', Math.sin, ANGLE, NUMBER, ([a]) => [Math.cos(a!)]), fn('cos', Math.cos, ANGLE, NUMBER, ([a]) => [-Math.sin(a!)]), fn('tan', Math.tan, ANGLE, NUMBER),
  fn('asin', Math.asin, NUMBER, ANGLE, undefined, 1, true), fn('acos', Math.acos, NUMBER, ANGLE, undefined, 1, true), fn('atan', Math.atan, NUMBER, ANGLE),
]);

/** True of a cell that is only a part of what a value is written as. */
export const isInner = (cell: Cell): boolean => cell.name.includes('~');

/** A cell of an expression. A part of it is called as it is written, the whole has what is written as its formula. */
function derive(e: Expr, ctx: Compile, name: string, rule: Rule, inputs: readonly Cell[], dim: Dim, at: Place, unit?: Unit): Cell {
  const whole = name === ctx.name;
  return ctx.graph.derive(name, rule, inputs, dim, whole ? ctx.words : written(e), { at, ...(unit ? { unit } : {}), ...(whole ? { formula: written(e) } : {}) });
}

/** The cell of an expression; undefined where a problem was reported. */
export function compile(e: Expr, ctx: Compile, name = ctx.name): Cell | undefined {
  if (isLiteral(e)) {
    if (e.kind === 'unknown') {
      const unit = e.unit && readUnit(e.unit);
      if (unit && 'problem' in unit) { ctx.problem(unit.problem); return undefined; }
      return ctx.graph.open({ name, dim: unit?.ok.dim ?? NUMBER, words: ctx.words, at: ctx.place(e), unit: unit?.ok, sign: 'any' });
    }
    const q = readQuantity(e);
    if ('problem' in q) { ctx.problem(q.problem); return undefined; }
    return ctx.graph.input(name, q.ok, 'written', name === ctx.name ? ctx.words : written(e), { at: ctx.place(e) });
  }
  switch (e.kind) {
    case 'phrase': return byName(e.words, e, ctx);
    case 'unary': {
      const arg = compile(e.arg, ctx, `${name}~`);
      return arg && (e.op === '+' ? arg : derive(e, ctx, name, NEGATE, [arg], arg.dim, ctx.place(e)));
    }
    case 'binary': return binary(e, ctx, name);
    case 'call': return call(e, ctx, name);
    case 'group': {
      if (e.items.length !== 1) { ctx.problem({ code: 'wrong-value', span: e, data: { found: describe(e), wanted: 'one value' } }); return undefined; }
      const inner = compile(e.items[0]!, ctx, e.unit ? `${name}~` : name);
      return inner && e.unit ? inUnit(inner, e.unit, e, ctx, name) : inner;
    }
    case 'tolerance': return tolerance(e, ctx, name);
    default:
      ctx.problem({ code: 'wrong-value', span: e, data: { found: describe(e), wanted: 'a value' } });
      return undefined;
  }
}

function byName(words: readonly Word[], e: Span, ctx: Compile): Cell | undefined {
  const text = words.map(w => w.text).join(' ');
  const cell = ctx.names.cell(text, ctx.place(e));
  if (!cell) ctx.names.unknown(text, e);
  return cell;
}

function inUnit(inner: Cell, word: Word, e: Expr, ctx: Compile, name: string): Cell | undefined {
  const unit = readUnit(word);
  if ('problem' in unit) { ctx.problem(unit.problem); return undefined; }
  if (inner.dim !== NUMBER) {
    ctx.problem({ code: 'wrong-unit', span: word, data: { found: dimName(inner.dim), wanted: 'a plain number before the bracket’s unit', units: '' } });
    return undefined;
  }
  return withinReach(derive(e, ctx, name, scaled(unit.ok.factor), [inner], unit.ok.dim, ctx.place(e), unit.ok), e, ctx);
}

function binary(e: BinaryExpr, ctx: Compile, name: string): Cell | undefined {
  const a = compile(e.left, ctx, `${name}~l`);
  const b = compile(e.right, ctx, `${name}~r`);
  if (!a || !b) return undefined;
  const at = ctx.place(e.at);
  if (e.op === '+' || e.op === '-') {
    if (a.dim !== b.dim) {
      ctx.problem({ code: 'units-differ', span: e.at, data: { left: dimName(a.dim), right: dimName(b.dim), op: e.op } });
      return undefined;
    }
    // Two places on the scale of temperature have no sum, and their difference is no place.
    const places = a.unit?.offset && b.unit?.offset;
    if (places && e.op === '+') {
      ctx.problem({ code: 'wrong-unit', span: e.right, data: { found: 'a temperature on the scale', wanted: 'a difference of temperature', units: 'K' } });
      return undefined;
    }
    return withinReach(derive(e, ctx, name, e.op === '+' ? ADD : SUBTRACT, [a, b], a.dim, at, places ? KELVIN : a.unit), e, ctx);
  }
  if (e.op === '/' && ctx.graph.value(b) === 0) {
    ctx.problem({ code: 'impossible-value', span: e.right, data: { why: 'nothing can be divided by zero' } });
    return undefined;
  }
  const kept = b.dim === NUMBER ? a.unit : e.op === '*' && a.dim === NUMBER ? b.unit : undefined;
  return withinReach(derive(e, ctx, name, e.op === '*' ? MULTIPLY : DIVIDE, [a, b], multiply(a.dim, b.dim, e.op === '*' ? 1 : -1), at, kept?.offset ? KELVIN : kept), e, ctx);
}

/** The cell, unless its value is beyond what can be computed with; that is reported. */
function withinReach(cell: Cell, e: Span, ctx: Compile): Cell | undefined {
  if (cell.missing && cell.inputs.some(c => c.missing)) return cell;
  const why = beyond(ctx.graph.value(cell) ?? Number.NaN);
  if (why === undefined) return cell;
  ctx.problem({ code: 'impossible-value', span: e, data: { why } });
  return undefined;
}

function call(e: CallExpr, ctx: Compile, name: string): Cell | undefined {
  const f = FUNCTIONS.get(e.name.text);
  if (!f) { ctx.names.unknown(e.name.text, e.name); return undefined; }
  if (e.args.length !== f.args) {
    ctx.problem({ code: 'wrong-value', span: e, data: { found: `${e.args.length} values`, wanted: `${f.args === 1 ? 'one value' : `${f.args} values`} for ${e.name.text}` } });
    return undefined;
  }
  const args: Cell[] = [];
  for (const [i, a] of e.args.entries()) {
    const c = compile(a, ctx, `${name}~${i}`);
    if (!c) return undefined;
    args.push(c);
  }
  const first = args[0]!;
  for (const [i, c] of args.entries()) {
    const wanted = f.takes === 'any' ? c.dim : f.takes === 'same' ? first.dim : f.takes;
    if (c.dim !== wanted) { ctx.problem({ code: 'wrong-unit', span: e.args[i]!, data: { found: dimName(c.dim), wanted: dimName(wanted), units: '' } }); return undefined; }
  }
  const dim = f.gives === 'same' ? first.dim : f.gives === 'root' ? power(first.dim, 0.5) : f.gives;
  const v = f.rule.compute(args.map(c => ctx.graph.value(c) ?? 0));
  if (!Number.isFinite(v) && args.every(c => !c.missing)) { ctx.problem({ code: 'impossible-value', span: e, data: { why: `${e.name.text} of that has no value` } }); return undefined; }
  const cell = derive(e, ctx, e.unit ? `${name}~f` : name, f.rule, args, dim, ctx.place(e));
  return e.unit ? inUnit(cell, e.unit, e, ctx, name) : cell;
}

/** A formula with its own `±` or `×÷`: what it adds or multiplies is an input of its own, 0 or 1 with that spread. */
function tolerance(e: Expr & { kind: 'tolerance' }, ctx: Compile, name: string): Cell | undefined {
  const value = compile(e.value, ctx, `${name}~v`);
  if (!value) return undefined;
  const by = readNumber(e.by);
  if ('problem' in by) { ctx.problem(by.problem); return undefined; }
  const spread = readSpread(e, { value: ctx.graph.value(value) ?? 0, dim: value.dim, ...(value.unit ? { unit: value.unit } : {}) }, by.ok);
  if ('problem' in spread) { ctx.problem(spread.problem); return undefined; }
  const factor = e.op === '×÷';
  const slack = ctx.graph.input(`${name}~${e.op}`, { value: factor ? 1 : 0, dim: factor ? NUMBER : value.dim, spread: spread.ok }, 'written', `give or take of ${name === ctx.name ? ctx.words : written(e.value)}`, { at: ctx.place(e.by) });
  return derive(e, ctx, name, factor ? MULTIPLY : ADD, [value, slack], value.dim, ctx.place(e), value.unit);
}
