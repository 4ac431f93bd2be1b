import { millimetres } from '../../model/show.ts';
import { comparisons } from '../../results/discrepancies/disagree.ts';
import { num, text, type Check } from '../check.ts';
import { quoted } from '../words.ts';
import { beamsApart, beamsApartWords } from '../light-apart.ts';
import { effectData, effectWords } from '../effect-words.ts';

export const readingsContradict: Check = {
  code: 'readings-contradict',
  severity: 'note',
  title: 'Two readings of the same thing differ by more than both leave open',
  page: `**What you see.** One of them is wrong. Mostly it decides what will be recorded which of them is right; meanwhile the mean of two such readings counts, and of a whole and its parts the surer.

**Why.** The same was read twice: on one day, or as a whole and piece by piece, or as a difference and as two paths. They differ by more than three standard uncertainties of their difference, and by more than 1 mm a leg, which where one measures on a mirror makes (common practice). Of a whole and its parts it is only said where a result changes. One of them was misread, or something was moved between them.
Object beams that were metered one by one and all together are held against each other in the same way, from 1 % of the light on (5 % where one of the readings does not say how sure it is): no head is held, and no needle read, more surely than that (common practice).

**What to do.** Measure both once more. Date the readings, and write a \`moved\` line where something was moved: then only the newer ones count.`,
  example: `setup "Whelk shell" {
  laser red {
    coherence length: 5 m
  }
  splitter S1
  mirror M1
  object whelk
  plate P1
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> M1: 750 mm
    -> P1: 721 mm
  beam object from S1 reflected
    -> whelk: 1171 mm
    -> P1: 300 mm
  measured reference: 1471 mm ± 2 mm
  measured reference: 1491 mm ± 2 mm
  expect mismatch < 11 mm
}
`,
  message: d => beamsApartWords(d) ?? `${quoted(d, 'words')} is ${millimetres(Math.abs(num(d, 'difference')))} ${num(d, 'difference') > 0 ? 'more' : 'less'} than ${text(d, 'other')}${d['line'] === undefined ? ' say' : `, in line ${num(d, 'line')}, says`}${d['effect'] === undefined ? '. No result changes by it as things stand, but one of the two is wrong' : `, and ${effectWords(d)}`}. Measure both once more; date them, and write “moved” where something was moved between.`,
  run: r => [...beamsApart(r), ...comparisons(r).contradictions.map(c => ({
    code: 'readings-contradict', at: c.at.reading.at, subject: c.at.reading.words, setup: r.setup.name,
    data: { words: c.at.reading.words, other: c.other, ...(c.before ? { line: c.before.reading.at.line + 1 } : {}), difference: c.difference, u: c.u, ...(c.effect ? effectData(c.effect) : {}) },
  }))],
};
