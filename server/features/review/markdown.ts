/** What a change does, as Markdown: for a pull request, or a notebook kept in version control. */
import { bullets, escaped, strong, table } from '../markdown.ts';
import type { ChangeLine, FindingLine, FindingPage, ReviewPage, SetupPage } from './page.ts';
import { countWords, headlineWords, NO_CHANGE, titleOf, type Named } from './text.ts';
import { countOf } from './words.ts';

export function reviewMarkdown(pages: readonly Named[]): string {
  const parts = pages.flatMap(({ file, page }) => {
    const inside = pageParts(page);
    return inside.length === 0 ? [] : [`## ${escaped(file)}`, ...inside];
  });
  return `${(parts.length === 0 ? [NO_CHANGE] : parts).join('\n\n')}\n`;
}

function pageParts({ setups, inventories, rest }: ReviewPage): string[] {
  return [
    ...setups.filter(s => !s.unchanged).flatMap(setup), ...inventories.flatMap(i => [`### inventory ${escaped(i.name)}`, bullets(i.changes.map(change))]),
    ...(countOf(rest) > 0 ? ['### Outside the setups', ...(rest.changes.length > 0 ? [bullets(rest.changes.map(change))] : []), ...findings(rest.findings)] : []),
  ];
}

function setup(s: SetupPage): string[] {
  const changes = [...s.changes.map(change), ...s.along.map(escaped)];
  return [
    `### ${escaped(titleOf(s))}`, strong(headlineWords(s)), ...(changes.length > 0 ? [bullets(changes)] : []),
    ...(s.results.length > 0 ? [table(['', 'before', 'after', ''], s.results.map(r => [r.label, r.before, r.after, [r.by ?? '', r.sure ? '' : 'not for sure'].filter(Boolean).join('; ')]))] : []),
    ...(s.goals.length > 0 ? [bullets(s.goals.map(g => `${escaped(g.text)}: ${g.before} → ${strong(g.after)}`))] : []), escaped(countWords(s)), ...findings(s.findings),
  ];
}

function change(c: ChangeLine): string {
  const values = [c.before, c.after].filter(t => t !== undefined).map(code).join(' → ');
  return `${escaped(c.words)}${c.by === undefined ? '' : `, ${escaped(c.by)}`}${values === '' ? '' : `: ${values}`}`;
}

/** As written. Blanks keep marks at the ends apart from the ticks (CommonMark 0.31, 6.1). */
function code(text: string): string {
  const ticks = '`'.repeat(Math.max(0, ...[...text.matchAll(/`+/g)].map(m => m[0].length)) + 1);
  return text.includes('`') ? `${ticks} ${text} ${ticks}` : `\`${text}\``;
}

function findings(f: FindingPage): string[] {
  const rows = (word: string, list: readonly FindingLine[]): string[] => list.map(x => `${strong(word)}: ${x.severity}, line ${x.at.line + 1}: ${escaped(x.message)} (\`${x.code}\`)`);
  const lines = [...rows('cured', f.cured), ...rows('new', f.added), ...rows('accepted', f.accepted)];
  return lines.length === 0 ? [] : [bullets([...lines, ...(f.still.length > 0 ? [`${f.still.length} still there`] : [])])];
}
