/** Tries inputs of a target, one after the other. What is wrong is cut down; what reaches new blocks of the program is changed further. */
import fc from 'fast-check';
import type { Coverage, Known } from './coverage.ts';
import { mutate } from './mutate.ts';
import { randomBy } from './random.ts';
import { shrink } from './shrink.ts';
import type { Target } from './target.ts';

export interface Wrong { readonly input: string; readonly why: string }
export interface Tried { readonly inputs: number; readonly wrong: readonly Wrong[]; /** that reached new blocks */ readonly corpus: number }

export interface Wanted {
  readonly inputs: number;
  readonly seed: number;
  readonly coverage?: Coverage;
  /** told before each input: one that never ends is known by it */
  readonly trying?: (input: string) => void;
  /** told as soon as something is found */
  readonly found?: (wrong: Wrong) => void;
  /** told now and then: how many inputs have been tried */
  readonly goesOn?: (inputs: number) => void;
}

/** So many inputs between two looks at what has run: a look costs as much as many inputs. */
const BATCH = 64;
/** More of one target need not be found in one run. */
const ENOUGH = 20;

export async function tryMany(target: Target, { inputs, seed, coverage, trying, found, goesOn }: Wanted): Promise<Tried> {
  const random = randomBy(seed);
  const corpus: string[] = [];
  const wrong = new Map<string, Wrong>();
  // A block that runs in a batch and not when its inputs are looked at one by one is no reason to look at each batch.
  const seen: Known = new Map();
  const reached: Known = new Map();
  let done = 0;
  while (done < inputs && wrong.size < ENOUGH) {
    const fresh = fc.sample(target.inputs, { numRuns: Math.min(BATCH, inputs - done), seed: random.below(2 ** 31) });
    // Half of them are what reached something new before, changed.
    const batch = fresh.map((input, i) => (coverage && corpus.length > 0 && i % 2 === 1 ? mutate(random.of(corpus), random.of([input, random.of(corpus)]), target.words, random) : input));
    for (const input of batch) {
      trying?.(input);
      const why = await failureOf(target, input);
      done++;
      if (why === undefined || wrong.has(kindOf(why))) continue;
      const least = await shrink(input, async i => { trying?.(i); return kindOf(await failureOf(target, i) ?? '') === kindOf(why); });
      const one = { input: least, why: await failureOf(target, least) ?? why };
      wrong.set(kindOf(why), one);
      found?.(one);
    }
    goesOn?.(done);
    if (!coverage?.isNew(seen)) continue;
    for (const input of batch) {
      trying?.(input);
      await failureOf(target, input);
      if (coverage.isNew(reached)) corpus.push(input);
    }
  }
  return { inputs: done, wrong: [...wrong.values()], corpus: corpus.length };
}

/** What is wrong with an input; undefined where nothing is. */
export async function failureOf(target: Target, input: string): Promise<string | undefined> {
  try {
    await target.run(input);
    return undefined;
  } catch (e) {
    return e instanceof Error ? `${e.message}\n${(e.stack ?? '').split('\n').filter(l => l.startsWith('    at ')).slice(0, 4).join('\n')}` : String(e);
  }
}

/** What fails in the same way: at the same place, numbers, names and texts aside. */
function kindOf(why: string): string {
  const [message = '', place = ''] = why.split('\n');
  return [message.replace(/[“"…][^]*/, '').slice(0, 60), place.replace(/[(:][^]*/, '')].map(t => t.replace(/[^A-Za-z ]+/g, ' ')).join();
}
