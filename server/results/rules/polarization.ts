/** Rules of polarization: the field of each beam from the laser to the plate, what of two beams makes fringes, and ghost fringes in the glass. */
import { linearField, weakened, type Field } from '../../optics/polarization/field.ts';
import { sShare } from '../../optics/polarization/incidence.ts';
import { layerInterferingShare } from '../../optics/polarization/overlap.ts';
import { coated, delayAt, halfWavePassed, mirrorAmplitudes, mirrored, polarizerPassed, retarded } from '../../optics/polarization/pass.ts';
import { scatteredBack, scatteredThrough } from '../../optics/polarization/scatter.ts';
import { each, lightPower, type Light, type Part } from '../../optics/polarization/states.ts';
import { reflectedShares } from '../../optics/surfaces/fresnel.ts';
import { lightGhostContrasts, twoBounceContrast } from '../../optics/ghosts/ghosts.ts';
import { edgeShares } from '../../optics/beams/edge.ts';
import { facing, turnedIntoFrame } from '../../optics/solids/frame.ts';
import { dot, mirrorNormal, type Vector } from '../../optics/vectors.ts';
import type { Rule } from '../graph.ts';
import { arrivingFrom, type From, type HologramWay } from './fringes.ts';

export { edgeShares };
export type { Vector };

/** What light meets while it goes straight on. Inputs of each: its axis; of a half-wave plate that is made for a stated wavelength also that and the wavelength of the light. */
export type Element = 'half-wave plate' | 'half-wave plate for a wavelength' | 'polarizer';
/** What light meets where it turns. `mirror`: an ideal one, no input; `coating`: one that delays p against s, input that lag; the others scatter, input the share that is depolarized. */
export type Turn = 'mirror' | 'coating' | 'facet' | 'screen';

/** A way of light: straight stretches, each with what stands in it, and what is between them. One stretch more than turns. */
export interface Train {
  readonly stretches: readonly (readonly Element[])[];
  readonly turns: readonly Turn[];
}

/** How the directions are known. `places`: three inputs for each stretch. `level`: all folds lie in the table's plane, and only the last direction counts. */
export type Ground = 'places' | 'level';

const INPUTS: Readonly<Record<Element | Turn, number>> = { 'half-wave plate': 1, 'half-wave plate for a wavelength': 3, polarizer: 1, mirror: 0, coating: 1, facet: 1, screen: 1 };
const madeWith = (train: Train): readonly unknown[] => [...train.stretches.map(s => s.join('+')), ...train.turns];

/** Reads the inputs of a rule in their order. */
class Inputs {
  private at = 0;
  constructor(private readonly x: readonly number[]) {}
  number(): number { return this.x[this.at++]!; }
  vector(): Vector { return [this.number(), this.number(), this.number()]; }
  many(n: number): readonly number[] { return n === 0 ? NONE_HERE : this.x.slice(this.at, this.at += n); }
}

/** What a way did to its light. */
export interface Trace {
  readonly light: Light;
  /** turns at which some of it was neither s nor p */
  readonly mixed: readonly number[];
  /** turns that lead out of the table's plane */
  readonly rising: readonly number[];
  /** power behind the last polarizer or wave plate on the way, as a share of that before it; 1 without one */
  readonly passed: number;
}

/** Light of a laser: `share` of it polarized at an angle from vertical, the rest in all directions alike. */
function laserLight(direction: Vector, angle: number, share: number): Light {
  const part = (turned: number, power: number, state: number): Part[] =>
    (power > 0 ? [{ field: weakened(linearField(direction, angle + turned), Math.sqrt(power)), state, steady: true }] : []);
  const polarized = Math.max(0, Math.min(1, share));
  return [...part(0, polarized, 0), ...part(0, (1 - polarized) / 2, 1), ...part(Math.PI / 2, (1 - polarized) / 2, 2)];
}

function directionsOf(train: Train, ground: Ground, take: Inputs, last: Vector): Vector[] {
  if (ground === 'places') return train.stretches.map(() => take.vector());
  // Any fold in the plane does the same to what is vertical and what is horizontal, so a right angle serves for all.
  const found: Vector[] = [last];
  for (const turn of [...train.turns].reverse()) found.unshift(turn === 'screen' ? found[0]! : before(found[0]!, turn));
  return found;
}

/** Light that comes down or up to a plate was sent there by a mirror that folds it in its upright plane; what an object scatters is lit level, from its side. */
function before(way: Vector, turn: Turn): Vector {
  const [x, y, z] = way;
  if (z === 0) return [y, -x, 0];
  // From above or below: nothing of it goes to the side.
  const on = y < 0 ? -1 : 1;
  return turn === 'mirror' || turn === 'coating' ? [0, on, 0] : [on, 0, 0];
}

/** Draws leave most of a way as it is: what a stretch and the turn behind it did to the same light is kept. */
class Kept {
  private readonly steps: (Passed & { readonly step: Step })[][] = [];
  private readonly lasers: { readonly way: Vector; readonly angle: number; readonly share: number; readonly light: Light }[] = [];

  laser(way: Vector, angle: number, share: number): Light {
    return (this.lasers.find(k => k.angle === angle && k.share === share && isSame(k.way, way)) ?? keep(this.lasers, { way, angle, share, light: laserLight(way, angle, share) })).light;
  }

  step(i: number, passed: Passed, make: (passed: Passed) => Step): Step {
    const at = this.steps[i] ??= [];
    return (at.find(k => k.light === passed.light && isSame(k.facts, passed.facts) && isSame(k.way, passed.way) && isSame(k.next ?? NONE_HERE, passed.next ?? NONE_HERE)) ?? keep(at, { ...passed, step: make(passed) })).step;
  }
}

/** The light that comes to a stretch, its way there and behind the turn, and the inputs of what it meets: of each element, and of the turn. */
interface Passed {
  readonly light: Light;
  readonly facts: readonly number[];
  readonly way: Vector;
  readonly next: Vector | undefined;
}
/** Polarized or not, and a way each. */
const MOST_KEPT = 2;
function keep<T>(all: T[], one: T): T {
  if (all.length >= MOST_KEPT) all.shift();
  all.push(one);
  return one;
}
function isSame(a: readonly number[], b: readonly number[]): boolean {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return a.length === b.length;
}

const NONE_HERE: readonly number[] = [];

/** Inputs: what the train meets, in order; behind that its directions where places tell them. */
function follow(train: Train, ground: Ground, take: Inputs, angle: number, share: number, last: Vector, kept = new Kept()): Trace {
  const facts = train.stretches.map((elements, i) => take.many(elements.reduce((n, e) => n + INPUTS[e], i < train.turns.length ? INPUTS[train.turns[i]!] : 0)));
  const ways = directionsOf(train, ground, take, last);
  let light = kept.laser(ways[0]!, angle, share);
  let passed = 1;
  const [mixed, rising]: [number[], number[]] = [[], []];
  for (let i = 0; i < train.stretches.length; i++) {
    const elements = train.stretches[i]!;
    const step = kept.step(i, { light, facts: facts[i]!, way: ways[i]!, next: ways[i + 1] }, at => stepOf(elements, train.turns[i], at));
    light = step.light;
    if (elements.length > 0) passed = step.passed;
    if (step.mixed) mixed.push(i);
    if (step.rising) rising.push(i);
  }
  return { light, mixed, rising, passed };
}

/** What a stretch and the turn behind it did; see `Trace`. */
interface Step {
  readonly light: Light;
  readonly passed: number;
  readonly mixed: boolean;
  readonly rising: boolean;
}

function stepOf(elements: readonly Element[], turn: Turn | undefined, { light: arriving, facts, way, next }: Passed): Step {
  let light = arriving;
  let passed = 1;
  let at = 0;
  for (const element of elements) {
    const before = lightPower(light);
    const own = facts.slice(at, at += INPUTS[element]);
    light = each(light, f => behind(element, f, own));
    passed = before > 0 ? lightPower(light) / before : 0;
  }
  const straight = { light, passed, mixed: false, rising: false };
  if (turn === undefined || !next) return straight;
  const input = facts[at];
  if (turn === 'facet') return { ...straight, light: scatteredBack(light, next, input!) };
  if (turn === 'screen') return { ...straight, light: scatteredThrough(light, next, input!) };
  const normal = mirrorNormal(way, next);
  // A mirror that the light runs past unturned leaves it as it is.
  if (dot(normal, normal) === 0) return straight;
  return {
    passed, mixed: light.some(p => { const s = sShare(p.field, normal); return p.steady && s > MIXED && s < 1 - MIXED; }), rising: Math.abs(normal[2]) > RISING,
    light: each(light, f => (turn === 'coating' ? coated(f, normal, mirrorAmplitudes({ s: 1, p: 1 }, input)) : mirrored(f, normal))),
  };
}
/** Less of the other polarization than this is none to speak of. */
const MIXED = 0.02;
/** Upright part of a mirror's normal from which it counts as leading out of the table's plane: 2°. */
const RISING = 0.035;

function behind(element: Element, field: Field, [axis, madeFor, wavelength]: readonly number[]): Field {
  if (element === 'polarizer') return polarizerPassed(field, axis!);
  return element === 'half-wave plate' ? halfWavePassed(field, axis!) : retarded(field, axis!, delayAt(Math.PI, madeFor!, wavelength!));
}

/** Both beams at a plate. `way` is asked for where no places tell the sides. */
export interface Meeting { readonly ground: Ground; readonly way: HologramWay; readonly from: From; readonly reference: Train; readonly object: Train }

/** The plate, and where its beams arrive: inputs by places its normal, else the angles of the beams. */
function plateOf(ground: Ground, way: HologramWay, from: From, beams: number, take: Inputs): { readonly normal: Vector; readonly last: readonly Vector[] } {
  if (ground === 'places') return { normal: take.vector(), last: Array.from({ length: beams }, () => NONE) };
  const angles = take.many(beams);
  return { normal: [0, -1, 0], last: angles.map((a, i) => arrivingFrom(from, a, i === 0 && way === 'reflection' ? -1 : 1)) };
}
const NONE: Vector = [0, 0, 0];

/** What happens to both beams, in plain numbers. Inputs as {@link interfering}. */
export function traced({ ground, way, from, reference, object }: Meeting, x: readonly number[], kept: { readonly reference?: Kept; readonly object?: Kept } = {}): { readonly reference: Trace; readonly object: Trace; readonly share: number } {
  const take = new Inputs(x);
  const [angle, share, index] = [take.number(), take.number(), take.number()];
  const plate = plateOf(ground, way, from, 2, take);
  const r = follow(reference, ground, take, angle, share, plate.last[0]!, kept.reference);
  const o = follow(object, ground, take, angle, share, plate.last[1]!, kept.object);
  return { reference: r, object: o, share: lightPower(r.light) < DARK || lightPower(o.light) < DARK ? Number.NaN : layerInterferingShare(r.light, o.light, plate.normal, index) };
}
/** Less than this of the laser's light is none. */
export const DARK = 1e-9;

/**
 * Share of the object light that makes fringes with the reference. Inputs: angle of the laser's polarization, its polarized share, index of the layer; by places the plate's normal,
 * else the angles of reference and object; then what the reference meets and its directions, then the same of the object light.
 */
export const interfering = (meeting: Meeting, kept = { reference: new Kept(), object: new Kept() }): Rule => ({
  name: 'share that makes fringes', of: [meeting.ground, meeting.way, meeting.from, ...madeWith(meeting.reference), '|', ...madeWith(meeting.object)],
  formula: `|Σ e₁·e₂*|² of all states of the light, in the layer, as a share of all of it${meeting.ground === 'places' ? '' : meeting.from === 'the side' ? '; all folds taken to lie in the table’s plane' : `; all folds taken to lie in the table’s plane, but for the last, which sends the reference from ${meeting.from}`}; ideal mirrors`,
  source: 'Collier, Burckhardt & Lin, Optical Holography (1971) (from memory); Born & Wolf, Principles of Optics, §1.5',
  costly: true, compute: x => traced(meeting, x, kept).share,
});

/** Ghost fringes of one beam in a plate. Inputs: angle of the laser's polarization, its polarized share, index of the glass; by places the plate's normal, else the beam's angle; what the beam meets, and its directions. */
export const ghosts = (ground: Ground, from: From, train: Train, which: 'twoBounces' | 'backFace'): Rule => ({
  name: which === 'twoBounces' ? 'contrast of ghost fringes' : 'contrast of fringes with the light off the back face', of: [ground, from, ...madeWith(train)],
  formula: which === 'twoBounces' ? '2R/(1 + R²), s and p by their shares' : '2√R/(1 + R), s and p by their shares; for p also |cos 2θ|, θ in the glass',
  source: 'Born & Wolf, Principles of Optics, §1.5 and on two-beam interference',
  compute: x => {
    const take = new Inputs(x);
    const [angle, share, index] = [take.number(), take.number(), take.number()];
    const plate = plateOf(ground, 'transmission', from, 1, take);
    const { light } = follow(train, ground, take, angle, share, plate.last[0]!);
    return lightPower(light) < DARK ? Number.NaN : lightGhostContrasts(light, plate.normal, index)[which];
  },
});

/** Contrast of ghost fringes of light that is wholly p, in plain numbers. */
export const ghostsOfP = (incidence: number, index: number): number => twoBounceContrast(reflectedShares(incidence, index).p);

/** Share that the last polarizer of a train passes of the light on it. Inputs: angle of the laser's polarization, its polarized share; what the train meets, and its directions. */
export const passedBy = (ground: Ground, train: Train): Rule => ({
  name: 'share that a polarizer passes', of: [ground, ...madeWith(train)], formula: 'cos² of the angle between its axis and the light’s polarization; half of light polarized at random', source: 'Malus’s law (any optics text)',
  compute: x => {
    const take = new Inputs(x);
    const [angle, share] = [take.number(), take.number()];
    return follow(train, ground, take, angle, share, [1, 0, 0]).passed;
  },
});

/** A direction along a plate's own axes, to the right for somebody who looks at its face, up, and towards him. Plain numbers: the plate's normal, the direction. */
export const inPlate = (normal: Vector, way: Vector): Vector => turnedIntoFrame(facing([0, 0, 0], normal), way);

