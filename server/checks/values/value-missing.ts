import { text, type Check } from '../check.ts';
import { quote } from '../words.ts';

export const valueMissing: Check = {
  code: 'value-missing',
  severity: 'error',
  title: 'A value is not written',
  page: `**What you see.** An unfinished line has no effect. Where legs have no length, the results that need them stay empty.

**Why.** Either the line itself lacks something, which is an error, or a result cannot be told without a value that stands nowhere, which is a warning.

**What to do.** Finish the line. For a leg, measure it with string and write its length behind a colon, or give both of its ends a place with \`at (x, y) mm\`.

\`\`\`plate
setup "Whelk shell" {
  laser red {
    coherence length: 200 mm
  }
  splitter S1
  object whelk
  plate P1
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1471 mm
  beam object from S1 reflected
    -> whelk: 1171 mm
    -> P1: 300 mm
}
\`\`\``,
  example: `setup "Whelk shell" {
  laser red {
    coherence length: 200 mm
  }
  splitter S1
  object whelk
  plate P1
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1471 mm
  beam object from S1 reflected
    -> whelk: 1171 mm
    -> P1
}
`,
  severityOf: d => (text(d, 'prevents') === '' ? 'error' : 'warning'),
  message: d => {
    const [phrase, of, prevents] = [text(d, 'phrase'), text(d, 'of'), text(d, 'prevents')];
    if (prevents === '') return `${/^(?:an?|the|what)\b/.test(phrase) ? `${quote(of)} needs ${phrase}` : `${quote(phrase)} of ${quote(of)} has no value`}. Write it, or delete the line.`;
    return `The ${phrase} of ${of} is not written, so that ${prevents} cannot be told. Measure it and write it behind a colon, or give both ends a place.`;
  },
};
