/** What is said of values that shots teach, and whether they may still be written. */
import type { Update } from '../../server/lsp/protocol.ts';

export const NO_ANSWER = 'The server of Platewright gave no answer. “Platewright: Show Output” says why; “Platewright: Restart Server” may help. Try it once more.';

/** Undefined where nothing could be written: the page says why. */
export function offerWords(updates: readonly Update[]): string | undefined {
  const [one, ...more] = updates;
  if (!one) return undefined;
  return more.length === 0 ? `One value could be written: ${one.words} (${one.detail}). Nothing is written before you have looked through it.` : `${updates.length} values could be written. Nothing is written before you have looked through them.`;
}

/**
 * A line that is another one by now is not written into; nor is any other, since they were learnt together.
 *
 * @param lineOf the line as it is now; undefined where there is none
 */
export function stale(updates: readonly Update[], lineOf: (uri: string, line: number, i: number) => string | undefined): string | undefined {
  const moved = updates.find(({ uri, range, line }, i) => lineOf(uri, range.start.line, i) !== line);
  return moved && `The page with ${moved.words.split(':')[0]!} was changed in the meantime, so nothing was written. Learn from the shots once more.`;
}
