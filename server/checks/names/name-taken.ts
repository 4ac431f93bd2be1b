import { kindNamed } from '../../model/things/index.ts';
import { num, text, type Check } from '../check.ts';
import { quoted } from '../words.ts';

export const nameTaken: Check = {
  code: 'name-taken',
  severity: 'error',
  title: 'Two things have the same name',
  page: `**What you see.** Only the first of the two counts.

**Why.** A name stands for one thing. With two mirrors called M1 a leg to M1 would not say where the light goes.

**What to do.** Rename one of the two, and the lines that mean it.

\`\`\`plate
setup "Whelk shell" {
  mirror M1 at (1100, 100) mm
  mirror M2 at (94, 420) mm
}
\`\`\``,
  example: `setup "Whelk shell" {
  mirror M1 at (1100, 100) mm
  mirror M1 at (94, 420) mm
}
`,
  message: d => `${quoted(d, 'name')} is already the name of ${what(text(d, 'kind'))} in line ${num(d, 'line')}, and a name stands for one thing. Rename one of the two.`,
};

const what = (kind: string): string => kindNamed(kind)?.article ?? (kind === 'name' ? 'something else' : `a ${kind}`);
