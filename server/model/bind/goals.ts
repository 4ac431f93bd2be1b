/** `expect`, `aim`, `accept`. */
import type { Expr, Node, Span } from '../../../grammar/tree.ts';
import { wordsOf } from '../literal.ts';
import type { Accept, Goal } from '../model.ts';
import type { Scope } from '../scope.ts';

export function bindGoal(node: Node, goals: Goal[], scope: Scope): void {
  const { line } = node;
  const { sink } = scope;
  const kind = line.head!.text === 'aim' ? 'aim' : 'expect';
  const result = line.subject ? wordsOf(line.subject) : undefined;
  if (result === undefined || !line.subject) {
    const spelt = line.issue ? undefined : comparedInWords(line.subject);
    if (spelt) sink.report('wrong-value', sink.place(node, spelt.at), spelt.result, { found: `“${spelt.words}”`, wanted: `a sign, as in “${kind} ${spelt.result} ${spelt.sign} ${line.text.slice(spelt.limit, line.subject!.end)}”` }, scope.setup);
    else if (!line.issue) sink.report('value-missing', sink.place(node, line.head!), kind, { phrase: 'the name of a result', of: kind, prevents: '' }, scope.setup);
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

const SIGNS: ReadonlyMap<string, string> = new Map([
  ['less than', '<'], ['smaller than', '<'], ['lower than', '<'], ['below', '<'], ['under', '<'], ['more than', '>'], ['greater than', '>'], ['larger than', '>'], ['above', '>'], ['over', '>'],
]);

/** `mismatch less than 10 mm` */
function comparedInWords(subject: Expr | undefined): { result: string; words: string; sign: string; at: Span; limit: number } | undefined {
  const [phrase, limit] = subject?.kind === 'row' ? subject.items : [];
  if (phrase?.kind !== 'phrase' || !limit) return undefined;
  for (const n of [2, 1]) {
    const [name, said] = [phrase.words.slice(0, -n), phrase.words.slice(-n)];
    const words = said.map(w => w.text).join(' ');
    const sign = SIGNS.get(words);
    if (sign !== undefined && name.length > 0) return { result: name.map(w => w.text).join(' '), words, sign, at: { start: said[0]!.start, end: said.at(-1)!.end }, limit: limit.start };
  }
  return undefined;
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
