/** The picture on a bench card: the table from above, to scale; where nothing has a place, the arms unrolled. */
import type { Results } from '../results/plan.ts';
import { drawingOf, titleOf } from './drawing.ts';
import type { Mark, Sheet } from './marks.ts';
import { NOTHING_ELSE } from './plan/also.ts';
import { planOf } from './plan/plan.ts';
import { PALETTES } from './style.ts';
import { inkedSvg } from './svg.ts';
import { stripsOf } from './unrolled/strips.ts';
import { NOTHING_ELSE as NO_ARMS_ELSE, unrolledOf } from './unrolled/unrolled.ts';

/** Letters on paper an arm's length away, beside those on a screen. */
const [LARGER, ARMS_LARGER] = [1.6, 1.25];

/** Undefined where neither can be drawn. */
export function cardSheet(r: Results): Sheet | undefined {
  const drawing = drawingOf(r);
  if (drawing) return planOf(drawing, { ...NOTHING_ELSE, letters: LARGER });
  const strips = stripsOf(r);
  return strips.length === 0 ? undefined : unrolledOf(titleOf(r), strips, { ...NO_ARMS_ELSE, letters: ARMS_LARGER });
}

/** As SVG in the colours of paper. Several stand on one page: the names of its parts begin with `mark`, so that none takes those of another. */
export function cardSvg(r: Results, mark: string): { readonly svg: string; readonly wide: boolean } | undefined {
  const sheet = cardSheet(r);
  return sheet && { svg: inkedSvg({ ...sheet, marks: sheet.marks.map(m => renamed(m, mark)) }, PALETTES.light), wide: isWide(sheet) };
}

/** Much wider than high. */
export const isWide = ({ box }: Sheet): boolean => box.w > 1.8 * box.h;

function renamed(m: Mark, mark: string): Mark {
  const attributes = Object.fromEntries(Object.entries(m.attributes).map(([k, v]) => [k, k === 'id' ? `${mark}${v}` : v.replace(/^url\(#/, `url(#${mark}`)]));
  return { ...m, attributes, children: m.children.map(c => renamed(c, mark)) };
}
