/** A page to begin with, as it is listed and as it is written. */
export interface Start {
  /** as it is typed, and what its file is called */
  readonly name: string;
  readonly title: string;
  /** what it is for, in one line */
  readonly words: string;
  /** a whole page that uses no other file: it has none beside it yet */
  readonly text: string;
}
