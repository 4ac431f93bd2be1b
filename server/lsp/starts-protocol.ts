/** What the server and its client say to each other of pages to begin with. */

/** Request of a client: the pages to begin with, the simplest one first. Its parameters are an empty object; nothing is written or opened: that is up to the client. */
export const STARTS = 'platewright/starts';
export type StartsAnswer = readonly {
  /** as it is typed, and what its file may be called */
  readonly name: string;
  readonly title: string;
  /** what it is for, in one line */
  readonly words: string;
  /** a whole page, which uses no other file */
  readonly text: string;
}[];
