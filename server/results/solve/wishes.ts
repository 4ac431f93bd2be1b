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
  /** what counts as a little of it, SI: conditions on a length and on a ratio are weighed against each other by it */
  readonly little: number;
  /** by how much it may be missed, SI: what nobody could tell */
  readonly tolerance: number;
}

/** Those goals that could be held against a result. */
export function wishesOf(r: Results): Wish[] {
  return r.goals.flatMap(g => (g.cell && !g.cell.missing ? wishes(g as GoalResult & { cell: Cell }, r) : []));
}

function wishes({ goal, cell, limits }: GoalResult & { cell: Cell }, r: Results): Wish[] {
  const wish = (sort: Wish['sort'], value: number): Wish => ({ goal, cell, sort, value, little: littleOf(cell, value), tolerance: sort === 'equal' ? toleranceOf(cell, r.graph) : 0 });
  const [a, b] = limits as [number, number];
  const now = r.graph.value(cell)!;
  // Of what counts by its size, both signs will do.
  const size = bySize(cell);
  switch (goal.op) {
    case '<': case '<=': return size ? [wish('at most', a), wish('at least', -a)] : [wish('at most', a)];
    case '>': case '>=': return [size && now < 0 ? wish('at most', -a) : wish('at least', a)];
    case 'between': {
      const [low, high] = [Math.min(a, b), Math.max(a, b)];
      return size && now < 0 ? [wish('at least', -high), wish('at most', -low)] : [wish('at least', low), wish('at most', high)];
    }
    default: return [wish('equal', size && now < 0 ? -a : a)];
  }
}

/** By how much a result misses a condition, SI; 0 where it does not. */
export function missedBy({ sort, value }: Wish, is: number): number {
  const over = is - value;
  return sort === 'equal' ? over : sort === 'at most' ? Math.max(0, over) : Math.min(0, over);
}

/** Paths are weighed alike, whether they are to be long or nothing. */
const littleOf = (cell: Cell, value: number): number => (isPath(cell) ? STRING : Math.max(Math.abs(value) * SHARE, cell.dim === LENGTH ? 1e-4 : cell.dim === ANGLE ? 1e-3 : 1e-12));
const SHARE = 1e-2;
