import type { Check } from '../check.ts';
import { quoted } from '../words.ts';

export const importOutside: Check = {
  code: 'import-outside',
  severity: 'error',
  title: 'A file that is used lies outside of the open folder',
  page: `**What you see.** The file is not read, and nothing from it is known here.

**Why.** Only files inside the folder that is open are read, so that a setup which came from elsewhere reads nothing that it has no business with.

**What to do.** Copy the file into the folder, or open the folder that holds both.`,
  example: `use "../../private/lab.plate"

setup "Whelk shell" {
  hologram: transmission
}
`,
  message: d => `${quoted(d, 'path')} lies outside of the folder that is open, so it is not read. Copy it into the folder, or open the folder that holds both.`,
};
