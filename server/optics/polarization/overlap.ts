/** How much of two beams interferes, by how they are polarized. */
import type { Vector } from '../vectors.ts';
import { plus, squared, type Complex } from '../complex.ts';
import { cleaned, fieldPower, product, type Field } from './field.ts';
import { refractedField, refractedLight, type FaceWeight } from './pass.ts';
import { lightPower, type Light } from './states.ts';

/**
 * |e₁·e₂*| of two fields brought to power 1: the factor that polarization puts on the contrast of their fringes, 1. For s and s it is 1 at any
 * angle; for p and p |cos| of the angle between the beams where they are, so 0 at a right angle. 0 where one of them is none.
 *
 * @param one, other the fields where they meet: in air as they arrive; for the layer of a plate see `layerOverlap`
 * Source: Collier, Burckhardt & Lin, Optical Holography (1971) (from memory); the term of interference of two plane waves.
 */
export function fieldOverlap(one: Field, other: Field): number {
  const [a, b] = [cleaned(one), cleaned(other)];
  const power = Math.sqrt(fieldPower(a)) * Math.sqrt(fieldPower(b));
  return power < NOTHING ? 0 : Math.min(1, Math.sqrt(squared(product(a, b))) / power);
}

/**
 * The same inside the layer of a plate, where the beams run closer together than in air. From whichever side they come.
 *
 * @param one, other the fields in air
 * @param normal of the plate, either way
 * @param index refractive index of the layer; see `plateIndices`
 * @param weight `power` or `amplitude`: s and p by what one face between air and the layer lets through (Fresnel); `none`: only turned. It matters
 *   only for fields that are neither s nor p.
 *
 * Validity: plane waves; for a beam that comes through the glass, the glass is left out of the weight.
 * Source: as `fieldOverlap`; Kogelnik, Bell Syst. Tech. J. 48, 2909 (1969), on the coupling of p (from memory).
 */
export function layerOverlap(one: Field, other: Field, normal: Vector, index: number, weight: FaceWeight = 'power'): number {
  return fieldOverlap(refractedField(one, normal, index, 1, weight), refractedField(other, normal, index, 1, weight));
}

/**
 * Share of the object light that can interfere with the reference, 1: the square of the factor that polarization puts on the contrast of the
 * fringes. For two polarized beams it is the square of `fieldOverlap`.
 *
 * The states of unpolarized light make fringes each for itself, which lie on one another: their products are added with their sign before the size is taken,
 * |½ Σ e₁·e₂*|². So it is 1 where both arms keep the light as it is, and 0 where one of them turns one state over, as a half-wave
 * plate does, or for beams close together one mirror more: the dark fringes of the one state then lie on the bright ones of the other. Of what is not steady the squares are added: of wholly depolarized light half can interfere with a polarized
 * reference, and a quarter where the laser itself is unpolarized.
 *
 * @param reference, object the light where it meets
 *
 * Validity: a mean over many speckles; paths that match within the coherence of the laser.
 * Source: derived from the term of interference (Born & Wolf, Principles of Optics, §10.9); fully developed speckle after Goodman, Statistical Optics (1985) (from memory).
 */
export function interferingShare(reference: Light, object: Light): number {
  const power = lightPower(reference) * lightPower(object);
  if (power < NOTHING) return 0;
  let steady: Complex = [0, 0];
  let speckled = 0;
  for (const a of reference) {
    for (const b of object) {
      if (a.state !== b.state) continue;
      const term = product(cleaned(a.field), cleaned(b.field));
      if (a.steady && b.steady) steady = plus(steady, term);
      else speckled += squared(term);
    }
  }
  return Math.min(1, (squared(steady) + speckled) / power);
}

/** The same inside the layer of a plate. Arguments as `interferingShare`, then as `layerOverlap`. */
export function layerInterferingShare(reference: Light, object: Light, normal: Vector, index: number, weight: FaceWeight = 'power'): number {
  return interferingShare(refractedLight(reference, normal, index, 1, weight), refractedLight(object, normal, index, 1, weight));
}

/** Less light than this is none. */
const NOTHING = 1e-30;
