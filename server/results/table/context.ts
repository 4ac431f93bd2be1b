/** What the looks at a table need. */
import type { Arms } from '../../model/arms.ts';
import type { Setup, Thing } from '../../model/model.ts';
import type { Beams } from '../beams/beams.ts';
import type { Cell, Graph } from '../graph.ts';
import type { LegCells } from '../legs/leg-cells.ts';
import type { Places } from '../places/places.ts';
import type { Values } from '../values.ts';

export interface TableContext {
  readonly setup: Setup;
  readonly graph: Graph;
  readonly values: Values;
  readonly places: Places;
  readonly beams: Beams;
  readonly arms: Arms;
  readonly legs: LegCells;
  /** share that a splitter reflects, where that is written, read or worked out */
  reflects(splitter: Thing): Cell | undefined;
  /** an angle of incidence of 0, for what light meets squarely */
  squarely(): Cell;
}
