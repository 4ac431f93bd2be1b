/** Readings held against the plan, and against each other. */
import { standardUncertainty } from '../../model/quantity.ts';
import type { Cell, Graph } from '../graph.ts';
import type { Results } from '../plan.ts';
import { effectOf, type Effect } from './effects.ts';
import type { Taken } from '../readings/instruments.ts';
import type { Subject } from '../readings/subjects.ts';

/** From three standard uncertainties on, two values differ. */
export const FROM = 3;
/** Where on a mirror one measures makes 1 to 3 mm a leg, whatever the string; common practice. The least of it is not counted as a difference. */
export const PER_LEG = 0.001;
const ROUNDING = 1e-9;

/** A reading against what was planned. */
export interface Residual {
  readonly subject: Subject;
  readonly taken: Taken;
  /** reading − plan, m */
  readonly difference: number;
  /** standard uncertainty of the difference, m */
  readonly u: number;
  readonly differs: boolean;
  /** what changes in the results if the reading holds instead of the plan; only asked where it differs */
  readonly effect?: Effect | undefined;
}

/** Two ways in which the same was read. */
export interface Contradiction {
  readonly at: Taken;
  /** the other way, in words */
  readonly other: string;
  /** the other reading, where it is a single one */
  readonly before?: Taken;
  readonly difference: number;
  readonly u: number;
  /** what changes in the results with it; that the same was read twice, so far apart, is worth a look in any case */
  readonly effect?: Effect;
}

const known = new WeakMap<Results, { readonly residuals: readonly Residual[]; readonly contradictions: readonly Contradiction[] }>();

export function comparisons(r: Results): { readonly residuals: readonly Residual[]; readonly contradictions: readonly Contradiction[] } {
  let found = known.get(r);
  if (!found) known.set(r, found = { residuals: [...r.readings.subjects].flatMap(s => residualsOf(s, r)), contradictions: contradictions(r) });
  return found;
}

function residualsOf(subject: Subject, r: Results): Residual[] {
  const { plan } = subject;
  if (!plan || plan.missing) return [];
  return subject.readings.map(taken => {
    const compared = against(r.graph, taken.length, plan, legCount(subject, r));
    return { subject, taken, ...compared, ...(compared.differs ? { effect: effectOf(r, subject.target, 0, compared.difference) } : {}) };
  });
}

function contradictions(r: Results): Contradiction[] {
  const found: Contradiction[] = [];
  const { graph } = r;
  const add = (subject: Subject, at: Taken, [a, b]: readonly [Cell, Cell], legs: number, other: string, before?: Taken): void => {
    if (a.missing || b.missing) return;
    const { differs, difference, u } = against(graph, a, b, legs);
    // Without a plan the lengths themselves are compared: only their difference matters.
    const planned = subject.plan && !subject.plan.missing ? graph.value(subject.plan)! : graph.value(subject.corrected ?? b)!;
    const effect = differs ? effectOf(r, subject.target, graph.value(b)! - planned, graph.value(a)! - planned) : undefined;
    if (effect || (differs && before)) found.push({ at, other, difference, u, ...(effect ? { effect } : {}), ...(before ? { before } : {}) });
  };
  for (const subject of r.readings.subjects) {
    const sorted = [...subject.readings].sort((a, b) => graph.value(a.length)! - graph.value(b.length)!);
    const [least, most] = [sorted[0]!, sorted[sorted.length - 1]!];
    if (least === most) continue;
    const later = subject.readings.indexOf(least) > subject.readings.indexOf(most) ? least : most;
    const before = later === least ? most : least;
    add(subject, later, [later.length, before.length], legCount(subject, r), 'another reading of it', before);
  }
  for (const w of r.readings.lengths.twoWays) add(w.direct, w.direct.readings[0]!, [w.direct.cell, w.parts], w.legs, w.direct.target.kind === 'difference' ? 'the readings of both paths' : 'the readings of its legs');
  return found;
}

function against(graph: Graph, a: Cell, b: Cell, legs: number): { difference: number; u: number; differs: boolean } {
  const difference = graph.value(a)! - graph.value(b)!;
  const u = Math.max(uncertaintyOfDifference(graph, a, b), PER_LEG * Math.sqrt(legs));
  return { difference, u, differs: Math.abs(difference) - FROM * u > ROUNDING };
}

/** What both rest on falls out. */
function uncertaintyOfDifference(graph: Graph, a: Cell, b: Cell): number {
  const [ga, gb] = [graph.gradient(a), graph.gradient(b)];
  let sum = 0;
  for (const input of new Set([...ga.keys(), ...gb.keys()])) sum += (((ga.get(input) ?? 0) - (gb.get(input) ?? 0)) * standardUncertainty(graph.value(input) ?? 0, input.spread)) ** 2;
  return Math.sqrt(sum);
}

function legCount({ target }: Subject, r: Results): number {
  if (target.kind === 'path') return target.legs.length;
  const arms = r.plates.find(p => p.plate === target.arm.plate)?.arms ?? [];
  return arms.filter(a => a.arm === target.arm || a.arm === target.reference).reduce((n, a) => n + a.legs.length, 0);
}
