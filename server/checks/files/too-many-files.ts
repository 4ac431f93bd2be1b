import { num, type Check } from '../check.ts';

const CHAIN = 65;

export const tooManyFiles: Check = {
  code: 'too-many-files',
  severity: 'error',
  title: 'A file reaches too many others',
  page: `**What you see.** The files beyond the limit are not read, and nothing from them is known here.

**Why.** A file reaches at most 64 files, itself and those counted that others use in turn, so that an edit stays quick.

**What to do.** Put inventories together, and use only what this file needs.`,
  example: `use "shelf-1.plate"

setup "Whelk shell" {
  hologram: transmission
}
`,
  get files() { return Object.fromEntries(Array.from({ length: CHAIN }, (_, i) => [`shelf-${i + 1}.plate`, `use "shelf-${i + 2}.plate"\n`])); },
  message: d => `This file reaches more than ${num(d, 'limit')} files, so some of them are not read. Put inventories together, and use only what is needed here.`,
};
