/** Declarations of things: kind, name, inventory item, placement, facts. */
import type { Expr, Node, Word } from '../../../grammar/tree.ts';
import { bindFact, factOn } from './facts.ts';
import { bindPlacement } from './placement.ts';
import { describe } from '../literal.ts';
import type { BoundFact, Place, Placement, Thing } from '../model.ts';
import { over } from '../over.ts';
import { placeIn } from '../place.ts';
import { nearest, type Scope, type Sink } from '../scope.ts';
import { strayLegs } from './stray-legs.ts';
import { factIndex, factsOf, kindOf, KINDS } from '../things/index.ts';
import type { Kind } from '../things/kind.ts';

export { strayLegs };

const NONE: ReadonlyMap<string, BoundFact> = new Map();

/** The words that a statement opens with: its head and the phrase behind it. */
export function openingWords(node: Node): Word[] {
  const { head, subject } = node.line;
  if (!head) return [];
  const first = subject?.kind === 'phrase' ? subject.words : subject?.kind === 'row' && subject.items[0]!.kind === 'phrase' ? subject.items[0].words : [];
  return [head, ...first];
}

/** The kind that a statement declares a thing of. */
export const opensThing = (node: Node): Kind | undefined => {
  const words = openingWords(node);
  return words[0] && kindOf(words[0].text, words[1]?.text)?.kind;
};

/** Binds one declaration, of the kind that is `meant` where its word is misspelt. Returns false where the statement isn't one. */
export function bindThing(node: Node, scope: Scope, meant?: { kind: Kind; length: number }): boolean {
  const words = openingWords(node);
  const found = meant ?? kindOf(words[0]?.text ?? '', words[1]?.text);
  if (!found) return false;
  const { kind, length } = found;
  // `exposure 20 s`: a fact without its colon.
  if (kind.word === 'exposure' && node.line.subject && node.line.subject.kind !== 'phrase') return false;
  const { sink, things, setup } = scope;
  strayLegs(node, sink, setup);
  const names = words.slice(length);
  const name = names[0] ?? (kind.light === 'none' ? words[0]! : undefined);
  if (!name || names.length > 1 || (node.line.subject && node.line.subject.kind !== 'phrase')) {
    if (!node.line.issue) {
      const span = names[1] ? { start: names[1].start, end: names[names.length - 1]!.end } : { start: words[0]!.start, end: node.line.subject?.end ?? words[length - 1]!.end };
      sink.report(names[1] ? 'name-of-two-words' : 'name-missing', sink.place(node, span), kind.word, { kind: kind.word, words: names.map(w => w.text).join(' ') }, setup);
    }
    if (!name) { scope.nameless = true; return true; }
  }
  const before = things.get(name.text);
  // A name that ends where the line could not be read any more may go on there.
  const cut = node.line.issue?.start === name.end;
  if (cut) scope.nameless = true;
  // A line that was doubled leaves an empty block without its brace, which is reported.
  const doubled = before?.node.line.opens === true && before.node.at + 1 === node.at && before.node.children.length === 0;
  if (before && !doubled) {
    if (!cut) sink.report('name-taken', sink.place(node, name), name.text, { name: name.text, kind: before.kind.word, line: before.at.line + 1 }, setup);
    return true;
  }
  const item = inventoryItem(node, kind, scope);
  let facts = item?.facts ?? NONE;
  if (node.children.length > 0) {
    const own = new Map<string, BoundFact>();
    const known = factIndex(factsOf(kind));
    // A block that its indent has given to this line, and facts of something else in it: it has lost its own first line, which is reported.
    const lost = !node.line.opens && node.children.some(c => c.line.head && !factOn(c.line, known));
    scope.nameless ||= lost;
    for (const child of lost ? [] : node.children) {
      if (!child.line.head) continue;
      bindFact(child, known, own, name.text, kind.word, scope);
    }
    facts = facts.size > 0 ? over(kind, facts, own) : own;
  }
  const placement = bindPlacement(node, scope);
  const [first, last] = [node.line.clauses[0], node.line.clauses.at(-1)];
  if (setup === undefined && first && last) sink.report('placed-in-inventory', sink.place(node, { start: first.start, end: last.end }), name.text, { name: name.text, written: node.line.text.slice(first.start, last.end) });
  things.set(name.text, new ThingOf(sink.uri, kind, node, name, facts, placement, item));
  return true;
}

class ThingOf implements Thing {
  used = false;
  reached = 0;
  constructor(
    private readonly uri: string, readonly kind: Kind, readonly node: Node, private readonly word: Word,
    readonly facts: ReadonlyMap<string, BoundFact>, readonly placement: Placement | undefined, readonly item: Thing | undefined,
  ) {}
  get id(): string { return this.word.text; }
  get at(): Place { return placeIn(this.uri, this.node, this.word); }
  get doc(): string | undefined { return this.node.doc; }
}

/** A name is one word; what stands behind the first is reported. */
export function oneWord(subject: Expr | undefined, kind: string, node: Node, sink: Sink, setup?: string): void {
  if (subject?.kind !== 'phrase' || subject.words.length < 2) return;
  sink.report('name-of-two-words', sink.place(node, subject), kind, { kind, words: subject.words.map(w => w.text).join(' ') }, setup);
}

/** The item of `= lab.red-12`. */
export function inventoryItem(node: Node, kind: Kind, scope: Scope): Thing | undefined {
  const value = node.line.equals;
  if (!value) return undefined;
  if (value.kind !== 'phrase' || value.words.length !== 1) {
    scope.sink.report('wrong-value', scope.sink.place(node, value), kind.word, { found: describe(value), wanted: 'the name of an inventory item, such as lab.red-12' }, scope.setup);
    return undefined;
  }
  const item = scope.thing(value.words[0]!, node, 'an item of an inventory');
  if (item && item.kind !== kind) {
    scope.sink.report('wrong-value', scope.sink.place(node, value), item.id, { found: item.kind.article, wanted: kind.article }, scope.setup);
    return undefined;
  }
  return item;
}

/** What a statement that is nothing known may have been meant as, and how many of its words stand for that. */
export function meantBy(node: Node, others: readonly string[]): { word: string; length: number } | undefined {
  const [first, second] = openingWords(node);
  const two = second && nearest(`${first!.text} ${second.text}`, KINDS.map(k => k.word).filter(w => w.includes(' ')));
  if (two) return { word: two, length: 2 };
  const one = first && nearest(first.text, [...KINDS.map(k => k.word), ...others]);
  return one ? { word: one, length: 1 } : undefined;
}
