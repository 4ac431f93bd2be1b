/** The light of one arm at a plate, as it was read there. */
import type { Arm } from '../../model/arms.ts';
import type { Spot, Thing } from '../../model/model.ts';
import { ANGLE, LIGHT, NUMBER, parseUnit } from '../../model/units.ts';
import type { Cell } from '../graph.ts';
import { ANGLE_BY_READINGS, AT_MOST_ALL, IN_PLANE, isMoreThanAll, POLARIZED, SHARE, WEAKEST_CORNER } from '../rules/light.ts';
import { weighted } from '../rules/lengths.ts';
import type { LightContext, LightReading } from './context.ts';
import { counting, newest } from './fates.ts';
import type { Metered, Meters } from './meter.ts';
import type { Powers } from './powers.ts';
import type { Predictions } from './predicted.ts';

export interface ArmLight {
  /** the beam's name; `object` where several object beams were read together */
  readonly name: string;
  readonly role: Arm['role'];
  /** what it was worked out from */
  readonly read: Metered;
  /** in the plane of the plate: in W/m², or what only a ratio can use; as it was read, and with what that makes of the plan */
  readonly asRead: Cell;
  readonly cell: Cell;
  /** what a reading in the plane of the plate and one facing the beam say of the angle of arrival, and the angle that is planned */
  readonly angle?: { readonly read: Cell; readonly quotient: Cell; readonly planned: Cell; readonly facing: Metered; readonly flat: Metered };
  readonly corners?: Corners;
  readonly polarized?: Polarized;
}

/** The share of a light that a polarizer passes. */
export interface Polarized {
  /** no more than all of it; missing where the readings say far more than that */
  readonly cell: Cell;
  /** by the readings alone, whatever they say */
  readonly asRead: Cell;
  readonly through: Metered;
  readonly without: Metered;
  /** loss of the sheet, where it is told */
  readonly loss?: Cell;
}

export interface Corners {
  readonly cell: Cell;
  readonly spots: readonly { readonly spot: Spot; readonly read: Metered; readonly cell: Cell }[];
  readonly centre: Cell;
}

const READ_IN_PLANE = weighted('read in the plane of the plate', 'as it was read', [1]);
const MICRO = parseUnit('µW/cm²')!;
const DEGREE = parseUnit('°')!;

/** Undefined where nothing was read of it at the centre of the plate. Several arms were read together. A suffix stands behind the name of its figure. */
export function armLight(plate: Thing, arms: readonly Arm[], role: Arm['role'], readings: readonly LightReading[], meters: Meters, powers: Powers, predictions: Predictions, context: LightContext, suffix = ''): ArmLight | undefined {
  const name = arms.length === 1 ? arms[0]!.name : role;
  const base = `${plate.id}.${name}`;
  const { graph } = context;
  const at = (facing: boolean, spot: Spot, through: boolean): Metered | undefined => {
    const among = readings.filter(r => r.measured.facing === facing && r.measured.spot === spot && (through ? isPolarizer(r.measured.through) : r.measured.through === undefined));
    const reading = counting(among, context.fates);
    return reading && meters.light(reading, plate);
  };
  const flat = at(false, 'centre', false);
  const facing = at(true, 'centre', false);
  // Of two that are as new as each other, the one that needs no angle.
  const read = flat && (!facing || newest([facing.reading, flat.reading]) === flat.reading) ? flat : facing;
  if (!read) return undefined;

  const planned = angleOf(plate, name, role, context);
  const inPlane = (m: Metered, called: string, words: string): Cell => {
    const written = m.cell.unit?.dim === LIGHT ? m.cell.unit : MICRO;
    const more = { ...(m.kind === 'light' ? { unit: written } : {}), at: m.reading.at };
    if (isFacing(m) && !planned.missing && Math.cos(graph.value(planned)!) < GRAZING) return context.values.missing(called, m.cell.dim, words, { code: 'impossible-value', why: `the light of ${name} grazes ${plate.id}: how much of it falls on it cannot be told from a reading facing the beam; read it in the plane of the plate`, at: m.reading.at });
    return isFacing(m) ? graph.derive(called, IN_PLANE, [m.cell, planned], m.cell.dim, words, more) : graph.derive(called, READ_IN_PLANE, [m.cell], m.cell.dim, words, more);
  };
  const [called, words] = read.kind === 'light' ? [`${base}.light${suffix}`, `light of ${name} at ${plate.id}`] : [`${base}.meter${suffix}`, `reading of ${name} at ${plate.id}, in its plane`];
  const plane = inPlane(read, `${called} as read`, `${words}, as read`);
  const cell = context.factors.correct(called, words, planOf(), plane, { ...(plane.unit ? { unit: plane.unit } : {}), at: read.reading.at });

  const two = flat && facing && alike(flat, facing) && !flat.cell.missing && !facing.cell.missing ? [flat.cell, facing.cell] : undefined;
  const byMeter = two && graph.derive(`${base}.angle by meter`, ANGLE_BY_READINGS, two, ANGLE, `angle of ${name} at ${plate.id} by two readings`, { unit: DEGREE });
  const corners = cornersOf();
  const polarized = polarizedOf();
  tell(read, { of: cell, says: plane });
  for (const m of [flat, facing]) if (m && m !== read) tell(m, byMeter ? { of: byMeter, says: m.cell, part: true } : `the light of ${name} is taken from “${read.reading.words}”`);
  for (const c of corners?.spots ?? []) tell(c.read, { of: corners!.cell, says: c.cell, part: true });
  if (polarized) tell(polarized.through, polarized.cell.missing ? polarized.cell.missing.why : { of: polarized.cell, says: polarized.asRead.inputs[0]!, part: true });
  return {
    name, role, read, cell, asRead: plane,
    ...(two && byMeter ? { angle: {
      read: byMeter, quotient: graph.derive(`${base}.flat to facing`, SHARE, two, NUMBER, `reading in the plane of ${plate.id} to the one facing ${name}`), planned, facing: facing!, flat: flat!,
    } } : {}), ...(corners ? { corners } : {}), ...(polarized ? { polarized } : {}),
  };

  /** What a reading corrects: the light that is planned, else the power that the beam brings, of which a share comes to an area of the plate. */
  function planOf(): Cell {
    const planned = arms.map(a => predictions.light(a, arms.length === 1 ? `${base}.light${suffix}.plan` : `${plate.id}.${a.name}.light.plan`));
    if (planned.some(p => p.missing)) return powers.ofArms(arms, plate, role);
    return planned.length === 1 ? planned[0]! : graph.derive(`${base}.light${suffix}.plan`, weighted('sum of light', 'sum of the beams', planned.map(() => 1)), planned, LIGHT, `object light at ${plate.id}, as planned`, { unit: MICRO });
  }

  /** What became of a reading; or why it is of no use. */
  function tell({ reading }: Metered, made: { readonly of: Cell; readonly says: Cell; readonly part?: true } | string): void {
    const why = typeof made === 'string' ? made : made.says.missing?.why;
    context.fates.set(reading, typeof made === 'string' || why !== undefined ? { kind: 'useless', why: why! } : { kind: 'counts', ...made });
  }

  /** What cannot be compared with the light at the centre has a finding; and it is of no use. */
  function fits(m: Metered): boolean {
    const fit = comparable(m, read!, plate, context);
    if (!fit) tell(m, `it cannot be held against “${read!.reading.words}”`);
    return fit;
  }

  function cornersOf(): Corners | undefined {
    const found = CORNERS.flatMap(spot => {
      const same = at(isFacing(read!), spot, false);
      const other = same ?? at(!isFacing(read!), spot, false);
      return other && fits(other) ? [{ spot, read: other }] : [];
    });
    if (found.length === 0) return undefined;
    // Read all the same way, the angle falls out, and need not be known.
    const centreRead = [read!, flat, facing].find(c => c && found.every(f => isFacing(f.read) === isFacing(c) && alike(f.read, c)));
    const value = (m: Metered, spot: string): Cell => (centreRead ? m.cell : inPlane(m, `${base}.${spot}`, `light of ${name} at ${plate.id}, ${spot}`));
    const centre = centreRead ? centreRead.cell : cell;
    const spots = found.map(f => ({ ...f, cell: value(f.read, f.spot) }));
    return { spots, centre, cell: graph.derive(`${base}.corner light`, WEAKEST_CORNER, [centre, ...spots.map(s => s.cell)], NUMBER, `weakest corner of ${plate.id} in the light of ${name}`, { unit: PERCENT }) };
  }

  function polarizedOf(): Polarized | undefined {
    const through = at(isFacing(read!), 'centre', true) ?? at(!isFacing(read!), 'centre', true);
    if (!through || !fits(through)) return undefined;
    const same = [flat, facing].find(m => m && alike(m, through) && isFacing(m) === isFacing(through));
    const [top, below] = same ? [through.cell, same.cell] : [inPlane(through, `${base}.light through the polarizer`, `light of ${name} through the polarizer`), cell];
    const sheet = polarizerOf(through.reading as LightReading, context);
    const loss = sheet && context.values.fact(sheet, 'loss');
    const [called, words, inputs] = [`${base}.polarized`, `polarized share of ${name} at ${plate.id}`, [top, below, ...(loss ? [loss] : [])]];
    const more = inputs.every(c => !c.missing) && POLARIZED.compute(inputs.map(c => graph.value(c)!)) > 1;
    const asRead = graph.derive(more ? `${called} as read` : called, POLARIZED, inputs, NUMBER, more ? `${words}, as read` : words, { unit: PERCENT });
    const share = !more ? asRead
      : isMoreThanAll(graph.value(asRead)!, graph.uncertainty(asRead)) ? context.values.missing(called, NUMBER, words, { code: 'polarizer-adds-light', why: `more light was read through the polarizer than without it: read both again, one directly after the other`, at: through.reading.at })
        : graph.derive(called, AT_MOST_ALL, [asRead], NUMBER, words, { unit: PERCENT });
    return { through, without: same ?? read!, ...(loss ? { loss } : {}), cell: share, asRead };
  }
}

const PERCENT = parseUnit('%')!;
/** Cosine of half a degree from the plane of the plate. */
const GRAZING = Math.cos((89.5 * Math.PI) / 180);
export const CORNERS: readonly Spot[] = ['upper left', 'upper right', 'lower left', 'lower right'];
const isFacing = (m: Metered): boolean => (m.reading as LightReading).measured.facing;
const isPolarizer = (through: LightReading['measured']['through']): boolean => through !== undefined && (through === 'polarizer' || through.kind.word === 'polarizer');

/** The sheet that was held before the head: the one that is named, else the only one there is. */
function polarizerOf({ measured }: LightReading, { setup }: LightContext): Thing | undefined {
  if (measured.through !== 'polarizer') return measured.through;
  const all = [...setup.things.values()].filter(t => t.kind.word === 'polarizer');
  return all.length === 1 ? all[0] : undefined;
}

/** Both are light, or both of another kind and of one meter. */
export const alike = (a: Metered, b: Metered): boolean => a.kind === b.kind && (a.kind === 'light' || a.meter === b.meter);

/** Two readings make a ratio when both are light, or both of another kind and of one meter. If not, that is reported. */
export function comparable(a: Metered, b: Metered, plate: Thing, context: LightContext): boolean {
  if (alike(a, b)) return true;
  context.report('meters-not-comparable', a.reading, plate.id, { plate: plate.id, one: a.reading.words, other: b.reading.words, by: a.meter, with: b.meter, line: b.reading.at.line + 1, kind: a.kind, otherKind: b.kind });
  return false;
}

/** The angle from the plate's normal at which an arm arrives: as placed, else as written. */
function angleOf(plate: Thing, arm: string, role: Arm['role'], { graph, values }: LightContext): Cell {
  const placed = graph.find(`${plate.id}.${arm}.angle`);
  if (placed && !placed.missing) return placed;
  const fact = `${role} angle`;
  const words = `angle of ${arm} at ${plate.id}`;
  return values.fact(plate, fact) ?? placed
    ?? values.missing(`${plate.id}.${arm}.arrival`, ANGLE, words, { code: 'value-missing', why: `the light of ${arm} was read facing the beam, and the angle at which it arrives at ${plate.id} is not known: write “${fact}” of ${plate.id}, or read it in the plane of the plate`, at: plate.at });
}
