/** How much of the light that falls on a plate enters by its edges. */
import { nearestWithin } from '../range.ts';
import { erf } from '../special.ts';
import { unit, type Vector } from '../vectors.ts';
import { beamRadii, halfSizes } from './domains.ts';
import { adaptiveIntegral } from './quadrature.ts';

/** Shares of the light on a plate that fall on the edges that face it, 0 to 1 in all. */
export interface EdgeShares {
  /** on the left or right edge */
  readonly beside: number
  /** on the upper or lower edge */
  readonly above: number
}

/** How far the two rules of the integral may differ, as a share of the whole. */
const TOLERANCE = 1e-9;
/** Beyond so many radii there is no light: exp(−2 · 5²) is 10⁻²². */
const NO_LIGHT = 5;

/**
 * Shares of a beam's light on a plate that its edges take, 1: of the two that face the light, by their area and slant, and by how bright the beam is there. The rest falls on the face.
 *
 * @param light direction of the light along the plate's own axes: across its width, along its height, along its normal either way
 * @param halfWidth, halfHeight half of the plate's sides, m; see `halfSizes`
 * @param thickness of its glass, m; counts as the nearest of `halfSizes`
 * @param radius of the beam at the plate, to 1/e², m; see `beamRadii`
 *
 * Accuracy: 10⁻⁶. Validity: a Gaussian beam whose axis meets the middle of the plate, and that hardly widens over it; whatever clasps an edge is left out. No light, or no plate, has no shares.
 * Source: geometry. Light that falls on a piece of surface is that across the beam times the cosine of its slant; over one coordinate the integral of exp(−2ρ²/w²) is an error function.
 */
export function edgeShares(light: Vector, halfWidth: number, halfHeight: number, thickness: number, radius: number): EdgeShares {
  const [x, y, z] = unit(light);
  const [a, b, t] = [nearestWithin(halfSizes, halfWidth), nearestWithin(halfSizes, halfHeight), nearestWithin(halfSizes, thickness)];
  const w = nearestWithin(beamRadii, radius);
  const along = lineLight(x, y, z, b, w);
  const cut = (NO_LIGHT * w) / Math.max(Math.abs(z), 1e-3);
  const reach = Math.min(a, cut);
  // Light grows along a line towards its middle: two halves have no hidden peak.
  const face = Math.abs(z) * (adaptiveIntegral(along, -reach, 0, TOLERANCE * w * w) + adaptiveIntegral(along, 0, reach, TOLERANCE * w * w));
  const [beside, above] = [t * Math.abs(x) * along(a), t * Math.abs(y) * lineLight(y, x, z, a, w)(b)];
  const all = face + beside + above;
  return all > 0 ? { beside: beside / all, above: above / all } : { beside: 0, above: 0 };
}

/** Light on a line across a plate as far as ± half, at a distance from its middle: ∫ exp(−2ρ²/w²), ρ from the axis of the beam. */
function lineLight(x: number, y: number, z: number, half: number, w: number): (at: number) => number {
  const slant = Math.max(1 - y * y, 1e-12);
  const k = Math.sqrt(2 * slant) / w;
  return at => {
    const shift = (at * x * y) / slant;
    return (Math.exp((-2 * (at * z) ** 2) / (slant * w * w)) * (Math.sqrt(Math.PI) * (erf(k * (half - shift)) + erf(k * (half + shift))))) / (2 * k);
  };
}
