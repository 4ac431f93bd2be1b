/** What the server and its client say to each other of all shots: those of the pages in the open folders, and of those that are open. */

/** Request of a client: what the shots teach of stocks and lasers. Nothing is written: that is up to the client. Its parameters are an empty object. */
export const LEARN = 'platewright/learn';
export interface LearnAnswer {
  /** how many there are, on how many pages */
  readonly shots: number;
  readonly pages: number;
  /** what they teach, how sure it is and what they do not tell, as a page */
  readonly markdown: string;
  readonly updates: readonly Update[];
}
/** A value that could be written into an inventory. */
export interface Update {
  readonly uri: string;
  readonly range: { readonly start: { readonly line: number; readonly character: number }; readonly end: { readonly line: number; readonly character: number } };
  readonly newText: string;
  /** the line as it was when this was made, all of it: of another one it must not be made */
  readonly line: string;
  /** `lab.fine: sensitivity: 41 µJ/cm² ×÷ 1.4` */
  readonly words: string;
  /** `3 shots; there stands 40 µJ/cm² ×÷ 2` */
  readonly detail: string;
}

/** Request of a client: the shots by date, as a page. Its parameters are an empty object. */
export const HISTORY = 'platewright/history';
export interface HistoryAnswer { readonly shots: number; readonly pages: number; readonly markdown: string }
