/** The fringes that an object arm and its reference make on a plate: how fine, how they lie, and what the stock makes of them. */
import type { Arm } from '../../model/arms.ts';
import type { Setup, Thing } from '../../model/model.ts';
import { ANGLE, LENGTH, NUMBER, parseUnit, PER_LENGTH } from '../../model/units.ts';
import { Beams } from '../beams/beams.ts';
import type { Cell } from '../graph.ts';
import type { Pair, PlateResults } from '../paths/pairs.ts';
import { openSides } from '../places/mask.ts';
import { referenceFrom } from '../places/angles.ts';
import { acrossLayer, alongSurface, bandwidth, efficiency, finestSpot, MIDDLE, PER_METRE, RESOLVING_SHARE, separation, slitLies, tilt, volume, type HologramWay, type Known, type Spot } from '../rules/fringes.ts';
import { weighted } from '../rules/lengths.ts';
import { ACHROMATIC } from '../rules/replay.ts';
import { extentOf, flatDepth, sidesOfThing, type Extent } from '../places/extents.ts';
import { wayOf, type Sides } from './way.ts';
import type { Making } from '../making.ts';

/** The fringes of one pair. */
export interface PairFringes {
  readonly plate: Thing;
  readonly pair: Pair;
  readonly way: HologramWay;
  /** from which sides the beams come, where places tell it */
  readonly sides?: Sides;
  /** fringes per metre where they are finest */
  readonly finest: Cell;
  /** where that is: on the plate, and from which part of the object the light comes */
  readonly spot: Spot;
  /** of the stock, where it is written or its sort is */
  readonly rated?: Cell;
  readonly share?: Cell;
  /** of a transmission hologram whose object has a size: below 1 the halo of the object reaches into its image */
  readonly separation?: Cell;
  /** of a rainbow hologram: how what is open of the first hologram lies to the way on which the reference comes */
  readonly slit?: 'along' | 'across';
  /** both beams as rules of fringes take them */
  readonly from: { readonly known: Known; readonly inputs: readonly Cell[] };
}

const PERCENT = parseUnit('%')!;
const DEGREE = parseUnit('°')!;
const NANOMETRE = parseUnit('nm')!;
const isRainbow = ({ facts }: Setup): boolean => { const word = facts.get('hologram')?.value; return word?.kind === 'words' && word.text === 'rainbow'; };
/** What is only worked out when a name asks for it. */
const ASKED = ['fringe tilt', 'volume parameter', 'estimated efficiency', 'bandwidth', 'achromatic angle'] as const;
type Asked = (typeof ASKED)[number];

export class Fringes {
  readonly pairs: readonly PairFringes[];

  constructor(private readonly context: Making) {
    this.pairs = context.plates.flatMap(p => p.pairs.flatMap(pair => this.pairOf(p, pair) ?? []));
    for (const f of this.pairs) this.publish(f);
  }

  of(pair: Pair): PairFringes | undefined { return this.pairs.find(f => f.pair === pair); }

  /** `P1.object.bandwidth`, or `P1.bandwidth` of a plate with one object beam. */
  ask(name: string): Cell | undefined {
    const what = ASKED.find(a => name === a || name.endsWith(`.${a}`));
    if (!what) return undefined;
    const of = name.slice(0, -what.length - 1);
    const among = this.pairs.filter(f => of === '' || of === f.plate.id || of === nameOf(f));
    return among.length === 1 ? this.asked(among[0]!, what) : undefined;
  }

  /** Of the middle of a plate: how the fringe planes lie; and as estimates how thick, how bright, how wide a band of colours. */
  asked(f: PairFringes, what: Asked): Cell | undefined {
    const { graph } = this.context.values;
    const name = `${nameOf(f)}.${what}`;
    const known = graph.find(name);
    if (known) return known;
    const layer = (phrase: string, words = phrase): Cell => this.fact(f.plate, phrase, words);
    const inputs = [...f.from.inputs, layer('index'), this.wavelength(f.pair.arm), layer('layer', 'thickness of the layer')];
    const words = `${what} of ${f.plate.id}${this.pairs.filter(o => o.plate === f.plate).length > 1 ? ` by ${f.pair.arm.name}` : ''}`;
    const made = what === 'achromatic angle' ? this.achromatic(f, name) : this.make(f, what, name, words, inputs, layer);
    if (made) for (const alias of [what, `${f.plate.id}.${what}`]) this.context.alias(alias, made);
    return made;
  }

  /** At which the master of a rainbow hologram has to lie to its plate, so that the images of all colours stand in one place. */
  private achromatic({ plate, pair }: PairFringes, name: string): Cell | undefined {
    const { setup, values, plates } = this.context;
    const angle = plates.find(p => p.plate === plate)?.arms.find(a => a.arm === pair.reference)?.angle?.cell;
    if (!isRainbow(setup)) return values.missing(name, ANGLE, `achromatic angle of ${plate.id}`, { code: 'value-missing', why: `${plate.id} is to be no rainbow hologram, which alone has one`, at: plate.at });
    return angle && values.graph.derive(name, ACHROMATIC, [angle], ANGLE, `achromatic angle of ${plate.id}, from its normal`, { unit: DEGREE });
  }

  private make(f: PairFringes, what: Exclude<Asked, 'achromatic angle'>, name: string, words: string, inputs: readonly Cell[], layer: (phrase: string) => Cell): Cell | undefined {
    const { graph } = this.context.values;
    const { known } = f.from;
    switch (what) {
      case 'fringe tilt': return graph.derive(name, tilt(known), inputs.slice(0, -2), ANGLE, `tilt of the fringe planes against ${f.plate.id}`);
      case 'volume parameter': return graph.derive(name, volume(known), inputs, NUMBER, words);
      case 'estimated efficiency': return graph.derive(name, efficiency(known), [...inputs, layer('index amplitude')], NUMBER, `${words}, an estimate`, { unit: PERCENT });
      case 'bandwidth': return f.way === 'reflection' ? graph.derive(name, bandwidth(known), inputs, LENGTH, `${words}, an estimate`, { unit: NANOMETRE })
        : this.context.values.missing(name, LENGTH, words, { code: 'value-missing', why: `${f.plate.id} is to be a transmission hologram, which sends all colours on, each in its own direction`, at: f.plate.at });
    }
  }

  private publish(f: PairFringes): void {
    const { published, alias } = this.context;
    for (const [what, cell] of [['fringes', f.finest], ['resolving share', f.share]] as const) {
      if (!cell || cell.missing) continue;
      published.push(cell);
      for (const short of [what, `${f.plate.id}.${what}`]) alias(short, cell);
    }
  }

  /** Undefined where angle, place or wavelength does not tell anything. */
  private pairOf({ plate, arms }: PlateResults, pair: Pair): PairFringes | undefined {
    const { values } = this.context;
    const { graph } = values;
    const reference = arms.find(a => a.arm === pair.reference);
    const wavelength = values.fact(pair.arm.laser, 'wavelength');
    if (!wavelength || !reference?.angle || reference.angle.cell.missing) return undefined;
    const by = reference.angle.byPlaces && !reference.angle.byPlaces.missing ? this.byPlaces(plate, pair) : undefined;
    const way = wayOf(this.context.setup, pair, by && { graph, ...by });
    if (!way) return undefined;
    const object = arms.find(a => a.arm === pair.arm);
    const angle = object?.angle?.cell ?? values.fact(plate, 'object angle');
    if (!by && !angle) return undefined;
    const extent = !by || by.source === pair.arm.object ? this.extent(by?.source ?? pair.arm.object!, pair) : { shape: 'box' as const };
    const [known, inputs] = by ? this.inputs(plate, pair, extent, 'places', way.way, [...by.plate, ...by.normal, ...by.object, ...by.reference], false)
      : this.byAngles(plate, pair, extent, way.way, reference.angle.cell, angle!);
    const layer = way.way === 'reflection' ? [this.fact(plate, 'index')] : [];
    const at = [...inputs, ...layer].map(c => graph.value(c));
    const whole = at.every(v => v !== undefined);
    const spot = whole ? finestSpot(known, way.way, extent.shape, at) : MIDDLE;
    const name = `${plate.id}.${pair.arm.name}`;
    const rule = way.way === 'reflection' ? acrossLayer(known, spot) : alongSurface(known, spot);
    const inWave = graph.derive(`${name}.fringes in a wavelength`, rule, [...inputs, ...layer], NUMBER, `fringes in a wavelength on ${plate.id}`);
    const finest = graph.derive(`${name}.fringes`, PER_METRE, [inWave, wavelength], PER_LENGTH, `finest fringes of ${pair.arm.name} on ${plate.id}`);
    const rated = values.fact(plate, 'resolving power');
    const share = rated && graph.derive(`${name}.resolving share`, RESOLVING_SHARE, [finest, rated], NUMBER, `share of the resolving power of ${plate.id}`, { unit: PERCENT });
    const room = way.way === 'transmission' && whole && (extent.sides || typeof extent.shape !== 'string') && !known.far
      ? graph.derive(`${name}.room beside the object`, separation(known, extent.shape), inputs, NUMBER, `room between the reference and ${pair.arm.object!.id}`) : undefined;
    const slit = isRainbow(this.context.setup) && whole && extent.shape === 'box' && extent.sides && !known.far ? slitLies(known, at) : undefined;
    return { plate, pair, way: way.way, finest, spot, from: { known, inputs }, ...(way.sides ? { sides: way.sides } : {}), ...(rated && share ? { rated, share } : {}), ...(room ? { separation: room } : {}), ...(slit ? { slit } : {}) };
  }

  /** The light of a transfer comes from the hologram before it, which is flat, and from no more of it than its slit leaves open. */
  private extent(source: Thing, pair: Pair): Extent {
    const { values } = this.context;
    if (source.kind.light !== 'diffracts') return extentOf(source, pair.depth, values);
    const open = openSides(pair.arm, values);
    return open ? { shape: 'box', sides: [...open, flatDepth(source, values)] } : { shape: 'box' };
  }

  /** Where everything stands; undefined where a place or a direction is not known. */
  private byPlaces(plate: Thing, pair: Pair): { readonly plate: readonly Cell[]; readonly normal: readonly Cell[]; readonly object: readonly Cell[]; readonly reference: readonly Cell[]; readonly light: readonly Cell[]; readonly source: Thing } | undefined {
    const { places } = this.context;
    const own = places.own(plate);
    const [last, ends] = [pair.arm.path.at(-1)!, pair.reference.path.at(-1)!];
    const source = places.ways.source(last);
    const [at, normal, reference, light] = [places.of(own), places.directions.facing(own), places.directions.of(ends), places.directions.of(last)];
    const object = source && places.of(places.own(source));
    return at && normal && reference && light && object && ![...at, ...normal, ...reference, ...light, ...object].some(c => c.missing) ? { plate: at, normal, object, reference, light, source: places.own(source) } : undefined;
  }

  private byAngles(plate: Thing, pair: Pair, extent: Extent, way: HologramWay, reference: Cell, object: Cell): [Known, Cell[]] {
    const last = pair.arm.path.at(-1)!;
    const distance = this.context.places.ways.source(last) === pair.arm.object ? this.context.legs.get(last) : undefined;
    const far = !distance || distance.missing !== undefined || !(this.context.values.graph.value(distance)! > 0);
    return this.inputs(plate, pair, extent, 'angles', way, [reference, object, ...(far ? [] : [distance])], far);
  }

  private inputs(plate: Thing, pair: Pair, extent: Extent, by: Known['by'], way: HologramWay, first: readonly Cell[], far: boolean): [Known, Cell[]] {
    const { values } = this.context;
    const spread = this.spread(pair.reference);
    const sides = sidesOfThing(plate, values)?.slice(0, 2);
    const known: Known = { by, way, from: referenceFrom(plate, values), far, spread: spread !== undefined, plate: sides !== undefined, object: extent.sides !== undefined };
    return [known, [...first, ...(spread ?? []), ...(sides ?? []), ...(extent.sides ?? [])]];
  }

  /** How far a reference is past the focus that it spreads from, and its Rayleigh range; undefined for light that runs side by side, or where nothing tells. */
  spread(arm: Arm): readonly Cell[] | undefined {
    if (!Beams.areShaped(arm)) return this.asWritten(arm);
    const { level } = this.context.beams.at(arm.path.at(-1)!);
    if (!level.past.missing && !level.rayleigh.missing) return [level.past, level.rayleigh];
    return this.behindSpreader(arm) ?? this.asWritten(arm);
  }

  /** From the `reference distance` of its plate; undefined where none is written, or `parallel`. */
  private asWritten({ plate, name }: Arm): readonly Cell[] | undefined {
    const { values } = this.context;
    const distance = plate.facts.has('reference distance') ? values.fact(plate, 'reference distance') : undefined;
    return distance && [distance, this.point(`${plate.id}.${name}.spread from`)];
  }

  private point(name: string): Cell { return this.context.values.graph.find(`${name} a point`) ?? this.context.values.graph.input(`${name} a point`, { value: 0, dim: LENGTH }, 'written', 'Rayleigh range of a point'); }

  /** Without a focal length the light of a spreader comes from about where it stands, as long as nothing bends it again. */
  private behindSpreader(arm: Arm): readonly Cell[] | undefined {
    const { values, legs } = this.context;
    const at = arm.path.findLastIndex(l => l.target?.kind.word === 'spreader');
    const behind = arm.path.slice(at + 1);
    if (at < 0 || behind.some(l => l.target?.kind.word === 'lens' || l.target?.kind.word === 'collimator' || l.target?.facts.has('focal length') === true)) return undefined;
    const lengths = behind.map(l => legs.get(l));
    if (lengths.some(c => !c || c.missing)) return undefined;
    const name = `${arm.plate.id}.${arm.name}.spread from`;
    const { graph } = values;
    return [
      graph.find(name) ?? graph.derive(name, weighted('way behind the spreader', 'sum of the legs behind it', behind.map(() => 1)), lengths as Cell[], LENGTH, `way of ${arm.name} from its spreader to ${arm.plate.id}`),
      this.point(name),
    ];
  }

  private wavelength(arm: Arm): Cell { return this.fact(arm.laser, 'wavelength'); }

  private fact(thing: Thing, phrase: string, words = phrase): Cell {
    const dim = phrase === 'index' || phrase === 'index amplitude' ? NUMBER : LENGTH;
    return this.context.values.fact(thing, phrase) ?? this.context.values.missing(`${thing.id}.${phrase}`, dim, `${words} of ${thing.id}`, { code: 'value-missing', why: `the ${words} of ${thing.id} is not known: write “${phrase}”, or its “material”`, at: thing.at });
  }
}

const nameOf = (f: PairFringes): string => `${f.plate.id}.${f.pair.arm.name}`;
