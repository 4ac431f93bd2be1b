/** The length of each arm of a plate, from where its arms part: as string measures it, and as it counts for coherence. */
import type { Arm } from '../../model/arms.ts';
import type { Leg, Thing } from '../../model/model.ts';
import { LENGTH } from '../../model/units.ts';
import type { Angle } from '../places/angles.ts';
import type { Cell } from '../graph.ts';
import type { LegCells } from '../legs/leg-cells.ts';
import { legStart } from '../legs/legs.ts';
import { sharedLegs } from '../legs/own-legs.ts';
import type { Readings } from '../readings/index.ts';
import type { Run } from '../readings/lengths.ts';
import { GLASSES, glassPath, weighted } from '../rules/lengths.ts';
import type { Values } from '../values.ts';

export interface ArmLength {
  readonly arm: Arm;
  /** legs behind the place where the plate's arms part */
  readonly legs: readonly Leg[];
  readonly partsAt?: Thing;
  readonly length: Cell;
  readonly coherencePath: Cell;
  /** as planned, before any reading */
  readonly plan: Cell;
  /** it was read, as a whole or in all its legs */
  readonly read: boolean;
  /** and all those readings say how sure they are */
  readonly sure: boolean;
  /** legs that were read in one run, which counts instead of their sum */
  readonly runs: readonly Run[];
  /** what the glass on it adds to the coherence path */
  readonly glass: readonly Cell[];
  /** at which it arrives, from the plate's normal */
  readonly angle?: Angle | undefined;
}

/** Lengths of all arms of a plate, from where they part. */
export function armLengths(plate: Thing, arms: readonly Arm[], legs: LegCells, values: Values, readings: Readings): ArmLength[] {
  const shared = sharedLegs(arms);
  const first = arms[0]!.path;
  const { graph } = values;
  return arms.map(arm => {
    const own = arm.path.slice(shared);
    const { length, plan, read, sure, runs } = readings.lengths.along(own, legs, `${plate.id}.${arm.name}.length`, `${arm.name} at ${plate.id}`, arm.beam.at);
    const glass = own.flatMap(l => glassAlong(l, arm.laser, values));
    const path = graph.derive(`${plate.id}.${arm.name}.coherence path`, weighted('coherence path', 'string length + glass', [1, ...glass.map(() => 1)]), [length, ...glass], LENGTH, `coherence path of ${arm.name} at ${plate.id}`);
    const partsAt = shared > 0 ? first[shared - 1]!.target : arm.path[0]?.beam.from;
    return { arm, legs: own, length, plan, read, sure, runs, glass, coherencePath: path, ...(partsAt ? { partsAt } : {}) };
  });
}

/** The glass that light crosses at the start of a leg: a splitter left `through`, a lens, a screen. The glass of a plate is not counted. */
function glassAlong(leg: Leg, laser: Thing, values: Values): Cell[] {
  const thing = legStart(leg);
  const port = leg.n === 1 ? leg.beam.port : leg.beam.legs[leg.n - 2]!.port;
  if (!thing || (thing.kind.light === 'shares' && port !== 'through') || !['shares', 'passes', 'scatters'].includes(thing.kind.light) || !thing.facts.has('thickness')) return [];
  const t = values.fact(thing, 'thickness');
  const wavelength = values.fact(laser, 'wavelength');
  const glass = GLASSES[values.words(thing, 'glass') ?? 'crown'];
  if (!t || !wavelength || !glass) return [];
  return [values.graph.derive(`${leg.id}.glass`, glassPath(glass), [t, wavelength], LENGTH, `glass of ${thing.id}`)];
}
