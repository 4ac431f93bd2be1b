import { num, text, type Check } from '../check.ts';
import { quote } from '../words.ts';

const by = (meter: string): string => (meter === '' ? 'a meter that is not named' : meter);

const KIND: Readonly<Record<string, string>> = { light: 'light for each area', bare: 'a bare number', power: 'a power on a head of unknown size' };

export const metersNotComparable: Check = {
  code: 'meters-not-comparable',
  severity: 'warning',
  title: 'Two readings of light make no ratio: they are in the divisions of two meters, or of two kinds',
  page: `**What you see.** The beam ratio, the light in the corners or the polarized share is missing.

**Why.** A bare number counts in the divisions of one meter only. Two of one meter make a ratio, because the size of the divisions falls out; two of different meters do not, nor a bare number and a reading in µW/cm². A power on a head whose size is not written counts like a bare number.

**What to do.** Read both with the same meter, or both in units.`,
  example: `setup "Whelk shell" {
  laser red {
    coherence length: 5 m
  }
  splitter S1
  object whelk
  plate P1
  meter needle {
    head: 8 mm
  }
  meter teaching-box {
    head: 10 mm
  }
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1500 mm
  beam object from S1 reflected
    -> whelk: 1200 mm
    -> P1: 300 mm
  measured reference at P1: 62 by needle
  measured object at P1: 14 by teaching-box
}
`,
  message: d => `${quote(text(d, 'one'))} and ${quote(text(d, 'other'))} of line ${num(d, 'line')} make no ratio: ${d['kind'] === d['otherKind'] ? `what ${by(text(d, 'by'))} and ${by(text(d, 'with'))} show does not compare` : `the one is ${KIND[text(d, 'kind')] ?? ''}, the other ${KIND[text(d, 'otherKind')] ?? ''}`}. Read both with the same meter, or both in units.`,
};
