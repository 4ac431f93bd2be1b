/** What became of a reading, as plain data, and how it compares with the plan. */
import { millimetres } from '../../model/show.ts';
import type { Dim } from '../../model/units.ts';

/** What became of a reading, in one word and in words. */
export interface Verdict {
  readonly fate: 'counts' | 'averaged' | 'less sure' | 'older' | 'stale' | 'useless' | 'unclear';
  /** name of the result that it corrects, or would */
  readonly of?: string;
  /** `corrects the leg S1 → M1` */
  readonly words: string;
  /** what the reading says after what is known of its instrument, m */
  readonly length?: number;
  /** the string is known to stretch, which makes that length of what was read */
  readonly stretched?: true;
  /** of light and the like, what the reading says after what is known of the meter and of how it was held, in SI */
  readonly tells?: { readonly value: number; readonly dim: Dim };
  /** as planned, in SI */
  readonly planned?: number;
  /** what of light is made of it, in words */
  readonly made?: string;
}

/** `4 mm more than planned (820 mm)` */
export function besidePlan(more: number, planned: number): string {
  return Math.abs(more) < 5e-5 ? `as planned (${millimetres(planned)})` : `${millimetres(Math.abs(more))} ${more > 0 ? 'more' : 'less'} than planned (${millimetres(planned)})`;
}
