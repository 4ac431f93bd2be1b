/** Rules of the fringes on a plate: how fine they are, how they lie, and what the layer makes of them. */
import { layerEfficiency, meeting } from '../../optics/fringes/efficiency.ts';
import { RESOLVING_MARGIN, shareOfResolvingPower } from '../../optics/fringes/resolving.ts';
import { reflectionBandwidth } from '../../optics/fringes/selectivity.ts';
import { fringeTilt, layerFrequency, layerFringes, plateFringes } from '../../optics/fringes/spacing.ts';
import { refractedDirection } from '../../optics/surfaces/refract.ts';
import { kleinCookQ, THICK_FROM_Q, THIN_TO_Q } from '../../optics/fringes/volume.ts';
import { facing, fromFrame, type Frame } from '../../optics/solids/frame.ts';
import { angleFromNormal, cross, dot, unit, type Vector } from '../../optics/vectors.ts';
import type { Rule } from '../graph.ts';
import { smooth } from './slopes.ts';

export { RESOLVING_MARGIN, THICK_FROM_Q, THIN_TO_Q };

export type HologramWay = 'transmission' | 'reflection';

/** From where a reference comes that is known by its angle: level from the side, overhead, from below. */
export type From = 'the side' | 'above' | 'below';
/** The side from which angles count, for who looks at the plate from the object: to the right, or up. */
export const sideOf = (from: From): Vector => (from === 'the side' ? [1, 0, 0] : [0, 0, from === 'above' ? 1 : -1]);
/** Direction of light that comes from there, at an angle from the normal of a plate that is looked at along y; `on` is 1 for light from the object's side, −1 for light from behind the plate. */
export function arrivingFrom(from: From, angle: number, on: 1 | -1): Vector {
  const [x, , z] = sideOf(from);
  const s = Math.sin(angle);
  return [x === 0 ? 0 : -s * x, on * Math.cos(angle), z === 0 ? 0 : -s * z];
}

/** Sine of five degrees: nearer to the normal than that light comes from no side. */
const SQUARELY = 0.087;
/** From where light comes to a plate, by its normal and the direction of the light; undefined where it comes nearly squarely. */
export function comesFrom([nx, ny, nz]: Vector, [x, y, z]: Vector): From | undefined {
  const into = nx * x + ny * y + nz * z;
  const up = z - into * nz;
  const size = Math.hypot(x - into * nx, y - into * ny, up);
  if (size < SQUARELY) return undefined;
  return -up > size * Math.SQRT1_2 ? 'above' : up > size * Math.SQRT1_2 ? 'below' : 'the side';
}

/** Which inputs a rule of fringes has, in this order; what is left out is not known and counts as nothing. */
export interface Known {
  /** places: plate, its normal, object, direction of the reference, three each. angles: reference, object, and the distance of the object where `far` is not set */
  readonly by: 'places' | 'angles'
  /** of a setup that names distances: where the reference comes from */
  readonly way: HologramWay
  /** by angles: the side to which they count */
  readonly from: From
  /** by angles: the distance of the object is not known, so that all of it lies in one direction */
  readonly far: boolean
  /** how far the reference is past the focus that it spreads from, and that focus's Rayleigh range */
  readonly spread: boolean
  /** width and height of the plate */
  readonly plate: boolean
  /** width, height and depth of the object */
  readonly object: boolean
}

/** A point of the plate and one of the object, each from its middle: as shares of its sizes, right, up, and for the object toward the plate; single points of an object in metres. */
export interface Spot {
  readonly plate: readonly [number, number]
  readonly object: Vector
  readonly metres?: true
}
export const MIDDLE: Spot = { plate: [0, 0], object: [0, 0, 0] };

/** Both beams where they meet a point of the plate. */
interface Beams { readonly normal: Vector; readonly reference: Vector; readonly object: Vector }

/** All that the beams rest on but the pair of points. */
interface Scene {
  readonly normal: Vector;
  readonly plate: Frame;
  readonly object: Frame;
  /** direction of the reference at the middle of the plate, and curvature of its wavefronts, 1/m */
  readonly reference: Vector;
  readonly curvature: number;
  readonly plateSize: readonly [number, number];
  readonly objectSize: Vector;
  /** behind what the beams take */
  readonly rest: readonly number[];
}

function sceneOf(known: Known, x: readonly number[]): Scene {
  let i = 0;
  const take = (): number => x[i++]!;
  const vector = (): Vector => [take(), take(), take()];
  const byPlaces = (): readonly [Vector, Vector, Vector, Vector] => [vector(), vector(), vector(), vector()];
  const byAngles = (): readonly [Vector, Vector, Vector, Vector] => {
    const [a, b] = [take(), take()];
    const distance = known.far ? 1 : take();
    // Seen from the object: the plate faces it, and both angles count to one side.
    const [x, y, z] = arrivingFrom(known.from, b, 1);
    return [[0, 0, 0], FRONT, [-distance * x, -distance * y, -distance * z], arrivingFrom(known.from, a, known.way === 'transmission' ? 1 : -1)];
  };
  const [plate, normal, object, arriving] = known.by === 'places' ? byPlaces() : byAngles();
  const curvature = known.spread ? curved(take(), take()) : 0;
  const plateSize: readonly [number, number] = known.plate ? [take(), take()] : [0, 0];
  const objectSize: Vector = known.object ? vector() : [0, 0, 0];
  return { normal, plate: facing(plate, normal), object: facing(object, minus(plate, object)), reference: unit(arriving), curvature, plateSize, objectSize, rest: x.slice(i) };
}

function beamsOf(s: Scene, known: Known, spot: Spot): Beams {
  const { on, reference } = atPlate(s, known, spot.plate);
  return { normal: s.normal, reference, object: unit(minus(on, partAt(s, known, spot.object, spot.metres))) };
}

/** A point of the plate, m, and the reference there. */
function atPlate(s: Scene, known: Known, plate: Spot['plate']): { readonly on: Vector; readonly reference: Vector } {
  const [a, b] = known.far ? MIDDLE.plate : plate;
  const on = fromFrame(s.plate, [a * s.plateSize[0], b * s.plateSize[1], 0]);
  // Light that spreads from a point 1/C before the plate: direction + C · offset, which is right for plane and converging light too.
  const [r, d, c] = [s.reference, minus(on, s.plate.origin), s.curvature];
  return { on, reference: unit([r[0] + c * d[0], r[1] + c * d[1], r[2] + c * d[2]]) };
}

/** A point of the object, m. */
function partAt(s: Scene, known: Known, object: Vector, metres: true | undefined): Vector {
  const [right, up, toward] = known.far ? MIDDLE.object : object;
  const [wide, high, deep] = s.objectSize;
  return fromFrame(s.object, metres ? [right, up, toward] : [right * wide, up * high, toward * deep]);
}

/** The beams at a point of the plate, and the inputs behind those that {@link Known} names: the index of the layer and the like. */
function beamsAt(known: Known, spot: Spot, x: readonly number[]): Beams & { readonly rest: readonly number[] } {
  const s = sceneOf(known, x);
  return { ...beamsOf(s, known, spot), rest: s.rest };
}
const FRONT: Vector = [0, -1, 0];
const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
/** Curvature of the wavefronts, 1/m, of a beam past its focus. */
const curved = (past: number, rayleigh: number): number => (past === 0 ? 0 : past / (past * past + rayleigh * rayleigh));

const madeWith = (known: Known, spot: Spot, ...more: readonly unknown[]): readonly unknown[] => [known.by, known.way, known.from, known.far, known.spread, known.plate, known.object, ...spot.plate, ...spot.object, spot.metres, ...more];

/** A wavelength with which the functions of optics are asked for what does not depend on it. */
const ANY = 1e-6;
const MAS450 = 'MIT OpenCourseWare MAS.450, “Transmission hologram equations”';
const COLLIER = 'Collier, Burckhardt & Lin, Optical Holography (1971) (from memory)';

/** Fringes in each wavelength, along the surface of the plate. Inputs as {@link Known} says. */
export const alongSurface = (known: Known, spot: Spot): Rule => smooth({
  name: 'fringes in a wavelength', of: madeWith(known, spot), formula: '|k₁ − k₂| along the plate; both in its normal’s plane: |sin θ₁ − sin θ₂|', source: MAS450,
  compute: x => { const b = beamsAt(known, spot, x); return Math.hypot(...plateFringes(ANY, b.normal, b.reference, b.object)) * ANY; },
});
/** Fringes in each wavelength, across their planes in the layer. Inputs as {@link Known} says, then the index of the layer. */
export const acrossLayer = (known: Known, spot: Spot): Rule => smooth({
  name: 'fringes in a wavelength, in the layer', of: madeWith(known, spot), formula: '2n sin(δ/2), δ the angle of both beams in the layer', source: COLLIER,
  compute: x => { const b = beamsAt(known, spot, x); return layerFrequency(ANY, b.rest[0]!, b.normal, b.reference, b.object) * ANY; },
});
/** Inputs: fringes in a wavelength, the wavelength. */
export const PER_METRE: Rule = { name: 'fringes', formula: 'fringes in a wavelength / λ', compute: ([s, wavelength]) => s! / wavelength!, partials: ([s, wavelength]) => [1 / wavelength!, -s! / (wavelength! * wavelength!)] };
/** Inputs: finest fringes, resolving power. */
export const RESOLVING_SHARE: Rule = {
  name: 'share of the resolving power', formula: 'finest fringes / resolving power', compute: ([needed, rated]) => shareOfResolvingPower(needed!, rated!), partials: ([needed, rated]) => [1 / rated!, -needed! / (rated! * rated!)],
};
/** Tilt of the fringe planes against the plate. Inputs as {@link Known} says, then the index. */
export const tilt = (known: Known): Rule => smooth({
  name: 'tilt of the fringe planes', of: madeWith(known, MIDDLE), formula: 'the planes halve the angle of both beams in the layer', source: 'Kogelnik, Bell Syst. Tech. J. 48, 2909 (1969)',
  compute: x => { const b = beamsAt(known, MIDDLE, x); return fringeTilt(b.rest[0]!, b.normal, b.reference, b.object); },
});
/** How thick a hologram is. Inputs as {@link Known} says, then index, wavelength, thickness of the layer. */
export const volume = (known: Known): Rule => ({
  name: 'volume parameter', of: madeWith(known, MIDDLE), formula: 'Q = 2π λ d f² / n, f in the layer; thin up to 1, thick from 10', source: 'Klein & Cook, IEEE Trans. Sonics Ultrason. SU-14, 123 (1967)',
  compute: x => { const b = beamsAt(known, MIDDLE, x); const [n, wavelength, d] = b.rest as [number, number, number]; return kleinCookQ(wavelength, n, d, layerFrequency(wavelength, n, b.normal, b.reference, b.object)); },
});
/** Share of the reference that goes into the image when it shows the plate as it recorded it. Inputs as {@link Known} says, then index, wavelength, thickness, amplitude of the index. */
export const efficiency = (known: Known): Rule => ({
  name: 'estimated efficiency', of: madeWith(known, MIDDLE), curved: true, formula: 'transmission sin²ν, reflection tanh²ν, ν = π n₁ d / (λ √(cos θ₁ cos θ₂)), angles in the layer', source: 'Kogelnik, Bell Syst. Tech. J. 48, 2909 (1969)',
  compute: x => {
    const b = beamsAt(known, MIDDLE, x);
    const [n, wavelength, d, amplitude] = b.rest as [number, number, number, number];
    return layerEfficiency(wavelength, d, amplitude, meeting(wavelength, n, b.normal, b.reference, layerFringes(wavelength, n, b.normal, b.reference, b.object)));
  },
});
/** Width of the band of colours that a reflection hologram sends back, in the limit of faint fringes. Inputs as {@link Known} says, then index, wavelength, thickness. */
export const bandwidth = (known: Known): Rule => ({
  name: 'bandwidth', of: madeWith(known, MIDDLE), curved: true, formula: '4 ξ½ n cos θ / (π d f²), θ in the layer; along the normal 0.443 λ² / (n d)', source: 'Kogelnik, Bell Syst. Tech. J. 48, 2909 (1969)',
  compute: x => {
    const b = beamsAt(known, MIDDLE, x);
    const [n, wavelength, d] = b.rest as [number, number, number];
    return reflectionBandwidth(n, d, layerFrequency(wavelength, n, b.normal, b.reference, b.object), 0, angleFromNormal(b.normal, refractedDirection(b.object, b.normal, n)));
  },
});
/**
 * How far the reference stands from the object, beside what the halo of the object needs: below 1 both overlap. The object is as wide as it is in that direction: beside a level slit, what counts of a
 * reference from above is the slit's width. Inputs as {@link Known} says.
 */
export const separation = (known: Known, shape: Shape): Rule => smooth({
  name: 'room beside the object', of: madeWith(known, MIDDLE, JSON.stringify(shape)), curved: true, formula: '|sin θ_ref − sin θ_obj| / (3 · half of the object’s extent in sines), in the direction in which they are farthest apart', source: 'Leith & Upatnieks, J. Opt. Soc. Am. 52, 1123 (1962); Goodman, Introduction to Fourier Optics (from memory)',
  compute: x => timesHalf(known, shape, x) / 3,
});
export type Shape = 'box' | 'ball' | readonly Vector[];

/** Reference less the middle of the object, and half of its width and of its height or each single point from its middle, in sines along the plate. Its depth lies along the line of sight, and has none. */
function inSines(known: Known, shape: Shape, x: readonly number[]): { readonly carrier: Vector; readonly parts: readonly Vector[]; readonly normal: Vector } {
  const middle = beamsAt(known, MIDDLE, x);
  const at = (object: Vector): Vector => {
    const end = beamsAt(known, { ...MIDDLE, object, ...(typeof shape === 'string' ? {} : { metres: true as const }) }, x);
    return times(plateFringes(ANY, middle.normal, middle.object, end.object), ANY);
  };
  // Half of a side is half of the way between its two ends, which lie a little otherwise in sines: so right and left count alike.
  const half = ([r, u]: Vector): Vector => times(minus(at([r, u, 0]), at([-r, -u, 0])), 0.5);
  return { carrier: times(plateFringes(ANY, middle.normal, middle.object, middle.reference), ANY), parts: typeof shape === 'string' ? HALF_SIDES.map(half) : shape.map(at), normal: unit(middle.normal) };
}
const HALF_SIDES: readonly Vector[] = [[0.5, 0, 0], [0, 0.5, 0]];
const times = (v: readonly number[], k: number): Vector => [v[0]! * k, v[1]! * k, v[2]! * k];

/** How many times the object would have to grow about its middle to reach the reference. The halo is as wide as all differences of its points, twice the object, and the image must keep clear of it. */
function timesHalf(known: Known, shape: Shape, x: readonly number[]): number {
  const { carrier, parts, normal } = inSines(known, shape, x);
  const wide = (u: Vector): number => { const all = parts.map(p => Math.abs(dot(p, u))); return shape === 'box' ? all.reduce((a, b) => a + b, 0) : shape === 'ball' ? Math.hypot(...all) : Math.max(...all); };
  // A convex outline is left at one of its edges; a round one has edges everywhere, and of points the way to the reference itself counts.
  const ways = shape === 'box' ? parts.map(p => unit(cross(normal, p))) : shape === 'ball' ? AROUND.map(t => turned(carrier, normal, t)) : [unit(carrier)];
  return Math.max(...ways.map(u => Math.abs(dot(carrier, u)) / Math.max(1e-9, wide(u))));
}
const AROUND: readonly number[] = Array.from({ length: 37 }, (_, i) => ((i - 18) * Math.PI) / 37);
const turned = (v: Vector, about: Vector, angle: number): Vector => { const [a, b] = [unit(v), unit(cross(about, v))]; return [0, 1, 2].map(i => a[i]! * Math.cos(angle) + b[i]! * Math.sin(angle)) as unknown as Vector; };

/** Whether what is open of a hologram is long in the direction in which the reference stands beside it, or across: `along`, `across`; undefined where it is about as wide as high, or the reference stands aslant. Plain numbers. */
export function slitLies(known: Known, x: readonly number[]): 'along' | 'across' | undefined {
  const { carrier, parts: [width, height] } = inSines(known, 'box', x);
  const [w, h] = [Math.hypot(...width!), Math.hypot(...height!)];
  const [long, short] = w > h ? [width!, height!] : [height!, width!];
  if (Math.max(w, h) < SLIT * Math.min(w, h)) return undefined;
  const [a, b] = [long, short].map(v => Math.abs(dot(carrier, unit(v)))) as [number, number];
  return a > 2 * b ? 'along' : b > 2 * a ? 'across' : undefined;
}
/** So many times as long as wide is a slit. */
const SLIT = 3;

/** Path change for each metre that the plate moves against its beams: in the worst direction, along its surface, along its normal. Inputs as {@link Known} says. */
export const againstBeams = (known: Known, along: 'worst' | 'surface' | 'normal'): Rule => smooth({
  name: 'path change as the plate moves', of: madeWith(known, MIDDLE, along), formula: along === 'worst' ? '|k₁ − k₂|' : along === 'surface' ? '|k₁ − k₂| along the plate' : '|k₁ − k₂| along its normal', source: COLLIER,
  compute: x => {
    const b = beamsAt(known, MIDDLE, x);
    const k = minus(b.object, b.reference);
    const across = Math.abs(dot(k, unit(b.normal)));
    return along === 'worst' ? Math.hypot(...k) : along === 'normal' ? across : Math.sqrt(Math.max(0, dot(k, k) - across * across));
  },
});

/** From which side of the plate each beam comes: below 0 they come from opposite sides; near 0 one of them grazes it. Plain numbers: normal and both directions. */
export const sidesOf = (normal: readonly number[], one: readonly number[], other: readonly number[]): number =>
  dot(unit(normal as unknown as Vector), unit(one as unknown as Vector)) * dot(unit(normal as unknown as Vector), unit(other as unknown as Vector));

const STEPS: readonly number[] = [0, -0.5, 0.5];
/** Points of a plate: its middle, its corners, and the middles of its edges. */
const PLATE_POINTS: readonly (readonly [number, number])[] = STEPS.flatMap(a => STEPS.map(b => [a, b] as const));
/** Points of a box likewise, and of a ball those of its axes only: it has no corners. */
const BOX_POINTS: readonly Vector[] = STEPS.flatMap(a => STEPS.flatMap(b => STEPS.map((c): Vector => [a, b, c])));
const BALL_POINTS: readonly Vector[] = BOX_POINTS.filter(p => p.filter(c => c !== 0).length < 2);

/** Where the fringes are finest, in plain numbers: over the middle, the edges and the corners of plate and object. */
export function finestSpot(known: Known, way: HologramWay, shape: Shape, x: readonly number[]): Spot {
  const points = typeof shape === 'string' ? (known.object ? (shape === 'ball' ? BALL_POINTS : BOX_POINTS) : [MIDDLE.object]) : shape;
  const metres: Pick<Spot, 'metres'> = typeof shape === 'string' ? {} : { metres: true };
  const scene = sceneOf(known, x);
  let best: { readonly spot: Spot; readonly fringes: number } = { spot: { ...MIDDLE, ...metres }, fringes: 0 };
  const parts = points.map(object => ({ object, from: partAt(scene, known, object, metres.metres) }));
  for (const plate of known.plate ? PLATE_POINTS : [MIDDLE.plate]) {
    const { on, reference } = atPlate(scene, known, plate);
    for (const { object, from } of parts) {
      const light = unit(minus(on, from));
      const fringes = way === 'transmission' ? Math.hypot(...plateFringes(ANY, scene.normal, reference, light)) : layerFrequency(ANY, scene.rest[0]!, scene.normal, reference, light);
      // Of two alike the first counts, also where rounding parts them.
      if (fringes > best.fringes * (1 + 1e-9)) best = { spot: { plate, object, ...metres }, fringes };
    }
  }
  return best.spot;
}
