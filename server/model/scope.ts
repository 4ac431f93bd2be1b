/** What names mean inside one setup or inventory, and what is wrong with those that mean nothing. */
import { distance } from 'fastest-levenshtein';
import type { Node, Span, Word } from '../../grammar/tree.ts';
import type { Inventories } from './inventories.ts';
import type { Place, Problem, Reference, Thing } from './model.ts';
import type { ValueProblem } from './literal.ts';
import { placeIn } from './place.ts';

/** A name that is used. There are as many of them as lines, and mostly nobody asks: the places are made when somebody does. */
class Mention implements Reference {
  constructor(private readonly uri: string, private readonly node: Node, private readonly word: Word, private readonly thing: Thing) {}
  get name(): string { return this.word.text; }
  get at(): Place { return placeIn(this.uri, this.node, this.word); }
  get target(): Place { return this.thing.at; }
}

/** By how many letters two texts differ. */
export { distance };

/** The name of a file, without its folders. */
export const fileName = (uri: string): string => decodeURIComponent(uri.slice(uri.lastIndexOf('/') + 1));

/** Collects the problems and references of one file while it is bound. */
export class Sink {
  readonly problems: Problem[] = [];
  readonly references: Reference[] = [];
  /** a file that is used could not be read, so that names of inventories may be missing */
  incomplete = false;
  /** how many setups, inventories and items were bound; the others are kept */
  bound = 0;
  constructor(readonly uri: string) {}

  place(node: Node, span: Span): Place {
    return placeIn(this.uri, node, span);
  }
  report(code: string, at: Place, subject: string, data: Problem['data'] = {}, setup?: string): void {
    this.problems.push({ code, at, subject, data, ...(setup !== undefined ? { setup } : {}) });
  }
  value(p: ValueProblem, node: Node, subject: string, setup?: string): void {
    this.report(p.code, this.place(node, p.span), subject, p.data, setup);
  }
  /** The nearest of some names. On a page full of unknown names nobody reads hundreds of suggestions, which take long to find. */
  suggest(name: string, among: () => Iterable<string>): string | undefined {
    return this.suggested++ < MAX_SUGGESTED ? nearest(name, among()) : undefined;
  }
  private suggested = 0;
  refer(node: Node, word: Word, target: Thing): void {
    this.references.push(new Mention(this.uri, node, word, target));
  }
}

export const MAX_SUGGESTED = 100;

/** The names of one setup. */
export class Scope {
  /** a declaration could not be read or has no name: what seems unknown may well be declared there */
  nameless = false;
  /** a value (`let`) could not be read: a name that seems to have none may be its */
  lost = false;
  /** names that were reported, or stand in a statement that was: one slip is one finding, however often the name is used */
  private readonly missed = new Set<string>();

  constructor(
    readonly sink: Sink,
    readonly things: Map<string, Thing>,
    readonly inventories: Inventories,
    readonly setup?: string,
    /** the names that hold as well, unless they are declared anew here: those of the setup, in a variant */
    private readonly under?: Scope,
  ) {}

  /** The thing of that name, or nothing with a problem at its place. */
  thing(word: Word, node: Node, wanted = 'a thing of this setup'): Thing | undefined {
    const found = this.find(word.text);
    if (found) {
      found.used = true;
      this.sink.refer(node, word, found);
      return found;
    }
    const at = this.sink.place(node, word);
    // Items of an inventory that is not known are missed as a whole.
    const inventory = word.text.includes('.') ? word.text.slice(0, word.text.indexOf('.')) : undefined;
    const whole = inventory !== undefined && !this.inventories.has(inventory) ? inventory : undefined;
    if (this.nameless || this.under?.nameless || node.line.issue?.start === word.end || this.misses(whole ?? word.text) || (this.sink.incomplete && whole !== undefined)) return undefined;
    this.missed.add(whole ?? word.text);
    const below = this.below?.(word.text) === true;
    const suggestion = below ? undefined : this.items(word.text) ?? this.sink.suggest(word.text, () => this.names());
    this.sink.report('unknown-name', at, word.text, { name: word.text, wanted, ...(below ? { below } : {}), ...(suggestion ? { suggestion } : {}) }, this.setup);
    return undefined;
  }

  /** Whether an item of that name stands further down in the inventory that is being read. */
  below: ((name: string) => boolean) | undefined;

  /** The one item that would have this name without its inventory. */
  private items(name: string): string | undefined {
    const among = name.includes('.') ? [] : this.inventories.names().filter(n => n.endsWith(`.${name}`));
    return among.length === 1 ? among[0] : undefined;
  }

  /** Here, or in the setup of a variant, a value could not be read. */
  get loses(): boolean { return this.lost || (this.under?.loses ?? false); }

  private misses(name: string): boolean {
    return this.missed.has(name) || (this.under?.misses(name) ?? false);
  }

  /** Names that are not reported as unknown, because the statement that may declare them is. */
  excuse(words: readonly Word[]): void {
    for (const w of words) this.missed.add(w.text);
  }

  find(name: string): Thing | undefined {
    const own = this.things.get(name) ?? this.under?.things.get(name);
    if (own) return own;
    return this.inventories.item(name);
  }

  names(): string[] {
    return [...this.things.keys(), ...(this.under?.things.keys() ?? []), ...this.inventories.names()];
  }
}

/** The nearest of some names to a misspelt one, if it is near enough to be meant. */
export function nearest(name: string, among: Iterable<string>): string | undefined {
  let best: string | undefined;
  let least = Math.max(1, Math.floor(name.length / 3)) + 0.5;
  for (const n of among) {
    if (Math.abs(n.length - name.length) > least) continue;
    const d = distance(n.toLowerCase(), name.toLowerCase());
    if (d < least && d < Math.max(n.length, name.length)) { best = n; least = d; }
  }
  return best;
}
