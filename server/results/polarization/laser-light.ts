/** How the light leaves a laser: in which direction it is polarized, and how much of it. */
import type { Thing } from '../../model/model.ts';
import { ANGLE, NUMBER, parseUnit } from '../../model/units.ts';
import type { Cell } from '../graph.ts';
import type { Values } from '../values.ts';

export interface LaserLight {
  /** of the polarization, from vertical */
  readonly angle: Cell;
  /** share of the light that is polarized: 1, for random polarization 0; a choice of both where the text does not tell */
  readonly share: Cell;
  /** the text tells which */
  readonly known: boolean;
}

const DEGREE = parseUnit('°')!;
const PERCENT = parseUnit('%')!;

export function laserLight(laser: Thing, values: Values): LaserLight {
  const { graph } = values;
  const fact = laser.facts.get('polarization');
  const word = values.words(laser, 'polarization') ?? 'unknown';
  const oblique = laser.facts.has('polarization angle') ? values.fact(laser, 'polarization angle') : undefined;
  const known = word !== 'unknown' || oblique !== undefined;
  const [at, share] = [`${laser.id}.polarization angle`, `${laser.id}.polarized share`];
  const origin = known ? 'written' : 'assumed';
  const where = fact ? { at: fact.at } : {};
  return {
    known,
    angle: oblique ?? graph.find(at) ?? graph.input(at, { value: word === 'horizontal' ? Math.PI / 2 : 0, dim: ANGLE, unit: DEGREE }, origin, `polarization of ${laser.id}, from vertical`, { ...where, ...(known ? {} : { reason: 'a polarized tube is mostly set up with its light vertical; common practice' }) }),
    share: graph.find(share) ?? (known ? graph.input(share, { value: word === 'random' ? 0 : 1, dim: NUMBER, unit: PERCENT }, 'written', `polarized share of the light of ${laser.id}`, where)
      : graph.input(share, { value: 1, dim: NUMBER, spread: { kind: 'one of', values: [1, 0] } }, 'assumed', `polarized share of the light of ${laser.id}`, { reason: 'tubes are sold polarized (1) and random (0), and the text does not tell; a sheet of polarizer before the laser does' })),
  };
}
