/** The document of `sweep --format json`, as `report.schema.json` describes it. */
import type { Column, Curve, Point, SweepTable } from '../../features/sweep/sweep.ts';
import { siUnit } from '../../model/units.ts';
import type { Opened } from '../files.ts';
import { beside, document, number, place, type Members } from '../json.ts';

export function sweepJson(file: Opened, t: SweepTable): string {
  const naming = beside(file);
  return document('sweep', {
    file: naming(file.uri), setup: t.setup.name, place: place(t.setup.at, naming), over: column(t.over), second: t.second ? column(t.second) : null,
    at: t.at.map(a => number(a.value)), results: t.results.map(column), curves: t.curves.map(curve), ended: t.ended,
  });
}

const column = ({ name, words, dim }: Column): Members => ({ name, words, unit: dim ? siUnit(dim) || '1' : null });

const curve = ({ variant, second, rows, told }: Curve): Members => ({
  variant: variant ?? null, second: number(second), rows: rows.map(r => r.map(point)),
  findings: told.map(({ finding: f, stretches }) => ({ code: f.code, severity: f.severity, subject: f.subject, message: f.message, stretches: stretches.map(s => ({ from: s.from, to: s.to })) })),
});

const point = ({ value, u, low, high, text, missing }: Point): Members => ({
  value: number(value), u: number(u), band: low === undefined || high === undefined ? null : { low: number(low), high: number(high) }, shown: text, missing: missing ?? null,
});
