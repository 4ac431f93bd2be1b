import { text, type Check } from '../check.ts';
import { quote, quoted } from '../words.ts';

export const nameOfTwoWords: Check = {
  code: 'name-of-two-words',
  severity: 'error',
  title: 'A name has more than one word',
  page: `**What you see.** Only the first word is taken as the name.

**Why.** A name is one word of letters, digits, \`_\` and inner hyphens, so that a line can be read without knowing all names.

**What to do.** Join the words with a hyphen, here and wherever the name is used.

\`\`\`plate
setup "Whelk shell" {
  mirror big-one at (1100, 100) mm
}
\`\`\``,
  example: `setup "Whelk shell" {
  mirror big one at (1100, 100) mm
}
`,
  message: d => `The name of ${text(d, 'kind') === 'object' ? 'an' : 'a'} ${text(d, 'kind')} is one word, and ${quoted(d, 'words')} is more. Join them with a hyphen: ${quote(text(d, 'words').replaceAll(' ', '-'))}.`,
};
