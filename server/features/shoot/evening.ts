/** What the panel is given that goes through a shot with somebody: cautions, what is ticked off, and the times to wait. Nothing is computed here. */
import type { Results } from '../../results/plan.ts';
import type { Step } from '../blocks/blocks.ts';
import { eyes } from '../blocks/cautions.ts';
import { openings, type Opening } from './openings.ts';
import { awayStep, beforeSteps, darkSteps, handsOffStep, platesOf, timeOf, type Time } from './steps.ts';

export interface Evening {
  readonly setup: string;
  /** of the entry that it leads to */
  readonly shot: string;
  readonly cautions: readonly string[];
  /** ticked off while it is light, in the dark, and when the table has settled */
  readonly before: readonly Step[];
  readonly dark: readonly Step[];
  readonly handsOff: string;
  readonly away: string;
  readonly settle: Time;
  /** in their order; the plates rest before each */
  readonly openings: readonly Opening[];
  /** what is not as it should be with the shots on the page, sentences */
  readonly notes: readonly string[];
}

/** Undefined of a setup that has no plate. */
export function eveningOf(r: Results, shot: string, notes: readonly string[]): Evening | undefined {
  if (platesOf(r).length === 0) return undefined;
  return {
    setup: r.setup.name, shot, cautions: (eyes(r)?.blocks ?? []).flatMap(b => (b.kind === 'caution' ? [b.text] : [])),
    before: beforeSteps(r), dark: darkSteps(r), handsOff: handsOffStep(r).text, away: awayStep.text, settle: timeOf(r, 'settle'), openings: openings(r), notes,
  };
}
