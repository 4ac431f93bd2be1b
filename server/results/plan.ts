/** From a bound setup to its cells: the one place that says which results a setup has, and in which order they are made. */
import { formArms, type Arms } from '../model/arms.ts';
import type { Problem, Setup, Thing } from '../model/model.ts';
import { addAlias, nameShort } from './aliases.ts';
import { Beams } from './beams/beams.ts';
import { arrivalAngle, foldNamed } from './places/angles.ts';
import { armLengths } from './paths/arm-lengths.ts';
import { coherenceOf, type Coherence } from './coherence.ts';
import { Exposures } from './exposures/exposures.ts';
import { registersOf, type Register } from './exposures/registers.ts';
import { sharesOf } from './exposures/shares.ts';
import { Fringes } from './fringes/fringes.ts';
import { laserCautions, type LaserCaution } from './eyes.ts';
import { judgeGoals, type GoalResult } from './goals.ts';
import { Graph, type Cell } from './graph.ts';
import { Hang } from './hang/hang.ts';
import { Replay } from './replay/replay.ts';
import { Losses } from './losses/losses.ts';
import { LegCells } from './legs/leg-cells.ts';
import { lightOf, type Light } from './light/light.ts';
import { legLength } from './legs/legs.ts';
import type { Making } from './making.ts';
import { missingLengths } from './paths/missing-lengths.ts';
import { resultNamed } from './names.ts';
import { ObjectLight } from './object/object.ts';
import { Screens } from './object/screens.ts';
import { differenceNamed } from './paths/differences.ts';
import { pair, type Pair, type PlateResults } from './paths/pairs.ts';
import { Maps } from './maps/maps.ts';
import { litMasters, type Lit } from './masters/lit.ts';
import { Records, type Page } from './masters/records.ts';
import { Strays } from './masters/straight-on.ts';
import { Movement } from './movement/movement.ts';
import { Places } from './places/places.ts';
import { Polarization } from './polarization/polarization.ts';
import { Readings } from './readings/index.ts';
import { Table } from './table/table.ts';
import { offsetsOf, type Offsets } from './readings/offsets.ts';
import { Values } from './values.ts';

export interface Results {
  readonly setup: Setup;
  readonly graph: Graph;
  readonly values: Values;
  /** how its holograms were recorded, where their pages are named */
  readonly records: Records;
  readonly places: Places;
  readonly arms: Arms;
  readonly legs: LegCells;
  readonly plates: readonly PlateResults[];
  /** what was measured, and what it corrects */
  readonly readings: Readings;
  /** how wide the beams are and from where they spread */
  readonly beams: Beams;
  /** which side of the objects is lit and seen */
  readonly object: ObjectLight;
  /** ways by ground glass and diffusers that light the objects */
  readonly screens: Screens;
  /** mismatch and brightness over plate and object, where both are placed */
  readonly maps: Maps;
  /** what stands on the table, and what is in whose way */
  readonly table: Table;
  /** the fringes on the plates */
  readonly fringes: Fringes;
  /** what of the object light can make fringes with the reference, and ghost fringes */
  readonly polarization: Polarization;
  /** what the meter said, and what follows from it */
  readonly light: Light;
  /** what may move, and by how much */
  readonly movement: Movement;
  /** back from where the finished hologram will hang */
  readonly hang: Hang;
  /** what it shows there, under each lamp that is written */
  readonly replay: Replay;
  /** of plates that get more than one */
  readonly exposures: Exposures<Results>;
  /** each of its exposures beside the first, under each lamp */
  readonly registers: readonly Register[];
  /** its holograms whose recording is known, with the light that falls on them */
  readonly masters: readonly Lit[];
  /** light of transfers that goes other ways than through the image of the first hologram */
  readonly strays: Strays;
  /** the lasers with what a caution for eyes needs */
  readonly eyes: readonly LaserCaution[];
  /** what holds the brightness back */
  readonly losses: Losses;
  /** the cells that are results, in the order in which they are shown */
  readonly published: readonly Cell[];
  /** short names, with all the cells that they may mean */
  readonly aliases: ReadonlyMap<string, readonly Cell[]>;
  /** Works out the result that a name asks for, when nothing has asked for it yet. */
  ask(name: string): Cell | undefined;
  /** `expect` and `aim` lines, held against the results */
  readonly goals: readonly GoalResult[];
  readonly problems: readonly Problem[];
}

export interface PlanOptions {
  /** what the readings of another setup add to its plan, where this one is a changed copy of it: a what-if holds them */
  readonly offsets?: Offsets | undefined;
  /** the graph of the setup before an edit, or as it is written: what is the same in it is taken over, until the graph is settled */
  readonly before?: Graph | undefined;
  /** what to work with where numbers are written `?`, or in the place of other inputs, by the names of their cells */
  readonly found?: ReadonlyMap<string, number>;
}

/** What stands where and how long every way is: all else rests on it. */
function ground(setup: Setup, { offsets, before, found }: PlanOptions, ask: (name: string, of: { readonly values: Values; readonly places: Places }) => Cell | undefined) {
  const graph = new Graph(before, found);
  const records = new Records(setup, pageOf);
  const values: Values = new Values(setup, graph, name => resultNamed(graph, aliases, name) ?? ask(name, { values, places }), records);
  const places: Places = new Places(values);
  const aliases = new Map<string, Cell[]>();
  const published: Cell[] = [];
  const arms = formArms(setup);
  for (const l of setup.lets.values()) values.letCell(l);
  for (const thing of setup.things.values()) if (thing.placement) places.check(thing);
  const readings = new Readings(setup, arms, values, offsets);
  const legs = new LegCells(setup.beams.values(), leg => readings.lengths.leg(leg, suffix => legLength(leg, values, places, suffix)));

  const lasers = new Map<Thing, Coherence | undefined>();
  const plates: PlateResults[] = [];
  for (const plate of new Set(arms.arms.map(a => a.plate))) {
    const own = arms.arms.filter(a => a.plate === plate);
    const lengths = armLengths(plate, own, legs, values, readings).map(l => ({ ...l, angle: arrivalAngle(plate, l.arm, places, values) }));
    for (const l of lengths) published.push(l.length, ...(l.angle ? [l.angle.cell] : []));
    const pairs: Pair[] = [];
    for (const l of lengths) {
      if (l.arm.role !== 'object') continue;
      const reference = lengths.find(r => r.arm.role === 'reference' && r.arm.laser === l.arm.laser);
      if (!reference) continue;
      if (!lasers.has(l.arm.laser)) lasers.set(l.arm.laser, coherenceOf(l.arm.laser, values, published));
      pairs.push(pair(plate, l, reference, lasers.get(l.arm.laser), { values, places, published, readings }));
    }
    plates.push({ plate, arms: lengths, pairs });
  }
  readings.lengths.rest(legs);
  nameShort(plates, aliases, graph);
  return { graph, values, records, places, aliases, published, arms, readings, legs, plates };
}

// Kept with the setup of a recording: the page of its transfer is edited, not that.
const pages = new WeakMap<Setup, Page>();
function pageOf(setup: Setup): Page {
  const known = pages.get(setup) ?? plan(setup);
  pages.set(setup, known);
  return known;
}

/** A wrong name or unit in a formula that no result asks for is a slip as well. */
function readFormulas(setup: Setup, values: Values): void {
  for (const thing of setup.things.values()) for (const [key, f] of thing.facts) if (f.value.kind === 'formula' && f.fact.type.type !== 'sizes' && f.node.parent === thing.node) values.fact(thing, key);
  for (const [key, f] of setup.facts) if (f.value.kind === 'formula' && f.fact.type.type !== 'sizes' && (f.node.parent === setup.node || setup.variant !== undefined)) values.setupFact(key);
}

/**
 * What is wrong with a setup before anything is said of light and of the object, with the values that were read for that: a small part of the work of a plan.
 * Undefined where a value names a result that only the rest of the plan has.
 */
export function groundProblems(setup: Setup, options: PlanOptions): { readonly problems: readonly Problem[]; readonly values: Values; readonly graph: Graph } | undefined {
  const wanting: string[] = [];
  const { arms, readings, plates, legs, values, graph } = ground(setup, options, (name, g) => { const fold = foldNamed(name, g.places, g.values); if (!fold) wanting.push(name); return fold; });
  readFormulas(setup, values);
  return wanting.length > 0 ? undefined : { problems: [...arms.problems, ...readings.problems, ...missingLengths(plates, legs, setup), ...values.problems], values, graph };
}

export function plan(setup: Setup, options: PlanOptions = {}): Results {
  // A value may name a result of light before there is one.
  const asked: { ask(name: string): Cell | undefined }[] = [];
  const askAll = (name: string, of: { readonly values: Values; readonly places: Places }): Cell | undefined => {
    for (const area of asked) { const cell = area.ask(name); if (cell) return cell; }
    return foldNamed(name, of.places, of.values);
  };
  const { graph, values, records, places, aliases, published, arms, readings, legs, plates } = ground(setup, options, askAll);
  const ask = (name: string): Cell | undefined => askAll(name, { values, places });
  const beams = new Beams(setup, values, legs, places);
  const making: Making = { setup, graph, values, places, arms, legs, beams, plates, published, alias: (alias, cell) => addAlias(aliases, alias, cell) };
  const object = new ObjectLight(making);
  const screens = new Screens(making);
  const maps = new Maps({ ...making, object });
  const fringes = new Fringes(making);
  const polarization = new Polarization(making);
  const light = lightOf({ ...making, polarization, readings: setup.readings.filter(r => !readings.stale(r)) }, options.offsets);
  const movement = new Movement({ ...making, fringes, exposure: () => values.setupFact('exposure') ?? light.plates.find(p => !p.exposure.missing)?.exposure });
  const named = (name: string): Cell | undefined => resultNamed(graph, aliases, name) ?? ask(name);
  const losses = new Losses({
    ...making, overScreen: pair => screens.of(pair)?.brightness, dark: arm => light.darkOf(arm), exposure: () => values.setupFact('exposure'),
    find: name => resultNamed(graph, aliases, name), named, shares: x => sharesOf(x, exposures, arms.arms, graph, named),
  });
  const table = new Table({ ...making, reflects: s => light.reflects(s) });
  const hang = new Hang({ ...making, fringes });
  const replay = new Replay({ ...making, records, fringes });
  const masters = setup.masters ? litMasters({ plates, beams, places, records, values }) : [];
  const strays = new Strays({ ...making, fringes });
  asked.push(light, beams, fringes, object, maps, polarization, movement, table, losses, hang, { ask: name => differenceNamed(name, plates, graph) });
  const exposures = new Exposures<Results>({ ...making, ask: named, plan: s => plan(s, { offsets: offsetsOf({ graph, readings, light }) }) });
  const registers = registersOf({ setup, graph, values, replay, exposures });
  published.push(...registers.flatMap(g => (g.apart && !g.oneColour ? [g.apart] : [])));
  for (const goal of setup.goals) ask(goal.result);
  published.push(...light.solved.map(s => s.working));
  losses.publish();
  readFormulas(setup, values);
  const results = { setup, graph, values, records, places, arms, legs, plates, readings, beams, object, screens, maps, fringes, table, polarization, light, movement, losses, hang, replay, exposures, registers, masters, strays, eyes: laserCautions(setup, values), published, aliases, ask };
  const { goals, problems } = judgeGoals(results);
  return { ...results, goals, problems: [...arms.problems, ...readings.problems, ...missingLengths(plates, legs, setup), ...light.problems, ...problems, ...values.problems] };
}
