/** What everything about light is worked out from. */
import type { Arms } from '../../model/arms.ts';
import type { Problem, Reading, Setup } from '../../model/model.ts';
import type { Cell, Graph } from '../graph.ts';
import type { LegCells } from '../leg-cells.ts';
import type { PlateResults } from '../pairs.ts';
import type { Values } from '../values.ts';

export interface LightContext {
  readonly setup: Setup;
  readonly graph: Graph;
  readonly values: Values;
  readonly arms: Arms;
  readonly legs: LegCells;
  readonly plates: readonly PlateResults[];
  readonly published: Cell[];
  /** adds a short name */
  readonly alias: (alias: string, cell: Cell) => void;
  /** a slip among the readings, put into words by its check */
  readonly report: (code: string, reading: Reading, subject: string, data: Problem['data']) => void;
}

/** The newest of some readings of one thing: the latest date, then the last in the text. One without a date counts as older. */
export function newest(readings: readonly Reading[]): Reading | undefined {
  return readings.reduce<Reading | undefined>((best, r) => (!best || (r.on ?? '') >= (best.on ?? '') ? r : best), undefined);
}
