/** What a reading is taken with, where nobody says it: what the last one of its kind was taken with, else the only string or meter of the setup. */
import type { Reading } from '../../model/model.ts';
import type { Results } from '../../results/plan.ts';
import { things } from '../blocks/facts.ts';
import type { Wanted } from './wanted.ts';

const BY: Readonly<Record<string, Wanted['by']>> = { legs: 'string', arm: 'string', difference: 'string', light: 'meter', dark: 'meter' };

export function instrumentFor({ by }: Pick<Wanted, 'by'>, r: Results): string | undefined {
  if (by === 'eye') return undefined;
  const last = r.setup.readings.findLast(x => x.by && x.measured && BY[x.measured.kind] === by);
  if (last) return last.by!.name;
  const own = things(r.setup, by);
  return own.length === 1 ? own[0]!.id : undefined;
}

/** What was read of it last, as it stands on the page and still counts. */
export const readingNow = (subject: string, r: Results): Reading | undefined => r.setup.readings.findLast(x => sameWords(x.words, subject) && !r.readings.stale(x) && x.value !== undefined);

/** String has no direction, and blanks mean nothing. */
function sameWords(a: string, b: string): boolean {
  const turned = (s: string): string => { const ends = s.split(/->|→/).map(end => end.trim()); return ends.length < 2 ? s.replace(/\s+/g, ' ').trim() : [ends.join(' '), [...ends].reverse().join(' ')].sort()[0]!; };
  return turned(a) === turned(b);
}
