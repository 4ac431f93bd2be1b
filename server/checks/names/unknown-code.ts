import { didYouMean, type Check } from '../check.ts';
import { quoted } from '../words.ts';

export const unknownCode: Check = {
  code: 'unknown-code',
  severity: 'error',
  title: 'An accepted finding does not exist',
  page: `**What you see.** The line has no effect.

**Why.** Behind \`accept\` stands the code of a finding, as it is shown in brackets behind its text. No finding has this one.

**What to do.** Correct it. The page of all findings lists the codes.

\`\`\`plate
setup "Whelk shell" {
  laser red
  mirror M1
  beam stop B1
  beam raw from red
    -> B1: 400 mm
  accept unused-thing "M1 is for the next plate" for M1
}
\`\`\``,
  example: `setup "Whelk shell" {
  laser red
  mirror M1
  beam stop B1
  beam raw from red
    -> M1: 200 mm
    -> B1: 200 mm
  accept unused-thign "M1 is for the next plate" for M1
}
`,
  message: d => (d['retired'] === true ? `There is no finding ${quoted(d, 'finding')} any more: it was retired. Delete the line.` : `No finding is called ${quoted(d, 'finding')}, so nothing is accepted.${didYouMean(d)} Write the code that stands in brackets behind the finding.`),
};
