/** What the parts of a setup's results are made from, in one piece: each takes what it needs of it. */
import type { Arms } from '../model/arms.ts';
import type { Setup } from '../model/model.ts';
import type { Beams } from './beams/beams.ts';
import type { Cell, Graph } from './graph.ts';
import type { LegCells } from './legs/leg-cells.ts';
import type { PlateResults } from './paths/pairs.ts';
import type { Places } from './places/places.ts';
import type { Values } from './values.ts';

export interface Making {
  readonly setup: Setup;
  readonly graph: Graph;
  readonly values: Values;
  readonly places: Places;
  readonly arms: Arms;
  readonly legs: LegCells;
  readonly beams: Beams;
  readonly plates: readonly PlateResults[];
  /** results that are shown without being asked for: whoever makes one adds it */
  readonly published: Cell[];
  /** adds a short name */
  readonly alias: (alias: string, cell: Cell) => void;
}
