/** Days and times as the text dates them: `2026-02-11`, `2026-02-11T21:40`. */
import type { Clause, Node } from '../../grammar/tree.ts';
import { describe } from './literal.ts';
import type { Scope } from './scope.ts';

/** What an `on` clause dates, or nothing with a problem at its place. */
export function bindDate(clause: Clause, node: Node, subject: string, scope: Scope): string | undefined {
  const { value } = clause;
  if (!value) return undefined;
  if (value.kind !== 'date') {
    if (!node.line.issue) scope.sink.report('wrong-value', scope.sink.place(node, value), subject, { found: describe(value), wanted: 'a date such as 2026-02-11' }, scope.setup);
    return undefined;
  }
  const why = noSuchDate(value.text);
  if (why === undefined) return value.text;
  scope.sink.report('no-such-date', scope.sink.place(node, value), subject, { date: value.text, why }, scope.setup);
  return undefined;
}

/** Why no calendar or clock has that date; undefined where they have it. Gregorian calendar, ISO 8601. */
export function noSuchDate(text: string): string | undefined {
  const [day, time] = text.split('T') as [string, string | undefined];
  const [y, m, d] = day.split('-').map(Number) as [number, number, number];
  if (m < 1 || m > 12) return `a year has 12 months, and this is month ${m}`;
  const days = m === 2 ? (y % 4 === 0 && (y % 100 !== 0 || y % 400 === 0) ? 29 : 28) : [4, 6, 9, 11].includes(m) ? 30 : 31;
  if (d < 1 || d > days) return `that month has ${days} days`;
  const [h, min] = (time ?? '0:0').split(':').map(Number) as [number, number];
  return h > 23 || min > 59 ? 'a day goes from 00:00 to 23:59' : undefined;
}

/** Whether one date lies after another. Of one day it only does where both have a time; so one day is never after itself without. */
export function isLater(a: string, b: string): boolean {
  const [dayA, timeA] = a.split('T') as [string, string | undefined];
  const [dayB, timeB] = b.split('T') as [string, string | undefined];
  return dayA !== dayB ? dayA > dayB : timeA !== undefined && timeB !== undefined && timeA > timeB;
}
