/**
 * What readings add to the plan. An offset is a cell, so that the plan falls out of the uncertainty of what is corrected; in a what-if it is
 * held at its value, so that a moved mirror still moves the corrected length.
 */
import { LENGTH, type Unit } from '../../model/units.ts';
import type { Cell, Graph } from '../graph.ts';
import { corrected, OFFSET, same } from '../rules/readings.ts';

/** Offsets by the names of their cells, m; of light and power, factors. */
export type Offsets = ReadonlyMap<string, number>;

/** What of a setup’s results holds the offsets of lengths, and the factors of light. */
interface Corrected {
  readonly graph: Graph;
  readonly readings: { readonly offsets: readonly Cell[] };
  readonly light: { readonly corrections: readonly Cell[] };
}

/** The offsets of a setup as its text stands, to be held where a changed copy of the setup is computed: see `plan`. */
export function offsetsOf({ graph, readings, light }: Corrected): Offsets {
  return new Map([...readings.offsets, ...light.corrections].map(c => [c.name, graph.value(c)!]));
}

/** Value of a cell when some cells have other values and all offsets stay as they are. */
export function evaluateHeld(results: Corrected, cell: Cell, overlay: ReadonlyMap<Cell, number>): number {
  const { graph, readings, light } = results;
  return graph.evaluate(cell, new Map([...[...readings.offsets, ...light.corrections].map(c => [c, graph.value(c)!] as const), ...overlay]));
}

/** Makes corrected cells, and keeps their offsets. */
export class Corrections {
  readonly offsets: Cell[] = [];

  /** `held`: the offsets of the setup of which this one is a changed copy */
  constructor(private readonly graph: Graph, private readonly held: Offsets | undefined) {}

  /** The cell of that name: the plan with what the reading adds to it; the reading itself where there is no plan. */
  correct(name: string, words: string, plan: Cell, reading: Cell, formula?: string): Cell {
    const { graph } = this;
    const unit = unitOf(plan.unit ?? reading.unit);
    if (plan.missing) return graph.derive(name, same('as read', 'as read; nothing is planned'), [reading], LENGTH, words, unit);
    const key = `${name}.offset`;
    const held = this.held?.get(key);
    // A length that the copy plans and the setup did not: nothing was read of it.
    if (this.held && held === undefined) return graph.derive(name, same('plan', 'the plan; what was read was of something else'), [plan], LENGTH, words, unit);
    const now = graph.value(reading)! - graph.value(plan)!;
    const from = held === undefined || Math.abs(held - now) < 1e-12 ? plan
      : graph.input(`${name}.plan when read`, { value: graph.value(reading)! - held, dim: LENGTH, ...unit }, 'written', `${words}, as planned when it was read`);
    const offset = graph.derive(key, OFFSET, [reading, from], LENGTH, `what the reading adds to ${words}`);
    this.offsets.push(offset);
    return graph.derive(name, corrected(formula), [plan, offset], LENGTH, words, unit);
  }
}

const unitOf = (unit: Unit | undefined): { unit?: Unit } => (unit ? { unit } : {});
