/** Where the name at a cursor is declared: a thing of the setup, an item of an inventory, a value named by `let`, a file that is used. */
import type { Snapshot } from '../analysis.ts';
import type { Place } from '../model/model.ts';
import { fixed } from '../model/place.ts';
import { covers, letAt, referenceAt } from './cursor.ts';

export interface Definition {
  /** the name at the cursor */
  readonly from: Place;
  readonly to: Place;
}

export function definitionAt(snapshot: Snapshot, line: number, character: number): Definition | undefined {
  const reference = referenceAt(snapshot, line, character);
  if (reference) return { from: fixed(reference.at), to: fixed(reference.target) };
  const use = snapshot.model.uses.find(u => u.at.line === line && covers(u.at, character));
  if (use) return use.uri === '' ? undefined : { from: fixed(use.at), to: { uri: use.uri, line: 0, start: 0, end: 0 } };
  const named = letAt(snapshot, line, character);
  return named && { from: named.at, to: fixed(named.let.at) };
}
