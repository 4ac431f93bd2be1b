/** Findings as lines of text, as the command line and the tasks of an editor write them, and how a run over them ends. */
import type { Finding, Severity } from '../checks/check.ts';

/** A page and what is found on it. */
export interface Listed {
  readonly uri: string;
  /** as it is shown */
  readonly name: string;
  readonly findings: readonly Finding[];
}

export interface Count {
  readonly errors: number;
  readonly warnings: number;
  readonly notes: number;
  readonly hints: number;
  /** silenced by `accept`, not counted above */
  readonly accepted: number;
  /** expectations that are not met, counted among the warnings too */
  readonly unmet: number;
}

export function countOf(findings: readonly Finding[]): Count {
  const open = findings.filter(f => f.accepted === undefined);
  const of = (s: Severity): number => open.filter(f => f.severity === s).length;
  return { errors: of('error'), warnings: of('warning'), notes: of('note'), hints: of('hint'), accepted: findings.length - open.length, unmet: open.filter(f => f.code === 'expectation-failed').length };
}

/** 1 where there are errors or expectations that are not met; with `strict` for warnings too. */
export function exitFor(findings: readonly Finding[], strict = false): 0 | 1 {
  const n = countOf(findings);
  return n.errors + n.unmet > 0 || (strict && n.warnings > 0) ? 1 : 0;
}

/** `whelk.plate:22:8: warning: … [arms-mismatched]`; lines and columns count from 1. */
export function findingLine(f: Finding, named: (uri: string) => string): string {
  return `${named(f.at.uri)}:${f.at.line + 1}:${f.at.start + 1}: ${f.severity}: ${f.message} [${f.code}]`;
}

/** @param nameOf what a file is called that is none of these: one that they use */
export function listedText(pages: readonly Listed[], nameOf: (uri: string) => string): string {
  const named = namesOf(pages, nameOf);
  const lines = pages.flatMap(p => p.findings.filter(f => f.accepted === undefined).map(f => findingLine(f, named)));
  return `${[...lines, ...(lines.length > 0 ? [''] : []), summary(pages)].join('\n')}\n`;
}

export const namesOf = (pages: readonly Listed[], nameOf: (uri: string) => string) => (uri: string): string => pages.find(p => p.uri === uri)?.name ?? nameOf(uri);

/** `2 files: 1 error, 2 notes; 1 finding accepted.` */
export function summary(pages: readonly Listed[]): string {
  const n = countOf(pages.flatMap(f => f.findings));
  const counts = [many(n.errors, 'error'), many(n.warnings, 'warning'), many(n.notes, 'note'), many(n.hints, 'hint')].filter(Boolean).join(', ') || 'nothing found';
  const unmet = n.unmet > 0 ? `; ${many(n.unmet, 'expectation')} not met` : '';
  const accepted = n.accepted > 0 ? `; ${many(n.accepted, 'finding')} accepted` : '';
  return `${many(pages.length, 'file') || 'no file'}: ${counts}${unmet}${accepted}.`;
}

const many = (n: number, what: string): string => (n === 0 ? '' : `${n} ${what}${n === 1 ? '' : 's'}`);
