/** What a page expects of a result, or aims at, as it is written. */
import type { Goal } from '../../model/model.ts';
import type { Results } from '../../results/plan.ts';

/** The goals of a result of a plate, or of one of its arms, by any of its names. */
export function goalsOf({ setup }: Results, kind: Goal['kind'], what: string, plate: string, arm?: string): Goal[] {
  const names = [what, `${plate}.${what}`, ...(arm === undefined ? [] : [`${plate}.${arm}.${what}`])];
  return setup.goals.filter(g => g.kind === kind && names.includes(g.result));
}

/** `mismatch < 10 mm`; empty where nothing is expected */
export function goalWords(r: Results, what: string, plate: string, arm?: string): string {
  return goalsOf(r, 'expect', what, plate, arm).map(g => `${what} ${g.node.line.text.slice(g.at.end, g.node.line.comment?.start).trim()}`).join(', ');
}
