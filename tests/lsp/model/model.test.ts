/**
 * The server against a fresh one: pages are typed into, mended, formatted, renamed in, opened and closed, files that they use change on disk, move and go, folders and
 * settings change, and the server is asked in between, as an editor does. At each quiet point its answers are those of a server that has only ever seen the texts as they
 * are now. `npm run soak` does much more of it.
 */
import { expect, test } from 'vitest';
import { difference } from './questions.ts';
import { numberOf, replay, shrink, step } from './run.ts';
import { BEGIN, World } from './world.ts';

const SEED = Number(process.env['SEED'] ?? 20260211);
const STEPS = Number(process.env['STEPS'] ?? 300);
/** Steps between two quiet points. */
const QUIET = 75;

test(`answers as a fresh server does after ${STEPS} steps, and at each quiet point between`, async () => {
  const world = await World.of(BEGIN);
  try {
    const numbers: number[] = [];
    const done: string[] = [];
    for (let n = 1; n <= STEPS; n++) {
      numbers.push(numberOf(SEED, n));
      done.push(await step(world, numbers.at(-1)!, n));
      if (n % QUIET > 0) continue;
      const wrong = await difference(world, n);
      if (wrong !== undefined) {
        const { wrong: again, done: enough } = await replay(BEGIN, await shrink(BEGIN, numbers));
        expect.fail(`${wrong}\n\nafter seed ${SEED}:\n${(again === undefined ? done.slice(-QUIET) : enough).join('\n')}`);
      }
    }
    // Half of what is done is done to the text.
    expect(world.edits).toBeGreaterThan(STEPS / 2);
    expect(done.some(d => / is renamed (?!.*refused)/.test(d))).toBe(true);
  } finally { world.close(); }
});
