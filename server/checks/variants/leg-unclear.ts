import { num, text, type Check } from '../check.ts';
import { anyOf, quoted } from '../words.ts';

export const legUnclear: Check = {
  code: 'leg-unclear',
  severity: 'error',
  title: 'A variant changes a leg, and it is not clear which',
  page: `**What you see.** The line has no effect.

**Why.** \`S1 -> M1: 760 mm\` changes the one leg that leads from S1 to M1. Here no beam, or more than one, goes that way; or the number behind the beam is that of no leg.

**What to do.** Name the leg by its beam and its place in it: \`reference.1: 760 mm\` is the first leg of the beam “reference”. The message lists those that may be meant.

\`\`\`plate
setup "Whelk shell" {
  laser red
  beam stop B1
  beam raw from red
    -> B1: 350 mm
  variant "farther" {
    raw.1: 400 mm
  }
}
\`\`\``,
  example: `setup "Whelk shell" {
  laser red
  beam stop B1
  beam raw from red
    -> B1: 350 mm
  variant "farther" {
    B1 -> red: 400 mm
  }
}
`,
  message: d => {
    if (text(d, 'legs') !== '') return `${quoted(d, 'written')} is more than one leg: ${text(d, 'legs')}. Name the one that is meant: ${anyOf(text(d, 'legs').split(', ').map(l => `“${l}: …”`).join(', '))}.`;
    if (text(d, 'beam') !== '') return `The beam ${quoted(d, 'beam')} has ${num(d, 'count') === 1 ? '1 leg' : `${num(d, 'count')} legs`}, so that ${quoted(d, 'written')} is none of them. Correct the number.`;
    return `No leg of a beam leads along ${quoted(d, 'written')}. Name the thing at each end of one leg, in the direction of the light, or the leg itself, as in “object.2: 300 mm”.`;
  },
};
