/** What somebody selects who selects more and more: word, value, clause, statement, block, setup, page. */
import type { Expr, LineTree, Node, Span } from '../../grammar/tree.ts';
import type { Snapshot } from '../analysis.ts';
import { withoutBrace } from '../model/written.ts';
import { covers } from './cursor.ts';

export interface TextSpan {
  readonly from: { readonly line: number; readonly character: number };
  readonly to: { readonly line: number; readonly character: number };
}

/** What is around a cursor, from the smallest: each holds the one before and is larger. Empty outside of the text. */
export function selectionsAt({ tree, text }: Snapshot, line: number, asked: number): TextSpan[] {
  const { lines } = tree;
  const own = lines[line];
  if (!own) return [];
  const character = Math.max(0, Math.min(asked, own.text.length));
  const found = inLine(own, character).map(({ start, end }): TextSpan => ({ from: { line, character: start }, to: { line, character: end } }));
  const rows = (first: number, last: number): TextSpan => ({ from: { line: first, character: indent(lines[first]!) }, to: { line: last, character: lines[last]!.text.trimEnd().length } });
  const around: TextSpan[] = [];
  for (let nodes: readonly Node[] = tree.nodes; ;) {
    const node = nodes.find(n => n.at <= line && line <= lastOf(n));
    if (!node) break;
    const last = Math.min(lastOf(node), lines.length - 1);
    around.push(rows(node.at, last));
    // What stands between the braces.
    const until = lines[node.end]?.kind === 'close' ? node.end - 1 : last;
    if (node.line.opens && line > node.at && line <= until) around.push(rows(node.at + 1, until));
    nodes = [...node.legs, ...node.children];
  }
  const final = lines.length - 1;
  const page: TextSpan = { from: { line: 0, character: 0 }, to: { line: final, character: lines[final]!.text.length } };
  return text === '' ? [] : growing([...found, ...around.reverse(), page], { line, character });
}

const lastOf = (n: Node): number => Math.max(n.at, n.end, n.legs[n.legs.length - 1]?.at ?? 0);
const indent = ({ text }: LineTree): number => text.length - text.trimStart().length;

/** Words, values, clauses and the statement of a line that a cursor is in, from the smallest. */
function inLine(line: LineTree, character: number): Span[] {
  const { text, comment } = line;
  const spans: Span[] = [];
  // A cursor between a word and a sign means the word.
  for (const token of line.tokens.filter(t => covers(t, character) && /[\p{L}\p{N}"?]/u.test(text.slice(t.start, t.end)))) {
    if (token.type === 'word') spans.push(partOf(text, token, character));
    spans.push(token);
  }
  for (const e of [line.subject, line.equals, line.compare?.value, line.value, ...line.clauses.map(c => c.value)]) if (e) spans.push(...within(e, character));
  spans.push(...line.clauses);
  // A statement is told from the note behind it, and from the brace.
  const code = text.slice(0, comment?.start).trimEnd();
  const brace = line.opens ? withoutBrace(code) : code;
  for (const end of [brace.length, code.length, text.trimEnd().length]) spans.push({ start: indent(line), end });
  return spans.filter(s => s.end > s.start && covers(s, character)).sort((a, b) => a.end - a.start - (b.end - b.start));
}

/** Of `P1.reference.length` the name at the cursor. */
function partOf(text: string, { start, end }: Span, character: number): Span {
  const first = text.slice(start, character).lastIndexOf('.') + 1 + start;
  const dot = text.indexOf('.', character);
  return { start: first, end: dot < 0 || dot > end ? end : dot };
}

/** A value and the parts of it that a cursor is in. */
function within(e: Expr, character: number): Span[] {
  return covers(e, character) ? [e, ...childrenOf(e).flatMap(c => within(c, character))] : [];
}

function childrenOf(e: Expr): readonly Expr[] {
  switch (e.kind) {
    case 'call': return e.args;
    case 'group': case 'path': case 'row': case 'list': return e.items;
    case 'unary': return [e.arg];
    case 'binary': return [e.left, e.right];
    case 'sizes': return e.parts;
    case 'tolerance': return [e.value, e.by];
    default: return [];
  }
}

const before = (a: TextSpan['from'], b: TextSpan['from']): boolean => a.line < b.line || (a.line === b.line && a.character <= b.character);
const holds = (a: TextSpan, b: TextSpan): boolean => before(a.from, b.from) && before(b.to, a.to);

/** Those that hold the one before them, and are not the same. */
function growing(spans: readonly TextSpan[], cursor: TextSpan['from']): TextSpan[] {
  const kept: TextSpan[] = [];
  let last: TextSpan = { from: cursor, to: cursor };
  for (const s of spans) {
    if (!holds(s, last) || holds(last, s)) continue;
    kept.push(s);
    last = s;
  }
  return kept;
}
