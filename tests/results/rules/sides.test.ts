/** From which side light comes to a plate, which edge of a master goes up, where a narrow beam meets an object: by places that can be told by hand. */
import { describe, expect, test } from 'vitest';
import type { Vector } from '../../../server/optics/vectors.ts';
import { arrivingFrom, comesFrom, sideOf, sidesOf, slitLies, type Known } from '../../../server/results/rules/fringes.ts';
import { topNow, type Top } from '../../../server/results/rules/masters.ts';
import { objectLight } from '../../../server/results/rules/object-light.ts';
import { sourceOf } from '../../../server/results/rules/object.ts';
import { expectNear } from '../read.ts';
import { rad, turned } from './turned.ts';

describe('from where light comes to a plate', () => {
  /** Light that comes at 30° from the normal, from `turned` degrees above the right side. */
  const at = (turned: number): Vector => [-0.5 * Math.cos(rad(turned)), Math.sqrt(0.75), -0.5 * Math.sin(rad(turned))];
  test.each([[0, 'the side'], [44, 'the side'], [46, 'above'], [90, 'above'], [134, 'above'], [136, 'the side'], [180, 'the side'], [-44, 'the side'], [-46, 'below'], [-90, 'below'], [-136, 'the side']] as const)('turned by %s°: %s', (turned, from) => {
    expect(comesFrom([0, -1, 0], at(turned))).toBe(from);
    expect(comesFrom([0, 1, 0], at(turned))).toBe(from);
  });
  test('to a plate that is tipped and turned: by how steep its part along the plate is', () => {
    // Of a plate that is tipped by 30° the way up along it rises by cos 30°: 45° are reached at arcsin(√½ / cos 30°) = 54.7° from the side.
    for (const tipped of [30, -30]) for (const table of [0, 40, 200]) {
      for (const [from, is] of [[0, 'the side'], [54, 'the side'], [56, 'above'], [90, 'above'], [124, 'above'], [126, 'the side'], [-54, 'the side'], [-56, 'below']] as const) {
        expect(comesFrom(turned([0, -1, 0], tipped, table), turned(at(from), tipped, table)), `${from}° ${tipped}° ${table}°`).toBe(is);
      }
    }
  });
  test('by an angle: to the right, up or down for who looks at the plate from the object', () => {
    expect((['the side', 'above', 'below'] as const).map(sideOf)).toEqual([[1, 0, 0], [0, 0, 1], [0, 0, -1]]);
    const by = (from: 'the side' | 'above' | 'below', on: 1 | -1): Vector => arrivingFrom(from, rad(30), on).map(v => Number(v.toFixed(9)) + 0) as unknown as Vector;
    expect([by('the side', 1), by('above', 1), by('below', -1)]).toEqual([[-0.5, 0.866025404, 0], [0, 0.866025404, -0.5], [0, -0.866025404, 0.5]]);
  });
  test('on which sides of a plate both beams run', () => {
    // cos 60° · cos 60°, whatever the lengths
    const aslant = (sign: number): Vector => [Math.sqrt(3), sign, 0];
    for (const [one, other, is] of [[1, 1, 0.25], [1, -1, -0.25], [-1, -1, 0.25]] as const) expectNear(sidesOf([0, -3, 0], aslant(one), aslant(other)), is, 1e-12);
    expectNear(sidesOf([0, -1, 0], [0, 2, 0], aslant(-1)), -0.5, 1e-12);
  });
  test('within five degrees of the normal from no side', () => {
    for (const angle of [0, 4, -4]) expect(comesFrom([0, -1, 0], [Math.sin(rad(angle)), Math.cos(rad(angle)), 0])).toBeUndefined();
    for (const angle of [6, -6]) expect(comesFrom([0, -1, 0], [Math.sin(rad(angle)), Math.cos(rad(angle)), 0])).toBe('the side');
  });
});

describe('a slit beside its reference', () => {
  const known: Known = { by: 'angles', way: 'transmission', from: 'the side', far: false, spread: false, plate: false, object: true };
  const lies = (width: number, height: number, from: Known['from'] = 'the side'): string | undefined => slitLies({ ...known, from }, [rad(40), 0, 1, width, height, 0]);
  test('lies along the way to the reference, or across', () => {
    expect(lies(0.1, 0.01)).toBe('along');
    expect(lies(0.01, 0.1)).toBe('across');
    expect(lies(0.1, 0.01, 'above')).toBe('across');
    expect(lies(0.01, 0.1, 'below')).toBe('along');
  });
  test('beside a reference that stands aslant it does neither', () => {
    // Along a slit 0.1 m by 0.01 m, by places: a reference whose part along the plate is turned from the level. As far up as to the side it is half way; cot 20° = 2.7 is more than twice, cot 30° = 1.7 is not.
    const at = (from: number): string | undefined => slitLies({ ...known, by: 'places' }, [0, 0, 0, 0, -1, 0, 0, -1, 0, -0.5 * Math.cos(rad(from)), Math.sqrt(0.75), -0.5 * Math.sin(rad(from)), 0.1, 0.01, 0]);
    expect([0, 20, 30, 60, 70, 90].map(at)).toEqual(['along', 'along', undefined, undefined, 'across', 'across']);
  });
  test('of less than three times as long as wide it does neither', () => {
    expect(lies(0.025, 0.01)).toBeUndefined();
    expect(lies(0.01, 0.025)).toBeUndefined();
  });
});

describe('which edge of a master goes up', () => {
  /**
   * A plate at the origin that looks along −y, tipped upwards, on a table that is turned. `object`: how far off what it faces is, below zero behind it, where what takes up the image of a plate stands that is looked through.
   * The light comes at 30° from the normal, from `from` degrees above the right side as one sees the plate that it looks at.
   */
  const stands = (from: number, object: number, tipped = 0, table = 0): number[] => {
    const now = (v: Vector): Vector => turned(v, tipped, table);
    return [0, 0, 0, ...now([0, -1, 0]), ...now([0, -object, 0]), ...now([-0.5 * Math.cos(rad(from)), Math.sqrt(0.75), -0.5 * Math.sin(rad(from))])];
  };
  const looked = (from: number, now: number, tipped = 0, table = 0): Top | undefined => topNow(stands(from, 0.3, tipped), stands(now, -0.3, tipped, table), 1);
  test('lit as it was recorded it stays as it was, however it is tipped and the table is turned', () => {
    for (const from of [0, 30, 90, 200, 315]) for (const tipped of [0, 25, -40]) for (const table of [0, 50, 130, 250]) expect(looked(from, from, tipped, table), `${from}° ${tipped}° ${table}°`).toBe('up');
  });
  // Light from 90° further round turns the plate with it. From the object's side its upper edge then goes to the left; what takes up the image is on the other side, so that left is right.
  test.each([[0, 90, 'right'], [90, 0, 'left'], [90, 180, 'right'], [180, 90, 'left'], [0, 180, 'down'], [40, 220, 'down'], [20, 110, 'right'], [110, 20, 'left']] as const)('recorded with light from %s°, lit from %s°: %s', (from, now, edge) => {
    expect(looked(from, now)).toBe(edge);
    expect(looked(from, now, 10, 70)).toBe(edge);
  });
  test('less than 45° leave it up, more turn it', () => {
    expect(looked(0, 40)).toBe('up');
    expect(looked(0, 50)).toBe('right');
  });
  test('what lies more than it stands has no edge up', () => {
    expect(looked(0, 0, 44)).toBe('up');
    expect(looked(0, 0, 46)).toBeUndefined();
  });
  test('light that comes squarely tells of no edge', () => {
    expect(topNow([0, 0, 0, 0, -1, 0, 0, -0.3, 0, 0, 1, 0], stands(0, -0.3), 1)).toBeUndefined();
  });
});

describe('a beam far narrower than the object', () => {
  const rule = objectLight({ shape: 'box', lying: 'upright', count: 0, byAngle: true, plateByAngle: true });
  const beam = [0, (Math.PI * 0.5e-3 ** 2) / 633e-9, 0, (Math.PI * 0.5e-3 ** 2) / 633e-9, 633e-9, 1];
  const light = (angle: number, [w, h, d]: Vector, distance = 0.4): number => rule.compute([...beam, distance, 0, 0, 0.1, rad(angle), w, h, d]);
  test.each([[0, 0.1], [0, 0.02], [20, 0.04], [-20, 0.04], [40, 0.02]])('at %s° from the front of a box %s m deep it lights one spot of its front', (angle, depth) => {
    // Its axis goes through the middle, so it meets the front d/2 · tan to the side that it comes from. Lambert: P cos θ cos θ′ / (π r²), both angles alike, since front and plate lie alike.
    const aside = (depth / 2) * Math.tan(rad(angle));
    const on = 0.4 - depth / 2;
    const r2 = on ** 2 + aside ** 2;
    const is = on ** 2 / r2 / (Math.PI * r2);
    expectNear(light(angle, [0.2, 0.2, depth]), is, 2e-3 * is);
  });
});

describe('where light comes from', () => {
  test('that spreads: the point behind; that runs together: the point before it', () => {
    expect(sourceOf([1, 0, 0], [0, 2, 0], 0.5, 0)).toEqual({ kind: 'point', at: [1, -0.5, 0] });
    expect(sourceOf([1, 0, 0], [0, 2, 0], -0.5, 0)).toEqual({ kind: 'toward', at: [1, 0.5, 0] });
    // z / (z² + z_R²) = 1/2 at z = z_R = 1
    expect(sourceOf([0, 0, 0], [1, 0, 0], 1, 1)).toEqual({ kind: 'point', at: [-2, 0, 0] });
  });
  test('that hardly spreads runs side by side', () => {
    expect(sourceOf([1, 0, 0], [0, 2, 0])).toEqual({ kind: 'parallel', direction: [0, 1, 0] });
    expect(sourceOf([1, 0, 0], [0, 2, 0], 0, 1)).toEqual({ kind: 'parallel', direction: [0, 1, 0] });
    expect(sourceOf([1, 0, 0], [0, 2, 0], 2e6, 0)).toEqual({ kind: 'parallel', direction: [0, 1, 0] });
    expect(sourceOf([1, 0, 0], [0, 2, 0], 0.5e6, 0).kind).toBe('point');
  });
});
