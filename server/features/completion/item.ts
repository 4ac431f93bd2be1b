/** What is offered at a cursor, as plain data, and the texts with stops that whole pieces are made of. */
import type { Place } from '../../model/model.ts';

export type OfferKind = 'statement' | 'kind' | 'block' | 'fact' | 'choice' | 'value' | 'unit' | 'word' | 'thing' | 'beam' | 'item' | 'let' | 'result' | 'code' | 'file';

/** What the words beside an item are about. They are made when somebody looks at the item: see `completionWords`. */
export type Topic =
  | { readonly of: 'kind'; readonly word: string }
  /** `owner`: word of a kind, or of the block whose fact it is */
  | { readonly of: 'fact'; readonly owner: string; readonly phrase: string }
  | { readonly of: 'unit'; readonly unit: string }
  | { readonly of: 'check'; readonly code: string }
  /** of the setup that begins in that line */
  | { readonly of: 'thing' | 'beam' | 'result'; readonly setup: number; readonly name: string }
  | { readonly of: 'item'; readonly name: string };

/** What a place offers; where it replaces nothing else, it replaces the word at the cursor. */
export interface Offer {
  readonly label: string;
  readonly kind: OfferKind;
  readonly detail?: string;
  /** what is written */
  readonly text: string;
  /** written instead where stops are understood: `${1:…}`, in the notation of the protocol; lines below the first without the indent of the first */
  readonly snippet?: string;
  /** the text alone makes no sense: it is only offered where stops are understood */
  readonly stopsOnly?: boolean;
  /** from where text is replaced, where that is not the start of the word at the cursor */
  readonly from?: number;
  /** to where, if not the end of the word */
  readonly to?: number;
  /** what is compared with what was typed, if not the label */
  readonly filter?: string;
  readonly about?: Topic;
  /** Markdown that is at hand without looking anything up */
  readonly words?: string;
}

export interface Completion extends Omit<Offer, 'from' | 'to' | 'filter'> {
  /** what is replaced */
  readonly at: Place;
  readonly filter: string;
  /** its place in the list, the likeliest first */
  readonly sort: string;
}

/**
 * A piece of a text: as it is, a stop with what stands there until something is typed, a choice of words, or where one goes on writing. Without the last
 * that is behind the text. Behind it no stops are left, so that a tab is a tab again.
 */
export type Piece = string | { readonly stop: string } | { readonly pick: readonly string[] } | typeof GO_ON;
export const GO_ON = { goOn: true } as const;

const plainly = (p: Piece): string => (typeof p === 'string' ? p : 'stop' in p ? p.stop : 'pick' in p ? p.pick[0] ?? '' : '');
/** Outside of a stop a brace closes nothing. */
const quoted = (text: string): string => text.replace(/[\\$]/g, '\\$&');

/** The text of some pieces, with and without stops. */
export function template(pieces: readonly Piece[]): { readonly text: string; readonly snippet: string } {
  let n = 0;
  const marked = (p: Piece): string => {
    if (typeof p === 'string') return quoted(p);
    if (p === GO_ON) return '$0';
    const words = 'pick' in p && p.pick.length > 1 ? p.pick : undefined;
    return words ? `\${${++n}|${words.map(w => w.replace(/[\\,|]/g, '\\$&')).join(',')}|}` : plainly(p) === '' ? `$${++n}` : `\${${++n}:${quoted(plainly(p)).replaceAll('}', '\\}')}}`;
  };
  return { text: pieces.map(plainly).join(''), snippet: pieces.map(marked).join('') + (pieces.includes(GO_ON) ? '' : '$0') };
}

/** What will be written, in Markdown. */
export const shown = (text: string): string => `\`\`\`plate\n${text}\n\`\`\``;

/** Lines of a block, indented once, between its first line and its brace. */
export const block = (first: readonly Piece[], lines: readonly (readonly Piece[])[]): Piece[] => [...first, ' {\n', ...lines.flatMap((l): Piece[] => ['  ', ...l, '\n']), '}'];
