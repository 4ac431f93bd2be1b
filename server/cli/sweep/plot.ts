/** A sweep as a plot. */
import { sweepPage } from '../../features/sweep/page.ts';
import type { Column, SweepTable } from '../../features/sweep/sweep.ts';
import { inUnit } from '../../features/csv.ts';
import { isRatio, plain } from '../../model/show.ts';
import { plotOf, type PlotTold } from '../../drawing/plot/plot.ts';
import type { Sheet } from '../../drawing/marks.ts';

export function sweepPlot(t: SweepTable): Sheet {
  const { over, at, results, curves } = t;
  const x = at.map(a => inUnit(a.value, over.unit));
  const page = sweepPage(t);
  return plotOf({
    title: page.title, joined: true, told: told(t, x), notes: [...page.figures, ...page.notes],
    across: { title: titled(over.words, over), from: x[0]!, to: x.at(-1)!, text: v => tick(over, v) },
    panels: results.map((r, i) => ({
      title: titled(r.name, r), shares: r.unit?.percent === true, text: (v: number) => tick(r, v),
      curves: curves.map(c => ({
        label: c.label,
        points: c.rows.map((row, k) => {
          const { value, low, high, text } = row[i]!;
          return value === undefined ? undefined : { x: x[k]!, y: inUnit(value, r.unit), low: inUnit(low ?? value, r.unit), high: inUnit(high ?? value, r.unit), words: `${c.label === '' ? '' : `${c.label}; `}${at[k]!.text}: ${text}` };
        }),
      })),
    })),
  });
}

const titled = (words: string, { unit }: Column): string => (unit && !unit.percent ? `${words}, ${unit.text}` : words);
const tick = ({ unit, name }: Column, v: number): string => (isRatio(name) ? `${plain(v)}:1` : unit?.percent ? `${plain(v)}%` : plain(v, 6));

/** Each finding once, with the stretches of the curves that have it. */
function told({ curves }: SweepTable, x: readonly number[]): PlotTold[] {
  const all = new Map<string, { words: string; on: { curve: number; stretches: (readonly [number, number])[] }[] }>();
  curves.forEach((c, curve) => {
    for (const { finding: f, stretches } of c.told) {
      const key = `${f.code} ${f.subject}`;
      const one = all.get(key) ?? { words: f.message, on: [] };
      all.set(key, one);
      one.on.push({ curve, stretches: stretches.map(s => [x[s.from]!, x[s.to]!]) });
    }
  });
  return [...all.values()];
}
