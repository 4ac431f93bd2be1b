import type { Check } from '../check.ts';

export const braceNotClosed: Check = {
  code: 'brace-not-closed',
  severity: 'error',
  title: 'A block is opened and never closed',
  page: `**What you see.** The braces of the file do not pair. As long as that is so, the indents decide where the block ends; where they do not tell it either, everything below belongs to the block.

**Why.** A block that opens with \`{\` ends with \`}\` alone on a line. This one has no such line.

**What to do.** Add a line with \`}\` where the block ends.

\`\`\`plate
setup "Whelk shell" {
  beam height: 120 mm
}
\`\`\``,
  example: `setup "Whelk shell" {
  beam height: 120 mm
`,
  message: () => 'The block that opens here is not closed, so it is not certain how far it goes. Add a line with “}” where it ends.',
};
