/** The light of all object beams at a plate: read one by one, all together, or both ways, of which the surer counts. */
import type { Arm } from '../../model/arms.ts';
import type { Thing } from '../../model/model.ts';
import { LIGHT, parseUnit } from '../../model/units.ts';
import type { Cell } from '../graph.ts';
import { weighted } from '../rules/lengths.ts';
import { same } from '../rules/readings.ts';
import { alike, comparable, type ArmLight } from './arm-light.ts';
import type { LightContext } from './context.ts';
import type { Meters } from './meter.ts';

/** A figure of all object light, and the readings that it is made of: all of one kind. */
export interface Way {
  readonly cell: Cell;
  readonly from: readonly ArmLight[];
}

/** What was read both directly and by its parts. */
export interface BothWays {
  readonly together: ArmLight;
  readonly beams: readonly ArmLight[];
  /** the beams are all that there are, so that both should be the same; else they are a part of it */
  readonly whole: boolean;
  /** the reading of all together, less those of the beams */
  readonly apart: Cell;
  /** all of them say how sure they are */
  readonly sure: boolean;
  readonly counts: 'together' | 'beams';
}

export interface ObjectLight {
  /** beams as they were read, each by itself, then all together */
  readonly read: readonly ArmLight[];
  readonly together?: ArmLight;
  /** what all object light is known from, the one that counts first; several only where they cannot be held against each other */
  readonly ways: readonly Way[];
  readonly both?: BothWays;
}

const MICRO = parseUnit('µW/cm²')!;

/** `one` reads one arm, `all` all of them together; a suffix stands behind the name of its figure. */
export function readObjects(plate: Thing, arms: readonly Arm[], one: (arm: Arm) => ArmLight | undefined, all: (suffix: string) => ArmLight | undefined, meters: Meters, context: LightContext, head: string): ObjectLight {
  const { graph } = context;
  const each = arms.map(one);
  const beams = each.filter(a => a !== undefined);
  const whole = arms.length > 0 && beams.length === arms.length && beams.every(b => alike(b.read, beams[0]!.read));
  const together = arms.length > 1 && !arms.some(a => a.name === 'object') ? all(whole ? '.together' : '') : undefined;
  const name = (kind: ArmLight['read']['kind']): string => `${head}.object.${kind === 'light' ? 'light' : 'meter'}`;
  const like = (a: ArmLight): { unit?: NonNullable<Cell['unit']> } => (a.read.kind === 'light' ? { unit: MICRO } : {});
  const sum = (suffix: string): Way | undefined => {
    const [first] = beams;
    if (!whole || !first) return undefined;
    if (beams.length === 1) return { cell: first.cell, from: beams };
    return { from: beams, cell: graph.derive(`${name(first.read.kind)}${suffix}`, weighted('sum of object light', 'sum of the object beams', beams.map(() => 1)), beams.map(b => b.cell), first.cell.dim, `object light at ${plate.id}${suffix === '' ? '' : ', beam by beam'}`, like(first)) };
  };
  if (!together) return { read: beams, ways: [sum('')].filter(w => w !== undefined) };

  const read = [...beams, together];
  const held = beams.filter(b => alike(b.read, together.read));
  const parts = sum(whole && held.length === 0 && together.read.kind !== beams[0]!.read.kind ? '' : '.by beams');
  const called = name(together.read.kind);
  const known = (formula: string, { cell, from }: Way): Way => ({ from, cell: cell.name === called ? cell : graph.derive(called, same('object light', formula), [cell], cell.dim, `object light at ${plate.id}`, like(together)) });
  const direct: Way = { cell: together.cell, from: [together] };
  if (held.length === 0) return { read, together, ways: [known('the reading of all together', direct), ...(parts ? [parts] : [])] };

  const apart = graph.derive(`${called}.apart`, weighted('difference', 'all together − beam by beam', [1, ...held.map(() => -1)]), [together.asRead, ...held.map(b => b.asRead)], together.asRead.dim, `object light at ${plate.id}, read together and beam by beam`, like(together));
  const [sureDirect, sureParts] = [saysHowSure(together), held.every(saysHowSure)];
  const surer = parts !== undefined && !parts.cell.missing && sureParts && (!sureDirect || graph.uncertainty(parts.cell) < graph.uncertainty(direct.cell));
  const both: BothWays = { together, beams: held, whole: parts !== undefined, apart, sure: sureDirect && sureParts, counts: surer ? 'beams' : 'together' };
  if (!parts) return { read, together, ways: [direct], both };
  for (const a of surer ? [together] : held) context.fates.set(a.read.reading, { kind: 'less sure', of: a.cell, says: a.asRead, why: surer ? 'the readings of the single beams are surer' : 'the reading of all object beams together is surer' });
  const formula = surer ? 'sum of the object beams, each of which was read: surer than the reading of all together' : 'the reading of all together: surer than those of the beams';
  return { read, together, both, ways: [known(formula, surer ? parts : direct)] };

  function saysHowSure({ read: { reading } }: ArmLight): boolean {
    const input = meters.input(reading);
    return input !== undefined && graph.uncertainty(input) > 0;
  }
}

/** Names the readings that make no figure and cannot be held against those that do. `used` are those that make one. */
export function nameUnused({ read, both, ways }: ObjectLight, used: ReadonlySet<ArmLight>, plate: Thing, context: LightContext): void {
  const counting = ways[0]?.from[0];
  if (!counting) return;
  for (const a of read) {
    if (used.has(a) || a === both?.together || both?.beams.includes(a) || ways[0]!.from.includes(a)) continue;
    if (!comparable(a.read, counting.read, plate, context)) context.fates.set(a.read.reading, { kind: 'useless', why: `it cannot be held against “${counting.read.reading.words}”` });
  }
}

/** Of those that make a figure in units: the first way that does. */
export const inUnits = ({ ways }: ObjectLight): Way | undefined => ways.find(w => w.cell.dim === LIGHT);
