/** What a plate sees of an object or of the window of a first hologram, in plain numbers: the parts of its surface, how well each is lit and how brightly it records, and which face a point of the plate. */
import { lightOnPlane } from '../../optics/beams/spread.ts';
import { packed } from '../../optics/maps/points.ts';
import { facing, fromFrame, inFrame } from '../../optics/solids/frame.ts';
import { lightOnPatches, litSquarely, seenSquarely } from '../../optics/surface/lit.ts';
import { surfacePatches, type Outlines, type Patch } from '../../optics/surface/patches.ts';
import { dot, type Vector } from '../../optics/vectors.ts';
import { recordedOver, sceneOf, type Layout } from './maps.ts';
import { minus } from './object.ts';
import { HERE, surfaceOf } from './surface.ts';

/** So many parts look smooth. */
const FINE = 1200;

/** An object in front of its plate; m, from the middle of the object. */
export interface Sighted {
  readonly patches: readonly Patch[];
  /** of each patch, about the object; single points have none */
  readonly outlines: Outlines;
  /** the middle of the plate, and half of its width and height, for somebody behind it who looks through it at the object */
  readonly plate: Vector;
  readonly right: Vector;
  readonly up: Vector;
}

/** Layout and inputs as the rules of maps take them. */
export function sighted(layout: Layout, x: readonly number[]): Sighted {
  const s = sceneOf(layout, x);
  const outlines: Outlines = [];
  // A window has two faces, of which one is seen.
  const patches = layout.form === 'hologram' ? surfacePatches({ kind: 'box', frame: s.object, size: [s.size[0], s.size[1], 0] }, FINE, outlines) : surfaceOf(layout.form, s.plate.origin, s.size, FINE, outlines);
  const n = s.plate.axes[2];
  const behind = facing(s.plate.origin, dot(n, s.plate.origin) >= 0 ? n : [-n[0], -n[1], -n[2]]);
  const [w, h] = [s.width / 2, s.height / 2];
  const half = (by: readonly number[], length: number): Vector => [by[0]! * length, by[1]! * length, by[2]! * length];
  return { patches, outlines, plate: s.plate.origin, right: half(behind.axes[0], w), up: half(behind.axes[1], h) };
}

/**
 * Light on each part, W/m² for each watt of its beam, 0 where it looks away from the light; a hologram or a screen takes it from either side. `beam`: the six numbers of the beam as it meets the object; without them its light counts as
 * even, 1 W/m² on what faces it in the middle of the object.
 */
export function lightOnParts(layout: Layout, x: readonly number[], patches: readonly Patch[], along: Vector, beam?: readonly number[]): Float64Array {
  const { light } = sceneOf(layout, x);
  const lit = layout.form === 'hologram' ? patches.map(p => (litSquarely(p, light) > 0 ? p : { ...p, normal: minus(HERE, p.normal) })) : patches;
  if (!beam) return lightOnPatches(lit, light, 1, HERE);
  const [p1, z1, p2, z2, wavelength, quality] = beam as [number, number, number, number, number, number];
  const front = { level: { past: p1, rayleigh: z1 }, upright: { past: p2, rayleigh: z2 }, wavelength, quality };
  return Float64Array.from(lit, p => (litSquarely(p, light) > 0 ? lightOnPlane(front, { from: HERE, along }, 1, p.point, dot(p.normal, p.normal) > 0 ? p.normal : along) : 0));
}

/** Brightness with which each part records, averaged over the plate, as a share of matched paths: as `brightnessAt` has it for one. `brightness`: of a mismatch, m. */
export const recordedParts = (layout: Layout, x: readonly number[], patches: readonly Patch[], brightness: (mismatch: number) => number): Float64Array => recordedOver(sceneOf(layout, x), packed(patches.map(p => p.point)), brightness);

/** How squarely each part is seen from a point, 0 where it looks away. */
export const facingEye = (patches: readonly Patch[], eye: Vector): Float64Array => Float64Array.from(patches, p => seenSquarely(p, eye));

/** Where a part lies that the maps name by shares of the size of the object. */
export function placeOfPart(layout: Layout, x: readonly number[], shares: Vector): Vector {
  const s = sceneOf(layout, x);
  return fromFrame(s.object, [shares[0] * s.size[0], shares[1] * s.size[1], shares[2] * s.size[2]]);
}

/** Points as somebody has them before his eyes who looks from a place at another: to the right, up, and toward him, m from that. */
export const lookingFrom = (from: Vector, at: Vector): ((point: Vector) => Vector) => {
  const frame = facing(at, [from[0] - at[0], from[1] - at[1], from[2] - at[2]]);
  return point => inFrame(frame, point);
};
