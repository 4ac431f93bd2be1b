import { num, type Check } from '../check.ts';
import { whole } from '../words.ts';

export const tooManyThings: Check = {
  code: 'too-many-things',
  severity: 'error',
  title: 'A setup or an inventory has too many things',
  page: `**What you see.** The things from this one on are not read, and what names them is not followed.

**Why.** A setup holds at most 5,000 things, and so does an inventory, so that edits stay quick. One that has more was mostly written by another program, or holds what belongs in an inventory.

**What to do.** Split the setup, or move what stands on no beam into an \`inventory\`.`,
  get example() { return `setup "Whelk shell" {
${Array.from({ length: 5001 }, (_, i) => `  screen W${i + 1}\n`).join('')}}
`; },
  message: d => `There are ${whole(num(d, 'count'))} things here, and at most ${whole(num(d, 'limit'))} are read: not this one, nor those below it. Split the setup, or move what stands on no beam into an inventory.`,
};
