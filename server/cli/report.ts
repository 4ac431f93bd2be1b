/** `platewright report`: a setup on one page. */
import { analyse } from '../analysis.ts';
import { elsewhere, findingsWithin, reportOf, type Report } from '../features/report.ts';
import { reportMarkdown } from '../features/report-markdown.ts';
import { reportText } from '../features/report-text.ts';
import type { Results } from '../results/plan.ts';
import { nearest } from '../model/scope.ts';
import { onScreen, type Done, type Format } from './done.ts';
import { Misuse, openFile } from './files.ts';
import { exitFor } from './findings.ts';
import { reportJson } from './json.ts';

export function report(named: string, { format, setup, folder }: { format: Format; setup?: string; folder?: string }): Done {
  const file = openFile(named, folder);
  const snapshot = analyse(file.uri, file.text, file.texts);
  const results = setupsNamed(snapshot.results, file.name, setup);
  const others = elsewhere(snapshot);
  const findings = snapshot.findings.filter(f => others.includes(f) || results.some(r => findingsWithin(snapshot, r).includes(f)));
  const pages = (): Report[] => results.map(r => reportOf(snapshot, r));
  const out = format === 'json' ? reportJson(file, snapshot, results, findings) : format === 'markdown' ? onScreen(reportMarkdown(pages(), file.name, others)) : onScreen(reportText(pages(), file.name, others));
  return { out, code: exitFor(findings) };
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
