/** Facts: `phrase: value` lines of a block, checked against the vocabulary. */
import type { Expr, LineTree, Node, Span } from '../../grammar/tree.ts';
import { describe, fail, isLiteral, oneOf, readLiteral, wordsOf, type Read } from './literal.ts';
import type { Bound, BoundFact, Place } from './model.ts';
import { nearest, placeIn, type Scope } from './scope.ts';
import type { Fact, FactType } from './things/kind.ts';

/** The phrase before the colon: head word and the words behind it. */
export function factPhrase(line: LineTree): string | undefined {
  if (!line.head) return undefined;
  if (!line.subject) return line.head.text;
  return line.subject.kind === 'phrase' ? `${line.head.text} ${line.subject.words.map(w => w.text).join(' ')}` : undefined;
}

/** Reads the value of a fact. The outcome depends on the line's text and the type only, so it is kept with the line: an edit reads one line. */
export function readFact(line: LineTree, value: Expr, type: FactType): Read<Bound> {
  if (line.memo?.of === type) return line.memo.made as Read<Bound>;
  const read = readNow(line, value, type);
  line.memo = { of: type, made: read };
  return read;
}

function readNow(line: LineTree, value: Expr, type: FactType): Read<Bound> {
  const words = wordsOf(value);
  const accepted = type.type === 'choice' ? type.words : type.type === 'quantity' || type.type === 'count' ? type.words : undefined;
  if (accepted && words !== undefined) {
    // Some choices hold a clause word (“away from the object”), which the grammar has parted.
    const full = [words, ...line.clauses.map(c => `${c.word.text}${c.value ? ` ${wordsOf(c.value) ?? ''}` : ''}`)].join(' ').trim();
    const hit = accepted.find(w => w === full || w === words);
    if (hit !== undefined) return { ok: { kind: 'words', text: hit } };
    if (type.type === 'choice') {
      const near = nearest(full, accepted);
      return fail('wrong-value', value, { found: `“${full}”`, wanted: oneOf(accepted), ...(near ? { suggestion: near } : {}) });
    }
  }
  if (type.type === 'text' || type.type === 'points' || type.type === 'name') return { ok: { kind: 'words', text: words ?? '' } };
  if (isLiteral(value)) return readLiteral(value, type);
  if (type.type === 'quantity' || type.type === 'count') {
    return value.kind === 'list' || value.kind === 'path' || value.kind === 'row' || (value.kind === 'group' && value.items.length !== 1)
      ? fail('wrong-value', value, { found: describe(value), wanted: 'one number with its unit' })
      : { ok: { kind: 'formula', expr: value } };
  }
  if (type.type === 'sizes' && (value.kind === 'sizes' || (value.kind === 'tolerance' && value.value.kind === 'sizes'))) return { ok: { kind: 'formula', expr: value } };
  return readLiteral(value, type);
}

/** Binds one fact line into `facts`. True when the line was a fact (also a broken one). */
export function bindFact(node: Node, known: ReadonlyMap<string, Fact>, facts: Map<string, BoundFact>, owner: string, ownerKind: string, scope: Scope): void {
  const { line } = node;
  const { sink } = scope;
  const phrase = factPhrase(line);
  const fact = phrase === undefined ? undefined : known.get(phrase);
  if (!fact) {
    if (line.issue && line.colon === undefined) return;
    const suggestion = phrase === undefined ? undefined : nearest(phrase, known.keys());
    sink.report('unknown-fact', sink.place(node, headSpan(line)), owner, { phrase: phrase ?? line.text.trim(), of: ownerKind, known: [...known.keys()].join(', '), ...(suggestion ? { suggestion } : {}) }, scope.setup);
    return;
  }
  if (!line.value) {
    if (!line.issue) sink.report('value-missing', sink.place(node, headSpan(line)), owner, { phrase: fact.phrase, of: owner, prevents: '' }, scope.setup);
    return;
  }
  if (facts.has(fact.phrase)) {
    sink.report('written-twice', sink.place(node, headSpan(line)), owner, { phrase: fact.phrase, of: owner, line: facts.get(fact.phrase)!.at.line + 1 }, scope.setup);
    return;
  }
  const read = readFact(line, line.value, fact.type);
  // Where the line could not be read to its end, the value may be cut short: that is one slip.
  if ('problem' in read) { if (!line.issue) sink.value(read.problem, node, owner, scope.setup); }
  else facts.set(fact.phrase, new FactOf(sink.uri, fact, read.ok, node));
}

const headSpan = (line: LineTree): Span => ({ start: line.head!.start, end: line.subject?.end ?? line.head!.end });

class FactOf implements BoundFact {
  constructor(private readonly uri: string, readonly fact: Fact, readonly value: Bound, readonly node: Node) {}
  get at(): Place { return placeIn(this.uri, this.node.at, this.node.line.value!); }
}
