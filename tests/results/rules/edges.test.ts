/** Rules at the ends of what they take: no light, more than all, the mark of a wheel, light that is not turned. */
import { describe, expect, test } from 'vitest';
import { isBlue } from '../../../server/results/rules/eyes.ts';
import { along, bisecting, facedAt, towards, turnedBy } from '../../../server/results/rules/geometry.ts';
import { LAMP_ANGLE, unmade } from '../../../server/results/rules/hang.ts';
import { AT_MOST_ALL, BY_RATIO, EFFECTIVE, FACTOR, isMoreThanAll, POLARIZED, RATIO, wheelShare } from '../../../server/results/rules/light.ts';
import { delicacy, expansionOf } from '../../../server/results/rules/movement.ts';
import { thermalExpansion } from '../../../server/optics/movement/materials.ts';
import { expectNear } from '../read.ts';

describe('a ratio of lights', () => {
  test.each([[0, 1], [1, 0], [0, 0], [-1, 1], [1, -1], [-1, -1]])('there is none of %s and %s', (a, b) => {
    for (const rule of [RATIO, BY_RATIO]) expect(rule.compute([a, b])).toBeNaN();
    expect(POLARIZED.compute([a, b, 0])).toBeNaN();
  });
  test('of which the plan has none corrects nothing', () => {
    expect(FACTOR.compute([3, 0])).toBe(0);
    expect(FACTOR.compute([0, 3])).toBe(0);
  });
  test('the share that a polarizer passes is by all light that it could pass', () => {
    // 0.2 / (0.8 · 0.5)
    expectNear(POLARIZED.compute([0.2, 0.5, 0.2]), 0.5, 1e-12);
  });
});

describe('a share of more than all', () => {
  test('counts as all of it, and what is unsure of it moves nothing', () => {
    expect(EFFECTIVE.compute([4, 1.2])).toBe(4);
    expect(EFFECTIVE.partials!([4, 1.2])).toEqual([1, 0]);
    expect(AT_MOST_ALL.partials!([1.2])).toEqual([0]);
    // All of it may still be less: 4/s has the slope −4/s² there.
    expect(AT_MOST_ALL.partials!([1])).toEqual([1]);
    expect(EFFECTIVE.partials!([4, 1])).toEqual([1, -4]);
  });
  test('is too much beyond three standard uncertainties, and beyond 1 % in any case', () => {
    expect(isMoreThanAll(1.16, 0.05)).toBe(true);
    expect(isMoreThanAll(1.14, 0.05)).toBe(false);
    expect(isMoreThanAll(1.011, 0)).toBe(true);
    expect(isMoreThanAll(1.009, 0)).toBe(false);
    expect(isMoreThanAll(0.5, 0)).toBe(false);
  });
});

describe('the mark of a wheel', () => {
  // From 0.2 to 0.4 over 10 steps, then to 0.8: 0.02 and 0.04 for each.
  const up = wheelShare([0, 10, 20]);
  test('has the steeper slope of its sides', () => {
    expectNear(up.partials!([10, 0.2, 0.4, 0.8])[0]!, 0.04, 1e-12);
    expectNear(up.partials!([10, 0.8, 0.4, 0.2])[0]!, -0.04, 1e-12);
    expectNear(up.partials!([0, 0.2, 0.4, 0.8])[0]!, 0.02, 1e-12);
    expectNear(up.partials!([20, 0.2, 0.4, 0.8])[0]!, 0.04, 1e-12);
  });
  test('beyond all marks there is none', () => {
    expect(up.partials!([25, 0.2, 0.4, 0.8])[0]).toBe(0);
    expect(up.partials!([-5, 0.2, 0.4, 0.8])[0]).toBe(0);
  });
});

test('what does not turn the light is not delicate, in no direction', () => {
  const straight = [0.6, 0.8, 0, 0.6, 0.8, 0, 500e-9];
  expect(delicacy([1, -1]).compute(straight)).toBe(0);
  expect(delicacy([1, -1]).partials!(straight)).toEqual([0, 0, 0, 0, 0, 0, expect.closeTo(0)]);
});

test.each(Object.keys(thermalExpansion) as (keyof typeof thermalExpansion)[])('how %s may grow reaches over all that its tables tell, at least 5 % either way, and no farther', material => {
  const { usual, band } = thermalExpansion[material];
  const { value, amount } = expansionOf(material);
  expect(value).toBe(usual);
  const reach = 1e-9 * usual;
  for (const far of [band.to - usual, usual - band.from, 0.05 * usual]) expect(amount).toBeGreaterThanOrEqual(far - reach);
  expect([band.to - usual, usual - band.from, 0.05 * usual].some(far => Math.abs(far - amount) <= reach)).toBe(true);
});

describe('what has no direction has no components', () => {
  test.each([0, 1, 2] as const)('component %s', axis => {
    expect(towards(axis).compute([1, 2, 3, 1, 2, 3])).toBeNaN();
    expect(along(axis).compute([1, 2, 3, 1, 2, 3, 0.5])).toBeNaN();
    // Light that is not turned meets no mirror.
    expect(bisecting(axis).compute([1, 0, 0, 1, 0, 0])).toBeNaN();
    // Straight up there is neither left nor right, and what stands above a thing lies in no direction of the table.
    expect(turnedBy(axis).compute([0, 0, 1, 0.3])).toBeNaN();
    expect(facedAt(axis).compute([1, 2, 0, 1, 2, 5, 0.3])).toBeNaN();
    // Along one axis it has one, and the others are nothing.
    for (const by of [0, 1, 2]) expect(towards(axis).compute([1, 1, 1, ...[0, 1, 2].map(i => (i === by ? 4 : 1))]) + 0).toBe(axis === by ? 1 : 0);
    expect(turnedBy(axis).compute([1, 0, 0, Math.PI / 2])).toBeCloseTo(axis === 1 ? 1 : 0, 12);
    expect(facedAt(axis).compute([1, 2, 0, 1, 5, 0, 0])).toBeCloseTo(axis === 1 ? 1 : 0, 12);
  });
});

describe('a plate for another colour', () => {
  const rad = (degrees: number): number => (degrees * Math.PI) / 180;
  test('cannot be recorded where its fringes are finer than the waves of the laser can make', () => {
    // Straight on both ways fringes are 2n/λ: with a longer wave than at replay there are none so fine.
    expect(unmade(true, 0.9, 1.5, 0, 0)).toBe('too fine');
    expect(unmade(true, 1.1, 1.5, 0, 0)).toBeUndefined();
  });
  test('nor where a beam would have to be more slanted than light from air can be', () => {
    // Even to the normal: sin θ / 0.8 is 0.96 at 50°, and 1.08 at 60°.
    expect(unmade(false, 0.8, 1.5, rad(50), rad(-50))).toBeUndefined();
    expect(unmade(false, 0.8, 1.5, rad(60), rad(-60))).toBe('too slanted');
    // Of one of both: it is the other one where lamp and image change places.
    for (const [lamp, image] of [[70, 20], [20, 70]] as const) expect(unmade(false, 0.8, 1.5, rad(lamp), rad(image))).toBe('too slanted');
  });
});

test('a lamp turned on goes away from the normal up to 90°, then back to the one behind', () => {
  expect([30, -30, 150, -150].map(a => [Math.round((LAMP_ANGLE.compute([(a * Math.PI) / 180]) * 180) / Math.PI), ...LAMP_ANGLE.partials!([(a * Math.PI) / 180])])).toEqual([[30, 1], [30, -1], [30, -1], [30, 1]]);
});

test('blue light is visible and below 500 nm (IEC 60825-1)', () => {
  expect([399, 400, 450, 499, 500, 633].map(nm => isBlue(nm / 1e9))).toEqual([false, true, true, true, false, false]);
});
