/**
 * Lengths as readings correct them. What was read directly counts, and what is computed follows; where a whole was also read piece by piece, the surer of
 * the two counts. One by one: a leg, a run of legs or an arm, and the difference of an arm and its reference.
 */
import type { Arm } from '../../model/arms.ts';
import type { Leg, Place, Thing } from '../../model/model.ts';
import { LENGTH } from '../../model/units.ts';
import type { Cell } from '../graph.ts';
import type { LegCells } from '../legs/leg-cells.ts';
import { weighted } from '../rules/lengths.ts';
import { same } from '../rules/readings.ts';
import type { Values } from '../values.ts';
import type { Corrections } from './offsets.ts';
import { differenceKey, legsKey, type Sort, type Subject } from './subjects.ts';

/** A length that is made of legs. */
export interface Whole {
  readonly length: Cell;
  /** as planned, without any reading */
  readonly plan: Cell;
  /** it was read, as a whole or in all of its legs */
  readonly read: boolean;
  /** and all those readings say how sure they are */
  readonly sure: boolean;
  /** what was read in one run and counts instead of its legs, which it need not be the sum of; the whole itself, where that was */
  readonly runs: readonly Run[];
}

/** Legs that were read in one run. */
export interface Run {
  readonly words: string;
  readonly legs: readonly Leg[];
  readonly length: Cell;
}

/** Two ways to one figure, of which the surer counts. */
export interface TwoWays {
  readonly words: string;
  /** what was read directly */
  readonly direct: Subject;
  /** what the readings of its parts say */
  readonly parts: Cell;
  readonly readings: readonly Subject[];
  readonly legs: number;
}

export class Lengths {
  private readonly plans = new Map<Leg, Cell>();
  readonly twoWays: TwoWays[] = [];

  constructor(private readonly subjects: Sort, private readonly values: Values, private readonly corrections: Corrections) {}

  /** The length of a leg; `plan` makes the planned one, with that behind its name. */
  leg(leg: Leg, plan: (suffix: string) => Cell): Cell {
    const subject = this.subjects.legs.get(leg);
    if (!subject) return plan('');
    const planned = plan('.plan');
    this.plans.set(leg, planned);
    return this.correct(subject, planned);
  }

  /** A run of legs, or an arm. */
  along(legs: readonly Leg[], cells: LegCells, name: string, words: string, at: Place | undefined): Whole {
    const more = at ? { at } : {};
    const direct = legs.length > 1 && this.subjects.runs.length > 0 ? this.subjects.wholes.get(legsKey(legs)) : undefined;
    const known = direct && this.known.get(direct);
    if (known) return known;
    const whole = this.whole(legs, cells, name, words, more, direct);
    if (direct) this.known.set(direct, whole);
    return whole;
  }

  private whole(legs: readonly Leg[], cells: LegCells, name: string, words: string, more: { at?: Place }, direct: Subject | undefined): Whole {
    const { graph } = this.values;
    const parts = this.parts(legs, cells);
    const sum = (of: string, from: readonly Cell[], formula = 'sum of the legs', what = words): Cell => graph.derive(of, weighted('sum of legs', formula, from.map(() => 1)), from, LENGTH, what, more);
    const planned = (): Cell => sum(`${name}.plan`, legs.map(l => this.plans.get(l) ?? cells.get(l)!), undefined, `${words} as planned`);
    const read = legs.length > 0 && parts.every(p => p.subject !== undefined);
    const readings = parts.flatMap(p => p.subject ?? []);
    const sure = parts.every(p => p.sure);
    const runs = parts.flatMap(p => p.runs);
    if (!direct) {
      const length = sum(name, parts.map(p => p.cell), runs.length > 0 ? 'sum of the legs, some of them as read in one run' : undefined);
      return { length, read, sure, runs, plan: parts.some(p => p.subject) ? planned() : length };
    }
    const plan = direct.plan = planned();
    const byParts = read ? sum(`${name}.by legs`, parts.map(p => p.cell), 'sum of the legs, each of which was read', `${words} by its legs`) : undefined;
    if (byParts) this.twoWays.push({ words, direct, parts: byParts, readings, legs: legs.length });
    if (byParts && this.surer(byParts, direct, sure)) return { plan, read: true, sure, runs, length: graph.derive(name, same('the surer of two', 'sum of its legs, each of which was read: surer than the reading of the whole'), [byParts], LENGTH, words, more) };
    const length = this.correct(direct, plan, byParts && 'plan + offset: the reading of the whole is surer than those of its legs');
    return { plan, read: true, sure: saysHowSure(direct), length, runs: [{ words: direct.words, legs, length }] };
  }

  /** What a length is summed from: runs that were read, and legs. */
  private parts(legs: readonly Leg[], cells: LegCells): { cell: Cell; subject: Subject | undefined; sure: boolean; runs: readonly Run[] }[] {
    const leg = (l: Leg): ReturnType<Lengths['parts']>[number] => {
      const subject = this.subjects.legs.get(l);
      return { cell: cells.get(l)!, subject, sure: subject === undefined || saysHowSure(subject), runs: [] };
    };
    if (this.subjects.runs.length === 0) return legs.map(leg);
    const taken = new Map<Leg, Subject>();
    for (const run of this.subjects.runs) {
      if (run.legs.length < legs.length && run.legs.every(l => legs.includes(l) && !taken.has(l))) for (const l of run.legs) taken.set(l, run.subject);
    }
    const seen = new Set<Subject>();
    return legs.flatMap(l => {
      const run = taken.get(l);
      if (!run) return [leg(l)];
      if (seen.has(run)) return [];
      seen.add(run);
      // Where its legs are surer than the reading of the run, it is as sure as they are.
      const { length, sure, runs } = this.run(run, cells);
      return [{ cell: length, subject: run, sure, runs }];
    });
  }

  /** What was read more than once, or is part of another whole, is made once. */
  private readonly known = new Map<Subject, Whole>();
  private run({ target, name, words, readings }: Subject, cells: LegCells): Whole {
    return this.along(target.kind === 'path' ? target.legs : [], cells, name, words, readings[0]!.reading.at);
  }

  /** Runs that are part of no arm, such as those before the splitter. */
  rest(cells: LegCells): void {
    for (const { subject } of this.subjects.runs) this.run(subject, cells);
  }

  /** The difference of an arm and its reference as string measures it, where it was read and that is the surest way; undefined else. */
  difference(plate: Thing, arm: Arm, own: Whole & { readonly legs: readonly Leg[] }, reference: Whole & { readonly legs: readonly Leg[] }): { readonly cell?: Cell; readonly formula?: string } {
    const direct = this.subjects.wholes.get(differenceKey(plate, arm));
    if (!direct) return {};
    const { graph } = this.values;
    const { name, words } = direct;
    const minus = (of: string, a: Cell, b: Cell, how: string): Cell => graph.derive(of, weighted('difference', 'object path − reference path', [1, -1]), [a, b], LENGTH, `${words} ${how}`);
    const byArms = own.read && reference.read ? minus(`${name}.by arms`, own.length, reference.length, 'by both paths') : undefined;
    if (byArms) this.twoWays.push({ words, direct, parts: byArms, readings: [], legs: own.legs.length + reference.legs.length });
    const plan = direct.plan = minus(`${name}.plan`, own.plan, reference.plan, 'as planned');
    if (byArms && this.surer(byArms, direct, own.sure && reference.sure)) return { formula: 'object path − reference path: both were read, and that is surer than the reading of their difference' };
    return { cell: this.correct(direct, plan, byArms && 'plan + offset: the reading of the difference is surer than those of both paths') };
  }

  /** Whether the parts say it more surely. What does not say how sure it is, all of it, is not surer than what does. */
  private surer(parts: Cell, direct: Subject, sure: boolean): boolean {
    const { graph } = this.values;
    const is = !parts.missing && sure && (!saysHowSure(direct) || graph.uncertainty(parts) < graph.uncertainty(direct.cell));
    direct.lessSure = is;
    return is;
  }

  private correct(subject: Subject, plan: Cell, formula?: string): Cell {
    subject.plan = plan;
    const cell = this.corrections.correct(subject.name, subject.words, plan, subject.cell, formula);
    subject.corrected = cell;
    return cell;
  }
}

const saysHowSure = ({ readings }: Subject): boolean => readings.some(t => t.own > 0);
