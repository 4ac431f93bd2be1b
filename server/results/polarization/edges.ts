/** Plates whose bare edge stands in a steep reference: the light that enters there makes dark bars. */
import type { Arm } from '../../model/arms.ts';
import type { Thing } from '../../model/model.ts';
import { Beams } from '../beams/beams.ts';
import { sidesOfThing } from '../fringes/extents.ts';
import type { Cell } from '../graph.ts';
import type { PlateResults } from '../paths/pairs.ts';
import type { Places } from '../places/places.ts';
import { acrossPlate, edgeLight } from '../rules/polarization.ts';
import type { Values } from '../values.ts';

export interface EdgeLight {
  readonly plate: Thing;
  readonly arm: Arm;
  readonly angle: Cell;
  /** light at that edge, as a share of that in the middle */
  readonly share: number;
}

/** From here on the light comes steeply enough for the edge to take in much of it: sin 40° of the thickness. */
const STEEP = (40 * Math.PI) / 180;
/** Less than this share of the light in the middle makes no bars that are seen. */
const LEAST = Math.exp(-2);

export function edgeLights(plates: readonly PlateResults[], beams: Beams, places: Places, values: Values): EdgeLight[] {
  const { graph } = values;
  return plates.flatMap(({ plate, arms }) => {
    if (values.words(plate, 'edges') !== 'bare') return [];
    return arms.flatMap(({ arm, angle }): EdgeLight[] => {
      const at = angle && graph.value(angle.cell);
      if (arm.role !== 'reference' || at === undefined || Math.abs(at) < STEEP || !Beams.areShaped(arm)) return [];
      const [sides, leg] = [sidesOfThing(plate, values), arm.path.at(-1)!];
      const radius = sides && graph.value(beams.radius(leg));
      if (radius === undefined || !sides) return [];
      const [width, height] = sides.map(c => graph.value(c)!) as [number, number];
      const numbers = (cells: readonly Cell[] | undefined): number[] | undefined => (cells?.some(c => c.missing) ? undefined : cells?.map(c => graph.value(c)!));
      const [normal, light] = [numbers(places.directions.facing(places.own(plate))), numbers(places.directions.of(leg))];
      const half = (normal && light ? acrossPlate(normal, light, width, height) : width) / 2;
      const share = edgeLight(half, at, radius);
      return share < LEAST ? [] : [{ plate, arm, angle: angle!.cell, share }];
    });
  });
}
