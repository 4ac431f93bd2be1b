/** Which way light takes through the things of a setup: from where it comes to a thing, and what it meets behind it. No figures. */
import type { Leg, Setup, Thing } from '../../model/model.ts';

/** Where a leg starts. */
export const legStart = (leg: Leg): Thing | undefined => (leg.n === 1 ? leg.beam.from : leg.beam.legs[leg.n - 2]!.target);

/** Light that meets a thing and goes on. */
export interface Passage {
  readonly arriving: Leg;
  readonly leaving: Leg;
  /** the port at which it leaves a splitter or a hologram, or that it goes on behind a plate */
  readonly port: string | undefined;
}

/** Made when somebody asks: most pages have lengths on their legs. */
export class LightWays {
  private index: { readonly to: Map<string, Leg[]>; readonly from: Map<string, Leg[]> } | undefined;

  constructor(private readonly setup: Setup) {}

  /** Legs that lead to a thing, in the order of the text. */
  to(thing: Thing): readonly Leg[] {
    return this.legs().to.get(thing.id) ?? [];
  }

  /** Legs that start at a thing. */
  from(thing: Thing): readonly Leg[] {
    return this.legs().from.get(thing.id) ?? [];
  }

  /** The leg on which the light of a leg has come to its start: undefined behind a laser, or where nothing leads there. */
  before(leg: Leg): Leg | undefined {
    if (leg.n > 1) return leg.beam.legs[leg.n - 2];
    return leg.beam.from && this.to(leg.beam.from).find(l => l.beam !== leg.beam);
  }

  /** Light that meets a thing and goes on, each way once. */
  through(thing: Thing): Passage[] {
    return this.from(thing).flatMap(leaving => {
      const arriving = this.before(leaving);
      return arriving ? [{ arriving, leaving, port: leaving.n === 1 ? leaving.beam.port : arriving.port }] : [];
    });
  }

  /** The leg on which light comes to a thing from which it then goes to another: where it goes there directly, that very light, else what is written first. */
  arrivingFor(thing: Thing, next: Thing): Leg | undefined {
    const on = this.from(thing).find(l => l.target?.id === next.id);
    return (on && this.before(on)) ?? this.to(thing).find(l => legStart(l)?.id !== next.id);
  }

  /** What the beam of a laser meets while it goes straight on, the last of it included. */
  straightFrom(laser: Thing): Thing[] {
    const [first] = this.from(laser);
    const met = (first?.beam.legs ?? []).map(l => l.target);
    const end = met.findIndex(t => t?.kind.light !== 'passes');
    return met.slice(0, end < 0 ? met.length : end + 1).flatMap(t => t ?? []);
  }

  /** What the light of a leg comes from in a straight line: the start of the leg, or, where that is a plate that it went through, what is before it. */
  source(leg: Leg): Thing | undefined {
    let at = leg;
    for (let n = 0; n < MOST; n++) {
      const start = legStart(at);
      const before = this.before(at);
      if (start?.kind.light !== 'recorded' || !before) return start;
      at = before;
    }
    return undefined;
  }

  private legs(): { readonly to: Map<string, Leg[]>; readonly from: Map<string, Leg[]> } {
    if (this.index) return this.index;
    const [to, from] = [new Map<string, Leg[]>(), new Map<string, Leg[]>()];
    const put = (map: Map<string, Leg[]>, thing: Thing | undefined, leg: Leg): void => {
      if (!thing) return;
      const known = map.get(thing.id);
      if (known) known.push(leg);
      else map.set(thing.id, [leg]);
    };
    for (const beam of this.setup.beams.values()) for (const leg of beam.legs) { put(to, leg.target, leg); put(from, legStart(leg), leg); }
    return this.index = { to, from };
  }
}

/** A ring of plates is a ring of beams, which has its own finding. */
const MOST = 100;
