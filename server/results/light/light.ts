/** Light: what the meter said at each plate, wheels, drift, real images, and power along the beams on demand. */
import type { Arm } from '../../model/arms.ts';
import type { Problem, Reading, Thing } from '../../model/model.ts';
import type { Cell } from '../graph.ts';
import { Corrections, type Offsets } from '../readings/offsets.ts';
import type { LightContext } from './context.ts';
import { Darkness, type Dark } from './dark.ts';
import { driftAt, type Drift } from './drift.ts';
import { Factors } from './factors.ts';
import { untold, type Fates, type LightFate } from './fates.ts';
import { lightForRatio } from './for-ratio.ts';
import { imagesOf, type Image } from './images.ts';
import { Meters } from './meter.ts';
import { plateLights, readingsAt, type PlateLight } from './plate-light.ts';
import { Powers, type PowerReading } from './powers.ts';
import { Predictions, type Over } from './predicted.ts';
import { Splits, type Solved } from './split.ts';
import { Wheels, type Wheel } from './wheels.ts';

export interface Light {
  /** the plates at which light was read, or of which it was asked; one in the light of several lasers once for each */
  readonly plates: readonly PlateLight[];
  readonly wheels: readonly Wheel[];
  readonly drifts: readonly Drift[];
  /** why an arm brings no light to its plate; undefined where it does, or nothing tells */
  darkOf(arm: Arm): Dark | undefined;
  readonly images: readonly Image[];
  readonly powers: Powers;
  readonly readPowers: readonly PowerReading[];
  /** share that a splitter reflects, of what is not lost, where that is written, read or worked out already */
  reflects(splitter: Thing): Cell | undefined;
  /** of the power of an arm, what falls on its plate or its object */
  caught(arm: Arm): Cell | undefined;
  readonly problems: readonly Problem[];
  /** what became of each reading that could be read and is not stale */
  readonly fates: ReadonlyMap<Reading, LightFate>;
  /** shares that the setup leaves open with `?`, and what is worked with until they are written */
  readonly solved: readonly Solved[];
  /** cells of what readings make of the plan: a what-if holds them */
  readonly corrections: readonly Cell[];
  /** Works out what a name asks for, when it is one of light that nothing has asked for yet. */
  /** Least and greatest beam ratio over a plate, by the plan, as shares of that in its middle; of one reference and one object beam that its own object scatters. */
  over(plate: Thing, laser?: Thing): readonly [Cell, Cell] | undefined;
  ask(name: string): Cell | undefined;
  /** light of an arm over its plate, beside that in the middle: what `over` has the ends of */
  sharesOver(arm: Arm): Over | undefined;
}

/** What a name of a result must end with to be one of light at a plate. */
const AT_PLATE = /(?:^|[. ])(?:beam ratio|effective ratio|exposure|exposure time|light at the plate|light|corner light|polarized)$/;

const CAUGHT = /\.caught(?: power)?$/;

/** What is read by other means than string. */
const OF_LIGHT: ReadonlySet<string | undefined> = new Set(['light', 'dark', 'wheel', 'drift', 'image']);

/** `held`: the factors and offsets of the setup of which this one is a changed copy */
export function lightOf(given: Omit<LightContext, 'report' | 'factors' | 'offsets' | 'fates'>, held?: Offsets): Light {
  const { setup, published } = given;
  const problems: Problem[] = [];
  const [factors, offsets] = [new Factors(given.graph, held), new Corrections(given.graph, held)];
  const fates: Fates = new Map();
  const context: LightContext = { ...given, factors, offsets, fates, report: (code, reading, subject, data) => { problems.push({ code, at: reading.at, subject, setup: setup.name, data }); } };
  const meters = new Meters(context);
  // A wrong name or unit in the formula of a reading that nothing rests on is a slip as well.
  for (const r of setup.readings) if (r.value?.kind === 'formula' && OF_LIGHT.has(r.measured?.kind)) meters.input(r);
  const wheels = new Wheels(meters, context);
  const powers = new Powers(meters, wheels, context);
  const predictions = new Predictions(powers, context);
  const splits = new Splits(powers, wheels, predictions, context);
  wheels.solve = splitter => splits.working(splitter);
  // The light of a transfer depends on where the image is; on the page it stands behind that light.
  const imaged: Cell[] = [];
  const images = imagesOf(meters, { ...context, published: imaged });
  const darkness = new Darkness(meters, powers, wheels, context);
  const plates = new Map<Thing, readonly PlateLight[]>();
  const at = (plate: Thing): readonly PlateLight[] => {
    let light = plates.get(plate);
    if (!light) plates.set(plate, light = plateLights(plate, meters, powers, predictions, darkness, context));
    return light;
  };
  const of = (arm: Arm): PlateLight | undefined => plates.get(arm.plate)?.find(p => !p.laser || p.laser === arm.laser);
  splits.lightAt = ({ plate, laser }) => at(plate).find(p => !p.laser || p.laser === laser);
  const caught = (arm: Arm): Cell | undefined => {
    const light = of(arm);
    return predictions.caught(arm, arm.role === 'reference' && light?.reference?.read.kind === 'light' ? light.referenceLight : undefined);
  };
  const all = given.plates.map(p => p.plate);
  for (const plate of all) if (setup.facts.has('beam ratio') || readingsAt(plate, context).length > 0 || Predictions.wanted(given.arms.arms.filter(a => a.plate === plate))) at(plate);
  const told = wheels.told();
  for (const w of told) if (w.byWheel) published.push(w.byWheel);
  const drifts = given.readings.some(r => r.measured?.kind === 'drift') ? all.flatMap(p => driftAt(p, all, () => at(p)[0]!.exposure, meters, context) ?? []) : [];
  published.push(...imaged);
  const readPowers = powers.corrected();
  // Also where nobody asks for light: what is written may say that there is none.
  const unlit = new Map(given.arms.arms.flatMap(a => { const dark = plates.has(a.plate) ? undefined : darkness.of(a); return dark ? [[a, dark] as const] : []; }));
  for (const p of readPowers) published.push(powers.at(p.leg));
  for (const r of given.readings) {
    const input = OF_LIGHT.has(r.measured?.kind) && !fates.has(r) ? meters.input(r) : undefined;
    if (input && !problems.some(p => p.at === r.at && p.code === 'reading-unclear')) fates.set(r, untold(r, input, given.arms));
  }
  const over = (plate: Thing | undefined, laser?: Thing): readonly [Cell, Cell] | undefined => {
    const own = given.arms.arms.filter(a => a.plate === plate && (!laser || a.laser === laser));
    const [[reference, more], objects] = [own.filter(a => a.role === 'reference'), own.filter(a => a.role === 'object')];
    // The ratio of a hologram in one beam is another matter.
    if (!reference || more || objects.length === 0 || objects.some(a => a.beam === reference.beam)) return undefined;
    at(reference.plate);
    const light = (arm: Arm): Cell | undefined => given.graph.find(`${arm.plate.id}.${arm.name}.light`);
    const [least, greatest] = (['least', 'greatest'] as const).map(end => predictions.ratioOver(reference, objects, end, light));
    return least && greatest && !least.missing && !greatest.missing ? [least, greatest] : undefined;
  };
  return {
    darkOf: arm => (plates.has(arm.plate) ? of(arm)?.dark.find(d => d.arm === arm) : unlit.get(arm)),
    get solved() { return [...splits.solved.values()]; },
    get plates() { return [...plates.values()].flat(); }, get corrections() { return [...factors.cells, ...offsets.offsets]; }, wheels: told, drifts, images, powers, readPowers, problems, fates,
    caught, over, sharesOver: arm => predictions.sharesOver(arm),
    reflects: splitter => {
      const bound = splitter.facts.get('reflects')?.value.kind;
      if (told.some(w => w.splitter === splitter) || (bound !== undefined && (bound !== 'unknown' || given.graph.found?.has(`${splitter.id}.reflects`)))) return wheels.of(splitter).reflects;
      return splits.solved.get(splitter)?.working;
    },
    ask: name => {
      const power = powers.named(name);
      if (power) return power;
      const split = splits.ask(name) ?? lightForRatio(name, all, at, given.graph);
      if (split) return split;
      if (CAUGHT.test(name)) {
        const arm = given.arms.arms.find(a => `${a.plate.id}.${a.name}` === name.replace(CAUGHT, ''));
        if (arm) caught(arm);
        return given.graph.find(name);
      }
      if (name.endsWith('.face loss')) {
        const arm = given.arms.arms.find(a => a.role === 'reference' && name === `${a.plate.id}.${a.name}.face loss`);
        return arm && predictions.faceLoss(arm);
      }
      if (name.endsWith(' ratio across the plate')) {
        const arm = given.arms.arms.find(a => a.role === 'object' && (name.startsWith(`${a.plate.id}.${a.name}.`) || /^(?:least|greatest) /.test(name.slice(a.plate.id.length + 1))) && name.startsWith(`${a.plate.id}.`));
        over(arm?.plate, arm?.laser);
        return given.graph.find(name);
      }
      if (AT_PLATE.test(name)) for (const p of all) at(p);
      return undefined;
    },
  };
}
