/**
 * How things stand beside what the beams need of them: where lasers point, where mirrors face, where light is to bend at what it goes straight through, how far
 * apart the ends of written legs stand. Made for those who ask, all of it at once: who looks at it later makes no cell.
 */
import type { Leg, Place, Thing } from '../model/model.ts';
import { ANGLE, LENGTH } from '../model/units.ts';
import type { Cell } from './graph.ts';
import { legWords } from './legs/legs.ts';
import type { Results } from './plan.ts';
import { BETWEEN } from './rules/geometry.ts';
import { DISTANCE } from './rules/lengths.ts';
import type { Direction } from './places/directions.ts';
import { legStart, type Passage } from './places/light-ways.ts';

/** A laser that is written to point somewhere, and the first thing on a beam of it. */
export interface Pointing {
  readonly laser: Thing;
  readonly thing: Thing;
  /** where it is written where the laser points */
  readonly at: Place;
  /** angle by which it points past the thing */
  readonly off: Cell;
  readonly distance: Cell;
}

/** A mirror or splitter that is written to face somewhere, and light that it turns. */
export interface Facing {
  readonly mirror: Thing;
  readonly at: Place;
  readonly passage: Passage;
  /** the direction in which it would have to face */
  readonly needed: Direction;
  /** angle by which it is turned away from that */
  readonly off: Cell;
}

/** Light that goes straight through a thing. */
export interface Straight {
  readonly thing: Thing;
  readonly passage: Passage;
  /** angle by which it would have to turn there */
  readonly turn: Cell;
}

export interface Alignment {
  readonly lasers: readonly Pointing[];
  readonly mirrors: readonly Facing[];
  readonly straight: readonly Straight[];
  /** distances of the ends of legs that have a length of their own */
  readonly distances: ReadonlyMap<Leg, Cell>;
}

const NOTHING: Alignment = { lasers: [], mirrors: [], straight: [], distances: new Map() };
const known = new WeakMap<Results['graph'], Alignment>();

export function alignmentOf(r: Results): Alignment {
  let found = known.get(r.graph);
  if (!found) known.set(r.graph, found = r.places.none ? NOTHING : { lasers: lasers(r), mirrors: mirrors(r), straight: straight(r), distances: distances(r) });
  return found;
}

function lasers({ setup, places, graph }: Results): Pointing[] {
  const seen = new Set<string>();
  return [...setup.beams.values()].flatMap((beam): Pointing[] => {
    const [laser, thing] = [beam.from, beam.legs[0]?.target];
    if (laser?.kind.light !== 'source' || !thing || seen.has(`${laser.id} ${thing.id}`)) return [];
    seen.add(`${laser.id} ${thing.id}`);
    const aim = aimOf(places.own(laser));
    const [points, leads] = [aim && places.directions.facing(places.own(laser)), aim && places.directions.between(places.own(laser), places.own(thing))];
    const [from, to] = [places.of(places.own(laser)), places.of(places.own(thing))];
    if (!aim || !points || !leads || !from || !to) return [];
    const off = graph.derive(`${laser.id}.off ${thing.id}`, BETWEEN, [...points, ...leads], ANGLE, `angle by which ${laser.id} points past ${thing.id}`);
    return [{ laser, thing, at: aim.at, off, distance: graph.derive(`${laser.id} → ${thing.id}`, DISTANCE, [...from, ...to], LENGTH, `distance of ${laser.id} and ${thing.id}`) }];
  });
}

/** Where it is written which way a thing faces; one that faces its beam faces as the beam needs. */
function aimOf({ placement: p }: Thing): { readonly at: Place } | undefined {
  return p?.heading ?? (p?.facing === 'beam' ? undefined : p?.facing);
}

function mirrors({ setup, places, graph }: Results): Facing[] {
  return [...setup.things.values()].flatMap((mirror): Facing[] => {
    const aim = aimOf(places.own(mirror));
    if (!aim || (mirror.kind.light !== 'turns' && mirror.kind.light !== 'shares')) return [];
    const facing = places.directions.facing(mirror);
    if (!facing) return [];
    return places.directions.turns(mirror).slice(0, 1).map(({ arriving, leaving, passage }) => {
      const needed = places.directions.halfway(`${mirror.id}.needed`, `direction that ${mirror.id} would need`, arriving, leaving);
      return { mirror, at: aim.at, passage, needed, off: graph.derive(`${mirror.id}.off`, BETWEEN, [...facing, ...needed], ANGLE, `angle by which ${mirror.id} is turned away`) };
    });
  });
}

function straight({ setup, places, graph }: Results): Straight[] {
  const things = [...setup.things.values()].filter(t => t.placement && (t.kind.light === 'passes' || t.kind.light === 'shares' || t.kind.light === 'diffracts'));
  return things.flatMap(thing => places.directions.passages(thing).flatMap((passage): Straight[] => {
    if (thing.kind.light !== 'passes' && passage.port !== 'through') return [];
    const [arriving, leaving] = [places.directions.of(passage.arriving), places.directions.of(passage.leaving)];
    if (!arriving || !leaving) return [];
    return [{ thing, passage, turn: graph.derive(`${passage.leaving.id}.turn`, BETWEEN, [...arriving, ...leaving], ANGLE, `angle by which the light turns at ${thing.id}`) }];
  }));
}

function distances({ legs, places, graph }: Results): Map<Leg, Cell> {
  const all = new Map<Leg, Cell>();
  for (const [leg, length] of legs) {
    const from = legStart(leg);
    if (!leg.length || length.missing || !from || !leg.target) continue;
    const [a, b] = [places.of(from), places.of(leg.target)];
    if (a && b) all.set(leg, graph.derive(`${leg.id}.distance`, DISTANCE, [...a, ...b], LENGTH, `distance of ${legWords(leg)}`));
  }
  return all;
}
