import { MAX_LINES, MAX_SIZE } from '../../../grammar/parse.ts';
import type { Check } from '../check.ts';
import { whole } from '../words.ts';

const LIMIT = `${MAX_SIZE / 1e6} million characters or ${whole(MAX_LINES)} lines`;

export const fileTooLarge: Check = {
  code: 'file-too-large',
  severity: 'error',
  title: 'A file is too large',
  page: `**What you see.** The file is read up to this line, and no further.

**Why.** A file holds at most ${LIMIT}, so that an edit stays quick. A larger one is mostly no setup at all.

**What to do.** Put each setup into a file of its own, and what they share into an inventory that they \`use\`.`,
  example: `setup "Whelk shell" {
  beam height: 120 mm
}
${'// an empty page of the notebook\n'.repeat(MAX_LINES)}`,
  message: () => `The file is larger than ${LIMIT}; nothing below is read. Put each setup into a file of its own, and what they share into an inventory that they “use”.`,
};
