/**
 * Cells: every figure of a setup, in the order in which they depend on each other. One pass forward evaluates them, one pass
 * backward gives the derivative of a result by each input. See `server/core.md`.
 */
import type { Place } from '../model/model.ts';
import { standardUncertainty, type Quantity, type Spread } from '../model/quantity.ts';
import type { Dim, Unit } from '../model/units.ts';
import type { Cell, Missing, Notes, Open, Origin, Rule, Sweep } from './cell.ts';
import { Twins } from './twins.ts';

export type { Band, Cell, Missing, Notes, Open, Origin, Rule } from './cell.ts';

const NO_CELLS: readonly Cell[] = [];

/** What an input is called, and where it stands. */
export interface Label {
  readonly name: string;
  readonly words: string;
  readonly at: Place | undefined;
}

class WrittenInput implements Cell {
  constructor(readonly index: number, private readonly label: Label, readonly dim: Dim, readonly spread: Spread | undefined, readonly unit: Unit | undefined) {}
  get name(): string { return this.label.name; }
  get words(): string { return this.label.words; }
  get at(): Place | undefined { return this.label.at; }
  readonly origin = 'written';
  get inputs(): readonly Cell[] { return NO_CELLS; }
  get rule(): undefined { return undefined; }
  get reason(): undefined { return undefined; }
  get missing(): undefined { return undefined; }
}

export class Graph {
  readonly cells: Cell[] = [];
  private values: number[] = [];
  /** whether anything that a cell rests on is unsure: a derivative by what is exact is not needed for an uncertainty, and most of a placed page is exact */
  private readonly unsure: boolean[] = [];
  // Most cells are never asked for by name, so that they are indexed when somebody asks.
  private readonly byName = new Map<string, Cell>();
  private indexed = 0;
  // Kept as long as the graph: uncertainty, ranking, draws and solving all ask for the same.
  private readonly notes = new Map<Cell, Notes>();
  /** Where a cell stands among those that the evaluator now made runs through; what an earlier one left is not read. */
  private slots = new Int32Array(0);
  private twins: Twins | undefined;
  private count = Infinity;
  /** how many rules have run; an edit must only run those that it touches */
  computed = 0;
  /** how many bands were drawn */
  drawn = 0;

  /** the numbers that are written `?`, in the order in which they were met */
  readonly opens: Open[] = [];

  /**
   * `before`: the graph of the same setup before an edit. What has not changed is taken from it, until the graph is settled.
   * `found`: values of inputs, by the names of their cells, SI: what to work with where a number is written `?`, and what is tried in the place of others.
   */
  constructor(before?: Graph, readonly found?: ReadonlyMap<string, number>) {
    if (before) this.twins = new Twins(before, this);
  }

  /** The graph is whole: what is known of cells before the edit is taken over, and the graph before it let go. */
  settle(): void {
    for (const cell of this.twins?.noted() ?? []) this.noted(cell);
    this.twins = undefined;
    this.count = this.cells.length;
  }

  /** The cells that there were when the graph was settled. Who looks closer may have asked for more since: what is shown must not rest on who has looked before. */
  get planned(): readonly Cell[] { return this.cells.slice(0, this.count); }
  isPlanned(cell: Cell): boolean { return cell.index < this.count; }

  /** What was found out about a cell, to be added to. */
  noted(cell: Cell): Notes {
    let notes = this.notes.get(cell);
    if (!notes) this.notes.set(cell, notes = this.twins?.notesOf(cell) ?? { shared: {} });
    return notes;
  }
  known(cell: Cell): Notes | undefined { return this.notes.get(cell); }
  knownCells(): Iterable<Cell> { return this.notes.keys(); }

  find(name: string): Cell | undefined {
    for (; this.indexed < this.cells.length; this.indexed++) {
      const cell = this.cells[this.indexed]!;
      if (!this.byName.has(cell.name)) this.byName.set(cell.name, cell);
    }
    return this.byName.get(name);
  }

  /** Value in SI; undefined where it is missing. */
  value(cell: Cell): number | undefined {
    return cell.missing ? undefined : this.values[cell.index];
  }

  /** An input as it is written. Its names are only made when somebody asks, since most of a long page is such inputs. */
  written(label: Label, q: Quantity): Cell {
    return this.add(new WrittenInput(this.cells.length, label, q.dim, q.spread, q.unit), this.found?.get(label.name) ?? q.value);
  }

  input(name: string, q: Quantity, origin: Origin, words: string, more: { at?: Place; reason?: string } = {}): Cell {
    return this.add({ index: this.cells.length, name, dim: q.dim, origin, rule: undefined, inputs: NO_CELLS, spread: q.spread, unit: q.unit, at: more.at, words, reason: more.reason, missing: undefined }, this.found?.get(name) ?? q.value);
  }

  /** A number that is written `?`: it has no value, unless one was found for it. */
  open(open: Open): Cell {
    this.opens.push(open);
    const { name, dim, words, at, unit } = open;
    const value = this.found?.get(name);
    return value === undefined ? this.missing(name, dim, words, { code: 'unknown-asked', why: `${words} is written ?`, at })
      : this.input(name, { value, dim, ...(unit ? { unit } : {}) }, 'solved', words, { at, reason: 'written ?' });
  }

  /** A cell without a value, with the reason. */
  missing(name: string, dim: Dim, words: string, missing: Missing): Cell {
    return this.add({ index: this.cells.length, name, dim, origin: 'computed', rule: undefined, inputs: NO_CELLS, spread: undefined, unit: undefined, at: undefined, words, reason: undefined, missing }, 0);
  }

  /** A cell made by a rule. It is missing when an input is, or when the rule gives no finite number. */
  derive(name: string, rule: Rule, inputs: readonly Cell[], dim: Dim, words: string, more: { unit?: Unit; at?: Place; formula?: string } = {}): Cell {
    let missing = inputs.find(c => c.missing)?.missing;
    const twin = missing ? undefined : this.twins?.of(name, rule, inputs);
    let value = twin ? this.twins!.value(twin) : 0;
    if (!missing && !twin) {
      this.computed++;
      value = rule.compute(inputs.map(c => this.values[c.index]!));
      if (!Number.isFinite(value)) {
        value = 0;
        missing = { code: 'impossible-value', why: `${words} has no value: ${rule.formula}`, ...(more.at ? { at: more.at } : {}) };
      }
    }
    const cell = this.add({ index: this.cells.length, name, dim, origin: 'computed', rule, inputs, spread: undefined, unit: more.unit, at: more.at, words, reason: undefined, missing, ...(more.formula === undefined ? {} : { formula: more.formula }) }, value);
    if (twin) this.twins!.join(cell, twin);
    return cell;
  }

  private add(cell: Cell, value: number): Cell {
    this.cells.push(cell);
    this.values.push(value);
    this.unsure.push(standardUncertainty(value, cell.spread) > 0 || cell.inputs.some(i => this.unsure[i.index]));
    return cell;
  }

  /** Whether anything that a cell rests on is unsure. */
  isUnsure(cell: Cell): boolean { return this.unsure[cell.index]!; }

  /** The cells that a cell depends on, itself last, in order. Cells for which `stop` holds are kept, what lies behind them is not. */
  ancestors(cell: Cell, stop?: (c: Cell) => boolean): Cell[] {
    const marked = new Uint8Array(cell.index + 1);
    marked[cell.index] = 1;
    const found: Cell[] = [];
    // Inputs come before what is made of them, so that one sweep down meets everything.
    for (let i = cell.index; i >= 0; i--) {
      if (marked[i] === 0) continue;
      const c = this.cells[i]!;
      found.push(c);
      if (!stop?.(c)) for (const input of c.inputs) marked[input.index] = 1;
    }
    return found.reverse();
  }

  /** Value of a cell when some cells have other values: one pass forward over what it depends on. */
  evaluate(cell: Cell, overlay: ReadonlyMap<Cell, number>): number {
    return this.evaluator(cell, [...overlay.keys()])([...overlay.values()]);
  }

  /** A function that gives the cell's value for values of some cells; made once, called often. `costly` where a rule that it runs is; behind `still` cells nothing is looked at. */
  evaluator(cell: Cell, free: readonly Cell[], still: readonly Cell[] = NO_CELLS): ((at: readonly number[]) => number) & { readonly costly: boolean } {
    const run = this.compiled(cell, free, still);
    return Object.assign((at: readonly number[]) => forward(run, at), { costly: run.steps.some(t => t.rule.costly === true) });
  }

  /** A function that gives the cell's derivatives by some cells, for values of these: one pass back over what they move. Made once, called often. */
  differentiator(cell: Cell, free: readonly Cell[], still: readonly Cell[] = NO_CELLS): (at: readonly number[]) => number[] {
    const run = this.compiled(cell, free, still);
    // A sum over many parts has more inputs than there are cells to ask for: it is run once for each of these.
    if (run.steps.some(s => s.rule.costly === true && !s.rule.partials)) {
      return at => {
        const now = forward(run, at);
        return at.map((v, k) => {
          if (run.freeAt[k]! < 0) return 0;
          const h = Math.max(Math.abs(v), 1e-3) * 1e-5;
          const d = (forward(run, at.with(k, v + h)) - now) / h;
          return Number.isFinite(d) ? d : 0;
        });
      };
    }
    const adjoint = new Float64Array(run.values.length);
    return at => {
      forward(run, at);
      adjoint.fill(0);
      adjoint[adjoint.length - 1] = 1;
      for (let k = run.steps.length - 1; k >= 0; k--) {
        const { i, rule, from, args, moving } = run.steps[k]!;
        const a = adjoint[i]!;
        if (a === 0) continue;
        for (let j = 0; j < from.length; j++) args[j] = run.values[from[j]!]!;
        const p = partials(rule, args, moving);
        for (let j = 0; j < from.length; j++) if (moving[j]!) adjoint[from[j]!] = adjoint[from[j]!]! + a * p[j]!;
      }
      return run.freeAt.map(s => (s >= 0 ? adjoint[s]! : 0));
    };
  }

  private compiled(cell: Cell, free: readonly Cell[], still: readonly Cell[]): Run {
    const stop = new Set(free);
    for (const c of still) stop.add(c);
    const order = this.ancestors(cell, c => stop.has(c));
    if (this.slots.length < this.cells.length) this.slots = new Int32Array(2 * this.cells.length);
    const slot = this.slots;
    const values = new Float64Array(order.length);
    order.forEach((c, i) => { slot[c.index] = i; values[i] = this.values[c.index]!; });
    const freeAt = free.map(c => (order[slot[c.index]!] === c ? slot[c.index]! : -1));
    // What rests on none of them stays as it is.
    const moves = new Uint8Array(order.length);
    for (const s of freeAt) if (s >= 0) moves[s] = 1;
    const steps: Step[] = [];
    order.forEach((c, i) => {
      if (!c.rule || stop.has(c) || !c.inputs.some(x => moves[slot[x.index]!] === 1)) return;
      moves[i] = 1;
      steps.push({ i, rule: c.rule, from: c.inputs.map(x => slot[x.index]!), args: new Array<number>(c.inputs.length).fill(0), moving: c.inputs.map(x => moves[slot[x.index]!] === 1) });
    });
    return { values, freeAt, steps };
  }

  /** Derivatives of a cell by every input that it rests on: one pass backward. */
  gradient(cell: Cell): ReadonlyMap<Cell, number> {
    const { inputs, slopes } = cell.rule ? this.sweepNow(cell, () => true) : { inputs: [cell], slopes: [1] };
    return new Map(inputs.map((c, i) => [c, slopes[i]!]));
  }

  /** Derivatives of a cell where some cells have other values: by those, and by every input that it rests on besides. */
  gradientAt(cell: Cell, overlay: ReadonlyMap<Cell, number>): ReadonlyMap<Cell, number> {
    const order = this.ancestors(cell, c => overlay.has(c));
    const values = new Map<Cell, number>();
    for (const c of order) values.set(c, overlay.get(c) ?? (c.rule ? c.rule.compute(c.inputs.map(i => values.get(i)!)) : this.values[c.index]!));
    const adjoint = new Map<Cell, number>([[cell, 1]]);
    const found = new Map<Cell, number>();
    for (const c of order.reverse()) {
      const a = adjoint.get(c) ?? 0;
      if (!c.rule || overlay.has(c)) { found.set(c, a); continue; }
      const p = partials(c.rule, c.inputs.map(i => values.get(i)!));
      for (const [j, i] of c.inputs.entries()) adjoint.set(i, (adjoint.get(i) ?? 0) + a * p[j]!);
    }
    return found;
  }

  /** The same by the inputs that are unsure. */
  private sweep(cell: Cell): Sweep {
    return cell.rule ? this.noted(cell).sweep ??= this.sweepNow(cell, c => this.unsure[c.index] === true, true) : { inputs: [cell], slopes: [1] };
  }

  /** Derivatives of a cell by the unsure inputs that it rests on. */
  slopes(cell: Cell): ReadonlyMap<Cell, number> {
    const { inputs, slopes } = this.sweep(cell);
    return new Map(inputs.map((c, i) => [c, slopes[i]!]));
  }

  private sweepNow(cell: Cell, asked: (c: Cell) => boolean, keeps = false): Sweep {
    // What an input does by several ways may cancel; then only rounding is left, which is no slope.
    const { adjoint, reach, marked } = cleared(cell.index + 1);
    adjoint[cell.index] = 1;
    marked[cell.index] = 1;
    const inputs: Cell[] = [];
    const slopes: number[] = [];
    for (let i = cell.index; i >= 0; i--) {
      if (marked[i] === 0) continue;
      const c = this.cells[i]!;
      const a = Math.abs(adjoint[i]!) > ROUNDING * reach[i]! ? adjoint[i]! : 0;
      if (!c.rule) {
        inputs.push(c);
        slopes.push(a);
        continue;
      }
      const wanted = c.inputs.map(asked);
      const find = (rule: Rule): readonly number[] => partials(rule, c.inputs.map(x => this.values[x.index]!), wanted);
      // Several results rest on one that takes many evaluations.
      const p = keeps && !c.rule.partials ? this.noted(c).shared.slopes ??= find(c.rule) : find(c.rule);
      for (let j = 0; j < c.inputs.length; j++) {
        if (wanted[j] !== true) continue;
        const k = c.inputs[j]!.index;
        marked[k] = 1;
        adjoint[k] = adjoint[k]! + a * p[j]!;
        reach[k] = reach[k]! + Math.abs(a * p[j]!);
      }
    }
    return { inputs, slopes };
  }

  /** The largest share that one input has in the variance of a cell, by first order; 0 where the cell is exact. */
  largestShare(cell: Cell): number {
    const { inputs, slopes } = this.sweep(cell);
    let most = 0;
    let sum = 0;
    for (let i = 0; i < inputs.length; i++) {
      const { spread, index } = inputs[i]!;
      if (!spread) continue;
      const part = (slopes[i]! * standardUncertainty(this.values[index]!, spread)) ** 2;
      sum += part;
      if (part > most) most = part;
    }
    return sum > 0 ? most / sum : 0;
  }

  /** Standard uncertainty to first order, SI: √Σ(∂r/∂x · u(x))², inputs independent (JCGM 100:2008, eq. 10). */
  uncertainty(cell: Cell): number {
    if (cell.missing) return 0;
    if (!cell.rule) return finite(standardUncertainty(this.values[cell.index]!, cell.spread));
    if (!this.isUnsure(cell)) return 0;
    const notes = this.noted(cell);
    if (notes.uncertainty !== undefined) return notes.uncertainty;
    let sum = 0;
    const { inputs, slopes } = this.sweep(cell);
    for (let i = 0; i < inputs.length; i++) {
      const { spread, index } = inputs[i]!;
      if (spread) sum += (slopes[i]! * standardUncertainty(this.values[index]!, spread)) ** 2;
    }
    return notes.uncertainty = finite(Math.sqrt(sum));
  }

  /** The unsure inputs that a cell rests on, those that make it unsure most first. */
  ranking(cell: Cell): { input: Cell; slope: number; share: number }[] {
    const { inputs, slopes } = this.sweep(cell);
    const rows = inputs.map((input, i) => ({
      input, slope: finite(slopes[i]!),
      share: finite(Math.abs(input.spread?.kind === 'one of' ? this.spreadOver(cell, input, input.spread.values) : slopes[i]! * standardUncertainty(this.values[input.index]!, input.spread))),
    }));
    const most = rows.reduce((m, r) => Math.max(m, r.share), 0) || 1;
    const total = rows.reduce((s, r) => s + (r.share / most) ** 2, 0);
    return rows.map(r => ({ ...r, share: total > 0 ? (r.share / most) ** 2 / total : 0 })).sort((a, b) => b.share - a.share || a.input.index - b.input.index);
  }

  /** A choice has no slope: it counts by how far apart the results of its values lie. */
  private spreadOver(cell: Cell, input: Cell, choices: readonly number[]): number {
    const at = this.evaluator(cell, [input]);
    return standardUncertainty(0, { kind: 'one of', values: choices.map(v => at([v])) });
  }
}

/** What a sweep writes for each cell: a page with many results is swept hundreds of times, one sweep behind the other. */
let slate = { adjoint: new Float64Array(0), reach: new Float64Array(0), marked: new Uint8Array(0) };
function cleared(length: number): typeof slate {
  if (length > slate.marked.length) return slate = { adjoint: new Float64Array(2 * length), reach: new Float64Array(2 * length), marked: new Uint8Array(2 * length) };
  slate.adjoint.fill(0, 0, length);
  slate.reach.fill(0, 0, length);
  slate.marked.fill(0, 0, length);
  return slate;
}

/** The cells that some others move, as places in an array of values, the cell that is asked for last. */
interface Run { readonly values: Float64Array; readonly freeAt: readonly number[]; readonly steps: readonly Step[] }
interface Step { readonly i: number; readonly rule: Rule; readonly from: readonly number[]; readonly args: number[]; /** which of its inputs are moved */ readonly moving: readonly boolean[] }

function forward({ values, freeAt, steps }: Run, at: readonly number[]): number {
  for (let k = 0; k < freeAt.length; k++) if (freeAt[k]! >= 0) values[freeAt[k]!] = at[k]!;
  for (const s of steps) {
    for (let k = 0; k < s.from.length; k++) s.args[k] = values[s.from[k]!]!;
    values[s.i] = s.rule.compute(s.args);
  }
  return values[values.length - 1]!;
}

/** Below this share of what was added, a sum is rounding: central differences are good to 1e-10. */
const ROUNDING = 1e-9;

/** No infinity leaves the graph: what overflows is as large as a number can be. */
const finite = (v: number): number => (Number.isFinite(v) ? v : Number.MAX_VALUE);

/** Partials of a rule at a point: its own, or differences. Those that are not wanted may be 0. */
export function partials(rule: Rule, x: readonly number[], wanted?: readonly boolean[]): readonly number[] {
  if (rule.partials) return rule.partials(x, wanted);
  return x.map((xi, i) => {
    if (wanted?.[i] === false) return 0;
    const h = Math.max(Math.abs(xi), 1e-6) * 1e-5;
    const at = (v: number): number => rule.compute(x.map((xj, j) => (j === i ? v : xj)));
    const [above, below] = [at(xi + h), at(xi - h)];
    // At the end of what a formula takes, such as the arc sine of 1, there is one side only.
    const d = Number.isFinite(above) && Number.isFinite(below) ? (above - below) / (2 * h) : Number.isFinite(above) ? (above - at(xi)) / h : (at(xi) - below) / h;
    return Number.isFinite(d) ? d : 0;
  });
}
