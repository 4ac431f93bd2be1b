/** Arms that bring no light, by what is written of a thing on their way or by a reading, and why. Without both beams nothing records, whatever the lengths say. */
import type { Arm } from '../../model/arms.ts';
import type { Leg, Place, Thing } from '../../model/model.ts';
import type { Cell, Missing } from '../graph.ts';
import { BEHIND_DENSITY } from '../rules/light.ts';
import type { ArmLight } from './arm-light.ts';
import { screenBefore } from './screen-light.ts';
import type { LightContext } from './context.ts';
import type { Meters } from './meter.ts';
import type { Powers } from './powers.ts';
import type { Wheels } from './wheels.ts';

/** An arm that brings no light. */
export interface Dark {
  readonly arm: Arm;
  /** what keeps the light away, or the plate where a reading says that there is none */
  readonly thing: Thing;
  /** the figure that says so */
  readonly cell: Cell;
  readonly at: Place;
  /** a clause: `S1 reflects none of it` */
  readonly why: string;
}

/** A thing of which a share as small as this goes on passes no light: no plate would see it, however long it stood there. */
const NONE = 1e-12;
/** Facts that may say so by the share that goes on, with what they say when that is none. */
const SAYS = {
  loss: { left: (v: number) => 1 - v, why: (t: Thing) => `${t.id} loses all of it` },
  tone: { left: (v: number) => v, why: (t: Thing) => `${t.id} gives back nothing of it` },
  density: { left: (v: number) => BEHIND_DENSITY.compute([1, v]), why: (t: Thing) => `${t.id} is too dense to let any through` },
  efficiency: { left: (v: number) => v, why: (t: Thing) => `${t.id} sends nothing of it into its image` },
} as const;

const SAYING = Object.keys(SAYS) as (keyof typeof SAYS)[];
/** All that may say so. */
const TELLING = ['reflects', 'wheel', ...SAYING] as const;

/** Why something has no value that needs the light of a dark arm. */
export const darkness = ({ arm, why, at }: Dark): Missing => ({ code: 'no-light', why: `no light reaches ${arm.plate.id} by ${arm.name}: ${why}`, at });

export class Darkness {
  private readonly known = new Map<string, { cell: Cell; why: string; at: Place } | undefined>();
  private readonly suspects: ReadonlySet<Thing>;

  constructor(private readonly meters: Meters, private readonly powers: Powers, private readonly wheels: Wheels, private readonly context: LightContext) {
    // Of thousands of things in a row hardly any says that it stops all light.
    this.suspects = new Set([...context.setup.things.values()].filter(t => TELLING.some(p => this.mayStop(t, p)) || t.kind.word === 'polarizer'));
  }

  /** What keeps the light of an arm away; a power that was read behind it knows better. Undefined where light gets through, or nothing tells. */
  of(arm: Arm): Dark | undefined {
    if (this.suspects.size === 0) return undefined;
    let dark: Dark | undefined;
    arm.path.forEach((leg, i) => {
      if (dark && this.powers.isRead(leg)) dark = undefined;
      const next = arm.path[i + 1];
      if (dark || !next || !leg.target || !this.suspects.has(leg.target)) return;
      const found = this.stopped(leg.target, next.n === 1 ? next.beam.port : leg.port, leg, arm);
      if (found) dark = { arm, thing: leg.target, ...found };
    });
    return dark;
  }

  /** The same by a reading at the plate, which goes before what is written. */
  ofRead(arm: Arm, read: ArmLight | undefined): Dark | undefined {
    if (!read) return this.of(arm);
    const input = read.cell.missing?.code === 'no-light' ? this.meters.input(read.read.reading) : undefined;
    return input && { arm, thing: arm.plate, cell: input, at: read.read.reading.at, why: 'what was read of it there is no more than the meter shows in the dark' };
  }

  /** Whether the number that is written of a thing is one that may stop all light; what a formula gives is looked at later. */
  private mayStop(thing: Thing, phrase: (typeof TELLING)[number]): boolean {
    const value = thing.facts.get(phrase)?.value;
    if (!value || value.kind === 'unknown') return false;
    if (value.kind !== 'quantity' || phrase === 'wheel') return true;
    const v = value.quantity.value;
    return phrase === 'reflects' ? v < NONE || 1 - v < NONE : SAYS[phrase].left(v) < NONE;
  }

  private stopped(thing: Thing, port: string | undefined, leg: Leg, arm: Arm): { cell: Cell; why: string; at: Place } | undefined {
    const lit = thing === arm.object && screenBefore(arm) !== undefined;
    const key = `${thing.id} ${port ?? ''} ${lit}`;
    if (!this.known.has(key)) this.known.set(key, this.look(thing, port, leg, lit));
    return this.known.get(key);
  }

  private look(thing: Thing, port: string | undefined, leg: Leg, lit: boolean): { cell: Cell; why: string; at: Place } | undefined {
    const { graph, values, polarization } = this.context;
    const found = (cell: Cell | undefined, phrase: string, left: (v: number) => number, why: string): { cell: Cell; why: string; at: Place } | undefined => {
      const value = cell && graph.value(cell);
      return value !== undefined && left(value) < NONE ? { cell: cell!, why, at: thing.facts.get(phrase)?.at ?? thing.at } : undefined;
    };
    if (thing.kind.word === 'splitter' && (thing.facts.has('wheel') || this.mayStop(thing, 'reflects'))) {
      const share = this.wheels.of(thing).reflects;
      const split = port === 'reflected' ? found(share, 'reflects', v => v, `${thing.id} reflects none of it`) : port === 'through' ? found(share, 'reflects', v => 1 - v, `${thing.id} reflects all of it and lets none through`) : undefined;
      if (split) return split;
    }
    for (const phrase of SAYING) {
      // What a screen sends past a thing needs no tone of it, and what goes straight through a hologram none of its efficiency.
      if (!this.mayStop(thing, phrase) || (phrase === 'tone' && (lit || thing.kind.light !== 'scatters')) || (phrase === 'efficiency' && port !== 'diffracted')) continue;
      const stop = found(values.fact(thing, phrase), phrase, SAYS[phrase].left, SAYS[phrase].why(thing));
      if (stop) return stop;
    }
    // How a polarizer stands to the light is only worked out where the power along the beams is.
    if (thing.kind.word !== 'polarizer' || !this.context.arms.arms.some(a => a.path.includes(leg) && a.laser.facts.has('power'))) return undefined;
    return found(polarization.polarizerShare(leg), 'axis', v => v, `${thing.id} stands across the polarization of the light that meets it`);
  }
}
