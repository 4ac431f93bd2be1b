import { didYouMean, type Check } from '../check.ts';
import { quoted } from '../words.ts';

export const outsideSetup: Check = {
  code: 'outside-setup',
  severity: 'error',
  title: 'A line stands outside of every setup',
  page: `**What you see.** The line has no effect.

**Why.** At the top of a file stand \`use\`, \`inventory NAME {\` and \`setup "NAME" {\` only. Things, facts and beams belong in one of the blocks. Often a \`}\` closes the setup too early.

**What to do.** Move the line into its setup, or move the brace that ends the setup below it.

\`\`\`plate
setup "Whelk shell" {
  hologram: transmission
  beam height: 120 mm
}
\`\`\``,
  example: `setup "Whelk shell" {
  hologram: transmission
}
beam height: 120 mm
`,
  message: d => (d['known'] === true ? `${quoted(d, 'word')} belongs in a setup, and no setup is open here. Move the line into its block, or move the “}” that ends the setup below it.`
    : `${quoted(d, 'word')} opens nothing outside of a setup: here stand use, inventory and setup only.${didYouMean(d) || ' Correct it, or move the line into its setup.'}`),
};
