/**
 * What can be written at a cursor. Everything is offered by its place, from the one vocabulary and from what the setup has; what is typed of a word
 * narrows nothing here, since editors do that as one types. Texts may be broken in any way: only the line up to the cursor and the block around it count.
 */
import type { Snapshot } from '../../analysis.ts';
import { gapBefore } from '../../model/show.ts';
import { cursorAt, openAt, type Cursor } from './cursor.ts';
import type { Completion, Offer } from './item.ts';
import { offersAt } from './lines.ts';

export type { Completion, Topic } from './item.ts';
export { completionWords } from './words.ts';

export interface Surroundings {
  /** paths of the files that a `use` may name */
  readonly files?: readonly string[];
}

/** The likeliest first. */
export function completionsAt(snapshot: Snapshot, line: number, character: number, around: Surroundings = {}): Completion[] {
  const c = cursorAt(snapshot, line, character);
  if (!c) return [];
  const offers = openAt(c.text.slice(0, character)) === 'text' ? fileNames(c, around.files ?? []) : offersAt(c);
  return offers.map(({ from = c.start, to = c.end, filter, ...o }, i) => ({ ...o, ...apart(c, from, o), at: { uri: snapshot.uri, line, start: from, end: to }, filter: filter ?? o.label, sort: String(i).padStart(4, '0') }));
}

/** True where the cursor is in the quotes of a `use`, so that it is worth looking for files. */
export const wantsFiles = ({ tree }: Snapshot, line: number, character: number): boolean => tree.lines[line]?.head?.text === 'use' && openAt(tree.lines[line].text.slice(0, character)) === 'text';

/** A blank stands behind a colon, an arrow or a sign, and before a unit of letters. */
function apart(c: Cursor, from: number, o: Offer): Pick<Offer, 'text' | 'snippet'> {
  const before = c.text[from - 1] ?? ' ';
  const gap = o.kind === 'unit' ? (/[\d)]/.test(before) ? gapBefore(o.text) : '') : /[:=±÷<>,→]/.test(before) ? ' ' : '';
  return { text: gap + o.text, ...(o.snippet === undefined ? {} : { snippet: gap + o.snippet }) };
}

function fileNames(c: Cursor, files: readonly string[]): Offer[] {
  if (c.tokens[0]?.text !== 'use' || c.block.in !== 'file') return [];
  const open = c.text.lastIndexOf('"', c.character - 1) + 1;
  const close = c.text.indexOf('"', c.character);
  return files.map((f): Offer => ({ label: f, kind: 'file', detail: 'a file', text: f + (close < 0 ? '"' : ''), from: open, to: close < 0 ? c.text.length : close }));
}
