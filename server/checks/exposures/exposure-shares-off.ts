import { percent } from '../../model/show.ts';
import type { Problem } from '../../model/model.ts';
import { interval } from '../../results/sampling.ts';
import { num, text, type Check } from '../check.ts';

/** By so much all exposures together may miss what a plate needs, before it is said; a sixth of a stop, which no eye sees in a plate; common practice. */
const NEAR = 0.1;

export const exposureSharesOff: Check = {
  code: 'exposure-shares-off',
  severity: 'warning',
  title: 'The exposures of a plate come to more or less than it needs',
  page: `**What you see.** Too much together: the plate turns out dense and noisy, and all its images are weak. Too little: a thin plate, as after any short exposure.

**Why.** All exposures of a plate blacken it together, whichever image they make: their shares should come to what one exposure alone would need. A share that is left out takes what the others leave.

**What to do.** Lower or raise the shares so that they come to 100 %, or leave out the \`share\` of one of them.`,
  example: `setup "Glazed tile" {
  hologram: reflection
  laser red {
    wavelength: 632.8 nm
    coherence length: 5 m
  }
  splitter S1
  object tile {
    size: 40 x 40 x 10 mm
  }
  plate P1 {
    size: 63 x 63 mm
    reference angle: 45°
  }
  beam raw from red
    -> S1: 300 mm
  beam reference from S1 through
    -> P1: 1300 mm
  beam object from S1 reflected
    -> tile: 1240 mm
    -> P1: 60 mm
  variant "green" {
    red.wavelength: 532.1 nm
  }
  exposure first {
    share: 70%
  }
  exposure second {
    variant: "green"
    share: 60%
  }
}
`,
  message: d => `All exposures of ${text(d, 'plate')} come to ${percent(num(d, 'sum'))} of what it needs: ${num(d, 'sum') > 1 ? 'it will be too dense, and all images weaker for it' : 'it will be thin'}. Change the shares so that they come to 100 %, or leave one of them out.`,
  run: ({ exposures, graph, setup }) => exposures.plates.flatMap(({ plate, all, sum }): Problem[] => {
    const value = graph.value(sum);
    if (value === undefined || Math.abs(value - 1) <= NEAR) return [];
    const { low, high } = interval(graph, sum);
    if (low <= 1 + NEAR && high >= 1 - NEAR) return [];
    const last = all.at(-1)!.thing;
    return [{ code: 'exposure-shares-off', at: last.facts.get('share')?.at ?? last.at, subject: plate.id, setup: setup.name, data: { plate: plate.id, sum: value } }];
  }),
};
