/** The words of expressions that stand for something: names, units, facts and results of what is named. */
import type { Expr, Node, Span, Word } from '../../../grammar/tree.ts';
import { declaredBy, type Bearer, type Names } from './names.ts';
import { factIndex, factsOf } from '../things/index.ts';

/** What a word stands for. `sought` is `?`; `unknown` is a word that means nothing where a known one is wanted. */
export type Role = 'name' | 'kind' | 'fact' | 'result' | 'choice' | 'port' | 'unit' | 'sought' | 'unknown';

export interface Mention extends Span {
  readonly role: Role;
  readonly line: number;
  /** the statement or leg that it stands in */
  readonly node: Node;
  /** of a name */
  readonly named: Bearer | undefined;
  readonly declares: boolean | undefined;
}

export const phraseOf = (words: readonly Word[]): string => words.map(w => w.text).join(' ');

/** The words that a subject opens with. */
export function firstPhrase(e: Expr | undefined): readonly Word[] {
  const first = e?.kind === 'row' ? e.items[0] : e;
  return first?.kind === 'phrase' ? first.words : [];
}

export class Words {
  constructor(protected readonly uri: string, protected readonly names: Names, protected readonly found: Mention[]) {}

  protected put(node: Node, role: Role, { start, end }: Span, named?: Bearer, declares?: boolean): void {
    if (end > start) this.found.push({ role, node, line: node.at, start, end, named, declares });
  }

  name(node: Node, at: Span, named: Bearer): void {
    this.put(node, 'name', at, named, declaredBy(named, node, this.uri) && named.at.start === at.start);
  }

  protected words(node: Node, role: Role, words: readonly Span[]): void { for (const w of words) this.put(node, role, w); }

  /** The name of a thing, or of an item of an inventory. */
  protected thingNamed(node: Node, word: Word, quiet = false): Bearer | undefined {
    const own = this.names.thing(word.text);
    if (own) { this.name(node, word, own); return own; }
    const dot = word.text.indexOf('.');
    const inventory = dot > 0 ? this.names.inventory(word.text.slice(0, dot)) : undefined;
    if (!inventory) { if (!quiet) this.put(node, 'unknown', word); return undefined; }
    this.name(node, { start: word.start, end: word.start + dot }, inventory.named);
    const item = inventory.items.get(word.text.slice(dot + 1));
    const at = { start: word.start + dot + 1, end: word.end };
    if (item) this.name(node, at, item);
    else this.put(node, 'unknown', at);
    return item;
  }

  protected thingOf(node: Node, e: Expr): void {
    if (e.kind === 'phrase' && e.words.length === 1) this.thingNamed(node, e.words[0]!);
    else this.value(node, e);
  }

  protected result(node: Node, e: Expr): void {
    if (e.kind === 'binary') { this.result(node, e.left); this.result(node, e.right); return; }
    if (e.kind !== 'phrase') { this.value(node, e); return; }
    if (!this.valueNamed(node, e.words)) this.words(node, 'result', e.words);
  }

  /** What a finding is about: `P1.object`, `M1`, `raw.1`. */
  protected about(node: Node, word: Word): void {
    const named = this.names.thing(word.text) ?? this.names.beam(word.text) ?? this.names.letNamed(word.text);
    if (named) this.name(node, word, named);
    else this.dotted(node, word, true);
  }

  /** All names and units in a value. */
  protected value(node: Node, e: Expr): void {
    switch (e.kind) {
      case 'number': if (e.unit) this.put(node, 'unit', e.unit); break;
      case 'unknown': this.put(node, 'sought', { start: e.start, end: e.start + 1 }); if (e.unit) this.put(node, 'unit', e.unit); break;
      case 'phrase': this.valueNamed(node, e.words); break;
      case 'call': for (const a of e.args) this.value(node, a); if (e.unit) this.put(node, 'unit', e.unit); break;
      case 'group': for (const i of e.items) this.value(node, i); if (e.unit) this.put(node, 'unit', e.unit); break;
      case 'unary': this.value(node, e.arg); break;
      case 'binary': this.value(node, e.left); this.value(node, e.right); break;
      case 'sizes': for (const p of e.parts) this.value(node, p); break;
      case 'tolerance': this.value(node, e.value); this.value(node, e.by); break;
      case 'path': case 'row': case 'list': for (const i of e.items) this.value(node, i); break;
      default:
    }
  }

  /** A `let`, a fact of a thing (`R1.focal length`) or a result that is called after things and beams. */
  protected valueNamed(node: Node, words: readonly Word[]): boolean {
    const own = words.length === 1 ? this.names.letNamed(words[0]!.text) : undefined;
    if (own) { this.name(node, words[0]!, own); return true; }
    const named = this.dotted(node, words[0]!, false, words.slice(1));
    return named !== undefined;
  }

  /** `P1.reference.length`: the names at the start of a dotted word, and behind them what it is of them. */
  protected dotted(node: Node, word: Word, finding: boolean, more: readonly Word[] = []): Bearer | undefined {
    const parts = word.text.split('.');
    const [first, second] = parts as [string, string | undefined];
    if (second === undefined) return undefined;
    const thing = this.names.thing(first);
    const beam = this.names.beam(first);
    const named = beam && (!thing || /^\d+$/.test(second)) ? beam : thing;
    if (!named) return undefined;
    this.name(node, { start: word.start, end: word.start + first.length }, named);
    let at = word.start + first.length + 1;
    if (parts.length > 2 || finding) {
      const inner = named === thing ? this.names.armAt(first, second) ?? this.names.thing(second) : undefined;
      if (inner) { this.name(node, { start: at, end: at + second.length }, inner); at += second.length + 1; }
    }
    const rest = [...(at < word.end ? [{ start: at, end: word.end }] : []), ...more];
    const phrase = [word.text.slice(at - word.start), ...more.map(w => w.text)].join(' ');
    this.words(node, parts.length === 2 && named.of && factIndex(factsOf(named.of)).has(phrase) ? 'fact' : 'result', rest);
    return named;
  }
}
