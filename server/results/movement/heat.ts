/** What warmth does to fringes of arms that are not equally long. */
import { TABLE_MATERIALS } from '../../model/things/materials.ts';
import { dim, parseUnit, TEMPERATURE } from '../../model/units.ts';
import type { Cell } from '../graph.ts';
import type { Pair } from '../paths/pairs.ts';
import { ALLOWED_WARMING, BY_WARMTH, BY_WARMTH_AND_LASER, expansionOf } from '../rules/movement.ts';
import type { Values } from '../values.ts';

const PER_KELVIN = dim(0, 0, 0, -1);
const KELVIN = parseUnit('K')!;
const TABLE = 'expansion of the table';

/** Undefined without a wavelength. How much the table grows is a guess, by its material where that is written. */
export function allowedWarming(pair: Pair, plate: string, values: Values): Cell | undefined {
  const { graph } = values;
  const name = `${plate}.allowed warming`;
  const known = graph.find(name);
  const wavelength = values.fact(pair.arm.laser, 'wavelength');
  if (known || !wavelength) return known;
  const table = tableExpansion(values);
  const drift = pair.arm.laser.facts.has('drift') ? values.fact(pair.arm.laser, 'drift') : undefined;
  const inputs = [pair.mismatch, table, wavelength];
  const words = `fringes at ${plate} for each kelvin`;
  const rate = drift ? graph.derive(`${plate}.fringes in a kelvin`, BY_WARMTH_AND_LASER, [...inputs, drift], PER_KELVIN, words) : graph.derive(`${plate}.fringes in a kelvin`, BY_WARMTH, inputs, PER_KELVIN, words);
  return graph.derive(name, ALLOWED_WARMING, [rate], TEMPERATURE, `warming of the table that costs a tenth of a fringe at ${plate}`, { unit: KELVIN });
}

function tableExpansion({ graph, setup }: Values): Cell {
  const known = graph.find(TABLE);
  if (known) return known;
  const fact = setup.facts.get('table material');
  const written = fact?.value.kind === 'words' ? fact.value.text : undefined;
  const material = TABLE_MATERIALS.find(m => m === written);
  if (!material) return graph.input(TABLE, { value: 12e-6, dim: PER_KELVIN, spread: { kind: 'factor', amount: 2 } }, 'assumed', TABLE, { reason: 'no “table material” is written: tables are of steel, stone or aluminium, 6 to 24 parts in a million for each kelvin; Callister, Materials Science and Engineering, appendix B' });
  const { value, amount, source } = expansionOf(material);
  return graph.input(TABLE, { value, dim: PER_KELVIN, spread: { kind: 'within', amount } }, 'assumed', TABLE, { at: fact!.at, reason: `of ${material}: ${source}` });
}
