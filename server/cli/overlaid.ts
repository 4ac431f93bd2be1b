/** The plan with what was there before as a ghost, as SVG. Loaded when it is asked for: the other commands start without the pictures. */
import { overlaidOf } from '../drawing/overlaid/overlaid.ts';
import { amongOthers } from '../drawing/marks.ts';
import { svgOf } from '../drawing/svg.ts';
import type { SetupReview } from '../review/review.ts';

/** The picture; where there is none, a sentence that says why. `mark`: see `amongOthers`. */
export function overlaidSvg(s: SetupReview, mark = ''): string {
  const drawn = overlaidOf(s);
  return typeof drawn === 'string' ? drawn : svgOf(amongOthers(drawn().sheet, mark));
}
