/** What the page is told of an answer of the server. */
import type { PictureAnswer, PictureSheet, PictureShown } from '../../server/lsp/protocol.ts';
import type { Item, Shown, Would } from './messages.ts';

/** @param beside what the panel knows and the server does not: the address of the page, which items the cursor is at, and why another picture is not shown */
export function shownOf(answer: PictureAnswer & { readonly sheet: PictureSheet }, beside: Pick<Shown, 'page' | 'marked' | 'kept'>): Shown {
  const { version, setup, variant, choices, view: look, views: looks, plate, plates, dim, errors, figures, probe, sheet } = answer;
  return { kind: 'picture', version, setup, variant, choices, look, looks, plate, plates, dim, errors, figures, probe, sheet, items: itemsOf(answer), ...beside };
}

/** A picture as it would be; undefined where it could not be drawn. */
export const wouldOf = (answer: PictureShown): Would['would'] => answer.sheet && { sheet: answer.sheet, items: itemsOf(answer), figures: answer.figures };

/** In the order of the text. */
const itemsOf = ({ items }: PictureShown): Item[] => [...items]
  .sort((a, b) => (a.range?.start.line ?? Infinity) - (b.range?.start.line ?? Infinity) || (a.range?.start.character ?? 0) - (b.range?.start.character ?? 0))
  .map(({ id, words, range, drags, stays, x, y }) => ({ id, words, written: range !== undefined, drags, stays, x, y }));
