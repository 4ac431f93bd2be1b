/** What everything about light is worked out from. */
import type { Arms } from '../../model/arms.ts';
import type { Measured, Problem, Reading, Setup } from '../../model/model.ts';
import type { Beams } from '../beams/beams.ts';
import type { Cell, Graph } from '../graph.ts';
import type { LegCells } from '../legs/leg-cells.ts';
import type { PlateResults } from '../paths/pairs.ts';
import type { Places } from '../places/places.ts';
import type { Polarization } from '../polarization/polarization.ts';
import type { Corrections } from '../readings/offsets.ts';
import type { Values } from '../values.ts';
import type { Factors } from './factors.ts';
import type { Fates } from './fates.ts';

/** A reading of light. */
export type LightReading = Reading & { readonly measured: Measured & { readonly kind: 'light' } };
export const isLight = (r: Reading): r is LightReading => r.measured?.kind === 'light';

export interface LightContext {
  readonly setup: Setup;
  /** those that still hold: nothing that they rest on was moved since */
  readonly readings: readonly Reading[];
  readonly graph: Graph;
  readonly values: Values;
  readonly arms: Arms;
  readonly beams: Beams;
  readonly places: Places;
  readonly legs: LegCells;
  readonly plates: readonly PlateResults[];
  readonly published: Cell[];
  readonly polarization: Polarization;
  readonly factors: Factors;
  readonly offsets: Corrections;
  /** adds a short name */
  readonly alias: (alias: string, cell: Cell) => void;
  /** what became of each reading */
  readonly fates: Fates;
  /** a slip among the readings, put into words by its check */
  readonly report: (code: string, reading: Reading, subject: string, data: Problem['data']) => void;
}
