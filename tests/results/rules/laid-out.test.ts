/** How an object is laid out by the line of sight: who looks from −y has x on the right, z above, and −y toward himself. */
import { describe, expect, test } from 'vitest';
import { sourceOf } from '../../../server/results/rules/object.ts';
import { shapeWords, solidOf, surfaceOf } from '../../../server/results/rules/surface.ts';
import { passedBy, traced, type Meeting } from '../../../server/results/rules/polarization.ts';
import type { Vector } from '../../../server/optics/vectors.ts';

const SIGHT: Vector = [0, -2, 0];
const SIZE: Vector = [0.1, 0.2, 0.3];
const about = (c: number): unknown => expect.closeTo(c, 12);
const near = (v: readonly number[]): unknown[] => v.map(about);

describe('solids', () => {
  // Its ends are as far apart as the thing is along its axis, and it is as thick as the mean of both other sides.
  test.each([['upright', [0, 0, 1], 0.1, 0.2], ['across', [1, 0, 0], 0.125, 0.1], ['along', [0, -1, 0], 0.075, 0.3]] as const)('a cylinder that lies %s', (lying, axis, radius, height) => {
    const solid = solidOf('cylinder', lying, SIZE, SIGHT);
    expect(solid).toMatchObject({ kind: 'cylinder', axis: near(axis), radius: about(radius), height });
    // Its parts lie on its side and on both ends.
    const points = surfaceOf({ shape: 'cylinder', lying }, SIGHT, SIZE).map(p => p.point);
    const on = points.map(p => p[0] * axis[0] + p[1] * axis[1] + p[2] * axis[2]);
    expect([Math.min(...on), Math.max(...on)]).toEqual(near([-height / 2, height / 2]));
    expect(Math.max(...points.map((p, i) => Math.sqrt(p[0] ** 2 + p[1] ** 2 + p[2] ** 2 - on[i]! ** 2)))).toBeCloseTo(radius, 12);
  });
  test('a ball is as large as the box of its sides, a screen is flat, and what else there is a box', () => {
    // Its diameter to the third is 0.1 · 0.2 · 0.4 = 0.2³.
    expect(solidOf('sphere', 'upright', [0.1, 0.2, 0.4], SIGHT)).toMatchObject({ kind: 'sphere', radius: about(0.1) });
    expect(solidOf('screen', 'upright', SIZE, SIGHT)).toMatchObject({ kind: 'box', size: [0.1, 0.2, 0] });
    expect(solidOf('box', 'upright', SIZE, SIGHT)).toMatchObject({ kind: 'box', size: SIZE });
  });
});

test('single points lie to the right, up and toward the plate, wherever that is', () => {
  const points: Vector[] = [[0.01, 0.02, 0.03]];
  const at = (sight: Vector): readonly number[] => surfaceOf({ shape: 'points', lying: 'upright', points }, sight, SIZE)[0]!.point;
  expect(at([0, -2, 0])).toEqual(near([0.01, -0.03, 0.02]));
  // From +x the right is +y; from +y it is −x; from 3-4 aslant (0.8, −0.6) looks with its right at (0.6, 0.8).
  expect(at([2, 0, 0])).toEqual(near([0.03, 0.01, 0.02]));
  expect(at([0, 2, 0])).toEqual(near([-0.01, 0.03, 0.02]));
  // Who looks down from (0, −0.6, 0.8) has what is up at (0, 0.8, 0.6).
  expect(at([0, -0.6, 0.8])).toEqual(near([0.01, 0.8 * 0.02 - 0.6 * 0.03, 0.6 * 0.02 + 0.8 * 0.03]));
  // From (0.6, 0, 0.8): right is north, up is (−0.8, 0, 0.6).
  expect(at([0.6, 0, 0.8])).toEqual(near([-0.8 * 0.02 + 0.6 * 0.03, 0.01, 0.6 * 0.02 + 0.8 * 0.03]));
  expect(at([0.8, -0.6, 0])).toEqual(near([0.6 * 0.01 + 0.8 * 0.03, 0.8 * 0.01 - 0.6 * 0.03, 0.02]));
});

test('only a shape that is not written and not given by points is told to be a guess', () => {
  expect(shapeWords({ assumed: true })).not.toBe('');
  expect(shapeWords({ assumed: true, points: [] })).toBe('');
  expect(shapeWords({ assumed: false })).toBe('');
});

test('light past its focus comes from before the place, light toward it from behind, and from R = z + zR²/z', () => {
  // z = 1 m, zR = 1 m: R = 2 m; along (0, 0.6, 0.8) that is 1.2 and 1.6 m back.
  expect(sourceOf([1, 1, 1], [0, 3, 4], 1, 1)).toEqual({ kind: 'point', at: near([1, -0.2, -0.6]) });
  expect(sourceOf([1, 1, 1], [0, 3, 4], -1, 1)).toEqual({ kind: 'toward', at: near([1, 2.2, 2.6]) });
  for (const flat of [sourceOf([1, 1, 1], [0, 3, 4]), sourceOf([1, 1, 1], [0, 3, 4], 0, 1), sourceOf([1, 1, 1], [0, 3, 4], 1)]) expect(flat).toEqual({ kind: 'parallel', direction: near([0, 0.6, 0.8]) });
});

describe('folds that no place tells', () => {
  const rad = (degrees: number): number => (degrees * Math.PI) / 180;
  const train = { stretches: [[], []], turns: ['mirror'] } as const;
  const meeting = (over: Partial<Meeting>): Meeting => ({ ground: 'level', way: 'transmission', from: 'the side', reference: train, object: train, ...over });
  test('both beams alike make fringes wholly when upright, and as cos² of the angle between them when level', () => {
    expect(traced(meeting({}), [0, 1, 1, rad(60), 0]).share).toBeCloseTo(1, 9);
    expect(traced(meeting({}), [rad(90), 1, 1, rad(60), 0]).share).toBeCloseTo(0.25, 9);
  });
  test('a reference from above is the other way round', () => {
    expect(traced(meeting({ from: 'above' }), [0, 1, 1, rad(60), 0]).share).toBeCloseTo(0.25, 9);
    expect(traced(meeting({ from: 'above' }), [rad(90), 1, 1, rad(60), 0]).share).toBeCloseTo(1, 9);
    // Only its fold leads out of the table's plane.
    const { reference, object } = traced(meeting({ from: 'above' }), [0, 1, 1, rad(60), 0]);
    expect([reference.rising, object.rising]).toEqual([[0], []]);
  });
});

test('half of what is polarized at random passes, whichever way the polarizer stands', () => {
  for (const axis of [0, 0.4, 1.1]) expect(passedBy('level', { stretches: [['polarizer']], turns: [] }).compute([0.3, 0, axis])).toBeCloseTo(0.5, 12);
});
