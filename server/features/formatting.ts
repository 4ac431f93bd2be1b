/** The formatter as edits: one for each run of blanks and each line end that changes, so that cursors and marks stay where they are. */
import { formattedLines } from '../../grammar/format.ts';
import { marksOf } from '../../grammar/parse.ts';
import type { LineTree, Node } from '../../grammar/tree.ts';
import type { Snapshot } from '../analysis.ts';

/** Replaces what stands between two places of the text; lines from 0, characters in UTF-16 units. */
export interface TextChange {
  readonly from: { readonly line: number; readonly character: number };
  readonly to: { readonly line: number; readonly character: number };
  readonly newText: string;
}

/** What makes the text the formatted one. Lines that cannot be read stay as they are. */
export function formatChanges({ text, tree }: Snapshot): TextChange[] {
  if (tree.issues.some(i => i.code === 'file-too-large')) return [];
  const eol = text.includes('\r\n') ? '\r\n' : '\n';
  const before = rawLines(text, tree.lines);
  const after = formattedLines(tree).texts;
  const changes: TextChange[] = [];
  let next = 0;
  after.forEach((wanted, at) => {
    if (wanted === undefined) return;
    // One empty line stays where there were some; at the top none, but where it keeps a byte order mark from coming to stand there.
    const empty = at > next && (next > 0 || wanted.startsWith('\ufeff'));
    if (empty) {
      if (before.text(next) !== '') changes.push(within(next, 0, before.text(next).length, ''));
      endsIn(changes, before, next, eol);
    }
    remove(changes, next + (empty ? 1 : 0), at);
    if (before.text(at) !== wanted) changes.push(...blanks(before.text(at), wanted, at));
    endsIn(changes, before, at, eol);
    next = at + 1;
  });
  const last = after.length - 1;
  if (next <= last) removeTo(changes, next, last, before.text(last).length);
  return changes;
}

/** Of these changes those of the lines `first` to `last`; line ends between them too. What is left out stays right: no change needs another. */
export const formatRange = (snapshot: Snapshot, first: number, last: number): TextChange[] =>
  formatChanges(snapshot).filter(({ from, to }) => from.line >= first && from.line <= last && (to.line <= last || (to.line === last + 1 && to.character === 0)));

/**
 * What is put right while somebody types: behind a line end the line that it ends, behind a brace the block that it closes. `line` is that of the cursor, which
 * stays where it is: no line end is changed, and nothing in the line that has just begun.
 */
export function formatTyped(snapshot: Snapshot, line: number, typed: string): TextChange[] {
  if (typed === '\n') return sameLine(formatRange(snapshot, line - 1, line - 1));
  if (typed !== '}' || snapshot.tree.lines[line]?.kind !== 'close') return [];
  const block = blockClosedAt(snapshot.tree.nodes, line);
  return block ? sameLine(formatRange(snapshot, block.at, line)) : [];
}

const sameLine = (changes: readonly TextChange[]): TextChange[] => changes.filter(c => c.from.line === c.to.line && !/[\r\n]/.test(c.newText));

function blockClosedAt(nodes: readonly Node[], line: number): Node | undefined {
  const around = nodes.find(n => n.at < line && line <= n.end);
  return around && (around.end === line && around.line.opens ? around : blockClosedAt(around.children, line));
}

/** The lines as the editor counts them, with what ends each: '' for the last one. */
interface RawLines {
  text(at: number): string;
  end(at: number): string;
}

function rawLines(text: string, lines: readonly LineTree[]): RawLines {
  // Most texts have one kind of line end and no byte order mark: their lines are cut already.
  const marks = marksOf(text);
  if (!text.includes('\r') && marks === 0) return { text: at => lines[at]!.text, end: at => (at < lines.length - 1 ? '\n' : '') };
  const parts = text.slice(marks).split(/(\r\n|\n|\r)/);
  return { text: at => parts[2 * at]!, end: at => parts[2 * at + 1] ?? '' };
}

const within = (line: number, start: number, end: number, newText: string): TextChange => ({ from: { line, character: start }, to: { line, character: end }, newText });

function endsIn(changes: TextChange[], lines: RawLines, line: number, eol: string): void {
  const end = lines.end(line);
  if (end === eol) return;
  const from = { line, character: lines.text(line).length };
  changes.push({ from, to: end === '' ? from : { line: line + 1, character: 0 }, newText: eol });
}

function remove(changes: TextChange[], first: number, end: number): void {
  if (end > first) changes.push({ from: { line: first, character: 0 }, to: { line: end, character: 0 }, newText: '' });
}

function removeTo(changes: TextChange[], first: number, line: number, character: number): void {
  if (line > first || character > 0) changes.push({ from: { line: first, character: 0 }, to: { line, character }, newText: '' });
}

const isBlank = (s: string, i: number): boolean => i < s.length && /\s/.test(s[i]!);

/** Two lines differ in their runs of blanks only, so both are walked at once. */
function blanks(before: string, after: string, line: number): TextChange[] {
  const changes: TextChange[] = [];
  let [i, j] = [0, 0];
  while (i < before.length || j < after.length) {
    const [a, b] = [i, j];
    while (isBlank(before, i)) i++;
    while (isBlank(after, j)) j++;
    if (before.slice(a, i) !== after.slice(b, j)) changes.push(within(line, a, i, after.slice(b, j)));
    const start = i;
    while (i < before.length && before[i] === after[j] && !isBlank(before, i)) { i++; j++; }
    if (i === start && i === a && j === b) return [...changes, within(line, i, before.length, after.slice(j))];
  }
  return changes;
}
