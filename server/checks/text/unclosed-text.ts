import type { Check } from '../check.ts';
import { quoted } from '../words.ts';

export const unclosedText: Check = {
  code: 'unclosed-text',
  severity: 'error',
  title: 'A text in quotes has no closing quote on its line',
  page: `**What you see.** The line is read up to the quote; what stands behind it is not.

**Why.** A text in quotes ends on its line, since a line end always ends the fact.

**What to do.** Add the \`"\`. A longer note takes several lines that start with \`///\`, above what they belong to.

\`\`\`plate
setup "Whelk shell" {
  note: "tilted a little to the left"
}
\`\`\``,
  example: `setup "Whelk shell" {
  note: "tilted a little to the left
}
`,
  message: d => `The text ${quoted({ found: String(d['found'] ?? '').replace(/^"/, '') }, 'found')} has no closing quote on its line. Add a " where it ends; a text cannot go on in the next line.`,
};
