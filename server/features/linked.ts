/** Places of a name that change together while it is typed: all of its page, where no other page can name it. */
import type { Snapshot } from '../analysis.ts';
import type { Place } from '../model/model.ts';
import { highlightsAt, isShared } from './references.ts';
import { renamable } from './rename.ts';

/** Empty where there is nothing to be linked: a name that stands once, that cannot be changed, that other pages may use too, of which a rename takes care, or that may have blanks in it, at which editors end. */
export function linkedAt(snapshot: Snapshot, line: number, character: number): Place[] {
  const found = renamable(snapshot, line, character, () => true);
  if ('refused' in found || isShared(found.named) || found.named.kind === 'variant') return [];
  const uses = highlightsAt(snapshot, line, character);
  return uses.length > 1 ? uses.map(u => u.at) : [];
}
