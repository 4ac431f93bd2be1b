import { text, type Check } from '../check.ts';
import { quoted } from '../words.ts';

/** What each of the words is there for, as it is written. */
const MEANINGS: Readonly<Record<string, string>> = {
  at: 'at (100, 200) mm', on: 'on M1 -> P1 by 60 mm', beyond: 'beyond M1 by 500 mm', by: 'beyond M1 by 500 mm', facing: 'facing whelk', heading: 'heading 30°', tilted: 'tilted 5°',
  turning: 'turning left', from: 'from S1 reflected', to: 'from 3:1 to 6:1', for: 'for M2', std: '± 2 mm std', x: '40 x 60 mm',
};

export const reservedName: Check = {
  code: 'reserved-name',
  severity: 'error',
  title: 'A word that has a meaning of its own stands where a name belongs',
  page: `**What you see.** The line declares nothing, or leads nowhere.

**Why.** A few words tell how a line goes on: ${Object.keys(MEANINGS).map(w => `\`${w}\``).join(', ')}. They cannot be names as well: \`beam on from red\` could be read in two ways. All other words can.

**What to do.** Choose another name. A longer word that holds one of these is fine: \`on-axis\`, \`x1\`.

\`\`\`plate
setup "Whelk shell" {
  mirror M1 at (1100, 100) mm
}
\`\`\``,
  example: `setup "Whelk shell" {
  mirror at
}
`,
  message: d => d['leg'] !== undefined ? `${quoted(d, 'word')} is a word of the language, and nothing that light meets. Write the name of what stands at the end of this leg instead, “-> M1${text(d, 'leg') === '' ? '' : `: ${text(d, 'leg')}`}”.` : `${quoted(d, 'word')} cannot be a name: it has a meaning of its own here, as in “${MEANINGS[text(d, 'word')] ?? text(d, 'word')}”. Choose another name${d['declared'] === true ? ', or write one before it' : ''}.`,
};
