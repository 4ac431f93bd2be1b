/** Where the name at a cursor is declared: a thing, a beam or a value of the setup, an inventory or an item of one, a file that is used. */
import type { Snapshot } from '../analysis.ts';
import type { Place } from '../model/model.ts';
import { fixed } from '../model/place.ts';
import { covers } from './cursor.ts';
import { useAt } from './references.ts';

export interface Definition {
  /** the name at the cursor */
  readonly from: Place;
  readonly to: Place;
}

/** A declaration leads to itself: editors show then where its name is used. */
export function definitionAt(snapshot: Snapshot, line: number, character: number): Definition | undefined {
  const name = useAt(snapshot, line, character);
  if (name) return { from: name.at, to: fixed(name.named.at) };
  const file = snapshot.model.uses.find(u => u.at.line === line && covers(u.at, character));
  return file === undefined || file.uri === '' ? undefined : { from: fixed(file.at), to: { uri: file.uri, line: 0, start: 0, end: 0 } };
}
