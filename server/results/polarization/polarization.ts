/** Polarization along the arms: how much of the object light can make fringes with the reference, and the ghost fringes that the reference makes in the glass. */
import type { Arm } from '../../model/arms.ts';
import type { Leg, Thing } from '../../model/model.ts';
import { NUMBER, parseUnit } from '../../model/units.ts';
import { hologramWay } from '../fringes/way.ts';
import type { Cell } from '../graph.ts';
import { angleAt, type Pair, type PlateResults } from '../paths/pairs.ts';
import { referenceFrom } from '../places/angles.ts';
import { DARK, ghosts, interfering, passedBy, traced, type Meeting } from '../rules/polarization.ts';
import { edgeLights, type EdgeLight } from './edges.ts';
import { laserLight, type LaserLight } from './laser-light.ts';
import { wayOf, type Taken, type Way } from './trains.ts';
import type { Making } from '../making.ts';

/** The light of one object arm and its reference. */
export interface PairPolarization {
  readonly plate: Thing;
  readonly pair: Pair;
  /** share of the object light that can make fringes with the reference */
  readonly share: Cell;
  readonly laser: LaserLight;
  /** no places tell how the light is folded, so that all folds are taken to lie in the table's plane */
  readonly level: boolean;
  /** some of the light meets a mirror neither as s nor as p, or is polarized at random: what a coating does to it is not known */
  readonly estimated: boolean;
  /** the text says something of polarization, or stands things so that the light is turned out of the table's plane */
  readonly told: boolean;
  readonly meeting: Meeting;
  readonly inputs: readonly Cell[];
  readonly ways: { readonly reference: Way; readonly object: Way };
}

/** What crosses the polarization of two beams, and the share of the light that could make fringes without it. */
export interface Crossing {
  readonly by: 'half-wave plate' | 'polarizer' | 'folds' | 'random laser' | 'object' | 'wide angle';
  readonly things: readonly string[];
  readonly left: number;
}

type Met = Pick<PairPolarization, 'ways' | 'meeting' | 'inputs' | 'level'> & { readonly lacks?: Cell };

/** Ghost fringes that a reference makes in its plate. */
export interface Ghost {
  readonly plate: Thing;
  readonly arm: Arm;
  /** contrast with the light that was bounced twice inside */
  readonly fringes: Cell;
  /** contrast with the light off the back face, which runs against it */
  readonly backFace: Cell;
  readonly angle: Cell;
  readonly index: Cell;
  readonly laser: LaserLight;
}

const PERCENT = parseUnit('%')!;

export class Polarization {
  private readonly known = new Map<Pair, PairPolarization>();
  /** of each plate whose reference comes at a known angle through bare glass, where the text says anything of the laser's polarization */
  readonly ghosts: readonly Ghost[];
  private readonly askedGhosts = new Map<PlateResults, Ghost[]>();

  /** plates whose bare edge stands in a steep reference */
  readonly edges: readonly EdgeLight[];

  constructor(private readonly context: Making) {
    for (const { pairs } of context.plates) {
      for (const pair of pairs) {
        const share = this.isTold(pair) ? this.of(pair)?.share : undefined;
        if (share && !share.missing) context.published.push(share);
      }
    }
    this.ghosts = context.plates.flatMap(p => (p.arms.some(a => a.arm.role === 'reference' && laserIsTold(a.arm.laser)) ? this.ghostsAt(p) : []));
    this.edges = edgeLights(context.plates, context.beams, context.places, context.values);
    for (const g of this.ghosts) if (!g.fringes.missing) context.published.push(g.fringes);
  }

  /** What was worked out: of pairs of which the text says something of polarization, of those whose places show how their light is folded, and of those that were asked for. */
  get pairs(): readonly PairPolarization[] { return [...this.known.values()]; }

  /** The share of a pair, where the text says something of it. */
  told(plate: Thing, arm: Arm): Cell | undefined {
    const found = this.pairs.find(p => p.plate === plate && p.pair.arm === arm);
    return found?.told && !found.share.missing ? found.share : undefined;
  }

  of(pair: Pair): PairPolarization | undefined {
    const known = this.known.get(pair);
    if (known) return known;
    const found = this.context.plates.find(p => p.pairs.includes(pair));
    if (!found) return undefined;
    const made = this.pairOf(found, pair);
    this.known.set(pair, made);
    for (const [what, cell] of [['polarization', made.share]] as const) for (const short of [what, `${found.plate.id}.${what}`]) this.context.alias(short, cell);
    return made;
  }

  /** `P1.object.polarization`, `P1.polarization`, `polarization`; `P1.reference.ghost fringes`, `ghost fringes` */
  ask(name: string): Cell | undefined {
    if (GHOSTS.test(name)) {
      const found = this.context.plates.filter(p => !name.includes('.') || name.startsWith(`${p.plate.id}.`)).flatMap(p => this.ghostsAt(p));
      return found.length !== 1 ? undefined : [found[0]!.fringes, found[0]!.backFace].find(c => c.name === name || (c === found[0]!.fringes && (name === 'ghost fringes' || name === `${found[0]!.plate.id}.ghost fringes`)));
    }
    if (name !== 'polarization' && !name.endsWith('.polarization')) return undefined;
    const of = name.slice(0, -'.polarization'.length);
    const among = this.context.plates.flatMap(({ plate, pairs }) => pairs.filter(x => name === 'polarization' || of === plate.id || of === `${plate.id}.${x.arm.name}`));
    return among.length === 1 ? this.of(among[0]!)?.share : undefined;
  }

  /** Share that the polarizer at the end of a leg passes of the light that comes to it; undefined where that cannot be told. */
  polarizerShare(leg: Leg): Cell | undefined {
    const { values, places } = this.context;
    const path = [leg];
    for (let before = places.ways.before(leg); before && path.length < MOST_LEGS; before = places.ways.before(before)) path.unshift(before);
    const laser = path[0]!.beam.from;
    if (laser?.kind.light !== 'source') return undefined;
    const way = wayOf(path, values, places, {}, true);
    const light = laserLight(laser, values);
    if (way.facts.some(c => c.missing) || way.train.turns.some(t => t === 'facet' || t === 'screen')) return undefined;
    if (!light.known) return undefined;
    const name = `${leg.id}.polarizer share`;
    const { graph } = values;
    return graph.find(name) ?? graph.derive(name, passedBy(way.directions ? 'places' : 'level', way.train), [light.angle, light.share, ...way.facts, ...(way.directions ?? [])], NUMBER, `share of ${leg.beam.id} that ${leg.to} passes`, { unit: PERCENT });
  }

  /** The text says how the laser is polarized, puts something into an arm that acts on it, or leads an arm out of the table's plane. */
  private isTold({ arm, reference }: Pair): boolean {
    return laserIsTold(arm.laser) || referenceFrom(arm.plate, this.context.values) !== 'the side' || this.isOutOfPlane([...arm.path, ...reference.path]) || [arm, reference].some(a => a.path.some(l => l.target?.kind.word === 'polarizer' || l.target?.kind.word === 'half-wave plate'));
  }

  /** Whether what the light meets stands at different heights. */
  private isOutOfPlane(path: readonly Leg[]): boolean {
    const { places, values } = this.context;
    if (places.none) return false;
    let [low, high] = [Infinity, -Infinity];
    for (const { target } of path) {
      const at = target && places.of(places.own(target));
      const z = at && values.graph.value(at[2]);
      if (z !== undefined) { low = Math.min(low, z); high = Math.max(high, z); }
    }
    return high - low > LEVEL;
  }

  private pairOf(p: PlateResults, pair: Pair): PairPolarization {
    const { values } = this.context;
    const { graph } = values;
    const { plate } = p;
    const laser = laserLight(pair.arm.laser, values);
    let made = this.meet(p, pair, laser, {});
    const at = valuesOf(made.inputs, c => graph.value(c));
    const trace = at && traced(made.meeting, at);
    const mixed = new Set(trace ? [...trace.reference.mixed.map(i => made.ways.reference.turns[i]!), ...trace.object.mixed.map(i => made.ways.object.turns[i]!)] : []);
    if (mixed.size > 0 && graph.value(laser.share) === 1) made = this.meet(p, pair, laser, { mixed });
    const [name, words] = [`${plate.id}.${pair.arm.name}.polarization`, `share of the light of ${pair.arm.name} that can make fringes on ${plate.id}`];
    const dark = trace && ([[pair.reference, trace.reference, made.ways.reference], [pair.arm, trace.object, made.ways.object]] as const).find(([, { passed }]) => passed < DARK);
    const share = made.lacks ? graph.derive(name, interfering(made.meeting), [made.lacks], NUMBER, words)
      : dark ? values.missing(name, NUMBER, words, { code: 'impossible-value', why: `${dark[2].elements.at(-1)?.thing.id ?? 'a polarizer'} lets none of the light of ${dark[0].name} through`, at: plate.at })
        : graph.derive(name, interfering(made.meeting), made.inputs, NUMBER, words, { unit: PERCENT });
    return { plate, pair, share, laser, told: this.isTold(pair), level: made.level, estimated: mixed.size > 0 || graph.value(laser.share) !== 1, meeting: made.meeting, inputs: made.inputs, ways: made.ways };
  }

  /** Both ways to a plate, and the inputs of the rule for them. */
  private meet(p: PlateResults, pair: Pair, laser: LaserLight, taken: Taken): Met {
    const { values, places, setup } = this.context;
    const { plate } = p;
    const ways = { reference: wayOf(pair.reference.path, values, places, taken), object: wayOf(pair.arm.path, values, places, taken) };
    const normal = this.normalOf(plate);
    const level = !(ways.reference.directions && ways.object.directions && normal);
    const way = hologramWay(setup, pair);
    const plateInputs = level ? [pair.reference, pair.arm].map(a => angleAt(a, this.context.plates, values)) : normal;
    const inputs = [laser.angle, laser.share, this.layerIndex(plate), ...plateInputs, ...ways.reference.facts, ...(level ? [] : ways.reference.directions!), ...ways.object.facts, ...(level ? [] : ways.object.directions!)];
    const lacks = level && !way ? values.missing(`${plate.id}.sides`, NUMBER, `sides from which the light comes to ${plate.id}`, { code: 'value-missing', why: 'whether this is a transmission or a reflection hologram is not written: write “hologram: transmission”', at: plate.at }) : undefined;
    return { ways, level, inputs, meeting: { ground: level ? 'level' : 'places', way: way ?? 'transmission', from: referenceFrom(plate, values), reference: ways.reference.train, object: ways.object.train }, ...(lacks ? { lacks } : {}) };
  }

  /** What crosses the polarization of a pair most: without it, the largest share would be left. Plain numbers; it makes no cell. */
  cause(p: PairPolarization): Crossing {
    const { graph } = this.context.values;
    const found = this.context.plates.find(r => r.plate === p.plate)!;
    const at = (cells: readonly Cell[], change: (cell: Cell, value: number) => number = (_, v) => v): number[] => cells.map(c => change(c, graph.value(c) ?? 0));
    const left = (meeting: Meeting, x: number[]): number => { const { share } = traced(meeting, x); return Number.isFinite(share) ? share : 0; };
    const without = (word: string): number => { const m = this.meet(found, p.pair, p.laser, { without: t => t.kind.word === word }); return left(m.meeting, at(m.inputs)); };
    const elements = [...p.ways.reference.elements, ...p.ways.object.elements];
    const named = (word: string): string[] => [...new Set(elements.filter(e => e.thing.kind.word === word).map(e => e.thing.id))];
    const trace = traced(p.meeting, at(p.inputs));
    const rising = [...trace.reference.rising.map(i => p.ways.reference.turns[i]!.id), ...trace.object.rising.map(i => p.ways.object.turns[i]!.id)];
    const angles = [p.pair.reference, p.pair.arm].map(arm => graph.value(found.arms.find(a => a.arm === arm)?.angle?.cell ?? p.laser.angle) ?? 0);
    const flat = (): number => left({ ...p.meeting, ground: 'level', from: 'the side' }, [...at([p.laser.angle, p.laser.share, p.inputs[2]!]), ...angles, ...at(p.ways.reference.facts), ...at(p.ways.object.facts)]);
    const scattering = new Set([...p.ways.reference.facts, ...p.ways.object.facts].filter(c => c.name.endsWith('.depolarization')));
    const ways: readonly Crossing[] = [
      ...(named('half-wave plate').length > 0 ? [{ by: 'half-wave plate' as const, things: named('half-wave plate'), left: without('half-wave plate') }] : []),
      ...(named('polarizer').length > 0 ? [{ by: 'polarizer' as const, things: named('polarizer'), left: without('polarizer') }] : []),
      ...(rising.length > 0 ? [{ by: 'folds' as const, things: rising, left: flat() }] : []),
      { by: 'random laser', things: [p.pair.arm.laser.id], left: left(p.meeting, at(p.inputs, (c, v) => (c === p.laser.share ? 1 : v))) },
      { by: 'object', things: [...scattering].map(c => c.name.slice(0, -'.depolarization'.length)), left: left(p.meeting, at(p.inputs, (c, v) => (scattering.has(c) ? 0 : v))) },
      { by: 'wide angle', things: [], left: left(p.meeting, at(p.inputs, (c, v) => (c === p.laser.angle ? 0 : v))) },
    ];
    return ways.reduce((best, w) => (w.left > best.left + 1e-6 ? w : best));
  }

  private ghostsAt(p: PlateResults): Ghost[] {
    let made = this.askedGhosts.get(p);
    if (!made) this.askedGhosts.set(p, made = this.ghostsOf(p));
    return made;
  }

  /** Nothing where glass and what is behind it are of one index, or where nothing tells how the reference comes. */
  private ghostsOf({ plate, arms }: PlateResults): Ghost[] {
    const { values, places } = this.context;
    if (values.words(plate, 'backing') !== 'none') return [];
    const reference = arms.find(a => a.arm.role === 'reference');
    if (!reference?.angle || reference.angle.cell.missing) return [];
    const { arm, angle } = reference;
    const way = wayOf(arm.path, values, places);
    const normal = this.normalOf(plate);
    // An angle that is written wins over the places.
    const placed = way.directions && normal && angle.cell === angle.byPlaces;
    const laser = laserLight(arm.laser, values);
    const index = this.glassIndex(plate);
    const inputs = [laser.angle, laser.share, index, ...(placed ? normal : [angle.cell]), ...way.facts, ...(placed ? way.directions : [])];
    const make = (what: string, which: 'twoBounces' | 'backFace', words: string): Cell => values.graph.derive(`${plate.id}.${arm.name}.${what}`, ghosts(placed ? 'places' : 'level', referenceFrom(plate, values), way.train, which), inputs, NUMBER, words, { unit: PERCENT });
    const fringes = make('ghost fringes', 'twoBounces', `contrast of ghost fringes of ${arm.name} in ${plate.id}`);
    const backFace = make('back face fringes', 'backFace', `contrast of the fringes of ${arm.name} with its light off the back of ${plate.id}`);
    for (const short of ['ghost fringes', `${plate.id}.ghost fringes`]) this.context.alias(short, fringes);
    return [{ plate, arm, fringes, backFace, angle: angle.cell, index, laser }];
  }

  private normalOf(plate: Thing): readonly Cell[] | undefined {
    const { places } = this.context;
    const normal = places.directions.facing(places.own(plate));
    return normal && !normal.some(c => c.missing) ? normal : undefined;
  }

  private layerIndex(plate: Thing): Cell {
    const { values } = this.context;
    return values.fact(plate, 'index') ?? values.missing(`${plate.id}.index`, NUMBER, `index of ${plate.id}`, { code: 'value-missing', why: `the index of ${plate.id} is not known`, at: plate.at });
  }

  private glassIndex(plate: Thing): Cell {
    const { values } = this.context;
    const name = `${plate.id}.index of its glass`;
    const film = values.words(plate, 'base') === 'film';
    const [value, amount, reason] = film ? [1.55, 0.1, 'films are of acetate, 1.48, or polyester, about 1.6; from memory'] : [1.52, 0.01, 'plates are coated on window glass, 1.51 to 1.53; from memory'];
    return values.graph.find(name) ?? values.graph.input(name, { value, dim: NUMBER, spread: { kind: 'within', amount } }, 'assumed', `index of the ${film ? 'film' : 'glass'} of ${plate.id}`, { reason });
  }
}

const GHOSTS = /(?:^|\.)(?:ghost|back face) fringes$/;
const laserIsTold = ({ facts }: Thing): boolean => facts.has('polarization') || facts.has('polarization angle');

const MOST_LEGS = 5000;
/** Differences in height that turn nothing that counts, m. */
const LEVEL = 0.02;

/** Undefined where one of them is missing. */
function valuesOf(cells: readonly Cell[], value: (cell: Cell) => number | undefined): number[] | undefined {
  const found = cells.map(value);
  return found.every(v => v !== undefined) ? (found) : undefined;
}
