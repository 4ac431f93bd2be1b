/** What the page is told of an answer of the server. */
import type { PictureAnswer } from '../../server/lsp/protocol.ts';
import type { Item } from './messages.ts';

/** In the order of the text. */
export const itemsOf = ({ items }: PictureAnswer): Item[] => [...items]
  .sort((a, b) => (a.range?.start.line ?? Infinity) - (b.range?.start.line ?? Infinity) || (a.range?.start.character ?? 0) - (b.range?.start.character ?? 0))
  .map(({ id, words, range, drags, stays, x, y }) => ({ id, words, written: range !== undefined, drags, stays, x, y }));
