/** Whatever was read: places lie inside the line, inside their parent, and in order; tokens leave out only blanks. */
import type { Expr, LineTree, Span } from '../../grammar/tree.ts';

/** What of a line lies where it should not. */
export function misplaced(line: LineTree): string[] {
  const wrong: string[] = [];
  const whole = { start: 0, end: line.text.length };
  const holds = (condition: boolean, what: string, part: Span): void => { if (!condition) wrong.push(`${what} ${part.start}-${part.end}`); };
  const inside = (part: Span, of: Span): void => { holds(of.start <= part.start && part.start < part.end && part.end <= of.end, 'outside', part); };
  const isWord = (word: Span & { text: string }): void => { holds(line.text.slice(word.start, word.end) === word.text, word.text, word); };
  const walk = (e: Expr, of: Span): void => {
    inside(e, of);
    if ('unit' in e && e.unit) isWord(e.unit);
    if (e.kind === 'phrase') e.words.forEach(isWord);
    partsOf(e).forEach((part, i, parts) => {
      walk(part, e);
      if (i > 0) holds(parts[i - 1]!.end <= part.start, 'out of order', part);
    });
  };
  if (line.head) isWord(line.head);
  for (const e of [line.subject, line.equals, line.value, line.compare?.value]) if (e) walk(e, whole);
  for (const clause of line.clauses) {
    inside(clause, whole);
    isWord(clause.word);
    if (clause.value) walk(clause.value, clause);
  }
  if (line.colon !== undefined) isWord({ text: ':', start: line.colon, end: line.colon + 1 });
  if (line.comment) inside(line.comment, whole);
  if (line.issue) inside(line.issue, whole);
  if (line.issue?.code === 'line-too-long') return wrong;
  let at = 0;
  for (const token of [...line.tokens, { start: whole.end, end: whole.end + 1 }]) {
    holds(at <= token.start && token.start < token.end && line.text.slice(at, token.start).trim() === '', 'left out before', token);
    at = token.end;
  }
  return wrong;
}

function partsOf(e: Expr): readonly Expr[] {
  switch (e.kind) {
    case 'call': return e.args;
    case 'group': case 'path': case 'row': case 'list': return e.items;
    case 'sizes': return e.parts;
    case 'unary': return [e.arg];
    case 'binary': return [e.left, e.right];
    case 'tolerance': return [e.value, e.by];
    default: return [];
  }
}
