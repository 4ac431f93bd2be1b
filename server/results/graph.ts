/**
 * Cells: every figure of a setup, in the order in which they depend on each other. One pass forward evaluates them, one pass
 * backward gives the derivative of a result by each input. See `server/core.md`.
 */
import type { Place } from '../model/model.ts';
import { standardUncertainty, type Quantity, type Spread } from '../model/quantity.ts';
import type { Dim, Unit } from '../model/units.ts';

export type Origin = 'written' | 'measured' | 'computed' | 'solved' | 'assumed';

/** How cells are computed from cells: a plain-number function, SI in, SI out. */
export interface Rule {
  readonly name: string;
  /** the formula as it is shown to people */
  readonly formula: string;
  /** where it is from */
  readonly source?: string;
  readonly compute: (x: readonly number[]) => number;
  /** derivatives by each input; central differences where absent */
  readonly partials?: (x: readonly number[]) => readonly number[];
  /** the result is a weighted sum of its inputs, so that it can be drawn as one number */
  readonly linear?: boolean;
  /** first order is not good enough: kinks, flat tops, choices */
  readonly curved?: boolean;
}

/** Why a cell has no value: the problem at the root. */
export interface Missing {
  readonly code: string;
  /** in words, completing "because …" */
  readonly why: string;
  readonly at?: Place;
}

export interface Cell {
  readonly index: number;
  readonly name: string;
  readonly dim: Dim;
  readonly origin: Origin;
  readonly rule?: Rule;
  readonly inputs: readonly Cell[];
  readonly spread?: Spread;
  /** unit in which the author wrote it */
  readonly unit?: Unit;
  readonly at?: Place;
  /** in words, for chains of numbers: "leg S1 → M1" */
  readonly words: string;
  /** for assumed inputs, the reason */
  readonly reason?: string;
  readonly missing?: Missing;
}

export class Graph {
  readonly cells: Cell[] = [];
  private readonly byName = new Map<string, Cell>();
  private values: number[] = [];
  /** how many rules have run; an edit must only run those that it touches */
  computed = 0;

  find(name: string): Cell | undefined {
    return this.byName.get(name);
  }

  /** Value in SI; undefined where it is missing. */
  value(cell: Cell): number | undefined {
    return cell.missing ? undefined : this.values[cell.index];
  }

  input(name: string, q: Quantity, origin: Origin, words: string, more: { at?: Place; reason?: string } = {}): Cell {
    return this.add({ name, dim: q.dim, origin, inputs: [], words, ...(q.spread ? { spread: q.spread } : {}), ...(q.unit ? { unit: q.unit } : {}), ...more }, q.value);
  }

  /** A cell without a value, with the reason. */
  missing(name: string, dim: Dim, words: string, missing: Missing): Cell {
    return this.add({ name, dim, origin: 'computed', inputs: [], words, missing }, 0);
  }

  /** A cell made by a rule. It is missing when an input is, or when the rule gives no finite number. */
  derive(name: string, rule: Rule, inputs: readonly Cell[], dim: Dim, words: string, more: { unit?: Unit; at?: Place } = {}): Cell {
    const lost = inputs.find(c => c.missing);
    if (lost) return this.add({ name, dim, origin: 'computed', rule, inputs, words, missing: lost.missing!, ...more }, 0);
    this.computed++;
    const value = rule.compute(inputs.map(c => this.values[c.index]!));
    if (!Number.isFinite(value)) {
      return this.add({ name, dim, origin: 'computed', rule, inputs, words, missing: { code: 'impossible-value', why: `${words} has no value: ${rule.formula}`, ...(more.at ? { at: more.at } : {}) }, ...more }, 0);
    }
    return this.add({ name, dim, origin: 'computed', rule, inputs, words, ...more }, value);
  }

  private add(cell: Omit<Cell, 'index'>, value: number): Cell {
    const full: Cell = { ...cell, index: this.cells.length };
    this.cells.push(full);
    this.values.push(value);
    if (!this.byName.has(cell.name)) this.byName.set(cell.name, full);
    return full;
  }

  /** The cells that a cell depends on, itself last, in order. */
  ancestors(cell: Cell): Cell[] {
    const seen = new Set<Cell>();
    const stack = [cell];
    while (stack.length > 0) {
      const c = stack.pop()!;
      if (seen.has(c)) continue;
      seen.add(c);
      for (const i of c.inputs) stack.push(i);
    }
    return [...seen].sort((a, b) => a.index - b.index);
  }

  /** Value of a cell when some inputs (or any cells) have other values: one pass forward over what it depends on. */
  evaluate(cell: Cell, overlay: ReadonlyMap<Cell, number>, order: readonly Cell[] = this.ancestors(cell)): number {
    const local = new Map<Cell, number>();
    for (const c of order) {
      const over = overlay.get(c);
      local.set(c, over ?? (c.rule ? c.rule.compute(c.inputs.map(i => local.get(i) ?? this.values[i.index]!)) : this.values[c.index]!));
    }
    return local.get(cell)!;
  }

  /** Derivatives of a cell by every input that it rests on: one pass backward. */
  gradient(cell: Cell): Map<Cell, number> {
    const order = this.ancestors(cell);
    const adjoint = new Map<Cell, number>([[cell, 1]]);
    const result = new Map<Cell, number>();
    for (let k = order.length - 1; k >= 0; k--) {
      const c = order[k]!;
      const a = adjoint.get(c) ?? 0;
      if (!c.rule) { result.set(c, a); continue; }
      if (a === 0) continue;
      const p = partials(c.rule, c.inputs.map(i => this.values[i.index]!));
      c.inputs.forEach((i, j) => adjoint.set(i, (adjoint.get(i) ?? 0) + a * p[j]!));
    }
    return result;
  }

  /** Standard uncertainty to first order, SI: √Σ(∂r/∂x · u(x))², inputs independent (JCGM 100:2008, eq. 10). */
  uncertainty(cell: Cell): number {
    if (cell.missing) return 0;
    let sum = 0;
    for (const [input, slope] of this.gradient(cell)) sum += (slope * standardUncertainty(this.values[input.index]!, input.spread)) ** 2;
    return Math.sqrt(sum);
  }

  /** The inputs that a cell rests on, those that make it unsure most first. */
  ranking(cell: Cell): { input: Cell; slope: number; share: number }[] {
    const rows = [...this.gradient(cell)].map(([input, slope]) => ({ input, slope, share: (slope * standardUncertainty(this.values[input.index]!, input.spread)) ** 2 }));
    const total = rows.reduce((s, r) => s + r.share, 0);
    return rows.map(r => ({ ...r, share: total > 0 ? r.share / total : 0 })).sort((a, b) => b.share - a.share || a.input.index - b.input.index);
  }
}

/** Partials of a rule at a point: its own, or central differences. */
export function partials(rule: Rule, x: readonly number[]): readonly number[] {
  if (rule.partials) return rule.partials(x);
  return x.map((xi, i) => {
    const h = Math.max(Math.abs(xi), 1e-6) * 1e-5;
    const at = (v: number): number => rule.compute(x.map((xj, j) => (j === i ? v : xj)));
    const d = (at(xi + h) - at(xi - h)) / (2 * h);
    return Number.isFinite(d) ? d : 0;
  });
}
