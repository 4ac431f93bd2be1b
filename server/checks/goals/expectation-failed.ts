import { isLiteral } from '../../model/literal.ts';
import { isRatio, isShare, plain, readableUnit } from '../../model/show.ts';
import { parseUnit, type Unit } from '../../model/units.ts';
import type { Results } from '../../results/plan.ts';
import { limitText, type GoalResult, type Outcome } from '../../results/goals.ts';
import { isBent } from '../../results/sampling.ts';
import { bandOf, figure } from '../../results/shown.ts';
import type { Problem } from '../../model/model.ts';
import { text, type Check } from '../check.ts';

export const expectationFailed: Check = {
  code: 'expectation-failed',
  severity: 'warning',
  title: 'An expectation is not met',
  page: `**What you see.** The setup will not do what its \`expect\` line asks for.

**Why.** The result lies outside the limit, and its uncertainty does not reach back to it.

**What to do.** Change the setup until the expectation is met, or correct the limit if it asks for more than is needed. The command line ends with exit code 1 while an expectation is not met.`,
  example: `setup "Whelk shell" {
  laser red {
    coherence length: 5 m
  }
  splitter S1
  object whelk
  plate P1
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1471 mm
  beam object from S1 reflected
    -> whelk: 1200 mm
    -> P1: 300 mm
  expect mismatch < 10 mm
}
`,
  message: d => `Not met: ${text(d, 'result')} is ${text(d, 'shown')}, expected ${text(d, 'limit')}.`,
  run: r => withOutcome(r, 'not met', 'expectation-failed'),
};

/** The goals with an outcome, as problems of a code. */
export function withOutcome(r: Results, outcome: Outcome, code: string): Problem[] {
  return r.goals.filter(g => g.goal.kind === 'expect' && g.outcome === outcome && g.cell).map(g => ({
    code, at: g.goal.at, subject: g.goal.result, setup: r.setup.name,
    data: { result: g.goal.result, value: g.value!, give: g.give!, shown: found(g, r), limit: limitWords(g) },
  }));
}

/** The limits as they are written; of those that are computed the value as well. */
function limitWords(g: GoalResult): string {
  const [a, b] = g.goal.limits.map(({ expr }, i) => (isLiteral(expr) ? limitText(g.goal, i) : `${limitText(g.goal, i)} (${shown(g, g.limits[i]!)})`)) as [string, string | undefined];
  const word = { '<': 'below', '<=': 'at most', '>': 'above', '>=': 'at least', between: 'from', '=': '' }[g.goal.op ?? '='];
  return `${word ? `${word} ` : ''}${a}${g.goal.op === 'between' ? ` to ${b!}` : ''}`;
}

/** The result of a goal: as a band where that does not lie evenly about its value; where a limit would read the same, as finely as it takes. */
function found(g: GoalResult, { graph }: Results): string {
  const [cell, value, low, high] = [g.cell!, g.value!, g.low!, g.high!];
  if (low === high) return g.limits.some(l => shown(g, l) === shown(g, value)) && g.goal.op !== '=' ? finer(g) : shown(g, value);
  const uneven = isBent(graph, cell) && high - low > 0.5 * Math.abs(low + high) / 2;
  return isShare(cell.name) || uneven ? bandOf(cell, low, high, unitFor(g, low)) : shown(g, value, g.give! / 2);
}

const shown = (g: GoalResult, value: number, u = 0): string => figure(g.cell!, value, u, unitFor(g, value));

/** In the unit of the limit, unless the figure does not read well in it; a drift in fringes. */
function unitFor({ cell, unit }: GoalResult, value: number): Unit | undefined {
  const size = unit && Math.abs(value / unit.factor);
  const reads = size !== undefined && (size === 0 || (size >= 0.01 && size < 1e4)) && (!cell!.unit?.text.startsWith('fringe') || unit!.text.startsWith('fringe'));
  return reads ? unit : cell!.unit;
}

/** An exact figure with as many digits as tell it from the limits. */
function finer(g: GoalResult): string {
  const value = g.value!;
  const unit = isShare(g.cell!.name) ? PERCENT : (unitFor(g, value) ?? readableUnit(value, g.cell!.dim));
  const at = (v: number, digits: number): string => plain(unit ? (v - unit.offset) / unit.factor : v, digits);
  let digits = 2;
  while (digits < MOST_DIGITS && g.limits.some(l => at(l, digits) === at(value, digits))) digits++;
  return `${at(value, digits)}${unit ? ` ${unit.text}` : isRatio(g.cell!.name) ? ':1' : ''}`;
}
const PERCENT = parseUnit('%')!;
const MOST_DIGITS = 12;
