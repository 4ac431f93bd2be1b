/** Facts of one thing that are written in several places: in its item, by itself, in a variant. */
import type { BoundFact } from './model.ts';
import type { Kind } from './things/kind.ts';

/** The facts that hold where `nearer` is written over `base`: its own, and those of the base that it neither replaces nor says in another way. */
export function over(kind: Kind, base: ReadonlyMap<string, BoundFact>, nearer: ReadonlyMap<string, BoundFact>): Map<string, BoundFact> {
  const gone = new Set(rivalsOf(kind, [...nearer.keys()]).filter(p => !nearer.has(p)));
  return new Map([...[...base].filter(([key]) => !gone.has(key)), ...nearer]);
}

/** What says the same as one of these phrases, themselves with it. */
export const rivalsOf = (kind: Kind, phrases: readonly string[]): string[] => (kind.rivals ?? []).filter(r => r.some(p => phrases.includes(p))).flat();
