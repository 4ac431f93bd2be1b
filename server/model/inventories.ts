/** The inventories that a setup may draw on. What is looked up in them is noted, so that it can be told whether it would be found again. */
import type { Inventory, Thing } from './model.ts';

export type ByName = ReadonlyMap<string, Inventory>;

/** Inventories as a setup sees them. Notes what is looked up in them. */
export class Inventories {
  private readonly found = new Map<string, readonly Thing[]>();
  private lately: Map<string, readonly Thing[]> | undefined;
  private every: string | undefined;
  private own: { readonly inventory: Inventory; readonly taken: boolean } | undefined;

  constructor(private readonly byName: ByName, private readonly reading: { readonly incomplete: boolean }) {}

  /** While an inventory is bound, its own items have both their names, unless another has taken its name. These are not noted. */
  adopt(inventory: Inventory): void { this.own = { inventory, taken: this.byName.has(inventory.name) }; }

  /** The item called `lab.red-12`. */
  item(name: string): Thing | undefined {
    const own = this.seenToo();
    if (own && name.startsWith(`${own.name}.`)) return own.things.get(name.slice(own.name.length + 1));
    return name.includes('.') ? this.note(name, called(this.byName, name))[0] : undefined;
  }
  /** All items called `red-12`. */
  called(name: string): readonly Thing[] { return this.note(name, called(this.byName, name)); }
  has(inventory: string): boolean { return this.seenToo()?.name === inventory || this.all().has(inventory); }
  /** names of all items */
  names(): string[] { return [...this.values()].flatMap(i => [...i.things.keys()].map(id => `${i.name}.${id}`)); }
  values(): readonly Inventory[] {
    const own = this.seenToo();
    return [...this.all().values(), ...(own ? [own] : [])];
  }

  /** All that was looked up so far. */
  get looked(): Looked { return { found: this.found, every: this.every, own: this.own && { name: this.own.inventory.name, taken: this.own.taken } }; }
  /** What is looked up while something is made. */
  during<T>(make: () => T): { made: T; looked: Looked } {
    const found = this.lately = new Map<string, readonly Thing[]>();
    return { made: make(), looked: { found, every: undefined, own: undefined } };
  }
  /** What was looked up is what would be found now; counts as looked up again. */
  holds({ found, every, own }: Looked): boolean {
    if (own && this.byName.has(own.name) !== own.taken) return false;
    for (const [name, things] of found) {
      const now = called(this.byName, name);
      if (now.length !== things.length || now.some((t, i) => t !== things[i])) return false;
    }
    if (every !== undefined && every !== this.everyNow()) return false;
    for (const [name, things] of found) this.note(name, things);
    return true;
  }

  private seenToo(): Inventory | undefined { return this.own?.taken === false ? this.own.inventory : undefined; }
  private note(name: string, things: readonly Thing[]): readonly Thing[] {
    this.found.set(name, things);
    this.lately?.set(name, things);
    return things;
  }
  private all(): ByName {
    this.every ??= this.everyNow();
    return this.byName;
  }
  private everyNow(): string {
    return `${this.reading.incomplete} ${[...this.byName.values()].map(i => `${i.name} ${[...i.things.values()].map(t => `${t.id} ${t.kind.word}`).join(' ')}`).join(', ')}`;
  }
}

/** Names with what they meant; the name of the inventory that was bound; and the names and kinds of all items, where they mattered: for a name that is nothing, the nearest is suggested. */
export interface Looked {
  readonly found: ReadonlyMap<string, readonly Thing[]>;
  readonly every: string | undefined;
  readonly own: { readonly name: string; readonly taken: boolean } | undefined;
}

function called(inventories: ByName, name: string): readonly Thing[] {
  const dot = name.indexOf('.');
  const among = dot < 0 ? [...inventories.values()] : [inventories.get(name.slice(0, dot))];
  const things: Thing[] = [];
  for (const inv of among) {
    const thing = inv?.things.get(name.slice(dot + 1));
    if (thing) things.push(thing);
  }
  return things;
}
