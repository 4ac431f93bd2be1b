/** What of a solid is seen from one side. */
import { facing, fromFrame } from '../../optics/solids/frame.ts';
import type { Solid } from '../../optics/solids/solid.ts';
import type { Vector } from '../../optics/vectors.ts';

/** Outline of a solid, m, counter-clockwise: from above, x and y; from the near side of the table, x and height. */
export function outlineOf(solid: Solid, from: 'above' | 'the near side' = 'above'): [number, number][] {
  const up = from === 'above' ? 1 : 2;
  const flat = (v: Vector): [number, number] => [v[0], v[up]];
  if (solid.kind === 'sphere') return around(t => [solid.middle[0] + solid.radius * Math.cos(t), solid.middle[up] + solid.radius * Math.sin(t)]);
  const corners: [number, number][] = [];
  if (solid.kind === 'box') {
    const [a, b, c] = solid.size;
    for (const i of [-1, 1]) for (const j of [-1, 1]) for (const k of [-1, 1]) corners.push(flat(fromFrame(solid.frame, [(i * a) / 2, (j * b) / 2, (k * c) / 2])));
  } else {
    const frame = facing(solid.middle, solid.axis);
    for (const k of [-1, 1]) corners.push(...around(t => flat(fromFrame(frame, [solid.radius * Math.cos(t), solid.radius * Math.sin(t), (k * solid.height) / 2]))));
  }
  return hull(corners);
}

const around = (at: (t: number) => [number, number]): [number, number][] => Array.from({ length: 24 }, (_, i) => at((i * Math.PI) / 12));

/** The convex outline round points, counter-clockwise: Andrew's monotone chain. */
function hull(points: readonly [number, number][]): [number, number][] {
  const sorted = [...points].sort((p, q) => p[0] - q[0] || p[1] - q[1]);
  const turn = (o: readonly number[], a: readonly number[], b: readonly number[]): number => (a[0]! - o[0]!) * (b[1]! - o[1]!) - (a[1]! - o[1]!) * (b[0]! - o[0]!);
  const half = (list: readonly [number, number][]): [number, number][] => {
    const chain: [number, number][] = [];
    for (const p of list) {
      while (chain.length > 1 && turn(chain[chain.length - 2]!, chain[chain.length - 1]!, p) <= 1e-12) chain.pop();
      chain.push(p);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half([...sorted].reverse())];
}
