/**
 * Path difference and brightness over plate × object of placed setups. A coarse map in plain numbers finds which pair of a point of the plate and a part of the object matters; what is shown
 * of it is a cell of that pair. In a transfer the points of the first hologram stand for the object.
 */
import { ontoObject } from '../../model/arms.ts';
import type { Thing } from '../../model/model.ts';
import { LENGTH, NUMBER, parseUnit } from '../../model/units.ts';
import { Beams } from '../beams/beams.ts';
import { flatDepth, sidesOfThing } from '../places/extents.ts';
import type { Cell } from '../graph.ts';
import { nameOf, spreadOf, type ObjectLight } from '../object/object.ts';
import type { Pair } from '../paths/pairs.ts';
import { openSides } from '../places/mask.ts';
import { acrossPlate, brightnessAt, mismatchAt, nearestRevival, offRevival, search, WALK, type Found, type Layout } from '../rules/maps.ts';
import type { Making } from '../making.ts';

/** The map of one pair of arms. */
export interface PairMap {
  readonly plate: Thing;
  readonly pair: Pair;
  readonly layout: Layout;
  /** what rules of maps take, in their order */
  readonly inputs: readonly Cell[];
  /** mismatch of the middle of the object where it is least and greatest across the plate, and how far these lie apart */
  readonly least: Cell;
  readonly greatest: Cell;
  readonly walk: Cell;
  /** undefined where nothing of the object is lit and seen */
  readonly found?: Found & { readonly largestMismatch: Cell; readonly darkestBrightness?: Cell };
}

/** A multi-mode laser whose modes are in step again near the mismatch. */
export interface Revival {
  readonly times: number;
  /** how far the mismatch is off it */
  readonly off: Cell;
}

interface Context extends Making {
  readonly object: ObjectLight;
}

const [PERCENT, MM] = [parseUnit('%')!, parseUnit('mm')!];
const NAMES = ['largest mismatch', 'darkest point brightness', 'least across the plate', 'greatest across the plate', 'path walk', 'off revival'];

export class Maps {
  readonly maps: readonly PairMap[];

  constructor(private readonly context: Context) {
    this.maps = context.plates.flatMap(({ plate, pairs }) => pairs.flatMap(pair => this.mapOf(plate, pair) ?? []));
    for (const { plate, found } of this.maps) {
      for (const [what, cell] of [['largest mismatch', found?.largestMismatch], ['darkest point brightness', found?.darkestBrightness]] as const) {
        if (!cell || cell.missing) continue;
        context.published.push(cell);
        for (const short of [what, `${plate.id}.${what}`]) context.alias(short, cell);
      }
    }
  }

  of(pair: Pair): PairMap | undefined { return this.maps.find(m => m.pair === pair); }

  /** `P1.object.path walk` and the like; most are there already. */
  ask(name: string): Cell | undefined {
    const what = NAMES.find(n => name.endsWith(`.${n}`));
    if (!what) return undefined;
    const of = name.slice(0, -what.length - 1);
    const among = this.context.plates.flatMap(p => p.pairs.filter(pair => of === p.plate.id || of === nameOf({ plate: p.plate, pair })).map(pair => ({ plate: p.plate, pair })));
    if (among.length !== 1) return undefined;
    if (what === 'off revival') return this.revival(among[0]!.plate, among[0]!.pair)?.off;
    return this.context.values.graph.find(`${nameOf(among[0]!)}.${what}`);
  }

  /** Undefined for a laser without a tube, with one mode, or where plainly matched paths are nearest. */
  revival(plate: Thing, pair: Pair): Revival | undefined {
    const { graph } = this.context.values;
    const [distance, modes] = pair.coherence?.known === 'tube length' ? pair.coherence.inputs : [];
    if (!distance || !modes || distance.missing || modes.missing || pair.mismatch.missing || graph.value(modes) === 1) return undefined;
    const times = nearestRevival(graph.value(pair.mismatch)!, graph.value(distance)!);
    const name = `${nameOf({ plate, pair })}.off revival`;
    return times === 0 ? undefined : { times, off: graph.find(name) ?? graph.derive(name, offRevival(times), [pair.mismatch, distance], LENGTH, `mismatch at ${plate.id} beyond ${Math.abs(times) === 1 ? 'the' : `${Math.abs(times)} times the`} revival distance of ${pair.arm.laser.id}`, { unit: MM }) };
  }

  private mapOf(plate: Thing, pair: Pair): PairMap | undefined {
    const { graph } = this.context.values;
    const laid = this.laid(plate, pair);
    if (!laid || laid.inputs.some(c => c.missing)) return undefined;
    const { layout, inputs } = laid;
    const name = nameOf({ plate, pair });
    const [source, on] = [pair.arm.object!.id, plate.id];
    const [least, greatest] = (['least', 'greatest'] as const).map(end => graph.derive(`${name}.${end} across the plate`, acrossPlate(layout, end), inputs, LENGTH, `${end} mismatch of the middle of ${source} across ${on}`, { unit: MM })) as [Cell, Cell];
    const walk = graph.derive(`${name}.path walk`, WALK, [least, greatest], LENGTH, `walk of the path across ${on}`, { unit: MM });
    if (walk.missing) return undefined;
    const base = { plate, pair, layout, inputs, least, greatest, walk };
    const found = this.found(base);
    if (!found) return base;
    const part = layout.form === 'hologram' ? `point of ${source}` : `part of ${source}`;
    const largestMismatch = graph.derive(`${name}.largest mismatch`, mismatchAt(layout, found.largest), inputs, LENGTH, `largest mismatch of a ${part} at a point of ${on}`, { unit: MM });
    const { coherence } = pair;
    const darkestBrightness = coherence && found.darkest ? graph.derive(`${name}.darkest point brightness`, brightnessAt(layout, found.darkest, coherence.rule), [...inputs, ...coherence.inputs], NUMBER, `brightness of the darkest ${part}`, { unit: PERCENT }) : undefined;
    return { ...base, found: { ...found, largestMismatch, ...(darkestBrightness ? { darkestBrightness } : {}) } };
  }

  /** Kept with a cell of the same inputs, so that an edit elsewhere draws no map. */
  private found({ pair, layout, inputs, least, walk }: Omit<PairMap, 'found'>): Found | undefined {
    const { graph } = this.context.values;
    const { coherence } = pair;
    const known = coherence && !coherence.inputs.some(c => c.missing) ? coherence : undefined;
    const noted = graph.noted(known ? walk : least);
    // What the laser is known by may be another although no place has changed.
    const rest = known?.inputs.map(c => graph.value(c)!) ?? [];
    const key = JSON.stringify([known?.rule.name, known?.rule.of, rest]);
    const args = [0, ...rest];
    if (noted.map?.key !== key) noted.map = { key, found: search(layout, inputs.map(c => graph.value(c)!), known && (d => { args[0] = d; return known.rule.compute(args); })) };
    return noted.map.found;
  }

  /** How the pair is laid out; undefined where something does not stand anywhere, or has no size. */
  private laid(plate: Thing, pair: Pair): { readonly layout: Layout; readonly inputs: readonly Cell[] } | undefined {
    const { places, values, beams, object } = this.context;
    const own = places.own(plate);
    const ends = pair.reference.path.at(-1)!;
    const [normal, reference, sides] = [places.directions.facing(own), places.directions.of(ends), sidesOfThing(plate, values)];
    const seen = object.of(pair) ?? this.transferred(plate, pair);
    if (!normal || !reference || !sides || !seen?.sides) return undefined;
    const spread = spreadOf(pair.reference, ends, beams);
    // Nothing is said of light whose spread cannot be told.
    if (!spread && Beams.areShaped(pair.reference) || !seen.spread && Beams.areShaped(pair.arm)) return undefined;
    return {
      layout: { form: seen.form, reference: spread !== undefined, light: seen.spread !== undefined },
      inputs: [pair.mismatch, ...seen.at, ...seen.middle, ...normal, ...('facing' in seen ? seen.facing : []), ...reference, ...(spread ?? []), ...seen.light, ...(seen.spread ?? []), sides[0]!, sides[1]!, ...seen.sides],
    };
  }

  /** A hologram as the object of its transfer. */
  private transferred(plate: Thing, pair: Pair): { readonly form: 'hologram'; readonly at: readonly Cell[]; readonly middle: readonly Cell[]; readonly facing: readonly Cell[]; readonly light: readonly Cell[]; readonly spread?: readonly [Cell, Cell]; readonly sides: readonly Cell[] } | undefined {
    const { places, values, beams } = this.context;
    const first = pair.arm.object!;
    const onto = ontoObject(pair.arm);
    if (first.kind.light !== 'diffracts' || !onto || places.ways.source(pair.arm.path.at(-1)!) !== first) return undefined;
    const own = places.own(first);
    const [at, middle, facing, light, sides] = [places.of(places.own(plate)), places.of(own), places.directions.facing(own), places.directions.of(onto), openSides(pair.arm, values)];
    if (!at || !middle || !facing || !light || !sides) return undefined;
    const spread = spreadOf(pair.arm, onto, beams);
    return { form: 'hologram', at, middle, facing, light, ...(spread ? { spread } : {}), sides: [...sides, flatDepth(first, values)] };
  }
}
