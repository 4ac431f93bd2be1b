import { millimetres } from '../../model/show.ts';
import { lightApart, lightApartWords } from '../light-apart.ts';
import { comparisons } from '../../results/discrepancies/disagree.ts';
import { num, text, type Check } from '../check.ts';
import { capital, quoted } from '../words.ts';
import { effectData, effectWords } from '../effect-words.ts';

export const readingDisagrees: Check = {
  code: 'reading-disagrees',
  severity: 'note',
  title: 'A reading and the plan differ by more than both leave open, and a result changes',
  page: `**What you see.** The setup will not do what was planned: a part records brighter or darker by 5 points or more, or an expectation is met by the plan and not by the reading, or the other way round.

**Why.** They differ by more than three standard uncertainties of their difference. A plan without ± counts as exact, but where on a mirror one measures makes 1 mm a leg at least (common practice). The reading counts; the plan stays beside it.
Of a power it is said where the two differ by more than 30 %, which is what shows in an exposure (common practice), of the wheel of a splitter from 5 points on, of an image that a plate takes up from 1 mm on.

**What to do.** Look where the thing stands, and measure once more. If the reading holds, move the thing, or write what was read into the plan.`,
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
    -> whelk: 1179 mm
    -> P1: 300 mm
  measured S1 -> M1: 758 mm ± 2 mm
  expect mismatch < 5 mm
}
`,
  message: d => lightApartWords(d) ?? `${capital(text(d, 'thing'))}, read in ${quoted(d, 'words')}, is ${millimetres(Math.abs(num(d, 'difference')))} ${num(d, 'difference') > 0 ? 'more' : 'less'} than planned (${millimetres(num(d, 'planned'))}), and ${effectWords(d)}. Look where it stands and measure once more; the reading counts meanwhile.`,
  run: r => [...lightApart(r), ...comparisons(r).residuals.flatMap(x => (x.effect ? [{
    code: 'reading-disagrees', at: x.taken.reading.at, subject: x.taken.reading.words, setup: r.setup.name,
    data: { words: x.taken.reading.words, thing: x.subject.words, difference: x.difference, u: x.u, planned: r.graph.value(x.subject.plan!)!, ...effectData(x.effect) },
  }] : []))],
};
