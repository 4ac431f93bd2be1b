import { text, type Check } from '../check.ts';
import { quoted } from '../words.ts';

export const armBroken: Check = {
  code: 'arm-broken',
  severity: 'error',
  title: 'A beam starts where no light arrives',
  page: `**What you see.** The beam makes no arm, and its path has no length.

**Why.** Each beam is followed back to a laser. This one starts at a thing to which no other beam has a leg.

**What to do.** Add a leg to that thing in the beam that lights it, or start the beam somewhere else.

\`\`\`plate
setup "Whelk shell" {
  laser red
  splitter S1
  beam stop B1
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> B1: 400 mm
}
\`\`\``,
  example: `setup "Whelk shell" {
  splitter S1
  beam stop B1
  beam reference from S1 through
    -> B1: 400 mm
}
`,
  message: d => `The beam ${quoted(d, 'beam')} starts at ${text(d, 'thing')}, but no beam brings light there. Add a leg “-> ${text(d, 'thing')}” to the beam that comes from the laser.`,
};
