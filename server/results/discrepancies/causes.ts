/**
 * The single cause that explains most of the readings that differ: a leg or a place that is not as planned, a string that is too long, a misreading. Each candidate is
 * fitted to all readings by least squares, with its slopes from the reverse sweep; what remains, in standard uncertainties squared, and how far the cause itself
 * would lie outside its own spread, tell which of them it is.
 */
import { standardUncertainty } from '../../model/quantity.ts';
import { LENGTH, NUMBER, type Dim } from '../../model/units.ts';
import type { Place } from '../../model/model.ts';
import type { Cell } from '../graph.ts';
import type { Results } from '../plan.ts';
import { comparisons, type Residual } from './disagree.ts';

export interface Cause {
  readonly kind: 'input' | 'string' | 'misread';
  /** the input, the string, or the words of the reading */
  readonly name: string;
  readonly words: string;
  /** by how much the input is more than planned, the string too long (a share), the reading too large */
  readonly amount: number;
  readonly dim: Dim;
  readonly at: Place | undefined;
  /** how many of the readings that differ it explains */
  readonly explains: number;
  /** what remains, in squares of standard uncertainties */
  readonly left: number;
}

export interface Diagnosis {
  /** readings that differ from the plan */
  readonly differing: readonly Residual[];
  /** the likeliest, and others that explain as much; empty where no single cause explains most of them */
  readonly causes: readonly Cause[];
}

/** From this on two causes can be told apart. */
const APART = 1;
/** Amounts by which one misreads, m; others are less likely, by as much as two standard uncertainties. */
const MISREAD: readonly number[] = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1];
const NOT_ROUND = 4;
const DIFFERS = 3;
/** Beyond so many readings no single cause is looked for. */
const MOST = 500;

/** Undefined where fewer than two comparisons fail, or no result changes. */
export function diagnosis(r: Results): Diagnosis | undefined {
  const { residuals, contradictions: all } = comparisons(r);
  const contradictions = all.filter(c => c.effect);
  const differing = residuals.filter(x => x.differs);
  if (differing.length === 0 || differing.length + contradictions.length < 2 || residuals.length > MOST) return undefined;
  if (contradictions.length === 0 && !differing.some(x => x.effect)) return undefined;
  const most = candidates(residuals, r).filter(c => c.explains > differing.length / 2).sort((a, b) => a.left - b.left);
  return { differing, causes: most.filter(c => c.left <= most[0]!.left + APART) };
}

interface Candidate extends Pick<Cause, 'kind' | 'name' | 'words' | 'dim' | 'at'> {
  /** by how much each reading would differ from the plan, for one unit of the cause */
  readonly slopes: readonly number[];
  /** standard uncertainty of the cause itself; 0 where nothing is said of it */
  readonly u: number;
}

function candidates(all: readonly Residual[], r: Results): Cause[] {
  return [...inputs(all, r), ...strings(all, r), ...misreadings(all)].flatMap(c => fitted(c, all) ?? []);
}

/** What the plans rest on. */
function inputs(all: readonly Residual[], { graph }: Results): Candidate[] {
  const sweeps = all.map(x => graph.gradient(x.subject.plan!));
  const found = new Set<Cell>(sweeps.flatMap(g => [...g].filter(([, slope]) => Math.abs(slope) > 1e-6).map(([c]) => c)));
  return [...found].sort((a, b) => a.index - b.index).map(c => ({
    kind: 'input', name: c.name, words: c.words, dim: c.dim, at: c.at, u: standardUncertainty(graph.value(c)!, c.spread), slopes: sweeps.map(g => g.get(c) ?? 0),
  }));
}

/** A string that is too long by a share reads too little by that share. One that took a single reading is no cause of its own. */
function strings(all: readonly Residual[], { graph, values }: Results): Candidate[] {
  const names = new Set(all.flatMap(x => x.taken.reading.by?.name ?? []));
  return [...names].flatMap(name => {
    const own = all.filter(x => x.taken.reading.by?.name === name);
    if (own.length < 2) return [];
    const by = own[0]!.taken.reading.by!;
    const stretch = by.thing && values.fact(by.thing, 'stretch');
    return [{
      kind: 'string' as const, name, words: name, dim: NUMBER, at: stretch?.at ?? by.at, u: stretch && !stretch.missing ? graph.uncertainty(stretch) : 0,
      slopes: all.map(x => (own.includes(x) ? -graph.value(x.taken.length)! : 0)),
    }];
  });
}

const misreadings = (all: readonly Residual[]): Candidate[] => all.map(x => ({
  kind: 'misread', name: x.taken.reading.words, words: `the reading of ${x.taken.reading.words}`, dim: LENGTH, at: x.taken.reading.at, u: 0, slopes: all.map(o => (o === x ? 1 : 0)),
}));

function fitted(c: Candidate, all: readonly Residual[]): Cause | undefined {
  let [top, bottom] = [0, c.u > 0 ? c.u ** -2 : 0];
  for (const [i, x] of all.entries()) {
    top += (c.slopes[i]! * x.difference) / x.u ** 2;
    bottom += (c.slopes[i]! / x.u) ** 2;
  }
  if (!(bottom > 0)) return undefined;
  const amount = top / bottom;
  const rest = all.map((x, i) => (x.difference - c.slopes[i]! * amount) / x.u);
  let left = rest.reduce((s, z) => s + z * z, c.u > 0 ? (amount / c.u) ** 2 : 0);
  if (c.kind === 'misread' && !isRound(amount, all[c.slopes.indexOf(1)]!.u)) left += NOT_ROUND;
  const still = rest.filter(z => Math.abs(z) > DIFFERS).length;
  const { kind, name, words, dim, at } = c;
  return { kind, name, words, dim, at, amount, left, explains: all.filter(x => x.differs).length - still };
}

const isRound = (amount: number, u: number): boolean => MISREAD.some(m => Math.abs(Math.abs(amount) - m) <= Math.min(u, m / 5));
