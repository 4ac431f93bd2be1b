import { text, type Check } from '../check.ts';

export const braceOnOwnLine: Check = {
  code: 'brace-on-own-line',
  severity: 'error',
  title: 'A brace stands in the middle of a line',
  page: `**What you see.** The rest of the line is not read.

**Why.** A block opens with \`{\` as the last thing of its line and closes with \`}\` alone on a line; one fact a line stands between them.

**What to do.** Start a new line after \`{\` and before \`}\`. A block with nothing in it can be left out.

\`\`\`plate
setup "Whelk shell" {
  room {
    temperature: 21 °C
  }
}
\`\`\``,
  example: `setup "Whelk shell" {
  room {}
}
`,
  message: d => `A “${text(d, 'found')}” stands among other text. A block opens with “{” at the end of a line and closes with “}” alone on a line: start a new line ${d['found'] === '{' ? 'after' : 'before'} it.`,
};
