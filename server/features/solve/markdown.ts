/** An answer as Markdown. */
import { bullets, escaped, strong, table } from '../markdown.ts';
import type { AnswerPage, ChoicePage } from './page.ts';
import { choiceLine } from './text.ts';

export function answersMarkdown(pages: readonly AnswerPage[], file: string): string {
  return `${pages.flatMap(p => [
    `# ${escaped(p.title)}`, `${escaped(file)}, line ${p.line + 1}`, ...(p.says === undefined ? [] : [escaped(p.says)]),
    ...(p.choices[0] ? choice(p.choices[0], 'Found') : p.nearest ? choice(p.nearest, 'The nearest attempt') : []),
    ...(p.choices.length > 1 ? ['## Others that will do', bullets(p.choices.slice(1).map(c => escaped(choiceLine(c))))] : []),
    ...(p.left.length > 0 ? ['## Not found', bullets(p.left.map(l => `${strong(l.name)}: ${escaped(l.why)}`))] : []),
  ]).join('\n\n')}\n`;
}

function choice(c: ChoicePage, title: string): string[] {
  return [
    `## ${title}`, table(['', 'value', ''], c.values.map(v => [v.name, v.text, v.remark])),
    ...(c.goals.length > 0 ? ['## What is aimed for and expected', table(['', 'result', ''], c.goals.map(g => [`${g.kind} ${g.text}`, g.shown, g.missed === undefined ? g.outcome : `missed ${g.missed}`]))] : []),
    ...(c.becomes.length > 0 ? ['## What is known with it', table(['', 'result'], c.becomes.map(b => [b.name, b.text]))] : []),
    ...(c.told.length > 0 ? ['## What the page will be told', bullets(c.told.map(escaped))] : []),
  ];
}
