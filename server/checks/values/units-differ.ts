import { text, type Check } from '../check.ts';
import { capital } from '../words.ts';

export const unitsDiffer: Check = {
  code: 'units-differ',
  severity: 'error',
  title: 'Two quantities of different kinds are added or subtracted',
  page: `**What you see.** The formula has no value, and no result rests on it.

**Why.** A length and a power have no sum. Different units of one kind do: \`5 mm + 2 in\` is fine.

**What to do.** Look at both sides of the sign; mostly one has the wrong unit, none at all, or \`*\` was meant.

\`\`\`plate
setup "Whelk shell" {
  let gap = 5 mm + 3 mm
}
\`\`\``,
  example: `setup "Whelk shell" {
  let gap = 5 mm + 3 mW
}
`,
  message: d => `${capital(text(d, 'left'))} and ${text(d, 'right')} cannot be ${text(d, 'op') === '-' ? 'subtracted' : 'added'}: they are different kinds of quantities. Correct the unit on one side of the “${text(d, 'op')}”.`,
};
