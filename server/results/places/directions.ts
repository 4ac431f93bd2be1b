/** Directions as cells: of the light that comes to a thing, and of what a thing faces. Made when first asked for. */
import type { Leg, Thing } from '../../model/model.ts';
import { ANGLE, NUMBER } from '../../model/units.ts';
import type { Cell, Missing, Rule } from '../graph.ts';
import type { LightWays, Passage } from './light-ways.ts';
import type { PlaceValues, Position } from './place-values.ts';
import { bisecting, facedAt, headed, towards, turned, type Axis } from '../rules/geometry.ts';

/** A vector of length 1, as three cells. */
export type Direction = readonly [Cell, Cell, Cell];

/** How it is known in which direction light comes to a thing. */
export type Arrival =
  /** along a straight line between two things that stand somewhere */
  | { readonly kind: 'between'; readonly from: Thing; readonly to: Thing }
  /** the way in which the thing was placed behind another */
  | { readonly kind: 'placed'; readonly thing: Thing }
  /** a laser's own heading */
  | { readonly kind: 'written'; readonly thing: Thing }
  | { readonly kind: 'unknown'; readonly why: string };

/** Where things stand, as directions need it. */
export interface Ground {
  of(thing: Thing): Position | undefined;
  isPlaced(thing: Thing): boolean;
  named(name: string): Thing | undefined;
  own(thing: Thing): Thing;
  goingTo(thing: Thing): Direction | undefined;
  angles(thing: Thing): WrittenAngles;
}

/** The angles that a thing's direction is written with. */
export interface WrittenAngles { readonly heading: Cell | undefined; readonly tilt: Cell | undefined }

const AXES: readonly Axis[] = [0, 1, 2];

export class Directions {
  private readonly lines = new Map<string, Direction | undefined>();
  private readonly facings = new Map<Thing, Direction | undefined>();

  constructor(private readonly places: Ground, private readonly ways: LightWays, private readonly read: PlaceValues) {}

  /** How the direction is known in which light comes to `base`, of which some goes on to `next`. Looks at the text only, so that rings are found before anything is computed. */
  arrival(base: Thing, next: Thing): Arrival {
    const { places, ways } = this;
    if (base.kind.light === 'source') {
      if (base.placement?.heading || base.placement?.facing) return { kind: 'written', thing: base };
      const first = ways.straightFrom(base).find(t => t.id !== next.id && places.own(t).placement?.at);
      return first ? { kind: 'between', from: base, to: places.own(first) } : { kind: 'unknown', why: `${base.id} has no heading` };
    }
    const leg = ways.arrivingFor(base, next);
    const from = leg && ways.source(leg);
    const behind = base.placement?.beyond;
    if (behind && (!from || from.id === behind.from.name || !places.isPlaced(from))) return { kind: 'placed', thing: base };
    if (from && from.id !== next.id && places.isPlaced(from)) return { kind: 'between', from: places.own(from), to: base };
    const on = base.placement?.on;
    const [a, b] = on ? [places.named(on.from.name), places.named(on.to.name)] : [];
    if (a && b) return { kind: 'between', from: a, to: b };
    return { kind: 'unknown', why: from ? `it is not written where ${from.id} stands, from which light comes to ${base.id}` : `no beam leads to ${base.id}` };
  }

  /** Things that must stand somewhere before the direction of an arrival is known. */
  needs(a: Arrival): readonly Thing[] {
    switch (a.kind) {
      case 'between': return [a.from, a.to];
      case 'placed': return [a.thing];
      case 'written': {
        const { facing } = a.thing.placement!;
        const faced = facing && facing !== 'beam' ? this.places.named(facing.name) : undefined;
        return faced ? [a.thing, faced] : [a.thing];
      }
      case 'unknown': return [];
    }
  }

  /** Direction of light that comes in that way; undefined where it has a problem that is reported, or one of both ends stands nowhere. */
  along(a: Exclude<Arrival, { kind: 'unknown' }>): Direction | undefined {
    switch (a.kind) {
      case 'between': return this.between(a.from, a.to);
      case 'placed': return this.places.goingTo(a.thing);
      case 'written': return this.facing(a.thing);
    }
  }

  /** Direction from one thing to another; undefined where one of them stands nowhere. */
  between(from: Thing, to: Thing): Direction | undefined {
    const key = `${from.id} → ${to.id}`;
    if (this.lines.has(key)) return this.lines.get(key);
    const [a, b] = [this.places.of(from), this.places.of(to)];
    const found = a && b && (this.together(a, b) ? this.missing(key, { code: 'place-unknown', why: `${from.id} and ${to.id} stand at one place` }) : this.derive(key, `direction ${key}`, towards, [...a, ...b]));
    this.lines.set(key, found);
    return found;
  }

  /** Direction of the light of a leg as it comes to its target; undefined where that is not known. */
  of(leg: Leg): Direction | undefined {
    const { target } = leg;
    const from = this.ways.source(leg);
    return target && from ? this.between(this.places.own(from), this.places.own(target)) : undefined;
  }

  /**
   * Where a thing faces: the heading of a laser, the normal of anything else. As written; a mirror without a written direction
   * stands so that its light goes where its beam says. Undefined where neither is known.
   */
  facing(thing: Thing): Direction | undefined {
    if (this.facings.has(thing)) return this.facings.get(thing);
    // A thing that faces the beam that a heading of its own decides is a ring of its own making.
    this.facings.set(thing, undefined);
    const found = this.written(thing) ?? this.mirrored(thing);
    this.facings.set(thing, found);
    return found;
  }

  /** The angles that a thing's direction is written with; what is wrong with them is reported. */
  readAngles(thing: Thing): WrittenAngles {
    const { heading, tilted } = thing.placement!;
    return {
      heading: heading && this.read.value(heading, thing, 'heading', `heading of ${thing.id}`, ANGLE),
      tilt: tilted && this.read.value(tilted, thing, 'tilt', `tilt of ${thing.id}`, ANGLE),
    };
  }

  private written(thing: Thing): Direction | undefined {
    const p = thing.placement;
    if (!p?.heading && !p?.facing) return undefined;
    const { heading, tilt } = this.places.angles(thing);
    if (p.tilted && !tilt) return undefined;
    const name = `${thing.id}.facing`;
    if (p.heading) return heading && this.derive(name, `direction of ${thing.id}`, headed, tilt ? [heading, tilt] : [heading]);
    if (p.facing === 'beam') {
      // A plate is turned to its reference, whichever of its beams stands first.
      const legs = this.ways.to(thing);
      const leg = legs.find(l => !['scatters', 'diffracts'].includes(this.ways.source(l)?.kind.light ?? '')) ?? legs[0];
      const from = leg && this.ways.source(leg);
      const [own, source] = [tilt && this.places.of(thing), tilt && from && this.places.of(this.places.own(from))];
      if (tilt) return own && source && this.derive(name, `direction of ${thing.id}`, facedAt, [...own, ...source, tilt]);
      const light = leg && this.of(leg);
      return light && this.derive(name, `direction of ${thing.id}`, axis => turned('back', axis), light);
    }
    const faced = p.facing && this.places.named(p.facing.name);
    if (!faced || faced === thing) return undefined;
    const [a, b] = [this.places.of(thing), this.places.of(faced)];
    if (!a || !b) return undefined;
    return tilt && !this.together(a, b) ? this.derive(name, `direction of ${thing.id}`, facedAt, [...a, ...b, tilt]) : this.between(thing, faced);
  }

  private mirrored(thing: Thing): Direction | undefined {
    const [light] = this.turns(thing);
    return light && this.halfway(`${thing.id}.facing`, `direction of ${thing.id}`, light.arriving, light.leaving);
  }

  /** Where a mirror faces that turns light from the one direction into the other. */
  halfway(name: string, words: string, arriving: Direction, leaving: Direction): Direction {
    return this.derive(name, words, bisecting, [...arriving, ...leaving]);
  }

  /** Light that meets a thing and goes on, each way once. */
  passages(thing: Thing): Passage[] { return this.ways.through(thing); }
  /** What the light of a leg comes from in a straight line. */
  startOf(leg: Leg): Thing | undefined { return this.ways.source(leg); }

  /** Light that a mirror, or a splitter by reflection, turns: its direction before and behind. */
  turns(thing: Thing): { readonly arriving: Direction; readonly leaving: Direction; readonly passage: Passage }[] {
    const { light } = thing.kind;
    if (light !== 'turns' && light !== 'shares') return [];
    return this.ways.through(thing).flatMap(p => {
      if (light === 'shares' && p.port !== 'reflected') return [];
      const [arriving, leaving] = [this.of(p.arriving), this.of(p.leaving)];
      return arriving && leaving ? [{ arriving, leaving, passage: p }] : [];
    });
  }

  /** Three cells of one rule. */
  derive(name: string, words: string, rule: (axis: Axis) => Rule, inputs: readonly Cell[]): Direction {
    const [x, y, z] = AXES.map(axis => this.read.values.graph.derive(`${name} ${'xyz'[axis]!}`, rule(axis), inputs, NUMBER, `${words}, ${'xyz'[axis]!}`));
    return [x!, y!, z!];
  }

  /** A direction that is not known, with the reason. */
  missing(name: string, why: Missing): Direction {
    const [x, y, z] = AXES.map(axis => this.read.values.missing(`${name} ${'xyz'[axis]!}`, NUMBER, `direction ${name}`, why));
    return [x!, y!, z!];
  }

  private together(a: Position, b: Position): boolean {
    const { graph } = this.read.values;
    return AXES.every(i => a[i].missing === undefined && b[i].missing === undefined && Math.abs(graph.value(a[i])! - graph.value(b[i])!) < 1e-9);
  }
}
