/** A sweep on a terminal. */
import { padEnd, width, wrap } from '../plain-text.ts';
import type { SweepPage } from './page.ts';

export function sweepText({ title, tables, told, figures, notes }: SweepPage): string {
  const parts = [
    wrap(title),
    ...tables.map(({ title: of, head, rows }) => {
      const cells = [head, ...rows];
      const widths = head.map((_, i) => Math.max(...cells.map(c => width(c[i]!))));
      return [...(of === undefined ? [] : [of, '']), ...cells.map(c => `  ${c.map((t, i) => padEnd(t, widths[i]!)).join('   ')}`.trimEnd())];
    }),
    ...(told.length > 0 ? [['On the way', '', ...told.flatMap(t => wrap(t, { first: '  ', rest: '    ' })), ...figures.flatMap(f => ['', ...wrap(f, { first: '  ' })])]] : []),
    ...(notes.length > 0 ? [notes.flatMap(n => wrap(n))] : []),
  ];
  return `${parts.map(p => p.join('\n')).join('\n\n')}\n`;
}
