import type { Problem } from '../../model/model.ts';
import { text, type Check } from '../check.ts';

export const exposureUnclear: Check = {
  code: 'exposure-unclear',
  severity: 'error',
  title: 'What an exposure is made of cannot be told',
  page: `**What you see.** Nothing is computed of this exposure, and its share counts for nobody.

**Why.** An exposure belongs to a plate, and is made with the table as it is written or as one of the variants of the setup has it. One of these names nothing, or it could be more than one.

**What to do.** Correct the name, or write the variant: in it stands what is changed between this exposure and the page as it is written, such as another laser, a turned plate or another object.`,
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
  exposure second {
    variant: "gren"
  }
}
`,
  message: d => `The exposure ${text(d, 'exposure')} cannot be computed: ${text(d, 'why')}.`,
  run: ({ exposures, setup }) => exposures.unclear.map(({ thing, fact, why }): Problem => ({ code: 'exposure-unclear', at: (fact === undefined ? undefined : thing.facts.get(fact)?.at) ?? thing.at, subject: thing.id, setup: setup.name, data: { exposure: thing.id, why } })),
};
