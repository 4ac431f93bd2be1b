import { num, type Check } from '../check.ts';
import { quoted } from '../words.ts';

export const writtenTwice: Check = {
  code: 'written-twice',
  severity: 'error',
  title: 'The same fact is written twice',
  page: `**What you see.** The first of the two lines counts.

**Why.** One fact has one value; the text does not say which of the two is meant.

**What to do.** Delete one of the lines. To try another value without losing the first, write it in a \`variant\`.

\`\`\`plate
setup "Whelk shell" {
  beam height: 120 mm
}
\`\`\``,
  example: `setup "Whelk shell" {
  beam height: 120 mm
  beam height: 140 mm
}
`,
  message: d => `${quoted(d, 'phrase')} of ${quoted(d, 'of')} stands in line ${num(d, 'line')} already, and that line counts. Delete one of the two.`,
};
