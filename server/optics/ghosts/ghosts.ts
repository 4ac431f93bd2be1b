/** Ghost fringes, the wood grain of a plate: the reference and what the faces of the plate send back into it. */
import { wavelengths } from '../coherence/domains.ts';
import { plateIndices } from '../glass.ts';
import { plus, squared, type Complex } from '../complex.ts';
import { cleaned, fieldPower, product, type Field } from '../polarization/field.ts';
import { faceReflected, refractedField } from '../polarization/pass.ts';
import { polarizedLight, type Light } from '../polarization/states.ts';
import { shares } from '../power.ts';
import { nearestWithin, type Range } from '../range.ts';
import { angleFromNormal, dot, unit, type Vector } from '../vectors.ts';
import { refractionAngle } from '../surfaces/fresnel.ts';

/**
 * Contrast of the fringes that the beam makes with itself bounced twice inside the plate, 1: 2R/(1 + R²). Both run the same way, so the plate
 * shows bright and dark bands.
 *
 * @param reflects share R that each face reflects, for the polarization of the beam; see `shares`
 *
 * Validity: s alone or p alone; for any other see `ghostContrasts`. Parallel faces, and a laser coherent over the bounces.
 * Source: Born & Wolf, Principles of Optics, on two-beam interference, with the light R² of the ghost.
 */
export function twoBounceContrast(reflects: number): number {
  const R = nearestWithin(shares, reflects);
  return (2 * R) / (1 + R ** 2);
}

/**
 * Contrast of the fringes that the beam makes with itself off the back face, 1: 2√R/(1 + R). They run against each other, so what is recorded
 * is a spurious reflection hologram.
 *
 * @param reflects share R that the back face reflects, for the polarization of the beam; see `shares`
 *
 * Validity: by the light alone, as for s. For p the two fields are not parallel, which takes off |cos 2θ|, θ the angle inside: see `ghostContrasts`.
 * Source: as `twoBounceContrast`, with the light R.
 */
export function backFaceContrast(reflects: number): number {
  const R = nearestWithin(shares, reflects);
  return (2 * Math.sqrt(R)) / (1 + R);
}

/** Contrasts of ghost fringes, 1. */
export interface GhostContrasts { readonly twoBounces: number; readonly backFace: number }

/**
 * Both contrasts for light polarized in any way, from the fields themselves inside the plate: s and p by what the front face lets in, each
 * with its own amplitude at each bounce, and the angle between the fields counted. 0 where there is no light.
 *
 * @param field the light in air
 * @param normal of the plate, either way
 * @param index refractive index of the plate; see `plateIndices`
 *
 * Validity: parallel faces in air, one index for glass and layer, no coating, no absorption.
 * Source: Born & Wolf, Principles of Optics, §1.5 and on two-beam interference.
 */
export function ghostContrasts(field: Field, normal: Vector, index: number): GhostContrasts {
  return lightGhostContrasts(polarizedLight(field), normal, index);
}

/** The same for light of several states, such as random polarization: each makes its own fringes, which lie on one another. Arguments, validity and source as `ghostContrasts`. */
export function lightGhostContrasts(light: Light, normal: Vector, index: number): GhostContrasts {
  const inside = light.map(part => refractedField(part.field, normal, index));
  const back = inside.map(field => faceReflected(field, normal, 1, index));
  return { twoBounces: contrast(inside, back.map(field => faceReflected(field, normal, 1, index))), backFace: contrast(inside, back) };
}

/**
 * By how much the thickness of a plate changes from one ghost fringe to the next, m: λ/(2n cos θ), θ the angle inside.
 *
 * @param wavelength in air, m; see `wavelengths`
 * @param index refractive index n of the plate; see `plateIndices`
 * @param incidence angle from the normal in air, rad; see `incidences`
 *
 * Validity: an index above 1 at grazing incidence; the step for an index of 1 counts as that at 0.1 mrad from grazing.
 * Source: fringes of equal thickness (Born & Wolf, Principles of Optics, §7.5).
 */
export function ghostFringeStep(wavelength: number, index: number, incidence: number): number {
  const cos = Math.max(1e-4, Math.cos(refractionAngle(incidence, index)));
  return nearestWithin(wavelengths, wavelength) / (2 * nearestWithin(plateIndices, index) * cos);
}

/** Wedges of a plate, rad. The floor, far below what is made, keeps the spacing finite. */
export const wedges: Range = { from: 1e-9, to: 0.5 };

/**
 * Distance of ghost fringes along a plate that is a wedge, m: `ghostFringeStep` over the wedge.
 *
 * @param wedge angle between the faces, rad; see `wedges`. Other arguments, validity and source as `ghostFringeStep`.
 */
export function wedgeFringeSpacing(wavelength: number, index: number, incidence: number, wedge: number): number {
  return ghostFringeStep(wavelength, index, incidence) / Math.tan(nearestWithin(wedges, wedge));
}

/** How near to parallel a surface makes ghost fringes with a plate, rad: 3°; common practice. */
export const NEARLY_PARALLEL = (3 * Math.PI) / 180;

/**
 * True where a surface stands parallel to the plate within an angle, so that light goes to and fro between them. False where one has no direction.
 *
 * @param surface normal of the lens, mirror or window, either way
 * @param plate normal of the plate, either way
 * @param within largest angle between the normals, rad
 */
export function standsParallel(surface: Vector, plate: Vector, within = NEARLY_PARALLEL): boolean {
  const known = [surface, plate].every(v => dot(unit(v), unit(v)) > 0);
  return known && angleFromNormal(plate, surface) <= within;
}

/** Contrast of the fringes of two lights as strong as they are, part by part. */
function contrast(one: readonly Field[], other: readonly Field[]): number {
  let [light, fringes]: [number, Complex] = [0, [0, 0]];
  for (const [i, field] of one.entries()) {
    const [a, b] = [cleaned(field), cleaned(other[i]!)];
    light += fieldPower(a) + fieldPower(b);
    fringes = plus(fringes, product(a, b));
  }
  return light === 0 ? 0 : Math.min(1, (2 * Math.sqrt(squared(fringes))) / light);
}
