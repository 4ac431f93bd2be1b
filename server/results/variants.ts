/** The results of the variants of a setup. Computed when somebody asks, and once: an edit pays for none of them. */
import type { Problem, Setup, Variant } from '../model/model.ts';
import { overlay } from '../model/overlay.ts';
import { differenceOf, type Difference } from './difference.ts';
import type { Graph } from './graph.ts';
import { plan, type Results } from './plan.ts';
import { offsetsOf } from './readings/offsets.ts';

export interface VariantResults {
  readonly variant: Variant;
  /** as of any setup */
  readonly results: Results;
  /** in what they differ from those of the setup as written */
  readonly difference: Difference;
  /** those of its results, and of changed values that no result needs */
  readonly problems: readonly Problem[];
}

const known = new WeakMap<Results, readonly VariantResults[]>();

/** The variants of a setup, in the order of the text. `last`: the results of the setup before an edit, with whose variants they have most in common. */
export function variantsOf(base: Results, last?: Results): readonly VariantResults[] {
  let all = known.get(base);
  const before = last && known.get(last);
  if (!all) known.set(base, all = base.setup.variants.map(variant => resultsOf(variant, base, (before?.find(v => v.variant.name === variant.name)?.results ?? base).graph)));
  return all;
}

function resultsOf(variant: Variant, base: Results, before: Graph): VariantResults {
  const results = plan(overlay(base.setup, variant), { offsets: offsetsOf(base), before });
  const all = { variant, results, difference: differenceOf(base, results), problems: [...results.problems, ...unread(variant, results)] };
  results.graph.settle();
  return all;
}

/** Formulas that no result has read yet are read as well: what is changed is checked, whether it matters or not. */
function unread(variant: Variant, { setup, values }: Results): Problem[] {
  const before = values.problems.length;
  for (const c of variant.changes) if (c.kind === 'fact' && c.fact.value.kind === 'formula') values.fact(setup.things.get(c.thing.id)!, c.key);
  return values.problems.slice(before);
}

/** What is wrong in a variant and not in the setup as written. Each stands in the variant's own lines: where it shows elsewhere, at the variant's name. */
export function variantProblems(base: Results): Problem[] {
  if (base.setup.variants.length === 0) return [];
  const written = new Set(base.problems.map(keyOf));
  return variantsOf(base).flatMap(({ variant, problems }) => problems.filter(p => !written.has(keyOf(p))).map(p => placedIn(variant, p, base.setup)));
}

const keyOf = (p: Problem): string => `${p.code} ${p.at.uri} ${p.at.line} ${p.at.start} ${p.subject}`;

function placedIn({ name, at, node }: Variant, p: Problem, setup: Setup): Problem {
  const stands = (on: Setup['node']): boolean => p.at.uri === at.uri && p.at.line >= on.at && p.at.line <= on.end;
  return stands(node) ? { ...p, variant: name } : { ...p, variant: name, at, data: { ...(stands(setup.node) ? { line: p.at.line + 1 } : {}), ...p.data, elsewhere: true } };
}
