import { didYouMean, text, type Check } from '../check.ts';

export const wrongValue: Check = {
  code: 'wrong-value',
  severity: 'error',
  title: 'A value is not of the sort that belongs here',
  page: `**What you see.** The value is not used.

**Why.** Some facts take one of a few words, others a number, a date, sizes or a name. The message says which belongs here.

**What to do.** Write one of what the message lists.

\`\`\`plate
setup "Whelk shell" {
  hologram: reflection
}
\`\`\``,
  example: `setup "Whelk shell" {
  hologram: reflexion
}
`,
  message: d => `This should be ${text(d, 'wanted')}, and it is ${text(d, 'found')}.${didYouMean(d)}`,
};
