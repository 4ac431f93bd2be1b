/** `platewright report`: a setup on one page. */
import { analyse } from '../analysis.ts';
import { elsewhere, findingsWithin, reportOf, type Report } from '../features/report/report.ts';
import { reportMarkdown } from '../features/report/markdown.ts';
import { reportText } from '../features/report/text.ts';
import { inVariant, setupsNamed } from './chosen.ts';
import { onScreen, type Done, type Format } from './done.ts';
import { openFile, type Reach } from './files.ts';
import { exitFor } from '../features/listed.ts';
import { reportJson } from './json.ts';

export function report(named: string, { format, setup, variant, ...reach }: { format: Format; setup?: string; variant?: string } & Reach): Done {
  const file = openFile(named, reach);
  const snapshot = inVariant(analyse(file.uri, file.text, file.texts), file.name, setup, variant);
  const results = setupsNamed(snapshot.results, file.name, setup);
  const others = elsewhere(snapshot);
  const findings = snapshot.findings.filter(f => others.includes(f) || results.some(r => findingsWithin(snapshot, r).includes(f)));
  const pages = (): Report[] => results.map(r => reportOf(snapshot, r));
  const out = format === 'json' ? reportJson(file, snapshot, results, findings) : format === 'markdown' ? onScreen(reportMarkdown(pages(), file.name, others)) : onScreen(reportText(pages(), file.name, others));
  return { out, code: exitFor(findings) };
}
