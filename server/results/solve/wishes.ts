/** What an answer has to do: the `aim` and `expect` lines of a setup, as conditions on its cells. */
import type { Goal } from '../../model/model.ts';
import { ANGLE, LENGTH } from '../../model/units.ts';
import { bySize, isPath, STRING, toleranceOf, type GoalResult } from '../goals.ts';
import type { Cell } from '../graph.ts';
import type { Results } from '../plan.ts';

/** A cell that is to have a value, or to keep to one side of it. */
export interface Wish {
  readonly goal: Goal;
  readonly cell: Cell;
  readonly sort: 'equal' | 'at most' | 'at least';
  readonly value: number;
  /** its size counts, whichever sign it has */
  readonly size: boolean;
  /** what counts as a little of it, SI: conditions on a length and on a ratio are weighed against each other by it */
  readonly little: number;
  /** by how much it may be missed, SI: what nobody could tell */
  readonly tolerance: number;
}

/** Those goals that could be held against a result. */
export function wishesOf(r: Results): Wish[] {
  // A share that has a closed form is set for its ratio in each plan.
  const closed = new Set(r.light.solved.filter(s => !s.bounded).map(s => s.ratio.name.replace(/ as aimed$/, '')));
  return r.goals.flatMap(g => (g.cell && !g.cell.missing && !closed.has(g.cell.name) ? wishes(g as GoalResult & { cell: Cell }, r) : []));
}

function wishes({ goal, cell, limits }: GoalResult & { cell: Cell }, r: Results): Wish[] {
  const size = bySize(cell);
  const wish = (sort: Wish['sort'], value: number, by = size): Wish => ({ goal, cell, sort, value, size: by, little: littleOf(cell, value), tolerance: sort === 'equal' ? toleranceOf(cell, r.graph) : 0 });
  const [a, b] = limits as [number, number];
  switch (goal.op) {
    case '<': case '<=': return size ? [wish('at most', a, false), wish('at least', -a, false)] : [wish('at most', a)];
    case '>': case '>=': return [wish('at least', a)];
    case 'between': return [wish('at least', Math.min(a, b)), wish('at most', Math.max(a, b))];
    // A size has a bend at nothing: where nothing is asked for, the result itself is to be that.
    default: return [wish('equal', a, size && a !== 0)];
  }
}

/** By how much a result misses a condition, SI; 0 where it does not. */
export function missedBy({ sort, value, size }: Wish, is: number): number {
  const over = (size ? Math.abs(is) : is) - value;
  return sort === 'equal' ? over : sort === 'at most' ? Math.max(0, over) : Math.min(0, over);
}

/** Paths are weighed alike, whether they are to be long or nothing. */
const littleOf = (cell: Cell, value: number): number => (isPath(cell) ? STRING : Math.max(Math.abs(value) * SHARE, cell.dim === LENGTH ? 1e-4 : cell.dim === ANGLE ? 1e-3 : 1e-12));
const SHARE = 1e-2;
