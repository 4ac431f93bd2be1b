/**
 * The table with all that stands on it: what is in whose way, what faces catch, where light goes that nobody uses. Everything is looked at in plain numbers, and only of what
 * stands out cells are made. Nothing is looked at where nothing has a place.
 */
import { beamLegs } from '../../model/arms.ts';
import type { Leg, Thing } from '../../model/model.ts';
import { ANGLE, LENGTH, NUMBER, parseUnit } from '../../model/units.ts';
import { tableSize } from '../../model/table.ts';
import type { Cell } from '../graph.ts';
import { beyondTable, MOUNT_ANGLE, MOUNT_TILT, OFFSET, passing } from '../rules/table.ts';
import { blockedLegs, type Blocked, type Give } from './blocked.ts';
import type { TableContext } from './context.ts';
import { caught, isTooSmall, narrowFaces, type Caught } from './faces.ts';
import { flashesOf, type Flash } from './flashes.ts';
import { litFaces } from './lit.ts';
import { overlapsOf, type Overlap } from './overlaps.ts';
import { parallelFaces, type ParallelFace } from './parallel.ts';
import { pinholesOf, type Pinhole } from './pinholes.ts';
import { raysOf, type Ray } from './rays.ts';
import { SecondSpots } from './second-spots.ts';
import { spotWays, type TravellingSpot } from './spot-ways.ts';
import { standings, type Standing } from './standing.ts';
import { straightMirrors, turnedRound, type Straight, type TurnedRound } from './turned.ts';
import { spills, unusedOutputs, type Spill, type Unused } from './strays.ts';

/** A thing that stands beside the table, and how far. */
export interface OffTable {
  readonly thing: Thing;
  readonly by: number;
}

/** What stands out on a table. */
export interface Look {
  readonly things: ReadonlyMap<string, Standing>;
  readonly rays: ReadonlyMap<Leg, Ray>;
  readonly blocked: readonly (Blocked & { readonly distance: Cell })[];
  readonly overlaps: readonly Overlap[];
  readonly straight: readonly Straight[];
  readonly turnedRound: readonly TurnedRound[];
  readonly off: readonly OffTable[];
  readonly faces: readonly Caught[];
  readonly pinholes: readonly Pinhole[];
  readonly unused: readonly Unused[];
  readonly spills: readonly Spill[];
  readonly parallel: readonly ParallelFace[];
  readonly flashes: readonly Flash[];
  readonly spots: readonly TravellingSpot[];
  /** more stands on the table than is looked at: how many things */
  readonly tooFull?: number;
}

/** Legs times things: more than a few hundred of each stand on no table. */
export const MOST_STANDING = 600;
const MM = parseUnit('mm')!;
const NOTHING: Look = { things: new Map(), rays: new Map(), blocked: [], overlaps: [], straight: [], turnedRound: [], off: [], faces: [], pinholes: [], unused: [], spills: [], parallel: [], flashes: [], spots: [] };

export class Table {
  private found: Look | undefined;
  private readonly context: TableContext;
  /** second spots of splitters, as results */
  readonly spots: SecondSpots;

  constructor(context: Omit<TableContext, 'squarely'>) {
    const { graph } = context;
    this.context = { ...context, squarely: () => graph.find('squarely') ?? graph.input('squarely', { value: 0, dim: ANGLE }, 'computed', 'light that comes squarely') };
    this.spots = new SecondSpots(this.context);
  }

  /** Width and depth of the table in m, where they are written. */
  get size(): readonly [number, number] | undefined { return tableSize(this.context.setup); }

  /** Makes all that checks look at. */
  make(): void { this.found ??= this.lookNow(); }
  /** What stands out; looked for once. */
  get look(): Look { return this.found ??= this.lookNow(); }

  /** `M1.mount angle`, `M1.mount tilt`, `object.3.clearance`, `object.3.distance from M1`, `raw.1.landing share`, `reference.2.reach`, `R1.pinhole to choose`, `S1.second spot`. */
  ask(name: string): Cell | undefined {
    const spot = this.spots.ask(name);
    if (spot) return spot;
    const [, subject, what, from] = /^(.*)\.(mount angle|mount tilt|clearance|landing share|reach|pinhole fit|pinhole to choose|distance from (.+))$/.exec(name) ?? [];
    if (!subject) return undefined;
    if (what === 'mount angle') return this.mountAngle(subject);
    if (what === 'mount tilt') return this.mountTilt(subject);
    if (what!.startsWith('pinhole')) { const p = this.look.pinholes.find(x => x.thing.id === subject); return what === 'pinhole fit' ? p?.fit : p?.choose; }
    const ray = [...this.look.rays.values()].find(r => r.leg.id === subject);
    if (!ray) return undefined;
    const passed = from === undefined ? undefined : this.look.things.get(from);
    if (from !== undefined) return passed && this.distance(ray, passed);
    if (what === 'clearance') return this.clearanceOf(ray);
    const arm = this.context.arms.arms.find(a => a.path.slice(0, beamLegs(a)).includes(ray.leg));
    const c = arm && caught(ray, arm, beamLegs(arm), this.context);
    return c && (c.kind === 'share') === (what === 'landing share') ? c.cell : undefined;
  }

  /** Heading of the normal of a thing, as its mount is set. */
  mountAngle(id: string): Cell | undefined {
    const { graph, places } = this.context;
    const name = `${id}.mount angle`;
    const thing = places.named(id);
    const facing = thing && places.directions.facing(thing);
    return graph.find(name) ?? (facing && graph.derive(name, MOUNT_ANGLE, facing, ANGLE, `heading of the normal of ${id}`));
  }

  /** How far that normal is tipped out of the level. */
  mountTilt(id: string): Cell | undefined {
    const { graph, places } = this.context;
    const name = `${id}.mount tilt`;
    const thing = places.named(id);
    const facing = thing && places.directions.facing(thing);
    return graph.find(name) ?? (facing && graph.derive(name, MOUNT_TILT, facing, ANGLE, `tilt of the normal of ${id}`));
  }

  /** Distance of a leg's axis from the thing that it passes nearest. */
  private clearanceOf(ray: Ray): Cell | undefined {
    let [least, nearest]: [number, Cell | undefined] = [Infinity, undefined];
    for (const s of this.look.things.values()) {
      if (s.thing.id === ray.start.id || s.thing.id === ray.end.id) continue;
      const cell = this.distance(ray, s);
      const d = this.context.graph.value(cell);
      if (d !== undefined && d < least) [least, nearest] = [d, cell];
    }
    const { graph } = this.context;
    return nearest && (graph.find(`${ray.leg.id}.clearance`) ?? graph.derive(`${ray.leg.id}.clearance`, SAME, [nearest], LENGTH, `distance of ${ray.leg.id} from the thing that it passes nearest`, { unit: MM }));
  }

  /** How far the axis of a leg passes from a thing, as a cell. */
  private distance(ray: Ray, s: Standing): Cell {
    const { graph, places } = this.context;
    const name = `${ray.leg.id}.distance from ${s.thing.id}`;
    const known = graph.find(name);
    if (known) return known;
    const place = (t: Thing): readonly Cell[] => places.of(places.own(t))!;
    const way = s.form.face === 'body' ? undefined : places.directions.facing(s.thing);
    const normal = s.normal();
    const facing = way ?? (normal ? normal.map((c, i) => graph.input(`${name} facing ${'xyz'[i]!}`, { value: c, dim: NUMBER }, 'computed', `direction of ${s.thing.id}`)) : []);
    return graph.derive(name, passing(s.form, normal !== undefined), [...place(ray.start), ...place(ray.end), ...place(s.thing), ...facing, ...this.wholeCells(s)], LENGTH, `distance of ${ray.leg.id} from ${s.thing.id}`, { unit: MM });
  }

  /** How unsure the places are by which light passes things; nothing where no place is written with its give. */
  private give(): Give {
    const { graph, places } = this.context;
    const place = (t: Thing): readonly Cell[] => places.of(places.own(t))!;
    const kept = new Map<Thing, number>();
    const loose = (t: Thing): number => {
      let known = kept.get(t);
      if (known === undefined) kept.set(t, known = place(t).some(c => isUnsure(c, seen)) ? 2 * Math.hypot(...place(t).map(c => graph.uncertainty(c))) : 0);
      return known;
    };
    const seen = new Map<Cell, boolean>();
    const offset = (ray: Ray, { thing }: Standing): Cell => {
      const name = `${ray.leg.id}.offset of ${thing.id}`;
      return graph.find(name) ?? graph.derive(name, OFFSET, [...place(ray.start), ...place(ray.end), ...place(thing)], LENGTH, `how far ${thing.id} stands off ${ray.leg.id}`, { unit: MM });
    };
    return {
      ofEnds: ray => loose(ray.start) + loose(ray.end),
      ofThing: s => loose(s.thing),
      of: (ray, s) => 2 * graph.uncertainty(offset(ray, s)),
    };
  }

  private wholeCells({ thing, whole, face }: Standing): Cell[] {
    const { graph } = this.context;
    const isBody = thing.kind.footprint!.face === 'body';
    return (['width', 'height', 'depth'] as const).map((what, i) => {
      const name = `${thing.id}.${isBody ? 'body' : 'mount'} ${what}`;
      return graph.find(name) ?? (isBody && face.by[0] ? graph.input(name, { value: whole[i]!, dim: LENGTH, unit: MM }, 'written', `${what} of ${thing.id}`, { at: face.by[0].at })
        : graph.input(name, { value: whole[i]!, dim: LENGTH, unit: MM, spread: { kind: 'factor', amount: 1.5 } }, 'assumed', `${what} of ${thing.id}${isBody ? '' : ' with its mount'}`, { reason: thing.kind.footprint!.why }));
    });
  }

  private lookNow(): Look {
    const { context } = this;
    const pinholes = pinholesOf(context);
    if (context.places.none) return { ...NOTHING, pinholes };
    const things = standings(context);
    const size = this.size;
    const off = size ? [...things.values()].flatMap(({ thing, at }): OffTable[] => {
      const by = beyondTable(at, ...size);
      return by > 1e-9 && thing.kind.footprint!.onTable && !isElsewhere(thing) ? [{ thing, by }] : [];
    }) : [];
    if (things.size > MOST_STANDING) return { ...NOTHING, things, off, pinholes, tooFull: things.size };
    const rays = raysOf(context);
    const overlaps = overlapsOf([...things.values()], t => 2 * Math.hypot(...(context.places.of(context.places.own(t)) ?? []).map(c => context.graph.uncertainty(c))), context);
    const overlap = (a: Thing, b: Thing): Overlap | undefined => overlaps.find(o => (o.one.id === a.id && o.other.id === b.id) || (o.one.id === b.id && o.other.id === a.id));
    // What stands where a leg begins or ends is in its way for certain, and one slip is one finding.
    const inOneAnother = ({ leg, thing }: Blocked): boolean => [rays.get(leg)!.start, rays.get(leg)!.end].some(end => { const o = overlap(thing, end); return o?.sure === true && o.gap < 0; });
    // Two things in one another are told before the shadow of the one on the other is.
    const inWay = blockedLegs(rays.values(), [...things.values()], litFaces(rays, things, context), this.give()).filter(b => !b.shaded || ![rays.get(b.leg)!.start, rays.get(b.leg)!.end].some(end => overlap(b.thing, end)));
    const told = new Set(inWay.flatMap(b => [rays.get(b.leg)!.start, rays.get(b.leg)!.end].flatMap(end => overlap(b.thing, end) ?? [])));
    const straight = straightMirrors(rays);
    const spilt = spills(rays, things, context);
    const isSpilt = (b: Blocked): boolean => spilt.some(s => s.ray.leg === b.leg && s.object.id === b.thing.id);
    // An object in the light for its plate shades it, and no card keeps that light off: the shadow is the finding, where it is decided.
    const blocked = inWay.filter(b => !inOneAnother(b) && !(b.shaded && b.undecided && isSpilt(b))).map(b => ({ ...b, distance: this.distance(rays.get(b.leg)!, things.get(b.thing.id)!) }));
    return {
      things, rays, off, pinholes, blocked, straight, overlaps: overlaps.filter(o => (o.sure && o.gap < 0) || !told.has(o)), turnedRound: turnedRound(rays, things, context), unused: unusedOutputs(things, context), spills: spilt.filter(s => !blocked.some(b => b.shaded && b.leg === s.ray.leg && b.thing.id === s.object.id)), parallel: parallelFaces(rays.values(), things, context), flashes: flashesOf(rays, things, size, context), spots: spotWays(this.spots, context),
      faces: narrowFaces(rays, context).filter(c => isTooSmall(c, context.graph) && !straight.some(s => s.mirror === c.thing)),
    };
  }
}

/** It says of itself that it stands elsewhere. */
const isElsewhere = (thing: Thing): boolean => ['stand', 'hand'].includes(textOf(thing, 'mounted'));
/** It rests on something that has a give. */
function isUnsure(cell: Cell, seen: Map<Cell, boolean>): boolean {
  let known = seen.get(cell);
  if (known === undefined) seen.set(cell, known = cell.spread !== undefined || cell.inputs.some(c => isUnsure(c, seen)));
  return known;
}
const textOf = (thing: Thing, phrase: string): string => { const v = thing.facts.get(phrase)?.value; return v?.kind === 'words' ? v.text : ''; };

const SAME = { name: 'nearest', formula: 'least of the distances', linear: true, compute: (x: readonly number[]) => x[0]!, partials: () => [1] };
