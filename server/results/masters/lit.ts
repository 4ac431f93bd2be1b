/** Holograms of transfers whose recording is known, with the light that falls on them and how they have to stand. */
import { objectAt, type Arm } from '../../model/arms.ts';
import type { Thing } from '../../model/model.ts';
import { ANGLE, PER_LENGTH } from '../../model/units.ts';
import { Beams } from '../beams/beams.ts';
import type { Cell } from '../graph.ts';
import type { PlateResults } from '../paths/pairs.ts';
import type { Places } from '../places/places.ts';
import { FROM_NORMAL } from '../rules/geometry.ts';
import { CURVATURE } from '../rules/hang.ts';
import { topNow, type Top } from '../rules/masters.ts';
import type { Order } from '../rules/replay.ts';
import type { Values } from '../values.ts';
import type { Record, Records } from './records.ts';

export interface Lit {
  readonly hologram: Thing;
  readonly record: Record;
  readonly arm: Arm;
  /** −1 flipped, for its real image; 1 as it was recorded */
  readonly order: Order;
  readonly wavelength?: Cell;
  /** from its normal, where the places tell it */
  readonly angle?: Cell;
  /** 1/m, where something shapes its light; above zero it spreads */
  readonly curvature?: Cell;
  /** where its upper edge belongs, by the places of both pages */
  readonly up?: Top;
  /** whether its layer belongs on the side of the image */
  readonly layer?: boolean;
}

export function litMasters({ plates, beams, places, records, values }: { readonly plates: readonly PlateResults[]; readonly beams: Beams; readonly places: Places; readonly records: Records; readonly values: Values }): Lit[] {
  const seen = new Set<Thing>();
  return plates.flatMap(p => p.pairs).flatMap(({ arm }): Lit[] => {
    const hologram = arm.object;
    const record = hologram && records.of(hologram);
    const onto = arm.path[objectAt(arm)];
    if (!hologram || !record || !onto || seen.has(hologram)) return [];
    seen.add(hologram);
    const { graph } = values;
    const order: Order = (values.words(hologram, 'turned') ?? (values.words(hologram, 'image') === 'virtual' ? 'as recorded' : 'flipped')) === 'flipped' ? -1 : 1;
    const wavelength = values.fact(arm.laser, 'wavelength');
    const [normal, light] = [places.directions.facing(places.own(hologram)), places.directions.of(onto)];
    const angle = normal && light && graph.derive(`${hologram.id}.angle as lit`, FROM_NORMAL, [...normal, ...light], ANGLE, `angle at which light comes to ${hologram.id}`);
    const level = Beams.areShaped(arm) ? beams.at(onto).level : undefined;
    const curvature = level && !level.past.missing && !level.rayleigh.missing ? graph.derive(`${hologram.id}.curvature as lit`, CURVATURE, [level.past, level.rayleigh], PER_LENGTH, `curvature of the light at ${hologram.id}`) : undefined;
    const on = arm.path[objectAt(arm) + 1]?.target;
    const [at, to] = [places.of(places.own(hologram)), on && places.of(places.own(on))];
    const now = at && normal && to && light ? [...at, ...normal, ...to, ...light].map(c => graph.value(c)) : [];
    const then = record.pair?.from.known.by === 'places' ? record.pair.from.inputs.slice(0, 12).map(c => record.page.graph.value(c)) : [];
    const up = now.length === 12 && then.length === 12 && [...now, ...then].every(v => v !== undefined) ? topNow(then as number[], now as number[], order) : undefined;
    const layer = layerOf(record);
    return [{ hologram, record, arm, order, ...(wavelength ? { wavelength } : {}), ...(angle && !angle.missing ? { angle } : {}), ...(curvature && !curvature.missing ? { curvature } : {}), ...(up ? { up } : {}), ...(layer === undefined ? {} : { layer }) }];
  });
}

/** Its real image stands where the object stood, and its virtual one too: the layer looks there as it did. */
function layerOf({ master: { plate }, page, pair }: Record): boolean | undefined {
  const word = plate.facts.has('emulsion') ? page.values.words(plate, 'emulsion') : undefined;
  if (word === undefined || (!pair && !word.endsWith('object'))) return undefined;
  return word.startsWith('toward') === (word.endsWith('object') || pair!.way === 'transmission');
}
