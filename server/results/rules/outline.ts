/** What of a solid is seen from one side. */
import { turnedFromFrame } from '../../optics/solids/frame.ts';
import { frameOf, type Solid } from '../../optics/solids/solid.ts';
import type { Vector } from '../../optics/vectors.ts';

type Flat = [number, number];

/** Outline of a solid, m, counter-clockwise: from above, x and y; from the near side of the table, x and height. */
export function outlineOf(solid: Solid, from: 'above' | 'the near side' = 'above'): Flat[] {
  const up = from === 'above' ? 1 : 2;
  const flat = (v: Vector): Flat => [v[0], v[up]];
  const frame = frameOf(solid);
  const middle = flat(frame.origin);
  if (solid.kind === 'sphere') return ROUND.map(([c, s]) => [middle[0] + solid.radius * c, middle[1] + solid.radius * s]);
  const side = (x: number, y: number, z: number): Flat => flat(turnedFromFrame(frame, [x, y, z]));
  if (solid.kind === 'box') return zonogon(middle, [side(solid.size[0], 0, 0), side(0, solid.size[1], 0), side(0, 0, solid.size[2])]);
  return zonogon(middle, [side(0, 0, solid.height), ...STEPS.map(([x, y]) => side(solid.radius * x, solid.radius * y, 0))]);
}

/** Cosines and sines of 24 even steps round, and the sides of half of that figure: the others are parallel to them. */
const ROUND = Array.from({ length: 24 }, (_, i): Flat => [Math.cos((i * Math.PI) / 12), Math.sin((i * Math.PI) / 12)]);
const STEPS = ROUND.slice(0, 12).map(([x, y], i): Flat => [ROUND[i + 1]![0] - x, ROUND[i + 1]![1] - y]);

/** The convex outline of all sums of parts of some ways, each from half of it forwards to half of it backwards: its sides are those ways, in the order of their directions, and then back again. */
function zonogon(middle: Flat, ways: readonly Flat[]): Flat[] {
  const sides: Flat[] = [];
  // What has no length that counts has no direction either: the products below would vanish and order nothing.
  const forwards = ways.filter(([x, y]) => Math.hypot(x, y) > 1e-12).map(([x, y]): Flat => (x < 0 || (x === 0 && y < 0) ? [-x, -y] : [x, y]));
  for (const [x, y] of forwards.sort((a, b) => a[1] * b[0] - b[1] * a[0])) {
    const last = sides.at(-1);
    // What is seen edge on is no corner.
    if (last && last[0] * y - last[1] * x <= 1e-12) { last[0] += x; last[1] += y; }
    else sides.push([x, y]);
  }
  let [x, y] = sides.reduce<Flat>((at, side) => [at[0] - side[0] / 2, at[1] - side[1] / 2], middle);
  const corners: Flat[] = [];
  for (const sign of [1, -1]) for (const side of sides) {
    corners.push([x, y]);
    x += sign * side[0];
    y += sign * side[1];
  }
  return corners;
}
