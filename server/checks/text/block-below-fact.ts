import type { Check } from '../check.ts';
import { quoted } from '../words.ts';

export const blockBelowFact: Check = {
  code: 'block-below-fact',
  severity: 'error',
  title: 'A fact opens a block',
  page: `**What you see.** The fact counts; what stands in its block has no effect.

**Why.** A fact is one line, \`phrase: value\`. Only things, setups, inventories, variants, shots and process notes have a block. Mostly a \`{\` was left over, or the line above lacks its own.

**What to do.** Delete the \`{\` and the \`}\` that closes it.

\`\`\`plate
setup "Whelk shell" {
  laser red {
    wavelength: 632.8 nm
    power: 12 mW
  }
}
\`\`\``,
  example: `setup "Whelk shell" {
  laser red {
    wavelength: 632.8 nm {
      power: 12 mW
    }
  }
}
`,
  message: d => `${quoted(d, 'phrase')} is a fact, and a fact takes no block, so what stands in it has no effect. Delete the “{” and the “}” that closes it.`,
};
