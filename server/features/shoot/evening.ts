/** What the panel is given that goes through a shot with somebody: cautions, what is ticked off, and the two times to wait. Nothing is computed here. */
import type { Results } from '../../results/plan.ts';
import type { Step } from '../blocks/blocks.ts';
import { eyes } from '../blocks/cautions.ts';
import { stripTimes } from '../report/light.ts';
import { allWords, awayStep, beforeSteps, closeStep, darkSteps, exposures, handsOffStep, openStep, platesOf, timeOf, type Time } from './steps.ts';

export interface Evening {
  readonly setup: string;
  /** of the entry that it leads to */
  readonly shot: string;
  readonly cautions: readonly string[];
  /** ticked off while it is light, in the dark, when the table has settled, and when the shutter is closed again */
  readonly before: readonly Step[];
  readonly dark: readonly Step[];
  readonly handsOff: string;
  readonly away: string;
  readonly close: string;
  readonly settle: Time;
  readonly exposure: Time;
  /** what the exposure comes to by the page, where that tells: `13 to 55 s`; and the times of a test strip, s */
  readonly byPage: string;
  readonly strip: readonly string[];
  /** what is not as it should be with the shots on the page, sentences */
  readonly notes: readonly string[];
}

/** Undefined of a setup that has no plate. */
export function eveningOf(r: Results, shot: string, notes: readonly string[]): Evening | undefined {
  if (platesOf(r).length === 0) return undefined;
  const [one, ...more] = exposures(r);
  const written = timeOf(r, 'exposure');
  // A figure that comes out is a proposal: whoever stands there says how long.
  const seconds = written.seconds ?? (one && more.length === 0 ? r.graph.value(one.cell) : undefined);
  return {
    setup: r.setup.name, shot, cautions: (eyes(r)?.blocks ?? []).flatMap(b => (b.kind === 'caution' ? [b.text] : [])),
    before: beforeSteps(r), dark: darkSteps(r), handsOff: handsOffStep(r).text, away: awayStep.text, close: closeStep(r).text, settle: timeOf(r, 'settle'),
    exposure: { text: openStep(r).text, ...(seconds === undefined ? {} : { seconds: written.seconds ?? Number(seconds.toPrecision(2)) }) },
    byPage: allWords(r), strip: one ? stripTimes(one.cell, r) : [], notes,
  };
}
