/** Light of one small patch in a wide parallel beam, by the formulas of a Gaussian beam, Lambert's law and a cosine lobe written down anew. */
import { expect, test } from 'vitest';
import { beamFromRadius, type Beam } from '../../server/optics/beams/beam.ts';
import { lightFromSurface, type Throw } from '../../server/optics/maps/lit-object.ts';
import type { Vector } from '../../server/optics/vectors.ts';

/** 20 mm to the sides and 10 mm up and down, to 1/e²; over a metre it stays that to 1e-6. */
const beam: Beam = { ...beamFromRadius(0.02, 0, 633e-9, 1), upright: beamFromRadius(0.01, 0, 633e-9, 1).upright };
const [ALONG, ASIDE, AREA, R] = [0.5, 0.008, 1e-10, 0.3];
/** 2/(π w₁ w₂) e^(−2(x²/w₁² + y²/w₂²)) for each watt, 8 mm to the side and 5 mm up. */
const E = (2 / (Math.PI * 0.02 * 0.01)) * Math.exp(-2 * (ASIDE ** 2 / 0.02 ** 2 + 0.005 ** 2 / 0.01 ** 2));
const lobe = (Math.LN2 / -Math.log(Math.cos(0.3)) + 1) / (2 * Math.PI);
const DULL: Throw = { kind: 'back', gloss: 0, halfWidth: 0.3 };
const H = Math.SQRT1_2;
/** Light along (0.48, 0.64, 0.6): its left (−0.8, 0.6, 0) is level, and above it is (−0.36, −0.48, 0.8), of triangles 3, 4, 5. */
const climbing = ([x, y, z]: Vector): Vector => [0.48 * x - 0.8 * y - 0.36 * z, 0.64 * x + 0.6 * y - 0.48 * z, 0.6 * x + 0.8 * z];

// Per watt, what is sent to a point 300 mm off in this direction, of E dA/R².
test.each<[string, Throw, Vector, Vector, number]>([
  ['dull, straight back: 1/π', DULL, [-1, 0, 0], [-1, 0, 0], 1 / Math.PI],
  ['dull, with its normal at cosine 0.8 to the beam and the eye', DULL, [-0.8, 0.6, 0], [-1, 0, 0], 0.64 / Math.PI],
  ['dull, at cosine 0.8 to the beam, seen along its normal', DULL, [-0.8, 0, 0.6], [-0.8, 0, 0.6], 0.8 / Math.PI],
  ['of no normal: from every side', DULL, [0, 0, 0], [0, 0.6, 0.8], 1 / Math.PI],
  ['of no normal and glossy: no lobe', { kind: 'back', gloss: 1, halfWidth: 0.3 }, [0, 0, 0], [0.8, 0.6, 0], 1 / Math.PI],
  ['glossy, at 45°: where a mirror sends it', { kind: 'back', gloss: 1, halfWidth: 0.3 }, [-H, 0, H], [0, 0, 1], H * lobe],
  ['glossy, at 45° to the side', { kind: 'back', gloss: 1, halfWidth: 0.3 }, [-H, H, 0], [0, 1, 0], H * lobe],
  ['a quarter glossy, at 45°', { kind: 'back', gloss: 0.25, halfWidth: 0.3 }, [-H, 0, H], [0, 0, 1], 0.25 * H * lobe + (0.75 * H * H) / Math.PI],
  ['glossy, at its half width: half, at cosine 1 to itself', { kind: 'back', gloss: 1, halfWidth: 0.3 }, [-1, 0, 0], [-Math.cos(0.3), Math.sin(0.3), 0], lobe / 2],
  ['glossy, more than a right angle from where a mirror sends it', { kind: 'back', gloss: 1, halfWidth: 0.3 }, [-H, 0, H], [-0.8, 0, -0.6], 0],
  ['passed on by what has no normal: no lobe', { kind: 'on', halfWidth: 0.3 }, [0, 0, 0], [1, 0, 0], 0],
  ['passed on, straight', { kind: 'on', halfWidth: 0.3 }, [1, 0, 0], [1, 0, 0], lobe],
  ['passed on, at its half width', { kind: 'on', halfWidth: 0.3 }, [1, 0, 0], [Math.cos(0.3), 0, Math.sin(0.3)], lobe / 2],
  ['lit from behind', DULL, [1, 0, 0], [1, 0, 0], 0],
  ['seen from behind', DULL, [-1, 0, 0], [1, 0, 0], 0],
  ['passed on, lit from its other side', { kind: 'on', halfWidth: 0.3 }, [-1, 0, 0], [1, 0, 0], 0],
])('%s', (_, does, normal, to, share) => {
  const expected = (share * E * AREA) / R ** 2;
  const sides = [
    // The beam along +x with its left at +y, as it is written above.
    { turn: (v: Vector): Vector => v },
    // Along +y its left is at −x.
    { turn: ([x, y, z]: Vector): Vector => [-y, x, z] },
    { turn: climbing },
  ];
  for (const { turn } of sides) {
    const at = turn([ALONG, ASIDE, 0.005]);
    const way = turn(to);
    const point: Vector = [at[0] + R * way[0], at[1] + R * way[1], at[2] + R * way[2]];
    const got = lightFromSurface([{ point: at, normal: turn(normal), area: AREA }], beam, { from: [0, 0, 0], along: turn([2, 0, 0]) }, does, point, way);
    if (share === 0) expect(got).toBe(0); else expect(got / expected).toBeCloseTo(1, 5);
  }
});

test.each([0, 1, 2])('a patch that faces along axis %i is lit at cosine 0.8, from a beam that starts anywhere, onto a plate that leans by 60°', k => {
  const along = (parts: readonly [number, number, number]): Vector => [0, 1, 2].map(i => parts[(i - k + 3) % 3]!) as unknown as Vector;
  const from: Vector = [0.3, -0.2, 0.1];
  // On the axis of the beam, seen from straight before it.
  const way = along([-0.8, -0.6, 0]);
  const at: Vector = [from[0] + ALONG * way[0], from[1] + ALONG * way[1], from[2] + ALONG * way[2]];
  const out = along([1, 0, 0]);
  const got = lightFromSurface([{ point: at, normal: out, area: AREA }], beam, { from, along: way }, DULL, [at[0] + R * out[0], at[1] + R * out[1], at[2] + R * out[2]], along([0.5, 0, Math.sqrt(0.75)]));
  expect(got / ((((0.8 * 2) / (Math.PI * 0.02 * 0.01)) * AREA * 0.5) / (Math.PI * R ** 2))).toBeCloseTo(1, 5);
});

test('straight down, left counts along x and up along y', () => {
  const got = lightFromSurface([{ point: [ASIDE, 0.005, -ALONG], normal: [0, 0, 1], area: AREA }], beam, { from: [0, 0, 0], along: [0, 0, -1] }, DULL, [ASIDE, 0.005, R - ALONG], [0, 0, 1]);
  expect(got / ((E * AREA) / (Math.PI * R ** 2))).toBeCloseTo(1, 5);
});

test.each<[string, Vector, number]>([
  // The ray (1, x/z, y/z) through the focus, against each normal.
  ['squarely to the axis', [-1, 0, 0], 1],
  ['turned to the side', [-0.8, -0.6, 0], 0.8 + 0.6 * (0.03 / 0.9)],
  ['turned down', [-0.8, 0, -0.6], 0.8 + 0.6 * (0.02 / 0.9)],
  ['of no normal', [0, 0, 0], Math.hypot(1, 0.03 / 0.9, 0.02 / 0.9)],
])('light that spreads from a focus 0.9 m off falls along its ray on a patch %s', (_, normal, facing) => {
  // 0.02 m where it passes the origin, its focus 0.4 m behind that: 0.5 m on, 0.9 m from the focus, the radius is 0.02 · 0.9/0.4 = 0.045 m.
  const spreading = beamFromRadius(0.02, 1 / 0.4, 633e-9, 1);
  const light = (2 / (Math.PI * 0.045 ** 2)) * Math.exp((-2 * (0.03 ** 2 + 0.02 ** 2)) / 0.045 ** 2) * facing;
  const at = climbing([ALONG, 0.03, 0.02]);
  const back = climbing([-1, 0, 0]);
  const leaving = -normal[0] || 1;
  const point: Vector = [at[0] + R * back[0], at[1] + R * back[1], at[2] + R * back[2]];
  const got = lightFromSurface([{ point: at, normal: climbing(normal), area: AREA }], spreading, { from: [0, 0, 0], along: climbing([1, 0, 0]) }, DULL, point, back);
  expect(got / ((light * leaving * AREA) / (Math.PI * R ** 2))).toBeCloseTo(1, 5);
});

test('light that spreads is thrown by a glossy patch where a mirror sends its ray', () => {
  // As above, the ray (1, 0.03/0.9, 0.02/0.9) comes back as (−1, 0.03/0.9, 0.02/0.9).
  const spreading = beamFromRadius(0.02, 1 / 0.4, 633e-9, 1);
  const light = (2 / (Math.PI * 0.045 ** 2)) * Math.exp((-2 * (0.03 ** 2 + 0.02 ** 2)) / 0.045 ** 2);
  const length = Math.hypot(1, 0.03 / 0.9, 0.02 / 0.9);
  const [at, back] = [climbing([ALONG, 0.03, 0.02]), climbing([-1 / length, 0.03 / 0.9 / length, 0.02 / 0.9 / length])];
  const got = lightFromSurface([{ point: at, normal: climbing([-1, 0, 0]), area: AREA }], spreading, { from: [0, 0, 0], along: climbing([1, 0, 0]) }, { kind: 'back', gloss: 1, halfWidth: 0.3 }, [at[0] + R * back[0], at[1] + R * back[1], at[2] + R * back[2]], back);
  expect(got / ((light * lobe * AREA) / R ** 2)).toBeCloseTo(1, 5);
});

test.each<[string, number]>([['dull', 0], ['glossy', 1]])('right before a %s patch there is as much light as it gives back', (_, gloss) => {
  const near = 1e-6;
  const got = lightFromSurface([{ point: [ALONG, ASIDE, 0.005], normal: [-1, 0, 0], area: 1e-4 }], beam, { from: [0, 0, 0], along: [1, 0, 0] }, { kind: 'back', gloss, halfWidth: 0.3 }, [ALONG - near, ASIDE, 0.005], [1, 0, 0]);
  expect(got / E).toBeCloseTo(1, 5);
});
