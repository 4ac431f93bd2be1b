/** A setup as written beside what one of its variants makes of it, as two pages. */
import type { Snapshot } from '../analysis.ts';
import { check, findingsOf } from '../checks/run.ts';
import { variantsOf } from '../results/variants.ts';

/** Undefined where there is no such setup, or it has no such variant. Nothing of other setups is in either. */
export function besideVariant(s: Snapshot, setup: string, variant: string): { readonly before: Snapshot; readonly after: Snapshot } | undefined {
  const base = s.results.find(r => r.setup.name === setup);
  const results = base && variantsOf(base).find(v => v.variant.name === variant)?.results;
  if (!base || !results) return undefined;
  return {
    before: { ...s, results: [base], findings: s.findings.filter(f => f.setup === undefined || f.setup === setup) },
    after: { ...s, results: [results], findings: findingsOf(s.tree, s.model, [{ results, problems: check(results) }]) },
  };
}
