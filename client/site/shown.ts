/** What the page and its worker say to each other: plain data, in which what somebody wrote is text. */
import type { Picture } from '../../server/drawing/picture.ts';
import type { PictureSheet } from '../../server/lsp/protocol.ts';

/** Part of a line, and what it is. */
export interface Coloured {
  readonly start: number;
  readonly end: number;
  readonly as: string;
}

export interface Told {
  readonly severity: 'error' | 'warning' | 'note' | 'hint';
  readonly code: string;
  readonly message: string;
  /** from 0 */
  readonly line: number;
  readonly start: number;
  readonly end: number;
  /** the file in which it stands, where that is another one */
  readonly file?: string;
}

/** A picture of a setup, and which others there are. */
export interface Shown extends Pick<Picture, 'setup' | 'variant' | 'choices' | 'view' | 'views' | 'plate' | 'plates'> {
  /** missing where nothing can be drawn */
  readonly sheet?: PictureSheet;
}

export interface Looked {
  readonly texts: readonly string[];
  /** of each line */
  readonly colours: readonly (readonly Coloured[])[];
  /** the first line that cannot be read, from 0 */
  readonly torn?: number;
  readonly findings: readonly Told[];
  readonly figures: readonly { readonly label: string; readonly text: string }[];
  /** missing where there is no setup */
  readonly picture?: Shown;
  /** the page of results as the command line prints it, where it was asked for and there is a setup */
  readonly report?: string;
}

/** What of a page is to be looked at. */
export interface Question {
  /** of the page that asks */
  readonly from: number;
  readonly name: string;
  readonly text: string;
  readonly files: Readonly<Record<string, string>>;
  readonly wanted: { readonly setup?: string; readonly variant?: string; readonly view?: string; readonly plate?: string; readonly report: boolean };
}

export interface Answer {
  readonly from: number;
  /** missing where the program has failed, which is a defect of it */
  readonly looked?: Looked;
}
