/** Writes as the command line does, in a process of its own: one that may write little, on a disk that is full, or beside another one. */
import { readdirSync, readFileSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { replaceText, writeMade, writeNew } from '../../server/cli/writing.ts';

const [what, at = '', letter = ''] = process.argv.slice(2);
const told = (act: () => void): string => { try { act(); return 'written'; } catch (e) { return e instanceof Error ? e.message : String(e); } };
const large = letter.repeat(1_000_000);

if (what === 'full') {
  // What is there is short; what is to be written does not fit.
  const said = [
    told(() => { replaceText(join(at, 'page.plate'), 'page.plate', 'old\n', large); }), told(() => { writeMade(join(at, 'plan.svg'), large); }), told(() => { writeMade(join(at, 'none.svg'), large); }),
    told(() => { writeNew(join(at, 'new.plate'), large); }), told(() => { symlinkSync('plan.svg', join(at, 'link.svg')); writeMade(join(at, 'link.svg'), large); }),
  ];
  console.log(JSON.stringify({ said, left: Object.fromEntries(readdirSync(at).sort().map(f => [f, readFileSync(join(at, f), 'utf8')])) }));
} else if (what === 'again') {
  for (let i = 0; i < 40; i++) writeMade(join(at, 'plan.svg'), large);
} else if (what === 'new') console.log(told(() => { writeNew(join(at, 'new.plate'), large); }));
