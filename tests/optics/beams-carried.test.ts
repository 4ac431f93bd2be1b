/** Beams carried along an arm: against matrices of rays in mathjs 15, hand-worked geometry, and what holds for every thin lens. */
import fc from 'fast-check';
import { all, create, type BigNumber } from 'mathjs';
import { describe, expect, it } from 'vitest';
import {
  beamFromHalfAngle, beamFromRadius, carried, collimatedHere, curvatureHere, focusRadius, offFocalMirror, radiusHere, spreadingHalfAngle, throughLens, toFocus, type Beam,
} from '../../server/optics/beams/beam.ts';
import { between, expectNear, expectPrinted } from './outside.ts';

const math = create(all!, { precision: 64 });
const exact = (v: number): BigNumber => math.bignumber(v);
const pi = exact(Math.PI);
const MM = 1e-3;
const RED = 632.8e-9;
const DEGREE = Math.PI / 180;
const laser = beamFromRadius(0.4 * MM, 0, RED, 1);

/** Peak of the light, W/m², of 1 W. */
const peak = (beam: Beam): number => 2 / (Math.PI * radiusHere(beam).level * radiusHere(beam).upright);

describe('a beam on its way', () => {
  it('is the one of rays, in numbers of 64 digits: q′ = (A q + B) / (C q + D) (mathjs)', () => {
    const step = fc.oneof(fc.record({ length: between(0, 3) }), fc.record({ f: fc.oneof(between(0.004, 2), between(-2, -0.004)) }));
    fc.assert(fc.property(between(0.1, 5), between(1, 10), fc.array(step, { minLength: 1, maxLength: 6 }), (waist, quality, steps) => {
      let beam = beamFromRadius(waist * MM, 0, RED, quality);
      const rayleigh = pi.times(exact(waist * MM).pow(2)).div(exact(RED).times(quality));
      let [A, B, C, D] = [exact(1), exact(0), exact(0), exact(1)];
      // Two lenses that undo each other leave what both are rounded by: 1/f of 250/m is kept to 250 ε.
      let rounded = 0;
      for (const s of steps) {
        if ('f' in s) {
          rounded += Number.EPSILON * 2 / Math.abs(s.f);
          beam = throughLens(beam, s.f);
          [C, D] = [C.minus(A.div(s.f)), D.minus(B.div(s.f))];
        } else {
          beam = carried(beam, s.length);
          [A, B] = [A.plus(C.times(s.length)), B.plus(D.times(s.length))];
        }
        // With q = i z at the waist, and AD − BC = 1: 1/q′ = (DB + CA z² − i z) / (B² + A² z²).
        // w² = −M² λ / (π Im 1/q), 1/R = Re 1/q (Kogelnik & Li, Applied Optics 5, 1550 (1966); from memory)
        const whole = B.pow(2).plus(A.times(rayleigh).pow(2));
        const [curvature, spread] = [D.times(B).plus(C.times(A).times(rayleigh.pow(2))).div(whole).toNumber(), rayleigh.div(whole)];
        const w = exact(RED).times(quality).div(pi.times(spread)).sqrt().toNumber();
        // Wider than any optics, and its foci are smaller than what is computed with.
        if (w > 0.5) return;
        expectNear(radiusHere(beam).level, w, 1e-12 * w);
        expectNear(curvatureHere(beam).upright, curvature, 1e-12 * Math.hypot(curvature, spread.toNumber()) + rounded);
      }
    }));
  });

  it('keeps its radius in a lens, bends its wavefront by 1/f, and never loses spread times waist', () => {
    fc.assert(fc.property(between(0.05, 5), between(-3, 3), between(1, 5), fc.oneof(between(0.003, 3), between(-3, -0.003)), (w, curvature, quality, f) => {
      const before = beamFromRadius(w * MM, curvature, RED, quality);
      const after = throughLens(before, f);
      expectNear(radiusHere(before).level, w * MM, 1e-9 * w * MM);
      expectNear(curvatureHere(before).level, curvature, 1e-9 * Math.max(1, Math.abs(curvature)));
      expectNear(radiusHere(after).level, w * MM, 1e-7 * w * MM);
      expectNear(curvatureHere(after).level, curvature - 1 / f, 1e-7 * (Math.abs(curvature) + Math.abs(1 / f)));
      expectNear(focusRadius(after).level * spreadingHalfAngle(after).level, (quality * RED) / Math.PI, 1e-12 * quality * RED);
    }));
  });

  it('comes back when carried back, and through the opposite lens', () => {
    fc.assert(fc.property(between(0.1, 5), between(-1, 1), between(0.01, 3), (w, curvature, x) => {
      const start = beamFromRadius(w * MM, curvature, RED, 1);
      for (const end of [carried(carried(start, x), -x), throughLens(throughLens(start, x), -x)]) {
        expectNear(radiusHere(end).level, w * MM, 1e-7 * w * MM);
        expectNear(curvatureHere(end).level, curvature, 1e-6);
      }
    }));
  });

  it('starts from its half angle', () => {
    const beam = beamFromHalfAngle(0.02, RED, 1);
    expectNear(spreadingHalfAngle(beam).level, 0.02, 1e-14);
    expectNear(toFocus(beam).upright, 0, 0);
    // λ/(πθ) by hand: 632.8 nm / (π · 0.02) = 10.0713 µm.
    expectPrinted(focusRadius(beam).level / 1e-6, '10.0713');
  });
});

describe('a laser beam of r 0.4 mm spread to 1 m from the focus (geometry r z/f; 2P f²/(π r² z²))', () => {
  // Diffraction: the lens stands at the waist (z_R 0.794 m), so the focus is (1 + (f/z_R)²)^−½ as large, 2·10⁻⁴ for 16.5 mm.
  it.each([[16.5, '24.242', 108.325], [9, '44.444', 32.229], [4.5, '88.889', 8.0572]] as const)('by f %f mm is w %s mm, %f µW/cm² per mW', (f, w, light) => {
    const beam = throughLens(laser, f * MM);
    const diffraction = 0.5 * ((f * MM) / 0.79433) ** 2 + 1e-6;
    const far = carried(beam, toFocus(beam).level + 1);
    expectNear(radiusHere(far).level / MM, Number(w), Number(w) * (diffraction + 5e-4 / Number(w)));
    expectNear((peak(far) * 1e-3) / 0.01, light, light * 2 * (diffraction + 2e-5));
    // The focus lies f ahead, short of it by the same shift.
    expectNear(toFocus(beam).level, f * MM, f * MM * 2 * diffraction);
    // Focus λ f/(π r) by hand.
    expectNear(focusRadius(beam).level, (RED * f) / (Math.PI * 0.4), ((RED * f) / (Math.PI * 0.4)) * 2 * diffraction);
  });

  it('by f −10 mm is w 40.40 mm, 1 m behind the lens, from a virtual focus 10 mm before it', () => {
    const beam = throughLens(laser, -10 * MM);
    expectNear(radiusHere(carried(beam, 1)).level / MM, 40.4, 40.4 * 0.5 * (0.01 / 0.79433) ** 2 + 1e-4);
    expectNear(toFocus(beam).level / MM, -10, 0.01);
  });
});

describe('an afocal pair of −25 and +200 mm', () => {
  const wide = throughLens(carried(throughLens(laser, -25 * MM), 175 * MM), 200 * MM);
  it('makes the beam M = 8 times as wide and spread an eighth as fast', () => {
    expectNear(focusRadius(wide).level / (0.4 * MM), 8, 1e-9);
    expectNear(spreadingHalfAngle(wide).level * 8, spreadingHalfAngle(laser).level, 1e-12);
    // At the second lens r (1 + 175/25) = 3.2 mm, and by diffraction λ · 175 mm/(π r) = 0.0881 mm: √(3.2² + 0.0881²) = 3.2012 mm.
    expectPrinted(radiusHere(wide).upright / MM, '3.2012');
  });
});

describe('a spherical focal mirror off its axis', () => {
  it('of f 750 mm at a half fold of 6° focuses at 745.89 and 754.13 mm, 8.2 mm apart', () => {
    // A wide parallel beam: diffraction is 10⁻⁸ of the focal length.
    const beam = offFocalMirror(beamFromRadius(50 * MM, 0, RED, 1), 750 * MM, 6 * DEGREE, 'level');
    expectPrinted(toFocus(beam).level / MM, '745.89');
    expectPrinted(toFocus(beam).upright / MM, '754.13');
    expectPrinted((toFocus(beam).upright - toFocus(beam).level) / MM, '8.2');
    const upwards = offFocalMirror(beamFromRadius(50 * MM, 0, RED, 1), 750 * MM, 6 * DEGREE, 'upright');
    expect([toFocus(upwards).upright, toFocus(upwards).level]).toEqual([toFocus(beam).level, toFocus(beam).upright]);
  });

  it('makes the light from a pinhole 750 mm away nearly parallel: drawing together in the fold, spreading across it', () => {
    const spread = carried(beamFromHalfAngle(0.4 / 16.5, RED, 1), 750 * MM);
    const beam = offFocalMirror(spread, 750 * MM, 6 * DEGREE, 'level');
    // By hand: 1/750 − 1/745.891 and 1/750 − 1/754.131 per mm: −7.345·10⁻³ and 7.304·10⁻³ per m.
    expectNear(curvatureHere(beam).level, -7.345e-3, 1e-6);
    expectNear(curvatureHere(beam).upright, 7.304e-3, 1e-6);
    // 750 mm · 0.4/16.5 = 18.18 mm, less 0.5 % in the fold after 700 mm, more across.
    expectNear(radiusHere(carried(beam, 0.7)).level / MM, 18.1818 * (1 - 0.7 * 7.345e-3), 1e-3);
    expectNear(radiusHere(carried(beam, 0.7)).upright / MM, 18.1818 * (1 + 0.7 * 7.304e-3), 1e-3);
  });

  it('met squarely is a lens', () => {
    fc.assert(fc.property(between(0.1, 5), between(-1, 1), between(0.01, 3), (w, curvature, f) => {
      const start = beamFromRadius(w * MM, curvature, RED, 1);
      expect(offFocalMirror(start, f, 0, 'level')).toEqual(throughLens(start, f));
    }));
  });
});

describe('a collimator', () => {
  it('where it ought to stand makes the beam parallel and leaves it as wide', () => {
    const spread = carried(throughLens(laser, 16.5 * MM), 0.6);
    const parallel = collimatedHere(spread);
    expectNear(curvatureHere(parallel).level, 0, 0);
    expectNear(radiusHere(parallel).level, radiusHere(spread).level, 1e-12);
    // A lens whose focal length is the distance of the focus does the same but for diffraction: (z_R/distance)² of 10⁻¹⁰ in the curvature.
    const byLens = throughLens(spread, -toFocus(spread).level);
    expectNear(curvatureHere(byLens).level, 0, 1e-6);
    expectNear(radiusHere(carried(byLens, 2)).level, radiusHere(carried(parallel, 2)).level, 1e-7);
  });
});
