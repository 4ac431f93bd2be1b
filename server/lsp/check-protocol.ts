/** What the server and its client say to each other of tasks: what the command line prints, for a client that shows it line by line. */

/** Request of a client: the findings of pages, as `platewright check` writes them. Pages are taken as they are open, else as they stand on disk. */
export const CHECK = 'platewright/check';
export interface CheckParams {
  /** addresses of pages; without them all pages of the open folders */
  readonly pages?: readonly string[];
  /** a warning counts as an error */
  readonly strict?: boolean;
}

export interface Printed {
  /** lines with `\n`, in which nothing acts on a terminal */
  readonly text: string;
  /** 0 fine, 1 errors or expectations that are not met, 3 something could not be read */
  readonly code: 0 | 1 | 3;
}
