import { text, type Check } from '../check.ts';
import { quoted } from '../words.ts';

export const notInInventory: Check = {
  code: 'not-in-inventory',
  severity: 'error',
  title: 'An inventory holds a line that belongs into a setup',
  page: `**What you see.** The line has no effect.

**Why.** An inventory holds the things that the workshop owns, with their facts. Beams, readings, expectations, values and facts of a recording are those of a setup.

**What to do.** Move the line into the setup that it is about.

\`\`\`plate
inventory lab {
  laser red-12
}
setup "Whelk shell" {
  laser red = lab.red-12
  beam height: 120 mm
}
\`\`\``,
  example: `inventory lab {
  laser red-12
  beam height: 120 mm
}
`,
  message: d => `An inventory holds things only, and ${quoted(d, 'word')} is none. Move the line out of ${text(d, 'inventory')}, into the setup that it is about.`,
};
