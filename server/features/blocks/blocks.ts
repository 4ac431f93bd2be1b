/** What a bench card is made of, as plain data: paper of any kind is laid out from it. Where a page does not say a figure, the card has a line to write it on. */

/** One sheet for one setup. */
export interface Card {
  readonly title: string;
  /** the file that it was made from */
  readonly file: string;
  /** `transmission hologram`, workshop and date, as far as they are written */
  readonly kinds: readonly string[];
  readonly doc?: string;
  /** in which light the card itself can be read */
  readonly light: string;
  /** in the order of the evening; what is not of the `FRONT` stands in two columns */
  readonly sections: readonly Section[];
}

export type SectionName = 'open' | 'eyes' | 'set up' | 'measure' | 'balance' | 'cards' | 'shoot' | 'dark' | 'process' | 'hang' | 'notes';

/** Sections that take the whole width: what has to be known first, and the table with its plan. */
export const FRONT: readonly SectionName[] = ['open', 'eyes', 'set up'];

export interface Section {
  readonly name: SectionName;
  readonly title: string;
  readonly blocks: readonly Block[];
}

export type Block =
  /** `key`: what the section is about, read from afar */
  | { readonly kind: 'words'; readonly text: string; readonly key?: true }
  /** something that can hurt somebody, or cost the plate */
  | { readonly kind: 'caution'; readonly text: string }
  /** where the plan of the setup stands, or its arms where nothing has a place; beside it what is done first */
  | { readonly kind: 'picture'; readonly steps: readonly Step[] }
  /** where the finished hologram is drawn as it hangs under a lamp; nothing where that cannot be drawn */
  | { readonly kind: 'hung'; readonly lamp: string }
  | Table
  /** one after the other, each with a box to tick */
  | { readonly kind: 'steps'; readonly steps: readonly Step[] }
  /** blanks side by side */
  | { readonly kind: 'blanks'; readonly blanks: readonly Blank[] }
  /** what has to be known by heart: read from afar */
  | { readonly kind: 'large'; readonly rows: readonly { readonly label: string; readonly entry: Entry }[] }
  /** a row of boxes, one for each time of a test strip */
  | { readonly kind: 'strip'; readonly times: readonly string[] }
  /** lines to write on */
  | { readonly kind: 'lines'; readonly count: number };

export interface Table {
  readonly kind: 'table';
  readonly heads: readonly string[];
  /** how wide the columns are beside each other */
  readonly widths: readonly number[];
  readonly groups: readonly { readonly title?: string; readonly rows: readonly Row[] }[];
}

export interface Row {
  readonly entries: readonly Entry[];
  /** it has a box to tick */
  readonly tick: boolean;
  /** it sums up the rows above it */
  readonly sum?: true;
}

/** What stands in a place of the card: words, with others in small print below; or a line to write on, with what stands behind it, mostly a unit. */
export type Entry = { readonly text: string; readonly small?: string } | { readonly write: string };

export interface Step {
  readonly text: string;
  readonly small?: string;
  /** a line behind it, with the unit of what is written there */
  readonly write?: string;
}

export interface Blank {
  readonly label: string;
  readonly write: string;
  /** how wide it is beside the others; 1 by default */
  readonly width?: number;
}

export const words = (text: string): Block => ({ kind: 'words', text });
export const key = (text: string): Block => ({ kind: 'words', text, key: true });
export const blank = (label: string, write = '', width = 1): Blank => ({ label, write, width });
export const told = (text: string, small = ''): Entry => (small === '' ? { text } : { text, small });
