/**
 * A sweep as comma-separated values (RFC 4180): numbers in the unit that stands in the head of their column, each with the ends of the band in which it lies 95 times of 100. Of several curves each has
 * rows of its own, with the second number and the variant in columns of theirs.
 */
import { csv, numberIn, titled } from '../csv.ts';
import type { SweepTable } from './sweep.ts';

export function sweepCsv({ over, second, at, results, curves }: SweepTable): string {
  const varied = curves.some(c => c.variant !== curves[0]!.variant);
  const head = [...(varied ? ['variant'] : []), ...(second ? [titled(second)] : []), titled(over), ...results.flatMap(r => [titled(r), titled(r, 'low'), titled(r, 'high')])];
  const lines = curves.flatMap(c => c.rows.map((row, i) => [
    ...(varied ? [c.variant ?? ''] : []), ...(second ? [numberIn(c.second, second.unit)] : []), numberIn(at[i]!.value, over.unit), ...row.flatMap((p, k) => [p.value, p.low, p.high].map(v => numberIn(v, results[k]!.unit))),
  ]));
  return csv([head, ...lines]);
}
