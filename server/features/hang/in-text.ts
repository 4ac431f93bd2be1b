/** What to record beside the text: on the lines of a lamp an action that writes the angles into the plate. */
import type { Node } from '../../../grammar/tree.ts';
import { analyse, type Library, type Snapshot } from '../../analysis.ts';
import { applyEdits, type Edit } from '../../model/edits.ts';
import type { BoundFact } from '../../model/model.ts';
import type { Results } from '../../results/plan.ts';
import { intoBlock } from '../new-lines.ts';
import { hangOf, type HangAnswer } from './answer.ts';

export interface HangAction { readonly title: string; readonly edits: readonly Edit[] }

/** Each is tried on a copy of the page first: it has to say what was asked, and raise nothing. */
export function hangActions(snapshot: Snapshot, [from, to]: readonly [number, number], library: Library): HangAction[] {
  return snapshot.results.flatMap(r => hangOf(r).answers.flatMap((a): HangAction[] => {
    const { lamp, plate } = a.hanging;
    if (!reaches(lamp.node, from, to) || a.lines.length === 0 || plate.at.uri !== snapshot.uri) return [];
    const edits = editsOf(a, snapshot);
    return holds(a, edits, snapshot, library) ? [{ title: `Write into ${plate.id}, as ${lamp.id} will stand: ${a.lines.map(l => l.text).join(', ')}`, edits }] : [];
  }));
}

const reaches = (node: Node, from: number, to: number): boolean => node.at <= to && node.end >= from;

/** A fact of the plate's own is written anew, others into its block. */
function editsOf({ hanging: { plate }, lines }: HangAnswer, snapshot: Snapshot): Edit[] {
  const own = (phrase: string): BoundFact | undefined => { const fact = plate.facts.get(phrase); return fact?.node.parent === plate.node ? fact : undefined; };
  const fresh = lines.filter(l => !own(l.phrase)).map(l => l.text);
  const anew = lines.flatMap((l): Edit[] => { const fact = own(l.phrase); return fact ? [{ at: fact.at, newText: l.text.slice(l.phrase.length + 2) }] : []; });
  return [...anew, ...(fresh.length > 0 ? intoBlock(plate.node, fresh, snapshot) : [])];
}

function holds(a: HangAnswer, edits: readonly Edit[], snapshot: Snapshot, library: Library): boolean {
  const after = analyse(snapshot.uri, applyEdits(snapshot.text, edits), library);
  const r: Results | undefined = after.results.find(x => x.setup.name === a.results.setup.name);
  const count = (s: Snapshot): number => s.findings.filter(f => f.severity !== 'hint').length;
  return r !== undefined && count(after) <= count(snapshot) && hangOf(r).answers.every(x => x.hanging.lamp.id !== a.hanging.lamp.id || x.lines.length === 0);
}
