/** What comes of a drag in the picture: the picture as it would be, and once it is let go, one edit of the text that the picture was of. */
import type { DragAnswer, DragParams, PictureParams, TextRange } from '../../server/lsp/protocol.ts';
import type { Drag, Would } from './messages.ts';
import { wouldOf } from './shown.ts';
import { MOVED_ON, NOT_MOVED } from './words.ts';

export interface Change { readonly range: TextRange; readonly newText: string }

/** The text that is dragged in. */
export interface Page {
  /** of the text as it is now */
  readonly version: () => number;
  readonly textAt: (range: TextRange) => string;
  /** undefined where the server gave no answer: the text had moved on */
  readonly ask: (params: DragParams) => Promise<DragAnswer | undefined>;
  /** All of it at once, so that one undo takes it back. @returns whether it was written */
  readonly write: (changes: readonly Change[]) => Promise<boolean>;
}

/** @param seen what the picture that is dragged in shows, and of which version of the text */
export async function follow(page: Page, seen: { readonly wanted: PictureParams; readonly version: number }, { n, item, gesture, x, y, stepped, free, dropped }: Drag): Promise<Would> {
  const no = (words: string): Would => ({ kind: 'would', n, words });
  const { version } = seen;
  if (page.version() !== version) return no(MOVED_ON);
  const answer = await page.ask({ ...seen.wanted, version, item, gesture, x, y, stepped, free, dropped });
  // Of a text that has moved on, no edit fits.
  if (!answer || page.version() !== version) return no(MOVED_ON);
  if ('refused' in answer) return no(answer.refused);
  if (answer.version !== version) return no(MOVED_ON);
  if (!dropped) return { kind: 'would', n, would: wouldOf(answer.picture) };
  const changes = answer.edits.filter(e => page.textAt(e.range) !== e.newText);
  return changes.length === 0 || await page.write(changes) ? { kind: 'would', n } : no(NOT_MOVED);
}
