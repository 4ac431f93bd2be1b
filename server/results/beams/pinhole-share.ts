/** Of the light that a lens focuses on its pinhole, what goes through. */
import type { Leg, Thing } from '../../model/model.ts';
import { NUMBER, parseUnit } from '../../model/units.ts';
import type { Cell } from '../graph.ts';
import { PINHOLE_SHARE } from '../rules/beams.ts';
import type { Values } from '../values.ts';
import type { Beams } from './beams.ts';

const PERCENT = parseUnit('%')!;

/** Undefined where there is no pinhole in a focus, or the width of the beam on the lens cannot be told. `onto`: the leg that brings the light. */
export function pinholeShare(thing: Thing, onto: Leg, values: Values, beams: Beams): Cell | undefined {
  if (!thing.facts.has('pinhole') || !thing.facts.has('focal length')) return undefined;
  const { graph } = values;
  const name = `${thing.id}.lets through`;
  const known = graph.find(name);
  if (known) return known;
  const [d, f] = [values.fact(thing, 'pinhole'), values.fact(thing, 'focal length')];
  const focal = f && graph.value(f);
  const [{ wavelength }, radius] = [beams.at(onto), beams.radius(onto)];
  // A diverging lens has no focus in which a pinhole could stand.
  if (!d || !f || d.missing || focal === undefined || focal <= 0 || wavelength.missing || radius.missing) return undefined;
  return graph.derive(name, PINHOLE_SHARE, [d, wavelength, f, radius], NUMBER, `share of the light that the pinhole of ${thing.id} lets through`, { unit: PERCENT });
}
