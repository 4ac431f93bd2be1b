/** The pictures on a bench card: the table from above, to scale, or where nothing has a place, the arms unrolled; and the finished hologram as it hangs. */
import type { Results } from '../results/plan.ts';
import { drawingOf, titleOf } from './drawing.ts';
import { hungSheets } from './hung/view.ts';
import { amongOthers, type Sheet } from './marks.ts';
import { NOTHING_ELSE } from './plan/also.ts';
import { planOf } from './plan/plan.ts';
import { PALETTES } from './style.ts';
import { inkedSvg } from './svg.ts';
import { stripsOf } from './unrolled/strips.ts';
import { NOTHING_ELSE as NO_ARMS_ELSE, unrolledOf } from './unrolled/unrolled.ts';

/** Letters on paper an arm's length away, beside those on a screen. */
const [LARGER, ARMS_LARGER] = [1.6, 1.25];

/** What is drawn on a card: the plan, where it can be drawn, and the finished hologram as it hangs, by the name of its lamp. */
export interface OnCard<T> { readonly plan?: T; readonly hung: ReadonlyMap<string, T> }

export function cardSheets(r: Results): OnCard<Sheet> {
  const plan = planSheet(r);
  return { ...(plan ? { plan } : {}), hung: new Map(hungSheets(r)) };
}

function planSheet(r: Results): Sheet | undefined {
  const drawing = drawingOf(r);
  if (drawing) return planOf(drawing, { ...NOTHING_ELSE, letters: LARGER });
  const strips = stripsOf(r);
  return strips.length === 0 ? undefined : unrolledOf(titleOf(r), strips, { ...NO_ARMS_ELSE, letters: ARMS_LARGER });
}

/** As SVG in the colours of paper, to stand on a page with others; see `amongOthers`. */
export function cardPictures(r: Results, mark: string): OnCard<{ readonly svg: string; readonly wide: boolean }> {
  const { plan, hung } = cardSheets(r);
  const svg = (sheet: Sheet, own: string): { readonly svg: string; readonly wide: boolean } => ({ svg: inkedSvg(amongOthers(sheet, own), PALETTES.light), wide: isWide(sheet) });
  return { ...(plan ? { plan: svg(plan, mark) } : {}), hung: new Map([...hung].map(([lamp, sheet], i) => [lamp, svg(sheet, `${mark}hung-${i + 1}-`)])) };
}

/** Much wider than high. */
export const isWide = ({ box }: Sheet): boolean => box.w > 1.8 * box.h;
