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

/** Straight up and a little: where half a turn of directions ends. */
const HALF = Math.PI / 2 + 1e-9;

/** The convex outline of all sums of parts of some ways, each from half of it forwards to half of it backwards: its sides are those ways, in the order of their directions, and then back again. */
function zonogon(middle: Flat, ways: readonly Flat[]): Flat[] {
  const sides: Flat[] = [];
  const forwards = ways.filter(([x, y]) => x !== 0 || y !== 0).map(([x, y]) => {
    const direction = Math.atan2(y, x);
    // Just beside straight down is straight down, and so straight up: two sides along one line never cancel.
    const turned = direction > HALF ? -Math.PI : direction <= HALF - Math.PI ? Math.PI : 0;
    return { side: turned ? [-x, -y] as Flat : [x, y] as Flat, direction: direction + turned };
  });
  let last = -Infinity;
  for (const { side, direction } of forwards.sort((a, b) => a.direction - b.direction)) {
    // What is seen edge on is no corner.
    if (direction - last <= 1e-9) { sides.at(-1)![0] += side[0]; sides.at(-1)![1] += side[1]; }
    else sides.push(side);
    last = direction;
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
