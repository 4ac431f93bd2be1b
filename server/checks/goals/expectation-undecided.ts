import { text, type Check } from '../check.ts';
import { withOutcome } from './expectation-failed.ts';

export const expectationUndecided: Check = {
  code: 'expectation-undecided',
  severity: 'note',
  title: 'An expectation can be neither met nor missed: the limit lies inside the uncertainty',
  page: `**What you see.** The result is near the limit, and how near cannot be told.

**Why.** The result is only known within a band, and the limit lies in it.

**What to do.** Measure what makes the result unsure. \`platewright explain FILE RESULT\` lists the inputs, the one that matters most first.`,
  example: `setup "Whelk shell" {
  laser red {
    coherence length: 5 m
  }
  splitter S1
  object whelk
  plate P1
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1471 mm ± 5 mm
  beam object from S1 reflected
    -> whelk: 1180 mm ± 5 mm
    -> P1: 300 mm ± 5 mm
  expect mismatch < 10 mm
}
`,
  message: d => `Undecided: ${text(d, 'result')} is ${text(d, 'shown')}, expected ${text(d, 'limit')}. Measure what makes it unsure.`,
  run: r => withOutcome(r, 'undecided', 'expectation-undecided'),
};
