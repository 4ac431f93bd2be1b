/** What of a solid is seen from one side. */
import { fromFrame } from '../../optics/solids/frame.ts';
import { frameOf, type Solid } from '../../optics/solids/solid.ts';
import type { Vector } from '../../optics/vectors.ts';

/** Outline of a solid, m, counter-clockwise: from above, x and y; from the near side of the table, x and height. */
export function outlineOf(solid: Solid, from: 'above' | 'the near side' = 'above'): [number, number][] {
  const up = from === 'above' ? 1 : 2;
  const flat = (v: Vector): [number, number] => [v[0], v[up]];
  if (solid.kind === 'sphere') return around((c, s) => [solid.middle[0] + solid.radius * c, solid.middle[up] + solid.radius * s]);
  if (solid.kind === 'box') {
    const [a, b, c] = solid.size;
    return hull(ENDS.flatMap(i => ENDS.flatMap(j => ENDS.map(k => flat(fromFrame(solid.frame, [(i * a) / 2, (j * b) / 2, (k * c) / 2]))))));
  }
  const frame = frameOf(solid);
  return hull(ENDS.flatMap(k => around((c, s) => flat(fromFrame(frame, [solid.radius * c, solid.radius * s, (k * solid.height) / 2])))));
}
const ENDS = [-1, 1];

/** Cosines and sines of 24 even steps round. */
const ROUND = Array.from({ length: 24 }, (_, i) => [Math.cos((i * Math.PI) / 12), Math.sin((i * Math.PI) / 12)] as const);
const around = (at: (cosine: number, sine: number) => [number, number]): [number, number][] => ROUND.map(step => at(step[0], step[1]));

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
