import { num, type Check } from '../check.ts';
import { whole } from '../words.ts';

export const tooManyThings: Check = {
  code: 'too-many-things',
  severity: 'error',
  title: 'A setup has too many things',
  page: `**What you see.** The setup is still read, but edits may be slow.

**Why.** A setup holds at most 5,000 things. One that has more was mostly written by another program, or holds what belongs in an inventory.

**What to do.** Split the setup, or move what stands on no beam into an \`inventory\`.`,
  example: `setup "Whelk shell" {
${Array.from({ length: 5001 }, (_, i) => `  screen W${i + 1}\n`).join('')}}
`,
  message: d => `This setup has ${whole(num(d, 'count'))} things, and at most ${whole(num(d, 'limit'))} are meant to stand in one, so that edits stay quick. Split it, or move what stands on no beam into an inventory.`,
};
