/** Rough surfaces: many small facets, of which those that send light one way all stand alike, and a share that has lost its polarization. */
import { shares } from '../power.ts';
import { nearestWithin } from '../range.ts';
import { dot, unit, type Vector } from '../vectors.ts';
import { along, cleaned, fieldPower, horizontalField, verticalField, weakened, type Field } from './field.ts';
import type { Light, Part } from './states.ts';

/**
 * Light that a rough surface gives back in one direction. A share 1 − d keeps its polarization as if small ideal mirrors had
 * sent it there; a share d is unpolarized, and no longer steady against the rest. The power is that of the light that arrives: how
 * much is given back this way is another matter.
 *
 * @param light the light that falls on it
 * @param towards direction in which it is looked at; without one there is no light
 * @param depolarized d, from 0, keeps all, to 1, keeps none; see `shares`
 *
 * Validity: light that meets one facet, or wanders until nothing is left of its polarization; that a facet of paint or glass reflects s better
 * than p is left out.
 * Source: facets after Beckmann & Spizzichino, The Scattering of Electromagnetic Waves from Rough Surfaces (1963) (from memory).
 */
export function scatteredBack(light: Light, towards: Vector, depolarized: number): Light {
  return scattered(light, unit(towards), depolarized, offFacet);
}

/** Light that ground glass or a diffuser sends on in one direction, as if small prisms had bent it there. Else as `scatteredBack`. */
export function scatteredThrough(light: Light, towards: Vector, depolarized: number): Light {
  return scattered(light, unit(towards), depolarized, throughFacet);
}

function scattered(light: Light, towards: Vector, depolarized: number, carry: (field: Field, towards: Vector) => Field): Light {
  const d = nearestWithin(shares, depolarized);
  const parts: Part[] = [];
  const lost = new Map<number, number>();
  for (const part of light) {
    const field = cleaned(part.field);
    lost.set(part.state, (lost.get(part.state) ?? 0) + d * fieldPower(field));
    if (d < 1) parts.push({ ...part, field: cleaned(weakened(carry(field, towards), Math.sqrt(1 - d))) });
  }
  // Any two fields that are square to each other stand for what is unpolarized.
  if (d > 0) {
    for (const [state, power] of lost) {
      for (const field of [verticalField(towards), horizontalField(towards)]) parts.push({ field: weakened(field, Math.sqrt(power / 2)), state, steady: false });
    }
  }
  return parts;
}

/** −e + 2(e·n)n with the normal n of the mirror that sends the light there; as it came where nothing turns it. */
function offFacet(f: Field, towards: Vector): Field {
  const apart = 1 - dot(f.direction, towards);
  const across = along(towards, 1, f.direction, -1);
  const carry = (e: Vector): Vector => (apart < 1e-12 ? e : along(e, -1, across, dot(e, towards) / apart));
  return { direction: towards, re: carry(f.re), im: carry(f.im) };
}

/** Turned with the light, in the plane of both directions; as it came where it goes straight back, which no prism does. */
function throughFacet(f: Field, towards: Vector): Field {
  const together = 1 + dot(f.direction, towards);
  const middle = along(towards, 1, f.direction, 1);
  const carry = (e: Vector): Vector => (together < 1e-12 ? e : along(e, 1, middle, -dot(e, towards) / together));
  return { direction: towards, re: carry(f.re), im: carry(f.im) };
}
