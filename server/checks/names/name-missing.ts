import { text, type Check } from '../check.ts';

const EXAMPLES: Readonly<Record<string, string>> = { setup: 'setup "Whelk shell"', inventory: 'inventory lab', beam: 'beam reference from S1 through' };

export const nameMissing: Check = {
  code: 'name-missing',
  severity: 'error',
  title: 'Something has no name',
  page: `**What you see.** The line has no effect: nothing else can refer to it.

**Why.** A thing, a beam, an inventory and a setup each have a name, since the legs, the readings and the results call them by it. Only a room, a lamp, a viewer, a meter and a string do without.

**What to do.** Write a name of one word behind the first word; a setup has its name in quotes.

\`\`\`plate
setup "Whelk shell" {
  mirror M1 at (1100, 100) mm
}
\`\`\``,
  example: `setup "Whelk shell" {
  mirror at (1100, 100) mm
}
`,
  message: d => `This ${text(d, 'kind')} has no name, so nothing can refer to it. Write one behind the first word, as in “${EXAMPLES[text(d, 'kind')] ?? `${text(d, 'kind')} ${text(d, 'kind').charAt(0).toUpperCase()}1`}”.`,
};
