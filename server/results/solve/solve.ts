/** Finds the numbers that are written `?`. See *Finding what is written ?* in `server/core.md`. */
import type { Missing } from '../cell.ts';
import type { GoalResult } from '../goals.ts';
import type { Offsets } from '../readings/offsets.ts';
import { plan, type Results } from '../plan.ts';
import { descend } from './descend.ts';
import { rounded } from './rounded.ts';
import { shareAt, Space, valueAt } from './space.ts';
import { startsIn, type Start } from './starts.ts';
import { sureness, type Sureness } from './sure.ts';
import { unknownsOf, type Unknown } from './unknowns.ts';
import { missedBy, wishesOf, type Wish } from './wishes.ts';

/** One number that was found. */
export interface Found {
  readonly unknown: Unknown;
  /** SI */
  readonly value: number;
  /** standard uncertainty, SI: what the other numbers leave open */
  readonly u: number;
  /** it could be something else, if others follow */
  readonly loose: boolean;
  /** of one unknown on its own: between these all will do, SI */
  readonly range?: readonly [number, number];
}

/** What one set of values does. */
export interface Attempt {
  /** SI */
  readonly values: readonly { readonly unknown: Unknown; readonly value: number }[];
  /** the same with how sure they are; that is worked out when somebody asks */
  readonly found: readonly Found[];
  /** attempts of one stretch are one answer: any of them will do */
  readonly stretch: number;
  /** the setup with these values */
  readonly results: Results;
  /** the conditions that it misses, with by how much, SI */
  readonly missed: readonly { readonly wish: Wish; readonly by: number }[];
  /** where it misses any: those that it meets and that keep the unknowns from where the missed ones want them */
  readonly against: readonly Wish[];
}

/** Why there is nothing to look for. */
export type Idle =
  | { readonly kind: 'nothing open' }
  /** no goal is there that any of the unknowns moves */
  | { readonly kind: 'no goal'; readonly goals: readonly GoalResult[] }
  /** limits that leave nothing */
  | { readonly kind: 'no room'; readonly unknown: Unknown }
  /** the results that the goals are about cannot be told, whatever the unknowns are */
  | { readonly kind: 'untold'; readonly goals: readonly { readonly goal: GoalResult; readonly why: Missing | undefined }[] };

export interface Solving {
  readonly unknowns: readonly Unknown[];
  readonly idle?: Idle;
  /** One after the other, as they are found: each is worked out when it is asked for. No two are the same; those that look best from afar come first. */
  readonly attempts: () => Generator<Attempt>;
}

export interface SolveOptions {
  /** what the readings of another setup add to its plan, where this one is a changed copy of it */
  readonly offsets?: Offsets;
  /** false: it is to end now */
  readonly goOn?: () => boolean;
}

/** A setup is planned again at an answer, since which point of a plate is the worst and the like may change; so often at most. */
const PLANS = 5;
const FIRST = 6;
const ROUNDING = 1e-9;

/** @param base the setup as written, with its `?` */
export function solve(base: Results, { offsets, goOn = () => true }: SolveOptions = {}): Solving {
  const unknowns = unknownsOf(base).filter(u => !base.light.solved.some(s => u.name === `${s.splitter.id}.reflects`));
  const none = (idle?: Idle): Solving => ({ unknowns, ...(idle ? { idle } : {}), attempts: function* () { /* there is none */ } });
  if (unknowns.length === 0) return none(base.light.solved.length === 0 ? { kind: 'nothing open' } : undefined);
  const empty = unknowns.find(u => !(u.high > u.low));
  if (empty) return none({ kind: 'no room', unknown: empty });
  const planned = (t: readonly number[]): Results => {
    const results = plan(base.setup, { before: base.graph, found: new Map(unknowns.map((u, i) => [u.name, valueAt(u, t[i]!)])), ...(offsets ? { offsets } : {}) });
    results.graph.settle();
    return results;
  };
  const firsts = startsWith(base, unknowns, planned, goOn);
  const first = firsts.next().value!;
  if (first.wishes.length === 0) {
    const able = first.results.goals.filter(g => g.cell && !g.cell.missing);
    const untold = first.results.goals.filter(g => !able.includes(g));
    return none(able.length > 0 || untold.length === 0 ? { kind: 'no goal', goals: able } : { kind: 'untold', goals: untold.map(goal => ({ goal, why: goal.cell?.missing })) });
  }
  return { unknowns, attempts: function* () {
    const exact: (readonly number[])[] = [];
    let met = false;
    // How a setup is computed may depend on where it was planned: where nothing meets the goals, it is looked at from elsewhere.
    let from: First | undefined = first;
    for (let k = 0; from && k < PLACES; k++) {
      for (const a of attempts(new Space(from.results, unknowns, from.wishes), exact, k * APART, planned, goOn)) { met ||= a.missed.length === 0; yield a; }
      from = met || !goOn() ? undefined : firsts.next().value;
    }
  } };
}

interface First { readonly results: Results; readonly wishes: readonly Wish[] }

/** The setup with values for its unknowns: first those with which the most of its goals can be told. */
function* startsWith(base: Results, unknowns: readonly Unknown[], planned: (t: readonly number[]) => Results, goOn: () => boolean): Generator<First, undefined> {
  const told = (r: Results): number => r.goals.filter(g => g.cell && !g.cell.missing).length;
  const found: First[] = [];
  for (let k = 0; k < FIRST; k++) {
    // What is usual, else the middle; then places that lie apart in each unknown: multiples of the golden ratio and its powers.
    const results = planned(unknowns.map((u, i) => (k === 0 ? (u.usual !== undefined && u.usual > u.low && u.usual < u.high ? shareAt(u, u.usual) : 0.5) : (0.5 + k * GOLDEN ** (i + 1)) % 1)));
    found.push({ results, wishes: moved(wishesOf(results), results, unknowns) });
    if (told(results) === base.setup.goals.length || !goOn()) break;
  }
  const best = found.reduce((a, b) => (told(b.results) > told(a.results) ? b : a));
  yield best;
  for (let k = found.length; k < found.length + FIRST; k++) {
    const results = planned(unknowns.map((_, i) => (0.5 + k * GOLDEN ** (i + 1)) % 1));
    const wishes = moved(wishesOf(results), results, unknowns);
    if (wishes.length === best.wishes.length) yield { results, wishes };
  }
  return undefined;
}
const GOLDEN = 0.618_033_988_75;
/** From so many places a setup is looked at. */
const PLACES = 3;
/** Numbers of stretches that were seen from different places do not meet. */
const APART = 1000;

/** The conditions that any of the unknowns moves. */
function moved(wishes: readonly Wish[], { graph }: Results, unknowns: readonly Unknown[]): Wish[] {
  const cells = new Set(unknowns.map(u => graph.find(u.name)));
  return wishes.filter(w => graph.ancestors(w.cell).some(c => cells.has(c)));
}

function* attempts(space: Space, exact: (readonly number[])[], apart: number, planned: (t: readonly number[]) => Results, goOn: () => boolean): Generator<Attempt> {
  const seen: Attempt[] = [];
  for (const { t: start, stretch: own, range } of startsIn(space, goOn)) {
    if (!goOn()) return;
    const { t } = descend(space, start, new Set(), goOn);
    if (exact.some(e => e.every((v, i) => Math.abs(v - t[i]!) < ONE))) continue;
    exact.push(t);
    const attempt = settled(space, t, { stretch: own + apart, ...(range ? { range } : {}) }, planned, goOn);
    if (!attempt || seen.some(s => same(s, attempt))) continue;
    seen.push(attempt);
    yield attempt;
  }
}

/** Answers that lie nearer to each other, as shares of the range, are one. */
const ONE = 1e-5;

/** The answer that is nearest to a start, in values that can be set, with the setup planned there. */
function settled(first: Space, start: readonly number[], { stretch, range }: Pick<Start, 'stretch' | 'range'>, planned: (t: readonly number[]) => Results, goOn: () => boolean): Attempt | undefined {
  const { unknowns } = first;
  let space = first;
  let t = start;
  for (let k = 1; ; k++) {
    t = rounded(space, descend(space, t, new Set(), goOn).t, goOn);
    const results = planned(t);
    const wishes = moved(wishesOf(results), results, unknowns);
    if (wishes.length === 0) return undefined;
    const now = new Space(results, unknowns, wishes);
    const missed = wishes.flatMap((wish, i) => {
      const by = missedBy(wish, results.graph.value(wish.cell)!);
      return Math.abs(by) <= Math.max(wish.tolerance, now.finest(t, i), ROUNDING * Math.abs(wish.value)) ? [] : [{ wish, by }];
    });
    // Planned there, another point of the plate may be the worst: what was found is then no answer yet.
    const told = space.results(t);
    const stays = wishes.length === space.wishes.length && wishes.every((w, i) => Math.abs(missedBy(w, results.graph.value(w.cell)!) - missedBy(w, told[i]!)) <= w.little * 1e-3);
    // What could be told from what is asked for may differ as well.
    const sharp = wishes.some((w, i) => w.tolerance < 0.9 * (space.wishes[i]?.tolerance ?? 0));
    if (missed.length > 0 && (!stays || sharp) && k < PLANS && goOn()) { space = now; continue; }
    let sure: Sureness | undefined;
    const at = t;
    return { stretch, results, missed, values: unknowns.map((unknown, i) => ({ unknown, value: valueAt(unknown, at[i]!) })), against: missed.length === 0 ? [] : against(now, at, missed.map(m => m.wish)), get found() {
      sure ??= sureness(now, results.graph, at);
      return unknowns.map((unknown, i) => ({ unknown, value: valueAt(unknown, at[i]!), u: sure!.u[i]!, loose: sure!.loose[i]!, ...(range ? { range: [valueAt(unknown, range[0]), valueAt(unknown, range[1])] as const } : {}) }));
    } };
  }
}

/** Conditions that hold the unknowns where others are missed: those that are met with nothing to spare, and move with the same unknowns. */
function against(space: Space, t: readonly number[], missed: readonly Wish[]): Wish[] {
  const [slopes, results] = [space.slopes(t), space.results(t)];
  const moves = (w: Wish, k: number): boolean => slopes[space.wishes.indexOf(w)]![k] !== 0;
  return space.wishes.filter((w, i) => !missed.some(m => m.goal === w.goal) && (w.sort === 'equal' || Math.abs(results[i]! - w.value) < w.little) && missed.some(m => t.some((_, k) => moves(m, k) && moves(w, k))));
}

const same = (a: Attempt, b: Attempt): boolean => a.results.graph.found !== undefined && [...a.results.graph.found].every(([name, v]) => Math.abs(v - b.results.graph.found!.get(name)!) <= 1e-9 * Math.max(1e-3, Math.abs(v)));
