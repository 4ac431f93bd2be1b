import type { Problem } from '../../model/model.ts';
import { millimetres, show } from '../../model/show.ts';
import { LENGTH } from '../../model/units.ts';
import { diagnosis, type Cause, type Diagnosis } from '../../results/discrepancies/causes.ts';
import type { Results } from '../../results/plan.ts';
import { num, text, type Check } from '../check.ts';
import { capital } from '../words.ts';

export const likeliestCause: Check = {
  code: 'likeliest-cause',
  severity: 'note',
  title: 'Several readings differ, and what most likely is behind them',
  page: `**What you see.** Several readings do not fit the plan or each other. One cause that explains most of them is named: a leg or a place that is not as planned, a string that is too long, a reading that was misread. Causes that explain as much are named with it. Where no single one explains most of them, it is said.

**Why.** Each cause is fitted to all readings at once, also to those that do fit. What is left over afterwards, in standard uncertainties, and how far the cause would lie outside its own ±, tell how likely it is. A misreading that is no round number of centimetres counts as less likely.

**What to do.** Check the cause first. It is the likeliest, not a certain one.`,
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
    -> whelk: 1183 mm
    -> P1: 300 mm
  measured S1 -> M1: 762 mm ± 2 mm
  measured reference: 1483 mm ± 3 mm
  measured object - reference: 0 mm ± 1 mm
  expect mismatch < 5 mm
}
`,
  message: d => {
    const [count, explains] = [num(d, 'count'), num(d, 'explains')];
    if (d['cause'] === undefined) return `${count} readings differ from the plan, and no single cause explains most of them: more than one thing stands elsewhere, or more than one reading is wrong. Measure leg by leg.`;
    const those = count === 1 ? 'the reading that differs from the plan' : explains === count ? `${count === 2 ? 'both' : `all ${count}`} readings that differ from the plan` : `${explains} of the ${count} readings that differ from the plan`;
    return `${capital(text(d, 'cause'))}: that explains ${those}.${d['others'] === undefined ? '' : ` As likely: ${text(d, 'others')}.`} Check that first.`;
  },
  run: r => {
    const found = diagnosis(r);
    return found ? [problem(found, r)] : [];
  },
};

const OTHERS = 3;

function problem({ differing, causes }: Diagnosis, r: Results): Problem {
  const [first, ...others] = causes;
  const at = first?.at ?? differing[0]!.taken.reading.at;
  const base = { code: 'likeliest-cause', at, subject: r.setup.name, setup: r.setup.name };
  if (!first) return { ...base, data: { count: differing.length } };
  const more = others.slice(0, OTHERS).map(causeWords);
  return { ...base, data: { count: differing.length, explains: first.explains, kind: first.kind, name: first.name, amount: first.amount, cause: causeWords(first), ...(more.length > 0 ? { others: more.join('; ') } : {}) } };
}

/** `M2 stands 12 mm further in x than planned` */
function causeWords({ kind, words, amount, dim }: Cause): string {
  if (kind === 'string') return `“${words}” is ${(Math.abs(amount) * 100).toPrecision(2)} % too ${amount > 0 ? 'long' : 'short'}`;
  const by = dim === LENGTH ? millimetres(Math.abs(amount)) : show(Number(Math.abs(amount).toPrecision(2)), dim);
  if (kind === 'misread') return `${words.replace(/^the reading of (.*)$/, 'the reading of “$1”')} is ${by} too ${amount > 0 ? 'large' : 'small'}`;
  const axis = /^([xyz]) of (.+)$/.exec(words);
  if (axis) return `${axis[2]!} stands ${by} ${amount > 0 ? 'further' : 'less far'} in ${axis[1]!} than planned`;
  const leg = /^leg (.+?)(?: as planned)?$/.exec(words);
  return leg ? `the leg ${leg[1]!} is ${by} ${amount > 0 ? 'longer' : 'shorter'} than planned` : `${words} is ${by} ${amount > 0 ? 'more' : 'less'} than planned`;
}
