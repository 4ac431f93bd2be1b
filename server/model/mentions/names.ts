/** What can be named in a file, and which of it a name means where it stands. */
import type { Expr, Node, Span } from '../../../grammar/tree.ts';
import { wordsOf } from '../literal.ts';
import type { Inventory, Model, Place, Setup, Thing } from '../model.ts';
import { within } from '../place.ts';
import type { Kind } from '../things/kind.ts';

/** What bears a name: something that the text declares and calls by it. */
export interface Bearer {
  readonly kind: 'thing' | 'beam' | 'let' | 'variant' | 'inventory' | 'item';
  readonly name: string;
  /** where it is declared; the file may be another one */
  readonly at: Place;
  /** of a thing or an item */
  readonly of?: Kind;
}

/** The same for the same thing in every file. */
export const keyOf = ({ at }: Bearer): string => `${at.uri} ${at.line} ${at.start}`;

/** A thing that is called by the word of its kind, as `room { … }` is: it has no name of its own. */
export const namedByKind = (n: Bearer): boolean => n.of?.light === 'none' && n.name === n.of.word;

export interface Items {
  readonly named: Bearer;
  readonly items: ReadonlyMap<string, Bearer>;
}

export class Names {
  private readonly things = new Map<string, Bearer>();
  private readonly beams = new Map<string, Bearer>();
  private readonly lets = new Map<string, Bearer>();
  private readonly variants = new Map<string, Bearer>();

  /** A variant sees the names of its setup. */
  constructor(private readonly inventories: ReadonlyMap<string, Items>, private readonly outer?: Names, private readonly declared?: Setup) {}

  static inventories(model: Model): Map<string, Items> {
    return new Map([...model.visible].map(([name, i]) => [name, itemsOf(i)]));
  }

  static inside(inventory: Inventory, all: ReadonlyMap<string, Items>): Names {
    const names = new Names(all);
    for (const t of inventory.things.values()) names.things.set(t.id, itemOf(t));
    return names;
  }

  /** What is asked for is looked up then, since most who ask want a few of many. */
  static setup(setup: Setup, all: ReadonlyMap<string, Items>): Names { return new Names(all, undefined, setup); }

  /** For what a variant adds. */
  within(): Names { return new Names(this.inventories, this); }

  private kept(map: Map<string, Bearer>, name: string, make: () => Bearer | undefined): Bearer | undefined {
    const known = map.get(name);
    if (known) return known;
    const made = make();
    if (made) map.set(name, made);
    return made;
  }

  add(named: Bearer): Bearer {
    const map = named.kind === 'beam' ? this.beams : named.kind === 'let' ? this.lets : this.things;
    map.set(named.name, named);
    return named;
  }

  thing(name: string): Bearer | undefined {
    return this.kept(this.things, name, () => { const t = this.declared?.things.get(name); return t && { kind: 'thing', name: t.id, at: t.at, of: t.kind }; }) ?? this.outer?.thing(name);
  }
  beam(name: string): Bearer | undefined {
    return this.kept(this.beams, name, () => { const b = this.declared?.beams.get(name); return b && { kind: 'beam', name: b.id, at: b.at }; }) ?? this.outer?.beam(name);
  }
  letNamed(name: string): Bearer | undefined {
    return this.kept(this.lets, name, () => { const l = this.declared?.lets.get(name); return l && { kind: 'let', name: l.name, at: l.at }; }) ?? this.outer?.letNamed(name);
  }
  variant(name: string): Bearer | undefined {
    return this.kept(this.variants, name, () => {
      const v = this.declared?.variants.find(d => d.name === name);
      const at = v && textAt(v.node.line.subject);
      return v && at && { kind: 'variant', name, at: within(v.at, at) };
    }) ?? this.outer?.variant(name);
  }
  inventory(name: string): Items | undefined { return this.inventories.get(name); }
  /** The only item of that name in all inventories. */
  itemCalled(name: string): Bearer | undefined {
    const found = [...this.inventories.values()].flatMap(i => i.items.get(name) ?? []);
    return found.length === 1 ? found[0] : undefined;
  }

  /** A beam that makes an arm of its own name at a thing: one that meets it twice makes a `reference` and an `object`. */
  armAt(thing: string, beam: string): Bearer | undefined {
    const times = this.declared?.beams.get(beam)?.legs.filter(({ target }) => target?.id === thing).length ?? 0;
    if (times === 0) return this.outer?.armAt(thing, beam);
    return times === 1 ? this.beam(beam) : undefined;
  }
}

/** Where what a text says stands: inside its quotes, or that of one that needs none; undefined of anything else, and of one that does not end. */
export function textAt(e: Expr | undefined): Span | undefined {
  if (e?.kind !== 'string') return e && wordsOf(e) !== undefined ? { start: e.start, end: e.end } : undefined;
  return e.end - e.start === e.value.length + 2 ? { start: e.start + 1, end: e.end - 1 } : undefined;
}

/** True where a statement is the one that declares what is named. */
export const declaredBy = (named: Bearer, node: Node, uri: string): boolean => named.at.uri === uri && named.at.line === node.at;

const itemOf = (t: Thing): Bearer => ({ kind: 'item', name: t.id, at: t.at, of: t.kind });
const itemsOf = (i: Inventory): Items => ({ named: { kind: 'inventory', name: i.name, at: i.at }, items: new Map([...i.things.values()].map(t => [t.id, itemOf(t)])) });
