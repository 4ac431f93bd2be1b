/** The plates that were shot, as a table for a terminal, Markdown or a spreadsheet. */
import { plain, show, showRatio, showWithin } from '../../model/show.ts';
import type { Quantity } from '../../model/quantity.ts';
import { csv, numberIn } from '../csv.ts';
import type { Unit } from '../../model/units.ts';
import { escaped, table } from '../markdown.ts';
import { padEnd, width, wrap } from '../plain-text.ts';
import type { History, HistoryRow } from './history.ts';

type Naming = (uri: string) => string;
const COLUMNS: readonly (readonly [string, (r: HistoryRow, naming: Naming) => string])[] = [
  ['date', ({ shot }) => shot.on ?? ''], ['page', ({ shot }, naming) => naming(shot.setup.uri)], ['setup', ({ shot }) => shot.setup.name], ['shot', ({ shot }) => shot.name],
  ['stock', ({ shot }) => shot.stock ?? ''], ['batch', ({ shot }) => shot.batch ?? ''],
];
const BEHIND: readonly (readonly [string, (r: HistoryRow) => string])[] = [['developer', ({ shot }) => shot.developer ?? ''], ['outcome', ({ shot }) => shot.words.get('outcome') ?? ''], ['remarks', ({ remarks }) => remarks.join('; ')]];

/** A number as its author wrote it. */
export function numberText(q: Quantity | undefined, name: string): string {
  if (!q) return '';
  if (name === 'beam ratio') return showRatio(q.value);
  if (q.spread?.kind === 'within') return showWithin(q.value, q.dim, q.spread.amount, q.unit);
  if (q.spread?.kind === 'factor') return `${show(q.value, q.dim, 0, q.unit)} ×÷ ${plain(q.spread.amount, 3)}`;
  return show(q.value, q.dim, 0, q.unit);
}

const NONE = 'There is no shot on these pages. Write one below its setup: shot 1 on 2026-02-11 { … }, with its exposure and outcome.';

export function historyText({ rows, numbers }: History, naming: Naming): string {
  if (rows.length === 0) return `${wrap(NONE).join('\n')}\n`;
  // What all have in common is said once, so that a line stays short; what came of it, and numbers that do not fit, stand below.
  const written = (columns: readonly (readonly string[])[]): (readonly string[])[] => columns.filter(c => c.slice(1).some(t => t !== ''));
  const heads = written(COLUMNS.map(([name, of]) => [name, ...rows.map(r => of(r, naming))]));
  const figures = written(numbers.map(n => [n, ...rows.map(({ shot }) => numberText(shot.numbers.get(n), n))]));
  const common = rows.length > 1 ? [...heads, ...figures].filter(c => c[0] !== 'date' && c[0] !== 'shot' && c.slice(1).every(t => t === c[1])) : [];
  const own = heads.filter(c => !common.includes(c));
  const below: (readonly string[])[] = [];
  let wide = own.reduce((w, c) => w + widest(c) + GAP.length, 0);
  for (const c of figures.filter(f => !common.includes(f))) {
    wide += widest(c) + GAP.length;
    (wide <= WIDEST && below.length === 0 ? own : below).push(c);
  }
  const line = (i: number): string => own.map(c => padEnd(c[i]!, widest(c))).join(GAP).trimEnd();
  const more = ({ shot, remarks }: HistoryRow, i: number): string[] => [...below.flatMap(c => (c[i + 1] === '' ? [] : [`${c[0]!} ${c[i + 1]!}`])), ...(shot.words.has('outcome') ? [`“${shot.words.get('outcome')!}”`] : []), ...remarks];
  return `${[
    ...(common.length > 0 ? [...wrap(common.map(c => `${c[0]!}: ${c[1]!}`).join('; ')), ''] : []), line(0),
    ...rows.flatMap((r, i) => [line(i + 1), ...(more(r, i).length > 0 ? wrap(more(r, i).join('; '), { first: '    ' }) : [])]),
  ].join('\n')}\n`;
}
const GAP = '   ';
const WIDEST = 100;
const widest = (column: readonly string[]): number => Math.max(...column.map(width));

export function historyMarkdown({ rows, numbers }: History, naming: Naming): string {
  if (rows.length === 0) return `${NONE}\n`;
  const head = [...COLUMNS.map(([n]) => n), ...numbers, ...BEHIND.map(([n]) => n)];
  return `${table(head.map(escaped), rows.map(r => [...COLUMNS.map(([, of]) => of(r, naming)), ...numbers.map(n => numberText(r.shot.numbers.get(n), n)), ...BEHIND.map(([, of]) => of(r))]))}\n`;
}

/** Numbers in the unit of their column: that of the first shot that has one. */
export function historyCsv({ rows, numbers }: History, naming: Naming): string {
  const units = numbers.map((n): Unit | undefined => rows.map(r => r.shot.numbers.get(n)?.unit).find(u => u !== undefined));
  const head = [...COLUMNS.map(([n]) => n), ...numbers.map((n, i) => `${n}${units[i] ? ` (${units[i].text})` : ''}`), ...BEHIND.map(([n]) => n)];
  return csv([head, ...rows.map(r => [...COLUMNS.map(([, of]) => of(r, naming)), ...numbers.map((n, i) => numberIn(r.shot.numbers.get(n)?.value, units[i])), ...BEHIND.map(([, of]) => of(r))])]);
}
