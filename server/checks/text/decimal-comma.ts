import { text, type Check } from '../check.ts';
import { quoted } from '../words.ts';

export const decimalComma: Check = {
  code: 'decimal-comma',
  severity: 'error',
  title: 'A number is written with a decimal comma',
  page: `**What you see.** The number is not read.

**Why.** A comma parts the numbers of a place, as in \`(130, 100) mm\`, so a decimal comma could be read in two ways.

**What to do.** Write a point. There is no separator of thousands.

\`\`\`plate
setup "Whelk shell" {
  beam height: 120.5 mm
}
\`\`\``,
  example: `setup "Whelk shell" {
  beam height: 120,5 mm
}
`,
  message: d => `${quoted(d, 'found')} has a decimal comma, but commas part the numbers of a place. Write a point: “${text(d, 'found').replace(',', '.')}”.`,
};
