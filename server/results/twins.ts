/**
 * What a graph may take over from the graph of the same setup before an edit. A cell of it is the *twin* of a new one where both have the same rule and their inputs
 * are twins, one of one; inputs are twins where they have the same value and spread. What rests on twins only need not be computed again.
 */
import type { Spread } from '../model/quantity.ts';
import type { Cell, Notes, Rule } from './cell.ts';

/** How far ahead a cell is looked for behind some that are gone. */
const AHEAD = 64;

/** What twins ask of a graph. */
interface Cells {
  readonly cells: readonly Cell[];
  value(cell: Cell): number | undefined;
  ancestors(cell: Cell): Cell[];
  noted(cell: Cell): Notes;
  known(cell: Cell): Notes | undefined;
  knownCells(): Iterable<Cell>;
}

export class Twins {
  // Cells with a rule, in order: both graphs are made in the same order of a text that has hardly changed.
  private readonly made: readonly Cell[];
  private next = 0;
  /** by the places of their twins: places of old cells (−1: none), and new cells */
  private olds: Int32Array;
  private readonly news: (Cell | undefined)[];
  private last = -1;
  private ascending: boolean | undefined;

  constructor(private readonly before: Cells, private readonly now: Cells) {
    this.made = before.cells.filter(c => c.rule);
    this.news = new Array<Cell | undefined>(before.cells.length).fill(undefined);
    this.olds = new Int32Array(before.cells.length + 64).fill(-1);
  }

  /** The twin that a new cell will have. */
  of(name: string, rule: Rule, inputs: readonly Cell[]): Cell | undefined {
    const old = this.named(name);
    if (!old || old.missing || old.inputs.length !== inputs.length || !sameRule(old.rule!, rule)) return undefined;
    for (let i = 0; i < inputs.length; i++) if (!this.areTwins(inputs[i]!, old.inputs[i]!)) return undefined;
    return old;
  }

  join(cell: Cell, old: Cell): void {
    if (cell.index >= this.olds.length) {
      const longer = new Int32Array(2 * cell.index).fill(-1);
      longer.set(this.olds);
      this.olds = longer;
    }
    this.olds[cell.index] = old.index;
    this.news[old.index] = cell;
    if (cell.index > this.last) this.last = cell.index;
    this.ascending = undefined;
  }

  value(old: Cell): number { return this.before.value(old)!; }

  /** What is known of a cell from its twin. */
  notesOf(cell: Cell): Notes {
    const at = cell.rule ? this.twinOf(cell) : -1;
    const old = at < 0 ? undefined : isDear(cell) ? this.before.noted(this.before.cells[at]!) : this.before.known(this.before.cells[at]!);
    if (!old || !this.inOrder(cell)) return { shared: {} };
    const { sweep, held, uncertainty, shared, normal, bent, darkest, map } = old;
    const notes: Notes = { shared };
    if (sweep) notes.sweep = { inputs: sweep.inputs.map(c => this.news[c.index]!), slopes: sweep.slopes };
    if (uncertainty !== undefined) notes.uncertainty = uncertainty;
    if (normal !== undefined) notes.normal = normal;
    if (bent !== undefined) notes.bent = bent;
    if (darkest !== undefined) notes.darkest = darkest;
    if (map !== undefined) notes.map = map;
    const by = held && this.news[held.by.index];
    if (by) notes.held = { ...held, by };
    return notes;
  }

  /** Cells that have a twin of which something is known, or will be dear to find out. */
  *noted(): Generator<Cell> {
    for (const old of this.before.knownCells()) {
      const cell = this.news[old.index];
      if (cell) yield cell;
    }
    for (const old of this.made) {
      const cell = isDear(old) ? this.news[old.index] : undefined;
      if (cell) yield cell;
    }
  }

  private named(name: string): Cell | undefined {
    const most = Math.min(this.made.length, this.next + AHEAD);
    for (let k = this.next; k < most; k++) {
      if (this.made[k]!.name !== name) continue;
      this.next = k + 1;
      return this.made[k];
    }
    return undefined;
  }

  private areTwins(cell: Cell, old: Cell): boolean {
    const at = this.twinOf(cell);
    if (at >= 0) return at === old.index;
    // Cells with a rule were paired when they were made.
    if (cell.rule || old.rule || this.news[old.index] || cell.missing || old.missing || cell.dim !== old.dim) return false;
    if (this.now.value(cell) !== this.before.value(old) || !sameSpread(cell.spread, old.spread)) return false;
    this.join(cell, old);
    return true;
  }

  private twinOf(cell: Cell): number { return cell.index < this.olds.length ? this.olds[cell.index]! : -1; }

  /** Sums are rounded, and draws dealt out, by the order of the cells: what was found holds where a cell rests on its inputs in the same order as its twin. */
  private inOrder(cell: Cell): boolean {
    // Mostly all cells have their twins in the same order.
    if (this.ascending ??= this.allAscend()) return true;
    let last = -1;
    for (const c of this.now.ancestors(cell)) {
      const at = this.twinOf(c);
      if (at <= last) return false;
      last = at;
    }
    return true;
  }

  private allAscend(): boolean {
    let last = -1;
    for (let i = 0; i <= this.last; i++) {
      const at = this.olds[i]!;
      if (at < 0) continue;
      if (at < last) return false;
      last = at;
    }
    return true;
  }
}

/** Much of it takes long to find out, so that it shares that with its twin even if nobody has asked yet. */
const isDear = ({ rule }: Cell): boolean => rule?.costly === true || rule?.curved === true;

/** Rules that are made afresh for each cell are the same if they were made with the same. */
function sameRule(a: Rule, b: Rule): boolean {
  return a === b || (a.of !== undefined && b.of !== undefined && a.name === b.name && a.formula === b.formula && sameItems(a.of, b.of));
}

export function sameSpread(a: Spread | undefined, b: Spread | undefined): boolean {
  if (a === b) return true;
  if (a?.kind !== b?.kind || !a || !b) return false;
  return a.kind === 'one of' ? b.kind === 'one of' && sameItems(a.values, b.values) : b.kind !== 'one of' && a.amount === b.amount;
}

function sameItems(a: readonly unknown[], b: readonly unknown[]): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}
