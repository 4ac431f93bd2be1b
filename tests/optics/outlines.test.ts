/** Outlines of the patches of a surface, against the areas and the normals of the patches themselves and of the solids. Areas of corners by the cross products of their triangles. */
import { describe, expect, test } from 'vitest';
import { facing, inFrame, turnedIntoFrame } from '../../server/optics/solids/frame.ts';
import type { Solid } from '../../server/optics/solids/solid.ts';
import { surfacePatches, type Outlines, type Patch } from '../../server/optics/surface/patches.ts';
import { roundedPatches } from '../../server/optics/surface/rounded.ts';
import type { Vector } from '../../server/optics/vectors.ts';

const FRAME = facing([0.1, -0.2, 0.3], [1, 2, 0.5]);
const less = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const cross = (a: Vector, b: Vector): Vector => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
/** Area as a vector: along the normal that the corners run about counter-clockwise. */
const areaOf = (corners: readonly Vector[]): Vector => corners.slice(1, -1).reduce<Vector>((sum, c, i) => { const t = cross(less(c, corners[0]!), less(corners[i + 2]!, corners[0]!)); return [sum[0] + t[0] / 2, sum[1] + t[1] / 2, sum[2] + t[2] / 2]; }, [0, 0, 0]);

const SOLIDS: readonly (readonly [string, Solid, number, number])[] = [
  // 2 (60·40 + 40·20 + 20·60) mm² = 8800 mm², flat: no part of it is lost in corners.
  ['box', { kind: 'box', frame: FRAME, size: [0.06, 0.04, 0.02] }, 8800e-6, 1e-9],
  // 4π · 25² mm²: corners lie on the ball, so that the flat pieces between them have a little less.
  ['sphere', { kind: 'sphere', middle: [0, 0, 0], radius: 0.025, frame: FRAME }, 4 * Math.PI * 0.025 ** 2, 0.02],
  // 2π · 20 · (50 + 20) mm²
  ['cylinder', { kind: 'cylinder', middle: [0, 0, 0], axis: FRAME.axes[2], radius: 0.02, height: 0.05, frame: FRAME }, 2 * Math.PI * 0.02 * 0.07, 0.02],
];

describe.each(SOLIDS)('outlines of a %s', (_, solid, area, within) => {
  const made = (count = 600): { patches: readonly Patch[]; outlines: Outlines } => {
    const outlines: Outlines = [];
    return { patches: surfacePatches(solid, count, outlines), outlines };
  };
  test('are those of the patches, one for one, and the same patches come without', () => {
    const { patches, outlines } = made();
    expect(outlines).toHaveLength(patches.length);
    expect(surfacePatches(solid, 600)).toEqual(patches);
    patches.forEach(({ point, area: own }, i) => {
      const middle = outlines[i]!.reduce<Vector>((s, c) => [s[0] + c[0] / outlines[i]!.length, s[1] + c[1] / outlines[i]!.length, s[2] + c[2] / outlines[i]!.length], [0, 0, 0]);
      expect(Math.sqrt(dot(less(middle, point), less(middle, point)))).toBeLessThan(0.6 * Math.sqrt(own));
    });
  });
  test('have the area of the solid, and of each patch', () => {
    const { patches, outlines } = made();
    const each = outlines.map(o => Math.sqrt(dot(areaOf(o), areaOf(o))));
    expect(Math.abs(each.reduce((a, b) => a + b, 0) / area - 1)).toBeLessThan(within);
    each.forEach((a, i) => { expect(Math.abs(a / patches[i]!.area - 1)).toBeLessThan(Math.max(within, 0.06)); });
  });
  test('run counter-clockwise about the normal', () => {
    const { patches, outlines } = made();
    outlines.forEach((o, i) => { const a = areaOf(o); expect(dot(a, patches[i]!.normal) / Math.sqrt(dot(a, a))).toBeGreaterThan(0.98); });
  });
});

test.each(SOLIDS.filter(([kind]) => kind !== 'sphere'))('patches of a %s are about as wide as they are high', (kind, solid) => {
  const outlines: Outlines = [];
  const patches = surfacePatches(solid, 600, outlines);
  let sides = 0;
  outlines.forEach(([a, b, c], i) => {
    // Of a cylinder those of its side: there are rings on its faces.
    if (kind === 'cylinder' && Math.abs(turnedIntoFrame(FRAME, patches[i]!.normal)[2]) > 0.5) return;
    sides++;
    const [across, up] = [less(b!, a!), less(c!, b!)].map(v => Math.sqrt(dot(v, v))) as [number, number];
    // Counts are whole numbers of 5 and more, by which a patch is an eighth too long at most.
    expect(Math.max(across / up, up / across)).toBeLessThan(1.13);
  });
  expect(sides).toBeGreaterThan(300);
});

test.each(SOLIDS.filter(([kind]) => kind !== 'box'))('few outlines of a %s go round in pieces of 0.3 rad at most, and no more of them than that takes', (_, solid) => {
  const outlines: Outlines = [];
  surfacePatches(solid, 10, outlines);
  let arcs = 0;
  for (const outline of outlines) {
    outline.forEach((corner, i) => {
      const [[x, y, z], [x2, y2, z2]] = [inFrame(FRAME, corner), inFrame(FRAME, outline[(i + 1) % outline.length]!)];
      const [r, r2] = [Math.hypot(x, y), Math.hypot(x2, y2)];
      expect(Math.hypot(x2 - x, y2 - y, z2 - z), 'no corner stands there twice').toBeGreaterThan(1e-6);
      if (Math.abs(z2 - z) > 1e-9 || Math.abs(r2 - r) > 1e-9) return;
      arcs++;
      const turn = Math.acos((x * x2 + y * y2) / (r * r2));
      expect(turn).toBeLessThanOrEqual(0.3);
      // With a piece less they would be longer than 0.3: of two or more none is as short as 0.15.
      expect(turn).toBeGreaterThan(0.15);
    });
  }
  // Ten parts or so, each between circles, in 21 pieces or more all round.
  expect(arcs).toBeGreaterThan(42);
});

test('corners of a rounded thing lie on its surface: x²/a² + y²/b² + z²/c² = 1', () => {
  const outlines: Outlines = [];
  const patches = roundedPatches(facing([0, 0, 0], [0, 0, 1]), [0.04, 0.06, 0.02], 300, outlines);
  expect(outlines).toHaveLength(patches.length);
  // Facing up, the first axis lies along x and the second along y.
  for (const [x, y, z] of outlines.flat()) expect((x / 0.02) ** 2 + (y / 0.03) ** 2 + (z / 0.01) ** 2).toBeCloseTo(1, 9);
});
