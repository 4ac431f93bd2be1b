/** `platewright history`: the plates that were shot, by date, as a table or a plot. */
import { historyOf, type History, type HistoryRow } from '../../features/history/history.ts';
import { historyCsv, historyMarkdown, historyText, numberText } from '../../features/history/pages.ts';
import { siUnit } from '../../model/units.ts';
import { onScreen, troubled, type Done } from '../done.ts';
import type { Reach } from '../files.ts';
import { document, number, place, type Members } from '../json.ts';
import { formatOf, handedOver, type TableFormat, type Target } from '../tabled.ts';
import { readShots, type Read } from './shots.ts';

export interface HistoryOptions extends Reach, Target {}

export async function history(args: readonly string[], { format, output, dark, ...reach }: HistoryOptions): Promise<Done> {
  const kind = formatOf('A history', { ...(format ? { format } : {}), ...(output === undefined ? {} : { output }), dark });
  const read = readShots(args, reach);
  const found = historyOf(read.shots);
  return troubled(handedOver(await written(kind, found, read, output, dark), output, 0), read.troubles);
}

async function written(kind: TableFormat, found: History, { naming, troubles }: Read, output: string | undefined, dark: boolean): Promise<string | Uint8Array> {
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
