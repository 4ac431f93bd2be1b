/**
 * Variants: named changes of a setup. A line begins with what it changes: `P1 at (700, 650) mm`, `S1 { … }`, `S1.reflects: 90%`, `M1 = lab.flat-150`,
 * `S1 -> M1: 760 mm` or `object.2: 300 mm`, `let gap = 320 mm`, `beam height: 150 mm`; or it declares a thing or a beam as a setup does.
 */
import type { LineTree, Node, Word } from '../../../grammar/tree.ts';
import { bindBeam, readLegLength } from './beams.ts';
import { bindFact, checkNamed, factKey, factOn, factPhrase } from './facts.ts';
import { bindLet } from './lets.ts';
import { bindPlacement, checkPlacement } from './placement.ts';
import { bindThing, inventoryItem, openingWords, opensThing, strayLegs } from './things.ts';
import { wordsOf } from '../literal.ts';
import type { Beam, BoundFact, Change, Leg, Let, Place, Thing, Variant } from '../model.ts';
import { nearest, Scope } from '../scope.ts';
import type { Fact } from '../things/kind.ts';
import { factIndex, factsOf, SETUP_FACTS } from '../things/index.ts';

/** A setup has at most so many variants: each is computed when findings are asked for. */
export const MAX_VARIANTS = 32;

/** What a variant changes, all of it bound. */
export interface Base {
  readonly beams: ReadonlyMap<string, Beam>;
  readonly lets: ReadonlyMap<string, Let>;
}

/** Statements of a setup that no variant takes: its expectations and readings are those of the setup. */
export const NOT_HERE: readonly string[] = ['measured', 'moved', 'expect', 'aim', 'accept', 'variant', 'shot', 'process'];
/** Those of them that may have a colon. */
const WITH_COLON: readonly string[] = ['measured', 'moved', 'expect', 'aim'];

/** Binds the variants of a setup, when everything else in it is bound. */
export function bindVariants(nodes: readonly Node[], base: Base, under: Scope): Variant[] {
  const variants: Variant[] = [];
  for (const node of nodes) {
    const s = node.line.subject;
    const at = under.sink.place(node, s ?? node.line.head!);
    if (variants.length >= MAX_VARIANTS) {
      under.sink.report('too-many-variants', at, under.setup ?? '', { count: nodes.length, limit: MAX_VARIANTS }, under.setup);
      break;
    }
    const name = s ? (wordsOf(s) ?? node.line.text.slice(s.start, s.end)) : '';
    const before = variants.find(v => v.name === name);
    if (name === '') { if (node.line.issue) under.nameless = true; else under.sink.report('name-missing', at, 'variant', { kind: 'variant', words: '' }, under.setup); }
    else if (before) under.sink.report('name-taken', at, name, { name, kind: 'variant', line: before.at.line + 1 }, under.setup);
    const scope = new Scope(under.sink, new Map(), under.inventories, under.setup, under);
    const changes = new Changes(base, scope).of(node);
    if (name !== '' && !before) variants.push({ name, at, node, changes, lost: scope.lost || scope.nameless, ...(node.doc !== undefined ? { doc: node.doc } : {}) });
  }
  return variants;
}

/** Binds the lines of one variant, each into its changes. */
class Changes {
  private readonly changes: Change[] = [];
  private readonly facts = new Map<Thing, Map<string, BoundFact>>();
  private readonly setupFacts = new Map<string, BoundFact>();
  private readonly lets = new Map<string, Let>();
  private readonly beams = new Map<string, Beam>();
  private readonly once = new Map<string, Place>();

  constructor(private readonly base: Base, private readonly scope: Scope) {}

  of(node: Node): Change[] {
    const { scope } = this;
    const declares = (n: Node): boolean => n.line.colon === undefined && opensThing(n) !== undefined && (openingWords(n).length > 1 || scope.find(n.line.head!.text) === undefined);
    // Things first, so that a beam may name what stands below it.
    const before = scope.sink.problems.length;
    for (const child of node.children) if (child.line.head && declares(child)) this.declare(child);
    for (const child of node.children) if (child.line.head && !declares(child)) this.change(child);
    for (const c of this.changes) if (c.kind === 'thing') { checkNamed(c.thing, scope); checkPlacement(c.node, scope); }
    // What is wrong in a line may have taken the use of a value away.
    if (scope.sink.problems.length === before && !node.children.some(issueIn)) this.unusedLets(node);
    return this.changes.sort((a, b) => a.node.at - b.node.at);
  }

  private declare(node: Node): void {
    const { scope } = this;
    // What the variant itself has declared is found by the declaration.
    const name = openingWords(node).findLast(w => scope.find(w.text) && !scope.things.has(w.text));
    if (name) {
      const taken = scope.find(name.text)!;
      scope.sink.report('name-taken', scope.sink.place(node, name), name.text, { name: name.text, kind: taken.kind.word, line: taken.at.line + 1 }, scope.setup);
      return;
    }
    bindThing(node, scope);
    const thing = openingWords(node).map(w => scope.things.get(w.text)).find(t => t?.node === node);
    if (thing) this.changes.push({ kind: 'thing', thing, at: thing.at, node });
  }

  private change(node: Node): void {
    const { line } = node;
    const { scope } = this;
    const head = line.head!;
    if (head.text === 'beam' && line.colon === undefined) { this.beam(node); return; }
    strayLegs(node, scope.sink, scope.setup);
    if (head.text === 'let' && line.colon === undefined) { this.let(node); return; }
    if (line.issue && !line.subject && line.colon === undefined && !line.equals && line.clauses.length === 0 && !line.opens) return;
    if (line.subject?.kind === 'path' && line.subject.start === head.start) { this.legBetween(node); return; }
    if ((line.colon === undefined ? NOT_HERE : WITH_COLON).includes(head.text)) { scope.sink.report('not-in-variant', scope.sink.place(node, head), head.text, { word: head.text }, scope.setup); return; }
    const phrase = factPhrase(line);
    if (line.colon !== undefined && factIndex(SETUP_FACTS).has(phrase ?? '')) { this.setupFact(node); return; }
    const dot = head.text.indexOf('.');
    if (dot > 0) {
      const beam = this.base.beams.get(head.text.slice(0, dot));
      if (beam && /^\d+$/.test(head.text.slice(dot + 1))) this.legNumbered(node, beam, Number(head.text.slice(dot + 1)));
      else this.fact(node, dot);
    } else this.thing(node);
  }

  /** `P1 at (700, 650) mm`, `M1 = lab.flat-150`, `S1 {`: all three may stand on one line. */
  private thing(node: Node): void {
    const { line } = node;
    const { scope } = this;
    const head = line.head!;
    const setupFacts = factIndex(SETUP_FACTS);
    const phrase = factPhrase(line) ?? head.text;
    if (line.colon !== undefined && !scope.find(head.text)) {
      const near = nearest(phrase, setupFacts.keys());
      scope.sink.report('unknown-fact', scope.sink.place(node, { start: head.start, end: line.subject?.end ?? head.end }), head.text, { phrase, of: 'setup', known: [...setupFacts.keys()].join(', '), ...(near ? { suggestion: near } : {}) }, scope.setup);
      return;
    }
    const thing = scope.thing(head, node);
    if (!thing) return;
    // `S1 reflects: 90%` lacks its dot, `P1 { at … }` its brackets: what stands behind the name is no change.
    const stray = line.subject ?? (line.colon === undefined ? undefined : { start: line.colon, end: line.value?.end ?? line.colon + 1 });
    if (stray || (!line.equals && line.clauses.length === 0 && !line.opens)) {
      if (!line.issue) scope.sink.report('change-missing', scope.sink.place(node, stray ?? head), thing.id, { thing: thing.id, written: line.text.trim(), ...(line.subject && line.colon !== undefined ? { suggestion: `${thing.id}.${line.text.slice(line.subject.start, line.text.length).trim()}` } : {}) }, scope.setup);
      return;
    }
    const at = scope.sink.place(node, head);
    if (line.equals) {
      const item = inventoryItem(node, thing.kind, scope);
      if (item && this.first(`${thing.id} =`, 'the inventory item', thing.id, at)) this.changes.push({ kind: 'item', thing, item, at, node });
    }
    if (line.clauses.length > 0) {
      const placement = bindPlacement(node, scope);
      checkPlacement(node, scope);
      if (placement && this.first(`${thing.id} at`, 'the placement', thing.id, at)) this.changes.push({ kind: 'placement', thing, placement, at, node });
    }
    const known = factIndex(factsOf(thing.kind));
    for (const child of node.children) if (child.line.head) this.bindInto(child, known, thing, 0);
  }

  /** `S1.reflects: 90%` */
  private fact(node: Node, dot: number): void {
    const head = node.line.head!;
    const word: Word = { text: head.text.slice(0, dot), start: head.start, end: head.start + dot };
    const thing = this.scope.thing(word, node);
    if (!thing) return;
    const { line } = node;
    if (line.colon === undefined) {
      if (!line.issue) this.scope.sink.report('change-missing', this.scope.sink.place(node, head), thing.id, { thing: thing.id, written: line.text.trim() }, this.scope.setup);
      return;
    }
    this.bindInto(withoutOwner(node, dot + 1), factIndex(factsOf(thing.kind)), thing, dot + 1);
  }

  private bindInto(node: Node, known: ReadonlyMap<string, Fact>, thing: Thing, skip: number): void {
    let facts = this.facts.get(thing);
    if (!facts) this.facts.set(thing, facts = new Map<string, BoundFact>());
    bindFact(node, known, facts, thing.id, thing.kind.word, this.scope);
    const [key, fact] = boundAt(node, known, facts);
    if (key === undefined) return;
    const head = node.line.head!;
    this.changes.push({ kind: 'fact', thing, key, fact, at: this.scope.sink.place(node, { start: head.start - skip, end: head.end }), node });
  }

  private setupFact(node: Node): void {
    const known = factIndex(SETUP_FACTS);
    bindFact(node, known, this.setupFacts, this.scope.setup ?? '', 'setup', this.scope);
    const [key, fact] = boundAt(node, known, this.setupFacts);
    if (key !== undefined) this.changes.push({ kind: 'setup fact', key, fact, at: this.scope.sink.place(node, node.line.head!), node });
  }

  private let(node: Node): void {
    bindLet(node, this.lets, this.scope);
    const own = node.line.subject?.kind === 'phrase' ? this.lets.get(node.line.subject.words[0]!.text) : undefined;
    if (own?.at.line === node.at) this.changes.push({ kind: 'let', let: own, at: own.at, node });
  }

  /** A value that neither the setup has nor another line of the variant uses changes nothing: mostly it is misspelt. */
  private unusedLets(node: Node): void {
    const { sink, setup } = this.scope;
    const own = [...this.lets.values()].filter(l => !this.base.lets.has(l.name));
    if (own.length === 0 || this.scope.loses) return;
    // Each stands once where it is declared.
    const times = new Map<string, number>();
    const count = (n: Node): void => {
      for (const t of n.line.tokens) if (t.type === 'word') { const w = n.line.text.slice(t.start, t.end); times.set(w, (times.get(w) ?? 0) + 1); }
      n.children.forEach(count);
      n.legs.forEach(count);
    };
    node.children.forEach(count);
    for (const l of own) {
      if (times.get(l.name)! > 1) continue;
      const suggestion = sink.suggest(l.name, () => this.base.lets.keys());
      sink.report('unknown-name', l.at, l.name, { name: l.name, wanted: 'a value that this setup has (let)', ...(suggestion ? { suggestion } : {}) }, setup);
    }
  }

  private beam(node: Node): void {
    bindBeam(node, this.beams, this.scope);
    const beam = node.line.subject?.kind === 'phrase' ? this.beams.get(node.line.subject.words[0]!.text) : undefined;
    if (beam?.node === node) this.changes.push({ kind: 'beam', beam, at: beam.at, node });
  }

  /** `S1 -> M1: 760 mm`, as in a reading: the one leg that leads from the one to the other. */
  private legBetween(node: Node): void {
    const { line } = node;
    const { scope } = this;
    const ends = line.subject?.kind === 'path' ? line.subject.items.map(e => (e.kind === 'phrase' && e.words.length === 1 ? e.words[0]! : undefined)) : [];
    const things = ends.map(w => w && scope.thing(w, node));
    const [from, to] = things;
    const at = scope.sink.place(node, line.subject!);
    const written = line.text.slice(line.subject!.start, line.subject!.end);
    const found: Leg[] = [];
    if (from && to && things.length === 2) {
      found.push(...(this.legsTo(to).filter(leg => (leg.n === 1 ? leg.beam.from : leg.beam.legs[leg.n - 2]!.target) === from)));
    }
    if (ends.every(Boolean) && things.some(t => !t)) return;
    if (found.length === 1) this.leg(node, found[0]!, at);
    else if (!line.issue) scope.sink.report('leg-unclear', at, written, { written, legs: found.map(l => l.id).join(', ') }, scope.setup);
  }

  private legsTo(thing: Thing): readonly Leg[] {
    if (!this.arriving) {
      this.arriving = new Map();
      for (const beam of this.base.beams.values()) for (const leg of beam.legs) if (leg.target) { const list = this.arriving.get(leg.target); if (list) list.push(leg); else this.arriving.set(leg.target, [leg]); }
    }
    return this.arriving.get(thing) ?? [];
  }
  private arriving: Map<Thing, Leg[]> | undefined;

  private legNumbered(node: Node, beam: Beam, n: number): void {
    const { sink, setup } = this.scope;
    const head = node.line.head!;
    const leg = beam.legs[n - 1];
    if (leg) this.leg(node, leg, sink.place(node, head));
    else sink.report('leg-unclear', sink.place(node, head), head.text, { written: head.text, legs: '', beam: beam.id, count: beam.legs.length }, setup);
  }

  private leg(node: Node, leg: Leg, at: Place): void {
    const { sink, setup } = this.scope;
    const { line } = node;
    if (!line.value) {
      if (!line.issue) sink.report('value-missing', at, leg.id, { phrase: 'length', of: leg.id, prevents: '' }, setup);
      return;
    }
    const length = readLegLength(node, leg.id, this.scope);
    if (length && this.first(`${leg.id}:`, 'length', leg.id, at)) this.changes.push({ kind: 'leg', leg, length, lengthAt: sink.place(node, line.value), at, node });
  }

  /** True where it is changed for the first time; a second change of the same is reported. */
  private first(key: string, phrase: string, of: string, at: Place): boolean {
    const before = this.once.get(key);
    if (!before) { this.once.set(key, at); return true; }
    this.scope.sink.report('written-twice', at, of, { phrase, of, line: before.line + 1 }, this.scope.setup);
    return false;
  }
}

const issueIn = (n: Node): boolean => n.line.issue !== undefined || n.children.some(issueIn) || n.legs.some(issueIn);

/** The node of `S1.reflects: 90%` as that of `reflects: 90%`. */
function withoutOwner(node: Node, skip: number): Node {
  const { line } = node;
  const head = line.head!;
  const bare = Object.create(line, { head: { value: { text: head.text.slice(skip), start: head.start + skip, end: head.end } satisfies Word } }) as LineTree;
  return Object.create(node, { line: { value: bare } }) as Node;
}

/** The fact that a line has just written; nothing where it was not understood, or is another line's already. */
function boundAt(node: Node, known: ReadonlyMap<string, Fact>, facts: ReadonlyMap<string, BoundFact>): [string, BoundFact] | [undefined, undefined] {
  const on = factOn(node.line, known);
  const key = on && factKey(on);
  const fact = key === undefined ? undefined : facts.get(key);
  return fact?.node.at === node.at ? [key!, fact] : [undefined, undefined];
}
