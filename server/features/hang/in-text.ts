/** What to record beside the text: on the lines of a lamp an action that writes the angles into the plate. */
import type { Node } from '../../../grammar/tree.ts';
import { analyse, type Library, type Snapshot } from '../../analysis.ts';
import { applyEdits, type Edit } from '../../model/edits.ts';
import type { Results } from '../../results/plan.ts';
import { hangOf, type HangAnswer } from './answer.ts';

export interface HangAction { readonly title: string; readonly edits: readonly Edit[] }

/** Each is tried on a copy of the page first: it has to say what was asked, and raise nothing. */
export function hangActions(snapshot: Snapshot, [from, to]: readonly [number, number], library: Library): HangAction[] {
  return snapshot.results.flatMap(r => hangOf(r).answers.flatMap((a): HangAction[] => {
    const { lamp, plate } = a.hanging;
    if (!reaches(lamp.node, from, to) || a.lines.length === 0 || plate.at.uri !== snapshot.uri) return [];
    const edits = editsOf(a, snapshot);
    return edits && holds(a, edits, snapshot, library) ? [{ title: `Write into ${plate.id}, as ${lamp.id} will stand: ${a.lines.map(l => l.text).join(', ')}`, edits }] : [];
  }));
}

const reaches = (node: Node, from: number, to: number): boolean => node.at <= to && node.end >= from;

/** A fact of the plate's own is written anew, others on new lines before its last brace; undefined where it has no block of its own on several lines. */
function editsOf({ hanging: { plate }, lines }: HangAnswer, { tree, text }: Snapshot): Edit[] | undefined {
  const { node } = plate;
  const edits: Edit[] = [];
  const fresh: string[] = [];
  for (const l of lines) {
    const own = plate.facts.get(l.phrase);
    if (own?.node.parent === node) edits.push({ at: own.at, newText: l.text.slice(l.phrase.length + 2) });
    else fresh.push(l.text);
  }
  if (fresh.length === 0) return edits;
  const [head, last] = [tree.lines[node.at]!, tree.lines[node.end]!];
  if (node.end <= node.at || last.text.trim() !== '}') return undefined;
  const indent = /^\s*/.exec(node.children[0]?.line.text ?? `${/^\s*/.exec(head.text)![0]}  `)![0];
  const end = text.includes('\r\n') ? '\r\n' : '\n';
  const start = last.text.indexOf('}');
  return [...edits, { at: { uri: plate.at.uri, line: node.end, start, end: start }, newText: `${fresh.map((t, i) => `${i === 0 ? indent.slice(start) : indent}${t}${end}`).join('')}${last.text.slice(0, start)}` }];
}

function holds(a: HangAnswer, edits: readonly Edit[], snapshot: Snapshot, library: Library): boolean {
  const after = analyse(snapshot.uri, applyEdits(snapshot.text, edits), library);
  const r: Results | undefined = after.results.find(x => x.setup.name === a.results.setup.name);
  const count = (s: Snapshot): number => s.findings.filter(f => f.severity !== 'hint').length;
  return r !== undefined && count(after) <= count(snapshot) && hangOf(r).answers.every(x => x.hanging.lamp.id !== a.hanging.lamp.id || x.lines.length === 0);
}
