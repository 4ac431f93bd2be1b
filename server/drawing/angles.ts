/** Angles that are worth an arc in a drawing: of each reference at its plate, and between the light on an object and the line of sight. */
import { objectAt } from '../model/arms.ts';
import { ANGLE } from '../model/units.ts';
import { show } from '../model/show.ts';
import type { Cell } from '../results/graph.ts';
import type { Results } from '../results/plan.ts';
import type { Vector } from '../results/rules/table.ts';
import type { Point } from './marks.ts';

export interface DrawnAngle {
  readonly at: Point;
  /** directions of its two sides from there, from above and of length 1 */
  readonly sides: readonly [Point, Point];
  readonly text: string;
  readonly words: string;
}

export function anglesOf(r: Results): DrawnAngle[] {
  const { things, rays } = r.table.look;
  const angles: DrawnAngle[] = [];
  const add = (at: Vector, one: Vector | undefined, other: Vector | undefined, cell: Cell | undefined, words: string): void => {
    const [a, b] = [one && flat(one), other && flat(other)];
    const value = cell && r.graph.value(cell);
    if (a && b && cell && value !== undefined && !angles.some(x => x.words === words)) angles.push({ at: [at[0], at[1]], sides: [a, b], text: show(value, ANGLE), words });
  };
  for (const { plate, arms, pairs } of r.plates) {
    const stands = things.get(plate.id);
    const normal = stands?.normal();
    for (const { arm, angle } of arms) {
      const ray = rays.get(arm.path.at(-1)!);
      if (arm.role !== 'reference' || !stands || !normal || !ray) continue;
      const back = less(ray.from, stands.at);
      add(stands.at, normal.map(c => c * (dot(normal, back) < 0 ? -1 : 1)) as unknown as Vector, back, angle?.cell, `the ${arm.name} arrives at ${plate.id}`);
    }
    for (const { arm, litAt } of pairs) {
      const at = objectAt(arm);
      const [onto, on] = [arm.path[at] && rays.get(arm.path[at]), arm.path[at + 1] && rays.get(arm.path[at + 1]!)];
      if (onto && on) add(onto.to, less(onto.from, onto.to), less(on.to, on.from), litAt?.cell, `the light on ${onto.end.id} is off the line of sight`);
    }
  }
  return angles;
}

const less = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** From above; undefined of what goes up or down. */
function flat(v: Vector): Point | undefined {
  const l = Math.hypot(v[0], v[1]);
  return l < 1e-3 * Math.hypot(...v) ? undefined : [v[0] / l, v[1] / l];
}
