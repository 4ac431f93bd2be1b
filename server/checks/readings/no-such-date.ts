import { text, type Check } from '../check.ts';

export const noSuchDate: Check = {
  code: 'no-such-date',
  severity: 'error',
  title: 'A date is in no calendar',
  page: `**What you see.** The line counts as one without a date.

**Why.** Dates are written year-month-day, with the time of day behind a \`T\` where it matters: \`2026-02-11\`, \`2026-02-11T21:40\`. This one does not exist.

**What to do.** Correct it. Of several readings of one thing the newest counts, and a reading older than a move is stale, so that the day matters.

\`\`\`plate
setup "Whelk shell" {
  mirror M1
  moved M1 on 2026-02-28: "a new mount"
}
\`\`\``,
  example: `setup "Whelk shell" {
  mirror M1
  moved M1 on 2026-02-31: "a new mount"
}
`,
  message: d => `There is no ${text(d, 'date')}: ${text(d, 'why')}. Correct the date.`,
};
