/** Ghost fringes against Fresnel's shares by hand, and against the fields of waves. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { circularField, linearField } from '../../server/optics/polarization/field.ts';
import { brewsterAngle, passedShares, reflectedShares, refractionAngle } from '../../server/optics/surfaces/fresnel.ts';
import { backFaceContrast, ghostContrasts, ghostFringeStep, NEARLY_PARALLEL, standsParallel, twoBounceContrast, wedgeFringeSpacing } from '../../server/optics/ghosts/ghosts.ts';
import { direction, type Vector } from '../../server/optics/vectors.ts';
import { between, expectNear, expectPrinted } from './outside.ts';

const DEGREE = Math.PI / 180;
/** A plate that stands upright, its normal along x; light in the horizontal plane is s where it is vertical, p where it is level. */
const PLATE: Vector = [1, 0, 0];
const s = (degrees: number) => linearField(direction(degrees * DEGREE, 0), 0);
const p = (degrees: number) => linearField(direction(degrees * DEGREE, 0), Math.PI / 2);
/** R by hand, not by the code under test: index 1.52; at 45° sin²θ = ½. */
const BY_HAND = { square: (0.52 / 2.52) ** 2, s45: ((Math.SQRT1_2 - Math.sqrt(1.52 ** 2 - 0.5)) / (Math.SQRT1_2 + Math.sqrt(1.52 ** 2 - 0.5))) ** 2 };

describe('wood grain', () => {
  it('of two bounces has the contrast 2R/(1 + R²)', () => {
    // n 1.52 by arithmetic: squarely, at 45° for s, at 45° for p
    expectPrinted(twoBounceContrast(BY_HAND.square), '0.08501');
    expectPrinted(twoBounceContrast(BY_HAND.s45), '0.19167');
    expectPrinted(twoBounceContrast(BY_HAND.s45 ** 2), '0.01871');
    expectPrinted(ghostContrasts(s(0), PLATE, 1.52).twoBounces, '0.08501');
    expectPrinted(ghostContrasts(p(0), PLATE, 1.52).twoBounces, '0.08501');
    expectPrinted(ghostContrasts(s(45), PLATE, 1.52).twoBounces, '0.19167');
    expectPrinted(ghostContrasts(p(45), PLATE, 1.52).twoBounces, '0.01871');
    expectNear(ghostContrasts(p(brewsterAngle(1.52) / DEGREE), PLATE, 1.52).twoBounces, 0, 1e-12);
  });

  it('of the back face has the contrast 2√R/(1 + R) by the light', () => {
    expectPrinted(backFaceContrast(BY_HAND.square), '0.39584');
    expectPrinted(backFaceContrast(BY_HAND.s45), '0.56717');
    expectPrinted(backFaceContrast(BY_HAND.s45 ** 2), '0.19167');
    // Near Brewster's angle, at 56.57° for n 1.52
    expectPrinted(backFaceContrast(reflectedShares(56.57 * DEGREE, 1.52).p), '0.0019');
    expectPrinted(ghostContrasts(s(0), PLATE, 1.52).backFace, '0.39584');
    expectPrinted(ghostContrasts(p(0), PLATE, 1.52).backFace, '0.39584');
    expectPrinted(ghostContrasts(s(45), PLATE, 1.52).backFace, '0.56717');
  });

  it('of the back face loses |cos 2θ| for p, whose two fields are not parallel', () => {
    fc.assert(fc.property(between(0, 80), between(1.3, 1.9), (degrees, n) => {
      const inside = refractionAngle(degrees * DEGREE, n);
      expectNear(ghostContrasts(p(degrees), PLATE, n).backFace, backFaceContrast(reflectedShares(degrees * DEGREE, n).p) * Math.abs(Math.cos(2 * inside)), 1e-12);
      expectNear(ghostContrasts(s(degrees), PLATE, n).backFace, backFaceContrast(reflectedShares(degrees * DEGREE, n).s), 1e-12);
      expectNear(ghostContrasts(s(degrees), PLATE, n).twoBounces, twoBounceContrast(reflectedShares(degrees * DEGREE, n).s), 1e-12);
    }));
    // n 1.52, 45°: sin θ = sin 45°/1.52, cos 2θ = 1 − 2 · 0.5/1.52² = 0.567174
    expectNear(ghostContrasts(p(45), PLATE, 1.52).backFace, 0.19167 * (1 - 1 / 1.52 ** 2), 1e-5);
  });

  it('of a mix of s and p weighs each by what the front face lets in', () => {
    fc.assert(fc.property(between(0, 80), between(1.3, 1.9), between(0, Math.PI), (degrees, n, angle) => {
      const [R, T] = [reflectedShares(degrees * DEGREE, n), passedShares(degrees * DEGREE, n)];
      const [a, b] = [T.s * Math.cos(angle) ** 2, T.p * Math.sin(angle) ** 2];
      const expected = (2 * (a * R.s + b * R.p)) / (a * (1 + R.s ** 2) + b * (1 + R.p ** 2));
      expectNear(ghostContrasts(linearField(direction(degrees * DEGREE, 0), angle), PLATE, n).twoBounces, expected, 1e-12);
    }));
    // Circular light is half s and half p, whichever way it turns.
    const [R, T] = [reflectedShares(0.8, 1.52), passedShares(0.8, 1.52)];
    const half = (2 * (T.s * R.s + T.p * R.p)) / (T.s * (1 + R.s ** 2) + T.p * (1 + R.p ** 2));
    expectNear(ghostContrasts(circularField(direction(0.8, 0), 'clockwise'), PLATE, 1.52).twoBounces, half, 1e-12);
    expectNear(ghostContrasts(circularField(direction(0.8, 0), 'counter-clockwise'), PLATE, 1.52).twoBounces, half, 1e-12);
  });

  it('is cured by p at Brewster\'s angle and nowhere else so well', () => {
    // Common practice
    const at = (degrees: number): number => ghostContrasts(p(degrees), PLATE, 1.52).twoBounces;
    for (let degrees = 0; degrees < 80; degrees += 5) expect(at(degrees)).toBeGreaterThan(at(56.66));
    for (let degrees = 5; degrees < 80; degrees += 5) expect(ghostContrasts(s(degrees), PLATE, 1.52).twoBounces).toBeGreaterThan(at(degrees));
  });

  it('is nothing without light', () => {
    expect(ghostContrasts({ direction: [0, 0, 0], re: [0, 0, 1], im: [0, 0, 0] }, PLATE, 1.52)).toEqual({ twoBounces: 0, backFace: 0 });
  });
});

describe('ghost fringes on a plate', () => {
  it('are a step in thickness of λ/(2n cos θ) apart', () => {
    // λ 632.8 nm, n 1.52: 632.8/3.04 = 208.158 nm; at 45° over √(1 − 0.5/1.52²) = 0.885205
    expectPrinted(1e9 * ghostFringeStep(632.8e-9, 1.52, 0), '208.16');
    expectPrinted(1e9 * ghostFringeStep(632.8e-9, 1.52, 45 * DEGREE), '235.15');
    expect(ghostFringeStep(632.8e-9, 1, Math.PI / 2)).toBeLessThan(1);
  });

  it('are 4.3 mm apart on a wedge of 10″', () => {
    // 208.158 nm / tan(10″) = 208.158e-9 / 4.84814e-5
    expectPrinted(1e3 * wedgeFringeSpacing(632.8e-9, 1.52, 0, (10 / 3600) * DEGREE), '4.2936');
  });

  it('move by one fringe of phase for each step', () => {
    // Phase between the two beams: 2 · 2π n t cos θ / λ (Born & Wolf, Principles of Optics, §7.5)
    fc.assert(fc.property(between(0, 85 * DEGREE), between(1.3, 1.9), between(4e-7, 7e-7), (angle, n, wavelength) => {
      const inside = Math.asin(Math.sin(angle) / n);
      expectNear((2 * n * ghostFringeStep(wavelength, n, angle) * Math.cos(inside)) / wavelength, 1, 1e-12);
    }));
  });
});

describe('a surface near the plate', () => {
  it('stands parallel within 3°, either way round', () => {
    expectNear(NEARLY_PARALLEL, 0.0523599, 1e-7);
    for (const degrees of [0, 2.99, -2.99, 177.01, 182.99]) expect(standsParallel(direction(degrees * DEGREE, 0), PLATE)).toBe(true);
    for (const degrees of [3.01, -3.01, 90, 176.99]) expect(standsParallel(direction(degrees * DEGREE, 0), PLATE)).toBe(false);
    expect(standsParallel(direction(0, 2.9 * DEGREE), [5, 0, 0])).toBe(true);
    expect(standsParallel(direction(0, 4 * DEGREE), PLATE, 5 * DEGREE)).toBe(true);
  });

  it('without a direction is not said to', () => {
    expect(standsParallel([0, 0, 0], PLATE)).toBe(false);
    expect(standsParallel(PLATE, [0, 0, 0])).toBe(false);
  });
});
