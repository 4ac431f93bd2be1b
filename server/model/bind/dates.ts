/** Days and times as the text dates them: `2026-02-11`, `2026-02-11T21:40`. */
import type { Clause, Node } from '../../../grammar/tree.ts';
import { noSuchDate } from '../calendar.ts';
import { describe } from '../literal.ts';
import type { Scope } from '../scope.ts';

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

/** Whether one date lies after another. Of one day it only does where both have a time; so one day is never after itself without. */
export function isLater(a: string, b: string): boolean {
  const [dayA, timeA] = a.split('T') as [string, string | undefined];
  const [dayB, timeB] = b.split('T') as [string, string | undefined];
  return dayA !== dayB ? dayA > dayB : timeA !== undefined && timeB !== undefined && timeA > timeB;
}
