/**
 * What readings add to the plan. An offset is a cell, so that the plan falls out of the uncertainty of what is corrected; in a what-if it is
 * held at its value, so that a moved mirror still moves the corrected length.
 */
import { standardUncertainty } from '../../model/quantity.ts';
import { LENGTH, type Unit } from '../../model/units.ts';
import type { Cell, Graph, Rule } from '../graph.ts';
import { sameSpread } from '../twins.ts';
import { corrected, OFFSET, same } from '../rules/readings.ts';

/** What a reading adds to a plan, m; of light and power, its factor. With the plan that it was read against. */
export interface Held {
  readonly value: number;
  readonly plan: Cell;
  readonly graph: Graph;
}
/** Offsets and factors by the names of their cells. */
export type Offsets = ReadonlyMap<string, Held>;

/** What of a setup’s results holds the offsets of lengths, and the factors of light. */
interface Corrected {
  readonly graph: Graph;
  readonly readings: { readonly offsets: readonly Cell[] };
  readonly light: { readonly corrections: readonly Cell[] };
}

/** The offsets of a setup as its text stands, to be held where a changed copy of the setup is computed: see `plan`. */
export function offsetsOf({ graph, readings, light }: Corrected): Offsets {
  return new Map([...readings.offsets, ...light.corrections].map(c => [c.name, { value: graph.value(c)!, plan: c.inputs[1]!, graph }]));
}

/** Value of a cell when some cells have other values and all offsets stay as they are. */
export function evaluateHeld(results: Corrected, cell: Cell, overlay: ReadonlyMap<Cell, number>): number {
  return results.graph.evaluate(cell, withOffsets(results, overlay));
}

/**
 * Standard uncertainty of that value, SI, to first order. As in a variant the plan falls out as far as the overlay leaves its inputs as they were; an input that it
 * sets anew, with the spread that it has, counts beside what it was when something was read.
 */
export function uncertaintyHeld(results: Corrected, cell: Cell, overlay: ReadonlyMap<Cell, number>): number {
  const { graph } = results;
  const held = withOffsets(results, overlay);
  // By the inputs as they are in the what-if, and by what the offsets rest on, as it was.
  const [now, then] = [new Map<Cell, number>(), new Map<Cell, number>()];
  for (const [c, slope] of graph.gradientAt(cell, held)) {
    if (!c.rule) now.set(c, slope);
    else if (!overlay.has(c)) for (const [input, by] of graph.gradient(c)) then.set(input, (then.get(input) ?? 0) + slope * by);
  }
  let sum = 0;
  for (const c of new Set([...now.keys(), ...then.keys()])) {
    const [a, b] = [now.get(c) ?? 0, then.get(c) ?? 0];
    const before = standardUncertainty(graph.value(c) ?? 0, c.spread);
    const anew = overlay.get(c);
    sum += anew === undefined ? ((a + b) * before) ** 2 : (a * standardUncertainty(anew, c.spread)) ** 2 + (b * before) ** 2;
  }
  return Math.sqrt(sum);
}

function withOffsets({ graph, readings, light }: Corrected, overlay: ReadonlyMap<Cell, number>): Map<Cell, number> {
  return new Map([...[...readings.offsets, ...light.corrections].map(c => [c, graph.value(c)!] as const), ...overlay]);
}

/**
 * The plan as it was when something was read, of that value. What was unsure in it is what it rested on then. An input that the changed copy has as it was is the same physical
 * thing, so that its error falls out of what is corrected as far as the copy's plan rests on it in the same way. One that the copy changes is set anew: its old error counts beside its new one.
 */
export function planWhenRead(graph: Graph, name: string, words: string, value: number, held: Held, more: { unit?: Unit }): Cell {
  const unsure = [...held.graph.gradient(held.plan)].filter(([input, slope]) => input.spread && slope !== 0);
  if (unsure.length === 0) return graph.input(name, { value, dim: held.plan.dim, ...more }, 'written', words);
  const inputs = unsure.map(([input]) => {
    const known = graph.find(input.name);
    if (known && !known.rule && graph.value(known) === held.graph.value(input) && sameSpread(known.spread, input.spread)) return known;
    const before = `${input.name} when read`;
    return graph.find(before) ?? graph.input(before, { value: held.graph.value(input)!, dim: input.dim, spread: input.spread!, ...(input.unit ? { unit: input.unit } : {}) }, input.origin, `${input.words} when it was read`, { ...(input.at ? { at: input.at } : {}), ...(input.reason === undefined ? {} : { reason: input.reason }) });
  });
  const slopes = unsure.map(([, slope]) => slope);
  const rest = value - inputs.reduce((sum, c, i) => sum + slopes[i]! * graph.value(c)!, 0);
  const rule: Rule = { name: 'plan when read', formula: 'the plan as it was when this was read', of: [rest, ...slopes], linear: true, compute: x => x.reduce((sum, v, i) => sum + slopes[i]! * v, rest), partials: () => slopes };
  return graph.derive(name, rule, inputs, held.plan.dim, words, more);
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
    const from = held === undefined || Math.abs(held.value - now) < 1e-12 ? plan
      : planWhenRead(graph, `${name}.plan when read`, `${words}, as planned when it was read`, graph.value(reading)! - held.value, held, unit);
    const offset = graph.derive(key, OFFSET, [reading, from], LENGTH, `what the reading adds to ${words}`);
    this.offsets.push(offset);
    return graph.derive(name, corrected(formula), [plan, offset], LENGTH, words, unit);
  }
}

const unitOf = (unit: Unit | undefined): { unit?: Unit } => (unit ? { unit } : {});
