/** An evening at the notebook's whelk: pages, and what becomes of them. */
import { alone, analyse, type Snapshot } from '../../../server/analysis.ts';
import { enter, type Entered } from '../../../server/features/readings/enter.ts';
import { wantedOf } from '../../../server/features/readings/wanted.ts';
import { applyEdits, type Edit } from '../../../server/model/edits.ts';
import { FILE } from '../source.ts';

export const ON = '2026-02-18T21:40';

export const page = (text: string): Snapshot => analyse(FILE, text, alone);

/** Every line that was there is there still, in its order; gives those that are new. */
export function added(before: string, after: string): string[] {
  const all = after.split(/\r\n|\n/);
  for (const line of before.split(/\r\n|\n/)) {
    const at = all.indexOf(line);
    if (at < 0) throw new Error(`“${line}” is gone`);
    all.splice(at, 1);
  }
  return all;
}

export const made = ({ text }: Snapshot, edits: readonly Edit[]): string => applyEdits(text, edits);

/** What is said of a value that somebody types. */
export function entered(text: string, subject: string, typed: string, on = ON): Entered | { readonly refused: string } {
  const s = page(text);
  const r = s.results[0]!;
  const wanted = wantedOf(r).find(w => w.subject === subject);
  if (!wanted) throw new Error(`nobody asks for “${subject}”`);
  return enter(s, r, { ...wanted, subject }, typed, on, alone);
}
export function taken(text: string, subject: string, typed: string, on = ON): Entered {
  const e = entered(text, subject, typed, on);
  if ('refused' in e) throw new Error(e.refused);
  return e;
}
