/** How far a thing was moved, by where it comes to stand: also of what follows another. */
import type { Thing } from '../model/model.ts';
import type { Unit } from '../model/units.ts';
import type { Results } from '../results/plan.ts';

export interface Shift {
  /** as it is called now */
  readonly thing: string;
  /** metres: in the plan to the right, away, and up */
  readonly by: readonly [number, number, number];
  /** in which it is written where it stands, where that is written as numbers */
  readonly unit: Unit | undefined;
}

/** Less than this is rounding of what was computed from other places. */
const LEAST = 1e-9;

export function shiftOf(before: Thing, old: Results, after: Thing, now: Results): Shift | undefined {
  const [a, b] = [old.places.of(before), now.places.of(after)];
  if (!a || !b) return undefined;
  const by = [0, 1, 2].map(i => (now.graph.value(b[i]!) ?? NaN) - (old.graph.value(a[i]!) ?? NaN)) as [number, number, number];
  return by.some(d => Math.abs(d) > LEAST) && by.every(Number.isFinite) ? { thing: after.id, by, unit: b[0].unit } : undefined;
}
