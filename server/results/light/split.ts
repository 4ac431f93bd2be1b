/** What a splitter has to reflect for a beam ratio: the one that is aimed at, else the one that is written. */
import { lasersAt, lightName, type Arm } from '../../model/arms.ts';
import type { Thing } from '../../model/model.ts';
import { NUMBER, parseUnit } from '../../model/units.ts';
import type { Cell } from '../graph.ts';
import { splitForRatio, splitFromMetered } from '../rules/object-light.ts';
import type { LightContext } from './context.ts';
import type { Powers } from './powers.ts';
import type { Predictions } from './predicted.ts';
import type { Wheels } from './wheels.ts';

const PERCENT = parseUnit('%')!;

/** A share that a setup leaves open with `?`, and the one that is worked with until it is written. */
export interface Solved {
  readonly splitter: Thing;
  /** the ratio that asks for it */
  readonly ratio: Cell;
  readonly share: Cell;
  readonly working: Cell;
  /** the share lies outside of what the setup allows, and the nearest end counts */
  readonly bounded: boolean;
}

export class Splits {
  readonly solved = new Map<Thing, Solved>();
  private readonly asking = new Set<Thing>();
  private readonly shares = new Map<Thing, Cell | undefined>();

  /** the ratio at a plate, and what of its light was read */
  lightAt: (arm: Arm) => { readonly ratio: Cell; readonly reference?: unknown; readonly objects: readonly unknown[] } | undefined = () => undefined;

  constructor(private readonly powers: Powers, private readonly wheels: Wheels, private readonly predictions: Predictions, private readonly context: LightContext) {}

  /** `S1.split for ratio` */
  ask(name: string): Cell | undefined {
    if (name === 'split') {
      const all = [...this.context.setup.things.values()].filter(t => t.kind.word === 'splitter' && this.arms(t));
      return all.length === 1 ? this.share(all[0]!) : undefined;
    }
    if (!name.endsWith(NAME)) return undefined;
    const splitter = this.context.setup.things.get(name.slice(0, -NAME.length));
    return splitter?.kind.word === 'splitter' ? this.share(splitter) : undefined;
  }

  /** What to reflect, as far as it can be told. Undefined where the setup names no ratio, or the arms of no plate part here. */
  share(splitter: Thing): Cell | undefined {
    if (!this.shares.has(splitter) && !this.asking.has(splitter)) {
      this.asking.add(splitter);
      this.shares.set(splitter, this.make(splitter));
      this.asking.delete(splitter);
    }
    return this.shares.get(splitter);
  }

  /** The share to work with where it is written `?`; a cell without a value where the setup names a ratio, and what it asks for cannot be told. */
  working(splitter: Thing): Cell | undefined {
    const known = this.solved.get(splitter);
    if (known) return known.working;
    const share = this.share(splitter);
    if (!share || share.missing) return share;
    const { graph } = this.context;
    const value = graph.value(share)!;
    const bound = splitter.facts.get('reflects')?.value;
    const end = (side: 'from' | 'to', otherwise: number): number => { const b = bound?.kind === 'unknown' ? bound[side] : undefined; return b?.kind === 'quantity' ? b.quantity.value : otherwise; };
    const kept = Math.max(end('from', 0), Math.min(end('to', 1), inTwoDigits(value)));
    const ratio = share.inputs[0]!;
    const at = splitter.facts.get('reflects')?.at;
    const working = graph.input(`${splitter.id}.reflects`, { value: kept, dim: NUMBER, unit: PERCENT }, 'solved', `share that ${splitter.id} reflects`, {
      ...(at ? { at } : {}), reason: `written ?; what a ratio of ${Number(graph.value(ratio)!.toPrecision(3))}:1 asks for by the plan${kept === inTwoDigits(value) ? '' : ', kept within what is written'}`,
    });
    this.solved.set(splitter, { splitter, ratio, share, working, bounded: kept !== inTwoDigits(value) });
    return working;
  }

  /** The arms of a plate that part at a splitter, each by the port that it leaves by. */
  private arms(splitter: Thing): { readonly reference: Arm; readonly objects: readonly Arm[]; readonly reflected: boolean } | undefined {
    for (const { plate } of this.context.plates) {
      for (const laser of lasersAt(plate, this.context.arms.arms)) {
        const own = this.context.arms.arms.filter(a => a.plate === plate && a.laser === laser);
        const reference = own.find(a => a.role === 'reference');
        const objects = own.filter(a => a.role === 'object');
        const port = reference && portAt(reference, splitter);
        if (!reference || !port || objects.length === 0) continue;
        const other = port === 'reflected' ? 'through' : 'reflected';
        if (objects.every(o => portAt(o, splitter) === other)) return { reference, objects, reflected: other === 'reflected' };
      }
    }
    return undefined;
  }

  private make(splitter: Thing): Cell | undefined {
    const { graph } = this.context;
    const found = this.arms(splitter);
    const ratio = found && this.ratio(found.reference);
    if (!found || !ratio) return undefined;
    const name = `${splitter.id}${NAME}`;
    const words = `share that ${splitter.id} has to reflect`;
    const now = this.metered(found.reference, splitter);
    if (now) return this.named(graph.derive(name, splitFromMetered(found.reflected), [ratio, ...now], NUMBER, words, { unit: PERCENT }));
    const each = [found.reference, ...found.objects].map(arm => {
      const entering = this.powers.behindSplitter(arm, splitter);
      const given = this.predictions.yieldOf(arm);
      return 'make' in given ? given.make(`${arm.plate.id}.${arm.name}.light for a watt behind ${splitter.id}`, `light of ${arm.name} for a watt that enters it`, entering) : given;
    });
    return this.named(graph.derive(name, splitForRatio(found.reflected), [ratio, ...each], NUMBER, words, { unit: PERCENT }));
  }

  private named(cell: Cell): Cell {
    for (const alias of ['split', 'split for ratio']) this.context.alias(alias, cell);
    return cell;
  }

  /** The ratio at a plate, at least one side of it metered, and the share at which that was; undefined where either is not known. An open share tells nothing of where the splitter stood. */
  private metered(reference: Arm, splitter: Thing): readonly [Cell, Cell] | undefined {
    if (splitter.facts.get('reflects')?.value.kind === 'unknown' && !this.context.readings.some(r => r.measured?.kind === 'wheel' && r.measured.splitter === splitter)) return undefined;
    if (!this.context.readings.some(r => r.measured?.kind === 'light' && (!r.measured.at || r.measured.at === reference.plate))) return undefined;
    const { ratio, reference: read, objects } = this.lightAt(reference)!;
    const share = this.wheels.of(splitter).reflects;
    const isRead = (read !== undefined || objects.length > 0) && !ratio.inputs.some(c => c.name === WRITTEN_RATIO);
    return isRead && !ratio.missing && !share.missing ? [ratio, share] : undefined;
  }

  /** `aim beam ratio: 4:1`, or `aim P1.beam ratio: 4:1`, of several lasers `aim P1.red.beam ratio: 4:1`; else the ratio that is written. */
  private ratio({ plate, laser }: Arm): Cell | undefined {
    const { setup, graph, values } = this.context;
    const called = lightName(plate, laser, this.context.arms.arms);
    const aim = setup.goals.find(g => g.kind === 'aim' && (g.result === 'beam ratio' || g.result === `${called}.beam ratio` || (called !== plate.id && g.result === `${laser.id}.beam ratio`)));
    const expr = aim?.limits[0]?.expr;
    if (expr?.kind === 'ratio' && expr.left > 0 && expr.right > 0) {
      const name = `${called}.beam ratio as aimed`;
      return graph.find(name) ?? graph.input(name, { value: expr.left / expr.right, dim: NUMBER }, 'written', `beam ratio that is aimed at`, { at: aim!.limits[0]!.at });
    }
    const written = setup.facts.get('beam ratio');
    return written && (graph.find(WRITTEN_RATIO) ?? values.bound(written.value, written.at, WRITTEN_RATIO, WRITTEN_RATIO, NUMBER));
  }
}

export const WRITTEN_RATIO = 'beam ratio as written';
const NAME = '.split for ratio';

/** Two digits of the smaller of both shares: no wheel is set closer, and object light is a guess. */
function inTwoDigits(share: number): number {
  const less = Math.min(share, 1 - share);
  const digits = less > 0 ? Math.min(12, 1 - Math.floor(Math.log10(less))) : 12;
  return Number(share.toFixed(digits));
}

/** The port by which the light of an arm leaves a thing on its way. */
function portAt(arm: Arm, thing: Thing): string | undefined {
  const at = arm.path.findIndex(l => l.target === thing);
  const [leg, next] = [arm.path[at], arm.path[at + 1]];
  if (!leg || !next) return undefined;
  return next.n === 1 ? next.beam.port : leg.port;
}
