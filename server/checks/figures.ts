/** The figures of each setup with all that is wrong with it: made anew for setups that an edit has touched, and kept of the others. */
import type { LineCache } from '../../grammar/parse.ts';
import { moved } from '../model/kept.ts';
import type { Problem, Setup } from '../model/model.ts';
import { complete } from '../results/complete.ts';
import type { Results } from '../results/plan.ts';
import { variantsOf } from '../results/variants.ts';
import { check } from './run.ts';

/** The results of a setup, and all that is wrong with them, as they stand at a line. */
export interface Figures {
  readonly results: Results;
  readonly problems: readonly Problem[];
  readonly at: number;
}

/** How much was made anew: setups and variants planned, rules run, bands drawn. */
export interface Made {
  readonly planned: number;
  readonly rules: number;
  readonly bands: number;
}

// Kept with the setup, which is the same as long as nothing has changed that it rests on.
const known = new WeakMap<Setup, Figures>();
// What a setup that has changed may still take its values from: the results of the text before, by their cache.
const latest = new WeakMap<LineCache, readonly Results[]>();

export function figuresOf(setups: readonly Setup[], cache: LineCache): { readonly figures: readonly Figures[]; readonly made: Made } {
  const made = { planned: 0, rules: 0, bands: 0 };
  const still = new Set(setups);
  const gone = latest.get(cache)?.filter(r => !still.has(r.setup)) ?? [];
  const figures = setups.map(setup => {
    const before = known.get(setup);
    if (before) return movedTo(setup.node.at, before);
    const last = takeLike(setup, gone);
    const results = complete(setup, last?.graph);
    const variants = variantsOf(results, last);
    const problems = check(results);
    for (const { graph } of [results, ...variants.flatMap(v => v.planned ?? [])]) {
      made.planned++;
      made.rules += graph.computed;
      made.bands += graph.drawn;
    }
    return { results, problems, at: setup.node.at };
  });
  figures.forEach((f, i) => known.set(setups[i]!, f));
  latest.set(cache, figures.map(f => f.results));
  return { figures, made };
}

/** The results that a setup had before it was changed: those of its name, else the next. */
function takeLike(setup: Setup, among: Results[]): Results | undefined {
  const named = among.findIndex(r => r.setup.name === setup.name);
  return among.splice(Math.max(0, named), 1)[0];
}

function movedTo(at: number, f: Figures): Figures {
  if (at === f.at) return f;
  const problems = moved(f.results.problems, at - f.at);
  return { results: problems === f.results.problems ? f.results : { ...f.results, problems }, problems: moved(f.problems, at - f.at), at };
}
