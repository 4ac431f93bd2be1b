/** Light that an object throws onto one point, where the beam that lights it is narrow or wide, aimed from any side. */
import { beamQualities } from '../beams/domains.ts';
import { lobeHalfWidths } from '../beams/scatter.ts';
import type { Beam } from '../beams/beam.ts';
import { wavelengths } from '../coherence/domains.ts';
import { shares } from '../power.ts';
import { nearestWithin } from '../range.ts';
import type { Patch } from '../surface/patches.ts';
import { above, leftOf, unit, within, type Vector } from '../vectors.ts';

/** What an object does with its light. */
export type Throw =
  /** thrown back: `gloss` is the share of what is thrown back that goes into a lobe round the mirror direction */
  | { readonly kind: 'back'; readonly gloss: number; readonly halfWidth: number }
  /** passed on, into a lobe round the way that the light had: ground glass, a diffuser */
  | { readonly kind: 'on'; readonly halfWidth: number }

/**
 * Light at a point for each watt of the beam, of a surface that gives back, or passes on, all of it: 1/m². The share that it really gives multiplies.
 *
 * Σ over the patches of E cos θs · (1 − g) cos θo cos θp dA / (π r² + dA) for what is diffuse, and of the lobe as `glossLight` of `beams/scatter.ts`; E is the light
 * of the beam for each watt, as `lightOnPlane` of `beams/spread.ts` has it, on patches that face it.
 *
 * @param patches of the surface, see `surfacePatches`; one without a normal is lit and seen from every side, and has no lobe. Small beside the beam's radius: of a
 *   narrower beam too little or too much is caught
 * @param beam as it is where its axis passes the first point of `axis`
 * @param axis where it runs
 * @param does see `Throw`; half widths see `lobeHalfWidths`
 * @param point m; see `coordinates` of vectors
 * @param normal of the plate there, either way
 *
 * Validity: a convex object, which throws no shadow on what faces the light; otherwise as `scatteredLight` of `beams/scatter.ts`. A mean over the speckle.
 * Source: as there; `beams/scatter.ts` and `beams/spread.ts` together give the same, patch by patch, at ten times the cost.
 */
export function lightFromSurface(patches: readonly Patch[], beam: Beam, axis: { readonly from: Vector; readonly along: Vector }, does: Throw, point: Vector, normal: Vector): number {
  const spread = (nearestWithin(beamQualities, beam.quality) * nearestWithin(wavelengths, beam.wavelength)) / Math.PI;
  const { level: { past: p1, rayleigh: z1 }, upright: { past: p2, rayleigh: z2 } } = beam;
  const a = unit(axis.along);
  const side = leftOf(a);
  const [l, u]: [Vector, Vector] = side[0] !== 0 || side[1] !== 0 || side[2] !== 0 ? [side, above(a)] : [[1, 0, 0], [0, 1, 0]];
  const [f, to, m] = [within(axis.from), within(point), unit(normal)];
  const gloss = does.kind === 'on' ? 1 : nearestWithin(shares, does.gloss);
  const power = Math.LN2 / -Math.log(Math.cos(nearestWithin(lobeHalfWidths, does.halfWidth)));
  const peak = (power + 1) / (2 * Math.PI);
  let sum = 0;
  for (const { point: at, normal: n, area } of patches) {
    const dx = at[0] - f[0];
    const dy = at[1] - f[1];
    const dz = at[2] - f[2];
    const x = dx * l[0] + dy * l[1] + dz * l[2];
    const y = dx * u[0] + dy * u[1] + dz * u[2];
    const d = dx * a[0] + dy * a[1] + dz * a[2];
    const s1 = (p1 + d) * (p1 + d) + z1 * z1;
    const s2 = (p2 + d) * (p2 + d) + z2 * z2;
    const w1 = (spread * s1) / z1;
    const w2 = (spread * s2) / z2;
    const squarely = (2 / (Math.PI * Math.sqrt(w1 * w2))) * Math.exp(-2 * ((x * x) / w1 + (y * y) / w2));
    const b = (x * (p1 + d)) / s1;
    const c = (y * (p2 + d)) / s2;
    // The ray, as long as it makes the light on a surface at right angles to the axis what it is.
    const rx = a[0] + b * l[0] + c * u[0];
    const ry = a[1] + b * l[1] + c * u[1];
    const rz = a[2] + b * l[2] + c * u[2];
    const any = n[0] === 0 && n[1] === 0 && n[2] === 0;
    const into = rx * n[0] + ry * n[1] + rz * n[2];
    const facing = any ? Math.sqrt(rx * rx + ry * ry + rz * rz) : does.kind === 'on' ? into : -into;
    if (!(facing > 0)) continue;
    const tx = to[0] - at[0];
    const ty = to[1] - at[1];
    const tz = to[2] - at[2];
    const square = Math.max(1e-18, tx * tx + ty * ty + tz * tz);
    const r = Math.sqrt(square);
    const leaving = any ? 1 : (tx * n[0] + ty * n[1] + tz * n[2]) / r;
    if (!(leaving > 0)) continue;
    const arriving = Math.abs(tx * m[0] + ty * m[1] + tz * m[2]) / r;
    const sent = squarely * facing * area * arriving;
    const diffuse = does.kind === 'on' ? 0 : ((any ? 1 : 1 - gloss) * leaving) / (Math.PI * square + area);
    let lobe = 0;
    if (!any && gloss > 0) {
      const turn = does.kind === 'on' ? 0 : 2 * into;
      const cosine = ((rx - turn * n[0]) * tx + (ry - turn * n[1]) * ty + (rz - turn * n[2]) * tz) / (r * Math.sqrt(rx * rx + ry * ry + rz * rz));
      const strength = cosine > 0 ? peak * cosine ** power : 0;
      lobe = (gloss * strength) / (square + strength * area);
    }
    sum += sent * (diffuse + lobe);
  }
  return sum;
}
