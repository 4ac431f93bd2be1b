/**
 * The answer to what is written `?` in a setup: up to three sets of values that meet its goals and that can be built, each tried on a copy of the page; else the nearest attempt, and what is in its way.
 */
import { analyse, type Library, type Snapshot } from '../../analysis.ts';
import type { Finding } from '../../checks/check.ts';
import { check, findingsOf } from '../../checks/run.ts';
import { applyEdits, type Edit } from '../../model/edits.ts';
import type { Place } from '../../model/place.ts';
import { NUMBER, parseUnit, type Dim, type Unit } from '../../model/units.ts';
import type { Cell } from '../../results/graph.ts';
import { toleranceOf, type GoalResult } from '../../results/goals.ts';
import type { Results } from '../../results/plan.ts';
import { offsetsOf } from '../../results/readings/offsets.ts';
import { solve, type Attempt, type Idle } from '../../results/solve/solve.ts';
import { variantsOf } from '../../results/variants.ts';
import { guessesOf } from '../chain.ts';
import { writingOf } from './writing.ts';

/** One number for one `?`. */
export interface Value {
  /** of its cell: `R1.by` */
  readonly name: string;
  /** "distance of R1 from M1" */
  readonly words: string;
  readonly at: Place;
  readonly part: 'x' | 'y' | undefined;
  readonly dim: Dim;
  readonly unit: Unit | undefined;
  /** SI */
  readonly value: number;
  /** standard uncertainty, SI: what the other numbers leave open */
  readonly u: number;
  /** other values will do as well, if others follow */
  readonly loose: boolean;
  /** between these, SI, all will do */
  readonly range?: readonly [number, number];
  /** a share of a splitter: the guesses that it rests on; where there are any it is one itself until the light is metered */
  readonly guesses?: readonly string[];
  /** it is the end of what is written for it, where more or less is asked for: what would be, SI */
  readonly wanted?: number;
}

/** One set of values, with what becomes of the setup. */
export interface Choice {
  readonly values: readonly Value[];
  readonly results: Results;
  /** results that nobody could tell before, with those that are aimed at or expected among them */
  readonly becomes: readonly Cell[];
  /** the goals that it misses, with by how much, SI */
  readonly missed: Attempt['missed'];
  /** those that it meets and that keep it from the missed ones */
  readonly against: Attempt['against'];
  /** what the page would be told of it besides what it is told now; what is in the way of building it */
  readonly findings: readonly Finding[];
  readonly inTheWay: readonly Finding[];
  /** for each value a little where it lies beside its coarsest steps, such as holes, and where its sign is unusual */
  readonly effort: number;
  /** writes the values */
  readonly edits: readonly Edit[];
}

export interface Answer {
  readonly results: Results;
  /** why there is nothing to find */
  readonly idle?: Idle;
  /** what was asked for, in the order of the text, whether it was found or not */
  readonly asked: readonly { readonly name: string; readonly words: string; readonly at: Place }[];
  /** the best first; empty where nothing meets all goals and can be built */
  readonly choices: readonly Choice[];
  /** of no answer the nearest */
  readonly nearest?: Choice;
  /** shares of splitters that could not be told, and why */
  readonly left: readonly { readonly name: string; readonly words: string; readonly why: string }[];
  /** how many sets of values were tried */
  readonly tried: number;
  /** it was ended before all was looked at */
  readonly ended: boolean;
}

export interface AnswerOptions {
  /** false: it is to end now, with what there is */
  readonly goOn?: () => boolean;
  /** reads the files that the page uses, as for the page itself */
  readonly library?: Library;
}

const CHOICES = 3;
const TRIES = 24;
/** Once there is an answer, no more are tried for others. */
const ENOUGH = 8;

/** @param r a setup of the snapshot, or one of its variants */
export function answerOf(snapshot: Snapshot, r: Results, { goOn = () => true, library }: AnswerOptions = {}): Answer {
  const steps = answering(snapshot, r, { goOn, ...(library ? { library } : {}) });
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** The same in steps, between which others get their turn: at each it yields. */
export function* answering(snapshot: Snapshot, r: Results, { goOn = () => true, library }: AnswerOptions = {}): Generator<void, Answer> {
  const variant = r.setup.variant;
  const base = variant === undefined ? undefined : snapshot.results.find(x => variantsOf(x).some(v => v.results === r));
  const solving = solve(r, { goOn, ...(base ? { offsets: offsetsOf(base) } : {}) });
  const asked = askedIn(r);
  const before = new Set([...findingsHere(snapshot, r)].map(idOf));
  const choices: Choice[] = [];
  const others: Choice[] = [];
  const stretches = new Set<number>();
  let tried = 0;
  const take = (attempt: Tried): Choice => choiceOf(attempt, r, snapshot, before);
  if (!solving.idle && solving.unknowns.length === 0) {
    const choice = take({ values: [], found: [], missed: [], against: [], results: r });
    (choice.values.length > 0 ? choices : others).push(choice);
  }
  yield;
  for (const attempt of solving.attempts()) {
    if (stretches.has(attempt.stretch)) continue;
    tried++;
    const choice = take(attempt);
    if (choice.missed.length === 0 && choice.inTheWay.length === 0 && (!library || holdsOnPage(choice, snapshot, library, r))) {
      choices.push(choice);
      stretches.add(attempt.stretch);
    } else others.push(choice);
    if (choices.length >= CHOICES || tried >= (choices.length > 0 ? ENOUGH : TRIES) || !goOn()) break;
    yield;
  }
  choices.sort((a, b) => weight(a) - weight(b));
  const nearest = choices.length > 0 ? undefined : others.sort((a, b) => gap(a) - gap(b) || weight(a) - weight(b))[0];
  const left = (choices[0] ?? nearest)?.results ?? r;
  return {
    results: r, asked, choices, tried, ended: !goOn(), left: untoldShares(left), ...(solving.idle ? { idle: solving.idle } : {}), ...(nearest && nearest.values.length > 0 ? { nearest } : {}),
  };
}

/** All that is written `?`; a share of a splitter has a closed form and is not met as such. */
function askedIn(r: Results): Answer['asked'] {
  const all = new Map<string, { name: string; words: string; at: Place }>();
  for (const { name, words, at } of r.graph.opens) if (!all.has(name)) all.set(name, { name, words, at });
  for (const t of r.setup.things.values()) {
    const fact = t.facts.get('reflects');
    if (fact?.value.kind === 'unknown' && r.light.reflects(t) && !all.has(`${t.id}.reflects`)) all.set(`${t.id}.reflects`, { name: `${t.id}.reflects`, words: `share that ${t.id} reflects`, at: fact.at });
  }
  return [...all.values()].sort((a, b) => a.at.line - b.at.line || a.at.start - b.at.start);
}

type Tried = Omit<Attempt, 'stretch'>;
function choiceOf(attempt: Tried, base: Results, snapshot: Snapshot, before: ReadonlySet<string>): Choice {
  const { missed, against, results } = attempt;
  const findings = [...findingsHere(snapshot, results)].filter(f => !before.has(idOf(f)) && f.severity !== 'hint');
  let values: Value[] | undefined;
  let edits: Edit[] | undefined;
  return {
    results, missed, against, findings, effort: effortOf(attempt.values), inTheWay: findings.filter(f => f.severity === 'error' || IN_THE_WAY.has(f.code)),
    get values() {
      return values ??= [
        ...attempt.found.map(({ unknown: { name, words, at, part, dim, unit }, value, u, loose, range }) => ({ name, words, at, part, dim, unit, value, u, loose, ...(range ? { range } : {}) })),
        ...shares(results),
      ].sort((a, b) => a.at.line - b.at.line || a.at.start - b.at.start);
    },
    get becomes() { return becomesOf(base, results); },
    get edits() { return edits ??= writingOf(this.values.filter(v => v.at.uri === snapshot.uri), snapshot.tree); },
  };
}

function effortOf(values: Attempt['values']): number {
  return values.reduce((s, { unknown: { steps, usual }, value }) => {
    const [coarse] = steps;
    const beside = coarse !== undefined && Math.abs(value / coarse - Math.round(value / coarse)) > 1e-6;
    return s + (beside ? 0.1 : 0) + (usual !== undefined && usual * value < 0 ? 0.5 : 0);
  }, 0);
}

/** What a splitter is to reflect for the ratio that is aimed at: its closed form. */
function shares({ light, graph }: Results): Value[] {
  return light.solved.flatMap(({ splitter, share, working, bounded }) => {
    const at = splitter.facts.get('reflects')?.at;
    const value = graph.value(working);
    if (!at || value === undefined) return [];
    const guesses = guessesOf(graph, share).map(g => g.words);
    return [{
      name: `${splitter.id}.reflects`, words: `share that ${splitter.id} reflects`, at, part: undefined, dim: NUMBER, unit: parseUnit('%'), value, u: graph.uncertainty(share), loose: false,
      ...(guesses.length > 0 ? { guesses } : {}), ...(bounded ? { wanted: graph.value(share)! } : {}),
    }];
  });
}

function untoldShares({ setup, light, graph }: Results): Answer['left'] {
  return [...setup.things.values()].flatMap(t => {
    if (t.facts.get('reflects')?.value.kind !== 'unknown' || light.solved.some(s => s.splitter === t) || graph.found?.has(`${t.id}.reflects`)) return [];
    const share = light.reflects(t) ?? graph.find(`${t.id}.split for ratio`);
    return [{ name: `${t.id}.reflects`, words: `share that ${t.id} reflects`, why: share?.missing?.why ?? 'no “aim beam ratio: 4:1” says what it is for' }];
  });
}

/** Goals first, then what the values make known, in the order of the page. */
function becomesOf(base: Results, now: Results): Cell[] {
  const goals = now.goals.flatMap(g => (g.cell && !g.cell.missing ? [g.cell] : []));
  const known = now.published.filter(c => !c.missing && base.graph.find(c.name)?.missing !== undefined);
  return [...new Set([...goals, ...known])];
}

function* findingsHere({ tree, model }: Snapshot, r: Results): Generator<Finding> {
  for (const f of findingsOf(tree, model, [{ results: r, problems: check(r) }])) if (f.accepted === undefined) yield f;
}
const idOf = (f: Finding): string => `${f.code}\n${f.subject}`;

/** What cannot be built, or keeps the light from where it is to go, whether the sizes behind it are written or assumed. */
const IN_THE_WAY: ReadonlySet<string> = new Set(['leg-blocked', 'off-the-table', 'things-overlap', 'mirror-in-line', 'beam-clipped', 'plate-missed', 'mirror-turned', 'plate-turned-round', 'dark-side-lit', 'no-light', 'lens-too-steep', 'reference-too-near']);

const WEIGHT = { error: 10_000, warning: 100, note: 1, hint: 0 } as const;
/** Of answers the one that is told least, of which goals are met for sure, and that is easiest to set. */
const weight = ({ findings, results, effort }: Choice): number => findings.reduce((s, f) => s + WEIGHT[f.severity], 0) + results.goals.reduce((s, g) => s + (g.outcome === 'undecided' ? 10 : 0) + NEARER * offOf(g, results), 0) + effort;
const NEARER = 0.05;
/** How far an aim is from being met to the letter, as a share of what is as good as that; 1 at most. */
const offOf = ({ goal, cell, value, limits }: GoalResult, { graph }: Results): number => (goal.op !== '=' || !cell || value === undefined ? 0 : Math.min(1, Math.abs(value - limits[0]!) / (toleranceOf(cell, graph) || 1e-9)));
/** How far it is from an answer: what stands in the way counts for more than any figure. */
const gap = ({ missed, inTheWay }: Choice): number => missed.reduce((s, { wish, by }) => s + Math.min(1e6, (by / wish.little) ** 2), 0) + inTheWay.length * 1e6;

/** Written into a copy of the page it does the same. */
export function holdsOnPage(choice: Choice, snapshot: Snapshot, library: Library, r: Results): boolean {
  if (choice.values.some(v => v.at.uri !== snapshot.uri)) return true;
  const after = analyse(snapshot.uri, applyEdits(snapshot.text, choice.edits), library);
  const now = after.results.find(x => x.setup.name === r.setup.name && x.setup.node.at === r.setup.node.at);
  const own = r.setup.variant === undefined ? now : now && variantsOf(now).find(v => v.variant.name === r.setup.variant)?.results;
  return own !== undefined && choice.results.goals.every((g, i) => sameGoal(g, choice.results, own.goals[i], own));
}

function sameGoal(a: GoalResult, of: Results, b: GoalResult | undefined, now: Results): boolean {
  const [x, y] = [a.cell && of.graph.value(a.cell), b?.cell && now.graph.value(b.cell)];
  return x === undefined || y === undefined ? x === y : Math.abs(x - y) <= 1e-6 * Math.max(Math.abs(x), Math.abs(y), 1e-3);
}
