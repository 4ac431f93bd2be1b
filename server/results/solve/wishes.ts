/** What an answer has to do: the `aim` and `expect` lines of a setup, as conditions on its cells. */
import type { Goal } from '../../model/model.ts';
import { ANGLE, LENGTH } from '../../model/units.ts';
import { bySize, isPath, STRING, toleranceOf, type GoalResult } from '../goals.ts';
import type { Cell, Graph } from '../graph.ts';
import type { Results } from '../plan.ts';

/** A cell that is to have a value, or to keep to one side of it. */
export interface Condition {
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

/** A condition that a goal asks for. */
export interface Wish extends Condition { readonly goal: Goal }

/** A condition of nobody's goal. */
export const conditionOn = (cell: Cell, sort: Condition['sort'], value: number, graph: Graph, size = false): Condition => ({ cell, sort, value, size, little: littleOf(cell, value), tolerance: sort === 'equal' ? toleranceOf(cell, graph) : 0 });

/** Those goals that could be held against a result. */
export function wishesOf(r: Results): Wish[] {
  // A share that has a closed form is set for its ratio in each plan.
  const closed = new Set(r.light.solved.filter(s => !s.bounded).map(s => s.ratio.name.replace(/ as aimed$/, '')));
  return r.goals.flatMap(g => (g.cell && !g.cell.missing && !closed.has(g.cell.name) ? conditionsOf({ ...g, cell: g.cell }, r.graph).map(c => ({ goal: g.goal, ...c })) : []));
}

/** What a goal asks of its result. */
export function conditionsOf({ goal, cell, limits }: Pick<GoalResult, 'goal' | 'limits'> & { readonly cell: Cell }, graph: Graph): Condition[] {
  const size = bySize(cell);
  const on = (sort: Condition['sort'], value: number, by = size): Condition => conditionOn(cell, sort, value, graph, by);
  const [a, b] = limits as [number, number];
  switch (goal.op) {
    case '<': case '<=': return size ? [on('at most', a, false), on('at least', -a, false)] : [on('at most', a)];
    case '>': case '>=': return [on('at least', a)];
    case 'between': return [on('at least', Math.min(a, b)), on('at most', Math.max(a, b))];
    // A size has a bend at nothing: where nothing is asked for, the result itself is to be that.
    default: return [on('equal', a, size && a !== 0)];
  }
}

/** By how much a result misses a condition, SI; 0 where it does not. */
export function missedBy({ sort, value, size }: Condition, is: number): number {
  const over = (size ? Math.abs(is) : is) - value;
  return sort === 'equal' ? over : sort === 'at most' ? Math.max(0, over) : Math.min(0, over);
}

/** Paths are weighed alike, whether they are to be long or nothing. */
const littleOf = (cell: Cell, value: number): number => (isPath(cell) ? STRING : Math.max(Math.abs(value) * SHARE, cell.dim === LENGTH ? 1e-4 : cell.dim === ANGLE ? 1e-3 : 1e-12));
const SHARE = 1e-2;
