/** A sweep as it is shown: blocks of words, the same on a terminal and in Markdown. */
import { titleOf } from '../report/report.ts';
import { stretchesOf, stretchWords } from './stretches.ts';
import type { Curve, SweepTable } from './sweep.ts';

export interface SweepPage {
  readonly title: string;
  /** one: a column for each result. Several: one for each result, with a column for each curve */
  readonly tables: readonly { readonly title: string | undefined; readonly head: readonly string[]; readonly rows: readonly (readonly string[])[] }[];
  /** what begins and ends on the way, in the order in which it does */
  readonly told: readonly string[];
  /** from where the figures of findings are */
  readonly figures: readonly string[];
  readonly notes: readonly string[];
}

export function sweepPage(t: SweepTable): SweepPage {
  const { over, at, results, curves } = t;
  const cell = (c: Curve, row: number, i: number): string => c.rows[row]?.[i]?.text ?? '';
  const several = curves.length > 1;
  return {
    title: `${titleOf({ setup: t.setup.name, ...(t.setup.variant === undefined ? {} : { variant: t.setup.variant }) })}: ${over.words}, ${at[0]!.text} to ${at.at(-1)!.text}`,
    tables: several
      ? results.map((r, i) => ({ title: r.name, head: [over.name, ...curves.map(c => c.label)], rows: at.map(({ text }, row) => [text, ...curves.map(c => cell(c, row, i))]) }))
      : [{ title: undefined, head: [over.name, ...results.map(r => r.name)], rows: at.map(({ text }, row) => [text, ...results.map((_, i) => cell(curves[0]!, row, i))]) }],
    told: told(t), figures: curves.some(c => c.told.length > 0) ? ['The figures of a finding are those where it begins.'] : [], notes: notes(t),
  };
}

/** Findings, those of several curves on the same stretch in one line; then what is unknown where. */
function told({ at, curves, results }: SweepTable): string[] {
  const texts = at.map(a => a.text);
  const lines = new Map<string, { words: string; labels: string[] }>();
  const add = (key: string, words: string, label: string): void => {
    const line = lines.get(key);
    if (line) line.labels.push(label);
    else lines.set(key, { words, labels: [label] });
  };
  for (const c of curves) {
    for (const { finding: f, stretches } of c.told) {
      const where = stretchWords(stretches, texts);
      add(`${f.code} ${f.subject} ${where}`, `${where}: ${f.severity}: ${f.message} [${f.code}]`, c.label);
    }
    results.forEach((r, i) => {
      for (const why of new Set(c.rows.flatMap(row => row[i]!.missing ?? []))) {
        const where = stretchWords(stretchesOf(c.rows.length, row => c.rows[row]![i]!.missing === why), texts);
        add(`${why} ${where} ${r.name}`, `${where}: ${r.name} is unknown: ${why}`, c.label);
      }
    });
  }
  return [...lines.values()].map(({ words, labels }) => (labels.length === curves.length ? words : `${labels.join('; ')}: ${words}`));
}

function notes({ over, results, curves, ended }: SweepTable): string[] {
  const still = results.filter((_, i) => curves.every(c => c.rows.length > 1 && c.rows.every(r => r[i]!.value !== undefined && r[i]!.value === c.rows[0]![i]!.value)));
  return [
    ...(still.length > 0 ? [`${still.map(r => r.name).join(', ')} ${still.length === 1 ? 'does' : 'do'} not change with ${over.name}.`] : []),
    ...(ended ? ['It was ended before all values were tried.'] : []),
  ];
}
