/** Runs one command, and tells what it says and how it ends. Nothing is printed here, and the process goes on. */
import { CommanderError } from 'commander';
import { printable } from '../features/plain-text.ts';
import type { ExitCode } from './done.ts';
import { Misuse, Trouble } from './files.ts';
import { program } from './program.ts';

export interface Ended {
  readonly code: ExitCode;
  /** for standard output */
  readonly out: string;
  /** for standard error, with the program's name */
  readonly err: string;
}

/** @param args as they are typed behind the program's name */
export async function run(args: readonly string[]): Promise<Ended> {
  let ended: Ended = { code: 0, out: '', err: '' };
  const say = { out: (text: string) => { ended = { ...ended, out: ended.out + text }; }, err: (text: string) => { ended = { ...ended, err: ended.err + text }; } };
  try {
    await program(({ out, err = [], code }) => { ended = { code, out, err: err.map(complaint).join('') }; }, say).parseAsync([...args], { from: 'user' });
    return ended;
  } catch (e) {
    // Of wrong usage, help and version the parser of the arguments has said what there is to say.
    return e instanceof CommanderError ? { ...ended, code: e.exitCode === 0 ? 0 : 2 } : failed(e);
  }
}

export function failed(e: unknown): Ended {
  if (e instanceof Misuse) return { code: 2, out: '', err: complaint(e.message) };
  if (e instanceof Trouble) return { code: 3, out: '', err: complaint(e.message) };
  return { code: 3, out: '', err: complaint(`something went wrong inside the program (${e instanceof Error ? e.message : String(e)}). Please report this, with the file that caused it.`) };
}

const complaint = (line: string): string => `platewright: ${printable(line)}\n`;
