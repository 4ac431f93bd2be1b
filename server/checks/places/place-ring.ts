import { quoted } from '../words.ts';
import type { Check } from '../check.ts';

export const placeRing: Check = {
  code: 'place-ring',
  severity: 'error',
  title: 'Things are placed by each other in a ring',
  page: `**What you see.** None of these things has a place, nor has anything that is placed by them.

**Why.** \`on\` and \`beyond\` place a thing by others, and \`beyond\` also by where the light comes from. Here that leads back to the thing itself, so that nothing says where the ring stands.

**What to do.** Give one of them a place of its own with \`at\`, or place it by something outside the ring.

\`\`\`plate
setup "Whelk shell" {
  laser red at (0, 0) mm heading 0°
  mirror M1 beyond red by 500 mm
  beam stop B1 beyond M1 by 300 mm turning left
  beam raw from red
    -> M1
    -> B1
}
\`\`\``,
  example: `setup "Whelk shell" {
  laser red at (0, 0) mm heading 0°
  mirror M1 on red -> B1 by 500 mm
  beam stop B1 beyond M1 by 300 mm
  beam raw from red
    -> M1
    -> B1
}
`,
  message: d => `These things are placed by each other in a ring, so none of them has a place: ${quoted(d, 'ring')}. Give one of them a place with “at”, or place it by something else.`,
};
