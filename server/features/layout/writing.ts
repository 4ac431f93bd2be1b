/** A layout as text: each thing's line gets its place; the rest of the page stays as it is. */
import type { Edit } from '../../model/edits.ts';
import type { Thing } from '../../model/model.ts';
import { within } from '../../model/place.ts';
import type { Ways } from '../../results/layout/ways.ts';
import type { Places } from '../../results/layout/worth.ts';

/** From the thing before to what stands in a leg, mm, and from one of these to the next. */
const FIRST = 80;
const NEXT = 100;

/** What is written behind the name of each thing. */
export function placements({ pieces, stretches, seen }: Ways, places: Places): Map<Thing, string> {
  const all = new Map<Thing, string>();
  pieces.forEach(({ thing, stand }, i) => {
    const [x, y] = places[i]!;
    const facing = seen.find(s => s.plate === i);
    all.set(thing, `at (${x}, ${y}) mm${stand.kind === 'laser' ? ' heading 0°' : facing ? ` facing ${pieces[facing.object]!.thing.id}` : ''}`);
  });
  for (const s of stretches) s.within.forEach((thing, k) => { if (!all.has(thing)) all.set(thing, `on ${pieces[s.from]!.thing.id} -> ${pieces[s.to]!.thing.id} by ${FIRST + k * NEXT} mm`); });
  return all;
}

export function layoutEdits(placed: ReadonlyMap<Thing, string>): Edit[] {
  return [...placed].map(([thing, words]) => {
    const { line } = thing.node;
    // Behind the name, or the item of the inventory that it is; before its facts or a note.
    const end = line.equals?.end ?? line.subject?.end ?? thing.at.end;
    return { at: within(thing.at, { start: end, end }), newText: ` ${words}` };
  });
}
