import { MAX_PATH } from '../../model/arms.ts';
import { num, text, type Check } from '../check.ts';
import { whole } from '../words.ts';

/** Few beams of many legs each, between two mirrors. */
const LEGS = MAX_PATH + 1;

export const pathTooLong: Check = {
  code: 'path-too-long',
  severity: 'error',
  title: 'Light reaches a beam over too many legs',
  page: `**What you see.** The beam, and what it feeds, is not computed.

**Why.** A beam is followed back to its laser over at most ${whole(MAX_PATH)} legs, so that an edit stays quick. So many are mostly written by another program.

**What to do.** Leave out the legs that say nothing.`,
  get example() { return `setup "Whelk shell" {
  laser red
  mirror M1
  mirror M2
  splitter S1
  beam stop B1
  beam raw from red
${Array.from({ length: LEGS }, (_, i) => (i === LEGS - 1 ? '    -> S1: 10 mm\n' : `    -> M${1 + (i % 2)}: 10 mm\n`)).join('')}  beam reference from S1 through
    -> B1: 10 mm
}
`; },
  message: d => `The beam “${text(d, 'beam')}” begins ${whole(num(d, 'legs'))} legs behind its laser, and at most ${whole(num(d, 'limit'))} are followed, so it is not computed. Leave out the legs that say nothing.`,
};
