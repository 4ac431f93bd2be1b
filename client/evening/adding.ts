/** How lines come onto a page: only into the very text that they were made for, and kept in view where they could not be saved. Nothing that stands there is written over. */
import { l10n } from 'vscode';
import type { Additions, Refused } from '../../server/lsp/protocol.ts';

/** A page that is written on. */
export interface Paper<A> {
  readonly version: () => number;
  /** a newer text was on its way: it is asked once more */
  readonly ask: () => Promise<A | Refused | 'none' | 'superseded' | 'failed'>;
  /** all at once, so that one undo takes it back; false where the editor does not take it */
  readonly write: (edits: Additions['edits']) => Promise<boolean>;
  /** false where it could not be saved */
  readonly save: () => Promise<boolean>;
}

export type Added<A> =
  | { readonly kind: 'written'; readonly answer: A; readonly saved: boolean }
  | { readonly kind: 'not'; readonly words: string };

const TRIES = 4;
export const NOT_ASKED = l10n.t('The server of Platewright gave no answer, so nothing was written. “Platewright: Show Output” says why; “Platewright: Restart Server” may help. Try it once more.');
export const MOVED_ON = l10n.t('The page was changed all the while, so nothing was written. Try it once more.');
export const NOT_TAKEN = l10n.t('The editor did not take the line, so nothing was written: the page may be open for reading only. Try it once more.');
export const NOT_SAVED = l10n.t('It stands on the page in the editor, but could not be saved: the disk may be full, or the file write-protected. Keep the window open, make room, and save again.');

export async function add<A extends Additions>(paper: Paper<A>): Promise<Added<A>> {
  for (let n = 0; n < TRIES; n++) {
    const answer = await paper.ask();
    if (answer === 'superseded') continue;
    if (answer === 'none' || answer === 'failed') return { kind: 'not', words: NOT_ASKED };
    if ('refused' in answer) return { kind: 'not', words: answer.refused };
    if (answer.version !== paper.version()) continue;
    if (!(await paper.write(answer.edits))) return { kind: 'not', words: NOT_TAKEN };
    return { kind: 'written', answer, saved: await paper.save().catch(() => false) };
  }
  return { kind: 'not', words: MOVED_ON };
}
