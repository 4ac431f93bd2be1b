/** The figures of each setup with all that is wrong with it: made anew for setups that an edit has touched, and kept of the others. */
import type { LineCache } from '../../grammar/parse.ts';
import { moved } from '../model/kept.ts';
import type { Problem, Setup } from '../model/model.ts';
import { complete } from '../results/complete.ts';
import type { Results } from '../results/plan.ts';
import { comesAfter, variantsOf } from '../results/variants.ts';
import { check } from './run.ts';

/** The results of a setup, and all that is wrong with them: that is looked for when somebody asks, since a hover behind an edit need not wait for it. */
export class Figures {
  private found: { readonly problems: readonly Problem[]; readonly at: number } | undefined;

  constructor(private whole: Results, private at: number) {}

  get results(): Results { return this.whole; }

  get problems(): readonly Problem[] {
    const found = this.found ??= { problems: check(this.whole), at: this.at };
    if (found.at !== this.at) this.found = { problems: moved(found.problems, this.at - found.at), at: this.at };
    return this.found.problems;
  }

  moveTo(at: number): this {
    const problems = moved(this.whole.problems, at - this.at);
    if (problems !== this.whole.problems) this.whole = { ...this.whole, problems };
    this.at = at;
    return this;
  }

  /** How many rules and bands it took, the variants with it. */
  get made(): Made {
    const graphs = [this.whole.graph, ...variantsOf(this.whole).flatMap(v => [...(v.tried ? [v.tried] : []), ...(v.planned ? [v.planned.graph] : [])])];
    return { planned: graphs.length, rules: graphs.reduce((n, g) => n + g.computed, 0), bands: graphs.reduce((n, g) => n + g.drawn, 0) };
  }
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

/** `anew`: those that were not kept. */
export function figuresOf(setups: readonly Setup[], cache: LineCache): { readonly figures: readonly Figures[]; readonly anew: readonly Figures[] } {
  const anew: Figures[] = [];
  const still = new Set(setups);
  const gone = latest.get(cache)?.filter(r => !still.has(r.setup)) ?? [];
  const figures = setups.map(setup => {
    const before = known.get(setup);
    if (before) return before.moveTo(setup.node.at);
    const last = takeLike(setup, gone);
    const results = complete(setup, last?.graph);
    if (last) comesAfter(results, last);
    const made = new Figures(results, setup.node.at);
    anew.push(made);
    known.set(setup, made);
    return made;
  });
  latest.set(cache, figures.map(f => f.results));
  return { figures, anew };
}

/** The results that a setup had before it was changed: those of its name, else the next. */
function takeLike(setup: Setup, among: Results[]): Results | undefined {
  const named = among.findIndex(r => r.setup.name === setup.name);
  return among.splice(Math.max(0, named), 1)[0];
}
