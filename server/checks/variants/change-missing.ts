import { text, type Check } from '../check.ts';
import { quote, quoted } from '../words.ts';

export const changeMissing: Check = {
  code: 'change-missing',
  severity: 'error',
  title: 'A line of a variant does not say what is to change',
  page: `**What you see.** The line has no effect.

**Why.** A line of a variant names a thing and says what is otherwise: where it stands, one of its facts, or which item of an inventory it is. This one names the thing only, or says it in a way that is not understood.

**What to do.** Write \`P1 at (700, 650) mm\`, \`S1.reflects: 90%\`, \`M1 = lab.flat-150\`, or a block of facts.

\`\`\`plate
setup "Whelk shell" {
  splitter S1
  variant "more light" {
    S1.reflects: 90%
  }
}
\`\`\``,
  example: `setup "Whelk shell" {
  splitter S1
  variant "more light" {
    S1 reflects: 90%
  }
}
`,
  message: d => `${quoted(d, 'written')} does not say what is to change about ${text(d, 'thing')}. Write ${d['suggestion'] === undefined ? `“${text(d, 'thing')} at (700, 650) mm”, “${text(d, 'thing')}.FACT: VALUE” or a block of facts` : quote(text(d, 'suggestion'))}.`,
};
