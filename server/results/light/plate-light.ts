/** All light at one plate: of each arm as read, both together, their ratio, and how long the shutter has to be open. */
import type { Arm } from '../../model/arms.ts';
import type { Thing } from '../../model/model.ts';
import { LIGHT, NUMBER, parseUnit, TIME } from '../../model/units.ts';
import type { Cell } from '../graph.ts';
import { BY_RATIO, BY_RATIO_BACK, EFFECTIVE, EXPOSURE_TIME, LONG_EXPOSURE_TIME, RATIO } from '../rules/light.ts';
import { weighted } from '../rules/lengths.ts';
import { armLight, comparable, type ArmLight } from './arm-light.ts';
import { isLight, type LightContext, type LightReading } from './context.ts';
import type { Meters } from './meter.ts';
import type { Powers } from './powers.ts';

export interface PlateLight {
  readonly plate: Thing;
  readonly reference?: ArmLight;
  /** object beams as they were read: each, or all together */
  readonly objects: readonly ArmLight[];
  readonly referenceLight: Cell;
  readonly objectLight: Cell;
  readonly light: Cell;
  readonly ratio: Cell;
  readonly effective?: Cell;
  readonly exposure: Cell;
}

const MICRO = parseUnit('µW/cm²')!;
const WRITTEN_RATIO = 'beam ratio as written';
const AS_WRITTEN = weighted('beam ratio', 'as written', [1]);

/** The readings of light that belong to a plate. One without a place belongs to the only plate that its beam reaches. */
export function readingsAt(plate: Thing, { readings, arms }: LightContext): LightReading[] {
  return readings.filter(isLight).filter(({ measured: m }) => {
    if (m.at) return m.at === plate;
    const plates = new Set(arms.arms.filter(a => a.name === m.arm || a.role === m.arm).map(a => a.plate));
    return plates.size === 1 && plates.has(plate);
  });
}

export function plateLight(plate: Thing, meters: Meters, powers: Powers, context: LightContext): PlateLight {
  const { graph, values, published } = context;
  const own = context.arms.arms.filter(a => a.plate === plate);
  const readings = readingsAt(plate, context);
  const one = (arm: Arm): ArmLight | undefined => armLight(plate, [arm], arm.role, readings.filter(r => r.measured.arm === arm.name || (r.measured.arm === arm.role && own.filter(a => a.role === arm.role).length === 1)), meters, powers, context);
  const referenceArm = own.find(a => a.role === 'reference');
  const objectArms = own.filter(a => a.role === 'object');
  const reference = referenceArm && one(referenceArm);
  const together = objectArms.length > 1 && !objectArms.some(a => a.name === 'object') ? armLight(plate, objectArms, 'object', readings.filter(r => r.measured.arm === 'object'), meters, powers, context) : undefined;
  const each = objectArms.map(one);
  const objects = together ? [together] : each.filter(a => a !== undefined);

  const metered = reference !== undefined || objects.length > 0;
  const known = values.setup.facts.get('beam ratio');
  const why = (role: Arm['role'], unread: readonly string[]): Cell => values.missing(`${plate.id}.${role}.light`, LIGHT, `${role} light at ${plate.id}`, {
    code: 'value-missing', why: unread.length === 0 ? `no ${role} beam reaches ${plate.id}` : `the light of ${unread.join(', ')} at ${plate.id} has not been metered in units`, at: plate.at,
  });
  const unreadObjects = together ? (together.read.kind === 'light' ? [] : [together.name]) : objectArms.filter((_, i) => each[i]?.read.kind !== 'light').map(a => a.name);
  const readReference = reference?.read.kind === 'light' ? reference.cell : undefined;
  const readObject = unreadObjects.length === 0 ? sumOf(objects) : undefined;

  const ratio = ratioCell();
  publish(ratio, ['beam ratio'], known !== undefined || metered);
  const referenceLight = readReference ?? (readObject && !ratio.missing ? graph.derive(`${plate.id}.${referenceArm?.name ?? 'reference'}.light`, BY_RATIO_BACK, [readObject, ratio], LIGHT, `reference light at ${plate.id}`, { unit: MICRO }) : why('reference', referenceArm ? [referenceArm.name] : []));
  const objectLight = readObject ?? (readReference && !ratio.missing ? graph.derive(`${plate.id}.object.light`, BY_RATIO, [readReference, ratio], LIGHT, `object light at ${plate.id}`, { unit: MICRO }) : why('object', unreadObjects));
  publish(referenceLight, ['reference.light'], !referenceLight.missing);
  publish(objectLight, ['object.light'], !objectLight.missing);
  for (const o of objects) if (o.cell !== objectLight && o.read.kind === 'light') publish(o.cell, [], true);
  for (const a of [...(reference ? [reference] : []), ...objects]) {
    if (a.angle) publish(a.angle.read, [], true);
    if (a.corners) publish(a.corners.cell, a.role === 'reference' ? ['corner light'] : [], true);
    if (a.polarized) publish(a.polarized, ['polarized'], true);
  }
  const light = graph.derive(`${plate.id}.light`, weighted('sum of light', 'reference light + object light', [1, 1]), [referenceLight, objectLight], LIGHT, `light at ${plate.id}`, { unit: MICRO });
  publish(light, ['light at the plate'], !light.missing);
  const polarized = objects.length === 1 ? objects[0]!.polarized : undefined;
  const effective = polarized && !ratio.missing ? graph.derive(`${plate.id}.effective ratio`, EFFECTIVE, [ratio, polarized], NUMBER, `effective ratio at ${plate.id}`) : undefined;
  if (effective) publish(effective, ['effective ratio'], true);
  const exposure = exposureCell();
  publish(exposure, ['exposure', 'exposure time'], !light.missing);
  return { plate, objects, referenceLight, objectLight, light, ratio, exposure, ...(reference ? { reference } : {}), ...(effective ? { effective } : {}) };

  /** Makes a cell known by its short names; it is shown where there is something to show. */
  function publish(cell: Cell, aliases: readonly string[], shown: boolean): void {
    if (shown && !published.includes(cell)) published.push(cell);
    for (const alias of aliases) {
      context.alias(alias.replace('.', ' '), cell);
      if (cell.name !== `${plate.id}.${alias}`) context.alias(`${plate.id}.${alias}`, cell);
    }
  }

  function sumOf(list: readonly ArmLight[]): Cell | undefined {
    if (list.length < 2) return list[0]?.cell;
    return graph.derive(`${plate.id}.object.light`, weighted('sum of object light', 'sum of the object beams', list.map(() => 1)), list.map(o => o.cell), LIGHT, `object light at ${plate.id}`, { unit: MICRO });
  }

  function ratioCell(): Cell {
    const name = `${plate.id}.beam ratio`;
    const words = `beam ratio at ${plate.id}`;
    if (readReference && readObject) return graph.derive(name, RATIO, [readReference, readObject], NUMBER, words);
    const all = together !== undefined || (objectArms.length > 0 && each.every(a => a !== undefined));
    if (reference && all && objects.every(o => comparable(o.read, reference.read, plate, context))) {
      const object = objects.length === 1 ? objects[0]!.cell : graph.derive(`${plate.id}.object.meter`, weighted('sum of object light', 'sum of the object beams', objects.map(() => 1)), objects.map(o => o.cell), objects[0]!.cell.dim, `readings of the object beams at ${plate.id}`);
      return graph.derive(name, RATIO, [reference.cell, object], NUMBER, words);
    }
    // Two plates share the one written ratio, and its error.
    const written = known && (graph.find(WRITTEN_RATIO) ?? values.bound(known.value, known.at, WRITTEN_RATIO, 'beam ratio as written', NUMBER));
    if (written && referenceArm && objectArms.length > 0) return graph.derive(name, AS_WRITTEN, [written], NUMBER, words, { at: known.at });
    const unread = [...(referenceArm && !reference ? [referenceArm.name] : []), ...(together ? [] : objectArms.filter((_, i) => !each[i]).map(a => a.name))];
    return values.missing(name, NUMBER, words, {
      code: 'value-missing', at: plate.at,
      why: !referenceArm || objectArms.length === 0 ? `${plate.id} has no ${referenceArm ? 'object beam' : 'reference'}` : unread.length > 0 ? `the light of ${unread.join(' and ')} at ${plate.id} has not been metered, and no “beam ratio” is written` : `the readings at ${plate.id} are by different meters`,
    });
  }

  function exposureCell(): Cell {
    const name = `${plate.id}.exposure time`;
    const words = `exposure of ${plate.id}`;
    const dose = values.fact(plate, 'sensitivity') ?? values.missing(`${plate.id}.sensitivity`, LIGHT, `sensitivity of ${plate.id}`, { code: 'value-missing', why: `the sensitivity of ${plate.id} is not written`, at: plate.at });
    // The law is used where its exponent is written, not on a guess.
    const exponent = plate.facts.has('reciprocity') ? values.fact(plate, 'reciprocity') : undefined;
    return exponent ? graph.derive(name, LONG_EXPOSURE_TIME, [dose, light, exponent], TIME, words) : graph.derive(name, EXPOSURE_TIME, [dose, light], TIME, words);
  }
}
