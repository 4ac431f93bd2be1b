/** The plates that were shot, as a plot over time: a panel for each number, a mark for each shot, by stock and box. */
import { plotOf, type PlotCurve, type PlotPoint } from '../../drawing/plot/plot.ts';
import type { Sheet } from '../../drawing/marks.ts';
import { inUnit } from '../../features/csv.ts';
import type { History, HistoryRow } from '../../features/history/history.ts';
import { numberText } from '../../features/history/pages.ts';
import { standardUncertainty, type Quantity } from '../../model/quantity.ts';
import { plain } from '../../model/show.ts';
import type { Unit } from '../../model/units.ts';
import { Trouble } from '../files.ts';

/** Of these a course over time tells something. */
const SHOWN: ReadonlySet<string> = new Set(['exposure', 'best exposure', 'dose', 'brightness', 'replay wavelength', 'beam ratio', 'temperature']);
const DAY = 86_400_000;
const dayOf = (on: string): number => Date.parse(on.length > 10 ? `${on}Z` : `${on}T12:00Z`) / DAY;
const dateOf = (day: number): string => new Date(day * DAY).toISOString().slice(0, 10);

export function historyPlot({ rows, numbers }: History): Sheet {
  const dated = rows.filter(r => r.shot.on !== undefined);
  const shown = numbers.filter(n => SHOWN.has(n) && dated.some(r => r.shot.numbers.has(n)));
  if (shown.length === 0) throw new Trouble('No shot on these pages has a date and a number, so that there is nothing to draw.');
  const days = dated.map(r => dayOf(r.shot.on!));
  const [from, to] = [Math.min(...days), Math.max(...days)];
  const left = rows.length - dated.length;
  // The days of the shots themselves, as far apart as can be read.
  const ticks = [...new Set(days.map(Math.floor))].filter((d, i, all) => i === 0 || i === all.length - 1 || d - from > 0).reduce<number[]>((kept, d) => (kept.length === 0 || (d - kept.at(-1)!) / Math.max(1, to - from) > 0.16 ? [...kept, d] : kept), []).map(d => d + 0.5);
  const groups = [...new Set(dated.map(groupOf))];
  return plotOf({
    title: `${dated.length === 1 ? 'One shot' : `${dated.length} shots`}, ${dateOf(from)}${from === to ? '' : ` to ${dateOf(to)}`}`,
    // Some room, so that no mark stands on the frame.
    across: { title: 'day', from: from - room(from, to), to: to + room(from, to), ticks, text: dateOf },
    panels: shown.map(n => {
      const unit = dated.map(r => r.shot.numbers.get(n)?.unit).find(u => u !== undefined);
      return {
        title: unit && !unit.percent ? `${n}, ${unit.text}` : n, shares: unit?.percent === true, text: (v: number) => (n === 'beam ratio' ? `${plain(v)}:1` : `${plain(v, 6)}${unit?.percent ? '%' : ''}`),
        curves: groups.map((g): PlotCurve => ({ label: g, points: dated.filter(r => groupOf(r) === g).map(r => pointOf(r, n, unit)) })),
      };
    }),
    told: [], notes: left > 0 ? [`${left} ${left === 1 ? 'shot has' : 'shots have'} no date and ${left === 1 ? 'is' : 'are'} not drawn.`] : [], joined: false,
  });
}

const room = (from: number, to: number): number => Math.max(0.5, 0.04 * (to - from));
const groupOf = ({ shot }: HistoryRow): string => [shot.stock, shot.batch].filter(w => w !== undefined).join(', ') || 'plates';

function pointOf({ shot }: HistoryRow, name: string, unit: Unit | undefined): PlotPoint | undefined {
  const q = shot.numbers.get(name);
  if (!q) return undefined;
  const [low, high] = ends(q);
  return { x: dayOf(shot.on!), y: inUnit(q.value, unit), low: inUnit(low, unit), high: inUnit(high, unit), words: `${shot.setup.name}, shot ${shot.name} on ${shot.on!}: ${numberText(q, name)}${shot.words.has('outcome') ? `; “${shot.words.get('outcome')!}”` : ''}` };
}

/** The give or take that its author wrote. */
function ends({ value, spread }: Quantity): readonly [number, number] {
  if (spread?.kind === 'factor') return [value / spread.amount, value * spread.amount];
  const give = spread?.kind === 'within' ? spread.amount : 2 * standardUncertainty(value, spread);
  return [value - give, value + give];
}
