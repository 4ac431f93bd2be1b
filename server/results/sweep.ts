/** What becomes of results while numbers of the text take other values. Each set is planned anew: the worst point of a plate, and what is in whose way, may be another. */
import type { Cell } from './graph.ts';
import { resultNamed } from './names.ts';
import { plan, type Results } from './plan.ts';
import { offsetsOf, type Offsets } from './readings/offsets.ts';

export interface Swept {
  /** the setup with these values */
  readonly results: Results;
  /** in the order in which they were asked for; undefined where there is none */
  readonly cells: readonly (Cell | undefined)[];
}

/**
 * What readings add to the plan is held, as in any what-if, so that a mirror that is moved still moves a length that was read; but a reading that is itself tried, or its meter, adds something else.
 * @param inputs cells of the setup that nothing is computed from
 */
export function heldFor(base: Results, inputs: readonly Cell[]): Offsets | undefined {
  const { graph, readings, light } = base;
  const read = [...readings.offsets, ...light.corrections].some(c => { const below = new Set(graph.ancestors(c.inputs[0]!)); return inputs.some(i => below.has(i)); });
  return read ? undefined : offsetsOf(base);
}

/**
 * @param values SI, by the names of the cells of inputs: `M3.x`, `R1.by`, a `let`
 * @param asked names of results, long or short
 */
export function sweptTo(base: Results, values: ReadonlyMap<string, number>, asked: readonly string[], offsets: Offsets | undefined): Swept {
  const results = plan(base.setup, { before: base.graph, found: new Map([...base.graph.found ?? [], ...values]), ...(offsets ? { offsets } : {}) });
  return { results, cells: asked.map(name => askedOf(results, name)) };
}

/** The result of a name, worked out where nothing has asked for it yet. */
export const askedOf = (r: Results, name: string): Cell | undefined => resultNamed(r.graph, r.aliases, name) ?? r.ask(name) ?? resultNamed(r.graph, r.aliases, name);
