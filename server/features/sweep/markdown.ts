/** A sweep as Markdown. */
import { bullets, escaped, table } from '../markdown.ts';
import type { SweepPage } from './page.ts';

export function sweepMarkdown({ title, tables, told, figures, notes }: SweepPage, file: string): string {
  return `${[
    `# ${escaped(title)}`, escaped(file),
    ...tables.flatMap(t => [...(t.title === undefined ? [] : [`## ${escaped(t.title)}`]), table(t.head.map(escaped), t.rows)]),
    ...(told.length > 0 ? ['## On the way', bullets(told.map(escaped))] : []), ...[...figures, ...notes].map(escaped),
  ].join('\n\n')}\n`;
}
