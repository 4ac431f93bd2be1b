/** The formatter as edits: one for each run of blanks and each line end that changes, so that cursors and marks stay where they are. */
import { format } from '../../grammar/format.ts';
import type { Node } from '../../grammar/tree.ts';
import type { Snapshot } from '../analysis.ts';

/** Replaces what stands between two places of the text; lines from 0, characters in UTF-16 units. */
export interface TextChange {
  readonly from: { readonly line: number; readonly character: number };
  readonly to: { readonly line: number; readonly character: number };
  readonly newText: string;
}

/** What makes the text the formatted one. Lines that cannot be read stay as they are. */
export function formatChanges(snapshot: Snapshot): TextChange[] {
  const formatted = format(snapshot.text);
  const eol = snapshot.text.includes('\r\n') ? '\r\n' : '\n';
  const before = rawLines(snapshot.text);
  const after = formatted.text.split(eol);
  if (before.length > snapshot.tree.lines.length) return [];
  const changes: TextChange[] = [];
  const kept = before.flatMap((_, at) => (snapshot.tree.lines[at]!.kind === 'blank' ? [] : [at]));
  const wanted = after.flatMap((line, at) => (line === '' ? [] : [at]));
  let next = 0;
  kept.forEach((at, k) => {
    // One empty line stays where there were some, but none at the top.
    const empty = k > 0 && at > next;
    if (empty) {
      if (before[next]!.text !== '') changes.push(within(next, 0, before[next]!.text.length, ''));
      endsIn(changes, before, next, eol);
    }
    remove(changes, next + (empty ? 1 : 0), at);
    changes.push(...blanks(before[at]!.text, after[wanted[k]!]!, at));
    endsIn(changes, before, at, eol);
    next = at + 1;
  });
  const last = before.length - 1;
  if (next <= last) removeTo(changes, next, last, before[last]!.text.length);
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

interface RawLine {
  readonly text: string;
  /** '' for the last line */
  readonly end: string;
}

function rawLines(text: string): RawLine[] {
  const parts = (text.charCodeAt(0) === 0xfeff ? text.slice(1) : text).split(/(\r\n|\n|\r)/);
  return Array.from({ length: (parts.length + 1) / 2 }, (_, i) => ({ text: parts[2 * i]!, end: parts[2 * i + 1] ?? '' }));
}

const within = (line: number, start: number, end: number, newText: string): TextChange => ({ from: { line, character: start }, to: { line, character: end }, newText });

function endsIn(changes: TextChange[], lines: readonly RawLine[], line: number, eol: string): void {
  const { text, end } = lines[line]!;
  if (end === eol) return;
  const from = { line, character: text.length };
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
