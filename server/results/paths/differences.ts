/** By how much two arms differ as string measures them, where nobody has read that: what one loop of string held against both would tell. Glass adds nothing to it. */
import { LENGTH } from '../../model/units.ts';
import type { Cell, Graph } from '../graph.ts';
import { weighted } from '../rules/lengths.ts';
import type { PlateResults } from './pairs.ts';

const BY_STRING = weighted('difference by string', 'object arm − reference arm', [1, -1]);

/** `P1.object.difference`; undefined of any other name. */
export function differenceNamed(name: string, plates: readonly PlateResults[], graph: Graph): Cell | undefined {
  if (!name.endsWith('.difference')) return undefined;
  const known = graph.find(name);
  if (known) return known;
  for (const { plate, pairs, arms } of plates) {
    const pair = pairs.find(x => name === `${plate.id}.${x.arm.name}.difference`);
    const [own, reference] = [arms.find(a => a.arm === pair?.arm), arms.find(a => a.arm === pair?.reference)];
    if (pair && own && reference) return graph.derive(name, BY_STRING, [own.length, reference.length], LENGTH, `difference of ${pair.arm.name} and ${pair.reference.name} at ${plate.id}`);
  }
  return undefined;
}
