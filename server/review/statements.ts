/** What a setup or an inventory says, one fact each, so that two of them can be held side by side whatever their lines look like. */
import type { Clause, Expr, Node } from '../../grammar/tree.ts';
import { factKey, factPhrase } from '../model/bind/facts.ts';
import { SAYS } from '../model/bind/placement.ts';
import { openingWords } from '../model/bind/things.ts';
import type { BoundFact, Inventory, Place, Setup, Thing, Variant } from '../model/model.ts';
import { placeIn } from '../model/place.ts';
import { kindOf } from '../model/things/index.ts';
import { statementText } from '../model/written.ts';
import { clauseMeaning, lineMeaning, meaningOf, renamed, SAME_NAMES, type Names } from './meaning.ts';

/** What a statement says something of. `place` and `direction` are those of a thing; `line`: what cannot be told apart any further. */
export type What =
  | 'thing' | 'place' | 'direction' | 'item' | 'beam' | 'path' | 'leg' | 'fact' | 'let' | 'reading' | 'moved' | 'expectation' | 'aim' | 'acceptance' | 'variant' | 'shot' | 'process' | 'use' | 'line';

export interface Statement {
  /** the same of two statements that say something of the same; names as on the other side, where `names` has them */
  key(names: Names): string;
  /** the same of two that say the same of it */
  meaning(names: Names): string;
  readonly what: What;
  /** the thing or beam that it stands in; empty for the setup itself */
  readonly owner: string;
  /** what it is about, as it is shown: `P1.sensitivity`, `object: S1 → M1` */
  name(names: Names): string;
  /** what is said of it, as written; empty where it is only said that there is such a thing */
  readonly text: string;
  /** an item of an inventory says it */
  readonly inherited?: boolean;
  readonly at: Place;
}

/** A thing or a beam with what is said of it. */
export interface Part {
  readonly what: 'thing' | 'beam' | 'let' | 'variant';
  readonly id: string;
  readonly kind: string;
  readonly statements: readonly Statement[];
}

export interface Said {
  readonly statements: readonly Statement[];
  /** what has a name that others may use */
  readonly parts: readonly Part[];
}

/** A page of a history is held against two others, mostly with all names the same: what that gives is kept. */
class Made implements Statement {
  private sameKey: string | undefined;
  private sameMeaning: string | undefined;

  constructor(private readonly of: Statement) {}

  key(names: Names): string { return names.size > 0 ? this.of.key(names) : this.sameKey ??= this.of.key(names); }
  meaning(names: Names): string { return names.size > 0 ? this.of.meaning(names) : this.sameMeaning ??= this.of.meaning(names); }
  name(names: Names): string { return this.of.name(names); }
  get what(): What { return this.of.what; }
  get owner(): string { return this.of.owner; }
  get text(): string { return this.of.text; }
  get inherited(): boolean { return this.of.inherited === true; }
  get at(): Place { return this.of.at; }
}

/** What stands in a setup, and in the inventory items that its things are; of a setup as a variant makes it what that says instead. */
export function saidIn(setup: Setup, variant?: Variant): Said {
  const over = new Over(variant);
  const reader = new Reader(setup.uri, setup.things, over);
  for (const node of setup.node.children) if (!variant || node.line.head?.text !== 'variant') reader.statement(node);
  for (const node of over.more) reader.statement(node);
  return reader;
}

export function saidInInventory(inventory: Inventory, node: Node): Said {
  const reader = new Reader(inventory.at.uri, inventory.things, new Over(undefined));
  for (const child of node.children) reader.statement(child);
  return reader;
}

/** The lines of a variant, by what each of them takes the place of. */
class Over {
  readonly placements = new Map<string, Node>();
  readonly items = new Map<string, Node>();
  readonly legs = new Map<Node, Node>();
  readonly beams = new Map<string, Node>();
  readonly lets = new Map<string, Node>();
  readonly facts = new Map<string, Node>();
  /** what it adds */
  readonly more: Node[] = [];

  constructor(variant: Variant | undefined) {
    for (const c of variant?.changes ?? []) {
      switch (c.kind) {
        case 'placement': this.placements.set(c.thing.id, c.node); break;
        case 'item': this.items.set(c.thing.id, c.node); break;
        case 'leg': this.legs.set(c.leg.node, c.node); break;
        case 'beam': this.beams.set(c.beam.id, c.node); this.more.push(c.node); break;
        case 'let': this.lets.set(c.let.name, c.node); this.more.push(c.node); break;
        case 'setup fact': this.facts.set(c.key, c.node); this.more.push(c.node); break;
        case 'thing': this.more.push(c.node); break;
        // Facts of things are those of the setup that the variant makes.
        case 'fact': break;
      }
    }
  }
}

const GOALS: Readonly<Record<string, What>> = { expect: 'expectation', aim: 'aim' };
const BLOCKS: readonly string[] = ['shot', 'process', 'variant'];

class Reader implements Said {
  readonly statements: Statement[] = [];
  readonly parts: Part[] = [];

  constructor(private readonly uri: string, private readonly things: ReadonlyMap<string, Thing>, private readonly over: Over) {}

  statement(node: Node): void {
    const { head, colon, value, subject } = node.line;
    if (node.line.kind === 'comment' || node.line.kind === 'blank' || node.line.kind === 'doc' || node.line.kind === 'close') return;
    if (!head) { this.whole(node, '', 'line'); return; }
    if (colon === undefined) {
      const words = openingWords(node);
      const kind = kindOf(head.text, words[1]?.text);
      const name = kind && (words[kind.length] ?? (kind.kind.light === 'none' ? head : undefined));
      if (kind && name) { this.thing(node, kind.kind.word, name.text); return; }
      if (head.text === 'beam' && subject?.kind === 'phrase') { this.beam(node, subject.words[0]!.text); return; }
      if (head.text === 'let' && subject?.kind === 'phrase') { this.letValue(node, subject.words[0]!.text); return; }
      if (BLOCKS.includes(head.text)) { this.block(node, head.text as 'shot' | 'process' | 'variant'); return; }
      if (head.text === 'accept') { this.accept(node); return; }
    }
    if (head.text in GOALS) { this.goal(node, GOALS[head.text]!); return; }
    if (head.text === 'measured') { this.reading(node); return; }
    if (head.text === 'moved') { this.whole(node, '', 'moved'); return; }
    if (colon !== undefined && value) { this.fact(node, ''); return; }
    this.whole(node, '', 'line');
  }

  private add(of: Statement): Statement {
    const s = new Made(of);
    this.statements.push(s);
    return s;
  }

  private thing(node: Node, kind: string, id: string): void {
    const { line } = node;
    const first = this.statements.length;
    this.add({ what: 'thing', owner: id, text: '', at: placeIn(this.uri, node, line.head!), key: n => `thing ${renamed(id, n)}`, meaning: () => kind, name: n => `${kind === id ? '' : `${kind} `}${renamed(id, n)}` });
    const items = this.over.items.get(id) ?? node;
    const { equals } = items.line;
    if (equals) {
      this.add({ what: 'item', owner: id, text: items.line.text.slice(equals.start, equals.end), at: placeIn(this.uri, items, equals), key: n => `${renamed(id, n)} =`, meaning: n => meaningOf(equals, n), name: n => renamed(id, n) });
    }
    this.placement(node, id);
    const thing = this.things.get(id);
    const facts = thing?.node === node ? thing.facts : new Map<string, BoundFact>();
    for (const child of node.children) {
      const over = facts.get(factPhraseOf(child));
      if (!over || over.node === child) this.fact(child, id);
    }
    // What the inventory says of it holds here too, and changes there.
    for (const f of facts.values()) if (f.node.parent !== node) this.fact(f.node, id, { uri: f.at.uri, phrase: factKey({ fact: f.fact, ...(f.number === undefined ? {} : { number: f.number }) }) });
    this.parts.push({ what: 'thing', id, kind, statements: this.statements.slice(first + 1) });
  }

  private placement(node: Node, id: string): void {
    const place = { clauses: [] as readonly Clause[], node };
    const direction = { clauses: [] as readonly Clause[], node };
    const sort = (of: Node): void => {
      const parts: Clause[][] = [[], []];
      for (const c of of.line.clauses) { const slot = SAYS.get(c.word.text); parts[slot === 'direction' || slot === 'tilt' ? 1 : 0]!.push(c); }
      for (const [i, says] of [place, direction].entries()) if (parts[i]!.length > 0) { says.clauses = parts[i]!; says.node = of; }
    };
    sort(node);
    const over = this.over.placements.get(id);
    if (over) sort(over);
    for (const [what, { clauses, node: on }] of [['place', place], ['direction', direction]] as const) {
      const [head, last] = [clauses[0], clauses.at(-1)];
      if (!head || !last) continue;
      const text = clauses.map(c => on.line.text.slice(c.start, c.end)).join(' ');
      this.add({
        what, owner: id, text, at: placeIn(this.uri, on, { start: head.start, end: last.end }),
        key: n => `${renamed(id, n)} ${what}`, meaning: n => clauses.map(c => clauseMeaning(c, n)).join(' '), name: n => renamed(id, n),
      });
    }
  }

  /** `from`: where it stands, of what is not written by its owner itself, and the phrase that it has there. */
  private fact(node: Node, owner: string, from?: { readonly uri: string; readonly phrase: string }): void {
    const { line } = node;
    const { value, head, colon } = line;
    if (!head || colon === undefined || !value) { this.whole(node, owner, 'line'); return; }
    const phrase = from?.phrase ?? factPhraseOf(node);
    const uri = from?.uri ?? this.uri;
    if (owner === '' && this.over.facts.has(phrase) && this.over.facts.get(phrase) !== node) return;
    const whole = { start: value.start, end: line.clauses.filter(c => c.start >= value.end).at(-1)?.end ?? value.end };
    // Several words are a choice, as in “toward the image”, whatever a beam is called.
    const own = (n: Names): Names => (value.kind === 'phrase' && value.words.length > 1 ? SAME_NAMES : n);
    // The variant in which a plate is exposed is called as it is called by now.
    const said = (n: Names): Expr => (value.kind === 'string' && phrase === 'variant' && this.things.get(owner)?.kind.word === 'exposure' ? { ...value, value: n.get(`variant ${value.value}`) ?? value.value } : value);
    // A thing has one word for its name, a shot has two.
    const of = (n: Names): string => (owner === '' ? phrase : owner.includes(' ') ? `${owner}: ${phrase}` : `${renamed(owner, n)}.${phrase}`);
    this.add({
      what: 'fact', owner, text: line.issue ? line.text.slice(value.start, line.comment?.start).trim() : line.text.slice(whole.start, whole.end), at: placeIn(uri, node, whole),
      ...(from ? { inherited: true } : {}), key: of, name: of,
      meaning: n => (line.issue ? lineMeaning(line, n) : [meaningOf(said(n), own(n)), ...line.clauses.map(c => clauseMeaning(c, n))].join(' ')),
    });
  }

  private beam(node: Node, id: string): void {
    if (this.over.beams.has(id) && this.over.beams.get(id) !== node) return;
    const { line } = node;
    const from = line.clauses.find(c => c.word.text === 'from');
    const source = from?.value?.kind === 'phrase' ? from.value.words[0]!.text : undefined;
    const first = this.statements.length;
    this.add({ what: 'beam', owner: id, text: '', at: placeIn(this.uri, node, line.head!), key: n => `beam ${renamed(id, n)}`, meaning: () => '', name: n => `beam ${renamed(id, n)}` });
    const targets = node.legs.map(l => (l.line.subject ? l.line.text.slice(l.line.subject.start, l.line.subject.end) : '?'));
    const start = from?.value ? line.text.slice(from.value.start, from.value.end) : '?';
    const path = (n: Names): string => [from ? clauseMeaning(from, n) : '', ...node.legs.map(l => (l.line.subject ? meaningOf(l.line.subject, n) : lineMeaning(l.line, n)))].join(' -> ');
    this.add({ what: 'path', owner: id, text: [start, ...targets].join(' → '), at: placeIn(this.uri, node, from ?? line.head!), key: n => `path ${renamed(id, n)}`, meaning: path, name: n => renamed(id, n) });
    let before = source ?? '?';
    const seen = new Map<string, number>();
    for (const [i, leg] of node.legs.entries()) {
      const to = targets[i]!.split(' ')[0]!;
      const between = (n: Names): string => `${renamed(id, n)}: ${renamed(here, n)} → ${renamed(to, n)}`;
      const here = before;
      const times = (seen.get(`${here} ${to}`) ?? 0) + 1;
      seen.set(`${here} ${to}`, times);
      const on = this.over.legs.get(leg) ?? leg;
      const { value } = on.line;
      if (value) this.add({ what: 'leg', owner: id, text: on.line.text.slice(value.start, value.end), at: placeIn(this.uri, on, value), key: n => `leg ${between(n)} ${times}`, meaning: n => meaningOf(value, n), name: between });
      before = to;
    }
    this.parts.push({ what: 'beam', id, kind: 'beam', statements: this.statements.slice(first + 1) });
  }

  private letValue(node: Node, id: string): void {
    if (this.over.lets.has(id) && this.over.lets.get(id) !== node) return;
    const { equals, value, head } = node.line;
    const e = equals ?? value;
    const s = this.add({ what: 'let', owner: id, text: e ? node.line.text.slice(e.start, e.end) : '', at: placeIn(this.uri, node, e ?? head!), key: n => `let ${renamed(id, n)}`, meaning: n => (e ? meaningOf(e, n) : lineMeaning(node.line, n)), name: n => renamed(id, n) });
    this.parts.push({ what: 'let', id, kind: 'let', statements: [s] });
  }

  private goal(node: Node, what: What): void {
    const { line } = node;
    const { subject, head, compare, value, clauses, equals } = line;
    if (!subject) { this.whole(node, '', 'line'); return; }
    const from = compare?.start ?? clauses[0]?.start ?? equals?.start ?? value?.start;
    const text = from === undefined ? '' : line.text.slice(equals && !compare ? line.text.lastIndexOf('=', from) : from, line.comment?.start).trim();
    this.add({
      what, owner: '', text, at: placeIn(this.uri, node, { start: head!.start, end: line.comment?.start ?? line.text.trimEnd().length }),
      key: n => `${head!.text} ${meaningOf(subject, n)}`, meaning: n => lineMeaning(line, n), name: n => meaningOf(subject, n),
    });
  }

  private reading(node: Node): void {
    const { line } = node;
    const { subject, value, clauses, head } = line;
    if (!subject || !value) { this.whole(node, '', 'line'); return; }
    const before = clauses.filter(c => c.end <= value.start);
    this.add({
      what: 'reading', owner: '', text: line.text.slice(value.start, line.comment?.start).trim(), at: placeIn(this.uri, node, { start: head!.start, end: value.end }),
      key: n => `measured ${[meaningOf(subject, n), ...before.map(c => clauseMeaning(c, n))].join(' ')}`, meaning: n => lineMeaning(line, n),
      name: n => [meaningOf(subject, n), ...before.map(c => clauseMeaning(c, n))].join(' '),
    });
  }

  private accept(node: Node): void {
    const { line } = node;
    const { subject, clauses, head } = line;
    const first = subject?.kind === 'row' ? subject.items[0]! : subject;
    const of = clauses.map(c => line.text.slice(c.start, c.end)).join(' ');
    this.add({
      what: 'acceptance', owner: '', text: line.text.slice(first?.end ?? head!.end, line.comment?.start).trim(), at: placeIn(this.uri, node, head!),
      key: n => `accept ${first ? meaningOf(first) : ''} ${clauses.map(c => clauseMeaning(c, n)).join(' ')}`, meaning: n => lineMeaning(line, n), name: () => `${first ? meaningOf(first) : ''} ${of}`.trim(),
    });
  }

  private block(node: Node, what: 'shot' | 'process' | 'variant'): void {
    const { line } = node;
    const { head } = line;
    const id = saidOfShot(node);
    // What was processed on a day has no name besides.
    const day = line.clauses.map(c => clauseMeaning(c, SAME_NAMES)).join(' ');
    const owner = [what, id, what === 'process' ? day : ''].filter(Boolean).join(' ');
    const now = (n: Names): string => n.get(owner) ?? id;
    const first = this.statements.length;
    this.add({
      what, owner, text: what === 'shot' ? day : '', at: placeIn(this.uri, node, head!), key: n => (what === 'variant' ? `variant ${now(n)}` : owner), meaning: () => (what === 'shot' ? day : ''),
      name: n => (what === 'variant' ? `variant “${now(n)}”` : owner),
    });
    for (const child of node.children) {
      if (what === 'variant') this.variantLine(child, owner, []);
      else this.fact(child, owner);
    }
    if (what === 'variant') this.parts.push({ what, id, kind: what, statements: this.statements.slice(first + 1) });
  }

  /** What a variant does otherwise is told line by line: `P1 at (700, 650) mm`, `S1 {` with `loss: 3%` in it, a beam with its legs. */
  private variantLine(node: Node, owner: string, within: readonly string[]): void {
    const { line } = node;
    const text = statementText(line);
    if (text === '' || text === '}') return;
    const opening = (n: Names): string => (line.issue || !line.head ? lineMeaning(line, n) : [...within.map(w => renamed(w, n)), renamed(line.head.text, n), line.subject ? meaningOf(line.subject, n) : '', ...line.clauses.map(c => SAYS.get(c.word.text) ?? '')].join(' '));
    const now = (n: Names): string => n.get(owner) ?? owner.slice('variant '.length);
    const below = [...node.children, ...node.legs];
    if (!line.opens || line.clauses.length > 0 || line.equals) {
      this.add({ what: 'line', owner, text: [...within, text].join(' '), at: placeIn(this.uri, node, line.head ?? { start: 0, end: text.length }), key: n => `variant ${now(n)} ${opening(n)}`, meaning: n => lineMeaning(line, n), name: n => `variant “${now(n)}”` });
    }
    for (const child of below) this.variantLine(child, owner, [...within, text]);
  }

  /** A line that is compared as it stands. */
  private whole(node: Node, owner: string, what: What): void {
    const { line } = node;
    const text = statementText(line);
    if (text === '') return;
    this.add({ what, owner, text, at: placeIn(this.uri, node, line.head ?? { start: 0, end: text.length }), key: n => `${owner} ${lineMeaning(line, n)}`, meaning: () => '', name: () => '' });
  }
}

/** What a shot, a variant or a processing is called: a shot mostly has a number. */
export const saidOfShot = ({ line: { subject } }: Node): string => (!subject ? '' : subject.kind === 'number' ? String(subject.value) : meaningOf(subject));

const factPhraseOf = ({ line }: Node): string => factPhrase(line) ?? line.text.slice(line.head?.start, line.colon).trim().replace(/\s+/g, ' ');
