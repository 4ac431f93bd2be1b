import { quoted } from '../words.ts';
import { text, type Check } from '../check.ts';

export const placedTwice: Check = {
  code: 'placed-twice',
  severity: 'error',
  title: 'A placement says the same twice',
  page: `**What you see.** The thing stands, or faces, as the first of the two says; the second counts for nothing.

**Why.** A thing stands in one place, which \`at\`, \`on\` or \`beyond\` says, and faces one way, which \`heading\` or \`facing\` says. Each of these, and \`by\`, \`turning\` and \`tilted\`, can be said once.

**What to do.** Delete one of the two.`,
  example: `setup "Whelk shell" {
  laser red at (0, 0) mm heading 0°
  beam stop B1 at (500, 0) mm beyond red by 500 mm
  beam raw from red
    -> B1
}
`,
  message: d => (d['first'] === d['second'] ? `${quoted(d, 'second')} is written twice here, and the first counts. Delete one of the two.`
    : `${quoted(d, 'second')} says otherwise what ${quoted(d, 'first')} before it says already: ${PLACES.includes(text(d, 'first')) ? 'where it stands' : 'which way it faces'}. Delete one of the two; the first counts.`),
};

const PLACES: readonly string[] = ['at', 'on', 'beyond'];
