import { text, type Check } from '../check.ts';
import { quoted } from '../words.ts';

export const nothingToAccept: Check = {
  code: 'nothing-to-accept',
  severity: 'hint',
  title: 'An accepted finding does not occur',
  page: `**What you see.** The line has no effect now.

**Why.** What it accepts is not found in this setup, or not about that thing: it was put right since, or never was there. Should it occur one day, the line would silence it.

**What to do.** Delete the line. Keep it where the finding comes and goes with the plans.`,
  example: `setup "Whelk shell" {
  beam height: 120 mm
  accept unused-thing "the second mirror is for the next plate"
}
`,
  message: d => `Nothing here has the finding ${quoted(d, 'finding')}${d['of'] === undefined ? '' : ` about ${text(d, 'of')}`}, so this line silences nothing. Delete it, unless the finding comes and goes with the plans.`,
};
