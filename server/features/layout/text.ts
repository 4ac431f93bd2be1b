/** Layouts on a terminal and in Markdown. */
import { escaped } from '../markdown.ts';
import { padEnd, WIDTH, width, wrap } from '../plain-text.ts';
import { layoutWords, type Layouts } from './layouts.ts';

interface Named { readonly name: string; readonly layouts: Layouts }

export function layoutsText(all: readonly Named[], file: string): string {
  return all.map(({ name, layouts: l }) => [
    `${name}, laid out on ${l.table[0]} x ${l.table[1]} mm with holes every ${l.holes} mm`, '─'.repeat(WIDTH),
    ...(l.why === undefined ? [] : wrap(`Nothing was laid out: ${l.why}.`)),
    ...l.found.flatMap((f, i) => {
      const names = Math.max(...[...f.written.keys()].map(width));
      return ['', ...wrap(`${i + 1}  ${layoutWords(f)}`, { rest: '   ' }), '', ...[...f.written].map(([id, words]) => `     ${padEnd(id, names)}   ${words}`), ...(f.notes.length === 0 ? [] : ['', ...f.notes.flatMap(n => wrap(n, { first: '   ', rest: '   ' }))])];
    }),
    ...(l.found.length === 0 ? [] : ['', ...wrap(`Write one in with: platewright layout ${file} --write --choice 1. Look at it before anything is screwed down: sizes that are not written are assumed.`)]), '',
  ].join('\n')).join('\n');
}

export function layoutsMarkdown(all: readonly Named[]): string {
  return all.map(({ name, layouts: l }) => [
    `# ${escaped(name)}`, '', l.why === undefined ? `On ${l.table[0]} x ${l.table[1]} mm with holes every ${l.holes} mm.` : escaped(`Nothing was laid out: ${l.why}.`), '',
    ...l.found.flatMap((f, i) => [`## ${i + 1}: ${escaped(layoutWords(f))}`, '', '| thing | place |', '|---|---|', ...[...f.written].map(([id, words]) => `| ${escaped(id)} | \`${words}\` |`), '', ...f.notes.flatMap(n => [`- ${escaped(n)}`]), ...(f.notes.length > 0 ? [''] : [])]),
  ].join('\n')).join('\n');
}
