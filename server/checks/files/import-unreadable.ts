import { text, type Check } from '../check.ts';
import { quoted } from '../words.ts';

export const importUnreadable: Check = {
  code: 'import-unreadable',
  severity: 'error',
  title: 'A file that is used cannot be read',
  page: `**What you see.** Nothing from that file is known here. Names with a dot are not reported one by one as long as it is missing.

**Why.** The name is misspelt, the file was moved, it may not be read, it is no file of text or too large for one, or the disk fails or does not answer: the message says which, where the system tells. The path counts from the folder of the file in which \`use\` stands; where nothing is found there, from the folder that is open, then from the folders that are named for inventories (the setting \`platewright.inventoryFolders\`, \`--inventory FOLDER\` on the command line). The message says where was looked.

**What to do.** Correct the path, or bring the file back. A disk that failed is asked again by itself.`,
  example: `use "saltmarsh-lab.plate"

setup "Whelk shell" {
  laser red = lab.red-12
}
`,
  message: d => (text(d, 'path') === '' ? 'The name of the file is empty, so nothing is used. Write it between the quotes; it counts from the folder of this file.'
    : `${quoted(d, 'path')} cannot be used: ${text(d, 'why')}. Looked in ${text(d, 'looked') || 'the folder of this file'}. Correct the path, or name the folder that holds it.`),
};
