import { text, type Check } from '../check.ts';

export const placeUnknown: Check = {
  code: 'place-unknown',
  severity: 'error',
  title: 'Where a thing stands cannot be told',
  page: `**What you see.** The lengths of the legs from and to the thing are not known, nor is what depends on them.

**Why.** \`beyond M1 by 500 mm\` goes on in the direction in which light comes to M1. That direction has to be known: from a beam that leads there from something that stands somewhere, or from the heading of the laser. Light that goes straight up or down has no left and right.

**What to do.** Place the thing that it is placed by, write the beam that lights it, or give the thing a place of its own with \`at\`.

\`\`\`plate
setup "Whelk shell" {
  laser red at (0, 0) mm heading 0°
  beam stop B1 beyond red by 500 mm
  beam raw from red
    -> B1
}
\`\`\``,
  example: `setup "Whelk shell" {
  laser red at (0, 0) mm
  beam stop B1 beyond red by 500 mm
  beam raw from red
    -> B1
}
`,
  message: d => `Where ${text(d, 'thing')} stands cannot be told, because ${text(d, 'why')}. Write what is missing, or give it a place with “at”.`,
};
