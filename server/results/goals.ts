/** `expect` lines held against the results: met, not met, or undecided when the limit lies inside the uncertainty. */
import { nearest } from '../model/scope.ts';
import { dimName, unitsFor, type Unit } from '../model/units.ts';
import type { Goal, Problem, Setup } from '../model/model.ts';
import type { Cell, Graph } from './graph.ts';
import type { Light } from './light/light.ts';
import { resultNamed } from './names.ts';
import { interval } from './sampling.ts';
import type { Values } from './values.ts';

export type Outcome = 'met' | 'not met' | 'undecided' | 'not computed yet' | 'cannot be told';

export interface GoalResult {
  readonly goal: Goal;
  readonly outcome: Outcome;
  readonly cell?: Cell;
  readonly value?: number | undefined;
  /** half of the 95 % band, SI */
  readonly give?: number | undefined;
  /** ends of that band; of what counts by its size, of that */
  readonly low?: number | undefined;
  readonly high?: number | undefined;
  readonly limits: readonly number[];
  /** unit in which the limits are written, where they have one */
  readonly unit?: Unit | undefined;
}

/** What goals are held against. */
export interface Figures {
  readonly setup: Setup;
  readonly graph: Graph;
  readonly values: Values;
  readonly published: readonly Cell[];
  readonly aliases: ReadonlyMap<string, readonly Cell[]>;
  readonly light: Pick<Light, 'solved'>;
}

/** Whether it is about what several exposures of a plate come to. That is told of the page as it is written, whose variants they are made in: of a variant alone there is no such thing. */
export const isOfExposures = ({ result }: Goal, { things }: Setup): boolean => result.endsWith('.time of all exposures') || result.split('.').slice(0, -1).some(word => things.get(word)?.kind.word === 'exposure');

/** Results that the language knows and no rule computes yet. */
export const LATER: readonly string[] = ['coverage'];

/** Results that every setup with whole arms has. */
export const USUAL: readonly string[] = ['mismatch', 'brightness', 'object length', 'reference length', 'object angle', 'reference angle', 'lighting angle', 'beam ratio', 'exposure', 'corner light', 'light at the plate', 'fringes'];

/** Evaluates the goals of a setup. Problems (unknown names, wrong units) are reported through the values. */
export function judgeGoals(r: Figures): { goals: GoalResult[]; problems: Problem[] } {
  const problems: Problem[] = [];
  const goals: GoalResult[] = [];
  for (const goal of r.setup.goals) {
    if (r.setup.variant !== undefined && isOfExposures(goal, r.setup)) continue;
    const report = (code: string, data: Problem['data']): void => { problems.push({ code, at: goal.at, subject: goal.result, setup: r.setup.name, data }); };
    const among = r.aliases.get(goal.result);
    const cell = resultNamed(r.graph, r.aliases, goal.result);
    if (!cell) {
      if (among) report('ambiguous-result', { name: goal.result, candidates: among.map(c => c.name).join(', ') });
      else if (later(goal.result)) goals.push({ goal, outcome: 'not computed yet', limits: [] });
      else if (couldBe(goal.result)) goals.push({ goal, outcome: 'cannot be told', limits: [] });
      else {
        const suggestion = nearest(goal.result, [...r.aliases.keys(), ...r.published.map(c => c.name), ...USUAL, ...LATER]);
        report('unknown-result', { name: goal.result, ...(suggestion ? { suggestion } : {}) });
      }
      continue;
    }
    let unit: Unit | undefined;
    const limits = goal.limits.map((l, i) => {
      const c = r.values.expression(l.expr, l.at, `expect ${goal.result} ${i}`, `limit of ${goal.result}`);
      if (!c || c.missing) return undefined;
      if (c.dim !== cell.dim) {
        problems.push({ code: c.unit || c.rule ? 'wrong-unit' : 'missing-unit', at: l.at, subject: goal.result, setup: r.setup.name, data: { found: dimName(c.dim), ...asked(cell), ...(c.unit || c.rule ? {} : { written: limitText(goal, i), suggestion: unitsOf(cell)[0]! }) } });
        return undefined;
      }
      unit ??= c.unit;
      return r.graph.value(c)!;
    });
    if (limits.some(l => l === undefined)) continue;
    goals.push(new Judged(goal, cell, limits as number[], r.graph, unit));
  }
  return { goals, problems };
}

const later = (name: string): boolean => LATER.some(l => name === l || name.endsWith(`.${l}`));
/** Names of results that this setup would have if its arms were whole. */
const couldBe = (name: string): boolean => /(^|\.|\s)(mismatch|brightness|length|coherence path|mode spacing|revival distance|coherence length|linewidth|angle|incidence|fold|mount tilt|beam ratio|split|split for ratio|face loss|effective ratio|polarization|ghost fringes|back face fringes|light|light at the plate|polarized|power|exposure|exposure time|drift|longest exposure|fringes|resolving share|fringe tilt|volume parameter|estimated efficiency|bandwidth|delicacy|allowed movement|allowed warming|image|image distance|image offset|image (?:(?:near |far )?(?:place|blur)|size|depth|angle|colour|brightness)|place|blur|size|depth|colour|parallax|viewing zone)$/.test(name);

/** A limit as it is written: `0.5 in`. */
export const limitText = ({ node, limits }: Goal, i: number): string => node.line.text.slice(limits[i]!.at.start, limits[i]!.at.end);

/** What a limit of a result is, in words, and its units. Fringes that go by in a time are no frequency to anybody. */
const asked = (cell: Cell): { wanted: string; units: string } => ({ wanted: isDrift(cell) ? 'a number of fringes in a time' : dimName(cell.dim), units: unitsOf(cell).join(', ') });
const unitsOf = (cell: Cell): readonly string[] => (isDrift(cell) ? ['fringes/min', 'fringes/s'] : unitsFor(cell.dim));
const isDrift = (cell: Cell): boolean => cell.name.endsWith('.drift');

/** A goal held against its result when somebody asks, since that draws bands. */
class Judged implements GoalResult {
  private found: Judgement | undefined;
  constructor(readonly goal: Goal, readonly cell: Cell, readonly limits: readonly number[], private readonly graph: Graph, readonly unit: Unit | undefined) {}
  private get judged(): Judgement { return this.found ??= judge(this.goal, this.cell, this.limits, this.graph); }
  get outcome(): Outcome { return this.judged.outcome; }
  get value(): number | undefined { return this.judged.value; }
  get give(): number | undefined { return this.judged.give; }
  get low(): number | undefined { return this.judged.low; }
  get high(): number | undefined { return this.judged.high; }
}
type Judgement = Pick<GoalResult, 'outcome' | 'value' | 'give' | 'low' | 'high'>;

function judge(goal: Goal, cell: Cell, limits: readonly number[], graph: Graph): Judgement {
  const raw = graph.value(cell);
  if (raw === undefined) return { outcome: 'cannot be told' };
  const size = bySize(cell);
  const value = size ? Math.abs(raw) : raw;
  const band = interval(graph, cell);
  const give = (band.high - band.low) / 2;
  const [low, high] = size ? sizes(band) : [band.low, band.high] as const;
  const met = holds(goal, limits, value) || (goal.kind === 'aim' && goal.op === '=' && Math.abs(value - limits[0]!) <= toleranceOf(cell, graph));
  // An exact value is expected to lie within its own uncertainty; limits are decided where the whole band lies on one side of each.
  const between = goal.op === 'between' && limits.some(l => above(l, low) && above(high, l));
  const outcome: Outcome = goal.op === '=' ? (met || (limits[0]! >= low && limits[0]! <= high) ? 'met' : 'not met')
    : holds(goal, limits, low) === met && holds(goal, limits, high) === met && !between ? (met ? 'met' : 'not met') : 'undecided';
  return { outcome, value, give, low, high };
}

/** How near to an aim is as good as there, SI: half of a standard uncertainty; of a path what a string tells, a millimetre or two (common practice). */
export const toleranceOf = (cell: Cell, graph: Graph): number => Math.max(graph.uncertainty(cell) / 2, isPath(cell) ? STRING : 0);
export const STRING = 1e-3;
export const isPath = ({ name }: Cell): boolean => /(?:\.length|coherence path|mismatch)$/.test(name);

/** A mismatch and a drift count by their size, which is never below zero. */
export const bySize = (cell: Cell): boolean => /(?:mismatch|\.drift|image offset)$/.test(cell.name);

function sizes({ low, high }: { readonly low: number; readonly high: number }): [number, number] {
  const [a, b] = [Math.abs(low), Math.abs(high)];
  return [low < 0 && high > 0 ? 0 : Math.min(a, b), Math.max(a, b)];
}

/** Sums of legs differ from the limit by rounding where they are equal on paper. */
const above = (v: number, a: number): boolean => v - a > 1e-9 * Math.max(1, Math.abs(a));

/** Whether a value is what a goal asks for; of what counts by its size, that. */
export function holds({ op }: Goal, limits: readonly number[], v: number): boolean {
  const [a, b] = limits as [number, number];
  switch (op) {
    case '<': return above(a, v);
    case '<=': return !above(v, a);
    case '>': return above(v, a);
    case '>=': return !above(a, v);
    case 'between': return !above(Math.min(a, b), v) && !above(v, Math.max(a, b));
    default: return !above(v, a) && !above(a, v);
  }
}
