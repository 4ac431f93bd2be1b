import { didYouMean, type Check } from '../check.ts';
import { also, quoted } from '../words.ts';

export const unknownWord: Check = {
  code: 'unknown-word',
  severity: 'error',
  title: 'A line begins with a word that opens no statement',
  page: `**What you see.** The line has no effect.

**Why.** A line of a setup begins with the kind of a thing (\`laser\`, \`splitter\`, \`mirror\`, \`plate\` …), with a fact of the setup (\`table\`, \`beam height\` …), or with \`beam\`, \`measured\`, \`aim\`, \`expect\`, \`accept\`, \`let\`, \`variant\`, \`shot\` or \`process\`.

**What to do.** Correct the spelling. What is only a remark stands behind \`//\`.

\`\`\`plate
setup "Whelk shell" {
  mirror M1 at (1100, 100) mm
}
\`\`\``,
  example: `setup "Whelk shell" {
  miror M1 at (1100, 100) mm
}
`,
  message: d => `${quoted(d, 'word')} opens no statement, so this line has no effect.${didYouMean(d)}${also(d['suggestion'] === undefined ? 'A line begins with the kind of a thing, such as mirror, with a fact, or with a word such as beam or measured; remarks stand behind “//”.' : '')}`,
};
