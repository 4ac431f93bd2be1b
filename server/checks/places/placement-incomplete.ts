import { text, type Check } from '../check.ts';
import { quoted } from '../words.ts';

export const placementIncomplete: Check = {
  code: 'placement-incomplete',
  severity: 'error',
  title: 'A placement lacks something',
  page: `**What you see.** Where the thing stands, or which way it faces, cannot be told, nor what depends on it.

**Why.** \`on\` and \`beyond\` need a \`by\` that says how far. \`by\` and \`turning\` need one of them, which says from where. \`tilted\` says how far a thing is tipped up from the horizontal, and \`heading\` or \`facing\` says which way it faces.

**What to do.** Write what is missing.

\`\`\`plate
setup "Whelk shell" {
  laser red at (0, 0) mm heading 0°
  beam stop B1 beyond red by 500 mm
  beam raw from red
    -> B1
}
\`\`\``,
  example: `setup "Whelk shell" {
  laser red at (0, 0) mm heading 0°
  beam stop B1 beyond red
  beam raw from red
    -> B1
}
`,
  message: d => `${quoted(d, 'word')} ${text(d, 'lacks')} here. Write it as in “${text(d, 'example')}”.`,
};
