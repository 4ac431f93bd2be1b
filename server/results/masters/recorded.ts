/** How a plate was recorded, as whoever shows it needs it: angles of its beams, from how far the reference spread, how far its object stood. */
import { ANGLE, LENGTH, parseUnit, PER_LENGTH } from '../../model/units.ts';
import type { Fringes, PairFringes } from '../fringes/fringes.ts';
import type { Cell } from '../graph.ts';
import type { LegCells } from '../legs/leg-cells.ts';
import { legStart } from '../legs/legs.ts';
import { CURVATURE } from '../rules/hang.ts';
import { weighted } from '../rules/lengths.ts';
import { OBJECT_BESIDE } from '../rules/replay.ts';
import type { PlateResults } from '../paths/pairs.ts';
import type { Values } from '../values.ts';

const DEGREE = parseUnit('°')!;
export const OPPOSITE = weighted('line of sight', 'opposite to the viewer', [-1]);

/** What is asked of the page of a recording. */
export interface Recording { readonly values: Values; readonly legs: LegCells; readonly plates: readonly PlateResults[]; readonly fringes: Fringes }

/** Angles of reference and object light at the recording, in the plane of the reference, above zero on its side. */
export function recordedAngles(f: PairFringes, base: string, { values, plates }: Recording): readonly [Cell, Cell] {
  const { graph } = values;
  const arms = plates.find(p => p.plate === f.plate)!.arms;
  const reference = arms.find(a => a.arm === f.pair.reference)!.angle!.cell;
  const own = arms.find(a => a.arm === f.pair.arm)?.angle?.cell ?? values.fact(f.plate, 'object angle');
  const object = f.from.known.by === 'places' ? graph.derive(`${base}.object angle`, OBJECT_BESIDE, f.from.inputs.slice(0, 12), ANGLE, `angle of the object light at ${f.plate.id}, to the side of the reference`, { unit: DEGREE }) : own!;
  // A reference that is written on the other side of the normal turns both.
  const turned = (graph.value(reference) ?? 0) < 0 ? -1 : 1;
  return turned > 0 ? [reference, object] : [[reference, 'reference'] as const, [object, 'object'] as const].map(([c, of]) => graph.derive(`${base}.${of} angle to its side`, OPPOSITE, [c], ANGLE, c.words, { unit: DEGREE })) as [Cell, Cell];
}

/** Of the light of the reference where it meets the plate, 1/m; above zero it spreads. */
export function referenceCurvature({ plate, pair: { reference } }: PairFringes, base: string, { values, fringes }: Recording): Cell {
  const { graph } = values;
  const [name, words] = [`${base}.reference curvature`, `curvature of ${reference.name} at ${plate.id}`];
  const spread = fringes.spread(reference);
  if (spread) return graph.derive(name, CURVATURE, spread, PER_LENGTH, words);
  if (plate.facts.get('reference distance')?.value.kind === 'words') return graph.input(name, { value: 0, dim: PER_LENGTH }, 'written', words);
  return graph.missing(name, PER_LENGTH, words, { code: 'value-missing', why: `nothing says from how far the reference of ${plate.id} spreads: write “reference distance” in ${plate.id}, or what spreads it`, at: plate.at });
}

/** From the plate to the middle of the object, or to the image of the master: above zero before the plate, as at the recording. */
export function objectDistance({ plate, pair }: PairFringes, base: string, { values, legs }: Recording): Cell {
  const { graph } = values;
  const { arm } = pair;
  if (arm.object?.kind.light === 'diffracts') {
    return graph.find(`${plate.id}.image offset`) ?? graph.missing(`${base}.object distance`, LENGTH, `image of ${arm.object.id} before ${plate.id}`, { code: 'value-missing', why: `the image distance of ${arm.object.id} is not written`, at: arm.object.at });
  }
  const from = arm.path.findLastIndex(l => legStart(l) === arm.object);
  const on = arm.path.slice(Math.max(0, from));
  const cells = on.map(l => legs.get(l));
  if (from < 0 || cells.some(c => !c) || on.some(l => l.target?.facts.has('focal length') === true)) {
    return graph.missing(`${base}.object distance`, LENGTH, `distance of the object from ${plate.id}`, { code: 'value-missing', why: `how far ${arm.object?.id ?? 'the object'} is from ${plate.id} is not known`, at: plate.at });
  }
  return cells.length === 1 ? cells[0]! : graph.derive(`${base}.object distance`, weighted('way of the object light', 'sum of the legs', cells.map(() => 1)), cells as Cell[], LENGTH, `way from ${arm.object!.id} to ${plate.id}`);
}
