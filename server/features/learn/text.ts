/** What was learnt, on a terminal and as Markdown. */
import { bullets, escaped } from '../markdown.ts';
import { wrap } from '../plain-text.ts';
import type { LearnedPage } from './page.ts';

export function learnedText({ lessons, idle, notes }: LearnedPage): string {
  const parts = [
    ...lessons.map(l => [
      l.title, ...wrap(l.says, { first: '  ' }), ...l.from.flatMap(f => wrap(f, { first: '    ', rest: '      ' })), ...l.limits.flatMap(x => wrap(x, { first: '  ' })),
      ...(l.offer === undefined ? [] : wrap(`To write: ${l.offer}`, { first: '  ', rest: '    ' })),
    ]),
    ...(idle.length > 0 ? [['Tell nothing of the exposure that a stock needs', ...idle.flatMap(i => wrap(i, { first: '  ', rest: '    ' }))]] : []), ...notes.map(n => wrap(n)),
  ];
  return `${parts.map(p => p.join('\n')).join('\n\n')}\n`;
}

export function learnedMarkdown({ lessons, idle, notes }: LearnedPage): string {
  return `${[
    ...lessons.flatMap(l => [`## ${escaped(l.title)}`, escaped(l.says), bullets(l.from.map(escaped)), ...l.limits.map(escaped), ...(l.offer === undefined ? [] : [`To write: ${escaped(l.offer)}`])]),
    ...(idle.length > 0 ? ['## Tell nothing of the exposure that a stock needs', bullets(idle.map(escaped))] : []), ...notes.map(escaped),
  ].join('\n\n')}\n`;
}
