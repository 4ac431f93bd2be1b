/** Which setups of a file a command is about: `--setup NAME`, and `--variant NAME`, the setup as that makes it. */
import type { Snapshot } from '../analysis.ts';
import { check, findingsOf } from '../checks/run.ts';
import { nearest } from '../model/scope.ts';
import type { Results } from '../results/plan.ts';
import { variantsOf } from '../results/variants.ts';
import { Misuse } from './files.ts';

/** The snapshot with the setups that have the variant, each as that makes it, and with the findings of these; the same where none is asked for. */
export function inVariant(snapshot: Snapshot, file: string, setup: string | undefined, variant: string | undefined): Snapshot {
  if (variant === undefined) return snapshot;
  const all = setupsNamed(snapshot.results, file, setup).flatMap(r => variantsOf(r));
  const found = all.filter(v => v.variant.name === variant);
  if (found.length === 0) {
    const names = [...new Set(all.map(v => v.variant.name))];
    const near = nearest(variant, names);
    throw new Misuse(`${file} has no variant “${variant}”. ${near !== undefined ? `Did you mean “${near}”?` : names.length === 0 ? 'There is no variant in it.' : `Its variants: ${names.map(n => `“${n}”`).join(', ')}.`}`);
  }
  const results = found.map(v => v.results);
  const { uri, text, tree, model, files } = snapshot;
  return { ...snapshot, uri, text, tree, model, files, results, findings: findingsOf(tree, model, results.map(r => ({ results: r, problems: check(r) }))) };
}

/** The setups of a file, or the one with that name. */
export function setupsNamed(all: readonly Results[], file: string, name?: string): readonly Results[] {
  if (name === undefined) return all;
  const found = all.filter(r => r.setup.name === name);
  if (found.length > 0) return found;
  const names = all.map(r => r.setup.name);
  const near = nearest(name, names);
  throw new Misuse(`${file} has no setup “${name}”. ${near !== undefined ? `Did you mean “${near}”?` : names.length === 0 ? 'There is no setup in it.' : `Its setups: ${names.map(n => `“${n}”`).join(', ')}.`}`);
}
