import type { Problem } from '../../model/model.ts';
import { safelights } from '../../results/safelight.ts';
import { text, type Check } from '../check.ts';

export const safelightFogs: Check = {
  code: 'safelight-fogs',
  severity: 'warning',
  title: 'The plate is sensitive to the colour of the safelight',
  page: `**What you see.** A grey veil over the whole plate, the denser the longer it lay in the room: dull, noisy images, or none.

**Why.** A plate is fogged by light of the colours that it is sensitive to. They are those that \`sensitive to\` says, else that of the laser, which it is there to record. Amber works on what is made for red; blue works on silver halide, dichromated gelatin and photoresist whatever they are sensitised to besides (common practice). How strong the safelight is and how long the plate lies in it is not reckoned.

**What to do.** Take a safelight of a colour that the plate does not see: green for a plate that is for red only, red for one that is for green or blue. Else work in the dark. Test it: a coin on a piece of plate, as long as settling takes, developed: it must not show.`,
  example: `setup "Whelk shell" {
  laser red {
    coherence length: 5 m
  }
  room {
    safelight: red
  }
  splitter S1
  object whelk
  plate P1 {
    sensitive to: red
  }
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1500 mm
  beam object from S1 reflected
    -> whelk: 1200 mm
    -> P1: 300 mm
}
`,
  message: d => `The safelight is ${text(d, 'colour')}, and ${text(d, 'plate')} ${d['by'] === 'laser' ? `is there to record ${text(d, 'to')} light` : `is sensitive to ${text(d, 'to')}`}: it will be fogged while it lies open. Take a safelight of a colour that the plate does not see, or work in the dark.`,
  run: r => safelights(r).filter(s => s.sees === true).map(({ room, plate, colour, to, by }): Problem => ({ code: 'safelight-fogs', at: room.facts.get('safelight')!.at, subject: plate.id, setup: r.setup.name, data: { plate: plate.id, colour, to, by } })),
};
