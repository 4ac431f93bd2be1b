/** Runs of the model, and what of one is enough to show what it showed. */
import { operate } from './operations.ts';
import { difference } from './questions.ts';
import { World, type State } from './world.ts';

/** Numbers of operations, from a seed. They are spread, since neighbours begin alike. */
export const numberOf = (seed: number, n: number): number => Math.imul(seed + n, 0x9e3779b1) >>> 0;

/** Findings are asked for as an editor does, while more is typed. */
export async function step(world: World, number: number, n: number): Promise<string> {
  const done = await operate(world, number);
  const pages = [...world.open.values()];
  if (n % 4 === 0) void pages[(n / 4) % pages.length]!.codes().catch(() => undefined);
  // A client that never waits would only fill the pipe.
  if (n % 6 === 0) await world.turn();
  return done;
}

/** Does all operations from a state, and holds the server against a fresh one behind them. */
export async function replay(from: State, numbers: readonly number[]): Promise<{ readonly wrong: string | undefined; readonly done: readonly string[] }> {
  const world = await World.of(from);
  try {
    const done: string[] = [];
    for (const [n, number] of numbers.entries()) done.push(await step(world, number, n));
    return { wrong: await difference(world, numbers.length), done };
  } finally { world.close(); }
}

/** The fewest of these operations that still end in a difference: larger pieces are left out first, then smaller ones. The list itself where it does not show it again. */
export async function shrink(from: State, numbers: readonly number[]): Promise<readonly number[]> {
  const shows = async (some: readonly number[]): Promise<boolean> => (await replay(from, some).catch(() => ({ wrong: 'failed' }))).wrong !== undefined;
  let least = numbers;
  if (!await shows(least)) return least;
  for (let size = least.length >> 1; size >= 1; size >>= 1) {
    for (let at = 0; at < least.length;) {
      const fewer = [...least.slice(0, at), ...least.slice(at + size)];
      if (fewer.length < least.length && await shows(fewer)) least = fewer;
      else at += size;
    }
  }
  return least;
}
