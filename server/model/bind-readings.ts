/** Readings: `measured WHAT [at PLACE] [facing beam]: VALUE [by INSTRUMENT] [on DATE]`. */
import type { Node } from '../../grammar/tree.ts';
import { readFact } from './bind-facts.ts';
import type { Reading } from './model.ts';
import type { Scope } from './scope.ts';

export function bindReading(node: Node, readings: Reading[], scope: Scope): void {
  const { line } = node;
  const { sink } = scope;
  if (!line.subject) {
    if (!line.issue) sink.report('value-missing', sink.place(node, line.head!), 'measured', { phrase: 'the name of what was measured', of: 'measured', prevents: '' }, scope.setup);
    return;
  }
  // A leg's ends are things; what else a reading names (object, reference, drift) are words of the trade.
  if (line.subject.kind === 'path') for (const e of line.subject.items) if (e.kind === 'phrase' && e.words.length === 1) scope.thing(e.words[0]!, node);
  const at = line.clauses.find(c => c.word.text === 'at')?.value;
  if (at?.kind === 'phrase' && at.words.length === 1) scope.thing(at.words[0]!, node);
  const what = line.text.slice(line.subject.start, line.colon ?? line.subject.end).trim();
  const read = line.value ? readFact(line, line.value, { type: 'text' }) : undefined;
  readings.push({ measured: undefined, words: what, node, at: sink.place(node, line.subject), value: read && 'ok' in read ? read.ok : undefined, valueAt: line.value && sink.place(node, line.value), by: undefined, on: undefined });
}
