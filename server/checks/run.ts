/** Runs all checks over a file and puts what they find into words, in the order of the text. */
import type { Tree } from '../../grammar/tree.ts';
import type { Model, Problem, Setup } from '../model/model.ts';
import type { Results } from '../results/plan.ts';
import type { Check, Finding, Severity } from './check.ts';
import { CHECKS, checkOf } from './registry.ts';
import { syntaxProblems } from './syntax.ts';

const RANK: Readonly<Record<Severity, number>> = { error: 0, warning: 1, note: 2, hint: 3 };

export function findingsOf(tree: Tree, model: Model, results: readonly Results[]): Finding[] {
  const problems: Problem[] = [...syntaxProblems(tree, model.uri), ...model.problems];
  for (const r of results) {
    problems.push(...r.problems);
    for (const check of RUNNING) problems.push(...check.run!(r));
  }
  const seen = new Set<string>();
  const findings: Finding[] = [];
  for (const p of problems) {
    const check = checkOf(p.code);
    // One fact can be met on several ways (a value that two results need); it is one finding.
    const key = `${p.code} ${p.at.line} ${p.at.start} ${p.subject}`;
    if (seen.has(key)) continue;
    seen.add(key);
    const accepted = acceptedBy(p, model.setups);
    findings.push({
      code: p.code, severity: check.severityOf?.(p.data) ?? check.severity, subject: p.subject, at: p.at, data: p.data, message: check.message(p.data),
      ...(p.setup !== undefined ? { setup: p.setup } : {}), ...(accepted !== undefined ? { accepted } : {}),
    });
  }
  return findings.sort((a, b) => a.at.line - b.at.line || a.at.start - b.at.start || RANK[a.severity] - RANK[b.severity]);
}

const RUNNING: readonly Check[] = CHECKS.filter(c => c.run !== undefined);

function acceptedBy(p: Problem, setups: readonly Setup[]): string | undefined {
  if (p.setup === undefined || checkOf(p.code).severity === 'error') return undefined;
  const setup = setups.find(s => s.name === p.setup);
  return setup?.accepts.find(a => a.code === p.code && (a.subject === undefined || p.subject === a.subject || p.subject.split('.').includes(a.subject)))?.reason;
}
