/**
 * What was measured and is to be set otherwise. The page would go on with the old readings, so a dated line goes with such a change: `moved M3 on 2026-02-18`. From then
 * on the readings on that thing count no more, and what the plan says has to do until they are taken anew.
 */
import { analyse, type Library, type Snapshot } from '../../analysis.ts';
import type { Finding } from '../../checks/check.ts';
import { applyEdits, type Edit } from '../../model/edits.ts';
import type { Results } from '../../results/plan.ts';
import { linesBehind } from '../new-lines.ts';
import { placeForReading } from '../readings/line.ts';
import type { Candidate } from './candidate.ts';

/** What goes with a change of a thing. */
interface Line {
  readonly edit: Edit;
  /** readings that count no more from then on, in their own words */
  readonly again: readonly string[];
}

/**
 * Gives a change of a thing the line that goes with it; undefined where nothing dated was measured on it.
 * @param now by the clock of whoever asks, to the minute: `2026-02-18T21:40`
 */
export function measuredAnew(snapshot: Snapshot, r: Results, library: Library, now: string): (c: Candidate, thing: string) => Candidate | undefined {
  const dated = r.setup.readings.filter(x => x.on !== undefined);
  // Of one day a reading is only older where both have a time.
  const on = dated.some(x => x.on!.startsWith(`${now.slice(0, 10)}T`)) ? now : now.slice(0, 10);
  const { after, indent } = placeForReading(r.setup);
  const known = new Map<string, Line>();
  const lineFor = (thing: string): Line => {
    const stale = (s: Snapshot): string[] => s.findings.flatMap(f => (f.code === 'reading-stale' && f.data['thing'] === thing && f.setup === r.setup.name ? [f.subject] : []));
    const edit = linesBehind(snapshot.tree, snapshot.uri, snapshot.text, after, [`${indent}moved ${thing} on ${on}`]);
    const before = stale(snapshot);
    return { edit, again: stale(analyse(snapshot.uri, applyEdits(snapshot.text, [edit]), library)).filter(w => !before.includes(w)) };
  };
  return ({ edits, title, ...more }, thing) => {
    if (dated.length === 0) return undefined;
    let line = known.get(thing);
    if (!line) known.set(thing, line = lineFor(thing));
    if (line.again.length === 0) return undefined;
    const again = list(line.again.map(w => `“${w}”`));
    return { ...more, edits: [...edits, line.edit], anew: thing, title: page => `${title(page)}. ${thing} then counts as moved: measure ${again} anew` };
  };
}

function list(words: readonly string[]): string {
  const shown = words.length > SHOWN ? [...words.slice(0, SHOWN - 1), `${words.length - SHOWN + 1} more`] : words;
  return shown.length === 1 ? shown[0]! : `${shown.slice(0, -1).join(', ')} and ${shown.at(-1)!}`;
}
const SHOWN = 3;

/** What comes of it that readings count no more until they are taken anew: that they do not, and that what rests on them is less sure. */
export const isAsked = (f: Finding, thing: string | undefined): boolean => thing !== undefined && ((f.code === 'reading-stale' && f.data['thing'] === thing) || f.code === 'expectation-undecided');
