/** Rules of which side of an object is lit and seen, and the sources of the light that falls on plate and object. */
import { litAndSeen, type LitAndSeen } from '../../optics/surface/lit.ts';
import type { Source } from '../../optics/surface/source.ts';
import { facing, turnedIntoFrame } from '../../optics/solids/frame.ts';
import { unit, type Vector } from '../../optics/vectors.ts';
import type { Rule } from '../graph.ts';
import { HERE, shapeWords, surfaceOf, type Form } from './surface.ts';

/** Which parts are lit flips patch by patch: with so many, a share is good to 3 in 100. */
const FINE = 500;

export const vectorAt = (x: readonly number[], i: number): Vector => [x[i]!, x[i + 1]!, x[i + 2]!];
export const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const isNothing = (v: Vector): boolean => v[0] === 0 && v[1] === 0 && v[2] === 0;

/** Curvature below which light counts as running side by side, 1/m. */
const FLAT = 1e-6;
/** Where light comes from that arrives at a place in a direction. `past` and `rayleigh`: how far it is past its focus, and that focus's Rayleigh range; without them it runs side by side. */
export function sourceOf(at: Vector, along: Vector, past?: number, rayleigh?: number): Source {
  const direction = unit(along);
  const curvature = past === undefined || rayleigh === undefined || past === 0 ? 0 : past / (past * past + rayleigh * rayleigh);
  if (Math.abs(curvature) < FLAT) return { kind: 'parallel', direction };
  const r = 1 / curvature;
  return { kind: r > 0 ? 'point' : 'toward', at: [at[0] - r * direction[0], at[1] - r * direction[1], at[2] - r * direction[2]] };
}

/** Inputs: place of the plate, place of the object, direction of the light on the object (three each); where it spreads, past and Rayleigh range; width, height, depth of the object. */
function looked(form: Form, spread: boolean, x: readonly number[]): LitAndSeen | undefined {
  const [middle, light] = [vectorAt(x, 3), vectorAt(x, 6)];
  const sight = minus(vectorAt(x, 0), middle);
  if (isNothing(sight) || isNothing(light)) return undefined;
  const i = spread ? 11 : 9;
  return litAndSeen(surfaceOf(form, sight, vectorAt(x, i), FINE), sourceOf(HERE, light, spread ? x[9] : undefined, spread ? x[10] : undefined), sight, HERE);
}

const LOOKS = {
  'lit side': { formula: 'lit and seen area / seen area, of a convex thing', of: (l: LitAndSeen) => l.litOfSeen },
  'seen side': { formula: 'lit and seen area / lit area, of a convex thing', of: (l: LitAndSeen) => l.seenOfLit },
  'lit depth': { formula: 'from the nearest to the farthest part that is lit and seen, along the line of sight', of: (l: LitAndSeen) => (l.depth ? l.depth.farthest - l.depth.nearest : Number.NaN) },
} as const;
export type LookedAt = keyof typeof LOOKS;
export const LOOKED_AT = Object.keys(LOOKS) as readonly LookedAt[];

/** Whole parts are lit or not, so that slopes by the direction of the light are those over some degrees; next to them the rest moves nothing. */
const DEGREES = 0.15;
const slopes = (compute: Rule['compute']): NonNullable<Rule['partials']> => (x, wanted) => x.map((v, i) => {
  if (i < 6 || i > 8 || wanted?.[i] === false) return 0;
  const at = (to: number): number => compute(x.map((o, j) => (j === i ? to : o)));
  const d = (at(v + DEGREES) - at(v - DEGREES)) / (2 * DEGREES);
  return Number.isFinite(d) ? d : 0;
});

/** Lit side, seen side and depth ask for the same looks, and their slopes and draws mostly leave the object where it is. */
const looks = new Map<string, LitAndSeen | undefined>();
const MOST_LOOKS = 64;

function lookedOnce(made: string, form: Form, spread: boolean, x: readonly number[]): LitAndSeen | undefined {
  const key = `${made};${x.join()}`;
  if (looks.has(key)) return looks.get(key);
  const found = looked(form, spread, x);
  if (looks.size >= MOST_LOOKS) looks.clear();
  looks.set(key, found);
  return found;
}

/** What of an object is lit and seen from the middle of the plate. Inputs as `looked` takes them. */
export const lookedAt = (what: LookedAt, form: Form, spread: boolean): Rule => {
  const made = [form.shape, form.assumed, form.lying, spread, ...(form.points ?? []).flat()];
  const key = made.join();
  const compute = (x: readonly number[]): number => { const l = lookedOnce(key, form, spread, x); return l ? LOOKS[what].of(l) : Number.NaN; };
  return {
    name: what, of: [what, ...made], source: 'geometry: what faces the light and the plate',
    formula: `${LOOKS[what].formula}${shapeWords(form)}`, costly: true, compute, partials: slopes(compute),
  };
};

/** What light that goes through a plate to an object saves on its way past the middle of the plate, below zero. Inputs: where it comes from, the plate, the object. */
export const PAST_PLATE: Rule = {
  name: 'way past the middle of the plate', formula: '|S − O| − |S − P| − |P − O|: light goes straight from S through the plate to the object O, and not by the middle of the plate P', source: 'geometry; d(1 + cos θ) in all for light that runs side by side',
  compute: x => { const [s, p, o] = [vectorAt(x, 0), vectorAt(x, 3), vectorAt(x, 6)]; return Math.hypot(...minus(s, o)) - Math.hypot(...minus(s, p)) - Math.hypot(...minus(p, o)); },
};

/** Where the light on an object comes from, as the plate sees it: components to the right, up, and from the plate's side; of length 1. Plain numbers: place of the plate, of the object, direction of the light. */
export function lightFrom(plate: readonly number[], object: readonly number[], light: readonly number[]): Vector {
  const frame = facing(HERE, minus(vectorAt(plate, 0), vectorAt(object, 0)));
  const [r, u, t] = turnedIntoFrame(frame, unit(vectorAt(light, 0)));
  return [-r, -u, -t];
}
