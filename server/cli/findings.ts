/** Findings of files as lines of text and of Markdown. */
import type { Finding } from '../checks/check.ts';
import { listedText, namesOf, summary, type Listed } from '../features/listed.ts';
import { escaped } from '../features/markdown.ts';
import type { Opened, Trouble } from './files.ts';
import { nameOfUri } from './files.ts';

export interface Checked {
  readonly file: Opened;
  readonly findings: readonly Finding[];
}

const listed = (files: readonly Checked[]): Listed[] => files.map(({ file: { uri, name }, findings }) => ({ uri, name, findings }));

export const checkText = (files: readonly Checked[]): string => listedText(listed(files), nameOfUri);

export function checkMarkdown(files: readonly Checked[], troubles: readonly Trouble[]): string {
  const named = namesOf(listed(files), nameOfUri);
  const parts = files.map(({ file, findings }) => {
    const open = findings.filter(f => f.accepted === undefined);
    const rows = open.map(f => `- **${f.severity}**, ${f.at.uri === file.uri ? '' : `${escaped(named(f.at.uri))}, `}line ${f.at.line + 1}: ${escaped(f.message)} (\`${f.code}\`)`);
    return [`## ${escaped(file.name)}`, '', ...(rows.length > 0 ? rows : ['Nothing found.'])].join('\n');
  });
  const unread = troubles.length > 0 ? [['## Not read', '', ...troubles.map(t => `- ${escaped(t.message)}`)].join('\n')] : [];
  return `${['# Findings', ...parts, ...unread, escaped(summary(listed(files)))].join('\n\n')}\n`;
}
