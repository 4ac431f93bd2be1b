/** Masters that are flipped on the page of their transfer, with the light that falls on them. */
import type { Thing } from '../../model/model.ts';
import { PER_LENGTH } from '../../model/units.ts';
import type { Beams } from '../beams/beams.ts';
import type { Cell } from '../graph.ts';
import type { Records } from '../masters/records.ts';
import type { PlateResults } from '../paths/pairs.ts';
import { CURVATURE } from '../rules/hang.ts';
import type { Values } from '../values.ts';

export interface Master {
  readonly master: Thing;
  /** from the master to its real image, as written */
  readonly image: Cell;
  /** of its reference, 1/m, where the page of its recording is named */
  readonly reference?: number;
  /** of the light on it, 1/m; above zero it spreads */
  readonly curvature: Cell;
}

/** Those whose real image is used, by light that something shapes. */
export function mastersOf(plates: readonly PlateResults[], beams: Beams, values: Values, records: Records): Master[] {
  const seen = new Set<Thing>();
  return plates.flatMap(p => p.pairs).flatMap(({ arm }): Master[] => {
    const master = arm.object;
    const at = arm.path.findLastIndex(l => l.target === master);
    const onto = arm.path[at];
    if (master?.kind.light !== 'diffracts' || !onto || seen.has(master) || values.words(master, 'turned') !== 'flipped' || values.words(master, 'image') === 'virtual') return [];
    if (!arm.path.slice(0, at + 1).some(l => l.target?.kind.word === 'spreader' || l.target?.facts.has('focal length') === true)) return [];
    const image = values.fact(master, 'image distance');
    const { level } = beams.at(onto);
    if (!image || level.past.missing || level.rayleigh.missing) return [];
    seen.add(master);
    const record = records.of(master);
    const reference = record?.curvature && record.page.graph.value(record.curvature);
    return [{ master, image, ...(reference === undefined ? {} : { reference }), curvature: values.graph.derive(`${master.id}.curvature of its light`, CURVATURE, [level.past, level.rayleigh], PER_LENGTH, `curvature of the light at ${master.id}`) }];
  });
}
