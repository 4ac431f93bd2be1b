/**
 * All words of a file that stand for something: names, wherever they are used, and the words of the vocabulary. Rename, references and
 * colours rest on it. It walks the statements of the tree; what it looks names up in is the bound model.
 */
import type { Clause, Expr, Node, Tree, Word } from '../../../grammar/tree.ts';
import { factOn } from '../bind/facts.ts';
import { openingWords } from '../bind/things.ts';
import { wordsOf } from '../literal.ts';
import type { Model } from '../model.ts';
import { declaredBy, Names, textAt } from './names.ts';
import { firstPhrase, phraseOf, Words, type Mention } from './words.ts';
import { placeIn } from '../place.ts';
import { factIndex, factsOf, kindOf, PROCESS_FACTS, SETUP_FACTS, SHOT_FACTS } from '../things/index.ts';
import type { Fact } from '../things/kind.ts';

/** Statements that lie outside of the lines `from` to `to` are left out. */
export function mentionsOf(tree: Tree, model: Model, from = 0, to = Infinity): Mention[] {
  const found: Mention[] = [];
  const all = Names.inventories(model);
  const setups = new Map(model.setups.map(s => [s.node, s]));
  const within = (n: Node): boolean => n.end >= from && n.at <= to;
  for (const node of tree.nodes.filter(within)) {
    const setup = setups.get(node);
    if (setup) {
      const walk = new Walk(model.uri, Names.setup(setup, all), found);
      for (const child of node.children) if (within(child)) walk.statement(child);
      continue;
    }
    const inventory = node.line.head?.text === 'inventory' ? model.inventories.find(i => i.at.line === node.at) : undefined;
    if (!inventory) continue;
    const walk = new Walk(model.uri, Names.inside(inventory, all), found);
    const visible = all.get(inventory.name)?.named;
    const named = visible && declaredBy(visible, node, model.uri) ? visible : { kind: 'inventory' as const, name: inventory.name, at: inventory.at };
    walk.name(node, inventory.at, named);
    for (const child of node.children) if (within(child)) walk.thing(child);
  }
  return found;
}

const TURNS = new Set(['left', 'right', 'up', 'down', 'back']);
/** Where light or an image is caught without a thing of the setup. */
const CARDS = new Set(['screen', 'card']);

class Walk extends Words {
  /** A line of a setup or of a variant. */
  statement(node: Node, inVariant = false): void {
    const { line } = node;
    const head = line.head;
    if (!head) return;
    // A line of a variant that begins with the name of a thing changes it, whatever the thing is called.
    const changes = inVariant && openingWords(node).length === 1 && this.names.thing(head.text) !== undefined;
    if (changes) { this.change(node); return; }
    if (line.colon === undefined && this.thing(node)) return;
    if (this.fact(node, SETUP_FACTS, true)) return;
    const { subject } = line;
    switch (head.text) {
      case 'beam': this.beam(node); return;
      case 'let': {
        const word = subject?.kind === 'phrase' ? subject.words[0] : undefined;
        const named = word && this.names.letNamed(word.text);
        if (named) this.name(node, word, named);
        break;
      }
      case 'measured': this.measured(node); return;
      case 'moved': this.moved(node, subject); return;
      case 'expect': case 'aim': if (subject) this.result(node, subject); break;
      case 'accept': {
        const about = line.clauses.find(c => c.word.text === 'for')?.value;
        if (about?.kind === 'phrase' && about.words.length === 1) this.about(node, about.words[0]!);
        return;
      }
      case 'variant': this.variant(node); return;
      case 'shot': for (const c of node.children) this.fact(c, SHOT_FACTS); return;
      case 'process': for (const c of node.children) this.fact(c, PROCESS_FACTS); return;
      default:
        if (inVariant) { this.change(node); return; }
        this.put(node, 'unknown', head);
        // A misspelt beam is one all the same.
        this.beam(node); return;
    }
    this.rest(node);
  }

  /** Values behind the subject, with the names in them. */
  private rest(node: Node, clauses = node.line.clauses): void {
    const { equals, compare, value } = node.line;
    for (const e of [equals, compare?.value, value]) if (e) this.value(node, e);
    this.clauses(node, clauses);
  }

  /** A declaration of a thing. False where the statement isn't one. */
  thing(node: Node): boolean {
    const words = openingWords(node);
    const at = words.findIndex(w => { const n = this.names.thing(w.text); return n !== undefined && declaredBy(n, node, this.uri) && n.at.start === w.start; });
    const found = kindOf(words[0]?.text ?? '', words[1]?.text);
    if (at < 0 && !found) return false;
    const length = found?.length ?? at;
    this.words(node, found ? 'kind' : 'unknown', words.slice(0, length));
    const word = words[at < 0 ? length : at];
    const named = word && this.names.thing(word.text);
    if (named) this.name(node, word, named);
    const { equals, clauses } = node.line;
    if (equals) this.thingOf(node, equals);
    this.placement(node, clauses);
    const kind = found?.kind ?? named?.of;
    for (const c of node.children) this.fact(c, kind ? factsOf(kind) : []);
    for (const leg of node.legs) this.leg(leg);
    return true;
  }

  private beam(node: Node): void {
    const { subject, clauses } = node.line;
    const word = subject?.kind === 'phrase' ? subject.words[0] : undefined;
    const named = word && this.names.beam(word.text);
    if (named) this.name(node, word, named);
    for (const c of clauses) if (c.word.text === 'from' && c.value) this.target(node, c.value);
    for (const leg of node.legs) this.leg(leg);
  }

  private leg(node: Node): void {
    if (node.line.subject) this.target(node, node.line.subject);
    this.rest(node);
  }

  /** `S1 through` */
  private target(node: Node, e: Expr): void {
    const [word, port] = firstPhrase(e);
    if (!word) return;
    const named = this.thingNamed(node, word);
    if (port && named) this.put(node, port.text === 'through' || named.of?.ports.includes(port.text) ? 'port' : 'unknown', port);
  }

  private placement(node: Node, clauses: readonly Clause[]): void {
    for (const { word, value } of clauses) {
      if (!value) continue;
      if (!['on', 'beyond', 'facing', 'turning'].includes(word.text)) { this.value(node, value); continue; }
      for (const e of value.kind === 'path' ? value.items : [value]) {
        if (e.kind !== 'phrase') { this.value(node, e); continue; }
        for (const w of e.words) {
          if (word.text === 'facing' && w.text === 'beam') continue;
          if (word.text === 'turning' && TURNS.has(w.text)) this.put(node, 'choice', w);
          else this.thingNamed(node, w);
        }
      }
    }
  }

  /** Clauses behind a value: limits, or where and by what a reading was taken. */
  private clauses(node: Node, clauses: readonly Clause[]): void {
    for (const { value } of clauses) if (value) this.value(node, value);
  }

  /** A line of facts. `only`: where it is a known fact. */
  private fact(node: Node, known: readonly Fact[], only = false): boolean {
    const { head, subject, value, clauses, colon } = node.line;
    if (!head || (only && colon === undefined && (clauses.length > 0 || node.legs.length > 0 || node.line.equals))) return false;
    const words = [head, ...firstPhrase(subject)];
    const fact = factOn(node.line, factIndex(known))?.fact;
    if (!fact && only) return false;
    if (!fact && known.length > 0) this.words(node, 'unknown', words);
    else this.words(node, 'fact', words);
    if (value) this.factValue(node, value, fact);
    if (fact?.type.type !== 'choice' && fact?.type.type !== 'text') this.clauses(node, clauses);
    return true;
  }

  private factValue(node: Node, e: Expr, fact: Fact | undefined): void {
    const type = fact?.type;
    const words = e.kind === 'phrase' ? e.words : undefined;
    if (fact?.names && fact.phrase === 'variant') this.variantNamed(node, e);
    if (type?.type === 'text' || type?.type === 'date') return;
    if (words && type?.type === 'name') { this.thingNamed(node, words[0]!); return; }
    const accepted: readonly string[] = type && 'words' in type ? type.words ?? [] : [];
    if (words && (type?.type === 'choice' || accepted.includes(phraseOf(words)))) this.words(node, 'choice', words);
    else this.value(node, e);
  }

  private measured(node: Node): void {
    const { subject, value, clauses } = node.line;
    if (value) this.value(node, value);
    if (subject) this.reading(node, subject);
    for (const { word, value: v } of clauses) {
      if (!v) continue;
      const words = v.kind === 'phrase' ? v.words : undefined;
      if (!words) this.value(node, v);
      else if (word.text === 'by') this.instrument(node, words[0]!);
      else if (word.text === 'at') {
        if (CARDS.has(words[0]!.text) && !this.names.thing(words[0]!.text)) this.put(node, 'choice', words[0]!);
        else this.thingNamed(node, words[0]!);
        words.slice(1).forEach((w, i) => {
          const named = words[i]!.text === 'through' ? this.names.thing(w.text) : undefined;
          if (named) this.name(node, w, named);
          else this.put(node, 'choice', w);
        });
      } else if (word.text === 'facing' && words[0]!.text !== 'beam') this.thingNamed(node, words[0]!);
      else this.words(node, 'choice', words);
    }
  }

  /** A thing, an item of an inventory, also without the name of that where only one has it, or a plain word. */
  private instrument(node: Node, word: Word): void {
    const item = word.text.includes('.') || this.names.thing(word.text) ? undefined : this.names.itemCalled(word.text);
    if (item) this.name(node, word, item);
    else if (!this.thingNamed(node, word, true) && !word.text.includes('.')) this.put(node, 'choice', word);
  }

  private moved(node: Node, e: Expr | undefined): void {
    if (e?.kind === 'list') for (const i of e.items) this.moved(node, i);
    else if (e) for (const w of firstPhrase(e)) this.thingNamed(node, w);
  }

  /** What a reading is of: arms by their beams, legs by their ends, or words of the trade. */
  private reading(node: Node, e: Expr): void {
    if (e.kind === 'path') { for (const i of e.items) { const [w] = firstPhrase(i); if (w) this.thingNamed(node, w); } return; }
    if (e.kind === 'binary') { this.reading(node, e.left); this.reading(node, e.right); return; }
    const words = firstPhrase(e);
    const [word, next] = words;
    if (!word) return;
    const named = next ? this.names.thing(word.text) : this.names.beam(word.text) ?? this.names.thing(word.text);
    if (named) this.name(node, word, named);
    this.words(node, named ? 'fact' : 'result', named ? words.slice(1) : words);
  }

  /** Quotes round the name of a variant are no part of it. */
  private variantNamed(node: Node, e: Expr | undefined): void {
    const at = textAt(e);
    const name = e && wordsOf(e);
    const named = name === undefined ? undefined : this.names.variant(name);
    if (at && named) this.name(node, at, named);
  }

  private variant(node: Node): void {
    this.variantNamed(node, node.line.subject);
    const names = this.names.within();
    for (const c of node.children) {
      const words = openingWords(c);
      const found = kindOf(words[0]?.text ?? '', words[1]?.text);
      const head = words[0]?.text;
      const word = found ? words[found.length] : words[1];
      if (!word || c.line.colon !== undefined) continue;
      if (found && !names.thing(word.text)) names.add({ kind: 'thing', name: word.text, at: placeIn(this.uri, c, word), of: found.kind });
      else if (head === 'beam' && !names.beam(word.text)) names.add({ kind: 'beam', name: word.text, at: placeIn(this.uri, c, word) });
      else if (head === 'let' && !names.letNamed(word.text)) names.add({ kind: 'let', name: word.text, at: placeIn(this.uri, c, word) });
    }
    const walk = new Walk(this.uri, names, this.found);
    for (const c of node.children) walk.statement(c, true);
  }

  /** A line of a variant: `P1 at (700, 650) mm`, `S1 { … }`, `S1.reflects: 90%`, `gap: 310 mm`, `S1 -> M1: 760 mm`. */
  private change(node: Node): void {
    const { head, subject, value, clauses, equals } = node.line;
    if (subject?.kind === 'path') this.reading(node, subject);
    const word = head!;
    const named = subject?.kind === 'path' ? undefined : this.names.thing(word.text) ?? this.names.letNamed(word.text) ?? this.names.beam(word.text);
    const owner = named ?? (subject?.kind === 'path' ? undefined : this.dotted(node, word, false, firstPhrase(subject)));
    if (named) this.name(node, word, named);
    else if (!owner && subject?.kind !== 'path') this.put(node, 'unknown', word);
    const phrase = [word.text.slice(word.text.indexOf('.') + 1), ...firstPhrase(subject).map(w => w.text)].join(' ');
    const fact = owner?.of && !named ? factIndex(factsOf(owner.of)).get(phrase) : undefined;
    if (value) this.factValue(node, value, fact);
    if (equals) this.thingOf(node, equals);
    if (value) { if (fact?.type.type !== 'choice') this.clauses(node, clauses); } else this.placement(node, clauses);
    for (const c of node.children) this.fact(c, owner?.of ? factsOf(owner.of) : []);
    for (const leg of node.legs) this.leg(leg);
  }
}
