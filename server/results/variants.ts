/** The results of the variants of a setup. Computed when somebody asks, and once. What is wrong with one is known without them, as long as an edit has changed neither it nor what it changes. */
import { moved, namesLine } from '../model/kept.ts';
import type { Problem, Setup, Variant } from '../model/model.ts';
import { overlay } from '../model/overlay.ts';
import { differenceOf, type Difference } from './difference.ts';
import type { Graph } from './graph.ts';
import { groundProblems, plan, type Results } from './plan.ts';
import { offsetsOf } from './readings/offsets.ts';
import { SameBound } from './same-bound.ts';

export interface VariantResults {
  readonly variant: Variant;
  /** as of any setup */
  readonly results: Results;
  /** in what they differ from those of the setup as written */
  readonly difference: Difference;
  /** What is wrong in it and not in the setup as written. Each stands in the variant's own lines: where it shows elsewhere, at the variant's name. */
  readonly problems: readonly Problem[];
  /** its results, if they were computed already */
  readonly planned: Results | undefined;
  /** what only looked for what is wrong */
  readonly tried: Graph | undefined;
}

interface Variants {
  readonly setup: Setup;
  /** the line of the setup when they were made: the lines that problems name are counted from there */
  readonly at: number;
  readonly all: readonly VariantResults[];
}
// A setup that an edit has only moved has the same graph.
const known = new WeakMap<Graph, Variants>();

// What a setup was before an edit, until its variants are asked for: they take over what has not changed.
const earlier = new WeakMap<Graph, Results>();
export function comesAfter(base: Results, last: Results): void {
  // Nobody asks for those any more, and what they in turn would hold is let go.
  earlier.delete(last.graph);
  earlier.set(base.graph, last);
}

/** The variants of a setup, in the order of the text. */
export function variantsOf(base: Results): readonly VariantResults[] {
  const found = known.get(base.graph);
  if (found) return found.all;
  const { setup } = base;
  const last = earlier.get(base.graph);
  const before = last && known.get(last.graph);
  earlier.delete(base.graph);
  const same = before && setup.variants.length > 0 ? new SameBound(before.setup, setup) : undefined;
  const all = setup.variants.map(variant => {
    const old = before?.all.find(v => v.variant.name === variant.name);
    // A line that is named may have moved within the setup, nobody knows by how much.
    if (old && same?.variants(old.variant, variant) && !old.problems.some(namesLine)) return new Varied(variant, base, { problems: old.problems });
    return new Varied(variant, base, { before: old?.planned?.graph ?? old?.tried ?? base.graph });
  });
  known.set(base.graph, { setup, at: setup.node.at, all });
  return all;
}

/** What is wrong in the variants of a setup, and not in the setup as written. */
export function variantProblems(base: Results): readonly Problem[] {
  const problems = variantsOf(base).flatMap(v => v.problems);
  // They may have been found when the setup stood on another line.
  return moved(problems, base.setup.node.at - known.get(base.graph)!.at);
}

class Varied implements VariantResults {
  planned: Results | undefined;
  /** what was looked at for what is wrong, where that was not all of it */
  tried: Graph | undefined;
  private compared: Difference | undefined;
  readonly problems: readonly Problem[];

  /** `problems`, where they are known; `before`: the graph to take over from */
  constructor(readonly variant: Variant, private readonly base: Results, from: { readonly problems: readonly Problem[] } | { readonly before: Graph }) {
    if ('problems' in from) { this.problems = from.problems; return; }
    const written = new Set(base.problems.map(keyOf));
    this.problems = this.look(from.before).filter(p => !written.has(keyOf(p))).map(p => placedIn(variant, p, base.setup));
  }

  get results(): Results { return this.planned ??= planned(this.variant, this.base, this.base.graph).results; }
  get difference(): Difference { return this.compared ??= differenceOf(this.base, this.results); }

  /** Other numbers leave every result its name, so that what is expected can be asked as before; with other things, beams or values it may not. */
  private look(before: Graph): readonly Problem[] {
    if (this.variant.changes.every(c => c.kind === 'placement' || c.kind === 'fact' || c.kind === 'leg')) {
      const setup = overlay(this.base.setup, this.variant);
      const ground = groundProblems(setup, { offsets: offsetsOf(this.base), before });
      if (ground) {
        const unread = unreadIn(this.variant, { setup, values: ground.values });
        ground.graph.settle();
        this.tried = ground.graph;
        return [...ground.problems, ...unread];
      }
    }
    const { results, unread } = planned(this.variant, this.base, before);
    this.planned = results;
    return [...results.problems, ...unread];
  }
}

function planned(variant: Variant, base: Results, before: Graph): { readonly results: Results; readonly unread: readonly Problem[] } {
  const results = plan(overlay(base.setup, variant), { offsets: offsetsOf(base), before });
  const unread = unreadIn(variant, results);
  results.graph.settle();
  return { results, unread };
}

/** Formulas that no result has read yet are read as well: what is changed is checked, whether it matters or not. */
function unreadIn(variant: Variant, { setup, values }: Pick<Results, 'setup' | 'values'>): Problem[] {
  const before = values.problems.length;
  for (const c of variant.changes) if (c.kind === 'fact' && c.fact.value.kind === 'formula') values.fact(setup.things.get(c.thing.id)!, c.key);
  return values.problems.slice(before);
}

export const keyOf = (p: Problem): string => `${p.code} ${p.at.uri} ${p.at.line} ${p.at.start} ${p.subject}`;

/** What is wrong in a variant, where it shows on the page. */
export function placedIn({ name, at, node }: Variant, p: Problem, setup: Setup): Problem {
  const stands = (on: Setup['node']): boolean => p.at.uri === at.uri && p.at.line >= on.at && p.at.line <= on.end;
  return stands(node) ? { ...p, variant: name } : { ...p, variant: name, at, data: { ...(stands(setup.node) ? { line: p.at.line + 1 } : {}), ...p.data, elsewhere: true } };
}
