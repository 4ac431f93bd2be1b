/** What a command has to say, and how it ends. Commands return it; only `main.ts` prints and exits. */
import { printable } from '../features/plain-text.ts';
import type { Trouble } from './files.ts';

export type Format = 'text' | 'json' | 'markdown';
/** Findings can be handed to a code host as well. */
export type CheckFormat = Format | 'sarif';

/** 0 fine, 1 errors or expectations that are not met, 2 wrong usage, 3 could not read or compute */
export type ExitCode = 0 | 1 | 2 | 3;

export interface Done {
  /** for standard output */
  readonly out: string;
  /** for standard error, lines without the program's name */
  readonly err?: readonly string[];
  readonly code: ExitCode;
}

/** Adds what could not be read or written: it is said, and the exit code is 3. */
export const troubled = (done: Done, troubles: readonly Trouble[]): Done => (troubles.length === 0 ? done : { ...done, err: [...(done.err ?? []), ...troubles.map(t => t.message)], code: 3 });

/** Text for a screen: nothing in it, not even a quoted control character, acts on the terminal. */
export const onScreen = (text: string): string => text.split('\n').map(printable).join('\n');
