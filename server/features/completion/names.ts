/** Names that can be written at a place: things, items of inventories, beams, and names for what is new. */
import type { Inventory, Thing } from '../../model/model.ts';
import type { Kind } from '../../model/things/kind.ts';
import type { Cursor } from './cursor.ts';
import type { Offer } from './item.ts';

/** A thing, offered by its name. */
export const thingOffer = (t: Thing, c: Cursor, detail = t.kind.article): Offer =>
  ({ label: t.id, kind: 'thing', detail, text: t.id, about: { of: 'thing', setup: c.r!.setup.node.at, name: t.id } });

/** Items of the inventories that can be used here. Inside of an inventory, what is in it has its plain name. */
export function itemNames(c: Cursor, fits: (item: Thing) => boolean, detail: (item: Thing, inventory: Inventory) => string = i => i.kind.article): Offer[] {
  const own = c.block.in === 'inventory' ? c.block.node : c.block.in === 'facts' && !c.r ? c.block.node.parent : undefined;
  return [...c.snapshot.model.visible.values()].flatMap(inventory => {
    const here = inventory.at.line === own?.at && inventory.at.uri === c.snapshot.uri;
    return [...inventory.things.values()].filter(i => fits(i) && !(i.at.uri === c.snapshot.uri && i.at.line === c.line)).map((i): Offer => {
      const name = here ? i.id : `${inventory.name}.${i.id}`;
      return { label: name, kind: 'item', detail: detail(i, inventory), text: name, about: { of: 'item', name: `${inventory.name}.${i.id}` } };
    });
  });
}

/** What is written about an item, in short: `632.8 nm, 12 mW ± 10%`. */
export const factsInShort = (item: Thing): string =>
  [...item.facts.values()].filter(f => f.fact.type.type !== 'text').slice(0, 3).map(f => { const { text, comment } = f.node.line; return text.slice(f.node.line.value!.start, comment?.start).trim(); }).join(', ') || item.kind.article;

/** Things that light can meet. */
export const meets = (t: Thing): boolean => t.kind.light !== 'source' && t.kind.light !== 'none';

/** A name for a new thing that nothing has yet: one more than those of its kind, else as such things are called. Empty where it needs none. */
export function freeName(kind: Kind, taken: ReadonlySet<string>, alike: readonly string[]): string {
  const before = alike.findLast(n => /\d$/.test(n));
  const initials = kind.word.split(/[ -]/).map(w => w[0]!.toUpperCase()).join('');
  if (before === undefined && kind.called !== undefined && !taken.has(kind.called === '' ? kind.word : kind.called)) return kind.called;
  const last = before ?? kind.called ?? '';
  const number = /(?<!\d)\d+$/.exec(last)?.[0];
  const stem = number === undefined ? initials : last.slice(0, -number.length);
  for (let n = Number(number ?? 0) + 1; ; n++) if (!taken.has(`${stem}${n}`)) return `${stem}${n}`;
}

/** All names that a setup or an inventory has given. */
export function takenNames(c: Cursor): Set<string> {
  const { block, r, snapshot } = c;
  if (r) return new Set([...r.setup.things.keys(), ...r.setup.beams.keys(), ...r.setup.lets.keys(), ...c.things.map(t => t.id)]);
  const inventory = block.in === 'inventory' ? snapshot.model.inventories.find(i => i.at.line === block.node.at) : undefined;
  return new Set(inventory?.things.keys());
}
