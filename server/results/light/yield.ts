/** What arms give at their plate for each watt: what the ways to work it out have in common. */
import type { Arm } from '../../model/arms.ts';
import type { Thing } from '../../model/model.ts';
import { LIGHT, multiply, parseUnit, POWER, type Unit } from '../../model/units.ts';
import type { Front } from '../beams/beams.ts';
import type { Cell } from '../graph.ts';
import type { Laid } from '../rules/object-light.ts';

export const MICRO = parseUnit('µW/cm²')!;
const MILLIWATT = parseUnit('mW')!;
export const PER_WATT = multiply(LIGHT, POWER, -1);
export const FOR_EACH: Unit = { text: `${MICRO.text} for each mW`, dim: PER_WATT, factor: MICRO.factor / MILLIWATT.factor, offset: 0 };

/** What an arm would give, and for each watt that it brings. */
export interface Yield {
  /** light at the plate for each watt on what the arm lights, all but the power counted */
  readonly cells: readonly Cell[];
  /** of what sends its own light, what its rule was made with and takes: it may be asked for any point of the plate */
  readonly over?: { readonly laid: Laid; readonly inputs: readonly Cell[] };
  readonly make: (name: string, words: string, power: Cell) => Cell;
}

/** What the ways need of each other. */
export interface Ways {
  /** the angle at which an arm comes to its plate */
  readonly angle: (arm: Arm) => Cell;
  /** a cell without a value, with why */
  readonly none: (why: string, at?: Thing['at']) => Cell;
}

/** The six numbers of a beam, as the rules take them. */
export const beamNumbers = ({ level, upright, wavelength, quality }: Front): readonly Cell[] => [level.past, level.rayleigh, upright.past, upright.rayleigh, wavelength, quality];

/** Whether something spreads the beam of an arm before it reaches what it lights. */
export function spreads(arm: Arm, until: Thing | undefined = arm.object): boolean {
  const end = until ? arm.path.findIndex(l => l.target === until) : arm.path.length;
  return arm.path.slice(0, end < 0 ? arm.path.length : end).some(l => l.target !== undefined && (l.target.kind.word === 'spreader' || l.target.facts.has('focal length')));
}
