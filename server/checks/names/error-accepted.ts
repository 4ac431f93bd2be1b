import type { Check } from '../check.ts';
import { quoted } from '../words.ts';

export const errorAccepted: Check = {
  code: 'error-accepted',
  severity: 'warning',
  title: 'An error is accepted',
  page: `**What you see.** The line has no effect: the error is still shown.

**Why.** An error is something that cannot be understood or computed. It cannot be lived with as a dull part of the object can, since nothing that needs it is known.

**What to do.** Put the error right, and delete the line.`,
  example: `setup "Whelk shell" {
  beam height: 120 mm
  accept wrong-unit "the tape was in inches"
}
`,
  message: d => `${quoted(d, 'finding')} is an error, and errors cannot be accepted: what needs it is not known. Put it right, and delete this line.`,
};
