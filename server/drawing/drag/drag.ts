/** A drag in a picture: it becomes an edit of the text, which is tried on a copy like any other. Nothing is moved in the picture alone. */
import { analyse, type Library, type Snapshot } from '../../analysis.ts';
import { applyEdits, type Edit } from '../../model/edits.ts';
import type { Results } from '../../results/plan.ts';
import { variantsOf } from '../../results/variants.ts';
import type { Point } from '../marks.ts';
import { chosen, type Wanted } from '../picture.ts';
import { viewNamed } from '../views.ts';
import { handlesOf } from './handles.ts';

export interface Drag {
  /** the thing that is dragged, by its name */
  readonly item: string;
  readonly gesture: 'move' | 'turn';
  /** where the pointer is, m on the table: x to the right, y away */
  readonly to: Point;
  /** a key did it: `to` is no place, but so many steps to the right and away, or of a turn counterclockwise */
  readonly stepped?: boolean;
  /** the modifier is held: no snapping to holes or whole degrees */
  readonly free: boolean;
  /** it was let go: what is written then must leave no error that was not there */
  readonly dropped: boolean;
}

export type Dragged =
  | { readonly edits: readonly Edit[]; readonly after: Snapshot; readonly results: Results }
  /** why not, in words that begin with the name of the thing */
  | { readonly refused: string };

/** @param library reads the files that the page uses, as for the page itself */
export function dragged(snapshot: Snapshot, wanted: Wanted, drag: Drag, library: Library): Dragged {
  // What is a millimetre of another view is none of the table.
  if (wanted.view !== undefined && !viewNamed(wanted.view)?.drags) return { refused: 'Things are moved on the table from above only.' };
  const base = chosen(snapshot.results, wanted);
  const r = base && asWanted(base, wanted);
  const thing = r?.setup.things.get(drag.item);
  if (!r || !thing) return { refused: `${drag.item} is not on the page any more.` };
  const handles = handlesOf(thing, r, snapshot.uri, r === base ? undefined : base);
  const way = drag.gesture === 'move' ? handles.move : handles.turn;
  const edits = way?.[drag.stepped ? 'steps' : 'edits'](drag.to, drag.free);
  if (!edits) return { refused: `${thing.id} ${(drag.gesture === 'move' ? handles.stays : handles.keeps)!}.` };
  if (!(Math.hypot(...drag.to) < FAR)) return { refused: `${thing.id} cannot go that far.` };
  if (edits.length === 0) return { refused: `${thing.id} goes along its beam only, and that key points across it.` };
  const after = analyse(snapshot.uri, applyEdits(snapshot.text, edits), library);
  const now = chosen(after.results, wanted);
  const results = now && asWanted(now, wanted);
  if (!results) return { refused: `${thing.id} cannot stand there.` };
  if (!drag.dropped) return { edits, after, results };
  const errors = (s: Snapshot): number => s.findings.filter(f => f.severity === 'error').length;
  if (errors(after) > errors(snapshot)) return { refused: `${thing.id} cannot stand there: ${after.findings.find(f => f.severity === 'error')?.message ?? 'the page could not be read any more'}` };
  return { edits, after, results };
}

/** No table is longer, m. */
const FAR = 100;

const asWanted = (base: Results, { variant }: Wanted): Results => variantsOf(base).find(v => v.variant.name === variant)?.results ?? base;
