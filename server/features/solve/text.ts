/** An answer on a terminal. */
import { capital } from '../../checks/words.ts';
import { padEnd, WIDTH, width, wrap } from '../plain-text.ts';
import type { AnswerPage, ChoicePage } from './page.ts';

const SHOWN = 12;

/** `file` is the name under which the reader knows the page. */
export function answersText(pages: readonly AnswerPage[], file: string): string {
  return pages.map(p => `${pageLines(p, file).join('\n')}\n`).join('\n\n');
}

function pageLines(p: AnswerPage, file: string): string[] {
  const where = `${file}, line ${p.line + 1}`;
  const gap = WIDTH - width(p.title) - width(where);
  const [first, ...others] = p.choices;
  return [
    ...(gap >= 3 ? [p.title + ' '.repeat(gap) + where] : [p.title, where]), '─'.repeat(WIDTH), ...(p.says === undefined ? [] : wrap(p.says)),
    ...(first ? choiceLines(first, 'Found') : p.nearest ? choiceLines(p.nearest, 'The nearest attempt') : []),
    ...(others.length > 0 ? ['', others.length === 1 ? 'Another one that will do' : 'Others that will do', '', ...others.flatMap((c, i) => wrap(`${i + 2}  ${choiceLine(c)}`, { first: '  ', rest: '     ' }))] : []),
    ...(p.left.length > 0 ? ['', 'Not found', '', ...p.left.flatMap(l => wrap(`${l.name}: ${l.why}`, { first: '  ', rest: '    ' }))] : []),
  ];
}

/** The values and what is aimed at, in a line: what `--write --choice 2` would write. */
export const choiceLine = (c: ChoicePage): string => `${c.values.map(v => `${v.name} ${v.text}`).join(', ')}${c.headline === '' ? '' : `: ${c.headline}`}`;

function choiceLines(c: ChoicePage, title: string): string[] {
  const column = (texts: readonly string[]): number => Math.max(0, ...texts.map(width));
  const [names, texts] = [column(c.values.map(v => v.name)), column(c.values.map(v => v.text))];
  const values = c.values.flatMap(v => hanging(`  ${padEnd(v.name, names)}   ${padEnd(v.text, texts)}`, v.remark));
  const goals = column(c.goals.map(g => `${g.kind} ${g.text}`));
  const shown = column(c.goals.map(g => g.shown));
  const more = c.becomes.length - SHOWN;
  const labels = column(c.becomes.slice(0, SHOWN).map(b => b.name));
  return [
    '', title, '', ...values,
    ...(c.goals.length > 0 ? ['', 'What is aimed for and expected', '', ...c.goals.map(g => `  ${padEnd(`${g.kind} ${g.text}`, goals)}   ${padEnd(g.shown, shown)}   ${g.missed === undefined ? g.outcome : `missed ${g.missed}`}`.trimEnd())] : []),
    ...(c.becomes.length > 0 ? ['', 'What is known with it', '', ...c.becomes.slice(0, SHOWN).map(b => `  ${padEnd(b.name, labels)}   ${b.text}`), ...(more > 0 ? [`  and ${more} more: see report`] : [])] : []),
    ...(c.told.length > 0 ? ['', 'What the page will be told', '', ...c.told.flatMap(t => wrap(capital(t), { first: '  ', rest: '    ' }))] : []),
  ];
}

/** A remark behind a row, its later lines under its first. */
function hanging(head: string, remark: string): string[] {
  if (remark === '') return [head.trimEnd()];
  const indent = ' '.repeat(width(head) + 3);
  return wrap(remark, { first: `${head}   `, rest: indent });
}
