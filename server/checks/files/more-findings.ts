import { num, type Check, type Severity } from '../check.ts';
import { whole } from '../words.ts';

/** A file has at most so many findings, and one that says how many more there are. */
export const MAX_FINDINGS = 1000;

export const moreFindings: Check = {
  code: 'more-findings',
  severity: 'note',
  title: 'There are more findings than are shown',
  page: `**What you see.** The gravest ${whole(MAX_FINDINGS)} findings of the file are shown, and this one.

**Why.** So many have mostly one cause near the top of the file, such as a lost brace or a file that is no setup.

**What to do.** Put right the first ones; the others follow, or show.`,
  get example() { return `setup "Whelk shell" {
  laser red
  beam stop B1
  beam raw from red
    -> B1: 400 mm
${Array.from({ length: MAX_FINDINGS + 1 }, (_, i) => `  mirror M${i + 1}\n`).join('')}}
`; },
  message: d => `Findings that are not shown: ${whole(num(d, 'count'))}. Put right the first ones; the others follow, or show.`,
  severityOf: d => d['worst'] as Severity,
};
