import { show } from '../../model/show.ts';
import type { Problem } from '../../model/model.ts';
import { TIME } from '../../model/units.ts';
import { num, text, type Check } from '../check.ts';

/** The exposure should be so many times longer than the table rings (common practice). */
const TIMES = 5;

export const shutterShakes: Check = {
  code: 'shutter-shakes',
  severity: 'note',
  title: 'The shutter shakes the table for much of the exposure',
  page: `**What you see.** Dim holograms, every time, and the dimmer the shorter the exposure.

**Why.** A shutter that stands on the table sets it ringing as it opens. One workshop found with an interferometer that its table rang for about a second of an exposure of two to four. Fringes that shake add nothing but fog. A note where the exposure is less than five times as long as the table rings; where no \`ring time\` is written, about a second is taken.

**What to do.** Stand the shutter beside the table, or lift a card by hand: hold it before the beam a while after the shutter has opened, then take it away without touching the table. A longer exposure with less light helps as well.`,
  example: `setup "Whelk shell" {
  laser red {
    coherence length: 5 m
  }
  shutter gate {
    mounted: table
  }
  splitter S1
  object whelk
  plate P1
  beam raw from red
    -> gate: 100 mm
    -> S1: 250 mm
  beam reference from S1 through
    -> P1: 1500 mm
  beam object from S1 reflected
    -> whelk: 1200 mm
    -> P1: 300 mm
  exposure: 3 s
}
`,
  message: d => `The shutter ${text(d, 'shutter')} stands on the table, which rings for ${d['about'] === true ? 'about ' : ''}${show(num(d, 'ring'), TIME)} of an exposure of ${show(num(d, 'exposure'), TIME)}: fringes that shake record nothing. Stand it beside the table, or take a card away by hand once the table is at rest.`,
  run: ({ movement, graph, setup }) => movement.ringing.flatMap((x): Problem[] => {
    if (x.share.missing || !(graph.value(x.share)! > 1 / TIMES)) return [];
    const [ring, exposure] = [x.time, x.exposure].map(c => Number(graph.value(c)!.toPrecision(2))) as [number, number];
    return [{ code: 'shutter-shakes', at: x.shutter.at, subject: x.shutter.id, setup: setup.name, data: { shutter: x.shutter.id, ring, exposure, about: x.time.origin === 'assumed' } }];
  }),
};
