/** Surfaces as patches against areas, volumes and shadows in closed form. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { facing, inFrame } from '../../server/optics/solids/frame.ts';
import { card, disc, type Solid } from '../../server/optics/solids/solid.ts';
import { isLitAndSeen, litAndSeen, lightOnPatches, litSquarely, seenSquarely } from '../../server/optics/surface/lit.ts';
import { pointsWithin, surfacePatches, type Patch } from '../../server/optics/surface/patches.ts';
import { arrivingAt, pathTo, type Source } from '../../server/optics/surface/source.ts';
import { direction, type Vector } from '../../server/optics/vectors.ts';
import { between, expectNear } from './outside.ts';

const DEGREE = Math.PI / 180;
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
const area = (patches: readonly Patch[]): number => sum(patches.map((patch) => patch.area));
const mm = (x: number, y: number, z = 150): Vector => [x / 1000, y / 1000, z / 1000];
/** Light that comes from this side, heading in the plan, of what stands at the origin. */
const parallelFrom = (heading: number): Source => ({ kind: 'parallel', direction: direction(heading + Math.PI, 0) });

const whelk: Solid = { kind: 'box', frame: facing([0, 0, 0], [0, 1, 0]), size: [0.04, 0.06, 0.035] };
const vase: Solid = { kind: 'cylinder', middle: [0, 0, 0], axis: [0, 0, 1], radius: 0.03, height: 0.1 };
const float: Solid = { kind: 'sphere', middle: [0, 0, 0], radius: 0.04 };
const shapes: [string, Solid, { area: number; volume: number }][] = [
  ['a box', whelk, { area: 2 * (0.04 * 0.06 + 0.06 * 0.035 + 0.035 * 0.04), volume: 0.04 * 0.06 * 0.035 }],
  ['a cylinder', vase, { area: 2 * Math.PI * 0.03 * (0.03 + 0.1), volume: Math.PI * 0.03 ** 2 * 0.1 }],
  ['a sphere', float, { area: 4 * Math.PI * 0.04 ** 2, volume: (4 / 3) * Math.PI * 0.04 ** 3 }],
];

describe.each(shapes)('%s', (_, solid, { area: whole, volume }) => {
  it.each([1, 7, 100, 2000, 10_000])('in about %d patches has its area', (count) => {
    const patches = surfacePatches(solid, count);
    expectNear(area(patches), whole, 1e-12);
    if (count >= 100) expectNear(patches.length, count, 0.12 * count, 'count');
    // patches are as good as alike in size
    if (count >= 2000) for (const patch of patches) expectNear(patch.area, whole / count, (0.5 * whole) / count);
  });
  it('is closed: normals cancel, and enclose its volume', () => {
    const patches = surfacePatches(solid, 2000);
    for (const axis of [0, 1, 2] as const) expectNear(sum(patches.map(({ normal, area: a }) => normal[axis] * a)), 0, 1e-12);
    for (const { normal } of patches) expectNear(dot(normal, normal), 1, 1e-12);
    // Gauss: ∫ p · n dA = 3 V
    expectNear(sum(patches.map(({ point, normal, area: a }) => dot(point, normal) * a)) / 3, volume, 0.002 * volume);
  });
  it('is its own mirror image', () => {
    const patches = surfacePatches(solid, 300);
    const key = ([x, y, z]: Vector): string => [x, y, z].map((v) => (Math.round(v * 1e9) + 0)).join(' ');
    const all = new Set(patches.map(({ point }) => key(point)));
    expect(all.size).toBe(patches.length);
    for (const { point: [x, y, z] } of patches) {
      for (const image of [[-x, y, z], [x, -y, z], [x, y, -z]] as const) expect(all).toContain(key(image));
    }
  });
  it('throws a shadow as large as it looks, from any side', () => {
    const patches = surfacePatches(solid, 10_000);
    fc.assert(fc.property(between(-Math.PI, Math.PI), between(-1.4, 1.4), (heading, elevation) => {
      const way = direction(heading, elevation);
      const lit = sum(patches.map((patch) => patch.area * litSquarely(patch, { kind: 'parallel', direction: way })));
      const [x, y, z] = way.map(Math.abs) as [number, number, number];
      const looks = solid.kind === 'sphere' ? Math.PI * solid.radius ** 2
        : solid.kind === 'cylinder' ? 2 * solid.radius * solid.height * Math.hypot(x, y) + Math.PI * solid.radius ** 2 * z
          : 0.06 * 0.035 * x + 0.04 * 0.06 * y + 0.04 * 0.035 * z;
      expectNear(lit, looks, 0.004 * looks);
    }));
  });
});

describe('what is thin', () => {
  it('has two faces', () => {
    for (const [thin, face] of [[card(facing([0, 0, 0], [0, -1, 0]), 0.1, 0.05), 0.005], [disc([0, 0, 0], [0, -1, 0], 0.05), Math.PI * 0.025 ** 2]] as const) {
      const patches = surfacePatches(thin, 1000);
      const front = patches.filter(({ normal }) => normal[1] < 0);
      expectNear(front.length, 500, 50);
      expectNear(area(front), face, 1e-12);
      expectNear(area(patches), 2 * face, 1e-12);
      for (const { point, normal, area: own } of patches) {
        expectNear(point[1], 0, 1e-15);
        expectNear(Math.abs(normal[1]), 1, 1e-12);
        // It has no edges.
        expect(own).toBeGreaterThan(0);
      }
    }
  });
  it('long and narrow keeps to the number', () => {
    for (const size of [[1, 1e-4, 0], [1e-6, 2, 1e-6], [100, 1e-9, 1e-3]] as const) {
      expectNear(surfacePatches({ kind: 'box', frame: facing([0, 0, 0], [1, 1, 1]), size }, 1000).length, 1000, 100);
    }
  });
  it('without any surface is one point that everything sees', () => {
    for (const nothing of [card(facing([1, 2, 3], [0, 1, 0]), 0, 0), disc([1, 2, 3], [0, 1, 0], 0), { kind: 'sphere', middle: [1, 2, 3], radius: 0 }] as Solid[]) {
      const patches = surfacePatches(nothing, 50);
      expect(patches).toEqual([{ point: [1, 2, 3], normal: [0, 0, 0], area: 0 }]);
      expect(seenSquarely(patches[0]!, [5, 5, 5])).toBe(1);
    }
  });
});

describe('points', () => {
  it('fill their box from face to face', () => {
    const frame = facing([0.7, 0.4, 0.15], [0, 1, 0]);
    const points = pointsWithin(frame, [0.04, 0.06, 0.035], 500);
    expectNear(points.length, 500, 60);
    expectNear(area(points), 0.04 * 0.06, 1e-12);
    for (const [axis, half] of [[0, 0.02], [1, 0.03], [2, 0.0175]] as const) {
      const along = points.map(({ point }) => inFrame(frame, point)[axis]);
      expectNear(Math.max(...along), half, 1e-12);
      expectNear(Math.min(...along), -half, 1e-12);
      expectNear(sum(along), 0, 1e-9);
    }
  });
  it('of a box without depth lie on it, and there may be one alone, in its middle', () => {
    const flat = pointsWithin(facing([0.7, 0.4, 0.15], [0, 1, 0]), [0.04, 0.06, 0], 150);
    // 10 by 15, as 40 to 60 mm
    expect(flat).toHaveLength(150);
    expectNear(area(flat), 0.04 * 0.06, 1e-12);
    for (const { point } of flat) expectNear(point[1], 0.4, 1e-12);
    const lone = pointsWithin(facing([0.7, 0.4, 0.15], [0, 1, 0]), [0.04, 0.06, 0.035], 1);
    expect(lone).toEqual([{ point: [0.7, 0.4, 0.15], normal: [0, 0, 0], area: 0.04 * 0.06 }]);
  });
  it('are lit and seen from every side', () => {
    const points = pointsWithin(facing([0, 0, 0], [0, 1, 0]), [0.04, 0.06, 0.035], 200);
    const view = litAndSeen(points, parallelFrom(-90 * DEGREE), [0, 5, 0], [0, 0, 0]);
    expect([view.seenOfLit, view.litOfSeen]).toEqual([1, 1]);
    expectNear(view.depth!.nearest, -0.0175, 1e-12);
    expectNear(view.depth!.farthest, 0.0175, 1e-12);
  });
});

describe('lit and seen', () => {
  // Of a sphere, light and eye far away ψ apart: a lune of angle π − ψ of the half that is lit.
  it.each([0, 30, 51.3, 90, 135, 170])('of a sphere lit %f° from the line of sight is a lune', (psi) => {
    const patches = surfacePatches(float, 10_000);
    const view = litAndSeen(patches, parallelFrom(90 * DEGREE - psi * DEGREE), [0, 1e4, 0], [0, 0, 0]);
    expectNear(view.seenOfLit, 1 - psi / 180, 0.01);
    expectNear(view.litOfSeen, 1 - psi / 180, 0.01);
    expectNear(view.lit, 2 * Math.PI * 0.04 ** 2, 0.02 * 2 * Math.PI * 0.04 ** 2);
    // The nearest part of a lune faces the eye while the light is on it: −r up to 90°, −r cos(ψ − 90°) beyond. The farthest lies on the rim that is seen, and is lit somewhere.
    const nearest = psi <= 90 ? -0.04 : -0.04 * Math.sin(psi * DEGREE);
    expectNear(view.depth!.nearest, nearest, 0.0012);
    expectNear(view.depth!.farthest, 0, 0.0012);
  });

  it('of a sphere seen from near is a cap: (1 − r/d) / 2 of its area', () => {
    const view = litAndSeen(surfacePatches(float, 10_000), parallelFrom(90 * DEGREE), [0, 0.1, 0], [0, 0, 0]);
    expectNear(view.seen / (4 * Math.PI * 0.04 ** 2), (1 - 0.04 / 0.1) / 2, 0.005);
    expectNear(view.litOfSeen, 1, 1e-12);
    expectNear(view.seenOfLit, 1 - 0.04 / 0.1, 0.01);
    // Archimedes: the rim of the cap lies r²/d before the middle.
    expectNear(view.depth!.farthest, -(0.04 ** 2) / 0.1, 0.001);
  });

  it('of a sphere lit from near is a cap too', () => {
    const view = litAndSeen(surfacePatches(float, 10_000), { kind: 'point', at: [0, 0.08, 0] }, [0, 1e4, 0], [0, 0, 0]);
    expectNear(view.lit / (4 * Math.PI * 0.04 ** 2), (1 - 0.04 / 0.08) / 2, 0.005);
  });

  // Two-beam layout, common practice: the whelk at (700, 400) mm, its front to the plate at (700, 700); M3 at (400, 640) lights it from the front.
  const placed: Solid = { kind: 'box', frame: facing(mm(700, 400), [0, 1, 0]), size: [0.04, 0.06, 0.035] };
  const plate = mm(700, 700);
  it('of a box lit from the front and the left: the plate sees the front, all of it lit', () => {
    const patches = surfacePatches(placed, 2000);
    const view = litAndSeen(patches, { kind: 'point', at: mm(400, 640) }, plate, mm(700, 400));
    // lit: front 40 × 60 and one side 35 × 60; seen: the front alone
    expectNear(view.lit * 1e6, 2400 + 2100, 1e-6);
    expectNear(view.seen * 1e6, 2400, 1e-6);
    expect(view.litOfSeen).toBe(1);
    expectNear(view.seenOfLit, 2400 / 4500, 1e-9);
    expectNear(view.depth!.nearest * 1000, -17.5, 1e-9);
    expectNear(view.depth!.farthest * 1000, -17.5, 1e-9);
    expect(view.patches.every((i) => patches[i]!.normal[1] > 0.999)).toBe(true);
    expectNear(sum(view.patches.map((i) => patches[i]!.area)), view.both, 1e-15);
  });
  it('of a box lit from the far side: the plate sees the dark side', () => {
    // The last mirror as far away, 135° from the line of sight.
    const view = litAndSeen(surfacePatches(placed, 2000), { kind: 'point', at: mm(700 - 384 * Math.SQRT1_2, 400 - 384 * Math.SQRT1_2) }, plate, mm(700, 400));
    expect(view.litOfSeen).toBe(0);
    expect(view.both).toBe(0);
    expect(view.depth).toBeUndefined();
    expect(view.patches).toEqual([]);
  });
  // The eye is off by (2, 3, 6), 7 long: what is moved towards it by a way comes nearer by that way's part along it.
  it.each<[Vector, number]>([[[0.07, 0, 0], 0.02], [[0, 0.07, 0], 0.03], [[0, 0, 0.07], 0.06], [[-0.02, -0.03, -0.06], -0.07]])('counts depth from the middle, along the line of sight: by %j it is %d m nearer', (by, nearer) => {
    const there: Patch = { point: [1 + by[0], 2 + by[1], 3 + by[2]], normal: [0, 0, 0], area: 1 };
    const { depth } = litAndSeen([there], parallelFrom(0), [3, 5, 9], [1, 2, 3]);
    expectNear(depth!.nearest, -nearer, 1e-12);
    expectNear(depth!.farthest, -nearer, 1e-12);
  });
  it('of a box turned by 45° is two sides, and half of them lit from one side', () => {
    const turned: Solid = { kind: 'box', frame: facing([0, 0, 0], [1, 1, 0]), size: [0.05, 0.05, 0.05] };
    const view = litAndSeen(surfacePatches(turned, 3000), parallelFrom(0), [0, 1e4, 0], [0, 0, 0]);
    expectNear(view.litOfSeen, 0.5, 1e-9);
    expectNear(view.seenOfLit, 0.5, 1e-9);
    // The near edge is 50 mm · √½ before the middle, the corner to the right level with it; patches reach half their width short of both.
    expectNear(view.depth!.nearest, -0.05 * Math.SQRT1_2, 0.001);
    expectNear(view.depth!.farthest, 0, 0.001);
  });
});

describe('light', () => {
  it('from a point thins out with the square of the distance and falls with the cosine', () => {
    // At 2 m facing the beam 8 W/m². At 1 m, 60° askew: 8 · 4 · 0.5 = 16.
    const patch: Patch = { point: [1, 0, 0], normal: direction(120 * DEGREE, 0), area: 1 };
    expectNear(lightOnPatches([patch], { kind: 'point', at: [0, 0, 0] }, 8, [2, 0, 0])[0]!, 16, 1e-12);
    expectNear(lightOnPatches([patch], { kind: 'parallel', direction: [3, 0, 0] }, 8, [2, 0, 0])[0]!, 4, 1e-12);
    // toward a focus at 3 m: at 1 m it is twice as far from the focus as at 2 m, and a quarter as strong
    expectNear(lightOnPatches([patch], { kind: 'toward', at: [3, 0, 0] }, 8, [2, 0, 0])[0]!, 1, 1e-12);
    expect(lightOnPatches([{ ...patch, normal: [1, 0, 0] }], { kind: 'point', at: [0, 0, 0] }, 8, [2, 0, 0])[0]).toBe(0);
  });
  it('has its wave fronts square to its way: paths grow along it and nowhere else', () => {
    const sources = fc.oneof(fc.constantFrom('point', 'toward').chain((kind) => fc.tuple(between(2, 3), between(2, 3)).map(([x, y]): Source => ({ kind, at: [x, y, 0.5] }))), between(-3, 3).map(parallelFrom));
    fc.assert(fc.property(sources, between(-1, 1), between(-1, 1), between(-3, 3), between(-1.5, 1.5), (source, x, y, a, e) => {
      const [p, u] = [[x, y, 0] as Vector, direction(a, e)];
      const h = 1e-5;
      const at = (k: number): number => pathTo(source, [p[0] + k * h * u[0], p[1] + k * h * u[1], k * h * u[2]]);
      expectNear((at(1) - at(-1)) / (2 * h), dot(arrivingAt(source, p), u), 1e-8);
    }));
  });
});

describe('a patch that looks along x', () => {
  const patch: Patch = { point: [0.1, 0, 0], normal: [1, 0, 0], area: 1e-4 };
  // Light from the side that it looks to falls on it; from (0.2, 1, 0) the way to it makes 84° with x, from (0, 1, 0) and (−1, 0, 0) more than 90°.
  it.each<[string, Source, Vector[], boolean]>([
    ['lit and seen', parallelFrom(0), [[0.2, 1, 0]], true],
    ['lit, and seen from one of several points', parallelFrom(0), [[0, 1, 0], [0.2, 1, 0]], true],
    ['lit, and seen from none', parallelFrom(0), [[0, 1, 0], [-1, 0, 0]], false],
    ['lit, and nobody there', parallelFrom(0), [], false],
    ['seen, and lit from behind', parallelFrom(Math.PI), [[0.2, 1, 0]], false],
  ])('is %s', (_, light, eyes, is) => { expect(isLitAndSeen(patch, light, eyes)).toBe(is); });
  it('and one that looks nowhere is lit and seen from everywhere', () => { expect(isLitAndSeen({ ...patch, normal: [0, 0, 0] }, parallelFrom(Math.PI), [[-1, 0, 0]])).toBe(true); });
});

it('numbers outside all domains give finite results', () => {
  const any = fc.oneof(fc.double(), between(-2, 2), fc.constantFrom(0, -0, 1e-300, 1e300, Infinity, -Infinity, NaN));
  const wild = fc.tuple(any, any, any);
  const odd = fc.oneof(
    fc.tuple(wild, wild, any, wild).map(([o, n, t, s]): Solid => ({ kind: 'box', frame: facing(o, n, t), size: s })),
    fc.tuple(wild, wild, any, any).map(([middle, axis, radius, height]): Solid => ({ kind: 'cylinder', middle, axis, radius, height })),
    fc.tuple(wild, any).map(([middle, radius]): Solid => ({ kind: 'sphere', middle, radius })),
  );
  const source = fc.oneof(fc.constantFrom('point', 'toward').chain((kind) => wild.map((at): Source => ({ kind, at }))), wild.map((d): Source => ({ kind: 'parallel', direction: d })));
  const few = fc.oneof(between(-5, 60), fc.constantFrom(NaN, -Infinity));
  fc.assert(fc.property(odd, source, wild, wild, wild, any, few, (s, light, eye, middle, other, x, n) => {
    const patches = [...surfacePatches(s, n), ...pointsWithin(facing(eye, middle), other, n), { point: other, normal: middle, area: x }];
    expect(patches.length).toBeLessThan(250);
    const { depth, patches: indices, ...rest } = litAndSeen(patches, light, eye, middle);
    const numbers = [...Object.values(rest), ...Object.values<number>({ ...depth }), ...indices, ...lightOnPatches(patches, light, x, middle), ...patches.slice(0, -1).flatMap((p) => [...p.point, ...p.normal, p.area])];
    expect(numbers.every(Number.isFinite)).toBe(true);
  }), { numRuns: 1000 });
});
