import { plain, show } from '../../model/show.ts';
import type { Problem } from '../../model/model.ts';
import { TIME } from '../../model/units.ts';
import { interval } from '../../results/sampling.ts';
import { num, text, type Check } from '../check.ts';

/** Longer than this hardly anything on a table holds still, s (common practice). */
export const LONG = 120;
const DAY = 86_400;
/** A shorter one no hand times, s (common practice). */
export const SHORT = 0.5;

export const exposureHardToTime: Check = {
  code: 'exposure-hard-to-time',
  severity: 'note',
  title: 'The exposure is too long for things to hold still, or too short for a hand to time',
  page: `**What you see.** Long: dull plates and dark bands, another set each time. Short: plates that come out too thin or too dense, and never the same twice.

**Why.** In more than two minutes air, warmth and mounts mostly move by more than the tenth of a fringe that a recording bears. Less than half a second no hand opens and closes a card alike each time (common practice). The exposure is what the plate needs, divided by the light on it; it is judged only where all that it may be lies beyond the limit.

**What to do.** Long: spread the beams less, send less light to where it is lost, take a faster plate or a stronger laser, and look at the fringes for drift before the shot. Short: an attenuator in the common beam, beams that are spread wider, or a shutter that times itself.`,
  example: `setup "Whelk shell" {
  laser red {
    coherence length: 5 m
  }
  splitter S1
  object whelk
  plate P1 {
    sensitivity: 1.5 mJ/cm²
  }
  meter needle {
    head: 8 mm
  }
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1500 mm
  beam object from S1 reflected
    -> whelk: 1200 mm
    -> P1: 300 mm
  measured reference at P1: 1.6 µW/cm² by needle
  measured object at P1: 0.4 µW/cm² by needle
}
`,
  message: d => {
    const time = num(d, 'low') === num(d, 'high') ? seconds(num(d, 'value')) : `${seconds(num(d, 'low'))} to ${seconds(num(d, 'high'))}`;
    return num(d, 'value') > LONG
      ? num(d, 'low') > DAY ? `${text(d, 'plate')} needs ${time} of light: so little reaches it that as it stands nothing will record. Look along both beams for what takes their light.`
      : `${text(d, 'plate')} needs ${time} of light: in more than two minutes hardly anything holds still. Spread the beams less, take a faster plate, or watch the fringes for drift first.`
      : `${text(d, 'plate')} needs ${time} of light: no hand times less than half a second. An attenuator in the common beam, or a shutter that times itself, makes it repeatable.`;
  },
  run: ({ light, graph, setup }) => light.plates.flatMap(({ plate, exposure }, i, all): Problem[] => {
    // Of several lasers at once it is the same.
    if (all.findIndex(p => p.exposure === exposure) < i) return [];
    const value = graph.value(exposure);
    if (value === undefined || (value <= LONG && value >= SHORT)) return [];
    const { low, high } = interval(graph, exposure);
    if (low <= LONG && high >= SHORT) return [];
    return [{ code: 'exposure-hard-to-time', at: plate.at, subject: plate.id, setup: setup.name, data: { plate: plate.id, value, low, high } }];
  }),
};

const seconds = (s: number): string => (s >= 120 ? show(Number(s.toPrecision(2)), TIME) : `${plain(s, 2)} s`);
