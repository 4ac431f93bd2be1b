/** Which part of its plate a recording gets: of the exposures, and of the light in one that several lasers make at once. */
import { lasersAt, lightName, type Arm } from '../../model/arms.ts';
import { NUMBER, parseUnit } from '../../model/units.ts';
import type { Cell, Graph } from '../graph.ts';
import type { Pair } from '../paths/pairs.ts';
import { SHARE_OF_LIGHT } from '../rules/exposures.ts';
import type { Exposures } from './exposures.ts';

const PERCENT = parseUnit('%')!;

/** Empty where it has the plate for itself, or the table as it is written is that of no exposure. */
export function sharesOf({ arm: { plate, laser } }: Pair, exposures: Exposures, arms: readonly Arm[], graph: Graph, ask: (name: string) => Cell | undefined): readonly Cell[] {
  const own = exposures.own(plate, laser);
  if (own === 'none') return [];
  const shares = own ? [own.share] : [];
  if (own?.alone === true || lasersAt(plate, arms).length < 2) return shares;
  const name = `${lightName(plate, laser, arms)}.share of the light`;
  const [one, every] = [ask(`${lightName(plate, laser, arms)}.light`), ask(`${plate.id}.light`)];
  const share = graph.find(name) ?? (one && every && graph.derive(name, SHARE_OF_LIGHT, [one, every], NUMBER, `share of ${laser.id} in the light at ${plate.id}`, { unit: PERCENT }));
  return share ? [...shares, share] : shares;
}
