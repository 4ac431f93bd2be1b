import type { Check } from '../check.ts';
import { quoted } from '../words.ts';

export const unexpectedText: Check = {
  code: 'unexpected-text',
  severity: 'error',
  title: 'Something stands where nothing can follow',
  page: `**What you see.** The rest of the line is not read. What stands before it counts, and so does every other line.

**Why.** A line holds one fact and begins with a word or with \`->\`. This text goes on where the fact is complete already, or begins in a way that no fact begins.

**What to do.** Give it a line of its own, correct it, or turn it into a comment.

\`\`\`plate
setup "Whelk shell" {
  beam height: 120 mm // measured at the laser
}
\`\`\``,
  example: `setup "Whelk shell" {
  beam height: 120 mm measured at the laser
}
`,
  message: d => `${quoted(d, 'found')} does not fit here, so the rest of the line is not read. A line holds one fact and begins with a word or with “->”: give this a line of its own, correct it, or put “//” before it.`,
};
