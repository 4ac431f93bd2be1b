/** What was wrong before and what is now. A finding is the same as long as it is of one kind and about one thing, wherever it stands. */
import type { Finding } from '../checks/check.ts';
import { nameNow, SAME_NAMES, type Names } from './meaning.ts';

export interface FindingsChange {
  readonly cured: readonly Finding[];
  readonly added: readonly Finding[];
  /** as they are now */
  readonly still: readonly Finding[];
  /** still there, and the page now accepts them */
  readonly accepted: readonly Finding[];
}

export function findingsBetween(before: readonly Finding[], after: readonly Finding[], names: Names = SAME_NAMES): FindingsChange {
  const now = new Set(after.map(f => keyOf(f)));
  const waiting = new Map<string, Finding[]>();
  for (const f of before) {
    const key = keyOf({ code: f.code, subject: nameNow(f.subject, names, n => now.has(keyOf({ code: f.code, subject: n }))) });
    const list = waiting.get(key);
    if (list) list.push(f);
    else waiting.set(key, [f]);
  }
  const [added, still, accepted]: [Finding[], Finding[], Finding[]] = [[], [], []];
  for (const f of after) {
    const old = waiting.get(keyOf(f))?.shift();
    if (f.accepted === undefined) (old && old.accepted === undefined ? still : added).push(f);
    else if (old && old.accepted === undefined) accepted.push(f);
  }
  const left = new Set([...waiting.values()].flat());
  return { cured: before.filter(f => left.has(f) && f.accepted === undefined), added, still, accepted };
}

const keyOf = ({ code, subject }: Pick<Finding, 'code' | 'subject'>): string => `${code} ${subject}`;
