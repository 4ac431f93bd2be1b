/** The shots of a setup as its page has them: which comes next, which has no outcome yet, and what is odd about their days. */
import type { Node } from '../../../grammar/tree.ts';
import { noSuchDate } from '../../model/calendar.ts';
import { isLater } from '../../model/bind/dates.ts';
import type { Setup } from '../../model/model.ts';
import { saidOfShot } from '../../review/statements.ts';

export interface Shot {
  readonly name: string;
  readonly on: string | undefined;
  readonly node: Node;
}

export const shotsIn = (setup: Setup): Shot[] => setup.shots.map(({ node }) => ({ name: saidOfShot(node), on: dayOf(node), node }));

function dayOf({ line }: Node): string | undefined {
  const value = line.clauses.find(c => c.word.text === 'on')?.value;
  return value?.kind === 'date' && noSuchDate(value.text) === undefined ? value.text : undefined;
}

/** One more than the largest number that there is. */
export const nextName = (shots: readonly Shot[]): string => String(Math.max(0, ...shots.map(s => Number(s.name)).filter(n => Number.isInteger(n) && n > 0)) + 1);

/** The newest: by their days as far as they have one; of one day, and without days, the last in the text. */
export const newest = (shots: readonly Shot[]): Shot | undefined => shots.reduce<Shot | undefined>((best, s) => (!best || s.on === undefined || best.on === undefined || !isLater(best.on, s.on) ? s : best), undefined);

export const hasOutcome = ({ node }: Shot): boolean => node.children.some(c => c.line.head?.text === 'outcome' && c.line.colon !== undefined);

/** Shots out of order, and a clock that is before a shot that is there already: sentences. */
export function oddDays(shots: readonly Shot[], today: string): string[] {
  const said: string[] = [];
  const late = shots.find(s => s.on !== undefined && isLater(s.on, today));
  if (late) said.push(`Shot ${late.name} on the page is of ${late.on!.split('T')[0]!}, which is after today (${today.split('T')[0]!}): see whether the clock of this computer is right. What is written is dated by it.`);
  const dated = shots.filter(s => s.on !== undefined);
  const back = dated.findIndex((s, i) => i > 0 && isLater(dated[i - 1]!.on!, s.on!));
  if (back > 0) said.push(`On the page shot ${dated[back]!.name} of ${dated[back]!.on!.split('T')[0]!} stands behind shot ${dated[back - 1]!.name} of ${dated[back - 1]!.on!.split('T')[0]!}. Nothing is put in order; what comes now is written behind the last one.`);
  const twice = shots.find((s, i) => s.name !== '' && shots.findIndex(o => o.name === s.name) < i);
  if (twice) said.push(`Two shots on the page are called ${twice.name}: “why” and comparisons take the first.`);
  return said;
}
