/** What is said of values that shots teach, and whether they may still be written. */
import { l10n } from 'vscode';
import type { Update } from '../../server/lsp/protocol.ts';

export const NO_ANSWER = l10n.t('The server of Platewright gave no answer. “Platewright: Show Output” says why; “Platewright: Restart Server” may help. Try it once more.');

/** Undefined where nothing could be written: the page says why. */
export function offerWords(updates: readonly Update[]): string | undefined {
  const [one, ...more] = updates;
  if (!one) return undefined;
  return more.length === 0 ? l10n.t('One value could be written: {0} ({1}). Nothing is written before you have looked through it.', one.words, one.detail) : l10n.t('{0} values could be written. Nothing is written before you have looked through them.', updates.length);
}

/**
 * A line that is another one by now is not written into; nor is any other, since they were learnt together.
 *
 * @param lineOf the line as it is now; undefined where there is none
 */
export function stale(updates: readonly Update[], lineOf: (uri: string, line: number, i: number) => string | undefined): string | undefined {
  const moved = updates.find(({ uri, range, line }, i) => lineOf(uri, range.start.line, i) !== line);
  return moved && l10n.t('The page with {0} was changed in the meantime, so nothing was written. Learn from the shots once more.', moved.words.split(':')[0]!);
}
