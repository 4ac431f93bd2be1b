/** Numbers of the text set so that a finding goes: the smallest change of each thing that can be moved or set, by the solver that finds what is written `?`. */
import type { Snapshot } from '../../analysis.ts';
import type { Finding } from '../../checks/check.ts';
import { holeSpacing } from '../../model/holes.ts';
import { ANGLE, LENGTH, ONE_DEGREE } from '../../model/units.ts';
import type { Results } from '../../results/plan.ts';
import { descend } from '../../results/solve/descend.ts';
import { shareAt, Space } from '../../results/solve/space.ts';
import { startsIn } from '../../results/solve/starts.ts';
import type { Unknown } from '../../results/solve/unknowns.ts';
import { missedBy, type Condition } from '../../results/solve/wishes.ts';
import { farthest, knobsOf, type Knob } from './knobs.ts';
import { wantedFor, type Wanted } from './wanted.ts';

/** One knob as it would have to be set. */
export interface Setting {
  readonly knob: Knob;
  readonly wanted: Wanted;
  /** SI, one for each number of the knob, with as many decimals in the text as it takes */
  readonly values: readonly { readonly value: number; readonly decimals: number }[];
}

export function* settingsFor(finding: Finding, r: Results, snapshot: Snapshot): Generator<Setting> {
  for (const wanted of wantedFor(finding, r)) {
    const [first] = wanted.conditions;
    if (!first) continue;
    for (const knob of knobsOf(first.cell, r, snapshot)) {
      // A mismatch is taken up by a leg in closed form.
      if (wanted.told === 'mismatch' && knob.kind === 'leg') continue;
      if (wanted.only && !knob.numbers.every(n => wanted.only!.includes(n.cell.name))) continue;
      const values = setTo(knob, wanted.conditions, r);
      if (values) yield { knob, wanted, values };
    }
  }
}

/** From where it is to the nearest place that will do, with no more digits than that takes; undefined where there is none. */
function setTo(knob: Knob, conditions: readonly Condition[], r: Results): Setting['values'] | undefined {
  const { kind, numbers } = knob;
  const unknowns = numbers.map(n => n.unknown);
  const now = numbers.map(n => r.graph.value(n.cell)!);
  if (unknowns.some((u, i) => !(u.high > u.low) || now[i]! < u.low || now[i]! > u.high)) return undefined;
  // What readings add to the plan stays: else nothing would move what was read.
  const space = new Space(r, unknowns, conditions, [...r.readings.offsets, ...r.light.corrections]);
  const exact = nearest(space, unknowns.map((u, i) => shareAt(u, now[i]!)));
  if (!exact) return undefined;
  const will = (values: readonly number[]): boolean => {
    if (values.some((v, i) => v < unknowns[i]!.low - 1e-12 || v > unknowns[i]!.high + 1e-12) || values.every((v, i) => Math.abs(v - now[i]!) < 1e-9) || apart(values, now) > farthest(knob)) return false;
    const results = space.results(values.map((v, i) => shareAt(unknowns[i]!, v)));
    return conditions.every((c, i) => Math.abs(missedBy(c, results[i]!)) <= c.tolerance + 1e-9 * Math.abs(c.value));
  };
  const spacing = kind === 'place' && numbers.length === 2 ? holesOf(r, now) : undefined;
  const hole = spacing === undefined ? undefined : around(exact, spacing).sort((a, b) => apart(a, now) - apart(b, now)).find(will);
  if (hole) return hole.map((value, i) => ({ value, decimals: decimalsOf(1e-3, numbers[i]!.written.inText) }));
  for (const level of [0, 1, 2]) {
    const by = numbers.map((n, i) => stepOf(n.unknown, level, exact[i]!));
    const rounded = exact.map((v, i) => Math.round(v / by[i]!) * by[i]!);
    // What only has to keep to one side goes on a little in the way in which it went.
    const on = rounded.map((v, i) => v + Math.sign(exact[i]! - now[i]!) * by[i]!);
    const pick = [rounded, on].find(will);
    if (pick) return pick.map((value, i) => ({ value, decimals: decimalsOf(by[i]!, numbers[i]!.written.inText) }));
  }
  return undefined;
}

/** The nearest values that will do, SI: of one number all of its range is looked over, several go the way that helps most. */
function nearest(space: Space<Condition>, now: readonly number[]): readonly number[] | undefined {
  const goOn = (): boolean => true;
  if (now.length > 1) return space.values(descend(space, now, new Set(), goOn).t);
  const [is] = now as [number];
  const found = startsIn(space, goOn).map(({ t, range }) => (range ? Math.min(range[1], Math.max(range[0], is)) : descend(space, t, new Set(), goOn).t[0]!));
  return found.length === 0 ? undefined : space.values([found.reduce((a, b) => (Math.abs(b - is) < Math.abs(a - is) ? b : a))]);
}

/** Between holes, m, where there are any and the thing stands on one. */
function holesOf({ setup }: Results, now: readonly number[]): number | undefined {
  const by = holeSpacing(setup);
  return by !== undefined && now.every(v => Math.abs(v / by - Math.round(v / by)) < 1e-6) ? by : undefined;
}
const around = ([x, y]: readonly number[], by: number): number[][] => AROUND.flatMap(i => AROUND.map(j => [(Math.round(x! / by) + i) * by, (Math.round(y! / by) + j) * by]));
const AROUND = [-2, -1, 0, 1, 2];
const apart = (a: readonly number[], b: readonly number[]): number => Math.hypot(...a.map((v, i) => v - b[i]!));

/** Whole millimetres and degrees, then tenths and hundredths; of what may be of many sizes two digits, then more. */
function stepOf({ dim, wide }: Unknown, level: number, value: number): number {
  if (dim === LENGTH && wide === undefined) return 1e-3 / 10 ** level;
  if (dim === ANGLE) return ONE_DEGREE / 10 ** level;
  return 10 ** (Math.floor(Math.log10(Math.abs(value) || 1)) - 1 - level);
}

function decimalsOf(by: number, inText: (v: number) => number): number {
  return Math.max(0, Math.ceil(-Math.log10(Math.abs(inText(by) - inText(0))) - 1e-6));
}
