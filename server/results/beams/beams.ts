/** How wide the beams are and from where they spread, leg by leg from the laser. Only what somebody asks for is worked out. */
import { ontoObject, type Arm } from '../../model/arms.ts';
import type { Leg, Setup, Thing } from '../../model/model.ts';
import { LENGTH, NUMBER, parseUnit } from '../../model/units.ts';
import type { Cell, Missing } from '../graph.ts';
import type { LegCells } from '../legs/leg-cells.ts';
import { legWords } from '../legs/legs.ts';
import { incidence } from '../places/angles.ts';
import type { Places } from '../places/places.ts';
import { BEAM_DIAMETER, BEAM_QUALITY, BEAM_RADIUS, foldedPast, foldedRayleigh, PAST_LENS, PAST_ON, PAST_START, RAYLEIGH_LENS, RAYLEIGH_START } from '../rules/beams.ts';
import type { Values } from '../values.ts';

/** A beam along one axis across it: how far it is past the focus that it spreads from, real or virtual, and that focus's Rayleigh range. */
export interface Focus {
  readonly past: Cell;
  readonly rayleigh: Cell;
}

/** A beam at one place. Both axes are the same cells until a curved mirror folds it. */
export interface Front {
  readonly level: Focus;
  readonly upright: Focus;
  readonly wavelength: Cell;
  readonly quality: Cell;
}

/** A lens or curved mirror whose beam is wider than it could bend: no formula of its beam holds. */
export interface Steep {
  readonly thing: Thing;
  /** of the beam on it, m */
  readonly radius: number;
  readonly focalLength: number;
}

const MM = parseUnit('mm')!;

/** More legs in a row than any path may have. */
const MOST_LEGS = 20_000;

export class Beams {
  private readonly fronts = new Map<Leg, Front>();
  private readonly lasers = new Map<Thing, Front>();
  private readonly found = new Map<Thing, Steep>();

  constructor(private readonly setup: Setup, private readonly values: Values, private readonly legs: LegCells, private readonly places: Places) {}

  /** Whether the text says anything that shapes the beams of an arm; without, nothing is asked about how wide they are. */
  static areShaped(arm: Arm): boolean {
    return arm.laser.facts.has('beam diameter') || arm.path.some(l => l.target?.kind.word === 'spreader' || l.target?.facts.has('focal length') === true);
  }

  /** The beam as it arrives at the end of a leg. */
  at(leg: Leg): Front {
    // A long way is walked from its start, so that it costs no depth of calls.
    const way: Leg[] = [];
    for (let l: Leg | undefined = leg; l && !this.fronts.has(l) && way.length <= MOST_LEGS; l = this.places.ways.before(l)) way.push(l);
    for (const l of way.reverse()) if (!this.fronts.has(l)) this.fronts.set(l, this.arriving(l));
    return this.fronts.get(leg)!;
  }

  /** The beam of an arm as it falls on what it lights: a reference on its plate, an object beam on the object. */
  ofArm(arm: Arm): { readonly front: Front; readonly leg: Leg } | undefined {
    const leg = arm.object ? ontoObject(arm) : arm.path.at(-1);
    return leg && { front: this.at(leg), leg };
  }

  /** Radius to 1/e² of the middle at the end of a leg; along the level axis unless the upright one is asked for, which differs behind a curved mirror that folds the light. */
  radius(leg: Leg, axis: 'level' | 'upright' = 'level'): Cell {
    const name = `${leg.id}.beam radius${axis === 'upright' ? UPRIGHT : ''}`;
    const { wavelength, quality, [axis]: { past, rayleigh } } = this.at(leg);
    return this.values.graph.find(name) ?? this.values.graph.derive(name, BEAM_RADIUS, [past, rayleigh, wavelength, quality], LENGTH, `${this.axisWords(leg, axis)}radius of ${leg.beam.id} at ${leg.to || '?'}`, { unit: MM });
  }

  /** The width that a name asks for: `raw.1.beam diameter`, `raw.1.beam diameter upright`. */
  ask(name: string): Cell | undefined {
    const [, id, upright] = /^(.*)\.beam diameter( upright)?$/.exec(name) ?? [];
    if (id === undefined) return undefined;
    const leg = this.setup.beams.get(id.slice(0, id.lastIndexOf('.')))?.legs.find(l => l.id === id);
    const { graph } = this.values;
    const axis = upright === undefined ? 'level' : 'upright';
    return leg && (graph.find(name) ?? graph.derive(name, BEAM_DIAMETER, [this.radius(leg, axis)], LENGTH, `${this.axisWords(leg, axis)}width of ${leg.beam.id} at ${leg.to || '?'}`, { unit: MM }));
  }

  /** Which of two widths it is, with the other one beside it, where they are two. */
  private axisWords(leg: Leg, axis: 'level' | 'upright'): string {
    const { level, upright } = this.at(leg);
    return level === upright ? '' : `${axis} `;
  }

  private arriving(leg: Leg): Front {
    const from = this.leaving(leg);
    const length = this.legs.get(leg) ?? this.missing(`${leg.id}.length`, LENGTH, `leg ${legWords(leg)}`, 'unknown-name', `${legWords(leg)} does not lead anywhere`, leg.at);
    return bothAxes(from, (axis, { past, rayleigh }) => ({ past: this.values.graph.derive(`${leg.id}.past focus${axis}`, PAST_ON, [past, length], LENGTH, `how far ${leg.beam.id} is past its focus at ${leg.to || '?'}`, { unit: MM }), rayleigh }));
  }

  /** The beam as it leaves the start of a leg. */
  private leaving(leg: Leg): Front {
    const before = this.places.ways.before(leg);
    const from = leg.n > 1 ? leg.beam.legs[leg.n - 2]!.target : leg.beam.from;
    if (!before || !from) return this.laser(from?.kind.light === 'source' ? from : undefined);
    const port = leg.n > 1 ? leg.beam.legs[leg.n - 2]!.port : leg.beam.port;
    const front = this.fronts.get(before);
    return front ? this.behind(from, port, front, leg) : this.unknown(leg, 'arm-broken', `no light arrives at ${from.id}`);
  }

  /** The beam behind a thing that it meets. */
  private behind(thing: Thing, port: string | undefined, front: Front, leg: Leg): Front {
    const { graph } = this.values;
    const { light, word } = thing.kind;
    if (light === 'scatters' || word === 'fill card') return this.unknown(leg, 'not-computed-yet', `${thing.id} scatters the light, so that it is no beam any more`);
    if (light === 'diffracts' && port === 'diffracted') return this.unknown(leg, 'not-computed-yet', `what ${thing.id} diffracts is light of an image, and no beam`);
    const lens = word === 'spreader' || word === 'lens' || word === 'collimator';
    if (!lens && !thing.facts.has('focal length')) return front;
    const focal = this.values.fact(thing, 'focal length') ?? this.missing(`${thing.id}.focal length`, LENGTH, `focal length of ${thing.id}`, 'value-missing', `the focal length of ${thing.id} is not written`, thing.at);
    if (this.steep(thing, front, focal)) return this.unknown(leg, 'lens-too-steep', `the focal length of ${thing.id} is shorter than the beam on it is wide, so that what is behind it cannot be told`);
    const name = (axis: string, what: string): string => `${leg.id}.${what} behind ${thing.id}${axis}`;
    // A fold in the table's plane is level; where nothing tells the fold, the mirror acts as met squarely.
    const fold = lens ? undefined : incidence(thing, this.places, this.values);
    const folded = fold && !fold.missing ? fold : undefined;
    return bothAxes(front, (axis, { past, rayleigh }) => ({
      past: graph.derive(name(axis, 'past focus'), folded ? foldedPast(axis !== UPRIGHT) : PAST_LENS, [past, rayleigh, focal, ...(folded ? [folded] : [])], LENGTH, `how far the light is past its focus behind ${thing.id}`, { unit: MM }),
      rayleigh: graph.derive(name(axis, 'Rayleigh range'), folded ? foldedRayleigh(axis !== UPRIGHT) : RAYLEIGH_LENS, [past, rayleigh, focal, ...(folded ? [folded] : [])], LENGTH, `Rayleigh range of the focus of ${thing.id}`),
    }), folded !== undefined);
  }

  /** What was met so far that bends its beam more steeply than the formulas of a beam hold. */
  get tooSteep(): readonly Steep[] { return [...this.found.values()]; }

  /** The beam leaves by an angle whose slope is radius by focal length: from 1 on, 45°, nothing of the formulas holds, and no lens is made. */
  private steep(thing: Thing, { level, wavelength, quality }: Front, focal: Cell): boolean {
    const { graph } = this.values;
    const [f, ...beam] = [focal, level.past, level.rayleigh, wavelength, quality].map(c => graph.value(c));
    if (f === undefined || beam.some(v => v === undefined)) return false;
    const radius = BEAM_RADIUS.compute(beam as number[]);
    if (radius <= Math.abs(f)) return false;
    this.found.set(thing, { thing, radius, focalLength: f });
    return true;
  }

  /** The beam as it leaves the laser: its waist is there, and it widens as it is written, else as its quality says. */
  private laser(laser: Thing | undefined): Front {
    if (!laser) {
      const none = (name: string): Cell => this.missing(name, NUMBER, name, 'arm-broken', 'no laser is at the start of the beam');
      const focus = { past: none('past focus'), rayleigh: none('Rayleigh range') };
      return { level: focus, upright: focus, wavelength: none('wavelength'), quality: none('beam quality') };
    }
    const known = this.lasers.get(laser);
    if (known) return known;
    const { values } = this;
    const { graph } = values;
    const fact = (phrase: string): Cell => values.fact(laser, phrase) ?? this.missing(`${laser.id}.${phrase}`, LENGTH, `${phrase} of ${laser.id}`, 'value-missing', `the ${phrase} of ${laser.id} is not written`, laser.at);
    const [wavelength, diameter] = [fact('wavelength'), fact('beam diameter')];
    const divergence = laser.facts.has('divergence') ? values.fact(laser, 'divergence') : undefined;
    const quality = divergence ? graph.derive(`${laser.id}.beam quality by divergence`, BEAM_QUALITY, [divergence, diameter, wavelength], NUMBER, `beam quality of ${laser.id}`) : fact('beam quality');
    const focus = {
      past: graph.derive(`${laser.id}.past focus`, PAST_START, [diameter], LENGTH, `how far the light of ${laser.id} is past its waist where it leaves`),
      rayleigh: graph.derive(`${laser.id}.Rayleigh range`, RAYLEIGH_START, [diameter, wavelength, quality], LENGTH, `Rayleigh range of ${laser.id}`),
    };
    const front = { level: focus, upright: focus, wavelength, quality };
    this.lasers.set(laser, front);
    return front;
  }

  private unknown(leg: Leg, code: string, why: string): Front {
    const none = (what: string, dim: Cell['dim']): Cell => this.missing(`${leg.id}.${what} behind`, dim, `${what} of ${leg.beam.id}`, code, why, leg.at);
    const focus = { past: none('past focus', LENGTH), rayleigh: none('Rayleigh range', LENGTH) };
    return { level: focus, upright: focus, wavelength: none('wavelength', LENGTH), quality: none('beam quality', NUMBER) };
  }

  private missing(name: string, dim: Cell['dim'], words: string, code: string, why: string, at?: Missing['at']): Cell {
    return this.values.missing(name, dim, words, { code, why, ...(at ? { at } : {}) });
  }
}

const UPRIGHT = ' upright';

/** Along both axes; once where they are the same and stay so. */
function bothAxes(front: Front, make: (axis: string, focus: Focus) => Focus, parts = false): Front {
  const level = make('', front.level);
  return { ...front, level, upright: front.upright === front.level && !parts ? level : make(UPRIGHT, front.upright) };
}
