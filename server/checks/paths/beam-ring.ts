import type { Check } from '../check.ts';
import { quoted } from '../words.ts';

export const beamRing: Check = {
  code: 'beam-ring',
  severity: 'error',
  title: 'A beam leads back to its own start',
  page: `**What you see.** None of the beams in the ring makes an arm, and their paths have no length.

**Why.** Followed back towards the laser, each of these beams comes from the next, and the last one from the first: no laser is ever reached.

**What to do.** Find the beam in the ring that the laser lights, and let it start there.

\`\`\`plate
setup "Whelk shell" {
  laser red
  splitter S1
  splitter S2
  beam stop B1
  beam raw from red
    -> S1: 400 mm
  beam key from S1 through
    -> S2: 400 mm
  beam fill from S2 reflected
    -> B1: 400 mm
}
\`\`\``,
  example: `setup "Whelk shell" {
  splitter S1
  splitter S2
  beam key from S1 through
    -> S2: 400 mm
  beam fill from S2 reflected
    -> S1: 400 mm
}
`,
  message: d => `These beams come from each other in a ring, so no laser lights them: ${quoted(d, 'ring')}. Let the one that the laser lights start there.`,
};
