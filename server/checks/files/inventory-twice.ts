import { text, type Check } from '../check.ts';
import { quoted } from '../words.ts';

export const inventoryTwice: Check = {
  code: 'inventory-twice',
  severity: 'error',
  title: 'Two files have an inventory of the same name',
  page: `**What you see.** The inventory that comes first counts; nothing of the other is known here.

**Why.** \`lab.red-12\` is the item of one inventory. With two called “lab” it would not say which, and the figures would change with the order of the \`use\` lines.

**What to do.** Rename one of the two inventories and the lines that mean it, or put both into one.`,
  example: `use "drawer.plate"

inventory lab {
  mirror flat-50
}
`,
  files: { 'drawer.plate': 'inventory lab {\n  laser red-12\n}\n' },
  message: d => `${quoted(d, 'first')} has an inventory ${quoted(d, 'name')} already, and that one counts: this one, ${text(d, 'second') === '' ? 'of this file' : `of ${quoted(d, 'second')}`}, is not used. Rename one of the two, or put both into one.`,
};
