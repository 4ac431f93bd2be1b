import type { Problem } from '../../model/model.ts';
import { show } from '../../model/show.ts';
import { ANGLE } from '../../model/units.ts';
import { num, text, type Check } from '../check.ts';

export const plateTurnedRound: Check = {
  code: 'plate-turned-round',
  severity: 'note',
  title: 'All light comes to the back of a plate',
  page: `**What you see.** Nothing by itself: a plate takes light from either side. But what is written of its front is then about the other face: which way the emulsion looks, which edge is masked.

**Why.** The plate has a \`heading\`, or faces something, and by the places both the object and the reference stand behind it. Mostly the heading is half a turn off. Where only one of them stands behind it nothing is said: so it is in reflection holograms.

**What to do.** Write \`facing\` with the object, or turn the heading by half a turn.`,
  example: `setup "Whelk shell" {
  hologram: transmission
  laser red at (60, 100) mm heading 0° {
    wavelength: 632.8 nm
    coherence length: 5 m
  }
  splitter S1 at (350, 100) mm
  mirror M1 at (1100, 100) mm
  mirror M2 at (94, 420) mm
  mirror M3 at (400, 640) mm
  object whelk at (700, 400) mm {
    size: 40 x 60 x 35 mm
  }
  plate P1 at (700, 700) mm heading 90°
  beam raw from red
    -> S1
  beam reference from S1 through
    -> M1
    -> P1
  beam object from S1 reflected
    -> M2
    -> M3
    -> whelk
    -> P1
}
`,
  message: d => `The front of ${text(d, 'plate')} looks away from ${text(d, 'object')} and from ${text(d, 'from')}, so that all its light comes to its back. If it is not turned round on the table, write “facing ${text(d, 'object')}”${d['heading'] === undefined ? '' : ` or “heading ${show(num(d, 'heading'), ANGLE)}”`}.`,
  run: ({ table, setup }) => table.look.turnedRound.map((t): Problem => ({
    code: 'plate-turned-round', at: t.plate.at, subject: t.plate.id, setup: setup.name,
    data: { plate: t.plate.id, object: t.object.id, from: t.from.id, ...(t.heading === undefined ? {} : { heading: t.heading }) },
  })),
};
