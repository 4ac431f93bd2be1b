import { MAX_BRACKETS } from '../../../grammar/line-issues.ts';
import type { Check } from '../check.ts';

export const nestingTooDeep: Check = {
  code: 'nesting-too-deep',
  severity: 'error',
  title: 'Too many brackets stand inside each other, or too many signs in a row',
  page: `**What you see.** The line is not read.

**Why.** At most ${MAX_BRACKETS} brackets may stand inside each other, and at most ${MAX_BRACKETS} signs in a row. More of them is mostly a slip of the keyboard.

**What to do.** Take out brackets that do nothing, or compute the inner part on a line of its own: \`let gap = …\`.`,
  example: `setup "Whelk shell" {
  let gap = ${'('.repeat(MAX_BRACKETS + 1)}5${')'.repeat(MAX_BRACKETS + 1)} mm
}
`,
  message: () => `More than ${MAX_BRACKETS} brackets stand inside each other here, or more than ${MAX_BRACKETS} signs in a row, so the line is not read. Take out what does nothing, or compute the inner part in a “let” of its own.`,
};
