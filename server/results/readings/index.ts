/** The readings of a setup: what each says, what it corrects, and why it may not. */
import type { Arms } from '../../model/arms.ts';
import type { Problem, Reading, Setup } from '../../model/model.ts';
import type { Cell } from '../graph.ts';
import type { Values } from '../values.ts';
import { Lengths } from './lengths.ts';
import { Corrections, type Offsets } from './offsets.ts';
import { movedSince, restsOn, type Stale } from './stale.ts';
import { sortReadings, type Fate, type Sort } from './subjects.ts';

export class Readings {
  readonly lengths: Lengths;
  readonly problems: Problem[] = [];
  private readonly sort: Sort;
  private readonly corrections: Corrections;

  /** `held`: the offsets of the setup of which this one is a changed copy */
  constructor(readonly setup: Setup, private readonly arms: Arms, values: Values, held?: Offsets) {
    this.sort = sortReadings(setup, arms, values);
    this.corrections = new Corrections(values.graph, held);
    this.lengths = new Lengths(this.sort, values, this.corrections);
    for (const [reading, fate] of this.sort.fates) {
      if (fate.kind === 'unclear' && !fate.silent) this.problems.push({ code: 'reading-unclear', at: reading.at, subject: reading.words, setup: setup.name, data: { words: reading.words, why: fate.why } });
    }
  }

  /** Cells of what readings add to the plan. */
  get offsets(): readonly Cell[] { return this.corrections.offsets; }

  /** What became of a reading of a length; undefined for one of light, and for one without a value. */
  fate(reading: Reading): Fate | undefined { return this.sort.fates.get(reading); }

  /** What was moved since, where that makes a reading stale. */
  stale(reading: Reading): Stale | undefined {
    const fate = this.fate(reading);
    if (fate) return fate.kind === 'stale' ? fate.stale : undefined;
    if (reading.on === undefined || this.setup.moved.length === 0) return undefined;
    return movedSince(reading, restsOn(reading, this.arms, this.setup), this.setup);
  }

  /** What was read of lengths and counts. */
  get subjects(): Set<Extract<Fate, { kind: 'counts' }>['subject']> {
    return new Set([...this.sort.fates.values()].flatMap(f => (f.kind === 'counts' ? [f.subject] : [])));
  }
}
