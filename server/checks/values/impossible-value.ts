import { text, type Check } from '../check.ts';

export const impossibleValue: Check = {
  code: 'impossible-value',
  severity: 'error',
  title: 'A value cannot be what it says',
  page: `**What you see.** The value is not used, and no result rests on it.

**Why.** The unit is right, but no thing on a table has such a value: a length of zero or below, a share above 100 %, a division by zero. The message says what is wrong.

**What to do.** Correct the number or its unit. A value that is not known is written \`?\`, or left out.

\`\`\`plate
setup "Whelk shell" {
  beam height: 120 mm
}
\`\`\``,
  example: `setup "Whelk shell" {
  beam height: -120 mm
}
`,
  message: d => `This value is not possible: ${text(d, 'why')}. Correct the number or its unit.`,
};
