/** The second spot of a splitter: what the back face of its glass throws back leaves beside the beam that the front face reflects. */
import { incidences, plateIndices, plateThicknesses } from '../glass.ts';
import { shares } from '../power.ts';
import { nearestWithin } from '../range.ts';
import { wedges } from './ghosts.ts';

/**
 * Distance of the second spot from the first, square to both beams, m: 2t sin θ cos θ / √(n² − sin²θ). 0 where the light meets the glass squarely.
 *
 * @param thickness t of the glass, m; see `plateThicknesses`
 * @param index refractive index n of the glass; see `plateIndices`
 * @param incidence angle θ from the normal in air, rad, either sign; see `incidences`
 *
 * Validity: parallel faces; of a wedge it is the distance where the spot leaves the glass, to 3 % for 0.5° at 45°.
 * Source: geometry of a plane-parallel plate (Born & Wolf, Principles of Optics, §7.5): the light comes back up 2t tan θ′ farther along the face, seen at θ.
 */
export function secondSpotOffset(thickness: number, index: number, incidence: number): number {
  const { sin, cos, inside } = slants(index, incidence);
  // cos/√(n² − sin²θ) is at most 1, for an index of 1; the double next to π/2 has a cosine above 0.
  return 2 * nearestWithin(plateThicknesses, thickness) * sin * (cos / inside);
}

/**
 * Angle between both beams behind a splitter whose faces make a wedge, rad: 2α √(n² − sin²θ) / cos θ; at most a right angle.
 *
 * @param index as `secondSpotOffset`
 * @param incidence as `secondSpotOffset`
 * @param wedge angle α between the faces, rad; see `wedges`
 *
 * Validity: first order in the wedge, which lies in the plane of incidence, thick end either way. One that lies across it sends the spot out of that plane, by cos θ times as much.
 * Source: derived. The back face turns the light inside by 2α; from n sin θ′ = sin θ it leaves by 2α · n cos θ′ / cos θ.
 */
export function secondSpotAngle(index: number, incidence: number, wedge: number): number {
  const { cos, inside } = slants(index, incidence);
  return wedge > 0 ? Math.min(Math.PI / 2, (2 * nearestWithin(wedges, wedge) * inside) / cos) : 0;
}

/**
 * Light in the second spot, as a share of all that the splitter reflects, 1: (1 − r)²R / (r + (1 − r)²R). The film lets it through on its way in and out.
 *
 * @param reflects share r that the film on the front face reflects, of what is not lost; see `shares`
 * @param back share R that the back face reflects, for the polarization of the light; see `shares` and `reflectedShares`
 *
 * Validity: first order, without what goes to and fro once more; a film that loses light loses some of this as well.
 * Source: conservation of energy.
 */
export function secondSpotShare(reflects: number, back: number): number {
  const r = nearestWithin(shares, reflects);
  const spot = (1 - r) ** 2 * nearestWithin(shares, back);
  return spot > 0 ? spot / (r + spot) : 0;
}

/** |sin θ|, cos θ and √(n² − sin²θ) = n cos θ′, in a shape that is exact at grazing incidence. */
function slants(index: number, incidence: number): { readonly sin: number; readonly cos: number; readonly inside: number } {
  const angle = nearestWithin(incidences, incidence);
  const [n, cos] = [nearestWithin(plateIndices, index), Math.cos(angle)];
  return { sin: Math.abs(Math.sin(angle)), cos, inside: Math.sqrt((n - 1) * (n + 1) + cos ** 2) };
}
