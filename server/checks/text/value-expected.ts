import { text, type Check } from '../check.ts';
import { capital, quoted } from '../words.ts';

export const valueExpected: Check = {
  code: 'value-expected',
  severity: 'error',
  title: 'The line stops, or goes on with something else, where a value belongs',
  page: `**What you see.** The fact is not there yet; every other line keeps its meaning.

**Why.** After \`:\`, \`=\`, \`->\`, \`±\` or a word such as \`at\` something must follow. The message says what.

**What to do.** Write it, or delete the unfinished part. A value that the program is to find is written \`?\`.

\`\`\`plate
setup "Whelk shell" {
  beam height: 120 mm
}
\`\`\``,
  example: `setup "Whelk shell" {
  beam height:
}
`,
  message: d => {
    if (d['colon'] !== undefined) return `A colon is missing before the length. Write ${quoted(d, 'colon')}.`;
    const wanted = capital(text(d, 'wanted') || 'a value');
    return text(d, 'found') === '' ? `${wanted} is missing: the line stops too early. Write it, or delete what is unfinished.` : `${wanted} belongs here, and not ${quoted(d, 'found')}. Write it, or delete what is unfinished.`;
  },
};
