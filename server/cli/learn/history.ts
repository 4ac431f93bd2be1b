/** `platewright history`: the plates that were shot, by date, as a table or a plot. */
import { historyOf, type History, type HistoryRow } from '../../features/history/history.ts';
import { historyCsv, historyMarkdown, historyText, numberText } from '../../features/history/pages.ts';
import { siUnit } from '../../model/units.ts';
import { onScreen, troubled, type Done } from '../done.ts';
import { Misuse, writeMade, type Reach } from '../files.ts';
import { document, number, place, type Members } from '../json.ts';
import { readShots, type Read } from './shots.ts';

export type HistoryFormat = 'text' | 'json' | 'markdown' | 'csv' | 'svg';
export interface HistoryOptions extends Reach { readonly format?: HistoryFormat; readonly output?: string; readonly dark: boolean }

export async function history(args: readonly string[], { format, output, dark, ...reach }: HistoryOptions): Promise<Done> {
  const end = output === undefined ? undefined : /\.([^./\\]*)$/.exec(output)?.[1]?.toLowerCase();
  const kind = format ?? (end === undefined ? 'text' : ENDS[end]);
  if (kind === undefined) throw new Misuse(`A history is written as ${Object.keys(ENDS).map(e => `.${e}`).join(', ')}: choose another name for ${output!}, or say --format.`);
  if (kind === 'svg' && output !== undefined && ENDS[end ?? ''] !== 'svg') throw new Misuse(`A plot is written as .svg, .png or .pdf: choose another name for ${output}.`);
  if (dark && kind !== 'svg') throw new Misuse('--dark is for plots: add --format svg, or -o with a name that ends in .svg, .png or .pdf.');
  const read = readShots(args, reach);
  const found = historyOf(read.shots);
  const made = await written(kind, found, read, output, dark);
  if (output === undefined) return troubled({ out: made as string, code: 0 }, read.troubles);
  writeMade(output, made);
  return troubled({ out: `${output}: written\n`, code: 0 }, read.troubles);
}

const ENDS: Readonly<Record<string, HistoryFormat>> = { csv: 'csv', json: 'json', md: 'markdown', txt: 'text', svg: 'svg', png: 'svg', pdf: 'svg' };

async function written(kind: HistoryFormat, found: History, { naming, troubles }: Read, output: string | undefined, dark: boolean): Promise<string | Uint8Array> {
  switch (kind) {
    case 'text': return onScreen(historyText(found, naming));
    case 'markdown': return onScreen(historyMarkdown(found, naming));
    case 'csv': return historyCsv(found, naming);
    case 'json': return document('history', { shots: found.rows.map(r => rowJson(r, naming)), unread: troubles.map(t => t.message) });
    case 'svg': return (await import('../pictures.ts')).makerFor(output)((await import('./plot.ts')).historyPlot(found), dark ? 'dark' : 'light');
  }
}

const rowJson = ({ shot, remarks }: HistoryRow, naming: (uri: string) => string): Members => ({
  date: shot.on ?? null, setup: shot.setup.name, shot: shot.name, place: place(shot.at, naming), stock: shot.stock ?? null, batch: shot.batch ?? null, developer: shot.developer ?? null, outcome: shot.words.get('outcome') ?? null,
  numbers: Object.fromEntries([...shot.numbers].map(([name, q]) => [name, { value: number(q.value), unit: siUnit(q.dim) || '1', shown: numberText(q, name) }])), remarks,
});
