import type { Check } from '../check.ts';
import { quoted } from '../words.ts';

export const importRing: Check = {
  code: 'import-ring',
  severity: 'error',
  title: 'Files use each other in a ring',
  page: `**What you see.** What the ring would bring is not known here.

**Why.** Each of the files waits for the next, and the last one for the first. A file that uses itself is the shortest ring.

**What to do.** Put what the files share into one inventory that uses none of them, and let each use that.`,
  example: `use "shelf.plate"

inventory lab {
  laser red-12
}
`,
  files: { 'shelf.plate': 'use "drawer.plate"\n', 'drawer.plate': 'use "shelf.plate"\n' },
  message: d => `These files use each other in a ring: ${quoted(d, 'ring')}. Put what they share into one file that uses none of them.`,
};
