import type { Check } from '../check.ts';
import { quoted } from '../words.ts';

export const numberTooLarge: Check = {
  code: 'number-too-large',
  severity: 'error',
  title: 'A number is too large to be computed with',
  page: `**What you see.** The line is read up to this number.

**Why.** Numbers end near 1.8e308; nothing on a table comes anywhere near. Mostly the exponent has a digit too many.

**What to do.** Correct the exponent, or write the number with a larger unit.

\`\`\`plate
setup "Whelk shell" {
  beam height: 1.2e2 mm
}
\`\`\``,
  example: `setup "Whelk shell" {
  beam height: 1.2e999 mm
}
`,
  message: d => `The number ${quoted(d, 'found')} is too large to be computed with. Correct its exponent, or use a larger unit.`,
};
