/** The pages of the findings: what will be seen, why, what to do, an example. Written from the checks, so that they cannot drift apart. */
import type { Check, Severity } from './check.ts';
import { CHECK_GROUPS } from './registry.ts';

/** A part of a page: running text, or lines of a setup. */
export interface PagePart {
  readonly kind: 'text' | 'setup';
  readonly text: string;
}

/** A page in its parts, so that a terminal can wrap the text and leave setups as they are. */
export function pageParts(page: string): PagePart[] {
  return page.split(/^```plate\n(.*?)^```$/gms).flatMap((part, i): PagePart[] => {
    const text = part.trim();
    if (text === '') return [];
    return i % 2 === 1 ? [{ kind: 'setup', text: part.trimEnd() }] : text.split(/\n\s*\n/).map(t => ({ kind: 'text', text: t }));
  });
}

const LONGEST_LINE = 160;
const MOST_LINES = 40;
/** An example as it is shown: of one that exceeds a limit, only the start and the end. */
export function shownExample(example: string): string {
  const lines = example.trimEnd().split('\n').map(l => (l.length > LONGEST_LINE ? `${l.slice(0, LONGEST_LINE / 2)} … ${l.slice(-20)}` : l));
  return lines.length > MOST_LINES ? [...lines.slice(0, 5), `// … ${lines.length - 7} more lines …`, ...lines.slice(-2)].join('\n') : lines.join('\n');
}

/** The page of one finding, as Markdown; `heading` is the mark of its title. */
export function pageOf(check: Check, heading = '#'): string {
  const parts = pageParts(check.page);
  const cured = parts.filter(p => p.kind === 'setup');
  return [
    `${heading} ${check.code}`, `${check.title}. ${SEVERITY[check.severity]}${check.severityOf ? ', or less, by its figures' : ''}.`,
    ...parts.filter(p => p.kind === 'text').map(p => p.text),
    'An example that has this finding:', setup(check.example), ...otherFiles(check),
    ...(cured.length > 0 ? ['Put right:', ...cured.map(p => setup(p.text))] : []),
  ].join('\n\n');
}

function otherFiles(check: Check): string[] {
  const files = Object.entries(check.files ?? {});
  return files.length > 2 ? [`with ${files.length} files more, each of which uses the next.`] : files.flatMap(([name, text]) => [`with \`${name}\`:`, setup(text)]);
}

const setup = (text: string): string => `\`\`\`plate\n${shownExample(text)}\n\`\`\``;

const SEVERITY: Readonly<Record<Severity, string>> = { error: 'An error', warning: 'A warning', note: 'A note', hint: 'A hint' };
const RANK: readonly Severity[] = ['error', 'warning', 'note', 'hint'];

/** All pages in one: by group, in it the gravest first. */
export function allPages(): string {
  const parts = [
    '# The findings',
    'What Platewright says about a setup: what you will see, why, and what to do. An error is something that cannot be understood or computed; a warning says that the plate will suffer; a note is worth knowing; a hint is about the text. ' +
    'Each code stays what it is: `accept CODE "reason"` silences a warning, a note or a hint and keeps the reason in the text.',
    'This page is written from the checks: `UPDATE=1 npx vitest run tests/checks` writes it anew.',
  ];
  for (const { title, checks } of CHECK_GROUPS) {
    const sorted = [...checks].sort((a, b) => RANK.indexOf(a.severity) - RANK.indexOf(b.severity) || (a.code < b.code ? -1 : 1));
    parts.push(`## ${title}`, sorted.map(c => `- [${c.code}](#${c.code}), ${SEVERITY[c.severity].toLowerCase()}: ${c.title.charAt(0).toLowerCase()}${c.title.slice(1)}`).join('\n'), ...sorted.map(c => pageOf(c, '###')));
  }
  return `${parts.join('\n\n')}\n`;
}
