/** The arms of a plate leg by leg, with what was read in one run. */
import type { ArmLength } from '../../results/paths/arm-lengths.ts';
import { legWords } from '../../results/legs/legs.ts';
import { referenceFrom } from '../../results/places/angles.ts';
import type { Results } from '../../results/plan.ts';
import type { Run } from '../../results/readings/lengths.ts';
import { showCell } from '../chain.ts';
import { asWritten } from './words.ts';

export interface ArmTable {
  readonly name: string;
  readonly role: 'reference' | 'object';
  readonly legs: readonly { readonly words: string; readonly text: string }[];
  /** runs that were read as one, where what was read is not the sum of their legs; `words` say so */
  readonly runs: readonly { readonly words: string; readonly text: string }[];
  /** the arm itself was read in one run, which is not the sum of its legs */
  readonly inOneRun?: true;
  readonly total: string;
  /** the total as it counts for coherence, where glass makes a difference */
  readonly withGlass?: string;
  /** at which it meets the plate, from its normal */
  readonly angle?: string;
}

/** The table of an arm, leg by leg. */
export function armTable(a: ArmLength, r: Results): ArmTable {
  const { graph, legs } = r;
  const runs = runsApart(a, r);
  const total = showCell(graph, a.length).text;
  const withGlass = showCell(graph, a.coherencePath).text;
  return {
    name: a.arm.name, role: a.arm.role, total, runs: runs.filter(x => x.length !== a.length).map(x => ({ words: runWords(x), text: showCell(graph, x.length).text })), ...(runs.some(x => x.length === a.length) ? { inOneRun: true } : {}), ...(withGlass !== total ? { withGlass } : {}), ...(a.angle && !a.angle.cell.missing ? { angle: `${showCell(graph, a.angle.cell).text}${fromWords(a, r)}` } : {}),
    legs: a.legs.map(l => ({ words: legWords(l), text: l.length?.kind === 'quantity' && !legs.get(l)!.rule ? asWritten(l.length.quantity) : showCell(graph, legs.get(l)!).text })),
  };
}

/** Where a reference comes from that does not run level, as far as that is written and no places tell. */
function fromWords({ arm, angle }: ArmLength, { values }: Results): string {
  const from = arm.role === 'reference' && angle && angle.cell !== angle.byPlaces ? referenceFrom(arm.plate, values) : 'the side';
  return from === 'the side' ? '' : `, from ${from}`;
}

/** Name, leg and length of each row of an arm. */
export function armRows(a: ArmTable): (readonly [name: string, words: string, text: string])[] {
  return [
    ...a.legs.map(({ words, text }, i) => [i === 0 ? a.name : '', words, text] as const), ...a.runs.map(({ words, text }) => ['', words, text] as const),
    [a.legs.length === 0 ? a.name : '', a.inOneRun ? 'in all, as read in one run' : 'in all', a.total],
    ...(a.withGlass !== undefined ? [['', 'with its glass', a.withGlass] as const] : []), ...(a.angle !== undefined ? [['', 'arrives at', a.angle] as const] : []),
  ];
}

/** Runs of an arm that were read as one, where their legs do not add up to what was read. */
export function runsApart({ runs }: ArmLength, { graph, legs }: Results): readonly Run[] {
  return runs.filter(run => !(Math.abs(run.legs.reduce((sum, l) => sum + (graph.value(legs.get(l)!) ?? Number.NaN), 0) - graph.value(run.length)!) < APART));
}
/** Where both read alike, m. */
const APART = 5e-5;
export const runWords = (run: Run): string => `${run.words}, as read in one run`;
