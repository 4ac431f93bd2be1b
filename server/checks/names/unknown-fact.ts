import { kindNamed } from '../../model/things/index.ts';
import { didYouMean, text, type Check } from '../check.ts';
import { anyOf, quoted } from '../words.ts';

export const unknownFact: Check = {
  code: 'unknown-fact',
  severity: 'error',
  title: 'A thing has no fact of this name',
  page: `**What you see.** The line has no effect.

**Why.** Each kind of thing takes certain facts and no others. This one is misspelt, or belongs to another kind of thing; the message lists what fits here.

**What to do.** Correct it. Anything worth keeping that no fact covers stands in \`note: "…"\`.

\`\`\`plate
setup "Whelk shell" {
  room {
    temperature: 21 °C
  }
}
\`\`\``,
  example: `setup "Whelk shell" {
  room {
    temprature: 21 °C
  }
}
`,
  message: d => `${quoted(d, 'phrase')} is no fact of ${owner(text(d, 'of'))}.${didYouMean(d)}${d['suggestion'] === undefined ? ` It takes ${anyOf(text(d, 'known'))}.` : ''}`,
};

const owner = (of: string): string => kindNamed(of)?.article ?? `a ${of}`;
