/** What of a picture stands in the text. */
import { legTold, type Drawing } from './drawing.ts';
import type { PlateStrips } from './unrolled/strips.ts';
import type { Item } from './view.ts';

export function itemsOf(d: Drawing): Item[] {
  return [
    ...d.things.map(t => ({ id: t.name, words: `${t.kind} ${t.name} at (${Math.round(t.at[0] * 1000)}, ${Math.round(t.at[1] * 1000)}) mm`, written: t.written })),
    ...d.legs.map(l => ({ id: l.id, words: `leg ${legTold(l)}`, written: l.written })),
  ];
}

/** With where things have their middle on the table from above. */
export function planItemsOf(d: Drawing): Item[] {
  const middles = new Map(d.things.map(t => [t.name, { x: t.at[0] * 1000, y: -t.at[1] * 1000 }]));
  return itemsOf(d).map(i => ({ ...i, ...middles.get(i.id) }));
}

export const armItemsOf = (plates: readonly PlateStrips[]): Item[] =>
  plates.flatMap(p => p.strips.flatMap(s => s.legs.map(l => ({ id: l.id, words: `leg ${l.words}, ${l.text}, in ${s.name}`, written: l.written }))));
