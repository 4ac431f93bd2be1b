/** Rules of the path difference and the brightness of single pairs of a point of the plate and a part of the object, and the maps that find which pairs matter. */
import { contrastTable, darkest, recordedBrightnesses, type ContrastTable } from '../../optics/maps/brightness.ts';
import { differenceExtremes } from '../../optics/maps/differences.ts';
import { offsetFor, pairs } from '../../optics/maps/pairs.ts';
import { packed, platePoints } from '../../optics/maps/points.ts';
import { facing, fromFrame, inFrame, type Frame } from '../../optics/solids/frame.ts';
import { isLitAndSeen } from '../../optics/surface/lit.ts';
import { pointsWithin } from '../../optics/surface/patches.ts';
import { pathTo, type Source } from '../../optics/surface/source.ts';
import { distance, type Vector } from '../../optics/vectors.ts';
import type { Rule } from '../graph.ts';
import { smooth } from './slopes.ts';
import { minus, sourceOf, vectorAt } from './object.ts';
import { HERE, PARTS, surfaceOf, type Form } from './surface.ts';

/** How a pair of arms is laid out for its map. */
export interface Layout {
  /** a hologram stands for the object of a transfer: then its normal stands behind its place */
  readonly form: Form | 'hologram'
  /** whether each of both lights spreads: then past and Rayleigh range of its focus stand behind its direction */
  readonly reference: boolean
  readonly light: boolean
}

/** A point of the plate and a part of the object, as shares of their sizes from their middles: right and up as seen by who looks at the face of the plate; right, up and toward the plate as it sees the object; of single points in metres. */
export interface Spot {
  readonly plate: readonly [number, number]
  readonly object: Vector
}

/** The setup as numbers, the middle of the object at (0, 0, 0). */
export interface Scene {
  readonly mismatch: number
  readonly plate: Frame
  readonly width: number
  readonly height: number
  readonly object: Frame
  readonly size: Vector
  readonly reference: Source
  readonly light: Source
  /** behind what the layout takes */
  readonly rest: readonly number[]
}

/**
 * Inputs: mismatch of the middles; places of plate and object; normal of the plate; of a transfer that of the first hologram; direction of the reference, and its focus; direction of the
 * light on the object, and its focus; width and height of the plate; width, height and depth of the object, but of single points.
 */
export function sceneOf(layout: Layout, x: readonly number[]): Scene {
  let i = 1;
  const take = (): number => x[i++]!;
  const vector = (): Vector => { i += 3; return vectorAt(x, i - 3); };
  const [at, middle] = [vector(), vector()];
  const plateAt = minus(at, middle);
  const normal = vector();
  const object = facing(HERE, layout.form === 'hologram' ? vector() : plateAt);
  const source = (where: Vector, spread: boolean): Source => { const along = vector(); return spread ? sourceOf(where, along, take(), take()) : sourceOf(where, along); };
  const reference = source(plateAt, layout.reference);
  const light = source(HERE, layout.light);
  const [width, height] = [take(), take()];
  // Single points are their own measure, in metres.
  const size = layout.form !== 'hologram' && layout.form.points ? METRE : vector();
  return { mismatch: x[0]!, plate: facing(plateAt, normal), width, height, object, size, reference, light, rest: x.slice(i) };
}

const METRE: Vector = [1, 1, 1];

const onPlate = (s: Scene, [a, b]: Spot['plate']): Vector => fromFrame(s.plate, [a * s.width, b * s.height, 0]);
const onObject = (s: Scene, [r, u, t]: Vector): Vector => fromFrame(s.object, [r * s.size[0], u * s.size[1], t * s.size[2]]);

/** Path by the object less that of the reference, up to what is the same for all pairs. */
const byPaths = (s: Scene, p: Vector, q: Vector): number => pathTo(s.light, q) + between(p, q) - pathTo(s.reference, p);
const between = (p: Vector, q: Vector): number => distance(q[0] - p[0], q[1] - p[1], q[2] - p[2]);
const differenceAt = (s: Scene, plate: Spot['plate'], object: Vector): number => s.mismatch + byPaths(s, onPlate(s, plate), onObject(s, object)) - byPaths(s, s.plate.origin, HERE);

const SOURCE = 'geometry; Collier, Burckhardt & Lin, Optical Holography (1971), ch. 7 (from memory)';
const made = (l: Layout, ...more: readonly unknown[]): readonly unknown[] => [l.reference, l.light, ...(l.form === 'hologram' ? ['hologram'] : [l.form.shape, l.form.lying, ...(l.form.points ?? []).flat()]), ...more];

/** Mismatch of one pair. Inputs as `sceneOf` takes them. */
export const mismatchAt = (layout: Layout, spot: Spot): Rule => smooth({
  name: 'mismatch of a pair', of: made(layout, ...spot.plate, ...spot.object), source: SOURCE,
  formula: 'mismatch of the middles + (source → part → point of the plate) − (source of the reference → point), each less that of the middles',
  compute: x => differenceAt(sceneOf(layout, x), spot.plate, spot.object),
});

/** Where the mismatch of the middle of the object is least and greatest over the middle, the edges and the corners of the plate. */
const EDGES: readonly Spot['plate'][] = [-0.5, 0, 0.5].flatMap(a => [-0.5, 0, 0.5].map(b => [a, b] as const));
export const acrossPlate = (layout: Layout, end: 'least' | 'greatest'): Rule => smooth({
  name: `${end} mismatch across the plate`, of: made(layout, end), source: SOURCE, formula: `${end} of the mismatches of the middle of the object over middle, edges and corners of the plate`,
  compute: x => { const s = sceneOf(layout, x); const all = EDGES.map(p => differenceAt(s, p, HERE)); return end === 'least' ? Math.min(...all) : Math.max(...all); },
});
export const WALK: Rule = { name: 'walk of the path', formula: 'greatest − least mismatch of the middle of the object across the plate', linear: true, compute: ([least, greatest]) => greatest! - least!, partials: () => [-1, 1] };

/** Middles of even cells of a plate, over which brightness is averaged. */
const ACROSS = 7;
const CELLS: readonly Spot['plate'][] = Array.from({ length: ACROSS * ACROSS }, (_, i) => [((i % ACROSS) + 0.5) / ACROSS - 0.5, (Math.floor(i / ACROSS) + 0.5) / ACROSS - 0.5] as const);

/** Brightness with which one part of the object records, averaged over the plate. Inputs as `sceneOf` takes them, then those of the brightness behind the mismatch. */
export const brightnessAt = (layout: Layout, object: Vector, brightness: Rule): Rule => smooth({
  name: 'brightness of a part', of: made(layout, ...object, brightness.name, ...(brightness.of ?? [])), curved: true, costly: true, source: brightness.source ?? SOURCE,
  formula: `mean over the plate of ${brightness.formula}`,
  compute: x => {
    const s = sceneOf(layout, x);
    const args = [0, ...s.rest];
    return meanBrightness(s, object, d => { args[0] = d; return brightness.compute(args); });
  },
});

/** What a map found. */
export interface Found {
  /** the pair whose mismatch is largest in size */
  readonly largest: Spot
  /** the part that records worst, where the coherence is known */
  readonly darkest?: Vector
  /** whether it records worse than the part on the other side: right or left, up or down, near or far */
  readonly sides?: readonly [boolean, boolean, boolean]
}

const [COARSE, STEPS] = [9, 256];
/**
 * The pairs that matter, in plain numbers: of 9 × 9 points of the plate and about 200 parts that are lit and seen (or `parts`). Undefined where nothing of the object is lit and seen.
 * `brightness`: of a mismatch, m.
 */
export function search(layout: Layout, x: readonly number[], brightness: ((mismatch: number) => number) | undefined): Found | undefined {
  const s = sceneOf(layout, x);
  const parts = partsOf(layout, s);
  if (parts.length === 0) return undefined;
  const points = packed(parts);
  const offset = offsetOf(s);
  const edges = platePoints(s.plate, s.width, s.height, COARSE, COARSE, 'to the edges');
  const extremes = differenceExtremes(pairs(edges, points, s.reference, s.light, offset));
  if (!extremes) return undefined;
  const { plate, object, difference } = extremes.largest;
  const share = (i: number): number => i / (COARSE - 1) - 0.5;
  const largest: Spot = { plate: [share(plate % COARSE), share(Math.floor(plate / COARSE))], object: shareOf(s, parts[object]!) };
  if (!brightness) return { largest };
  const worst = darkest(recordedOver(s, points, brightness, Math.abs(difference)));
  if (!worst) return { largest };
  const found = shareOf(s, parts[worst.object]!);
  const sides = [0, 1, 2].map(i => found[i] !== 0 && meanBrightness(s, [0, 1, 2].map(k => (k === i ? -found[k]! : found[k]!)) as unknown as Vector, brightness) > meanBrightness(s, found, brightness) + ALIKE) as [boolean, boolean, boolean];
  return { largest, darkest: found, sides };
}

/** Brightness with which each of some parts records, averaged over the plate. `reach`: the mismatch that is largest in size, m. */
export function recordedOver(s: Scene, points: Float64Array, brightness: (mismatch: number) => number, reach = reachOf(s, points)): Float64Array {
  return recordedBy(s, points, tableOf(brightness, reach));
}
/** The same with a table of the contrast, for many scenes that have one laser. */
export const tableOf = (brightness: (mismatch: number) => number, reach: number): ContrastTable => contrastTable(d => Math.sqrt(brightness(d)), Math.max(1e-6, reach), STEPS);
export const recordedBy = (s: Scene, points: Float64Array, table: ContrastTable): Float64Array => recordedBrightnesses(pairs(platePoints(s.plate, s.width, s.height, ACROSS, ACROSS, 'in cells'), points, s.reference, s.light, offsetOf(s)), table);
const offsetOf = (s: Scene): number => offsetFor(s.plate.origin, HERE, s.reference, s.light, s.mismatch);
/** The mismatch that is largest in size between the plate and some parts, m. */
export function reachOf(s: Scene, points: Float64Array): number {
  const extremes = differenceExtremes(pairs(platePoints(s.plate, s.width, s.height, COARSE, COARSE, 'to the edges'), points, s.reference, s.light, offsetOf(s)));
  return Math.abs(extremes?.largest.difference ?? 0);
}

/** Mismatch of the middle of the object at points of the plate, as shares of its sides from its middle: of whatever `acrossPlate` has the least and the greatest. */
export function mismatchesOver(layout: Layout, x: readonly number[], at: readonly Spot['plate'][]): number[] {
  const s = sceneOf(layout, x);
  return at.map(p => differenceAt(s, p, HERE));
}

/** Brightness that nobody tells apart. */
const ALIKE = 0.005;
function meanBrightness(s: Scene, object: Vector, brightness: (mismatch: number) => number): number {
  const q = onObject(s, object);
  // What is the same for all points of the plate is found once.
  const same = s.mismatch + pathTo(s.light, q) - byPaths(s, s.plate.origin, HERE);
  let sum = 0;
  const { origin: o, axes: [a, b] } = s.plate;
  // One point for all cells: draws ask for many thousands of them.
  const p: [number, number, number] = [0, 0, 0];
  for (const cell of CELLS) {
    const x = cell[0] * s.width;
    const y = cell[1] * s.height;
    for (let i = 0; i < 3; i++) p[i] = o[i]! + x * a[i]! + y * b[i]!;
    sum += brightness(same + between(p, q) - pathTo(s.reference, p));
  }
  return sum / CELLS.length;
}

/** Seen from the middle and the corners of the plate. */
const EYES: readonly Spot['plate'][] = [[0, 0], [-0.5, -0.5], [0.5, -0.5], [-0.5, 0.5], [0.5, 0.5]];
function partsOf({ form }: Layout, s: Scene): readonly Vector[] {
  if (form === 'hologram') return pointsWithin(s.object, s.size, PARTS).map(p => p.point);
  const eyes = EYES.map(e => onPlate(s, e));
  return surfaceOf(form, s.plate.origin, s.size).filter(p => isLitAndSeen(p, s.light, eyes)).map(p => p.point);
}

function shareOf(s: Scene, point: Vector): Vector {
  const [r, u, t] = inFrame(s.object, point);
  const of = (v: number, whole: number): number => (whole > 0 ? v / whole : 0);
  return [of(r, s.size[0]), of(u, s.size[1]), of(t, s.size[2])];
}

/** How far the mismatch is from a multiple of the revival distance. Inputs: mismatch, revival distance. */
export const offRevival = (times: number): Rule => ({
  name: 'way to the next revival', of: [times], formula: `mismatch − ${times} · revival distance`, linear: true, source: 'the modes of a tube of length L are in step again every 2L',
  compute: ([mismatch, revival]) => mismatch! - times * revival!, partials: () => [1, -times],
});
/** The multiple of the revival distance that a mismatch lies nearest to. */
export const nearestRevival = (mismatch: number, revival: number): number => (revival > 0 ? Math.round(mismatch / revival) : 0);
