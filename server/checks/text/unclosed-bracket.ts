import type { Check } from '../check.ts';

export const unclosedBracket: Check = {
  code: 'unclosed-bracket',
  severity: 'error',
  title: 'A bracket is opened and not closed on its line',
  page: `**What you see.** The value in the bracket is not read.

**Why.** Every “(” has its “)” on the same line, since a line end always ends the fact.

**What to do.** Add the “)”. The unit stands behind it and covers all numbers in the bracket.

\`\`\`plate
setup "Whelk shell" {
  shutter gate at (130, 100) mm
}
\`\`\``,
  example: `setup "Whelk shell" {
  shutter gate at (130, 100 mm
}
`,
  message: () => 'A bracket “(” on this line is not closed, so the value in it cannot be read. Add the “)” before the unit, as in “(100, 200) mm”.',
};
