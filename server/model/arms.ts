/** How light reaches the plates: the beams are followed back from each plate to a laser. */
import type { Beam, Leg, Problem, Setup, Thing } from './model.ts';

/** One way in which light reaches a plate. */
export interface Arm {
  /** the beam's name; on a beam that meets the plate twice `reference` and `object`, or `all.reference` and `all.object` where those are other beams' */
  readonly name: string;
  readonly plate: Thing;
  readonly role: 'reference' | 'object';
  /** legs from the laser to the plate */
  readonly path: readonly Leg[];
  readonly laser: Thing;
  /** what carries its light to the plate: the last scattering thing or diffracting hologram */
  readonly object?: Thing;
  /** the beam whose leg ends at the plate */
  readonly beam: Beam;
}

/** How many legs of an arm are beam: up to the first thing that scatters it, or sends it into an image. */
export function beamLegs(arm: Arm): number {
  const first = arm.path.findIndex((l, i) => l.target?.kind.light === 'scatters' || (l.target?.kind.light === 'diffracts' && arm.path[i + 1]?.beam.port === 'diffracted'));
  return first < 0 ? arm.path.length : first + 1;
}

/** Where in the path of an object arm the leg stands that comes to its `object`, from which the next one goes on; -1 of a reference. */
export const objectAt = ({ path, object }: Arm): number => (object ? path.findLastIndex(l => l.target === object) : -1);
/** That leg: by it the light falls on the object, or on the hologram that diffracts it. */
export const ontoObject = (arm: Arm): Leg | undefined => arm.path[objectAt(arm)];

/** The lasers whose light comes to a plate, in the order of its arms. Light of different lasers makes no fringes: each records by itself. */
export const lasersAt = (plate: Thing, arms: readonly Arm[]): Thing[] => [...new Set(arms.filter(a => a.plate === plate).map(a => a.laser))];
/** What the names of results of all light of a laser at a plate begin with: `P1`, or `P1.red` where there is light of others. */
export const lightName = (plate: Thing, laser: Thing, arms: readonly Arm[]): string => (lasersAt(plate, arms).length > 1 ? `${plate.id}.${laser.id}` : plate.id);

export interface Arms {
  readonly arms: readonly Arm[];
  readonly problems: readonly Problem[];
  /** beams with a problem, or fed by one with a problem */
  readonly broken: ReadonlySet<string>;
}

/** A beam is followed back over at most so many legs. */
export const MAX_PATH = 5000;
/** At most so many times light reaches plates in a setup. */
export const MAX_ARMS = 200;

export function formArms(setup: Setup): Arms {
  const problems: Problem[] = [];
  const broken = new Set<string>();
  const continued = new Set<Thing>();
  for (const beam of setup.beams.values()) if (beam.from) continued.add(beam.from);
  // Only where beams start does it matter which leg arrives.
  const arriving = new Map<Thing, Leg>();
  for (const beam of setup.beams.values()) {
    for (const leg of beam.legs) if (leg.target && continued.has(leg.target) && !arriving.has(leg.target)) arriving.set(leg.target, leg);
  }
  const paths = new Map<string, Leg[] | undefined>();
  const dark = new Set<Thing>();

  /** Legs from the laser to the start of a beam; undefined when it is broken. */
  const before = (beam: Beam, ring: string[]): Leg[] | undefined => {
    if (paths.has(beam.id)) return paths.get(beam.id);
    let path: Leg[] | undefined;
    const { from } = beam;
    if (!from) broken.add(beam.id);
    else if (from.kind.light === 'source') path = [];
    else if (ring.includes(beam.id)) {
      problems.push({ code: 'beam-ring', at: beam.at, subject: beam.id, setup: setup.name, data: { ring: [...ring.slice(ring.indexOf(beam.id)), beam.id].join(' → ') } });
      broken.add(beam.id);
    } else {
      const leg = arriving.get(from);
      if (!leg || leg.beam === beam) {
        // Several beams may start where no light arrives; it is one slip.
        if (!dark.has(from)) problems.push({ code: 'arm-broken', at: beam.at, subject: beam.id, setup: setup.name, data: { beam: beam.id, thing: from.id } });
        dark.add(from);
        broken.add(beam.id);
      } else {
        const upstream = before(leg.beam, [...ring, beam.id]);
        if (!upstream) broken.add(beam.id);
        else path = [...upstream, ...leg.beam.legs.slice(0, leg.n)];
      }
    }
    if (path && path.length > MAX_PATH) {
      problems.push({ code: 'path-too-long', at: beam.at, subject: beam.id, setup: setup.name, data: { beam: beam.id, legs: path.length, limit: MAX_PATH } });
      broken.add(beam.id);
      path = undefined;
    }
    paths.set(beam.id, path);
    return path;
  };

  const arms: Arm[] = [];
  for (const beam of setup.beams.values()) {
    const start = before(beam, []);
    if (start) armsOf(beam, start, setup, arms, problems);
    endsWhere(beam, setup, continued, problems);
  }
  return { arms, problems: unexplained(problems, setup), broken };
}

/** Light that seems to be missing, or to go nowhere, where a line that cannot be understood, or an unfinished beam, may say where it goes. */
function unexplained(problems: readonly Problem[], setup: Setup): readonly Problem[] {
  if (problems.length === 0) return problems;
  const unfinished = setup.unsure || [...setup.beams.values()].some(b => !b.from || b.legs.some(l => !l.target));
  const early = problems.some(o => o.code === 'arm-ends-early');
  // Where a beam goes behind what stops it, its light does not come, and so cannot go on there.
  const stopped = new Set(problems.filter(o => o.code === 'light-stopped').map(o => o.subject));
  return problems.filter(p => !(p.code === 'arm-ends-early' && stopped.has(p.subject)) && !(unfinished && (p.code === 'arm-broken' || p.code === 'arm-ends-early')) && !(early && p.code === 'arm-broken'));
}

function armsOf(beam: Beam, start: readonly Leg[], setup: Setup, arms: Arm[], problems: Problem[]): void {
  const laser = start[0]?.beam.from ?? beam.from!;
  const met = new Map<Thing, number>();
  for (const leg of beam.legs) if (leg.target?.kind.light === 'recorded') met.set(leg.target, (met.get(leg.target) ?? 0) + 1);
  const times = new Map<Thing, number>();
  for (const leg of beam.legs) {
    const thing = leg.target;
    if (!thing) return;
    if (thing.kind.light === 'recorded' && arms.length >= MAX_ARMS) {
      if (!problems.some(p => p.code === 'too-many-arms')) problems.push({ code: 'too-many-arms', at: leg.at, subject: setup.name, setup: setup.name, data: { limit: MAX_ARMS } });
    } else if (thing.kind.light === 'recorded') {
      const path = [...start, ...beam.legs.slice(0, leg.n)];
      const object = lastScatterer(path);
      const time = (times.get(thing) ?? 0) + 1;
      times.set(thing, time);
      const name = met.get(thing)! > 1 ? meetingName(beam, thing, time, setup) : beam.id;
      arms.push({ name, plate: thing, role: object ? 'object' : 'reference', path, laser, beam, ...(object ? { object } : {}) });
    }
    const stops = thing.kind.light === 'recorded' || thing.kind.light === 'ends';
    if (stops && leg.port !== 'through' && leg.n < beam.legs.length) {
      // What could not be read of the leg may say that it goes on.
      if (leg.node.line.issue) return;
      const next = beam.legs[leg.n]!;
      problems.push({ code: 'light-stopped', at: next.at, subject: beam.id, setup: setup.name, data: { beam: beam.id, thing: thing.id, next: next.to } });
      return;
    }
  }
}

/** What the arm of a beam is called that meets a plate more than once: `reference`, then `object`; with the beam's name before it where another beam to that plate has the name. */
function meetingName(beam: Beam, plate: Thing, time: number, setup: Setup): string {
  const name = time === 1 ? 'reference' : 'object';
  const other = setup.beams.get(name);
  const taken = [...setup.beams.values()].some(b => b !== beam && meets(b, plate) > 1) || (other && other !== beam && meets(other, plate) > 0);
  return `${taken ? `${beam.id}.` : ''}${name}${time > 2 ? `-${time}` : ''}`;
}
const meets = (beam: Beam, plate: Thing): number => beam.legs.reduce((n, l) => n + (l.target === plate ? 1 : 0), 0);

function lastScatterer(path: readonly Leg[]): Thing | undefined {
  for (let i = path.length - 2; i >= 0; i--) {
    const leg = path[i]!;
    if (leg.target?.kind.light === 'scatters') return leg.target;
    if (leg.target?.kind.light === 'diffracts' && path[i + 1]!.beam.port === 'diffracted') return leg.target;
  }
  return undefined;
}

/** A beam must come to an end somewhere: a plate, a stop, a card, or a thing at which other beams start. */
function endsWhere(beam: Beam, setup: Setup, continued: ReadonlySet<Thing>, problems: Problem[]): void {
  const last = beam.legs[beam.legs.length - 1];
  if (last && (!last.target || ['recorded', 'ends'].includes(last.target.kind.light) || continued.has(last.target))) return;
  if (beam.legs.some(l => l.node.line.issue) || beam.node.line.issue) return;
  problems.push({ code: 'arm-ends-early', at: last?.at ?? beam.at, subject: beam.id, setup: setup.name, data: { beam: beam.id, ...(last ? { thing: last.target!.id } : {}) } });
}
