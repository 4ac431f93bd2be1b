/** Where things stand, as cells, and which way they face. Made when first asked for. */
import { TURNS } from '../../model/bind/placement.ts';
import type { Place, Setup, Thing, Written } from '../../model/model.ts';
import { nearest } from '../../model/scope.ts';
import { ANGLE, LENGTH } from '../../model/units.ts';
import { Directions, type Arrival, type Direction, type Ground, type WrittenAngles } from './directions.ts';
import type { Cell, Missing, Rule } from '../graph.ts';
import { LightWays } from './light-ways.ts';
import { PlaceValues, type Position } from './place-values.ts';
import { along, BEYOND, turned, turnedBy, type Axis } from '../rules/geometry.ts';
import { DISTANCE } from '../rules/lengths.ts';
import type { Values } from '../values.ts';

export type { Position } from './place-values.ts';

const AXES: readonly Axis[] = [0, 1, 2];

export class Places implements Ground {
  readonly ways: LightWays;
  readonly directions: Directions;
  private readonly read: PlaceValues;
  private readonly setup: Setup;
  private readonly positions = new Map<Thing, Position | undefined>();
  /** for things that stand beyond others: the direction in which light goes to them */
  private readonly going = new Map<Thing, Direction>();
  /** reasons that were reported */
  private readonly told = new Set<string>();
  private readonly written = new Map<Thing, WrittenAngles>();

  /** Nothing stands anywhere: most pages have lengths on their legs. */
  readonly none: boolean;

  constructor(private readonly values: Values) {
    this.setup = values.setup;
    this.none = true;
    for (const thing of this.setup.things.values()) if (thing.placement) { this.none = false; break; }
    this.read = new PlaceValues(values);
    this.ways = new LightWays(values.setup);
    this.directions = new Directions(this, this.ways, this.read);
  }

  /** Reads all that a thing's placement says, so that what is wrong with it is reported whether or not a result needs it. */
  check(thing: Thing): void {
    const p = thing.placement;
    if (!p) return;
    this.of(thing);
    if (p.heading || p.tilted) this.angles(thing);
    if (p.tilted && !p.heading && !p.facing) this.report('placement-incomplete', p.tilted.at, thing, { word: 'tilted', lacks: 'says how far it is tipped, and not which way it faces', example: 'heading 90° tilted 5°' });
    if (p.facing && p.facing !== 'beam' && p.facing.name === thing.id) this.report('impossible-value', p.facing.at, thing, { why: 'a thing cannot face itself' });
  }

  /** Where a thing stands; undefined where the text doesn't say, or says it so that it cannot be understood, which is reported. */
  of(thing: Thing): Position | undefined {
    // Most things have no place, and need no order to find that out in.
    const p = this.own(thing).placement;
    if (!p || this.positions.has(thing)) return this.positions.get(thing);
    // What is placed by itself waits for nothing else.
    if (thing.placement?.at && !thing.placement.on && !thing.placement.beyond) {
      const found = this.find(thing);
      this.positions.set(thing, found);
      return found;
    }
    for (const t of this.inOrder(thing)) if (!this.positions.has(t)) this.positions.set(t, this.find(t));
    return this.positions.get(thing);
  }

  /** True where the text says where it stands, understood or not. */
  isPlaced(thing: Thing): boolean {
    const p = this.own(thing).placement;
    return p?.at !== undefined || p?.on !== undefined || p?.beyond !== undefined || p?.broken === true;
  }

  named(name: string): Thing | undefined {
    return this.setup.things.get(name);
  }

  /** The thing of that name in this setup: a leg of a setup that a variant changes may still lead to the one before the change. */
  own(thing: Thing): Thing {
    return this.setup.things.get(thing.id) ?? thing;
  }

  /** The direction in which light goes to a thing that stands beyond another. */
  goingTo(thing: Thing): Direction | undefined {
    this.of(thing);
    return this.going.get(thing);
  }

  angles(thing: Thing): WrittenAngles {
    let known = this.written.get(thing);
    if (!known) this.written.set(thing, known = this.directions.readAngles(thing));
    return known;
  }

  private find(thing: Thing): Position | undefined {
    const p = thing.placement;
    if (p?.at) return this.read.point(p.at, thing);
    if (p?.on) return this.onLeg(thing);
    return p?.beyond ? this.beyond(thing) : undefined;
  }

  /** `on A -> B by d` */
  private onLeg(thing: Thing): Position | undefined {
    const { from, to, by } = thing.placement!.on!;
    const d = this.read.value(by, thing, 'by', `distance of ${thing.id} from ${from.name}`, LENGTH, 'not negative');
    const [a, b] = [this.named(from.name), this.named(to.name)];
    const [pa, pb] = [this.base(a, from, thing), this.base(b, to, thing)];
    if (!d || !pa || !pb) return undefined;
    const { graph } = this.values;
    const span = graph.derive(`${from.name} → ${to.name}`, DISTANCE, [...pa, ...pb], LENGTH, `distance of ${from.name} and ${to.name}`);
    if (!span.missing && !d.missing && graph.value(d)! > graph.value(span)!) {
      this.report('impossible-value', by.at, thing, { why: `the leg from ${from.name} to ${to.name} is only ${Math.round(graph.value(span)! * 1000)} mm long` });
      return undefined;
    }
    return this.cells(thing, along, [...pa, ...pb, d]);
  }

  /** `beyond A by d turning left` */
  private beyond(thing: Thing): Position | undefined {
    const { from, by, turning } = thing.placement!.beyond!;
    const d = this.read.value(by, thing, 'by', `distance of ${thing.id} from ${from.name}`, LENGTH, 'positive');
    const base = this.named(from.name);
    const pa = this.base(base, from, thing);
    const angle = turning && typeof turning !== 'string' ? this.angle(turning, thing) : undefined;
    if (!d || !pa || !base || (turning && typeof turning !== 'string' && !angle)) return undefined;
    const arrival = this.directions.arrival(base, thing);
    const light = arrival.kind === 'unknown' ? this.unknown(thing, from.at, arrival.why) : this.directions.along(arrival);
    if (!light) return this.read.missing(thing, { code: 'unreadable', why: `the direction in which light comes to ${from.name} cannot be read`, at: from.at });
    // Both ends of the way are placed, and yet it has no direction: they stand at one place.
    if (arrival.kind === 'between' && light[0].missing && light[0].inputs.length === 0) return this.read.missing(thing, this.untold(thing, from.at, light[0].missing.why));
    const upright = typeof turning === 'string' && turning !== 'back' ? this.isUpright(light) : angle !== undefined && this.isUpright(light);
    const name = `${from.name} → ${thing.id}`;
    const words = `direction ${name}`;
    const way = upright ? this.unknown(thing, from.at, `the light that comes to ${from.name} goes straight up or down, so that left, right, up and down mean nothing there`)
      : angle ? this.directions.derive(name, words, turnedBy, [...light, angle])
        : typeof turning === 'string' ? this.directions.derive(name, words, axis => turned(turning, axis), light) : light;
    this.going.set(thing, way);
    const [x, y, z] = AXES.map(i => this.values.graph.derive(`${thing.id}.${'xyz'[i]!}`, BEYOND, [pa[i], way[i], d], LENGTH, `${'xyz'[i]!} of ${thing.id}`));
    return [x!, y!, z!];
  }

  /** `turning 30°`; a word that turns nothing is not looked up as the name of a value. */
  private angle(turning: Written, thing: Thing): Cell | undefined {
    const word = turning.expr.kind === 'phrase' && turning.expr.words.length === 1 ? turning.expr.words[0]!.text : undefined;
    if (word !== undefined && !word.includes('.') && !this.setup.lets.has(word)) {
      const suggestion = nearest(word, [...TURNS, ...this.setup.lets.keys()]);
      this.report('wrong-value', turning.at, thing, { found: `“${word}”`, wanted: 'left, right, up, down, back, or an angle such as 30°', ...(suggestion ? { suggestion } : {}) });
      return undefined;
    }
    return this.read.value(turning, thing, 'turning', `angle by which the light is turned to ${thing.id}`, ANGLE);
  }

  /** Where a thing stands that another is placed by; that it stands nowhere is said where it is named. */
  private base(base: Thing | undefined, named: { readonly name: string; readonly at: Place }, thing: Thing): Position | undefined {
    if (!base) return undefined;
    const found = this.of(base);
    if (found || this.isPlaced(base) || this.unfinished()) return found;
    return this.read.missing(thing, this.untold(thing, named.at, `${base.id} has no place itself`));
  }

  /** A direction that cannot be told, which is reported unless a line that is not finished may tell it. */
  private unknown(thing: Thing, at: Place, why: string): Direction {
    return this.directions.missing(`to ${thing.id}`, this.untold(thing, at, why));
  }

  /** Why a place cannot be told, reported once: several things may stand beyond the same one. */
  private untold(thing: Thing, at: Place, why: string): Missing {
    if (!this.unfinished() && !this.told.has(why)) this.report('place-unknown', at, thing, { thing: thing.id, why });
    this.told.add(why);
    return { code: 'place-unknown', why, at };
  }

  /** A line that could not be read to its end may tell where something stands, which way it faces, or where light goes. */
  private unfinished(): boolean {
    return this.setup.unsure || [...this.setup.beams.values()].some(b => !b.from || b.legs.some(l => !l.target)) || [...this.setup.things.values()].some(t => t.node.line.issue);
  }

  private isUpright(light: Direction): boolean {
    const { graph } = this.values;
    return light.every(c => !c.missing) && Math.hypot(graph.value(light[0])!, graph.value(light[1])!) < 1e-6;
  }

  private cells(thing: Thing, rule: (axis: Axis) => Rule, inputs: readonly Cell[]): Position {
    const [x, y, z] = AXES.map(i => this.values.graph.derive(`${thing.id}.${'xyz'[i]!}`, rule(i), inputs, LENGTH, `${'xyz'[i]!} of ${thing.id}`));
    return [x!, y!, z!];
  }

  private report(code: string, at: Place, thing: Thing, data: Parameters<Values['report']>[3]): void {
    this.values.report(code, at, thing.id, data);
  }

  /**
   * A thing behind all those that it is placed by. Walked without recursion, since a page may place thousands of things each behind the
   * next. Things that are placed by each other in a ring are reported, and have no place.
   */
  private inOrder(thing: Thing): Thing[] {
    const done: Thing[] = [];
    const closed = new Set<Thing>();
    const path: { readonly thing: Thing; readonly needs: Thing[] }[] = [{ thing, needs: this.needs(thing) }];
    for (let top = path[0]; top; top = path[path.length - 1]) {
      const next = top.needs.pop();
      if (!next) {
        path.pop();
        closed.add(top.thing);
        done.push(top.thing);
      } else if (!this.positions.has(next) && !closed.has(next)) {
        const start = path.findIndex(p => p.thing === next);
        if (start < 0) path.push({ thing: next, needs: this.needs(next) });
        else this.ring(path.slice(start).map(p => p.thing));
      }
    }
    return done;
  }

  private ring(members: readonly Thing[]): void {
    const first = members.reduce((a, b) => (b.node.at < a.node.at ? b : a));
    const start = members.indexOf(first);
    const ids = [...members.slice(start), ...members.slice(0, start), first].map(t => t.id);
    const from = first.placement?.beyond?.from.name;
    const ring = members.length === 1 && from !== undefined ? [first.id, ...(from === first.id ? [] : [from]), first.id] : ids;
    this.report('place-ring', first.at, first, { ring: ring.join(' → ') });
    for (const t of members) this.positions.set(t, undefined);
  }

  private needs(thing: Thing): Thing[] {
    const { on, beyond } = thing.placement ?? {};
    const named = (on ? [on.from, on.to] : beyond ? [beyond.from] : []).flatMap(n => this.named(n.name) ?? []);
    const base = beyond && named[0];
    if (!base) return named;
    const arrival: Arrival = this.directions.arrival(base, thing);
    return [...this.directions.needs(arrival), ...named];
  }
}
