/** One picture of what a change does on the table: as it is, over a ghost of how it was. */
import type { SetupReview } from '../../review/review.ts';
import { drawingOf, titleOf, type Drawing } from '../drawing.ts';
import { planItemsOf } from '../items.ts';
import type { Drawn, Item } from '../view.ts';
import { BEFORE } from './ghosts.ts';
import { overPlan } from './plan.ts';

/**
 * How it is drawn, or a sentence that says why it cannot be, as of a view. Items of the setup before have ids such as `before:M3`, and stand in its text.
 * @param letters so many times as high as usual: for a picture that is shown small
 */
export function overlaidOf(s: SetupReview, letters = 1): (() => Drawn) | string {
  const { before, after } = s;
  const stands = (r: SetupReview['after']): boolean => r !== undefined && r.table.look.things.size > 0;
  if (stands(after) || stands(before)) return () => planned(s, letters);
  return `Nothing in “${titleOf((after ?? before)!)}” has a place, so that there is nothing to draw.`;
}

function planned(s: SetupReview, letters: number): Drawn {
  const [before, after] = [s.before && drawingOf(s.before), s.after && drawingOf(s.after)];
  const sheet = overPlan(s, before, after, letters);
  return { sheet, items: [...(after ? planItemsOf(after) : []), ...(before ? ghostItems(before) : [])] };
}

const ghostItems = (d: Drawing): Item[] => planItemsOf(d).map(i => ({ ...i, id: BEFORE + i.id, words: `before: ${i.words}` }));
