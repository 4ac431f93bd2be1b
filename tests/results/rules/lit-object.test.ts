/** Light of objects, of a beam over its plate and of both, by closed forms: Lambert’s cosine law for one spot, a Gaussian beam from a point, and what turns with the table. Lengths in m, of one watt. */
import { describe, expect, test } from 'vitest';
import type { Vector } from '../../../server/optics/vectors.ts';
import { cornerLight, evenlyLit, handStrip, objectLight, objectOverPlate, patchesFor, ratioOver, referenceOverPlate, splitFromMetered, type Laid } from '../../../server/results/rules/object-light.ts';
import { expectNear } from '../read.ts';
import { rad, turned, WAYS } from './turned.ts';

const L = 633e-9;
/** Runs side by side, its radii at 1/e². */
const parallel = (level: number, upright = level): number[] => [0, (Math.PI * level ** 2) / L, 0, (Math.PI * upright ** 2) / L, L, 1];
/** Spreads from a point so far behind, where it has this radius. */
const spreading = (past: number, radius: number): number[] => [past, (L * past ** 2) / (Math.PI * radius ** 2), past, (L * past ** 2) / (Math.PI * radius ** 2), L, 1];
const times = (k: number, v: Vector): Vector => [k * v[0], k * v[1], k * v[2]];
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const length = (v: Vector): number => Math.sqrt(dot(v, v));
const less = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

const D = 0.4;
const PLATE: Vector = [0, -D, 0];
const laid = (shape: Laid['shape'], over: Partial<Laid> = {}): Laid => ({ shape, lying: 'upright', count: 0, byAngle: true, plateByAngle: true, ...over });
/** The plate stands south of the object, seen from there its size is width, height and depth; light that goes straight on comes from the plate’s side. */
const going = (angle: number): Vector => [Math.sin(rad(angle)), Math.cos(rad(angle)), 0];

describe('a beam far narrower than the object lights one spot of it', () => {
  /** cos θo cos θp / (π r²) of all the power, from a spot on a surface that faces so, to a plate that looks straight at the object’s middle. */
  const lambert = (spot: Vector, normal: Vector): number => {
    const to = less(PLATE, spot);
    return Math.max(0, dot(to, normal) / length(normal) / length(to)) * (Math.abs(to[1]) / length(to)) / (Math.PI * dot(to, to));
  };
  const light = (of: Laid, angle: number, [w, h, d]: Vector, beam = parallel(0.3e-3), plate = 0): number => objectLight(of).compute([...beam, D, rad(plate), 0, 0.1, rad(angle), w, h, d]);

  test.each([0, 20, -50, 85])('of a ball, at %s°', (angle) => {
    const out = times(-1, going(angle));
    const is = lambert(times(0.03, out), out);
    for (const shape of ['sphere', 'rounded'] as const) expectNear(light(laid(shape), angle, [0.06, 0.06, 0.06]), is, 1e-5 * is, shape);
  });
  test.each([0, 30, -60])('of a ball that is stretched, at %s°: where x²/a² + y²/c² = 1, at right angles to it', (angle) => {
    const [a, c] = [0.05, 0.02];
    const out = times(-1, going(angle));
    const spot = times(1 / Math.hypot(out[0] / a, out[1] / c), out);
    const is = lambert(spot, [spot[0] / a ** 2, spot[1] / c ** 2, 0]);
    expectNear(light(laid('rounded'), angle, [2 * a, 0.1, 2 * c]), is, 1e-5 * is);
  });
  test.each([['upright', [0.06, 0.12, 0.06]], ['across', [0.12, 0.06, 0.06]], ['along', [0.06, 0.06, 0.12]]] as const)('of a cylinder that lies %s', (lying, size) => {
    const out = times(-1, going(25));
    // Its mantle, or what lies nearest: across, the mantle is met straight in front of the axis; along, its end.
    const [reach, normal]: [number, Vector] = lying === 'upright' ? [0.03, [out[0], out[1], 0]] : lying === 'across' ? [0.03 / -out[1], [0, -1, 0]] : [0.06 / -out[1], [0, -1, 0]];
    const is = lambert(times(reach, out), normal);
    expectNear(light(laid('cylinder', { lying }), 25, size), is, 1e-5 * is);
  });
  test('of a box: its front, and from far enough aside its side, of which the plate sees nothing', () => {
    const front = (angle: number): number => { const out = times(-1, going(angle)); return lambert(times(0.02 / -out[1], out), [0, -1, 0]); };
    expectNear(light(laid('box'), 60, [0.08, 0.1, 0.04]), front(60), 1e-5 * front(60));
    // tan of the angle beyond 0.04 / 0.02 leads to the side
    expect(light(laid('box'), 64, [0.08, 0.1, 0.04])).toBe(0);
  });
  test('of what is rounded and flat: of its face', () => {
    const is = lambert([0, 0, 0], [0, -1, 0]);
    expectNear(light(laid('rounded'), 50, [0.08, 0.1, 0]), is, 1e-5 * is);
  });
  test('of single points: its middle, from and to every side', () => {
    for (const angle of [0, 70, 180]) expectNear(light(laid('points'), angle, [0.06, 0.06, 0.06]), 1 / (Math.PI * D ** 2), 1e-5);
  });
  test('with all of its power, however it spreads on its way to it', () => {
    const is = lambert([0, -0.03, 0], [0, -1, 0]);
    // From 60 mm behind the middle to 30 mm before it: half as wide there.
    for (const beam of [spreading(0.06, 0.4e-3), spreading(-0.06, 0.4e-3), parallel(0.2e-3, 0.6e-3)]) expectNear(light(laid('sphere'), 0, [0.06, 0.06, 0.06], beam), is, 1e-5 * is);
  });
  test('and a plate that is turned catches less, by the cosine', () => {
    const [straight, aslant] = [0, 60].map(plate => light(laid('sphere'), 20, [0.06, 0.06, 0.06], parallel(0.3e-3), plate));
    expectNear(aslant! / straight!, 0.5, 1e-12);
  });
  test.each(['sphere', 'rounded', 'box', 'cylinder', 'points'] as const)('of a %s the same by places, however it is tipped and the table is turned', (shape) => {
    const size: Vector = [0.05, 0.08, 0.03];
    const is = light(laid(shape), 20, size);
    for (const [tipped, table] of WAYS) {
      const now = (v: Vector): Vector => turned(v, tipped, table);
      // A cylinder that stands stays along the plate’s upright; the light need not be as long as 1, nor the sight.
      const by = objectLight(laid(shape, { byAngle: false, plateByAngle: false })).compute([...parallel(0.3e-3), D, ...now([0, 1, 0]), 0, 0.1, ...now(times(3, going(20))), ...now([0, -2, 0]), ...size]);
      expectNear(by, is, 1e-9, `${tipped}° ${table}°`);
    }
  });
});

describe('a screen that a narrow beam lights', () => {
  /** cosⁿ 10° = ½ */
  const n = Math.LN2 / -Math.log(Math.cos(rad(10)));
  const light = (angle: number): number => objectLight(laid('screen')).compute([...parallel(0.3e-3), D, 0, rad(10), rad(180 + angle), 0.05, 0.05, 0.2]);
  test.each([0, 10, -25])('sends it on, %s° beside the way to the plate', (angle) => {
    const is = ((n + 1) / (2 * Math.PI * D ** 2)) * Math.cos(rad(angle)) ** n;
    expectNear(light(angle), is, 1e-4 * is);
  });
  test('that is lit from the side of the plate sends it nothing', () => { expect(light(180)).toBe(0); });
  test('by places too', () => {
    for (const [tipped, table] of WAYS) {
      const now = (v: Vector): Vector => turned(v, tipped, table);
      expectNear(objectLight(laid('screen', { byAngle: false, plateByAngle: false })).compute([...parallel(0.3e-3), D, ...now([0, 1, 0]), rad(10), ...now(going(190)), ...now([0, -1, 0]), 0.05, 0.05, 0.2]), light(10), 1e-9 * light(10));
    }
  });
});

describe('even light', () => {
  // Of a small face A: A cos θi / (π r²) of the light on it.
  test.each([[0, 0], [60, 0], [-30, 0], [0, 45]] as const)('from %s° on a small face, a plate turned by %s°', (angle, plate) => {
    const is = (1e-6 * Math.cos(rad(angle)) * Math.cos(rad(plate))) / (Math.PI * D ** 2);
    for (const count of [0, 400]) expectNear(evenlyLit(laid('box', { count })).compute([D, rad(plate), 0, 0.1, rad(angle), 1e-3, 1e-3, 1e-6]), is, 1e-4 * is);
  });
  // Each of them has an even share of the area of the front, and is lit and seen from every side.
  test('on single points', () => {
    const is = (1e-3 * 2e-3) / (Math.PI * D ** 2);
    for (const angle of [0, 60, 180]) expectNear(evenlyLit(laid('points', { count: 120 })).compute([D, 0, 0, 0.1, rad(angle), 1e-3, 2e-3, 1e-3]), is, 1e-3 * is);
  });
  test('on another thing, or one that is seen from elsewhere, is that on the other thing, whatever was asked before', () => {
    const rule = evenlyLit(laid('box', { byAngle: false }));
    const asked = [[0, -1, 0, 0.1, 0.06, 0.02], [0, -1, 0, 0.05, 0.06, 0.02], [0.6, -0.8, 0, 0.05, 0.06, 0.02], [0, -1, 0, 0.1, 0.06, 0.02]].map(([a, b, c, ...size]) => [D, 0, 0, 0.1, 0.28, 0.96, 0, a!, b!, c!, ...size]);
    const fresh = asked.map(x => evenlyLit(laid('box', { byAngle: false })).compute(x));
    expect(asked.map(x => rule.compute(x))).toEqual(fresh);
    expect(new Set(fresh).size).toBe(3);
  });
  test('is told apart by what it lights', () => {
    const of = (l: Laid): unknown => evenlyLit(l).of;
    expect(of(laid('box'))).not.toEqual(of(laid('sphere')));
    expect(of(laid('box'))).toEqual(of(laid('box', { count: 7 })));
  });
});

/** A beam from a point, R before the middle of a plate, that comes from its right, or from above or below it, as far beside it as `off`: exp(−2ρ²/w²)/w² · cos θ / cos β, w as the distance. */
const R = 0.8;
const W = 0.1;
const overPlate = (angle: number, off: number, from: 'the side' | 'above' | 'below' = 'the side') => ([x, z]: readonly [number, number]): number => {
  const [s, c] = [Math.sin(rad(angle)), Math.cos(rad(angle))];
  const along: Vector = from === 'the side' ? [-s, c, 0] : [0, c, from === 'above' ? -s : s];
  const ray = less([x, 0, z], less([off, 0, 0], times(R, along)));
  const far = dot(ray, along);
  const w = (W * far) / R;
  return (Math.exp((-2 * (dot(ray, ray) - far * far)) / w ** 2) / w ** 2) * (ray[1] / far);
};

describe('a beam over its plate', () => {
  const corners = [[1, 1], [-1, 1], [1, -1], [-1, -1]] as const;
  const weakest = (angle: number, off: number, [w, h]: readonly [number, number], from: 'the side' | 'above' | 'below' = 'the side'): number => Math.min(...corners.map(([x, z]) => overPlate(angle, off, from)([(x * w) / 2, (z * h) / 2]))) / overPlate(angle, off, from)([0, 0]);
  const told = (angle: number, off: number, [w, h]: readonly [number, number], from: 'the side' | 'above' | 'below' = 'the side'): number => cornerLight(true, from).compute([...spreading(R, W), rad(angle), off, w, h]);
  const PLATES = [[0.1, 0.06], [0.04, 0.12]] as const;
  test.each([[0, 0], [40, 0], [40, 0.02], [40, -0.02], [0, 0.03]] as const)('at %s°, its middle %s m beside that of the plate: its weakest corner', (angle, off) => {
    for (const plate of PLATES) {
      // To the worse side, to the better one below 0.
      const [one, other] = [weakest(angle, off, plate), weakest(angle, -off, plate)];
      expectNear(told(angle, off, plate), off < 0 ? Math.max(one, other) : Math.min(one, other), 2e-4);
      if (angle > 0 && off !== 0) expect(Math.abs(one - other)).toBeGreaterThan(0.002);
    }
  });
  test('from above as from the side onto a plate that lies the other way', () => {
    for (const [w, h] of PLATES) for (const from of ['above', 'below'] as const) expectNear(told(40, 0, [w, h], from), told(40, 0, [h, w]), 1e-9);
  });
  // Of the four each is the weakest once: the one away from the light and from the middle of the beam, to whichever side that lies.
  test.each(['above', 'below'] as const)('from %s, its middle beside that of the plate', (from) => {
    for (const plate of PLATES) for (const off of [0.02, -0.02]) expectNear(told(40, off, plate, from), weakest(40, off, plate, from), 2e-4);
  });
  test('by places too', () => {
    for (const [tipped, table] of WAYS) for (const off of [0.02, -0.02]) {
      const now = (v: Vector): Vector => turned(v, tipped, table);
      expectNear(cornerLight(false).compute([...spreading(R, W), ...now([0, -1, 0]), ...now([-Math.sin(rad(40)), Math.cos(rad(40)), 0]), off, 0.1, 0.06]), told(40, off, [0.1, 0.06]), 1e-9);
    }
  });
  test('at each point of it, from its middle to the right and up', () => {
    const at = [[0, 0], [1, 0], [-1, 0], [0, 1], [1, -1]] as const;
    const is = at.map(([x, z]) => overPlate(40, 0)([x * 0.05, z * 0.03]) / overPlate(40, 0)([0, 0]));
    referenceOverPlate(true, 'the side', [0.1, 0.06, ...spreading(R, W), rad(40)], at).forEach((light, i) => { expectNear(light, is[i]!, 2e-4, String(at[i])); });
    // The source stands to the right, so that the right edge has more.
    expect(is[1]!).toBeGreaterThan(is[2]!);
  });
});

describe('the ratio over a plate', () => {
  /** A small matt face straight before the middle: its light falls off as cos⁴ from there. */
  const face = (distance: number): number[] => [...parallel(1), distance, 0, 0, 0.1, 0, 1e-3, 1e-3, 1e-6];
  const cos4 = (distance: number, [x, z]: readonly [number, number]): number => (distance ** 2 / (distance ** 2 + x * x + z * z)) ** 2;
  const part = { laid: laid('box', { count: 120 }), inputs: 14 };
  const [w, h] = [0.1, 0.06];
  const net = [-1, 0, 1].flatMap(a => [-1, 0, 1].map(b => [(a * w) / 2, (b * h) / 2] as const));
  const reference = net.map(p => overPlate(40, 0)(p) / overPlate(40, 0)([0, 0]));
  const over = (end: 'least' | 'greatest', objects: readonly (readonly number[])[]): number => ratioOver(end, true, 'the side', objects.map(() => part), 7).compute([w, h, ...spreading(R, W), rad(40), ...objects.flat()]);

  test('of one object', () => {
    const is = net.map((p, i) => reference[i]! / cos4(0.15, p));
    expectNear(over('least', [face(0.15)]), Math.min(...is), 5e-4);
    expectNear(over('greatest', [face(0.15)]), Math.max(...is), 5e-4);
  });
  test('of several: by what each brings to the middle', () => {
    const of = [[3, 0.12], [1, 0.5], [0.5, 0.25]] as const;
    const is = net.map((p, i) => (reference[i]! * 4.5) / of.reduce((n, [own, distance]) => n + own * cos4(distance, p), 0));
    const objects = of.map(([own, distance]) => [own, ...face(distance)]);
    expectNear(over('least', objects), Math.min(...is), 5e-4);
    expectNear(over('greatest', objects), Math.max(...is), 5e-4);
  });
  test('and of the object alone, from its middle to the right and up', () => {
    const at = [[0, 0], [1, 0], [0, -1], [1, 1]] as const;
    objectOverPlate(part.laid, [w, h, ...face(0.15)], at).forEach((light, i) => { expectNear(light, cos4(0.15, [(at[i]![0] * w) / 2, (at[i]![1] * h) / 2]), 5e-4, String(at[i])); });
  });
  test('is told apart by its end, by where its reference comes from and by its objects', () => {
    const of = (end: 'least' | 'greatest', from: 'the side' | 'above', shapes: readonly Laid['shape'][]): string => JSON.stringify(ratioOver(end, true, from, shapes.map(s => ({ ...part, laid: laid(s) })), 7).of);
    const kinds = [of('least', 'the side', ['box']), of('greatest', 'the side', ['box']), of('least', 'above', ['box']), of('least', 'the side', ['sphere']), of('least', 'the side', ['box', 'box'])];
    expect(new Set(kinds).size).toBe(kinds.length);
  });
});

test('as many patches as a beam needs: nine to the square of its radius, 120 at least; beyond 4000 it counts as one spot', () => {
  // A cube of 0.1 m has 0.06 m².
  const cube: Vector = [0.1, 0.1, 0.1];
  expect([1, 0.1, 0.048, 0.0117, 0.0116, 0.001].map(radius => patchesFor(radius, cube))).toEqual([120, 120, 235, 3945, 0, 0]);
  // 2 (0.1 · 0.2 + 0.2 · 0.3 + 0.3 · 0.1) = 0.22
  expect(patchesFor(0.11, [0.1, 0.2, 0.3])).toBe(164);
});

test('a test strip has two steps for each stop that is unsure, and its middle: five at least, nine at most', () => {
  // 32 s is a time that a hand keeps, as are its halves.
  expect([[32, 32], [16, 64], [16, 65], [8, 128], [1, 1000], [64, 16]].map(([low, high]) => handStrip(32, low!, high!).length)).toEqual([5, 5, 7, 9, 9, 5]);
});

test('of what a splitter gives to one side alone nothing can be told from a metered ratio', () => {
  for (const reflected of [true, false]) for (const share of [0, 1]) expect(splitFromMetered(reflected).compute([4, 2, share])).toBeNaN();
});
