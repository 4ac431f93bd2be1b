/** Where a name is used: in its own page, and for what an inventory holds in the pages that use it. */
import type { Snapshot } from '../analysis.ts';
import type { Mention } from '../model/mentions/words.ts';
import { keyOf, type Bearer } from '../model/mentions/names.ts';
import { mentionsOf } from '../model/mentions/mentions.ts';
import { placeIn, type Place } from '../model/place.ts';
import { covers } from './cursor.ts';

/** A name at its place. */
export interface Use {
  readonly named: Bearer;
  readonly at: Place;
  /** it is declared here */
  readonly declares: boolean;
}

/** All names of a page, where they are declared and where they are used. */
export const usesIn = (snapshot: Snapshot): Use[] => mentionsOf(snapshot.tree, snapshot.model).flatMap(m => useOf(snapshot, m) ?? []);

/** The name at a cursor. */
export const useAt = (snapshot: Snapshot, line: number, character: number): Use | undefined => usesIn(snapshot).find(u => u.at.line === line && covers(u.at, character));

/** All places of the name at a cursor in its page. */
export function highlightsAt(snapshot: Snapshot, line: number, character: number): Use[] {
  const uses = usesIn(snapshot);
  const here = uses.find(u => u.at.line === line && covers(u.at, character));
  return here ? uses.filter(u => keyOf(u.named) === keyOf(here.named)) : [];
}

/** All places of what is named in some pages. */
export const usesOf = (named: Bearer, pages: Iterable<Snapshot>): Use[] => [...pages].flatMap(p => usesIn(p).filter(u => keyOf(u.named) === keyOf(named)));

/** True for what other pages may name. */
export const isShared = ({ kind }: Bearer): boolean => kind === 'item' || kind === 'inventory';

const useOf = ({ uri }: Snapshot, m: Mention): Use | undefined => m.named && { named: m.named, at: placeIn(uri, m.node, m), declares: m.declares === true };
