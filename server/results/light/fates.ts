/** What became of each reading of light, of a wheel, a drift, an image, or of the dark. */
import type { Arms } from '../../model/arms.ts';
import { isLater } from '../../model/bind/dates.ts';
import type { Reading } from '../../model/model.ts';
import { POWER } from '../../model/units.ts';
import type { Cell } from '../graph.ts';

export type LightFate =
  /** `of`: the result that it makes or corrects, or of which it is a part; `says`: what it tells after all that is known of the meter and how it was held */
  | { readonly kind: 'counts'; readonly of: Cell; readonly says: Cell; readonly planned?: Cell; readonly part?: true }
  | { readonly kind: 'less sure'; readonly of: Cell; readonly says: Cell; readonly why: string }
  /** a newer one of the same counts */
  | { readonly kind: 'older'; readonly newest: Reading }
  | { readonly kind: 'useless'; readonly why: string };

export type Fates = Map<Reading, LightFate>;

/** The one of some readings of one thing that counts: the newest. That of the others is told. */
export function counting<T extends Reading>(readings: readonly T[], fates: Fates): T | undefined {
  const best = newest(readings) as T | undefined;
  for (const r of readings) if (best && r !== best && fates.get(r)?.kind !== 'counts') fates.set(r, { kind: 'older', newest: best });
  return best;
}

/** The newest of some readings of one thing: of the latest day, of one day the last in the text. One without a date counts as older. */
export function newest(readings: readonly Reading[]): Reading | undefined {
  return readings.reduce<Reading | undefined>((best, r) => (!best || !supersedes(best, r) ? r : best), undefined);
}
const supersedes = (a: Reading, b: Reading): boolean => a.on !== undefined && (b.on === undefined || isLater(a.on, b.on));

/** Why a reading of which nothing was made is of no use. `input`: what was read. */
export function untold({ measured: m, by }: Reading, input: Cell, { arms }: Arms): LightFate {
  const why = (): string => {
    switch (m?.kind) {
      case 'light': {
        const plate = m.at === undefined || m.at.kind.light === 'recorded';
        if (!plate) return input.dim === POWER ? `no beam ${m.arm} comes to ${m.at.id}` : 'on the way to a plate only a power tells something, read with the whole beam on the head';
        if (!arms.some(a => (a.name === m.arm || a.role === m.arm) && (!m.at || a.plate === m.at))) return `no beam ${m.arm} reaches ${m.at?.id ?? 'a plate'}`;
        if (m.through !== undefined) return `the light of ${m.arm} was not read without the polarizer`;
        return m.spot === 'centre' ? `it does not say at which plate it was read, or another reading of ${m.arm} there counts` : `the light of ${m.arm} was not read at the centre`;
      }
      case 'wheel': return `what ${m.splitter.id} reflects at the marks of its wheel is not written`;
      case 'dark': return `no reading${by ? ` of ${by.name}` : ''} rests on it`;
      default: return 'no result rests on it';
    }
  };
  return { kind: 'useless', why: why() };
}
