import type { Check } from '../check.ts';

export const braceNotClosed: Check = {
  code: 'brace-not-closed',
  severity: 'error',
  title: 'A block is opened and never closed',
  page: `**What you see.** Everything below is taken as part of this block.

**Why.** A block that opens with \`{\` ends with \`}\` alone on a line. There are more opened than closed, up to the end of the file.

**What to do.** Add a line with \`}\` where the block ends. Formatting the file shows by its indents which block goes on too far.

\`\`\`plate
setup "Whelk shell" {
  beam height: 120 mm
}
\`\`\``,
  example: `setup "Whelk shell" {
  beam height: 120 mm
`,
  message: () => 'The block that opens here is never closed, so everything below is taken as part of it. Add a line with “}” where it ends.',
};
