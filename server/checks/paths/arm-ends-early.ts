import { text, type Check } from '../check.ts';
import { quoted } from '../words.ts';

export const armEndsEarly: Check = {
  code: 'arm-ends-early',
  severity: 'warning',
  title: 'A beam ends where its light goes on',
  page: `**What you see.** The beam reaches no plate. On the table its light goes on to a place that the text does not name.

**Why.** A beam ends at a plate, a screen, a card or a beam stop, or at a thing where another beam starts. Behind a mirror, a lens or an object the light goes on.

**What to do.** Add the next leg, start the following beam there, or end it in a \`beam stop\`.

\`\`\`plate
setup "Whelk shell" {
  laser red
  mirror M1
  beam stop B1
  beam raw from red
    -> M1: 350 mm
    -> B1: 200 mm
}
\`\`\``,
  example: `setup "Whelk shell" {
  laser red
  mirror M1
  beam raw from red
    -> M1: 350 mm
}
`,
  message: d => (d['thing'] === undefined ? `The beam ${quoted(d, 'beam')} has no legs, so it reaches nothing. Write below it what the light meets, as in “-> M1: 350 mm”.`
    : `The beam ${quoted(d, 'beam')} ends at ${text(d, 'thing')}, where its light goes on. Add the next leg, or end the beam in a beam stop.`),
};
