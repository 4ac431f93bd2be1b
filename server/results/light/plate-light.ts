/** All light of one laser at one plate: of each arm as read, both together, their ratio, and how long the shutter has to be open. */
import { lightName, lasersAt, type Arm } from '../../model/arms.ts';
import type { Thing } from '../../model/model.ts';
import { LIGHT, NUMBER, parseUnit, TIME } from '../../model/units.ts';
import type { Cell } from '../graph.ts';
import { BY_RATIO, BY_RATIO_BACK, EFFECTIVE, EXPOSURE_TIME, LONG_EXPOSURE_TIME, RATIO } from '../rules/light.ts';
import { weighted } from '../rules/lengths.ts';
import { alike, armLight, comparable, type ArmLight } from './arm-light.ts';
import { isLight, type LightContext, type LightReading } from './context.ts';
import { darkness, type Dark, type Darkness } from './dark.ts';
import type { Meters } from './meter.ts';
import { inUnits, nameUnused, readObjects, type BothWays } from './object-light.ts';
import type { Powers } from './powers.ts';
import { Predictions } from './predicted.ts';
import { WRITTEN_RATIO } from './split.ts';

export interface PlateLight {
  readonly plate: Thing;
  /** whose light it is, where several lasers light the plate */
  readonly laser?: Thing;
  /** what the names of its results begin with, see `lightName` */
  readonly name: string;
  readonly reference?: ArmLight;
  /** object beams as they were read: each, and all together */
  readonly objects: readonly ArmLight[];
  /** what was read both ways */
  readonly both?: BothWays;
  /** the readings that make up the object light, or the ratio */
  readonly counting: ReadonlySet<ArmLight>;
  readonly referenceLight: Cell;
  readonly objectLight: Cell;
  readonly light: Cell;
  readonly ratio: Cell;
  readonly effective?: Cell;
  /** of the plate, all its lasers open at once */
  readonly exposure: Cell;
  /** where the light of this laser alone exposes the plate, and there is that of others */
  readonly alone?: Cell;
  /** weakest corner in the light of the reference, read or by the plan */
  readonly corners?: Cell;
  /** the arms that bring no light here */
  readonly dark: readonly Dark[];
  /** what of it nobody has metered, so that it rests on the plan */
  readonly predicted: { readonly reference: boolean; readonly object: boolean; readonly ratio: boolean };
}

const MICRO = parseUnit('µW/cm²')!;
const AS_WRITTEN = weighted('beam ratio', 'as written', [1]);

/** The readings of light that belong to a plate. One without a place belongs to the only plate that its beam reaches. */
export function readingsAt(plate: Thing, { readings, arms }: LightContext): LightReading[] {
  return readings.filter(isLight).filter(({ measured: m }) => {
    if (m.at) return m.at === plate;
    const plates = new Set(arms.arms.filter(a => a.name === m.arm || a.role === m.arm).map(a => a.plate));
    return plates.size === 1 && plates.has(plate);
  });
}

/** The light of all lasers at a plate, one by one. They make no fringes with each other, and blacken the plate together. */
export function plateLights(plate: Thing, meters: Meters, powers: Powers, predictions: Predictions, dark: Darkness, context: LightContext): readonly PlateLight[] {
  const { graph, values, published } = context;
  const all = lasersAt(plate, context.arms.arms);
  if (all.length < 2) return [plateLight(plate, all[0], meters, powers, predictions, dark, context)];
  const each = all.map(laser => plateLight(plate, laser, meters, powers, predictions, dark, context));
  const words = `light at ${plate.id}, of ${all.map(l => l.id).join(' and ')}`;
  const light = graph.derive(`${plate.id}.light`, weighted('sum of light', 'sum of the lasers', each.map(() => 1)), each.map(p => p.light), LIGHT, words, { unit: MICRO });
  const exposure = exposureCell(plate, plate.id, `exposure of ${plate.id}, all its lasers open at once`, light, values);
  for (const [cell, aliases] of [[light, ['light at the plate']], [exposure, ['exposure', 'exposure time']]] as const) {
    if (!light.missing) published.push(cell);
    for (const alias of aliases) for (const head of ['', `${plate.id}.`]) if (cell.name !== `${head}${alias}`) context.alias(`${head}${alias}`, cell);
  }
  return each.map(p => ({ ...p, exposure, alone: p.exposure }));
}

function plateLight(plate: Thing, laser: Thing | undefined, meters: Meters, powers: Powers, predictions: Predictions, dark: Darkness, context: LightContext): PlateLight {
  const { graph, values, published } = context;
  const own = context.arms.arms.filter(a => a.plate === plate && a.laser === laser);
  const several = lasersAt(plate, context.arms.arms).length > 1;
  const head = laser ? lightName(plate, laser, context.arms.arms) : plate.id;
  const here = several ? `${plate.id}, of ${laser!.id}` : plate.id;
  const readings = readingsAt(plate, context);
  // Of several lasers “reference” is nobody's name.
  const one = (arm: Arm): ArmLight | undefined => armLight(plate, [arm], arm.role, readings.filter(r => r.measured.arm === arm.name || (!several && r.measured.arm === arm.role && own.filter(a => a.role === arm.role).length === 1)), meters, powers, predictions, context);
  const referenceArm = own.find(a => a.role === 'reference');
  const objectArms = own.filter(a => a.role === 'object');
  const reference = referenceArm && one(referenceArm);
  const object = readObjects(plate, objectArms, one, suffix => armLight(plate, objectArms, 'object', several ? [] : readings.filter(r => r.measured.arm === 'object'), meters, powers, predictions, context, suffix), meters, context, head);
  const { read: objects, together } = object;
  const used = new Set<ArmLight>();

  const metered = reference !== undefined || objects.length > 0;
  const known = values.setup.facts.get('beam ratio');
  const why = (role: Arm['role'], unread: readonly string[]): Cell => values.missing(`${head}.${role}.light`, LIGHT, `${role} light at ${plate.id}`, {
    code: 'value-missing', why: unread.length === 0 ? `no ${role} beam reaches ${plate.id}` : `the light of ${unread.join(', ')} at ${plate.id} has not been metered in units`, at: plate.at,
  });
  const readReference = reference?.read.kind === 'light' ? reference.cell : undefined;
  const litBy = inUnits(object);
  const readObject = litBy?.cell;
  for (const a of litBy?.from ?? []) used.add(a);
  const readInUnits = (a: Arm): boolean => objects.some(o => o.name === a.name && o.read.kind === 'light');
  const unreadObjects = readObject ? [] : together ? [together.name] : objectArms.filter(a => !readInUnits(a)).map(a => a.name);

  const single = referenceArm && objectArms.length === 1 ? objectArms[0] : undefined;
  // Readings and what is written go first; what nobody has metered is told by the plan, as far as it can be told.
  const darkReference = referenceArm && dark.ofRead(referenceArm, reference);
  const darkObjects = objectArms.flatMap(a => dark.ofRead(a, objects.find(o => o.name === a.name) ?? together) ?? []);
  // Without the light of one side there is no ratio, whatever is written of it.
  const withoutOne = darkReference ?? (darkObjects.length === objectArms.length ? darkObjects[0] : undefined);
  const told = withoutOne ? undefined : toldRatio();
  const single1 = told || withoutOne ? undefined : single && predictions.singleRatio(referenceArm!, single, `${head}.beam ratio`);
  const byRatio = told ?? single1;
  const base = `${plate.id}.${referenceArm?.name ?? 'reference'}.light`;
  const plannedReference = readReference || (byRatio && readObject) ? undefined : plannedLight(referenceArm, base);
  const referenceLight = readReference ?? (byRatio && readObject ? graph.derive(base, BY_RATIO_BACK, [readObject, byRatio], LIGHT, `reference light at ${plate.id}`, { unit: MICRO }) : plannedReference ?? why('reference', referenceArm ? [referenceArm.name] : []));
  const reckoned = !readObject && byRatio && !referenceLight.missing;
  const plannedObjects = readObject || reckoned ? undefined : plannedObject();
  const objectLight = readObject ?? (reckoned ? graph.derive(`${head}.object.light`, BY_RATIO, [referenceLight, byRatio], LIGHT, `object light at ${here}`, { unit: MICRO }) : plannedObjects ?? why('object', unreadObjects));
  const planned = withoutOne ? [] : noneByPlan();
  const unlit = withoutOne ?? planned[0];
  const ratio = byRatio ?? (unlit || referenceLight.missing || objectLight.missing ? unknownRatio() : graph.derive(`${head}.beam ratio`, RATIO, [referenceLight, objectLight], NUMBER, `beam ratio at ${here}`));
  publish(ratio, ['beam ratio'], known !== undefined || metered || !ratio.missing);
  publish(referenceLight, ['reference.light'], !referenceLight.missing);
  publish(objectLight, ['object.light'], !objectLight.missing);
  for (const o of objects) if (o.cell !== objectLight && o.read.kind === 'light') publish(o.cell, [], true);
  nameUnused(object, used, plate, context);
  for (const a of [...(reference ? [reference] : []), ...objects]) {
    if (a.angle) publish(a.angle.read, [], true);
    if (a.corners) publish(a.corners.cell, a.role === 'reference' ? ['corner light'] : [], true);
    if (a.polarized) publish(a.polarized.cell, ['polarized'], true);
  }
  const corners = reference?.corners?.cell ?? (referenceArm && predictions.corners(referenceArm));
  if (corners && !reference?.corners) publish(corners, ['reference.corner light', 'corner light'], !corners.missing && Predictions.wanted([referenceArm!]));
  const light = graph.derive(`${head}.light`, weighted('sum of light', 'reference light + object light', [1, 1]), [referenceLight, objectLight], LIGHT, `light at ${here}`, { unit: MICRO });
  publish(light, several ? [] : ['light at the plate'], !light.missing);
  const polarized = (together ?? (objectArms.length === 1 ? objects[0] : undefined))?.polarized?.cell ?? (objectArms.length === 1 ? context.polarization.told(plate, objectArms[0]!) : undefined);
  const effective = polarized && !ratio.missing ? graph.derive(`${head}.effective ratio`, EFFECTIVE, [ratio, polarized], NUMBER, `effective ratio at ${here}`) : undefined;
  if (effective) publish(effective, ['effective ratio'], !effective.missing);
  const exposureWords = several ? `exposure of ${plate.id} by ${laser!.id} alone` : `exposure of ${plate.id}`;
  const exposure = unlit ? values.missing(`${head}.exposure time`, TIME, exposureWords, darkness(unlit)) : exposureCell(plate, head, exposureWords, light, values);
  const allDark = [...(darkReference ? [darkReference] : []), ...darkObjects, ...planned];
  publish(exposure, several ? [] : ['exposure', 'exposure time'], !light.missing);
  const predicted = { reference: plannedReference === referenceLight && !referenceLight.missing, object: (plannedObjects === objectLight || (reckoned === true && byRatio === single1)) && !objectLight.missing, ratio: !told && !ratio.missing };
  return { plate, name: head, ...(several ? { laser: laser! } : {}), dark: allDark, objects, referenceLight, objectLight, light, ratio, exposure, counting: used, predicted, ...(corners ? { corners } : {}), ...(object.both ? { both: object.both } : {}), ...(reference ? { reference } : {}), ...(effective ? { effective } : {}) };

  /** Makes a cell known by its short names; it is shown where there is something to show. */
  function publish(cell: Cell, aliases: readonly string[], shown: boolean): void {
    if (shown && !published.includes(cell)) published.push(cell);
    for (const alias of aliases) {
      context.alias(alias.replace('.', ' '), cell);
      if (several) for (const of of [laser!.id, head]) if (cell.name !== `${of}.${alias}`) context.alias(`${of}.${alias}`, cell);
      if (cell.name !== `${plate.id}.${alias}`) context.alias(`${plate.id}.${alias}`, cell);
    }
  }

  /** By the plan; undefined where the power of the laser is not written, so that there is none. */
  function plannedLight(arm: Arm | undefined, name: string): Cell | undefined {
    if (!arm?.laser.facts.has('power')) return undefined;
    const light = predictions.light(arm, name);
    return light.missing ? values.missing(name, LIGHT, light.words, { ...light.missing, why: `the light of ${arm.name} at ${plate.id} has not been metered in units, and by the plan it cannot be told: ${light.missing.why}` }) : light;
  }

  /** The sum of what was read of the object beams and what is planned of the others. */
  function plannedObject(): Cell | undefined {
    if (objectArms.length === 0 || together?.read.kind === 'light') return undefined;
    const each = objectArms.map(arm => objects.find(o => o.name === arm.name && o.read.kind === 'light')?.cell ?? plannedLight(arm, `${plate.id}.${arm.name}.light`));
    const cells = each.filter(c => c !== undefined);
    if (cells.length < each.length) return undefined;
    return cells.length === 1 ? cells[0]! : graph.derive(`${head}.object.light`, weighted('sum of object light', 'sum of the object beams', cells.map(() => 1)), cells, LIGHT, `object light at ${here}`, { unit: MICRO });
  }

  /** The arms of a side that by the plan brings nothing at all, though nothing is written that stops it. */
  function noneByPlan(): Dark[] {
    const none = (light: Cell, arms: readonly Arm[], by: boolean): Dark[] => (by && graph.value(light) === 0 ? arms.map(arm => ({ arm, thing: arm.object ?? plate, cell: light, at: (arm.object ?? plate).at, why: arm.object ? `by the plan nothing that it lights of ${arm.object.id} is seen from ${plate.id}` : 'by the plan none of it falls on the plate' })) : []);
    return [...none(referenceLight, referenceArm ? [referenceArm] : [], plannedReference === referenceLight), ...none(objectLight, objectArms, plannedObjects === objectLight)];
  }

  /** By readings of both, or as it is written. */
  function toldRatio(): Cell | undefined {
    const name = `${head}.beam ratio`;
    const words = `beam ratio at ${here}`;
    if (readReference && readObject) return graph.derive(name, RATIO, [readReference, readObject], NUMBER, words);
    // Two ways that cannot be held against each other may each have its use: the one makes the light, the other the ratio.
    const way = reference && (object.ways.find(w => w.from.every(o => alike(o.read, reference.read))) ?? object.ways[0]);
    if (reference && way?.from.every(o => comparable(o.read, reference.read, plate, context))) {
      for (const a of way.from) used.add(a);
      return graph.derive(name, RATIO, [reference.cell, way.cell], NUMBER, words);
    }
    if (reference && !way && objects.length === objectArms.length) for (const o of objects) comparable(o.read, reference.read, plate, context);
    // Two plates share the one written ratio, and its error.
    const written = known && (graph.find(WRITTEN_RATIO) ?? values.bound(known.value, known.at, WRITTEN_RATIO, 'beam ratio as written', NUMBER));
    if (written && referenceArm && objectArms.length > 0) return graph.derive(name, AS_WRITTEN, [written], NUMBER, words, { at: known.at });
    return undefined;
  }

  function unknownRatio(): Cell {
    const name = `${head}.beam ratio`;
    const words = `beam ratio at ${here}`;
    if (unlit) return values.missing(name, NUMBER, words, darkness(unlit));
    const plan = [referenceLight, objectLight].find(c => c.missing && c === (c === referenceLight ? plannedReference : plannedObjects))?.missing;
    if (plan) return values.missing(name, NUMBER, words, plan);
    const unread = [...(referenceArm && !reference ? [referenceArm.name] : []), ...(together ? [] : objectArms.filter(a => !objects.some(o => o.name === a.name)).map(a => a.name))];
    return values.missing(name, NUMBER, words, {
      code: 'value-missing', at: plate.at,
      why: !referenceArm || objectArms.length === 0 ? `${plate.id} has no ${referenceArm ? 'object beam' : 'reference'}` : unread.length > 0 ? `the light of ${unread.join(' and ')} at ${plate.id} has not been metered, and no “beam ratio” is written` : `the readings at ${plate.id} are by different meters`,
    });
  }
}

function exposureCell(plate: Thing, head: string, words: string, light: Cell, values: LightContext['values']): Cell {
  const { graph } = values;
  const name = `${head}.exposure time`;
  const dose = values.fact(plate, 'sensitivity') ?? graph.find(`${plate.id}.sensitivity`) ?? values.missing(`${plate.id}.sensitivity`, LIGHT, `sensitivity of ${plate.id}`, { code: 'value-missing', why: `the sensitivity of ${plate.id} is not written`, at: plate.at });
  // The law is used where its exponent is written, not on a guess.
  const exponent = plate.facts.has('reciprocity') ? values.fact(plate, 'reciprocity') : undefined;
  return exponent ? graph.derive(name, LONG_EXPOSURE_TIME, [dose, light, exponent], TIME, words) : graph.derive(name, EXPOSURE_TIME, [dose, light], TIME, words);
}
