// A command in the process of the test: where what it says, writes and ends with counts, and not the process.
import { run, type Ended } from '../../server/cli/run.ts';
import { FIXTURES } from './folder.ts';

export type { Ended };

/** As it is in a process whose working folder is `cwd`. Tests of a file run one after the other, and so do its commands. */
export async function inside(args: readonly string[], { cwd = FIXTURES }: { cwd?: string } = {}): Promise<Ended> {
  const before = process.cwd();
  process.chdir(cwd);
  try {
    return await run(args);
  } finally {
    process.chdir(before);
  }
}
