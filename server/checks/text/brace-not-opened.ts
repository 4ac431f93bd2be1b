import type { Check } from '../check.ts';

export const braceNotOpened: Check = {
  code: 'brace-not-opened',
  severity: 'error',
  title: 'A brace closes a block that was never opened',
  page: `**What you see.** Nothing else changes; the brace has no effect.

**Why.** There are more \`}\` than \`{\` up to this line. Perhaps a line lost its \`{\` at the end, or a block was deleted but for its last line.

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
  message: () => 'This “}” closes no block: as many were closed before it as were opened. Delete it, or add “{” at the end of the line that should open the block.',
};
