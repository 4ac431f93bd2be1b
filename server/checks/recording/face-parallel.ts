import type { Problem } from '../../model/model.ts';
import { text, type Check } from '../check.ts';

export const faceParallel: Check = {
  code: 'face-parallel',
  severity: 'note',
  title: 'A mirror or a lens stands parallel to a plate and faces it',
  page: `**What you see.** A second, faint image, a flare, or coarse bands over the plate.

**Why.** The plate throws a part of the light back, to the side that it came from. A mirror or the face of a lens that stands there, parallel to the plate within 3°, looks at it and sees a tenth of it or more with nothing between, returns that a second time, and it is recorded as well.

**What to do.** Turn the plate or the thing by a few degrees, or move it aside. A card before an unused mirror does as well.`,
  example: `setup "Whelk shell" {
  laser red at (0, 0) mm heading 0° {
    coherence length: 5 m
  }
  splitter S1 at (300, 0) mm
  mirror M1 at (900, 0) mm
  mirror M2 at (700, 690) mm heading 270° {
    note: "left over from last week"
  }
  object whelk at (500, 600) mm {
    lit at: 117° ± 3°
  }
  plate P1 at (700, 400) mm heading 90°
  beam raw from red
    -> S1
  beam reference from S1 through
    -> M1
    -> P1
  beam object from S1 reflected
    -> whelk
    -> P1
}
`,
  message: d => `${text(d, 'face')} stands parallel to ${text(d, 'plate')} and faces it: light goes to and fro between them, and its ghost is recorded. Turn one of them by a few degrees, or cover ${text(d, 'face')}.`,
  run: ({ table, setup }) => table.look.parallel.map(({ plate, face }): Problem => ({ code: 'face-parallel', at: face.at, subject: face.id, setup: setup.name, data: { plate: plate.id, face: face.id } })),
};
