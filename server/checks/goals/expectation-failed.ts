import { isRatio, isShare, percent, percentBand, ratioBand, show, showBand, showRatio } from '../../model/show.ts';
import type { Unit } from '../../model/units.ts';
import type { Cell } from '../../results/graph.ts';
import type { Results } from '../../results/plan.ts';
import type { GoalResult, Outcome } from '../../results/goals.ts';
import { isBent } from '../../results/sampling.ts';
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

function limitWords(g: GoalResult): string {
  const [a, b] = g.limits.map(l => shown(g, l)) as [string, string | undefined];
  const word = { '<': 'below', '<=': 'at most', '>': 'above', '>=': 'at least', between: 'from', '=': '' }[g.goal.op ?? '='];
  return `${word ? `${word} ` : ''}${a}${g.goal.op === 'between' ? ` to ${b!}` : ''}`;
}

/** The result of a goal as people write it: as a band where that does not lie evenly about its value. */
function found(g: GoalResult, { graph }: Results): string {
  const [cell, low, high] = [g.cell!, g.low!, g.high!];
  if (isShare(cell.name)) return percentBand(low, high);
  if (!isBent(graph, cell) || high - low <= 0.5 * Math.abs(low + high) / 2) return shown(g, g.value!, g.give! / 2);
  return isRatio(cell.name) ? ratioBand(low, high) : showBand(low, high, cell.dim, unitFor(cell));
}

/** A value of a goal's result as people write it. */
const shown = ({ cell }: GoalResult, value: number, u = 0): string =>
  (isRatio(cell!.name) ? showRatio(value, u) : isShare(cell!.name) ? percent(value) : show(value, cell!.dim, u, unitFor(cell!)));
const unitFor = ({ unit }: Cell): Unit | undefined => (unit?.percent ? unit : undefined);
