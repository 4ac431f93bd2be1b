/** What is drawn on the sheet of a plan besides the setup, to its scale. */
import type { Box, Mark, Point } from '../marks.ts';

/** A name with lines of what is said below it, or only these; its own box is what it stands beside, mm of the sheet. */
export interface Named {
  /** that of `data-item` of its marks */
  readonly item: string;
  readonly name?: string;
  readonly notes?: readonly string[];
  readonly own: Box;
}

export interface Also {
  /** so many times as high as usual are all letters: for a picture that is shown small */
  readonly letters: number;
  /** what the sheet has room for besides the setup, mm of the sheet */
  readonly points: readonly Point[];
  /** on the table, below all light and things */
  readonly below: readonly Mark[];
  /** above them, and below the names */
  readonly above: readonly Mark[];
  /** lines of what is said below the name of a thing */
  readonly notes: ReadonlyMap<string, readonly string[]>;
  readonly named: readonly Named[];
  /** what names keep off */
  readonly boxes: readonly Box[];
  readonly lines: readonly (readonly [Point, Point])[];
  /** rows of the legend: what a mark means; it is drawn from a point, 48 mm to the right and half a letter up and down */
  readonly samples: readonly { readonly words: string; readonly drawn: (at: Point, letter: number) => readonly Mark[] }[];
  /** sentences below the legend */
  readonly told: readonly string[];
}

export const NOTHING_ELSE: Also = { letters: 1, points: [], below: [], above: [], notes: new Map(), named: [], boxes: [], lines: [], samples: [], told: [] };
