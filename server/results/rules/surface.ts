/** The surface of an object, as everything takes it that looks at more than its middle: its light, which side of it is lit and seen, the maps. */
import { facing } from '../../optics/solids/frame.ts';
import type { Solid } from '../../optics/solids/solid.ts';
import { pointsWithin, surfacePatches, type Outlines, type Patch } from '../../optics/surface/patches.ts';
import { roundedPatches } from '../../optics/surface/rounded.ts';
import type { Vector } from '../../optics/vectors.ts';

export const SHAPES = ['rounded', 'box', 'sphere', 'cylinder', 'points'] as const;
/** `rounded`: a ball stretched to its size, which also counts where no shape is written. `points`: parts anywhere within its size. */
export type Shape = (typeof SHAPES)[number];
export const LYING = ['upright', 'across', 'along'] as const;
/** How a cylinder lies, as the plate sees it. */
export type Lying = (typeof LYING)[number];

/** What an object is for who looks at its parts. */
export interface Form {
  readonly shape: Shape
  readonly lying: Lying
  /** no shape is written */
  readonly assumed: boolean
  /** single points from its middle, m: right, up, toward the plate */
  readonly points?: readonly Vector[]
}

/** What a formula says behind it where the shape is a guess. */
export const shapeWords = ({ assumed, points }: Pick<Form, 'assumed' | 'points'>): string => (assumed && !points ? '; its shape is not written, so it counts as rounded' : '');

/** About as many parts as a coarse look has. */
export const PARTS = 200;

export const HERE: Vector = [0, 0, 0];

/** The surface of an object about its middle, as a plate sees it that lies that way. Of what is rounded and flat, that of a flat box. `outlines`: given those of the patches, of which points have none. */
export function surfaceOf(form: Formed, sight: Vector, size: Vector, count = PARTS, outlines?: Outlines): readonly Patch[] {
  if (outlines) return made(form, sight, size, count, outlines);
  // Of the sight only its direction counts.
  const key: readonly unknown[] = [form.shape, form.lying, form.points, count, ...facing(HERE, sight).axes[2], ...size];
  const known = kept.find(k => k.key.every((v, i) => Object.is(v, key[i])));
  if (known) return known.patches;
  const patches = made(form, sight, size, count);
  kept.unshift({ key, patches });
  kept.length = Math.min(kept.length, KEPT);
  return patches;
}
type Formed = Pick<Form, 'lying' | 'points'> & { readonly shape: Shape | 'screen' };
// Light, sides and maps look at the same few objects, in a setup, in its variants and behind the next edit.
const KEPT = 8;
const kept: { readonly key: readonly unknown[]; readonly patches: readonly Patch[] }[] = [];

function made({ shape, lying, points }: Formed, sight: Vector, size: Vector, count: number, outlines?: Outlines): readonly Patch[] {
  const frame = facing(HERE, sight);
  const [a, b, c] = frame.axes;
  if (points) return points.map(([r, u, t]): Patch => ({ point: [r * a[0] + u * b[0] + t * c[0], r * a[1] + u * b[1] + t * c[1], r * a[2] + u * b[2] + t * c[2]], normal: HERE, area: 1 }));
  if (shape === 'points') return pointsWithin(frame, size, count);
  const round = shape === 'rounded' ? roundedPatches(frame, size, count, outlines) : [];
  return round.length > 0 ? round : surfacePatches(solidOf(shape, lying, size, sight), count, outlines);
}

/** The solid that a thing counts as; of what is rounded or no solid the box that holds it. All are laid out by the line of sight, so that nothing depends on how the table is turned. */
export function solidOf(shape: Shape | 'screen', lying: Lying, size: Vector, sight: Vector): Solid {
  const [w, h, d] = size;
  const frame = facing(HERE, sight);
  if (shape === 'sphere') return { kind: 'sphere', middle: HERE, radius: Math.cbrt(w * h * d) / 2, frame };
  if (shape !== 'cylinder') return { kind: 'box', frame, size: shape === 'screen' ? [w, h, 0] : size };
  const [first, second, third] = frame.axes;
  switch (lying) {
    case 'upright': return { kind: 'cylinder', middle: HERE, axis: second, radius: (w + d) / 4, height: h, frame: { origin: HERE, axes: [third, first, second] } };
    case 'across': return { kind: 'cylinder', middle: HERE, axis: first, radius: (h + d) / 4, height: w, frame: { origin: HERE, axes: [second, third, first] } };
    case 'along': return { kind: 'cylinder', middle: HERE, axis: third, radius: (w + h) / 4, height: d, frame };
  }
}
