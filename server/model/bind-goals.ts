/** `expect`, `aim`, `accept`. */
import type { Expr, Node } from '../../grammar/tree.ts';
import { wordsOf } from './literal.ts';
import type { Accept, Goal } from './model.ts';
import type { Scope } from './scope.ts';

export function bindGoal(node: Node, goals: Goal[], scope: Scope): void {
  const { line } = node;
  const { sink } = scope;
  const kind = line.head!.text === 'aim' ? 'aim' : 'expect';
  const result = line.subject ? wordsOf(line.subject) : undefined;
  if (result === undefined || !line.subject) {
    if (!line.issue) sink.report('value-missing', sink.place(node, line.head!), kind, { phrase: 'the name of a result', of: kind, prevents: '' }, scope.setup);
    return;
  }
  const at = sink.place(node, line.subject);
  const limit = (expr: Expr): Goal['limits'][number] => ({ expr, at: sink.place(node, expr) });
  const from = line.clauses.find(c => c.word.text === 'from')?.value;
  const to = line.clauses.find(c => c.word.text === 'to')?.value;
  if (line.compare?.value) goals.push({ kind, result, at, node, op: line.compare.op, limits: [limit(line.compare.value)] });
  else if (from && to) goals.push({ kind, result, at, node, op: 'between', limits: [limit(from), limit(to)] });
  else if (line.value ?? line.equals) goals.push({ kind, result, at, node, op: '=', limits: [limit((line.value ?? line.equals)!)] });
  else if (!line.issue) sink.report('value-missing', at, result, { phrase: 'a limit, such as “< 10 mm” or “from 3:1 to 6:1”', of: `${kind} ${result}`, prevents: '' }, scope.setup);
}

export function bindAccept(node: Node, accepts: Accept[], scope: Scope): void {
  const { line } = node;
  const { sink } = scope;
  const items = line.subject?.kind === 'row' ? line.subject.items : line.subject ? [line.subject] : [];
  const code = items[0]?.kind === 'phrase' && items[0].words.length === 1 ? items[0].words[0]!.text : undefined;
  const forClause = line.clauses.find(c => c.word.text === 'for')?.value;
  const reason = items[1]?.kind === 'string' ? items[1].value : undefined;
  if (!code || reason === undefined || reason.trim() === '') {
    if (!line.issue) sink.report('reason-missing', sink.place(node, line.subject ?? line.head!), code ?? 'accept', { code: code ?? '' }, scope.setup);
    return;
  }
  const subject = forClause ? wordsOf(forClause) : undefined;
  accepts.push({ code, reason, at: sink.place(node, items[0]!), ...(subject !== undefined ? { subject, subjectAt: sink.place(node, forClause!) } : {}) });
}
