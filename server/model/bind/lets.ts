/** `let NAME = VALUE` */
import type { Node } from '../../../grammar/tree.ts';
import type { Let } from '../model.ts';
import type { Scope } from '../scope.ts';
import { limitsOf } from './asked.ts';

export function bindLet(node: Node, lets: Map<string, Let>, scope: Scope): void {
  const { line } = node;
  const name = line.subject?.kind === 'phrase' && line.subject.words.length === 1 ? line.subject.words[0]! : undefined;
  if (!name || !line.equals) {
    scope.lost = true;
    if (!line.issue) scope.sink.report('value-missing', scope.sink.place(node, name ?? line.head!), name?.text ?? 'let', { phrase: 'a name and a value, as in “let gap = 300 mm”', of: 'let', prevents: '' }, scope.setup);
    return;
  }
  const at = scope.sink.place(node, name);
  const before = lets.get(name.text)?.at ?? scope.find(name.text)?.at;
  if (before) scope.sink.report('name-taken', at, name.text, { name: name.text, kind: 'name', line: before.line + 1 }, scope.setup);
  else lets.set(name.text, { name: name.text, expr: line.equals, at, exprAt: scope.sink.place(node, line.equals), cut: line.issue !== undefined, ...limitsOf(line.equals, line.clauses, 0) });
}
