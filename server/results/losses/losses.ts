/** The ladder: what each cause takes of the brightness with which an object arm records, and what is left of it. Other areas are asked by the names of their results. */
import { lightName, type Arm } from '../../model/arms.ts';
import type { Thing } from '../../model/model.ts';
import { NUMBER } from '../../model/units.ts';
import type { Cell, Rule } from '../graph.ts';
import type { Dark } from '../light/dark.ts';
import type { Pair, PlateResults } from '../paths/pairs.ts';
import { LOST_BY_SHARE } from '../rules/exposures.ts';
import { ALL_LOST, LOST, LOST_BY_EXPOSURE, LOST_BY_RATIO, RECORDED } from '../rules/losses.ts';
import type { Making } from '../making.ts';

/** In the order in which the light meets them. */
export const CAUSES = ['depth', 'ratio', 'polarization', 'fringes', 'drift', 'exposure', 'sharing', 'corner'] as const;
export type Cause = (typeof CAUSES)[number];

/** One cause. */
export interface Rung {
  readonly cause: Cause;
  /** share of the brightness that it takes, 0 to 1; none where it is not known how much */
  readonly loss?: Cell;
  /** the result that it is reckoned from */
  readonly from?: Cell;
  /** one of its beams brings no light: then there is no ratio, and all is lost */
  readonly dark?: Dark;
  /** why it is not known, in words that complete "because …" */
  readonly unknown?: string;
}

/** What holds one object arm back at one plate. */
export interface Ladder {
  readonly plate: Thing;
  readonly pair: Pair;
  readonly rungs: readonly Rung[];
  /** what all that is known leaves in the middle of the plate, of the part of the object that records worst */
  readonly recorded?: Cell;
}

export interface LossesContext extends Making {
  /** brightness averaged over the screen that lights an object, where one does */
  overScreen(pair: Pair): Cell | undefined;
  /** shares of the layer that it records in, where others record in it too: the product of them counts */
  shares(pair: Pair): readonly Cell[];
  /** why an arm brings no light, where that is so */
  dark(arm: Arm): Dark | undefined;
  /** how long the shutter is open, where that is written */
  exposure(): Cell | undefined;
  /** the result of a name, worked out where nothing has asked for it yet */
  named(name: string): Cell | undefined;
  /** the same, where it is there already */
  find(name: string): Cell | undefined;
}

/** Names of results that say more of the brightness than lengths do. */
const MORE = /(?:\.|^)(?:beam ratio|polarized|polarization|drift brightness|corner light|resolving share|exposure time)$/;
const OWN = /(?:^|[. ])(?:(?:depth|ratio|polarization|drift|exposure|sharing|corner) loss|recorded brightness)$/;

export class Losses {
  private made: readonly Ladder[] | undefined;

  constructor(private readonly context: LossesContext) {}

  /** A ladder for each object arm that has a reference. Made when it is first asked for. */
  get ladders(): readonly Ladder[] {
    return this.made ??= this.context.plates.flatMap(p => p.pairs.map(pair => this.ladder(p, pair)));
  }

  /** Whether the page has more to say of the brightness than by its lengths; then it shows the ladder. */
  readonly shown = (): boolean => this.context.plates.some(p => p.pairs.length > 0) && (this.context.published.some(c => !c.missing && MORE.test(c.name)) || this.context.plates.some(p => p.pairs.some(x => this.darkOf(x) !== undefined)));

  /** Puts on the page what a page that says more than lengths knows. What the depth takes is there already, as a brightness. */
  publish(): void {
    if (!this.shown()) return;
    for (const { rungs, recorded } of this.ladders) for (const cell of [...rungs.map(r => (r.cause === 'depth' ? undefined : r.loss)), recorded]) if (cell && !this.context.published.includes(cell)) this.context.published.push(cell);
  }

  /** `P1.object.ratio loss`, `recorded brightness` */
  ask(name: string): Cell | undefined {
    return OWN.test(name) && this.ladders.length > 0 ? this.context.find(name) : undefined;
  }

  private ladder({ plate, pairs }: PlateResults, pair: Pair): Ladder {
    const base = `${plate.id}.${pair.arm.name}`;
    const rungs = CAUSES.flatMap(cause => this[cause](base, plate, pair) ?? []);
    const counting = rungs.flatMap(r => (r.loss && r.cause !== 'corner' ? [r.loss] : []));
    const alone = pairs.length === 1;
    for (const { cause, loss } of rungs) if (loss) this.name(`${cause} loss`, loss, plate, pair, alone);
    if (counting.length === 0) return { plate, pair, rungs };
    const recorded = this.context.graph.derive(`${base}.recorded brightness`, RECORDED, counting, NUMBER, `recorded brightness of ${pair.arm.object!.id} on ${plate.id}`);
    this.name('recorded brightness', recorded, plate, pair, alone);
    return { plate, pair, rungs, recorded };
  }

  private name(what: string, cell: Cell, plate: Thing, pair: Pair, alone: boolean): void {
    this.context.alias(what, cell);
    this.context.alias(`${pair.arm.object!.id}.${what}`, cell);
    if (alone) this.context.alias(`${plate.id}.${what}`, cell);
  }

  /** A rung by a result that may be missing, or not be there at all. */
  private by(cause: Cause, base: string, from: Cell | undefined, rule: Rule, inputs: readonly Cell[], why: string): Rung {
    if (!from || from.missing) return { cause, unknown: from?.missing?.why ?? why };
    const loss = this.context.graph.derive(`${base}.${cause} loss`, rule, inputs, NUMBER, `brightness lost by ${WORDS[cause]}`);
    return loss.missing ? { cause, unknown: loss.missing.why } : { cause, loss, from };
  }

  /** Where lengths and coherence leave the least. */
  private depth(base: string, _plate: Thing, pair: Pair): Rung {
    const part = (pair.parts.find(p => p.part === 'darkest') ?? pair.parts[0])?.brightness;
    const screen = this.context.overScreen(pair);
    // Of light from behind the depth takes nothing, the width of the screen does.
    const left = screen && part && !part.missing && this.context.graph.value(screen)! < this.context.graph.value(part)! ? screen : part;
    return this.by('depth', base, left, LOST, [left!], `nothing is written about the coherence of ${pair.arm.laser.id}`);
  }
  private ratio(base: string, plate: Thing, pair: Pair): Rung {
    const dark = this.darkOf(pair);
    if (dark) return { cause: 'ratio', dark, from: dark.cell, loss: this.context.graph.derive(`${base}.ratio loss`, ALL_LOST, [dark.cell], NUMBER, `brightness lost where ${dark.why}`) };
    const k = this.context.named(`${lightName(plate, pair.arm.laser, this.context.plates.flatMap(p => p.arms.map(a => a.arm)))}.beam ratio`);
    return this.by('ratio', base, k, LOST_BY_RATIO, [k!], `the light at ${plate.id} has not been metered`);
  }
  private darkOf({ arm, reference }: Pair): Dark | undefined {
    return this.context.dark(arm) ?? this.context.dark(reference);
  }
  /** A reading through a sheet of polarizer goes before what the mirrors are thought to do. */
  private polarization(base: string, plate: Thing, pair: Pair): Rung {
    const read = this.context.find(`${base}.polarized`) ?? this.context.find(`${plate.id}.object.polarized`);
    const share = read && !read.missing ? read : this.context.find(`${base}.polarization`);
    return this.by('polarization', base, share, LOST, [share!], `how the light of ${pair.arm.name} is polarized beside the reference is not known`);
  }
  /** How much is lost beyond the rated figure is told by nobody: only whether the fringes are finer. */
  private fringes(base: string, plate: Thing): Rung {
    const share = this.context.named(`${base}.resolving share`);
    if (!share || share.missing) return { cause: 'fringes', unknown: share?.missing?.why ?? `how fine the fringes are for ${plate.id} is not known` };
    return { cause: 'fringes', from: share };
  }
  private drift(base: string, plate: Thing): Rung {
    const left = this.context.find(`${plate.id}.drift brightness`);
    return this.by('drift', base, left, LOST, [left!], `no drift of the fringes was read at ${plate.id}`);
  }
  private exposure(base: string, plate: Thing): Rung {
    const written = this.context.exposure();
    const needed = written && this.context.named(`${plate.id}.exposure time`);
    if (!written || written.missing) return { cause: 'exposure', unknown: written?.missing?.why ?? 'no exposure is written for the setup' };
    return this.by('exposure', base, needed, LOST_BY_EXPOSURE, [written, needed!], `what ${plate.id} needs is not known`);
  }
  /** Only where more than one recording is made on the plate. */
  private sharing(base: string, plate: Thing, pair: Pair): Rung | undefined {
    const shares = this.context.shares(pair);
    return shares.length === 0 ? undefined : this.by('sharing', base, shares.find(c => c.missing) ?? shares[0], LOST_BY_SHARE, shares, `which part of ${plate.id} it gets is not known`);
  }
  /** In the weakest corner only: there a weak recording follows the light of the reference. */
  private corner(base: string, plate: Thing, pair: Pair): Rung {
    const name = `${plate.id}.${pair.reference.name}.corner light`;
    const share = this.context.named(name) ?? this.context.named(`${plate.id}.reference.corner light`);
    return this.by('corner', base, share, LOST, [share!], `how much reference light the corners of ${plate.id} get is not known`);
  }
}

/** What each cause is called in running words. */
export const WORDS: Readonly<Record<Cause, string>> = {
  depth: 'path difference and depth', ratio: 'the beam ratio', polarization: 'polarization', fringes: 'fringes too fine for the plate', drift: 'drift during the exposure', exposure: 'an exposure off the mark', sharing: 'the other recordings on the plate', corner: 'weak light in the corners',
};
