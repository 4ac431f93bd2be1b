/** What a change does, as plain text: for a terminal, a pipe, a pager. */
import { capital } from '../../checks/words.ts';
import { alignValues, padEnd, WIDTH, width, wrap } from '../plain-text.ts';
import type { ChangeLine, FindingLine, FindingPage, ReviewPage, SetupPage } from './page.ts';
import { countOf } from './words.ts';

/** A page with the name under which the reader knows it. */
export interface Named { readonly file: string; readonly page: ReviewPage }

export const NO_CHANGE = 'Nothing differs that changes anything: no statement, no result, no finding.';

export function reviewText(pages: readonly Named[]): string {
  const parts = pages.flatMap(pageText);
  return parts.length === 0 ? `${NO_CHANGE}\n` : parts.map(p => `${p.join('\n')}\n`).join('\n\n');
}

function pageText({ file, page }: Named): string[][] {
  const setups = page.setups.filter(s => !s.unchanged).map(s => setup(s, file));
  const inventories = page.inventories.map(i => [...head(`inventory ${i.name}`, file), '', ...i.changes.flatMap(change)]);
  const { changes, findings: found } = page.rest;
  const rest = countOf(page.rest) > 0 ? [[...head('Outside the setups', file), ...section('', changes.flatMap(change)), ...findings(found)]] : [];
  return [...setups, ...inventories, ...rest];
}

function head(title: string, file: string): string[] {
  const gap = WIDTH - width(title) - width(file);
  return [...(gap >= 3 ? [title + ' '.repeat(gap) + file] : [title, file]), '─'.repeat(WIDTH)];
}
const section = (title: string, lines: readonly string[]): string[] => (lines.length === 0 ? [] : ['', ...(title === '' ? [] : [title, '']), ...lines]);

export const titleOf = ({ name, formerly, variants }: SetupPage): string => `${name.trim() === '' ? '(a setup without a name)' : name}${formerly === undefined ? '' : `, formerly “${formerly}”`}${variants === undefined ? '' : `: ${variants}`}`;

function setup(s: SetupPage, file: string): string[] {
  return [
    ...head(titleOf(s), file), ...wrap(headlineWords(s)),
    ...section('Changed on the page', [...s.changes.flatMap(change), ...s.along.flatMap(a => wrap(a, { first: '  ', rest: '    ' }))]),
    ...section('What comes of it', [...results(s), ...goals(s)]), ...section('', wrap(countWords(s), { first: '  ' })), ...findings(s.findings),
  ];
}

/** The headline as a sentence. */
export const headlineWords = ({ headline }: SetupPage): string => `${capital(headline)}.`;

/** `31 results are the same, 2 differ by less than is shown.` */
export function countWords({ same, less, results }: SetupPage): string {
  const other = results.length === 0 && less === 0 ? 'No result is another one' : same === 0 ? 'No result is the same' : same === 1 ? '1 result is the same' : `${same} results are the same`;
  return `${other}${less > 0 ? `, ${less} ${less === 1 ? 'differs' : 'differ'} by less than is shown` : ''}.`;
}

function change(c: ChangeLine): string[] {
  const first = `  ${c.words}${c.by === undefined ? '' : `, ${c.by}`}`;
  if (c.before === undefined || c.after === undefined) return wrap(`${c.words}${[c.before, c.after].map(t => (t === undefined ? '' : `: ${t}`)).join('')}`, { first: '  ', rest: '    ' });
  const short = `${first}: ${c.before} → ${c.after}`;
  return width(short) <= WIDTH ? [short] : [`${first}:`, ...wrap(c.before, { first: '      ' }), ...wrap(`→ ${c.after}`, { first: '    ', rest: '      ' })];
}

function results({ results: lines }: SetupPage): string[] {
  const labels = Math.max(0, ...lines.map(l => width(l.label)));
  const before = alignValues(lines.map(l => l.before));
  const wide = Math.max(0, ...before.map(width));
  return lines.flatMap((l, i) => wrap([l.after, l.by === undefined ? '' : `(${l.by})`, l.sure ? '' : '· not for sure'].filter(Boolean).join('  '), { first: `  ${padEnd(l.label, labels)}   ${padEnd(before[i]!, wide)} → `, rest: ' '.repeat(labels + wide + 8) }));
}

function goals({ goals: list }: SetupPage): string[] {
  const texts = Math.max(0, ...list.map(g => width(g.text)));
  return list.length === 0 ? [] : ['', ...list.map(g => `  ${padEnd(g.text, texts)}   ${g.before} → ${g.after}`)];
}

function findings(f: FindingPage): string[] {
  const rows = (word: string, list: readonly FindingLine[]): string[] => list.flatMap(x => wrap(`${x.message} [${x.code}]`, { first: `  ${padEnd(word, 8)} ${padEnd(x.severity, 8)} line ${x.at.line + 1}: `, rest: ' '.repeat(11) }));
  const still = f.still.length > 0 ? [`  ${f.still.length} still there`] : [];
  const lines = [...rows('cured', f.cured), ...rows('new', f.added), ...rows('accepted', f.accepted)];
  return lines.length === 0 ? [] : ['', 'Findings', '', ...lines, ...still];
}
