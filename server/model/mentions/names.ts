/** What can be named in a file, and which of it a name means where it stands. */
import type { Node } from '../../../grammar/tree.ts';
import type { Beam, Inventory, Model, Place, Setup, Thing } from '../model.ts';
import type { Kind } from '../things/kind.ts';

/** What bears a name: something that the text declares and calls by it. */
export interface Bearer {
  readonly kind: 'thing' | 'beam' | 'let' | 'inventory' | 'item';
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
  /** which beams a thing ends or passes, by how many legs lead there */
  private readonly meetings = new Map<string, Map<string, number>>();

  /** A variant sees the names of its setup. */
  constructor(private readonly inventories: ReadonlyMap<string, Items>, private readonly outer?: Names) {}

  static inventories(model: Model): Map<string, Items> {
    return new Map([...model.visible].map(([name, i]) => [name, itemsOf(i)]));
  }

  static inside(inventory: Inventory, all: ReadonlyMap<string, Items>): Names {
    const names = new Names(all);
    for (const t of inventory.things.values()) names.things.set(t.id, itemOf(t));
    return names;
  }

  static setup(setup: Setup, all: ReadonlyMap<string, Items>): Names {
    const names = new Names(all);
    for (const t of setup.things.values()) names.things.set(t.id, { kind: 'thing', name: t.id, at: t.at, of: t.kind });
    for (const b of setup.beams.values()) names.addBeam(b);
    for (const l of setup.lets.values()) names.lets.set(l.name, { kind: 'let', name: l.name, at: l.at });
    return names;
  }

  /** For what a variant adds. */
  within(): Names { return new Names(this.inventories, this); }

  private addBeam(b: Beam): void {
    this.beams.set(b.id, { kind: 'beam', name: b.id, at: b.at });
    const met = new Map<string, number>();
    for (const { target } of b.legs) if (target) met.set(target.id, (met.get(target.id) ?? 0) + 1);
    this.meetings.set(b.id, met);
  }

  add(named: Bearer): Bearer {
    const map = named.kind === 'beam' ? this.beams : named.kind === 'let' ? this.lets : this.things;
    map.set(named.name, named);
    return named;
  }

  thing(name: string): Bearer | undefined { return this.things.get(name) ?? this.outer?.thing(name); }
  beam(name: string): Bearer | undefined { return this.beams.get(name) ?? this.outer?.beam(name); }
  letNamed(name: string): Bearer | undefined { return this.lets.get(name) ?? this.outer?.letNamed(name); }
  inventory(name: string): Items | undefined { return this.inventories.get(name); }
  /** The only item of that name in all inventories. */
  itemCalled(name: string): Bearer | undefined {
    const found = [...this.inventories.values()].flatMap(i => i.items.get(name) ?? []);
    return found.length === 1 ? found[0] : undefined;
  }

  /** A beam that makes an arm of its own name at a thing: one that meets it twice makes a `reference` and an `object`. */
  armAt(thing: string, beam: string): Bearer | undefined {
    const times = this.meetings.get(beam)?.get(thing);
    if (times === undefined) return this.outer?.armAt(thing, beam);
    return times === 1 ? this.beam(beam) : undefined;
  }
}

/** True where a statement is the one that declares what is named. */
export const declaredBy = (named: Bearer, node: Node, uri: string): boolean => named.at.uri === uri && named.at.line === node.at;

const itemOf = (t: Thing): Bearer => ({ kind: 'item', name: t.id, at: t.at, of: t.kind });
const itemsOf = (i: Inventory): Items => ({ named: { kind: 'inventory', name: i.name, at: i.at }, items: new Map([...i.things.values()].map(t => [t.id, itemOf(t)])) });
