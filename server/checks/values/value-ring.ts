import { num, text, type Check } from '../check.ts';
import { quoted } from '../words.ts';

export const valueRing: Check = {
  code: 'value-ring',
  severity: 'error',
  title: 'Values are computed from each other in a ring',
  page: `**What you see.** None of the values in the ring has a figure, and no result rests on them.

**Why.** A \`let\` may use other \`let\` values, but what a value is computed from must not lead back to itself. A very long row of values that each use the next ends in the same way.

**What to do.** Give one of the values in the ring a number of its own.

\`\`\`plate
setup "Whelk shell" {
  let gap = 300 mm
  let depth = gap / 2
}
\`\`\``,
  example: `setup "Whelk shell" {
  let gap = depth * 2
  let depth = gap / 2
}
`,
  message: d => (text(d, 'ring') ? `These values are computed from each other in a ring: ${quoted(d, 'ring')}. Give one of them a number of its own.`
    : `More than ${num(d, 'limit')} values are computed one from the next here. Give one of them a number of its own.`),
};
