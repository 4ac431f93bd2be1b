/** What the looks at a table need. */
import type { Thing } from '../../model/model.ts';
import type { Cell } from '../graph.ts';
import type { Making } from '../making.ts';

export interface TableContext extends Making {
  /** share that a splitter reflects, where that is written, read or worked out */
  reflects(splitter: Thing): Cell | undefined;
  /** an angle of incidence of 0, for what light meets squarely */
  squarely(): Cell;
}
