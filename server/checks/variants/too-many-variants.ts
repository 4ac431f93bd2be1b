import { MAX_VARIANTS } from '../../model/bind/variants.ts';
import { num, type Check } from '../check.ts';

export const tooManyVariants: Check = {
  code: 'too-many-variants',
  severity: 'error',
  title: 'A setup has too many variants',
  page: `**What you see.** The variants from this one on are not read.

**Why.** A setup holds at most ${MAX_VARIANTS} variants, since each is computed like a setup of its own.

**What to do.** Delete those that are settled, or copy the setup into another file and go on there.`,
  get example() { return `setup "Whelk shell" {
  beam height: 120 mm
${Array.from({ length: MAX_VARIANTS + 1 }, (_, i) => `  variant "height ${i + 1}" {\n    beam height: ${120 + i} mm\n  }\n`).join('')}}
`; },
  message: d => `This setup has ${num(d, 'count')} variants, and at most ${num(d, 'limit')} are read; this one and those below it are not. Delete those that are settled, or go on in another file.`,
};
