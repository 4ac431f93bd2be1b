/** The pages of the findings: what will be seen, why, what to do, an example. Written from the checks, so that they cannot drift apart. */
import type { Check, Severity } from './check.ts';
import { CHECKS } from './registry.ts';

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
  const files = Object.entries(check.files ?? {});
  const others = files.length <= 2 ? files.map(([name, text]) => `with \`${name}\`:\n\n${setup(text)}`) : [`with ${files.length} files more, each of which uses the next.`];
  return [
    `${heading} ${check.code}`, `${check.title}. ${SEVERITY[check.severity]}${check.severityOf ? ', or less, by its figures' : ''}.`, check.page.trim(),
    'An example that has this finding:', setup(check.example), ...others,
  ].join('\n\n');
}

const setup = (text: string): string => `\`\`\`plate\n${shownExample(text)}\n\`\`\``;

const SEVERITY: Readonly<Record<Severity, string>> = { error: 'An error', warning: 'A warning', note: 'A note', hint: 'A hint' };
const GROUPS: readonly (readonly [Severity, string, string])[] = [
  ['error', 'Errors', 'Something cannot be understood or computed.'],
  ['warning', 'Warnings', 'The plate will suffer.'],
  ['note', 'Notes', 'Worth knowing.'],
  ['hint', 'Hints', 'About the text.'],
];

/** All pages in one, by severity, then by code. */
export function allPages(): string {
  const parts = [
    '# The findings',
    'What Platewright says about a setup: what you will see, why, and what to do. Each code stays what it is; `accept CODE "reason"` silences a warning, a note or a hint and keeps the reason in the text.',
    'This page is written from the checks: `UPDATE=1 npx vitest run tests/checks` writes it anew.',
  ];
  for (const [severity, title, meaning] of GROUPS) {
    const own = CHECKS.filter(c => c.severity === severity).sort((a, b) => (a.code < b.code ? -1 : 1));
    if (own.length === 0) continue;
    parts.push(`## ${title}`, meaning, own.map(c => `- [${c.code}](#${c.code}): ${c.title.charAt(0).toLowerCase()}${c.title.slice(1)}`).join('\n'), ...own.map(c => pageOf(c, '###')));
  }
  return `${parts.join('\n\n')}\n`;
}
