/** What a view of a setup is: how each line of the table in `views.ts` is made. */
import type { Place } from '../model/place.ts';
import type { Results } from '../results/plan.ts';
import type { Sheet } from './marks.ts';
import type { Probe } from './probe.ts';

/** Something in a picture that stands in the text. */
export interface Item {
  /** that of `data-item` of its marks */
  readonly id: string;
  /** for whoever does not see it: `mirror M1 at (1100, 100) mm` */
  readonly words: string;
  readonly written: Place;
  /** where the middle of a thing is in the sheet, mm */
  readonly x?: number;
  readonly y?: number;
}

export interface Drawn {
  readonly sheet: Sheet;
  readonly items?: readonly Item[];
  readonly probe?: Probe;
  /** the plate that it is of */
  readonly plate?: string;
  /** what else it could be of, where that is more than a plate: `P1 under bench` */
  readonly choices?: readonly string[];
}

/** What of a setup is looked at, and from where. */
export interface Look {
  /** the plate, where a view is of one, or `P1 under bench`, where it is under one of several lamps; the first of those that have it by default */
  readonly plate?: string;
  /** from which point of the plate, as shares of half its width and height: to the right and up for somebody who looks through it at the object; the middle by default */
  readonly from?: readonly [number, number];
}

export interface View {
  readonly name: string;
  /** what it shows: `the table from above` */
  readonly words: string;
  /** its unit is a millimetre of the table from above, so that things can be dragged in it */
  readonly drags?: boolean;
  /** How it is drawn, or a sentence that says why it cannot be. What takes time is left to the drawing. */
  readonly of: (r: Results, look: Look) => (() => Drawn) | string;
}

/** The first of the plates, or the one that is asked for, that `why` says nothing against; else what it says of the first. */
export function plateFor<P extends { readonly id: string }>(plates: readonly P[], look: Look, why: (plate: P) => string | undefined): P | string {
  if (plates.length === 0) return 'No light reaches a plate.';
  const asked = plates.filter(p => p.id === look.plate);
  const among = asked.length > 0 ? asked : plates;
  return among.find(p => why(p) === undefined) ?? why(among[0]!)!;
}
