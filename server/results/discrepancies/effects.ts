/** What changes in the results when a length is another one: how brightly a part records, whether an expectation is met. */
import type { Cell, Graph } from '../graph.ts';
import { bySize, holds } from '../goals.ts';
import type { ArmLength } from '../paths/arm-lengths.ts';
import type { Pair } from '../paths/pairs.ts';
import type { Results } from '../plan.ts';
import { sample } from '../sampling.ts';
import type { Subject } from '../readings/subjects.ts';

/** A part of an object that records less brightly than this, as a share of matched paths, is worth a finding. */
export const DULL = 0.7;
/** A part that records brighter or darker by less looks the same. */
const SEEN = 0.05;

export type Effect =
  | { readonly kind: 'brightness'; readonly object: string; readonly part: string; readonly from: number; readonly to: number }
  | { readonly kind: 'goal'; readonly result: string; readonly met: boolean };

/** The first that changes, the gravest first: an expectation, then the part whose brightness changes most; `by` and `to` are what the length is more than planned. */
export function effectOf(r: Results, target: Subject['target'], by: number, to: number): Effect | undefined {
  const [a, b] = [overlayFor(r, target, by), overlayFor(r, target, to)];
  return goalEffect(r, a, b) ?? brightnessEffect(r, a, b);
}

type Overlay = ReadonlyMap<Cell, number>;

/** Lengths and mismatches as planned, and with one length so much longer. */
function overlayFor(r: Results, target: Subject['target'], more: number): Overlay {
  const { graph, readings } = r;
  const none = new Map(readings.offsets.map(c => [c, 0] as const));
  const over = new Map<Cell, number>();
  for (const p of r.plates) {
    for (const arm of p.arms) if (!arm.length.missing) over.set(arm.length, graph.evaluate(arm.length, none) + (holdsAll(arm, target) ? more : 0));
    for (const x of p.pairs) if (!x.mismatch.missing) over.set(x.mismatch, graph.evaluate(x.mismatch, none) + more * shareIn(x, p.arms, target));
  }
  return over;
}

const holdsAll = (arm: ArmLength, target: Subject['target']): boolean => target.kind === 'path' && target.legs.every(l => arm.legs.includes(l));

/** By how much a mismatch grows with a length: 1, −1, or not at all. */
function shareIn(x: Pair, arms: readonly ArmLength[], target: Subject['target']): number {
  if (target.kind === 'difference') return x.arm === target.arm ? 1 : 0;
  return arms.reduce((s, a) => s + (holdsAll(a, target) ? (a.arm === x.arm ? 1 : a.arm === x.reference ? -1 : 0) : 0), 0);
}

function goalEffect({ goals, graph }: Results, a: Overlay, b: Overlay): Effect | undefined {
  for (const { goal, cell, limits } of goals) {
    if (goal.kind !== 'expect' || !cell || cell.missing || limits.length === 0) continue;
    const [before, after] = [a, b].map(o => holds(goal, limits, valueWith(graph, cell, o)));
    if (before !== after) return { kind: 'goal', result: goal.result, met: after! };
  }
  return undefined;
}

function valueWith(graph: Graph, cell: Cell, over: Overlay): number {
  const value = graph.evaluate(cell, over);
  return bySize(cell) ? Math.abs(value) : value;
}

function brightnessEffect({ plates, graph }: Results, a: Overlay, b: Overlay): Effect | undefined {
  let most: Extract<Effect, { kind: 'brightness' }> | undefined;
  for (const { pairs } of plates) {
    for (const x of pairs) {
      if (a.get(x.mismatch) === b.get(x.mismatch)) continue;
      for (const part of x.parts) {
        const { brightness } = part;
        if (!brightness || brightness.missing) continue;
        const [from, to] = [a, b].map(o => low(graph, brightness, x, o)) as [number, number];
        const counts = Math.abs(to - from) >= SEEN || (from < DULL) !== (to < DULL);
        if (counts && (!most || Math.abs(to - from) > Math.abs(most.to - most.from))) most = { kind: 'brightness', object: x.arm.object!.id, part: part.part, from, to };
      }
    }
  }
  return most;
}

/** Brightness at the dark end of its band, as the finding about the paths counts it. */
const low = (graph: Graph, brightness: Cell, x: Pair, over: Overlay): number => sample(graph, brightness, new Map([[x.mismatch, over.get(x.mismatch)!]]))!.low;
