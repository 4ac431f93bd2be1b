import { text, type Check } from '../check.ts';
import { quoted } from '../words.ts';

export const placedInInventory: Check = {
  code: 'placed-in-inventory',
  severity: 'error',
  title: 'An item of an inventory is given a place',
  page: `**What you see.** The place is not used: whatever is this item in a setup stands where the setup says.

**Why.** An inventory holds what the workshop owns. Where it stands differs from evening to evening, and several things may be the same item.

**What to do.** Take it out, and write it in the setup.

\`\`\`plate
inventory lab {
  mirror flat-50
}
setup "Whelk shell" {
  mirror M1 = lab.flat-50 at (1100, 100) mm
}
\`\`\``,
  example: `inventory lab {
  mirror flat-50 at (1100, 100) mm
}
`,
  message: d => `Things in an inventory stand nowhere, so that ${quoted(d, 'written')} changes nothing. Write it in the setup, where ${text(d, 'name')} is used.`,
};
