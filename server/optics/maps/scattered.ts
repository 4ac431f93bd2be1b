import { lights } from '../light.ts';
import { nearestWithin, type Range } from '../range.ts';
import type { Patch } from '../surface/patches.ts';
import { unit, within, type Vector } from '../vectors.ts';
import { packed } from './points.ts';

/** Shares of the light that a dull surface throws back, 1. */
export const tones: Range = { from: 0, to: 1 };
/** Nearer than this to a patch the plate does not come, m. */
const NEAREST = 1e-6;
/** Areas of patches, m². */
const areas: Range = { from: 0, to: 1e6 };

/**
 * Light that an object scatters onto each point of a plate, in its plane, W/m²: Σ R E cos θs cos θp dA / (π r²) over the patches, θs from the normal of the patch,
 * θp from that of the plate. Patches that look away give nothing, nor do those behind the plate. One without normal gives as much to every side as one that faces there.
 *
 * @param plate points of the plate, as `packed` or `platePoints` lay them
 * @param normal of the plate, on the side of the object
 * @param patches of the object's surface
 * @param light on each patch, W/m² in its own plane: see `lightOnPatches`; what is missing or no number counts as dark
 * @param tone share R of its light that the object throws back; see `tones`
 * @param into array to write into; another is made where it is too short
 *
 * Validity: a dull surface, which looks equally bright from everywhere; a highlight of a glossy one is tens of times as bright, and more. Patches small
 * compared with their distance from the plate. A mean over the speckle.
 * Source: Lambert's cosine law (any text on radiometry).
 */
export function scatteredLight(plate: Float64Array, normal: Vector, patches: readonly Patch[], light: Float64Array, tone: number, into?: Float64Array): Float64Array {
  const points = packed(patches.map(({ point }) => point));
  const normals = packed(patches.map((patch) => unit(patch.normal)));
  const share = nearestWithin(tones, tone) / Math.PI;
  const given = Float64Array.from(patches, ({ area }, i) => share * nearestWithin({ from: 0, to: lights.to }, light[i] ?? 0) * nearestWithin(areas, area));
  const [nx, ny, nz] = unit(normal);
  const plates = Math.floor(plate.length / 3);
  const out = into !== undefined && into.length >= plates ? into : new Float64Array(plates);
  for (let p = 0; p < plates; p++) {
    const [px, py, pz] = within([plate[3 * p]!, plate[3 * p + 1]!, plate[3 * p + 2]!]);
    let sum = 0;
    for (let i = 0; i < given.length; i++) {
      const dx = points[3 * i]! - px;
      const dy = points[3 * i + 1]! - py;
      const dz = points[3 * i + 2]! - pz;
      const r = Math.max(NEAREST, Math.sqrt(dx * dx + dy * dy + dz * dz));
      const atPlate = (nx * dx + ny * dy + nz * dz) / r;
      const [sx, sy, sz] = [normals[3 * i]!, normals[3 * i + 1]!, normals[3 * i + 2]!];
      const atPatch = sx === 0 && sy === 0 && sz === 0 ? 1 : -(sx * dx + sy * dy + sz * dz) / r;
      if (atPlate > 0 && atPatch > 0) sum += (given[i]! * atPlate * atPatch) / (r * r);
    }
    out[p] = sum;
  }
  return out;
}
