import { text, type Check } from '../check.ts';

export const reasonMissing: Check = {
  code: 'reason-missing',
  severity: 'error',
  title: 'A finding is accepted without a reason',
  page: `**What you see.** The finding is still shown.

**Why.** \`accept\` silences one finding and keeps in the text why. Next year the reason is all that is left of the decision.

**What to do.** Name the finding and give the reason in quotes; \`for NAME\` behind it narrows it to one thing.

\`\`\`plate
setup "Whelk shell" {
  laser red
  mirror M2
  beam stop B1
  beam raw from red
    -> B1: 400 mm
  accept unused-thing "the second mirror is for the next plate" for M2
}
\`\`\``,
  example: `setup "Whelk shell" {
  accept unused-thing
}
`,
  message: d => `An accepted finding keeps its reason in the text. Write it in quotes behind the name of the finding, as in: accept ${text(d, 'code') || 'unused-thing'} "the second mirror is for the next plate".`,
};
