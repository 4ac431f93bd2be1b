import type { Problem } from '../../model/model.ts';
import { millimetres } from '../../model/show.ts';
import { num, text, type Check } from '../check.ts';
import { quoted } from '../words.ts';

export const referenceOnObject: Check = {
  code: 'reference-on-object',
  severity: 'note',
  title: 'Reference light reaches the object',
  page: `**What you see.** A second light on the object, from the side of the reference, with paths that match nothing: it fogs the plate, or shows as a faint second image.

**Why.** The reference is spread wider than the plate, and what passes beside the plate's own light falls on the object. In single-beam setups the reference is what lights the object, and nothing is said.

**What to do.** Put a black card at the edge of the reference, on the side of the object, as far in as the plate allows; give it a place, and the program sees that it does not cut the plate's light.`,
  example: `setup "Whelk shell" {
  laser red at (60, 100) mm heading 0° {
    wavelength: 632.8 nm
    coherence length: 20 m
    beam diameter: 0.8 mm
  }
  splitter S1 at (350, 100) mm
  mirror M1 at (1000, 100) mm
  spreader R1 on M1 -> P1 by 60 mm {
    focal length: 2.9 mm
  }
  mirror M2 at (94, 420) mm
  mirror M3 at (400, 640) mm
  object whelk at (735, 460) mm {
    size: 60 x 60 x 20 mm
  }
  plate P1 at (700, 700) mm facing whelk {
    size: 63 x 63 mm
  }
  beam raw from red
    -> S1
  beam reference from S1 through
    -> M1
    -> R1
    -> P1
  beam object from S1 reflected
    -> M2
    -> M3
    -> whelk
    -> P1
}
`,
  message: d => `Light of ${quoted(d, 'beam')} reaches ${text(d, 'object')}: it is ${millimetres(2 * num(d, 'radius'))} wide there, and ${text(d, 'object')} begins ${millimetres(num(d, 'off'))} from its middle. A black card with its edge at about (${['x', 'y'].map(k => Math.round(num(d, k) * 1000)).join(', ')}) mm keeps it off and leaves ${text(d, 'plate')} its light.`,
  run: ({ table, setup }) => table.look.spills.map((s): Problem => ({
    code: 'reference-on-object', at: s.object.at, subject: s.object.id, setup: setup.name,
    data: { beam: s.arm.beam.id, object: s.object.id, plate: s.arm.plate.id, radius: s.radius, off: s.off, x: s.card[0], y: s.card[1], z: s.card[2] },
  })),
};
