/** What everything about light is worked out from. */
import type { Measured, Problem, Reading } from '../../model/model.ts';
import type { Polarization } from '../polarization/polarization.ts';
import type { Corrections } from '../readings/offsets.ts';
import type { Factors } from './factors.ts';
import type { Fates } from './fates.ts';
import type { Making } from '../making.ts';

/** A reading of light. */
export type LightReading = Reading & { readonly measured: Measured & { readonly kind: 'light' } };
export const isLight = (r: Reading): r is LightReading => r.measured?.kind === 'light';

export interface LightContext extends Making {
  /** those that still hold: nothing that they rest on was moved since */
  readonly readings: readonly Reading[];
  readonly polarization: Polarization;
  readonly factors: Factors;
  readonly offsets: Corrections;
  /** what became of each reading */
  readonly fates: Fates;
  /** a slip among the readings, put into words by its check */
  readonly report: (code: string, reading: Reading, subject: string, data: Problem['data']) => void;
}
