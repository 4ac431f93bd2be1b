/** The answer on a terminal. */
import { padEnd, WIDTH, width, wrap } from '../plain-text.ts';
import type { HangPage, HangPart } from './page.ts';

/** `file` is the name under which the reader knows the page. */
export function hangText(pages: readonly HangPage[], file: string): string {
  return pages.map(p => `${pageLines(p, file).join('\n')}\n`).join('\n\n');
}

function pageLines(p: HangPage, file: string): string[] {
  const where = `${file}, line ${p.line + 1}`;
  const gap = WIDTH - width(p.title) - width(where);
  return [
    ...(gap >= 3 ? [p.title + ' '.repeat(gap) + where] : [p.title, where]), '─'.repeat(WIDTH), ...p.says.flatMap(s => wrap(s)),
    ...p.lamps.flatMap((l, i) => [
      ...(i > 0 || p.says.length > 0 ? [''] : []), ...wrap(l.lead), ...l.parts.flatMap(partLines), ...listed('What stands against it', l.hitches), ...listed('Worth knowing', l.notes),
      ...(l.write ? ['', `To write in ${l.write.to}`, '', ...l.write.lines.map(t => `  ${t}`)] : []),
    ]),
  ];
}

const listed = (title: string, sentences: readonly string[]): string[] => (sentences.length > 0 ? ['', title, '', ...sentences.flatMap(s => wrap(s, { first: '  ', rest: '    ' }))] : []);

function partLines({ title, rows }: HangPart): string[] {
  const [names, texts] = [Math.max(...rows.map(r => width(r.name))), Math.max(...rows.map(r => width(r.text)))];
  return ['', title, '', ...rows.flatMap(r => {
    const head = `  ${padEnd(r.name, names)}   ${padEnd(r.text, texts)}`;
    return r.why === '' ? [head.trimEnd()] : wrap(r.why, { first: `${head}   `, rest: ' '.repeat(width(head) + 3) });
  })];
}
