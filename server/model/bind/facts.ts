/** Facts: `phrase: value` lines of a block, checked against the vocabulary. */
import type { Expr, LineTree, Node, Span, Word } from '../../../grammar/tree.ts';
import { readFact, takesClause } from './fact-values.ts';
import type { Bound, BoundFact, Place, Thing } from '../model.ts';
import { placeIn } from '../place.ts';
import { nearest, type Scope } from '../scope.ts';
import { strayLegs } from './stray-legs.ts';
import { takersOf } from '../things/index.ts';
import type { Fact } from '../things/kind.ts';

export { readFact };

/** The phrase before the colon: head word and the words behind it. */
export function factPhrase(line: LineTree): string | undefined {
  if (!line.head) return undefined;
  if (!line.subject) return line.head.text;
  return line.subject.kind === 'phrase' ? `${line.head.text} ${line.subject.words.map(w => w.text).join(' ')}` : undefined;
}

/** A fact as a line names it: of a numbered one (`mark 4.5: 88%`) with its number, where one stands there. */
export interface FactLine { readonly fact: Fact; readonly number?: number }
/** What it is kept under: its phrase, with its number. */
export const factKey = ({ fact, number }: FactLine): string => (number === undefined ? fact.phrase : `${fact.phrase} ${number}`);

/** The fact that a line writes. */
export function factOn(line: LineTree, known: ReadonlyMap<string, Fact>): FactLine | undefined {
  const phrase = factPhrase(line);
  const plain = phrase === undefined ? undefined : known.get(phrase);
  if (plain) return { fact: plain };
  const { subject, head } = line;
  const number = subject?.kind === 'row' ? subject.items[subject.items.length - 1]! : subject;
  if (number?.kind !== 'number') return undefined;
  const words = subject!.kind === 'row' ? subject.items.slice(0, -1) : [];
  if (words.length > 1 || (words[0] && words[0].kind !== 'phrase')) return undefined;
  const fact = known.get([head!.text, ...(words[0]?.kind === 'phrase' ? words[0].words.map(w => w.text) : [])].join(' '));
  return fact?.numbered ? { fact, ...(number.unit ? {} : { number: number.value }) } : undefined;
}

/** Binds one fact line into `facts`. What is wrong with it is reported. */
export function bindFact(node: Node, known: ReadonlyMap<string, Fact>, facts: Map<string, BoundFact>, owner: string, ownerKind: string, scope: Scope): void {
  const { line } = node;
  const { sink } = scope;
  strayLegs(node, sink, scope.setup);
  const found = factOn(line, known);
  if (!found) {
    reportUnknown(node, known, owner, ownerKind, scope);
    return;
  }
  const { fact, number } = found;
  const missing = fact.numbered && number === undefined ? `a plain number behind “${fact.phrase}”, as in “${fact.phrase} 4.5: 88%”` : line.value ? undefined : line.text.slice(line.head!.start, headSpan(line).end);
  if (missing !== undefined) {
    if (!line.issue) sink.report('value-missing', sink.place(node, headSpan(line)), owner, { phrase: missing, of: owner, prevents: '' }, scope.setup);
    return;
  }
  const key = factKey(found);
  if (facts.has(key)) {
    sink.report('written-twice', sink.place(node, headSpan(line)), owner, { phrase: key, of: owner, line: facts.get(key)!.at.line + 1 }, scope.setup);
    return;
  }
  reportMore(node, fact, owner, scope);
  const read = readFact(line, line.value!, fact.type);
  // Where the line could not be read to its end, the value may be cut short: that is one slip.
  if ('problem' in read) { if (!line.issue) sink.value(read.problem, node, owner, scope.setup); }
  else facts.set(key, new FactOf(sink.uri, fact, read.ok, node, number));
}

/** Looks up the facts of a thing that name other things: when all of them are known. */
export function checkNamed(thing: Thing, scope: Scope): void {
  for (const { fact, node } of thing.facts.values()) {
    // What comes from an inventory was looked up there.
    if (fact.type.type !== 'name' || node.parent !== thing.node) continue;
    const word = nameIn(node.line.value!);
    const named = word && scope.thing(word, node, `the name of a ${fact.type.of}`);
    if (named && named.kind.word !== fact.type.of) scope.sink.report('wrong-value', scope.sink.place(node, word), thing.id, { found: named.kind.article, wanted: `the name of a ${fact.type.of}` }, scope.setup);
  }
}
const nameIn = (e: Expr): Word | undefined => (e.kind === 'phrase' ? e.words[0] : undefined);

function reportUnknown(node: Node, known: ReadonlyMap<string, Fact>, owner: string, ownerKind: string, scope: Scope): void {
  const { line } = node;
  if (line.issue && line.colon === undefined) return;
  const phrase = factPhrase(line);
  const takers = phrase === undefined ? [] : takersOf(phrase);
  const suggestion = phrase === undefined || takers.length > 0 ? undefined : nearest(phrase, known.keys());
  scope.sink.report('unknown-fact', scope.sink.place(node, headSpan(line)), owner, {
    phrase: phrase ?? line.text.slice(line.head!.start, headSpan(line).end), of: ownerKind, known: [...known.keys()].join(', '), ...(suggestion ? { suggestion } : {}), ...(takers.length > 0 ? { takers: takers.join(', ') } : {}),
  }, scope.setup);
}

/** Clauses behind the value of a fact that are no part of it. */
function reportMore(node: Node, fact: Fact, owner: string, scope: Scope): void {
  const { line } = node;
  if (line.clauses.length === 0) return;
  const more = line.clauses.filter(c => !takesClause(line, c, fact.type));
  const [first, last] = [more[0], more[more.length - 1]];
  if (first && !line.issue) {
    const span = { start: first.start, end: last!.end };
    scope.sink.report('unexpected-text', scope.sink.place(node, span), owner, { found: line.text.slice(span.start, span.end) }, scope.setup);
  }
}

const headSpan = (line: LineTree): Span => ({ start: line.head!.start, end: line.subject?.end ?? line.head!.end });

class FactOf implements BoundFact {
  constructor(private readonly uri: string, readonly fact: Fact, readonly value: Bound, readonly node: Node, number?: number) {
    if (number !== undefined) this.number = number;
  }
  declare readonly number?: number;
  get at(): Place { return placeIn(this.uri, this.node, this.node.line.value!); }
}
