/** Rules of light that nobody has metered: of a spread beam on a plate, and of an object onto it, each for one watt of the beam. */
import { carried, radiusHere, type Beam } from '../../optics/beams/beam.ts';
import { lightOverPlane } from '../../optics/beams/spread.ts';
import { objectShare, singleBeamRatio } from '../../optics/beams/split.ts';
import { lightFromSurface } from '../../optics/maps/lit-object.ts';
import { reflectedShares } from '../../optics/surfaces/fresnel.ts';
import { facing, fromFrame } from '../../optics/solids/frame.ts';
import type { Patch } from '../../optics/surface/patches.ts';
import { roundedToward } from '../../optics/surface/rounded.ts';
import { surfaceToward, type Toward } from '../../optics/surface/toward.ts';
import { unit, type Vector } from '../../optics/vectors.ts';
import { handTime, stripExposures, HALF_STOP } from '../../optics/test-strip.ts';
import type { Rule } from '../graph.ts';
import { arrivingFrom, type From } from './fringes.ts';
import { shapeWords, solidOf, surfaceOf, type Lying, type Shape } from './surface.ts';

const SPREAD = 'Siegman, Lasers (1986) ch. 17 (from memory)';
const LAMBERT = 'Lambert’s cosine law (any radiometry text)';

/** The six numbers of a beam: past and Rayleigh range of its level and of its upright focus, wavelength, quality. */
export const beamOf = (x: readonly number[]): Beam => ({ level: { past: x[0]!, rayleigh: x[1]! }, upright: { past: x[2]!, rayleigh: x[3]! }, wavelength: x[4]!, quality: x[5]! });
const BEAM = 6;
/** Beyond this angle from the front, rad, a screen lights an object from behind: the plate sees the screen round and through it, 120°. */
export const BEHIND = (120 / 180) * Math.PI;
const HERE: Vector = [0, 0, 0];
const vector = (x: readonly number[], i: number): Vector => [x[i]!, x[i + 1]!, x[i + 2]!];
/** A plate that is seen from before it, with light that comes from its right at an angle from its normal, level. */
const FRONT: Vector = [0, -1, 0];
const level = (angle: number, from: From = 'the side'): Vector => arrivingFrom(from, angle, 1);

/** Light at the middle of a plate for each watt. Inputs: the beam, its angle from the plate's normal. */
export const REFERENCE_LIGHT: Rule = {
  name: 'light of a spread beam', formula: '2 cos θ / (π w₁ w₂): w₁, w₂ the radii of the beam where it meets the plate, θ its angle from the plate’s normal', source: SPREAD,
  compute: x => {
    const { level: a, upright: b } = radiusHere(beamOf(x));
    return (2 * Math.abs(Math.cos(x[BEAM]!))) / (Math.PI * a * b);
  },
};

/**
 * Light in the weakest corner of a plate as a share of that in the middle. Inputs: the beam, then the plate's normal and the direction of the light (three each) or, `byAngle`, its
 * angle from the normal, to the side `from`; how far the middle of the beam lies beside that of the plate, above 0 to the side that leaves the weakest corner less; width and height of the plate.
 */
export const cornerLight = (byAngle: boolean, from: From = 'the side'): Rule => ({
  name: 'corner light of a spread beam', of: [byAngle, from], formula: '(2P / (π w²)) exp(−2 r²/w²) cos θ / cos β at each corner, the least of them by that in the middle', source: SPREAD, curved: true, costly: true,
  compute: x => {
    const [off, w, h] = [x[x.length - 3]!, x[x.length - 2]! / 2, x[x.length - 1]! / 2];
    const weakest = (beside: number): number => {
      const at = referenceOver(byAngle, from, x, beside);
      return Math.min(at([w, h]), at([-w, h]), at([w, -h]), at([-w, -h])) / at(MIDDLE);
    };
    // Nobody knows to which side it lies: left and right change places in a mirror, the worse and the better side do not.
    return off > 0 ? Math.min(weakest(off), weakest(-off)) : off < 0 ? Math.max(weakest(off), weakest(-off)) : weakest(0);
  },
});

/** Light of a reference over its plate for each watt, its middle so far beside that of the plate. Inputs: those of `cornerLight` up to the direction or angle of the light. */
function referenceOver(byAngle: boolean, from: From, x: readonly number[], beside: number): (at: OnPlate) => number {
  const [normal, along] = byAngle ? [FRONT, level(x[BEAM]!, from)] : [vector(x, BEAM), vector(x, BEAM + 3)];
  const plate = facing(HERE, normal);
  const light = lightOverPlane(beamOf(x), { from: fromFrame(plate, [beside, 0, 0]), along }, 1, HERE, normal);
  return ([across, up]) => light(across, up);
}

/** How an object is laid out for its light: what it is, in how many patches, and whether its light, and how the plate stands to it, are known by directions or by an angle. */
export interface Laid {
  readonly shape: Shape | 'screen'
  readonly lying: Lying
  /** no shape is written */
  readonly assumed?: boolean
  readonly count: number
  readonly byAngle: boolean
  readonly plateByAngle: boolean
}

/** Patches for a beam of this radius, all of them small beside it; 0 where it is too narrow for that, and counts as one spot. */
export function patchesFor(radius: number, [w, h, d]: Vector): number {
  const area = 2 * (w * h + h * d + d * w);
  const count = Math.ceil((9 * area) / (radius * radius));
  return count > MOST ? 0 : Math.max(LEAST, count);
}
const [LEAST, MOST] = [120, 4000];

/**
 * Light at the middle of a plate for each watt on the object, were it white. Inputs: the beam where it meets the object; distance of plate and object; the plate's normal (three) or, `plateByAngle`,
 * the angle of the object light from it; share that is mirror-like (not of a screen) and half width of its lobe; the direction of the light and that from the object to the plate (three each) or, `byAngle`,
 * the angle between the light and the line of sight; width, height and depth of the object.
 */
export const objectLight = (laid: Laid, patchesOf = remembered(laid)): Rule => ({
  name: 'light from an object', of: [laid.shape, laid.assumed, laid.lying, laid.count, laid.byAngle, laid.plateByAngle], curved: true, costly: true,
  formula: laid.shape === 'screen' ? 'Σ E cos θ dA · (n + 1)/(2π) cosⁿ γ cos θp / r² over the lit screen: γ from straight on, half of the light at the scatter angle'
    : `Σ E cos θs · (cos θo / π, and a lobe round the mirror direction) · cos θp dA / r² over what is lit and seen of it${shapeWords({ assumed: laid.assumed === true })}`,
  source: LAMBERT,
  compute: x => objectLightAt(laid, patchesOf, x, MIDDLE),
});

/** Where on a plate, from its middle: to the right and up as seen from before it, m. */
export type OnPlate = readonly [number, number];
const MIDDLE: OnPlate = [0, 0];

function objectLightAt(laid: Laid, patchesOf: (size: Vector, sight: Vector) => readonly Patch[], x: readonly number[], [across, up]: OnPlate): number {
  const screen = laid.shape === 'screen';
  let i = BEAM;
  const distance = x[i++]!;
  const plate = i;
  i += laid.plateByAngle ? 1 : 3;
  const gloss = screen ? 0 : x[i++]!;
  const halfWidth = x[i++]!;
  const [along, sight]: [Vector, Vector] = laid.byAngle ? [[Math.sin(x[i]!), Math.cos(x[i++]!), 0], FRONT] : [unit(vector(x, i)), unit(vector(x, (i += 3)))];
  const size = vector(x, x.length - 3);
  const middle: Vector = [sight[0] * distance, sight[1] * distance, sight[2] * distance];
  // An angle does not tell to which side the plate is turned: the mean of turned either way is that of a plate which faces the object, by the cosine.
  const [normal, slant] = laid.plateByAngle ? [sight, Math.abs(Math.cos(x[plate]!))] : [vector(x, plate), 1];
  const point = across === 0 && up === 0 ? middle : fromFrame(facing(middle, normal), [across, up, 0]);
  const patches = laid.count === 0 ? spot(laid, size, sight, along, beamOf(x)) : patchesOf(size, sight);
  return slant * lightFromSurface(patches, beamOf(x), { from: HERE, along }, screen ? { kind: 'on', halfWidth } : { kind: 'back', gloss, halfWidth }, point, normal);
}

/** An object beam among those whose light is summed over a plate: how its object is laid out, and how many inputs that takes. */
export interface ObjectPart {
  readonly laid: Laid
  readonly inputs: number
}

/**
 * Least or greatest beam ratio over the middle, the edges and the corners of a plate, as a share of that in the middle. Inputs: width and height of the plate, then those of `cornerLight` but for its
 * last three, `reference` of them, then of each object beam those of `objectLight`; of several the light of each in the middle goes before them. The beam is taken to be centred.
 */
export const ratioOver = (end: 'least' | 'greatest', byAngle: boolean, from: From, objects: readonly ObjectPart[], reference: number): Rule => {
  const patches = objects.map(o => remembered(o.laid));
  return {
    name: `${end} ratio across a plate`, of: [end, byAngle, from, reference, ...objects.flatMap(({ laid: l, inputs }) => [l.shape, l.assumed, l.lying, l.count, l.byAngle, l.plateByAngle, inputs])], curved: true, costly: true,
    formula: `${end} of (light of the reference / light of ${objects.length === 1 ? 'the object' : 'all object beams'}) over middle, edges and corners of the plate, by that in the middle`, source: `${SPREAD}; ${LAMBERT}`,
    compute: x => {
      const sides = [x[0]!, x[1]!];
      const light = referenceOverPlate(byAngle, from, x.slice(0, 2 + reference), NET);
      const sum = NET.map(() => 0);
      let [all, i] = [0, 2 + reference];
      objects.forEach(({ laid, inputs }, k) => {
        const own = objects.length === 1 ? 1 : x[i++]!;
        objectOverPlate(laid, [...sides, ...x.slice(i, i + inputs)], NET, patches[k]).forEach((share, n) => { sum[n]! += own * share; });
        all += own;
        i += inputs;
      });
      const ratios = light.map((l, n) => (l * all) / sum[n]!);
      return end === 'least' ? Math.min(...ratios) : Math.max(...ratios);
    },
  };
};
const NET: readonly OnPlate[] = [-1, 0, 1].flatMap(a => [-1, 0, 1].map(b => [a, b] as const));

/** Points of a plate as shares of half its width and height, in metres. */
const onPlate = ([w, h]: readonly number[], at: readonly OnPlate[]): readonly OnPlate[] => at.map(([a, b]) => [(a * w!) / 2, (b * h!) / 2]);

/** Light of a reference over its plate, beside that in the middle. Inputs: width and height of the plate, then those of `cornerLight` but for its last three. The beam is taken to be centred. */
export function referenceOverPlate(byAngle: boolean, from: From, x: readonly number[], at: readonly OnPlate[]): number[] {
  const light = referenceOver(byAngle, from, x.slice(2), 0);
  const middle = light(MIDDLE);
  return onPlate(x, at).map(p => light(p) / middle);
}

/** The same of what sends its own light. Inputs: width and height of the plate, then those of `objectLight`. */
export function objectOverPlate(laid: Laid, x: readonly number[], at: readonly OnPlate[], patchesOf = remembered(laid)): number[] {
  const object = x.slice(2);
  const middle = objectLightAt(laid, patchesOf, object, MIDDLE);
  return onPlate(x, at).map(p => objectLightAt(laid, patchesOf, object, p) / middle);
}

/** Draws mostly leave an object as it is: its patches are kept until it is another. */
function remembered(laid: Laid): (size: Vector, sight: Vector) => readonly Patch[] {
  let kept: { readonly key: readonly number[]; readonly patches: readonly Patch[] } | undefined;
  return (size, sight) => {
    const key = [...size, ...sight];
    if (!kept || kept.key.some((v, i) => v !== key[i])) kept = { key, patches: patchesOf(laid, size, sight) };
    return kept.patches;
  };
}

function patchesOf({ shape, lying, count }: Laid, size: Vector, sight: Vector): readonly Patch[] {
  const all = surfaceOf({ shape, lying }, sight, size, count);
  // The middle of the plate lies along the line of sight: of a convex body it sees nothing that looks the other way.
  return shape === 'points' ? all : all.filter(({ normal: n }) => n[0] * sight[0] + n[1] * sight[1] + n[2] * sight[2] > 0);
}

/** What a beam lights that is far narrower than the object: where its axis, which goes through the middle of it, meets it, as large as the beam there. */
function spot({ shape, lying }: Laid, size: Vector, sight: Vector, along: Vector, beam: Beam): Patch[] {
  const { reach, normal } = met(shape, lying, size, sight, [-along[0], -along[1], -along[2]]);
  const at: Vector = [-along[0] * reach, -along[1] * reach, -along[2] * reach];
  const w = radiusHere(carried(beam, -reach));
  const slant = Math.abs(normal[0] * along[0] + normal[1] * along[1] + normal[2] * along[2]) || 1;
  // Its middle has all of the power where it is half the area within 1/e².
  return [{ point: at, normal, area: (Math.PI * w.level * w.upright) / 2 / slant }];
}

/** Where light that comes from there meets an object. A screen is thin and passes the light on; single points lie anywhere, and are seen from every side. */
function met(shape: Laid['shape'], lying: Lying, size: Vector, sight: Vector, from: Vector): Toward {
  if (shape === 'screen') return { reach: 0, normal: sight };
  const anywhere: Toward = { reach: 0, normal: HERE };
  if (shape === 'points') return anywhere;
  return (shape === 'rounded' ? roundedToward(facing(HERE, sight), size, from) : undefined) ?? surfaceToward(solidOf(shape, lying, size, sight), from) ?? anywhere;
}

/** Light that nobody has metered. Inputs: power on the object, light for each watt, share that it gives, how far off that may be. */
export const PREDICTED_OBJECT: Rule = {
  name: 'predicted object light', formula: 'power on the object · light for each watt of a white one · share that it gives back · scatter', curved: true,
  compute: x => x.reduce((a, b) => a * b, 1), partials: x => x.map((_, i) => x.reduce((a, b, k) => (k === i ? a : a * b), 1)),
};
export const PREDICTED_SCREEN: Rule = {
  name: 'predicted light of a screen', formula: 'power on the screen · light for each watt · (1 − loss) · scatter', curved: true,
  compute: ([p, y, loss, s]) => p! * y! * (1 - loss!) * s!, partials: ([p, y, loss, s]) => [y! * (1 - loss!) * s!, p! * (1 - loss!) * s!, -p! * y! * s!, p! * y! * (1 - loss!)],
};
/** Light of a screen past and through what stands before it. Inputs: power on the screen, light for each watt, loss and scatter of the screen, share that the object lets by and through. */
export const PREDICTED_BEHIND: Rule = {
  name: 'predicted light through an object', formula: 'power on the screen · light for each watt · (1 − loss) · scatter · share that passes', curved: true,
  compute: ([p, y, loss, s, passes]) => p! * y! * (1 - loss!) * s! * passes!,
};
/** Light of an object that a screen lights. Inputs: power on the screen, light on the object for each watt, loss and scatter of the screen; share of that light at the plate, tone and scatter of the object. */
export const PREDICTED_SOFT: Rule = {
  name: 'predicted light of an object by a screen', formula: 'power on the screen · light on the object for each watt · (1 − loss) · scatter · share at the plate · tone · scatter', curved: true,
  compute: ([p, y, loss, s, share, tone, scatter]) => p! * y! * (1 - loss!) * s! * share! * tone! * scatter!,
};
/**
 * Light at the middle of a plate as a share of that on an object which is evenly lit, were it white. Inputs as of {@link objectLight} from the distance on, for an object.
 * The light counts as coming from the middle of what sends it.
 */
export const evenlyLit = (laid: Laid, rule = objectLight({ ...laid, count: LEAST })): Rule => ({
  name: 'share of even light', ...(rule.of ? { of: rule.of } : {}), curved: true, costly: true, source: LAMBERT, formula: 'Σ cos θs · (cos θo / π, and a lobe round the mirror direction) · cos θp dA / r² over what is lit and seen of it',
  compute: x => (rule.compute([...EVEN, ...x]) * (Math.PI * WIDE * WIDE)) / 2,
});
/** A parallel beam far wider than any object, whose middle has 2/(π w²) of each watt: it is as even as light can be. */
const WIDE = 100;
const EVEN = [0, (Math.PI * WIDE * WIDE) / 633e-9, 0, (Math.PI * WIDE * WIDE) / 633e-9, 633e-9, 1];
/** Inputs: power, light for each watt. */
export const PREDICTED_REFERENCE: Rule = { name: 'predicted light', formula: 'power · light for each watt', compute: ([p, y]) => p! * y!, partials: ([p, y]) => [y!, p!] };

/**
 * Beam ratio of a single-beam hologram. Inputs: tone, share that passes from the layer to the object once, scatter, distance of the middle of the object and
 * its width, height and depth.
 */
export const SINGLE_RATIO: Rule = {
  name: 'single-beam ratio', formula: '1 / (tone · T² · scatter · a²/(a² + d²)): a the radius of a disc as large as the front of the object, d the distance of that front', source: `conservation of energy; the disc: ${LAMBERT}`, curved: true,
  compute: ([tone, t, scatter, distance, w, h, depth]) => {
    const [square, gap] = [(w! * h!) / Math.PI, Math.max(0, distance! - depth! / 2)];
    return (singleBeamRatio(tone!, t!) / scatter!) * ((square + gap * gap) / square);
  },
};

/**
 * Share that a splitter has to reflect. Inputs: the ratio, light at the plate for each watt that enters the reference arm, and for each watt that enters each object arm.
 * `reflected`: the object beams are those that it reflects.
 */
export const splitForRatio = (reflected: boolean): Rule => ({
  name: 'split for a ratio', of: [reflected], curved: true,
  formula: `${reflected ? 'share' : '1 − share'} to the objects, which is A_r / (A_r + K A_o): K the ratio, A_r and A_o the light at the plate for each watt that enters either arm`, source: 'conservation of energy: K = (1 − ρ) A_r / (ρ A_o)',
  compute: ([ratio, reference, ...objects]) => {
    const rho = objectShare(ratio!, reference!, objects.reduce((a, b) => a + b, 0));
    return reflected ? rho : 1 - rho;
  },
});

/** The same by the ratio that was metered while it reflected a known share. Inputs: the ratio that is aimed at, the ratio that was metered, the share reflected then. */
export const splitFromMetered = (reflected: boolean): Rule => ({
  name: 'split for a ratio, from a metered one', of: [reflected], curved: true,
  formula: `${reflected ? 'share' : '1 − share'} to the objects, which is x / (x + K): K the ratio aimed at, x the metered ratio · (share to the objects then) / (share to the reference then)`, source: 'conservation of energy: the ratio goes as the one share to the other',
  compute: ([aim, metered, share]) => {
    const [object, reference] = reflected ? [share!, 1 - share!] : [1 - share!, share!];
    const rho = reference > 0 && object > 0 ? objectShare(aim!, (metered! * object) / reference, 1) : Number.NaN;
    return reflected ? rho : 1 - rho;
  },
});

/** Share of the reference that the bare face of a plate throws back. Inputs: its angle from the normal, index of the face. Half of either polarization. */
export const FACE_LOSS: Rule = {
  name: 'loss at the face', formula: '(R_s + R_p) / 2', source: 'Fresnel’s equations (Born & Wolf, Principles of Optics)',
  compute: ([angle, index]) => { const { s, p } = reflectedShares(angle!, index!); return (s + p) / 2; },
};

/** Times of a test strip in half stops, s, each as a hand can keep it: as many as its limits ask for, five at least and nine at most. */
export function handStrip(middle: number, low: number, high: number): readonly number[] {
  const stops = Math.log2(Math.max(1, high / low));
  const count = Math.min(9, Math.max(5, 2 * Math.ceil(stops) + 1));
  return [...new Set(stripExposures(middle, HALF_STOP, count).map(handTime))];
}
