/** Readings that no longer hold: something on the way was moved on a later day. */
import { isLater } from '../../model/bind/dates.ts';
import type { Arms } from '../../model/arms.ts';
import type { Leg, Moved, Reading, Setup, Thing } from '../../model/model.ts';
import { legStart } from '../legs/legs.ts';

export interface Stale {
  readonly moved: Moved;
  readonly thing: Thing;
}

/** The last move that a reading has not seen. One without a date cannot be judged. `things` are those that it rests on. */
export function movedSince({ on }: Reading, things: readonly Thing[], { moved }: Pick<Setup, 'moved'>): Stale | undefined {
  if (on === undefined) return undefined;
  let last: Stale | undefined;
  for (const m of moved) {
    if (!isLater(m.on, on) || (last && isLater(last.moved.on, m.on))) continue;
    const thing = m.things.find(t => things.some(o => isOne(o, t)));
    if (thing) last = { moved: m, thing };
  }
  return last;
}

/** In a variant another copy of a thing stands for it. */
const isOne = (a: Thing, b: Thing): boolean => a === b || a.id === b.id || a.item === b;

/** The things along some legs, where they start among them. */
export const thingsAlong = (legs: readonly Leg[]): Thing[] => [...new Set(legs.flatMap(l => [legStart(l), l.target]).filter(t => t !== undefined))];

/** The things that a reading of light, of a wheel or of the legs as they are named rests on; paths of arms are told by the arms themselves. */
export function restsOn({ measured: m }: Reading, { arms }: Arms, { beams }: Pick<Setup, 'beams'>): readonly Thing[] {
  switch (m?.kind) {
    case 'legs': return m.things;
    case 'wheel': return [m.splitter];
    case 'light': {
      const named = arms.filter(a => (a.name === m.arm || a.beam.id === m.arm || a.path.some(l => l.beam.id === m.arm)));
      const among = named.length > 0 ? named : arms.filter(a => a.role === m.arm);
      const path = (among.find(a => a.plate === m.at) ?? among[0])?.path ?? beams.get(m.arm)?.legs ?? [];
      const end = path.findLastIndex(l => l.target === m.at);
      return thingsAlong(end < 0 ? path : path.slice(0, end + 1));
    }
    default: return [];
  }
}
