/**
 * What may move while the shutter is open, and by how much. Only the difference of both arms counts: what they have in common falls out, so that of a single beam nothing is left but the plate against its
 * object. Worked out when somebody asks.
 */
import type { Thing } from '../../model/model.ts';
import { LENGTH, NUMBER, parseUnit } from '../../model/units.ts';
import type { Fringes, PairFringes } from '../fringes/fringes.ts';
import type { Cell } from '../graph.ts';
import type { Pair } from '../paths/pairs.ts';
import { againstBeams } from '../rules/fringes.ts';
import { ALLOWED, BY_PATH } from '../rules/movement.ts';
import { allowedWarming } from './heat.ts';
import { delicaciesOf, type Along } from './delicacies.ts';
import { shuttersOf, type Ringing } from './shutters.ts';
import type { Making } from '../making.ts';

export interface MovementContext extends Making {
  readonly fringes: Fringes;
  /** how long the shutter is open, where that is known */
  readonly exposure: () => Cell | undefined;
}

/** A thing whose movement counts. */
export interface Delicate {
  readonly thing: Thing;
  /** what it moves against, where that is not the rest of the table */
  readonly against?: Thing;
  readonly along: Along;
  readonly pair: Pair;
  /** fringes for each metre in its most delicate direction */
  readonly delicacy: Cell;
  /** for a tenth of a fringe */
  readonly allowed: Cell;
}

const PER_MICROMETRE = parseUnit('fringes/µm')!;
const NANOMETRE = parseUnit('nm')!;

export class Movement {
  /** shutters that are written to stand on the table, with how long they shake it */
  readonly ringing: readonly Ringing[];
  private found: readonly Delicate[] | undefined;

  constructor(private readonly context: MovementContext) {
    this.ringing = shuttersOf(context);
  }

  /** The things whose movement counts, the most delicate first. */
  things(): readonly Delicate[] {
    return this.found ??= this.make();
  }

  ask(name: string): Cell | undefined {
    const [, of, what] = /^(.+?)\.(delicacy|allowed movement(?: in its plane| along its normal)?|allowed warming)$/.exec(name) ?? [];
    if (of === undefined || what === undefined) return undefined;
    if (what === 'allowed warming') return this.warming(of);
    if (what === 'delicacy' || what === 'allowed movement') {
      const thing = this.things().find(d => d.thing.id === of) ?? this.things().find(d => d.against?.id === of);
      return thing && (what === 'delicacy' ? thing.delicacy : thing.allowed);
    }
    const pair = this.context.fringes.pairs.find(f => f.plate.id === of);
    return pair && this.ofPlate(pair, what.endsWith('normal') ? 'normal' : 'surface', what);
  }

  /** The warming of the table that costs a tenth of a fringe, since both arms are not equally long. */
  warming(plate: string): Cell | undefined {
    const among = this.context.plates.filter(p => p.plate.id === plate).flatMap(p => p.pairs);
    return among.length === 1 ? allowedWarming(among[0]!, plate, this.context.values) : undefined;
  }

  /** A plate that moves along its surface, or along its normal. */
  ofPlate(f: PairFringes, along: 'surface' | 'normal', what = along === 'normal' ? 'allowed movement along its normal' : 'allowed movement in its plane'): Cell | undefined {
    const { values } = this.context;
    const { graph } = values;
    const name = `${f.plate.id}.${what}`;
    const known = graph.find(name);
    const wavelength = values.fact(f.pair.arm.laser, 'wavelength');
    if (known || !wavelength) return known;
    const words = `movement of ${f.plate.id} ${along === 'normal' ? 'along its normal' : 'in its plane'}`;
    const change = graph.derive(`${name}~path`, againstBeams(f.from.known, along), f.from.inputs, NUMBER, `path change for each metre of ${words}`);
    return graph.derive(name, ALLOWED, [graph.derive(`${name}~delicacy`, BY_PATH, [change, wavelength], PER_MICROMETRE.dim, `fringes for ${words}`, { unit: PER_MICROMETRE })], LENGTH, `allowed ${words}`, { unit: NANOMETRE });
  }

  private make(): Delicate[] {
    const { graph } = this.context.values;
    const best = new Map<Thing, ReturnType<typeof delicaciesOf>[number]>();
    for (const p of this.context.plates) for (const pair of p.pairs) {
      for (const d of delicaciesOf(pair, p, this.context)) {
        const known = best.get(d.thing);
        if (!known || d.size > known.size * (1 + 1e-9)) best.set(d.thing, d);
      }
    }
    return [...best.values()].flatMap((d): Delicate[] => {
      const delicacy = d.make(`${d.thing.id}.delicacy`, PER_MICROMETRE);
      if (delicacy.missing) return [];
      const allowed = graph.derive(`${d.thing.id}.allowed movement`, ALLOWED, [delicacy], LENGTH, `movement of ${d.thing.id} that costs a tenth of a fringe`, { unit: NANOMETRE });
      return [{ thing: d.thing, along: d.along, pair: d.pair, delicacy, allowed, ...(d.against ? { against: d.against } : {}) }];
    }).sort((a, b) => graph.value(b.delicacy)! - graph.value(a.delicacy)!);
  }
}
