/**
 * What readings of light and power make of the plan: a factor. It is a cell, so that the plan falls out of the uncertainty of what is corrected; in a
 * what-if it is held at its value, so that another split still moves the light that was read.
 */
import { LIGHT, multiply, NUMBER, parseUnit, POWER, type Unit } from '../../model/units.ts';
import type { Cell, Graph } from '../graph.ts';
import { planWhenRead, type Offsets } from '../readings/offsets.ts';
import { CORRECTED, FACTOR } from '../rules/light.ts';
import { weighted } from '../rules/lengths.ts';

const AS_READ = weighted('as read', 'as it was read', [1]);

export class Factors {
  readonly cells: Cell[] = [];

  /** `held`: the factors of the setup of which this one is a changed copy */
  constructor(private readonly graph: Graph, private readonly held: Offsets | undefined) {}

  /** The cell of that name: the plan times what the reading makes of it; the reading itself where there is no plan. */
  correct(name: string, words: string, plan: Cell, reading: Cell, more: { unit?: Unit; at?: NonNullable<Cell['at']> } = {}): Cell {
    const { graph } = this;
    // A factor of a light that was planned is another figure than one of a power: the one cannot be held for the other.
    const key = plan.dim === LIGHT ? `${name} factor of the plan` : `${name} factor`;
    const held = this.held?.get(key);
    const [planned, read] = [graph.value(plan), graph.value(reading)];
    // What a trial makes of the plan is not known: then nor is what it makes of the reading.
    if (held?.value !== undefined && plan.missing) return graph.derive(name, AS_READ, [plan], reading.dim, words, more);
    if (!planned || read === undefined || (this.held && !held?.value)) return graph.derive(name, AS_READ, [reading], reading.dim, words, more);
    const from = held === undefined || Math.abs(held.value * planned - read) <= 1e-12 * Math.abs(read) ? plan
      : planWhenRead(graph, `${name} plan when read`, `${words}, as planned when it was read`, read / held.value, held, plan.unit ? { unit: plan.unit } : {});
    const unit = perPower(reading, plan);
    const factor = graph.derive(key, FACTOR, [reading, from], multiply(reading.dim, plan.dim, -1), `what the reading makes of the plan: ${words}`, unit ? { unit } : {});
    if (factor.missing) return graph.derive(name, AS_READ, [reading], reading.dim, words, more);
    this.cells.push(factor);
    return graph.derive(name, CORRECTED, [plan, factor], reading.dim, words, more);
  }
}

const [MILLIWATT, MICRO] = [parseUnit('mW')!, parseUnit('µW/cm²')!];

/** What arrives of a power is shown as one reads it off: so much light, or so many divisions of the meter, for each milliwatt. */
function perPower({ dim }: Cell, plan: Cell): Unit | undefined {
  if (plan.dim === LIGHT && dim === NUMBER) return { text: `divisions for each ${MICRO.text}`, dim: multiply(dim, LIGHT, -1), factor: 1 / MICRO.factor, offset: 0 };
  if (plan.dim !== POWER || (dim !== LIGHT && dim !== NUMBER)) return undefined;
  const [text, factor] = dim === LIGHT ? [MICRO.text, MICRO.factor] : ['divisions', 1];
  return { text: `${text} for each mW`, dim: multiply(dim, POWER, -1), factor: factor / MILLIWATT.factor, offset: 0 };
}
