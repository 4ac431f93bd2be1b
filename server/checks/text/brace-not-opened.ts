import type { Check } from '../check.ts';

export const braceNotOpened: Check = {
  code: 'brace-not-opened',
  severity: 'error',
  title: 'A brace closes a block that was never opened',
  page: `**What you see.** The braces of the file do not pair. As long as that is so, the indents decide what belongs to which block; a brace that fits none has no effect.

**Why.** No \`{\` goes with this \`}\`. Perhaps a line lost its \`{\` at the end, or a block was deleted but for its last line.

**What to do.** Delete the brace, or add \`{\` at the end of the line that should open the block.

\`\`\`plate
setup "Whelk shell" {
  beam height: 120 mm
}
\`\`\``,
  example: `setup "Whelk shell" {
  beam height: 120 mm
}
}
`,
  message: () => 'This “}” closes no block, since no “{” goes with it. Delete it, or add “{” at the end of the line that should open the block.',
};
