/** Light of a transfer that goes other ways than through its image: straight on through the first hologram, and the reference that the first hologram throws back. Where both plates are placed. */
import { ontoObject, type Arm } from '../../model/arms.ts';
import type { Thing } from '../../model/model.ts';
import { LENGTH, NUMBER, parseUnit, PER_LENGTH } from '../../model/units.ts';
import { Beams } from '../beams/beams.ts';
import { sidesOfThing } from '../places/extents.ts';
import type { Fringes } from '../fringes/fringes.ts';
import type { Cell } from '../graph.ts';
import type { Pair } from '../paths/pairs.ts';
import { openSides } from '../places/mask.ts';
import { LONGER, REACHED, TAKEN_UP, THROWN_BACK } from '../rules/carried.ts';
import { CURVATURE } from '../rules/hang.ts';
import { NEARLY_PARALLEL, standsParallel, type Vector } from '../rules/table.ts';
import { faceCells } from '../table/faces.ts';
import type { Making } from '../making.ts';

const [MM, PERCENT] = [parseUnit('mm')!, parseUnit('%')!];

export interface StraightOn {
  readonly arm: Arm;
  readonly hologram: Thing;
  /** share of the plate on which light falls that goes straight through the first hologram */
  readonly share: Cell;
  /** a stop or card before the plate, and the share of that light which it takes up */
  readonly stop?: { readonly thing: Thing; readonly share: Cell };
}

/** The reference goes through the plate, and the first hologram stands parallel to it. */
export interface ThrownBack {
  readonly pair: Pair;
  readonly hologram: Thing;
  /** share of the plate to which it comes back */
  readonly share: Cell;
  /** how much longer its way is then */
  readonly longer: Cell;
}

export interface StrayContext extends Making { readonly fringes: Fringes }

export class Strays {
  readonly straightOn: readonly StraightOn[];
  readonly thrownBack: readonly ThrownBack[];

  constructor(private readonly context: StrayContext) {
    const pairs = context.plates.flatMap(p => p.pairs).filter(({ arm }) => arm.object?.kind.light === 'diffracts');
    this.straightOn = pairs.flatMap(p => this.straight(p.arm));
    this.thrownBack = pairs.flatMap(p => this.back(p));
    for (const { share } of this.straightOn) if ((context.values.graph.value(share) ?? 0) > 0) context.published.push(share);
  }

  private straight(arm: Arm): StraightOn[] {
    const { values, places, beams } = this.context;
    const { graph } = values;
    const hologram = arm.object!;
    const onto = ontoObject(arm);
    const light = onto && places.directions.of(onto);
    const [from, to] = [this.pane(hologram, openSides(arm, values)), this.pane(arm.plate)];
    if (!onto || !light || !from || !to) return [];
    const name = `${arm.plate.id}.${arm.name}`;
    const level = Beams.areShaped(arm) ? beams.at(onto).level : undefined;
    const bend = level && !level.past.missing && !level.rayleigh.missing ? graph.derive(`${name}.curvature of what goes straight on`, CURVATURE, [level.past, level.rayleigh], PER_LENGTH, `curvature of the light at ${hologram.id}`)
      : graph.input(`${name}.curvature of what goes straight on`, { value: 0, dim: PER_LENGTH }, 'computed', `curvature of the light at ${hologram.id}, which nothing shapes`);
    const run = [...from, ...light, bend];
    const share = graph.derive(`${name}.undiffracted`, REACHED, [...run, ...to], NUMBER, `share of ${arm.plate.id} on which light falls that goes straight through ${hologram.id}`, { unit: PERCENT });
    if (share.missing) return [];
    if (graph.value(share)! <= 0) return [{ arm, hologram, share }];
    const [middle, way, plate] = [from, light, to].map(cells => cells.slice(0, 3).map(c => graph.value(c)!)) as [number[], number[], number[]];
    const along = (at: readonly number[]): number => at.reduce((s, c, i) => s + way[i]! * (c - middle[i]!), 0);
    // The last one before the plate takes up most: the light goes on from there to where it is meant to go.
    const [best] = [...values.setup.things.values()].filter(t => t.kind.light === 'ends').flatMap(thing => {
      // A stop of which nothing else is written stands square to its light, as wide as stops mostly are.
      const at = places.of(places.own(thing));
      const own = thing.placement && at && !at.some(c => c.missing) ? [...at, ...(places.directions.facing(places.own(thing)) ?? light), ...faceCells(thing, { graph })] : undefined;
      const d = own && along(own.slice(0, 3).map(c => graph.value(c)!));
      return own && d! > 0 && d! < along(plate) ? [{ thing, share: graph.derive(`${name}.taken up by ${thing.id}`, TAKEN_UP, [...run, ...own], NUMBER, `share of the light straight through ${hologram.id} that ${thing.id} takes up`, { unit: PERCENT }) }] : [];
    }).filter(s => !s.share.missing).sort((a, b) => graph.value(b.share)! - graph.value(a.share)!);
    return [{ arm, hologram, share, ...(best && graph.value(best.share)! > 0 ? { stop: best } : {}) }];
  }

  private back(pair: Pair): ThrownBack[] {
    const { values, places, fringes } = this.context;
    const { graph } = values;
    const { arm, reference } = pair;
    const hologram = arm.object!;
    if (fringes.pairs.find(f => f.pair === pair)?.way !== 'reflection') return [];
    const [plate, other, light] = [this.pane(arm.plate), this.pane(hologram), places.directions.of(reference.path.at(-1)!)];
    if (!plate || !other || !light) return [];
    const [n, m] = [plate, other].map(p => p.slice(3, 6).map(c => graph.value(c)!)) as unknown as [Vector, Vector];
    if (!standsParallel(m, n, NEARLY_PARALLEL)) return [];
    const name = `${arm.plate.id}.${reference.name}.thrown back by ${hologram.id}`;
    const share = graph.derive(name, THROWN_BACK, [...plate, ...light, ...other], NUMBER, `share of ${arm.plate.id} to which ${reference.name} comes back from ${hologram.id}`, { unit: PERCENT });
    const longer = graph.derive(`${name}.longer`, LONGER, [...plate.slice(0, 3), ...other.slice(0, 6), ...light], LENGTH, `how much longer the way of ${reference.name} is that ${hologram.id} throws back`, { unit: MM });
    return share.missing || longer.missing ? [] : [{ pair, hologram, share, longer }];
  }

  /** Place, normal and sides of a thing; undefined where one of them is not known. */
  private pane(thing: Thing, sides: readonly Cell[] | undefined = sidesOfThing(thing, this.context.values)): Cell[] | undefined {
    const { places } = this.context;
    const own = places.own(thing);
    const [at, normal] = [places.of(own), places.directions.facing(own)];
    const cells = at && normal && sides ? [...at, ...normal, ...sides.slice(0, 2)] : [];
    return cells.length === 8 && !cells.some(c => c.missing) ? cells : undefined;
  }
}
