// A command in the process of the test, where only what it says counts.
import { Misuse, Trouble } from '../../server/cli/files.ts';
import { program } from '../../server/cli/program.ts';
import type { Ended } from './command.ts';

/** As the program's `main` ends: wrong usage with 2, what cannot be read or computed with 3. */
export async function inside(args: readonly string[]): Promise<Ended> {
  let ended: Ended = { code: null, out: '', err: '' };
  try {
    await program(({ out, err = [], code }) => { ended = { code, out, err: err.join('\n') }; }).parseAsync([...args], { from: 'user' });
  } catch (e) {
    if (!(e instanceof Misuse || e instanceof Trouble)) throw e;
    ended = { code: e instanceof Misuse ? 2 : 3, out: '', err: e.message };
  }
  return ended;
}
