/**
 * Light as parts that are each polarized in one way. Random polarization is two states of the laser, square to each other and of
 * half the power each. They do not interfere with one another, but each does with itself by whatever way it comes, so light that
 * is unpolarized makes fringes where both arms keep it. What a rough surface has depolarized is `steady: false`: at each point of
 * its speckle it is polarized somehow, and differently at the next.
 */
import type { Vector } from '../vectors.ts';
import { fieldPower, horizontalField, verticalField, weakened, type Field } from './field.ts';

export interface Part {
  readonly field: Field
  /** Which state of the laser it comes from; parts of different states never interfere. */
  readonly state: number
  /** False where its phase differs from speckle to speckle against that of the other parts of its state. */
  readonly steady: boolean
}

export type Light = readonly Part[];

/** Light of one polarization. */
export const polarizedLight = (field: Field): Light => [{ field, state: 0, steady: true }];

/**
 * Light of a laser with random polarization, of power 1: vertical and horizontal in equal shares. Any other two states that are
 * square to each other give the same results.
 *
 * @param light direction of the light
 *
 * Validity: a tube whose modes are polarized this way and that in turn, taken together over the exposure; that the two sets of modes differ in frequency is
 * left to the coherence of the laser.
 * Source: Born & Wolf, Principles of Optics, §10.9 (natural light as two incoherent waves).
 */
export function unpolarizedLight(light: Vector): Light {
  return [
    { field: weakened(verticalField(light), Math.SQRT1_2), state: 0, steady: true },
    { field: weakened(horizontalField(light), Math.SQRT1_2), state: 1, steady: true },
  ];
}

/** Power of all parts, in the measure of the fields. */
export const lightPower = (light: Light): number => light.reduce((sum, part) => sum + fieldPower(part.field), 0);

/** Each part of the light sent through something that acts on a field. */
export const each = (light: Light, does: (field: Field) => Field): Light => light.map(({ field, state, steady }) => ({ field: does(field), state, steady }));
