/** The answer as Markdown. */
import { bullets, escaped, table } from '../markdown.ts';
import type { HangPage } from './page.ts';

export function hangMarkdown(pages: readonly HangPage[], file: string): string {
  return `${pages.flatMap(p => [
    `# ${escaped(p.title)}`, `${escaped(file)}, line ${p.line + 1}`, ...p.says.map(escaped),
    ...p.lamps.flatMap(l => [
      escaped(l.lead), ...l.parts.flatMap(x => [`## ${escaped(x.title)}`, table(['', 'value', ''], x.rows.map(r => [r.name, r.text, r.why]))]),
      ...(l.hitches.length > 0 ? ['## What stands against it', bullets(l.hitches.map(escaped))] : []), ...(l.notes.length > 0 ? ['## Worth knowing', bullets(l.notes.map(escaped))] : []),
      ...(l.write ? [`## To write in ${escaped(l.write.to)}`, ['```plate', ...l.write.lines, '```'].join('\n')] : []),
    ]),
  ]).join('\n\n')}\n`;
}
