import { squared } from '../complex.ts';
import { axisAt, cleaned, component, fieldPower, type Field } from './field.ts';
import { cross, dot, unit, type Vector } from '../vectors.ts';

/**
 * The direction in the surface that is square to the plane of incidence, length 1: that of s. At normal incidence, where there is no such plane,
 * the horizontal of `axisAt`.
 *
 * @param light direction of the light
 * @param normal of the surface, either way
 */
export function sAxis(light: Vector, normal: Vector): Vector {
  const s = unit(cross(unit(light), unit(normal)));
  return dot(s, s) > 0 ? s : axisAt(light, Math.PI / 2);
}

/**
 * Share of the light that is s at a surface, 1; the rest is p. 0 for no light. At normal incidence see `sAxis`.
 *
 * @param field the light
 * @param normal of the surface, either way
 */
export function sShare(field: Field, normal: Vector): number {
  const f = cleaned(field);
  const power = fieldPower(f);
  return power === 0 ? 0 : Math.min(1, squared(component(f, sAxis(f.direction, normal))) / power);
}
