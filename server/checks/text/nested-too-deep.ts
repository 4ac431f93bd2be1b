import { MAX_DEPTH } from '../../../grammar/nest.ts';
import type { Check } from '../check.ts';

export const nestedTooDeep: Check = {
  code: 'nested-too-deep',
  severity: 'error',
  title: 'Blocks stand too deep inside each other',
  page: `**What you see.** What stands in the innermost blocks is not read.

**Why.** At most ${MAX_DEPTH} blocks may stand inside each other; a setup needs three. Mostly a closing brace is missing in several places.

**What to do.** Close each block with \`}\` alone on a line where it ends.`,
  get example() { return `setup "Whelk shell" {
  variant "closer plate" {
    room {
${Array.from({ length: MAX_DEPTH - 2 }, (_, i) => `${'  '.repeat(i + 3)}note: "${i + 1}" {\n`).join('')}${Array.from({ length: MAX_DEPTH - 2 }, (_, i) => `${'  '.repeat(MAX_DEPTH - i)}}\n`).join('')}    }
  }
}
`; },
  message: () => `More than ${MAX_DEPTH} blocks stand inside each other here, so what is inside is not read. Close each block with “}” alone on a line where it ends.`,
};
