import type { Problem } from '../../model/model.ts';
import { text, type Check } from '../check.ts';

export const slitAlongReference: Check = {
  code: 'slit-along-reference',
  severity: 'warning',
  title: 'The slit of a rainbow hologram lies along the way on which its reference comes',
  page: `**What you see.** The image has no rainbow from top to bottom: its colours smear into each other, and it flips as the head moves sideways.

**Why.** White light spreads each colour of the slit’s image in the direction of the fringes’ fan, which is the plane in which the reference comes. Only across the slit do the colours lie side by side: so the slit must lie across that plane, level for a reference from above or below.

**What to do.** Write \`reference from: above\` (or \`below\`) where the reference comes in overhead. Else turn the plate so that the reference comes in across the slit: a plate that lies on its side has \`up: left\` or \`right\`. A slit that stands upright for whoever looks is turned by a quarter.`,
  example: `setup "Rainbow" {
  hologram: rainbow
  laser red {
    wavelength: 632.8 nm
    coherence length: 5 m
  }
  splitter S1
  hologram H1 {
    size: 63 x 3 mm
  }
  plate H2 {
    size: 63 x 63 mm
    reference angle: 30°
    object angle: 0°
  }
  beam raw from red
    -> S1: 300 mm
  beam reference from S1 through
    -> H2: 1600 mm
  beam feed from S1 reflected
    -> H1: 1400 mm
  beam image from H1 diffracted
    -> H2: 200 mm
}
`,
  // Where nothing says from where the reference comes, perhaps only the word is missing.
  severityOf: d => (d['assumed'] === true ? 'note' : 'warning'),
  message: d => `What is open of ${text(d, 'hologram')} is long in the direction from which the reference comes to ${text(d, 'plate')}: the colours will smear into each other. Where the reference comes overhead, write “reference from: above” of ${text(d, 'plate')}; else turn the slit, and the scene with it, by a quarter.`,
  run: ({ fringes, setup }) => fringes.pairs.flatMap((f): Problem[] => (f.slit === 'along'
    ? [{ code: 'slit-along-reference', at: f.plate.at, subject: `${f.plate.id}.${f.pair.arm.name}`, setup: setup.name, data: { plate: f.plate.id, hologram: f.pair.arm.object!.id, assumed: f.from.known.by === 'angles' && !f.plate.facts.has('reference from') } }] : [])),
};
