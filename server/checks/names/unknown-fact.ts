import { kindNamed } from '../../model/things/index.ts';
import { didYouMean, text, type Check } from '../check.ts';
import { anyOf, quoted } from '../words.ts';

export const unknownFact: Check = {
  code: 'unknown-fact',
  severity: 'error',
  title: 'A thing has no fact of this name',
  page: `**What you see.** The line has no effect.

**Why.** Each kind of thing takes certain facts and no others. This one is misspelt, or belongs to another kind of thing; the message says which kind takes it, or lists what fits here.

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
  message: d => {
    const not = `${quoted(d, 'phrase')} is no fact of ${owner(text(d, 'of'))}`;
    if (text(d, 'takers') !== '') return `${not}, but of ${takers(text(d, 'takers'))}. Move the line there, or correct its first word.`;
    return `${not}.${didYouMean(d)}${d['suggestion'] === undefined ? ` It takes ${anyOf(text(d, 'known'))}.` : ''}`;
  },
};

const MOST = 4;
/** Those that take it, the first few of many. */
function takers(list: string): string {
  const all = list.split(', ');
  return all.length > MOST ? `${all.slice(0, MOST).join(', ')} and ${all.length - MOST} more` : anyOf(list);
}

const owner = (of: string): string => kindNamed(of)?.article ?? `a ${of}`;
