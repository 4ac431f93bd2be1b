/** What came out, written behind the newest shot that has no outcome yet, in whatever words; with what `why` understands by them. */
import { analyse, type Library, type Snapshot } from '../../analysis.ts';
import { applyEdits, type Edit } from '../../model/edits.ts';
import type { Results } from '../../results/plan.ts';
import { intoBlock } from '../new-lines.ts';
import { OUTCOME_NAMES, understand } from '../why/outcomes.ts';
import { hasOutcome, newest, shotsIn } from './shots.ts';

export interface Open {
  readonly shot: string;
  readonly on: string | undefined;
  /** how many others have none either */
  readonly more: number;
  /** what may be seen on a plate, as `why` knows it */
  readonly words: readonly string[];
}

/** The shot that waits for its outcome; a sentence where there is none. */
export function openShot(r: Results): Open | string {
  const shots = shotsIn(r.setup);
  const open = shots.filter(s => !hasOutcome(s));
  const one = newest(open);
  const of = r.setup.name === '' ? 'this setup' : `“${r.setup.name}”`;
  if (shots.length === 0) return `There is no shot in ${of} yet, so that there is nothing to note an outcome of. “Shoot” writes one, or write it by hand: shot 1 on 2026-02-11 { … }.`;
  if (!one) return `Every shot in ${of} has its outcome already. What is written is not written over: change it in the text if it was something else.`;
  return { shot: one.name, on: one.on, more: open.length - 1, words: OUTCOME_NAMES };
}

/** What `why` makes of words, in a sentence. */
export function understoodWords(words: string): string {
  const { outcomes, well, nearest } = understand(words);
  if (outcomes.length > 0) return outcomes.length === 1 && outcomes[0] === words.trim() ? '' : `“Why” understands ${outcomes.map(o => `“${o}”`).join(' and ')}.`;
  if (well) return 'Nothing to look for.';
  return `“Why” knows no such outcome${nearest.length > 0 ? `; did you mean ${nearest.map(o => `“${o}”`).join(' or ')}?` : '.'} It is kept as it is.`;
}

export interface Noted { readonly edits: readonly Edit[]; readonly line: string; readonly at: number; readonly says: string }

export function noteOutcome(snapshot: Snapshot, r: Results, shot: string, words: string, library: Library): Noted | { readonly refused: string } {
  const text = words.replace(/["\r\n]+/g, ' ').replace(/\s+/g, ' ').trim().slice(0, LONGEST);
  if (text === '') return { refused: 'Nothing is written there.' };
  const found = newest(shotsIn(r.setup).filter(s => s.name === shot && !hasOutcome(s)));
  if (!found) return { refused: `The page has no shot ${shot} without an outcome any more.` };
  const line = `outcome: "${text}"`;
  const edits = intoBlock(found.node, [line], snapshot);
  const after = analyse(snapshot.uri, applyEdits(snapshot.text, edits), library);
  const is = after.results.some(x => x.setup.name === r.setup.name && shotsIn(x.setup).some(s => s.name === shot && hasOutcome(s)));
  return is ? { edits, line, at: found.node.at, says: understoodWords(text) } : { refused: `As the page stands, the line would not be read as one of shot ${shot}: a brace is missing. Close it first; the words were: ${text}` };
}
const LONGEST = 1500;
