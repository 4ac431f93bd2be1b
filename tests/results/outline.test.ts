/** Outlines of solids, against the convex hull of points on them that are placed here by plain trigonometry. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { facing } from '../../server/optics/solids/frame.ts';
import type { Solid } from '../../server/optics/solids/solid.ts';
import { outlineOf } from '../../server/results/rules/outline.ts';

type Flat = readonly [number, number];
const LENGTH = fc.double({ min: 0.01, max: 1, noNaN: true });
const ANGLE = fc.double({ min: -3, max: 3, noNaN: true });
const rounded = (points: readonly (readonly number[])[]): number[][] => points.map(p => p.map(c => Math.round(c * 1e9) / 1e9 + 0));

test('a level box shows its four corners from above and from the side, from the left one at the front on, counter-clockwise', () => {
  // Faces +x: 60 mm wide along y, 40 mm high, 300 mm deep along x.
  const box: Solid = { kind: 'box', frame: facing([1, 2, 0.1], [1, 0, 0]), size: [0.06, 0.04, 0.3] };
  expect(rounded(outlineOf(box))).toEqual([[0.85, 1.97], [1.15, 1.97], [1.15, 2.03], [0.85, 2.03]]);
  expect(rounded(outlineOf(box, 'the near side'))).toEqual([[0.85, 0.08], [1.15, 0.08], [1.15, 0.12], [0.85, 0.12]]);
});

test('what is thin is a line where it is seen edge on, and nothing more than a place where it has no size', () => {
  expect(rounded(outlineOf({ kind: 'box', frame: facing([0, 0, 0], [0, 1, 0]), size: [0.2, 0.1, 0] }))).toEqual([[-0.1, 0], [0.1, 0]]);
  expect(outlineOf({ kind: 'box', frame: facing([0, 0, 0], [0, 1, 0]), size: [0, 0, 0] })).toEqual([]);
});

test('a can that lies is as long as it is and as wide as it is; one that stands is round', () => {
  const lies = outlineOf({ kind: 'cylinder', middle: [0, 0, 0], axis: [1, 0, 0], radius: 0.05, height: 0.2 });
  expect(rounded(lies)).toEqual([[-0.1, -0.05], [0.1, -0.05], [0.1, 0.05], [-0.1, 0.05]]);
  const stands = outlineOf({ kind: 'cylinder', middle: [0, 0, 0], axis: [0, 0, 1], radius: 0.05, height: 0.2 });
  expect(stands).toHaveLength(24);
  for (const [x, y] of stands) expect(Math.hypot(x, y)).toBeCloseTo(0.05, 12);
});

test('a ball is round wherever one looks from, from its right on and counter-clockwise', () => {
  const ball: Solid = { kind: 'sphere', middle: [1, 2, 0.3], radius: 0.05 };
  for (const [from, middle] of [['above', [1, 2]], ['the near side', [1, 0.3]]] as const) {
    const drawn = outlineOf(ball, from);
    expect(drawn).toHaveLength(24);
    for (const [i, [x, y]] of drawn.entries()) expect([x - middle[0], y - middle[1]]).toEqual([expect.closeTo(0.05 * Math.cos((i * Math.PI) / 12), 12), expect.closeTo(0.05 * Math.sin((i * Math.PI) / 12), 12)]);
  }
});

test('of a box however it is turned: all eight corners lie within, each corner of the outline is one of them, and it turns to the left only', () => {
  fc.assert(fc.property(ANGLE, ANGLE, ANGLE, LENGTH, LENGTH, LENGTH, fc.constantFrom('above', 'the near side'), (heading, tilt, turn, w, h, d, from) => {
    const n = [Math.cos(tilt) * Math.cos(heading), Math.cos(tilt) * Math.sin(heading), Math.sin(tilt)] as const;
    const frame = facing([0.3, -0.2, 0.5], n, turn);
    const drawn = outlineOf({ kind: 'box', frame, size: [w, h, d] }, from);
    const up = from === 'above' ? 1 : 2;
    const corners = [-1, 1].flatMap(i => [-1, 1].flatMap(j => [-1, 1].map((k): Flat => {
      const at = (c: number): number => frame.origin[c]! + (i * w * frame.axes[0][c]! + j * h * frame.axes[1][c]! + k * d * frame.axes[2][c]!) / 2;
      return [at(0), at(up)];
    })));
    for (const p of drawn) expect(Math.min(...corners.map(c => Math.hypot(c[0] - p[0], c[1] - p[1])))).toBeLessThan(1e-9);
    drawn.forEach((a, i) => {
      const b = drawn[(i + 1) % drawn.length]!;
      const left = (p: Flat): number => (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);
      for (const c of corners) expect(left(c)).toBeGreaterThan(-1e-9);
    });
    // The examples were found by chance: sides so short, or so nearly straight up, that products with them are 0.
  }), { examples: [[0, -1e-323, 0, 0.01, 0.25000000000000006, 0.01, 'above'], [0, 5e-324, -1.990844639439533e-12, 0.01, 0.5022993659020638, 0.01, 'above']] });
});
