/** Findings as lines of text and of Markdown, and the exit code that they ask for. */
import type { Finding, Severity } from '../checks/check.ts';
import { escaped } from '../features/markdown.ts';
import type { Opened, Trouble } from './files.ts';
import { nameOfUri } from './files.ts';

export interface Checked {
  readonly file: Opened;
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

export function checkText(files: readonly Checked[]): string {
  const lines = files.flatMap(c => c.findings.filter(f => f.accepted === undefined).map(f => findingLine(f, namesOf(files))));
  return `${[...lines, ...(lines.length > 0 ? [''] : []), summary(files)].join('\n')}\n`;
}

export function checkMarkdown(files: readonly Checked[], troubles: readonly Trouble[]): string {
  const named = namesOf(files);
  const parts = files.map(({ file, findings }) => {
    const open = findings.filter(f => f.accepted === undefined);
    const rows = open.map(f => `- **${f.severity}**, ${f.at.uri === file.uri ? '' : `${escaped(named(f.at.uri))}, `}line ${f.at.line + 1}: ${escaped(f.message)} (\`${f.code}\`)`);
    return [`## ${escaped(file.name)}`, '', ...(rows.length > 0 ? rows : ['Nothing found.'])].join('\n');
  });
  const unread = troubles.length > 0 ? [['## Not read', '', ...troubles.map(t => `- ${escaped(t.message)}`)].join('\n')] : [];
  return `${['# Findings', ...parts, ...unread, escaped(summary(files))].join('\n\n')}\n`;
}

const namesOf = (files: readonly Checked[]) => (uri: string): string => files.find(f => f.file.uri === uri)?.file.name ?? nameOfUri(uri);

/** `2 files: 1 error, 2 notes; 1 finding accepted.` */
export function summary(files: readonly Checked[]): string {
  const n = countOf(files.flatMap(f => f.findings));
  const counts = [many(n.errors, 'error'), many(n.warnings, 'warning'), many(n.notes, 'note'), many(n.hints, 'hint')].filter(Boolean).join(', ') || 'nothing found';
  const unmet = n.unmet > 0 ? `; ${many(n.unmet, 'expectation')} not met` : '';
  const accepted = n.accepted > 0 ? `; ${many(n.accepted, 'finding')} accepted` : '';
  return `${many(files.length, 'file') || 'no file'}: ${counts}${unmet}${accepted}.`;
}

const many = (n: number, what: string): string => (n === 0 ? '' : `${n} ${what}${n === 1 ? '' : 's'}`);
