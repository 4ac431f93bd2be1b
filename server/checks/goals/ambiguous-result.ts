import { text, type Check } from '../check.ts';

export const ambiguousResult: Check = {
  code: 'ambiguous-result',
  severity: 'error',
  title: 'A short name means several results',
  page: `**What you see.** The \`expect\` or \`aim\` line is not checked.

**Why.** The short name fits several results, for instance the mismatch of two plates.

**What to do.** Write the full name of the one that is meant; the message lists them.`,
  example: `setup "Two shells" {
  laser red {
    coherence length: 5 m
  }
  splitter S1
  splitter S2
  splitter S3
  object whelk
  object cockle
  plate P1
  plate P2
  beam raw from red
    -> S1: 350 mm
  beam first from S1 through
    -> S2: 500 mm
  beam second from S1 reflected
    -> S3: 500 mm
  beam reference-1 from S2 through
    -> P1: 900 mm
  beam object-1 from S2 reflected
    -> whelk: 600 mm
    -> P1: 300 mm
  beam reference-2 from S3 through
    -> P2: 900 mm
  beam object-2 from S3 reflected
    -> cockle: 600 mm
    -> P2: 300 mm
  expect mismatch < 10 mm
}
`,
  message: d => `“${text(d, 'name')}” means several results here: ${text(d, 'candidates')}. Write the full name of the one that is meant.`,
};
