/** One picture of what a change does on the table: as it is, over a ghost of how it was. */
import type { SetupReview } from '../../review/review.ts';
import { drawingOf, titleOf } from '../drawing.ts';
import { armItemsOf, planItemsOf } from '../items.ts';
import { stripsOf } from '../unrolled/strips.ts';
import type { Mark, Sheet } from '../marks.ts';
import type { Drawn, Item } from '../view.ts';
import { overArms } from './arms.ts';
import { BEFORE } from './ghosts.ts';
import { overPlan } from './plan.ts';

/**
 * How it is drawn, or a sentence that says why it cannot be, as of a view. Items of the setup before have ids such as `before:M3`, and stand in its text.
 * @param letters so many times as high as usual: for a picture that is shown small
 */
export function overlaidOf(s: SetupReview, letters = 1): (() => Drawn) | string {
  const { before, after } = s;
  const stands = (r: SetupReview['after']): boolean => r !== undefined && r.table.look.things.size > 0;
  if (stands(after) || (!after && stands(before))) return () => planned(s, letters);
  const strips = [before ? stripsOf(before) : [], after ? stripsOf(after) : []] as const;
  // Names of arms stand beside them and take their room: they grow by less.
  if (strips.flat().length > 0) return () => drawn(overArms(s, strips[0], strips[1], Math.sqrt(letters)), armItemsOf(strips[1]), armItemsOf(strips[0]));
  if (stands(before)) return () => planned(s, letters);
  return `Nothing in “${titleOf((after ?? before)!)}” has a place, and no two arms of a plate have lengths on all of their legs, so that there is nothing to draw.`;
}

function planned(s: SetupReview, letters: number): Drawn {
  const [before, after] = [s.before && drawingOf(s.before), s.after && drawingOf(s.after)];
  return drawn(overPlan(s, before, after, letters), after ? planItemsOf(after) : [], before ? planItemsOf(before) : []);
}

/** What is as it was has no ghost, and is not told twice. */
function drawn(sheet: Sheet, items: readonly Item[], before: readonly Item[]): Drawn {
  const ids = new Set<string>();
  const collect = (m: Mark): void => { const id = m.attributes['data-item']; if (id !== undefined) ids.add(id); m.children.forEach(collect); };
  sheet.marks.forEach(collect);
  return { sheet, items: [...items, ...before.map(i => ({ ...i, id: BEFORE + i.id, words: `before: ${i.words}` })).filter(i => ids.has(i.id))] };
}
