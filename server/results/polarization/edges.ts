/** Plates whose bare edge takes in light of the reference: what enters there makes dark bars. */
import type { Arm } from '../../model/arms.ts';
import type { Thing } from '../../model/model.ts';
import { Beams } from '../beams/beams.ts';
import { sidesOfThing } from '../places/extents.ts';
import type { Cell } from '../graph.ts';
import type { PlateResults } from '../paths/pairs.ts';
import { referenceFrom } from '../places/angles.ts';
import type { Places } from '../places/places.ts';
import { edgeShares, inPlate, type Vector } from '../rules/polarization.ts';
import type { Values } from '../values.ts';

export interface EdgeLight {
  readonly plate: Thing;
  readonly arm: Arm;
  readonly angle: Cell;
  /** which edge takes most of it, for somebody who looks at the face of the plate; undefined where no places tell */
  readonly edge?: 'left' | 'right' | 'upper' | 'lower';
  /** light that enters by the edges, as a share of the light on the plate */
  readonly share: number;
  readonly thickness: Cell;
}

/** From this share of the light on the plate on, bars take a part of it that is seen: in even light at 45° with 2 mm of glass, of a plate up to 65 mm wide. A choice; nearer to nothing every slanting reference would have it. */
const LEAST = 0.03;

export function edgeLights(plates: readonly PlateResults[], beams: Beams, places: Places, values: Values): EdgeLight[] {
  const { graph } = values;
  const numbers = (cells: readonly Cell[] | undefined): Vector | undefined => {
    const found = cells?.map(c => graph.value(c));
    return found && !found.includes(undefined) ? [found[0]!, found[1]!, found[2]!] : undefined;
  };
  return plates.flatMap(({ plate, arms }) => {
    if (values.words(plate, 'edges') !== 'bare') return [];
    return arms.flatMap(({ arm, angle }): EdgeLight[] => {
      const at = angle && graph.value(angle.cell);
      if (arm.role !== 'reference' || at === undefined || !Beams.areShaped(arm)) return [];
      const [sides, leg] = [sidesOfThing(plate, values), arm.path.at(-1)!];
      const [width, height] = sides?.map(c => graph.value(c)) ?? [];
      const radius = sides && graph.value(beams.radius(leg));
      const thickness = radius === undefined ? undefined : values.fact(plate, 'thickness');
      const glass = thickness && graph.value(thickness);
      if (width === undefined || height === undefined || radius === undefined || glass === undefined) return [];
      const [normal, light] = [numbers(places.directions.facing(places.own(plate))), numbers(places.directions.of(leg))];
      // An angle that is written wins over the places.
      const placed = normal && light && angle!.cell === angle!.byPlaces ? inPlate(normal, light) : undefined;
      const from = referenceFrom(plate, values);
      const up = from === 'above' ? -1 : 1;
      const [x, y, z] = placed ?? (from === 'the side' ? [Math.sin(at), 0, Math.cos(at)] : [0, up * Math.sin(at), Math.cos(at)]);
      const { beside, above } = edgeShares([x, y, z], width / 2, height / 2, glass, radius);
      const edge = !placed && from === 'the side' ? undefined : beside >= above ? (x > 0 ? 'left' : 'right') : y > 0 ? 'lower' : 'upper';
      return beside + above < LEAST ? [] : [{ plate, arm, angle: angle!.cell, share: beside + above, thickness: thickness!, ...(edge ? { edge } : {}) }];
    });
  });
}
