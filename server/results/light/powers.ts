/** Power along the beams, leg by leg from the laser. A page may have thousands of legs: only what somebody asks for is worked out. */
import { beamLegs, ontoObject, type Arm } from '../../model/arms.ts';
import type { Beam, Leg, Reading, Thing } from '../../model/model.ts';
import { NUMBER, parseUnit, POWER } from '../../model/units.ts';
import type { Cell, Missing } from '../graph.ts';
import { BEHIND, BEHIND_DENSITY, BEHIND_POLARIZER, DIFFRACTED, REFLECTED, THROUGH } from '../rules/light.ts';
import { weighted } from '../rules/lengths.ts';
import { pinholeShare } from '../beams/pinhole-share.ts';
import { BEHIND_PINHOLE } from '../rules/beams.ts';
import { maskOf, openSides, replayAngle } from '../places/mask.ts';
import { BEHIND_SLIT } from '../rules/image.ts';
import { landingShare } from '../rules/table.ts';
import { isLight, type LightContext } from './context.ts';
import { counting } from './fates.ts';
import type { Meters } from './meter.ts';
import type { Wheels } from './wheels.ts';
import { beamNumbers } from './yield.ts';

/** A power that was read, and what the plan says. */
export interface PowerReading {
  readonly leg: Leg;
  readonly reading: Reading;
  readonly read: Cell;
  readonly planned: Cell;
}

const PERCENT = parseUnit('%')!;
const SAME = weighted('the same power', 'power where the beam ends', [1]);

export class Powers {
  private readonly cells = new Map<Leg, Cell>();
  private readonly read = new Map<Leg, Reading>();
  private readonly arriving = new Map<Thing, Leg>();
  private readonly corrections = new Map<Leg, PowerReading>();

  constructor(private readonly meters: Meters, private readonly wheels: Wheels, private readonly context: LightContext) {
    const { setup, arms, readings: usable } = context;
    const starts = new Set([...setup.beams.values()].map(b => b.from));
    for (const beam of setup.beams.values()) for (const leg of beam.legs) if (leg.target && starts.has(leg.target) && !this.arriving.has(leg.target)) this.arriving.set(leg.target, leg);
    const readings = new Map<Leg, Reading[]>();
    for (const r of usable) {
      if (!isLight(r) || r.measured.through !== undefined || r.measured.spot !== 'centre' || r.measured.at?.kind.light === 'recorded') continue;
      const { arm, at } = r.measured;
      const named = setup.beams.get(arm)?.legs ?? arms.arms.filter(a => a.name === arm || a.role === arm).flatMap(a => a.path);
      const leg = at ? named.find(l => l.target === at) : setup.beams.get(arm)?.legs.at(-1);
      if (leg && leg.target?.kind.light !== 'recorded') readings.set(leg, [...(readings.get(leg) ?? []), r]);
    }
    for (const [leg, list] of readings) this.read.set(leg, counting(list, context.fates)!);
  }

  /** The powers that were read, each with what the plan says there. */
  corrected(): PowerReading[] {
    for (const leg of this.read.keys()) this.at(leg);
    return [...this.corrections.values()];
  }

  /** Whether light was read at the end of a leg, as a power. */
  isRead(leg: Leg): boolean {
    return this.read.has(leg) && (this.context.graph.value(this.at(leg)) ?? 0) > 0;
  }

  /** Power that arrives at the end of a leg. */
  at(leg: Leg): Cell {
    // A long way is walked from its start, so that it costs no depth of calls.
    const way: Leg[] = [];
    for (let l: Leg | undefined = leg; l && !this.cells.has(l) && way.length <= this.context.setup.beams.size + MOST_LEGS; l = this.before(l)) way.push(l);
    for (const l of way.reverse()) if (!this.cells.has(l)) this.cells.set(l, this.make(l));
    return this.cells.get(leg)!;
  }

  /** Power that an arm brings: a reference to the plate, an object beam to what it lights, be that a screen that lights the object. */
  ofArm(arm: Arm): Cell {
    const name = `${arm.plate.id}.${arm.name}.power`;
    const known = this.arms.get(name);
    if (known) return known;
    const last = arm.path[beamLegs(arm) - 1];
    const words = `power of ${arm.name} on ${(last?.target ?? arm.plate).id}`;
    const cell = last ? this.context.graph.derive(name, SAME, [this.at(last)], POWER, words) : this.missing(name, words, 'value-missing', `${arm.name} has no legs`);
    this.arms.set(name, cell);
    return cell;
  }
  private readonly arms = new Map<string, Cell>();

  /** Power that an arm brings for a watt that leaves a splitter towards it: by the plan, whatever the splitter shares out. */
  behindSplitter(arm: Arm, splitter: Thing): Cell {
    const { graph } = this.context;
    const start = arm.path.findIndex(l => l.target === splitter) + 1;
    const end = beamLegs(arm) - 1;
    let cell = graph.find('a watt') ?? graph.input('a watt', { value: 1, dim: POWER }, 'computed', 'a watt that leaves the splitter');
    for (let i = start; i < end; i++) {
      const [leg, next] = [arm.path[i]!, arm.path[i + 1]!];
      if (leg.target) cell = this.behind(leg.target, next.n === 1 ? next.beam.port : leg.port, cell, `${next.id}.power for a watt behind ${splitter.id}`, `power of ${next.beam.id} at ${next.to || '?'} for a watt behind ${splitter.id}`, next.beam, leg);
    }
    return cell;
  }

  /** Power that arms bring together. */
  ofArms(arms: readonly Arm[], plate: Thing, role: Arm['role']): Cell {
    const [one] = arms;
    if (arms.length === 1) return this.ofArm(one!);
    return this.context.graph.derive(`${plate.id}.${role}.power`, weighted('sum of powers', 'sum of the beams', arms.map(() => 1)), arms.map(a => this.ofArm(a)), POWER, `power of all ${role} beams of ${plate.id}`);
  }

  /** The power of that name, when it is one: `raw.1.power`, `P1.reference.power`. */
  named(name: string): Cell | undefined {
    if (!name.endsWith('.power')) return undefined;
    const id = name.slice(0, -'.power'.length);
    const dot = id.lastIndexOf('.');
    const leg = this.context.setup.beams.get(id.slice(0, dot))?.legs.find(l => l.id === id);
    if (leg) return this.at(leg);
    const arm = this.context.arms.arms.find(a => `${a.plate.id}.${a.name}` === id);
    return arm && this.ofArm(arm);
  }

  /** The leg from which its light comes; undefined behind a laser, and where nothing leads there. */
  before(leg: Leg): Leg | undefined {
    return leg.n > 1 ? leg.beam.legs[leg.n - 2] : leg.beam.from && leg.beam.from.kind.light !== 'source' ? this.arriving.get(leg.beam.from) : undefined;
  }

  private make(leg: Leg): Cell {
    const { graph } = this.context;
    const reading = this.read.get(leg);
    const name = `${leg.id}.power`;
    const words = `power of ${leg.beam.id} at ${leg.to || '?'}`;
    const plan = this.plan(leg, reading ? `${leg.id}.planned power` : name, words);
    const read = reading && leg.target && this.meters.power(reading, leg.target);
    if (reading && read?.missing) this.context.fates.set(reading, { kind: 'useless', why: read.missing.why });
    if (!read || read.missing) return reading ? graph.derive(name, SAME, [plan], POWER, words) : plan;
    this.corrections.set(leg, { leg, reading, read, planned: plan });
    const cell = this.context.factors.correct(name, words, plan, read, { ...(read.unit ? { unit: read.unit } : {}), at: reading.at });
    this.context.fates.set(reading, { kind: 'counts', of: cell, says: read, ...(plan.missing ? {} : { planned: plan }) });
    return cell;
  }

  private plan(leg: Leg, name: string, words: string): Cell {
    const { values } = this.context;
    const from = leg.n > 1 ? leg.beam.legs[leg.n - 2]!.target : leg.beam.from;
    if (!from) return this.missing(name, words, 'unknown-name', `${leg.beam.id} does not start anywhere`, leg.at);
    if (from.kind.light === 'source') return this.wrap(name, words, values.fact(from, 'power') ?? this.missing(`${from.id}.power`, `power of ${from.id}`, 'value-missing', `the power of ${from.id} is not written`, from.at));
    const before = this.before(leg);
    const arrives = before && this.cells.get(before);
    if (!arrives) return this.missing(name, words, 'arm-broken', `no light arrives at ${from.id}`, leg.at);
    const port = leg.n > 1 ? leg.beam.legs[leg.n - 2]!.port : leg.beam.port;
    return this.behind(from, port, arrives, name, words, leg.beam, before);
  }

  /** Power behind a thing. */
  private behind(thing: Thing, port: string | undefined, before: Cell, name: string, words: string, beam: Beam, arriving: Leg): Cell {
    const { values, graph } = this.context;
    const fact = (phrase: string, what: string): Cell => values.fact(thing, phrase) ?? this.missing(`${thing.id}.${phrase}`, `${phrase} of ${thing.id}`, 'value-missing', `${what} is not written`, thing.at);
    const loss = (): Cell => fact('loss', `the loss of ${thing.id}`);
    switch (thing.kind.word) {
      case 'splitter': {
        if (port !== 'reflected' && port !== 'through') return this.missing(name, words, 'port-missing', `which way the light leaves ${thing.id} is not written`, beam.at);
        return graph.derive(name, port === 'reflected' ? REFLECTED : THROUGH, [before, this.wheels.of(thing).reflects, loss()], POWER, words);
      }
      case 'mirror': case 'lens': case 'collimator': case 'half-wave plate': return graph.derive(name, BEHIND, [before, loss()], POWER, words);
      // A loss that is written was metered with the pinhole in its place; the one that is assumed is that of a pinhole which fits.
      case 'spreader': { const share = thing.facts.has('loss') ? undefined : pinholeShare(thing, arriving, values, this.context.beams); return graph.derive(name, share ? BEHIND_PINHOLE : BEHIND, [before, loss(), ...(share ? [share] : [])], POWER, words); }
      case 'polarizer': { const share = this.context.polarization.polarizerShare(arriving); if (share) return graph.derive(name, BEHIND_POLARIZER, [before, share, loss()], POWER, words); break; }
      case 'attenuator': return graph.derive(name, BEHIND_DENSITY, [before, fact('density', `the density of ${thing.id}`)], POWER, words);
      case 'shutter': return this.wrap(name, words, before);
      case 'slit': { const share = this.maskShare(thing, arriving); if (share) return graph.derive(name, BEHIND_SLIT, [before, share], POWER, words); break; }
      case 'hologram': if (port === 'diffracted') return graph.derive(name, DIFFRACTED, [before, fact('efficiency', `the efficiency of ${thing.id}`)], POWER, words);
    }
    return this.missing(name, words, 'not-computed-yet', UNTOLD[thing.kind.light] !== undefined && thing.kind.word !== 'polarizer' ? UNTOLD[thing.kind.light]!(thing.id) : `how much ${thing.id} lets through depends on the light that meets it: read the power behind it`, thing.at);
  }

  /** Share of a beam that passes the slit before a hologram, and falls on that. Undefined where the slit masks no hologram, or sizes are not written. */
  private maskShare(slit: Thing, onto: Leg): Cell | undefined {
    const { graph, values, beams, places, arms } = this.context;
    const masked = onto.beam.legs[onto.n]?.target;
    const arm = arms.arms.find(a => a.object === masked && maskOf(a, values)?.onto === onto);
    const open = slit.facts.has('width') && arm ? openSides(arm, values) : undefined;
    const lit = arm && ontoObject(arm);
    if (!open || !lit) return undefined;
    const name = `${slit.id}.lets through`;
    return graph.find(name) ?? graph.derive(name, landingShare('rectangular'), [...beamNumbers(beams.at(onto)), replayAngle(arm.object!, lit, places, values), ...open], NUMBER, `share of ${onto.beam.id} that passes ${slit.id}`, { unit: PERCENT });
  }

  private wrap(name: string, words: string, cell: Cell): Cell {
    return this.context.graph.derive(name, SAME, [cell], POWER, words, cell.unit ? { unit: cell.unit } : {});
  }

  private missing(name: string, words: string, code: string, why: string, at?: Missing['at']): Cell {
    return this.context.values.missing(name, POWER, words, { code, why, ...(at ? { at } : {}) });
  }
}

/** More legs in a row than any path may have. */
const MOST_LEGS = 20_000;

const UNTOLD: Readonly<Record<string, (id: string) => string>> = {
  scatters: id => `${id} scatters the light: what of it reaches the next thing is no power of a beam, and is metered there`,
  recorded: id => `how much of the light goes on behind ${id} is not known: read the power there`,
  turns: id => `${id} scatters the light: what of it reaches the next thing is no power of a beam, and is metered there`,
};
