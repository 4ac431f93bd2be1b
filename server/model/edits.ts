/** Changes of a page's text. Everything that proposes one tries it on a copy first. */
import type { Place } from './place.ts';

export interface Edit {
  readonly at: Place;
  readonly newText: string;
}

/** The text with the edits in it, every other byte as it was; all edits lie in the snapshot's own file. */
export function applyEdits(text: string, edits: readonly Edit[]): string {
  const starts = [text.charCodeAt(0) === 0xfeff ? 1 : 0];
  for (const m of text.matchAll(/\r\n|\n|\r/g)) starts.push(m.index + m[0].length);
  return [...edits].sort((a, b) => b.at.line - a.at.line || b.at.start - a.at.start)
    .reduce((t, { at, newText }) => t.slice(0, starts[at.line]! + at.start) + newText + t.slice(starts[at.line]! + at.end), text);
}
