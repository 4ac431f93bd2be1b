/** `moved M1, M2 on 2026-02-14: "the cat"`: readings before that day no longer hold for what stands elsewhere now. */
import type { Node } from '../../../grammar/tree.ts';
import { bindDate } from './dates.ts';
import { strayLegs } from './things.ts';
import type { Moved, Thing } from '../model.ts';
import type { Scope } from '../scope.ts';

export function bindMoved(node: Node, scope: Scope): Moved | undefined {
  const { line } = node;
  const { sink, setup } = scope;
  strayLegs(node, sink, setup);
  const { subject, value } = line;
  const missing = (phrase: string): void => {
    if (!line.issue) sink.report('value-missing', sink.place(node, subject ?? line.head!), 'moved', { phrase, of: 'moved', prevents: '' }, setup);
  };
  if (!subject) { missing('the name of what was moved'); return undefined; }
  const things: Thing[] = [];
  for (const e of subject.kind === 'list' ? subject.items : [subject]) {
    if (e.kind === 'phrase' && e.words.length === 1) {
      const thing = scope.thing(e.words[0]!, node);
      if (thing) things.push(thing);
    } else if (!line.issue) {
      const found = line.text.slice(e.start, e.end);
      sink.report('wrong-value', sink.place(node, e), 'moved', { found: `“${found}”`, wanted: 'the name of a thing; several are parted by commas' }, setup);
    }
  }
  const on = line.clauses.find(c => c.word.text === 'on');
  if (!on) { missing('a date behind “on”, as in “on 2026-02-14”'); return undefined; }
  const other = line.clauses.find(c => c !== on);
  if (other && !line.issue) sink.report('unexpected-text', sink.place(node, other), 'moved', { found: line.text.slice(other.start, other.end) }, setup);
  if (value && value.kind !== 'string' && !line.issue) sink.report('wrong-value', sink.place(node, value), 'moved', { found: line.text.slice(value.start, value.end), wanted: 'what happened, as text in quotes' }, setup);
  const date = bindDate(on, node, 'moved', scope);
  if (date === undefined || things.length === 0) return undefined;
  return { things, on: date, node, at: sink.place(node, subject), ...(value?.kind === 'string' && value.value !== '' ? { what: value.value } : {}) };
}
