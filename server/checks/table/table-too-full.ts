import { MOST_STANDING } from '../../results/table/table.ts';
import { num, type Check } from '../check.ts';
import { whole } from '../words.ts';

const ROWS = 20;

export const tableTooFull: Check = {
  code: 'table-too-full',
  severity: 'hint',
  title: 'More stands on the table than is looked at',
  page: `**What you see.** Nothing is said of beams that something stands in, of outputs that nobody uses, or of reference light on the object.

**Why.** Every leg is held against every thing, and more than ${whole(MOST_STANDING)} things stand on no table.

**What to do.** Part the page into several setups.`,
  example: `setup "Whelk shell" {\n${Array.from({ length: MOST_STANDING + 1 }, (_, i) => `  black card c${i} at (${(i % ROWS) * 100}, ${Math.floor(i / ROWS) * 100}) mm\n`).join('')}}\n`,
  message: d => `On this table stand ${whole(num(d, 'count'))} things. Above ${whole(MOST_STANDING)} it is not looked at what stands in whose way. Part the page into several setups.`,
  run: ({ table, setup }) => { const count = table.look.tooFull; return count === undefined ? [] : [{ code: 'table-too-full', at: setup.at, subject: setup.name, setup: setup.name, data: { count } }]; },
};
