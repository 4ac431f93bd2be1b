import { didYouMean, text, type Check } from '../check.ts';
import { anyOf, quoted } from '../words.ts';

export const unknownPort: Check = {
  code: 'unknown-port',
  severity: 'error',
  title: 'A beam leaves a thing by a way that it does not have',
  page: `**What you see.** It is not clear which light the beam carries.

**Why.** Behind the name of a splitter or hologram stands which of its beams is meant: a splitter has \`through\` and \`reflected\`, a hologram \`diffracted\` and \`through\`.

**What to do.** Write one of the words that the message lists.

\`\`\`plate
setup "Whelk shell" {
  laser red
  splitter S1
  beam stop B1
  beam stop B2
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> B1: 400 mm
  beam object from S1 reflected
    -> B2: 400 mm
}
\`\`\``,
  example: `setup "Whelk shell" {
  laser red
  splitter S1
  beam stop B1
  beam stop B2
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> B1: 400 mm
  beam object from S1 reflcted
    -> B2: 400 mm
}
`,
  message: d => (text(d, 'ports') === '' ? `Light leaves ${text(d, 'article')} in one way only, so ${quoted(d, 'port')} says nothing here. Delete it, or correct the name before it.`
    : `Light leaves ${text(d, 'article')} by ${anyOf(text(d, 'ports'))}, and not by ${quoted(d, 'port')}.${didYouMean(d) || ' Write one of these behind the name.'}`),
};
