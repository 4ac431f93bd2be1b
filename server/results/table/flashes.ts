/** Light that the glass of a plate throws back like a mirror, and that leaves the table with nothing in its way. In plain numbers. */
import type { Arm } from '../../model/arms.ts';
import type { Leg, Thing } from '../../model/model.ts';
import { beyondTable, firstMeeting, reflectedDirection, type Vector } from '../rules/table.ts';
import type { TableContext } from './context.ts';
import type { Ray } from './rays.ts';
import { likely, type Standing } from './standing.ts';

export interface Flash {
  readonly plate: Thing;
  readonly arm: Arm;
  /** edge of the table that it crosses, for somebody who looks at the plan */
  readonly edge: 'left' | 'right' | 'near' | 'far';
  /** where it does, m */
  readonly at: Vector;
}

/** What the glass throws back of each reference; only on a table whose size is written, since nothing else tells where it leaves it. */
export function flashesOf(rays: ReadonlyMap<Leg, Ray>, things: ReadonlyMap<string, Standing>, size: readonly [number, number] | undefined, { arms }: TableContext): Flash[] {
  if (!size) return [];
  return arms.arms.flatMap((arm): Flash[] => {
    const ray = rays.get(arm.path.at(-1)!);
    const plate = ray && things.get(ray.end.id);
    const normal = plate?.normal();
    if (arm.role !== 'reference' || !ray || ray.scattered || !plate || !normal || beyondTable(plate.at, ...size) > 0) return [];
    const way = reflectedDirection([ray.to[0] - ray.from[0], ray.to[1] - ray.from[1], ray.to[2] - ray.from[2]], normal);
    const left = leaves(plate.at, way, size);
    if (!left) return [];
    const isFree = [...things.values()].every(s => s === plate || likely(s).every(solid => firstMeeting(solid, plate.at, left.at) === undefined));
    return isFree ? [{ plate: plate.thing, arm, ...left }] : [];
  });
}

/** A beam that rises or falls more than that between plate and edge leaves the height of the beams, and is another finding's matter, m. */
const BEAM_HEIGHT = 0.1;

/** Where light crosses the edge of the table at the height of the beams; undefined of what goes up or down. */
function leaves(from: Vector, way: Vector, [width, depth]: readonly [number, number]): Pick<Flash, 'edge' | 'at'> | undefined {
  const [along, edge] = [
    [way[0] > 0 ? (width - from[0]) / way[0] : way[0] < 0 ? -from[0] / way[0] : Infinity, way[0] > 0 ? 'right' : 'left'] as const,
    [way[1] > 0 ? (depth - from[1]) / way[1] : way[1] < 0 ? -from[1] / way[1] : Infinity, way[1] > 0 ? 'far' : 'near'] as const,
  ].reduce((a, b) => (b[0] < a[0] ? b : a));
  const rise = along * way[2];
  return Number.isFinite(along) && Math.abs(rise) <= BEAM_HEIGHT ? { edge, at: [from[0] + along * way[0], from[1] + along * way[1], from[2] + rise] } : undefined;
}
