/** In what the results of two setups differ: of a setup and its variant, of two states of a file. One typed value; whoever shows it only renders it. */
import type { Cell } from './graph.ts';
import { isOfExposures, type GoalResult } from './goals.ts';
import type { Results } from './plan.ts';

/** A result that is not the same in both, or that only one of them has. */
export interface ResultDifference {
  readonly name: string;
  readonly before: Cell | undefined;
  readonly after: Cell | undefined;
}

/** An expectation or an aim with how it stands in both. */
export interface GoalDifference {
  readonly text: string;
  readonly before: GoalResult | undefined;
  readonly after: GoalResult | undefined;
}

export interface Difference {
  readonly results: readonly ResultDifference[];
  /** those whose outcome differs */
  readonly goals: readonly GoalDifference[];
}

/** Results by their names, goals by what they say; in the order of `before`, what only `after` has behind. `now`: what a result or goal of before is called in `after`. */
export function differenceOf(before: Results, after: Results, now: Now = { result: name => name, goal: goalText }): Difference {
  const results = paired(before.published.map(c => [now.result(c.name), c]), after.published.map(c => [c.name, c]))
    .filter(([, a, b]) => !a || !b || !same(a, before, b, after)).map(([name, a, b]) => ({ name, before: a, after: b }));
  const held = before.goals.filter(({ goal }) => after.setup.variant === undefined || !isOfExposures(goal, before.setup));
  const goals = paired(held.map(g => [now.goal(g), g]), after.goals.map(g => [goalText(g), g]))
    .filter(([, a, b]) => a?.outcome !== b?.outcome).map(([text, a, b]) => ({ text, before: a, after: b }));
  return { results, goals };
}
export interface Now {
  readonly result: (name: string) => string;
  readonly goal: (goal: GoalResult) => string;
}

/** A goal as written: `mismatch < 10 mm`. */
export function goalText({ goal }: Pick<GoalResult, 'goal'>): string {
  const { line } = goal.node;
  return line.text.slice(goal.at.start, line.comment?.start).trim();
}

/** What has the same name in both, side by side; of equal names the first with the first. */
function paired<T>(before: readonly (readonly [string, T])[], after: readonly (readonly [string, T])[]): [string, T | undefined, T | undefined][] {
  const waiting = new Map<string, T[]>();
  for (const [name, x] of after) {
    const list = waiting.get(name);
    if (list) list.push(x);
    else waiting.set(name, [x]);
  }
  const rows = before.map(([name, x]): [string, T | undefined, T | undefined] => [name, x, waiting.get(name)?.shift()]);
  return [...rows, ...[...waiting].flatMap(([name, list]) => list.map((x): [string, undefined, T] => [name, undefined, x]))];
}

/** Rounding of sums that are made in another order is no difference. */
const EQUAL = 1e-9;
function same(a: Cell, before: Results, b: Cell, after: Results): boolean {
  const [x, y] = [before.graph.value(a), after.graph.value(b)];
  if (x === undefined || y === undefined) return x === y && a.missing?.why === b.missing?.why;
  const near = (p: number, q: number): boolean => Math.abs(p - q) <= EQUAL * Math.max(Math.abs(p), Math.abs(q), 1e-6);
  return near(x, y) && near(before.graph.uncertainty(a), after.graph.uncertainty(b));
}
