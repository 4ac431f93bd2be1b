import { extents } from '../depth.ts';
import { nearestWithin, type Range } from '../range.ts';
import { fromFrame, turnedFromFrame, type Frame } from '../solids/frame.ts';
import { frameOf, halfSize, type Solid } from '../solids/solid.ts';
import type { Vector } from '../vectors.ts';
import { along, evenCount, lattice } from './lattice.ts';

/** A small part of a surface. */
export interface Patch {
  /** Its middle, m. */
  readonly point: Vector
  /** Outwards, of length 1; (0, 0, 0) for a part that is seen and lit from every side. */
  readonly normal: Vector
  /** m² */
  readonly area: number
}

/** Corners of patches, m, of one patch after the other. */
export type Outlines = (readonly Vector[])[];
type Outlined = ((corners: readonly Vector[]) => unknown) | undefined;

/** Numbers of patches asked for, 1; rounded. */
export const patchCounts: Range = { from: 1, to: 10_000 };

/**
 * The surface of a solid as patches of nearly the same size and shape, laid evenly and always in the same way; mirror images about the planes
 * through its axes. The areas add up to that of the surface. What is thin has two faces.
 *
 * @param solid box, cylinder or sphere; one without any surface is one patch that is seen from every side
 * @param count about how many; see `patchCounts`. Each face has one at least, each ring two
 * @param outlines is given the corners of each patch, in the order of the patches, counter-clockwise for somebody who looks at it; arcs in pieces of 0.3 rad at most
 *
 * Validity: a patch stands for what lies within half its width, √area / 2.
 * Source: geometry; Archimedes for the area of a zone of a sphere.
 */
export function surfacePatches(solid: Solid, count: number, outlines?: Outlines): Patch[] {
  const n = Math.round(nearestWithin(patchCounts, count));
  const frame = frameOf(solid);
  const local = ofSolid(solid, n, outlines && ((corners) => outlines.push(corners.map((c) => fromFrame(frame, c)))));
  if (local.length === 0) return [{ point: fromFrame(frame, [0, 0, 0]), normal: [0, 0, 0], area: 0 }];
  return local.map(({ point, normal, area }) => ({ point: fromFrame(frame, point), normal: turnedFromFrame(frame, normal), area }));
}

/**
 * Points that fill a box evenly from face to face: of a spray of twigs, or of single points in space. Each is lit and seen from every side, and has an even share of the area of the front.
 *
 * @param frame, size as those of a box; see `Solid`
 * @param count about how many; see `patchCounts`
 * Source: geometry.
 */
export function pointsWithin(frame: Frame, size: Vector, count: number): Patch[] {
  const [w, h, d] = halfSize(size);
  const [across, up, deep] = lattice([2 * w, 2 * h, 2 * d], Math.round(nearestWithin(patchCounts, count)));
  const area = (4 * w * h) / (across! * up! * deep!);
  const ends = (half: number, n: number): number[] => (n === 1 ? [0] : Array.from({ length: n }, (_, i) => half * ((2 * i) / (n - 1) - 1)));
  return ends(d, deep!).flatMap((z) => ends(h, up!).flatMap((y) => ends(w, across!).map((x): Patch => ({ point: fromFrame(frame, [x, y, z]), normal: [0, 0, 0], area }))));
}

function ofSolid(solid: Solid, count: number, outlined: Outlined): Patch[] {
  switch (solid.kind) {
    case 'box':
      return boxPatches(halfSize(solid.size), count, outlined);
    case 'cylinder':
      return cylinderPatches(nearestWithin(extents, solid.radius), nearestWithin(extents, solid.height), count, outlined);
    case 'sphere':
      return spherePatches(nearestWithin(extents, solid.radius), count, outlined);
  }
}

function boxPatches(half: Vector, count: number, outlined: Outlined): Patch[] {
  const total = 8 * (half[0] * half[1] + half[1] * half[2] + half[2] * half[0]);
  if (total === 0) return [];
  return ([[0, 1, 2], [1, 2, 0], [2, 0, 1]] as const).flatMap(([u, v, n]) => {
    const area = 4 * half[u] * half[v];
    if (area === 0) return [];
    const [across, up] = lattice([2 * half[u], 2 * half[v]], (count * area) / total);
    return [1, -1].flatMap((side) => along(up!).flatMap((y) => along(across!).map((x) => {
      const [point, normal]: [[number, number, number], [number, number, number]] = [[0, 0, 0], [0, 0, 0]];
      [point[u], point[v], point[n], normal[n]] = [half[u] * x, half[v] * y, half[n] * side, side];
      outlined?.([[-1, -1], [side, -side], [1, 1], [-side, side]].map(([a, b]) => {
        const corner: [number, number, number] = [0, 0, 0];
        [corner[u], corner[v], corner[n]] = [half[u] * (x + a! / across!), half[v] * (y + b! / up!), half[n] * side];
        return corner;
      }));
      return { point, normal, area: area / (across! * up!) };
    })));
  });
}

function cylinderPatches(radius: number, height: number, count: number, outlined: Outlined): Patch[] {
  const [side, face] = [2 * Math.PI * radius * height, Math.PI * radius ** 2];
  const total = side + 2 * face;
  if (total === 0) return [];
  const patches: Patch[] = [];
  if (side > 0) {
    const [round, up] = lattice([2 * Math.PI * radius, height], (count * side) / total);
    const n = evenCount(round!);
    for (const z of along(up!)) {
      ring(n, (c, s) => patches.push({ point: [radius * c, radius * s, (height / 2) * z], normal: [c, s, 0], area: side / (n * up!) }));
      if (outlined) cells(n, [radius, (height / 2) * (z - 1 / up!)], [radius, (height / 2) * (z + 1 / up!)], outlined);
    }
  }
  const onFace = (count * face) / total;
  const rings = Math.max(1, Math.round(Math.sqrt(onFace / Math.PI)));
  for (const end of [1, -1]) {
    for (let k = 0; k < rings; k++) {
      const share = (2 * k + 1) / rings ** 2;
      const n = evenCount(onFace * share);
      // the radius that halves the area of the ring
      const r = radius * Math.sqrt((k ** 2 + (k + 1) ** 2) / 2) / rings;
      ring(n, (c, s) => patches.push({ point: [r * c, r * s, (height / 2) * end], normal: [0, 0, end], area: (face * share) / n }));
      const rims: [Rim, Rim] = [[(radius * k) / rings, (height / 2) * end], [(radius * (k + 1)) / rings, (height / 2) * end]];
      if (outlined) cells(n, rims[end > 0 ? 1 : 0], rims[end > 0 ? 0 : 1], outlined);
    }
  }
  return patches;
}

function spherePatches(radius: number, count: number, outlined: Outlined): Patch[] {
  if (radius === 0) return [];
  const zones = Math.max(2, Math.round(Math.sqrt(Math.PI * count) / 2));
  return Array.from({ length: zones }, (_, k) => {
    const [top, bottom] = [Math.cos((Math.PI * k) / zones), Math.cos((Math.PI * (k + 1)) / zones)];
    const [share, z] = [(top - bottom) / 2, (top + bottom) / 2];
    const n = evenCount(count * share);
    const patches: Patch[] = [];
    const flat = Math.sqrt(1 - z ** 2);
    ring(n, (c, s) => patches.push({ point: [radius * flat * c, radius * flat * s, radius * z], normal: [flat * c, flat * s, z], area: (4 * Math.PI * radius ** 2 * share) / n }));
    const rim = (cosine: number): Rim => [radius * Math.sqrt(Math.max(0, 1 - cosine ** 2)), radius * cosine];
    if (outlined) cells(n, rim(bottom), rim(top), outlined);
    return patches;
  }).flat();
}

/** Directions evenly round, mirror images of each other about both axes. */
function ring(n: number, put: (cos: number, sin: number) => void): void {
  for (let i = 0; i < n; i++) {
    const angle = (Math.PI * (2 * i + 1)) / n;
    put(Math.cos(angle), Math.sin(angle));
  }
}

/** A circle about the axis: its radius, and how far up it lies, m. */
type Rim = readonly [radius: number, up: number];
/** No arc of an outline turns by more in one straight piece, rad. */
const PIECE = 0.3;

/** Outlines of the `n` parts of a ring between two circles, in the order of `ring`: seen from outside the first circle runs to the left below the second, or on a face outside it. */
function cells(n: number, [below, low]: Rim, [above, high]: Rim, outlined: NonNullable<Outlined>): void {
  const pieces = Math.ceil((2 * Math.PI) / n / PIECE);
  for (let i = 0; i < n; i++) {
    const at = (radius: number, z: number, k: number): Vector => { const angle = (2 * Math.PI * (i + k / pieces)) / n; return [radius * Math.cos(angle), radius * Math.sin(angle), z]; };
    const arc = (radius: number, z: number): Vector[] => (radius > 0 ? Array.from({ length: pieces + 1 }, (_, k) => at(radius, z, k)) : [at(0, z, 0)]);
    outlined([...arc(below, low), ...arc(above, high).reverse()]);
  }
}
