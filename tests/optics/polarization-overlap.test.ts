/** What of two beams interferes: cosines by hand, speckle by random numbers, rotation of everything in space. */
import fc from 'fast-check';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, it } from 'vitest';
import { axisAt, circularField, ellipseOf, fieldPower, horizontalField, linearField, verticalField, type Field } from '../../server/optics/polarization/field.ts';
import { fieldOverlap, interferingShare, layerInterferingShare, layerOverlap } from '../../server/optics/polarization/overlap.ts';
import { attenuated, halfWavePassed, mirrored, polarizerPassed, type FaceWeight } from '../../server/optics/polarization/pass.ts';
import { scatteredBack, scatteredThrough } from '../../server/optics/polarization/scatter.ts';
import { each, lightPower, polarizedLight, unpolarizedLight, type Light } from '../../server/optics/polarization/states.ts';
import { angleBetween, direction, dot, mirrorNormal, unit, type Vector } from '../../server/optics/vectors.ts';
import { ratioVisibility } from '../../server/optics/visibility.ts';
import { anyField, anyTurn, anyVector, closeFields, turnedField } from './polarization-space.ts';
import { between, expectNear, expectPrinted } from './outside.ts';

const DEGREE = Math.PI / 180;
const X: Vector = [1, 0, 0];
const heading = (degrees: number): Vector => direction(degrees * DEGREE, 0);
/** On a level table before an upright plate, vertical is s and horizontal is p. */
const s = (degrees: number): Field => verticalField(heading(degrees));
const p = (degrees: number): Field => horizontalField(heading(degrees));
const weights: readonly FaceWeight[] = ['power', 'amplitude', 'none'];

describe('the overlap of two fields', () => {
  it('is 1 for s and s at any angle', () => {
    fc.assert(fc.property(between(0, 360), between(0, 360), (a, b) => { expectNear(fieldOverlap(s(a), s(b)), 1, 1e-12); }));
  });

  it.each([[15, '0.96593'], [30, '0.86603'], [45, '0.70711'], [60, '0.50000'], [90, '0.00000']])('is the cosine for p and p %i° apart: %s', (degrees, printed) => {
    expectPrinted(fieldOverlap(p(10), p(10 + degrees)), printed);
    // Beams that come from opposite sides count by the same cosine.
    expectPrinted(fieldOverlap(p(10), p(190 + degrees)), printed);
  });

  it('of s and p is nothing', () => {
    fc.assert(fc.property(between(0, 360), between(0, 360), (a, b) => { expectNear(fieldOverlap(s(a), p(b)), 0, 1e-12); }));
  });

  it('counts with the ratio: 4:1, coherence 0.827, 30° apart leave a contrast of 0.57296', () => {
    // 0.8 · 0.827 · cos 30°
    expectNear(ratioVisibility(4) * 0.827 * fieldOverlap(linearField(X, 0), linearField(X, 30 * DEGREE)), 0.57296, 1e-5);
  });

  it('of circular light with a line is √½, with its own sense 1, with the other 0', () => {
    const [right, left] = [circularField(X, 'clockwise'), circularField(X, 'counter-clockwise')];
    fc.assert(fc.property(between(0, Math.PI), a => { expectNear(fieldOverlap(right, linearField(X, a)), Math.SQRT1_2, 1e-12); }));
    expectNear(fieldOverlap(right, right), 1, 1e-12);
    expectNear(fieldOverlap(right, left), 0, 1e-12);
  });

  it('is the cosine that a polarizer obeys, and does not ask for power or phase', () => {
    fc.assert(fc.property(anyField, anyField, between(0.1, 1), (a, b, weaker) => {
      expectNear(fieldOverlap(attenuated(a, weaker), b), fieldOverlap(a, b), 1e-9);
      expectNear(fieldOverlap(a, b), fieldOverlap(b, a), 1e-12);
      // a quarter of a period later
      expectNear(fieldOverlap({ ...a, re: a.im, im: a.re.map(x => -x) as unknown as Vector }, b), fieldOverlap(a, b), 1e-12);
    }));
  });

  it('is not changed by turning both in space, in the layer neither', () => {
    fc.assert(fc.property(anyField, anyField, anyVector, anyTurn, (a, b, normal, turn) => {
      fc.pre([a, b].every(f => Math.abs(dot(f.direction, unit(normal))) < 1 - 1e-6));
      expectNear(fieldOverlap(turnedField(turn, a), turnedField(turn, b)), fieldOverlap(a, b), 1e-9);
      expectNear(layerOverlap(turnedField(turn, a), turnedField(turn, b), turn(normal), 1.52), layerOverlap(a, b, normal, 1.52), 1e-7);
    }));
  });

  it('is nothing without light', () => {
    expect(fieldOverlap({ direction: X, re: [0, 0, 0], im: [0, 0, 0] }, s(0))).toBe(0);
    expect(interferingShare([], polarizedLight(s(0)))).toBe(0);
  });
});

describe('the overlap in the layer', () => {
  it.each(weights)('is that of the angle inside: reference at 45°, object squarely, n 1.52, both p, weighed by %s', weight => {
    // √(1 − 0.5/1.52²) = 0.8852046; by the angle inside rounded to 27.723° it comes out as 0.885207. In air 0.70711
    expectPrinted(layerOverlap(p(45), p(0), X, 1.52, weight), '0.885205');
    expectNear(layerOverlap(s(45), s(0), X, 1.52, weight), 1, 1e-12);
    expectPrinted(fieldOverlap(p(45), p(0)), '0.70711');
  });

  it('is the same for a reference from the other side of the plate, but for its sign', () => {
    // From behind at 45° to the same normal: inside, 180° − 27.723° between the beams
    expectPrinted(layerOverlap(p(135), p(0), X, 1.52), '0.885205');
    expectPrinted(layerOverlap(p(-135), p(0), X, 1.52), '0.885205');
  });

  it('is exactly nothing for p at 90° inside', () => {
    // n 1.2: sin⁻¹(1.2 sin 45°) = 58.0519° either side of the normal
    const outside = Math.asin(1.2 * Math.SQRT1_2) / DEGREE;
    expectNear(layerOverlap(p(outside), p(-outside), X, 1.2), 0, 1e-12);
    expectNear(layerOverlap(s(outside), s(-outside), X, 1.2), 1, 1e-12);
  });

  it('follows Snell for any pair of p in one plane with the normal', () => {
    fc.assert(fc.property(between(-80, 80), between(-80, 80), between(1.3, 1.8), (a, b, n) => {
      const inside = (degrees: number): number => Math.asin(Math.sin(degrees * DEGREE) / n);
      for (const weight of weights) expectNear(layerOverlap(p(a), p(b), X, n, weight), Math.abs(Math.cos(inside(a) - inside(b))), 1e-9);
    }));
  });

  it('weighs s and p of a field between them by what the face lets through', () => {
    // 45° incidence, n 1.52, field 45° between s and p, against the same with the other sign: (T_s − T_p)/(T_s + T_p) with R_s 0.096733, R_p 0.009357
    const [one, other] = [linearField(heading(45), 45 * DEGREE), linearField(heading(45), -45 * DEGREE)];
    expectNear(layerOverlap(one, other, X, 1.52), (0.096733 - 0.009357) / (2 - 0.096733 - 0.009357), 1e-6);
    expectNear(layerOverlap(one, other, X, 1.52, 'amplitude'), layerOverlap(one, other, X, 1.52), 1e-12);
    expectNear(layerOverlap(one, other, X, 1.52, 'none'), 0, 1e-12);
  });
});

describe('the share of the object light that can interfere', () => {
  it('of polarized light is the square of the overlap', () => {
    fc.assert(fc.property(anyField, anyField, (a, b) => { expectNear(interferingShare(polarizedLight(a), polarizedLight(b)), fieldOverlap(a, b) ** 2, 1e-9); }));
    // 60° apart: cos² = 1/4
    expectNear(interferingShare(polarizedLight(linearField(X, 0)), polarizedLight(linearField(X, 60 * DEGREE))), 0.25, 1e-12);
  });

  it('of light that a surface has wholly depolarized is a half, and the rest in proportion', () => {
    for (const d of [0, 0.2, 0.5, 1]) {
      const object = scatteredBack(polarizedLight(s(180)), X, d);
      expectNear(lightPower(object), 1, 1e-12);
      expectNear(interferingShare(polarizedLight(s(0)), object), 1 - d + d / 2, 1e-12);
      expectNear(interferingShare(polarizedLight(p(0)), object), d / 2, 1e-12);
    }
  });

  it('is what a polarizer along the reference lets through of it', () => {
    fc.assert(fc.property(anyField, between(0, Math.PI), between(0, 1), (lit, a, d) => {
      const object = scatteredBack(polarizedLight(lit), X, d);
      const through = each(object, field => polarizerPassed(field, a));
      expectNear(interferingShare(polarizedLight(linearField(X, a)), object), lightPower(through) / lightPower(object), 1e-9);
      // and behind the polarizer all of it can
      if (lightPower(through) > 1e-6) expectNear(interferingShare(polarizedLight(linearField(X, a)), through), 1, 1e-9);
    }));
  });

  it('of an unpolarized laser is 1 where both arms keep the light, at any angle for s and by the cosine for p', () => {
    // |½ (1 + cos δ)|²
    for (const degrees of [0, 30, 60, 90]) {
      expectNear(interferingShare(unpolarizedLight(heading(0)), unpolarizedLight(heading(degrees))), ((1 + Math.cos(degrees * DEGREE)) / 2) ** 2, 1e-12);
    }
  });

  it('of an unpolarized laser is the same whichever two states it is thought to have', () => {
    const pair = (light: Vector, a: number): Light => [0, 1].map(state => ({ field: attenuated(linearField(light, a + (state * Math.PI) / 2), 0.5), state, steady: true }));
    const round = (light: Vector): Light => (['clockwise', 'counter-clockwise'] as const).map((turning, state) => ({ field: attenuated(circularField(light, turning), 0.5), state, steady: true }));
    // Both beams made of one: by mirrors, and off an object.
    const arms = (laser: Light): [Light, Light] => [
      each(each(laser, f => mirrored(f, [1, 0.3, 0.2])), f => mirrored(f, [0.2, 1, -0.4])),
      scatteredBack(each(laser, f => mirrored(f, [1, -0.5, 0.1])), [0.3, -1, 0.2], 0.3),
    ];
    const expected = interferingShare(...arms(unpolarizedLight(X)));
    expect(expected).toBeGreaterThan(0.01);
    fc.assert(fc.property(between(0, Math.PI), a => { expectNear(interferingShare(...arms(pair(X, a))), expected, 1e-12); }));
    expectNear(interferingShare(...arms(round(X))), expected, 1e-12);
    expectNear(layerInterferingShare(...arms(round(X)), [1, 1, 0], 1.52), layerInterferingShare(...arms(unpolarizedLight(X)), [1, 1, 0], 1.52), 1e-12);
  });

  it('of an unpolarized laser is nothing where one arm turns one state over', () => {
    const laser = unpolarizedLight(X);
    expectNear(interferingShare(laser, each(laser, f => halfWavePassed(f, 0))), 0, 1e-12);
    // One mirror more: from the laser straight, and by two or three mirrors into the same direction. Intensities of each state by hand: the one has its bright
    // fringes where the other has its dark ones.
    const by = (...headings: number[]): Light => {
      let at = 0;
      let light: Light = laser;
      for (const next of headings) { const normal = mirrorNormal(heading(at), heading(next)); light = each(light, f => mirrored(f, normal)); at = next; }
      return light;
    };
    expectNear(interferingShare(laser, by(90, 0)), 1, 1e-12);
    expectNear(interferingShare(laser, by(70, 140, 0)), 0, 1e-12);
    // of polarized light, vertical on a level table, all of it can
    expectNear(interferingShare(polarizedLight(verticalField(X)), [by(70, 140, 0)[0]!]), 1, 1e-12);
  });

  it('of a random laser and a depolarized object is a quarter', () => {
    expectNear(interferingShare(unpolarizedLight(X), scatteredBack(unpolarizedLight([-1, 0, 0]), X, 1)), 0.25, 1e-12);
  });

  it('in the layer is the square of the overlap there', () => {
    expectNear(layerInterferingShare(polarizedLight(p(45)), polarizedLight(p(0)), X, 1.52), (1 - 0.5 / 1.52 ** 2), 1e-6);
    expectNear(layerInterferingShare(polarizedLight(s(45)), polarizedLight(s(0)), X, 1.52), 1, 1e-12);
    // A depolarized object seen squarely: half of it, whatever the reference is, since the face passes s and p alike there; p meets it under the angle inside.
    const object = scatteredBack(polarizedLight(s(180)), X, 1);
    expectNear(layerInterferingShare(polarizedLight(s(45)), object, X, 1.52), 0.5, 1e-12);
    expectNear(layerInterferingShare(polarizedLight(p(45)), object, X, 1.52), 0.5 * (1 - 0.5 / 1.52 ** 2), 1e-6);
  });

  it('is the mean over speckle of random numbers', () => {
    // Each state of the laser is scattered by a 2 × 2 matrix of independent Gaussian numbers, the same for all states: amplitudes of fully developed
    // speckle (Goodman, Statistical Optics, 1985). Mean square of the interference over the mean powers.
    const random = xoroshiro128plus(42);
    const normal = (): number => Math.sqrt(-2 * Math.log(1 - uniformFloat64(random))) * Math.cos(2 * Math.PI * uniformFloat64(random));
    const TRIES = 40_000;
    let [polarized, unpolarized] = [0, 0];
    for (let i = 0; i < TRIES; i++) {
      // scatter[k][j]: field k out for field j in, mean |·|² = ½
      const scatter = [0, 1].map(() => [0, 1].map(() => [normal() / 2, normal() / 2] as const));
      const add = (terms: readonly (readonly [number, number])[]): number => terms.reduce((sum, t) => sum + t[0], 0) ** 2 + terms.reduce((sum, t) => sum + t[1], 0) ** 2;
      polarized += add([scatter[0]![0]!]);
      unpolarized += add([scatter[0]![0]!, scatter[1]![1]!].map(c => [c[0] / 2, c[1] / 2] as const));
    }
    const object = (light: Light): Light => scatteredBack(light, X, 1);
    expectNear(polarized / TRIES, interferingShare(polarizedLight(s(0)), object(polarizedLight(s(180)))), 0.01);
    expectNear(unpolarized / TRIES, interferingShare(unpolarizedLight(X), object(unpolarizedLight([-1, 0, 0]))), 0.005);
  });
});

describe('rough surfaces', () => {
  it('on a level table give vertical back as vertical, and level as level', () => {
    for (const degrees of [180, 135, 90, 45]) {
      const [v, h] = [verticalField(X), horizontalField(X)].map(f => scatteredBack(polarizedLight(f), heading(degrees), 0)[0]!.field) as [Field, Field];
      expectNear(Math.abs(v.re[2]), 1, 1e-12);
      expectNear(h.re[2], 0, 1e-12);
      expectNear(fieldPower(h), 1, 1e-12);
    }
  });

  it('without depolarization do what the one mirror does that sends light there', () => {
    fc.assert(fc.property(anyField, anyVector, (field, towards) => {
      fc.pre(angleBetween(field.direction, towards) > 1e-3);
      closeFields(scatteredBack(polarizedLight(field), towards, 0)[0]!.field, mirrored(field, mirrorNormal(field.direction, towards)), 1e-7);
    }));
  });

  it('that light goes through turn the field with it', () => {
    fc.assert(fc.property(anyField, anyVector, (field, towards) => {
      fc.pre(angleBetween(field.direction, towards) < Math.PI - 1e-2);
      const out = scatteredThrough(polarizedLight(field), towards, 0)[0]!.field;
      expectNear(fieldPower(out), fieldPower(field), 1e-9);
      expectNear(dot(out.re, out.direction), 0, 1e-9);
      expectNear(dot(out.im, out.direction), 0, 1e-9);
      // what is square to the plane of both directions stays as it is
      const across = unit([0, 1, 2].map(i => field.direction[(i + 1) % 3]! * towards[(i + 2) % 3]! - field.direction[(i + 2) % 3]! * towards[(i + 1) % 3]!) as unknown as Vector);
      expectNear(dot(out.re, across), dot(field.re, across), 1e-7);
      expectNear(dot(out.im, across), dot(field.im, across), 1e-7);
    }));
    closeFields(scatteredThrough(polarizedLight(linearField(X, 0.3)), X, 0)[0]!.field, linearField(X, 0.3), 1e-12);
    // Straight back, which no prism sends it, there is no plane of both directions; it comes as it is.
    closeFields(scatteredThrough(polarizedLight(verticalField(X)), [-1, 0, 0], 0)[0]!.field, { ...verticalField(X), direction: [-1, 0, 0] }, 1e-12);
    // The sense of circular light stays, and turns over where light comes back.
    expectNear(ellipseOf(scatteredThrough(polarizedLight(circularField(X, 'clockwise')), heading(20), 0)[0]!.field).roundness, 1, 1e-6);
    expectNear(ellipseOf(scatteredBack(polarizedLight(circularField(X, 'clockwise')), heading(160), 0)[0]!.field).roundness, -1, 1e-6);
  });

  it('keep the power, and what is depolarized passes any polarizer by half', () => {
    fc.assert(fc.property(anyField, anyVector, between(0, 1), between(0, Math.PI), (field, towards, d, a) => {
      for (const scatter of [scatteredBack, scatteredThrough]) {
        const once = scatter(polarizedLight(field), towards, d);
        expectNear(lightPower(once), fieldPower(field), 1e-9);
        expectNear(lightPower(each(once.filter(part => !part.steady), f => polarizerPassed(f, a))), (d * fieldPower(field)) / 2, 1e-9);
        // a second one, such as a ground glass before the object
        const twice = scatter(once, [0.3, 0.5, -0.2], d);
        expectNear(lightPower(twice), fieldPower(field), 1e-9);
        expectNear(lightPower(twice.filter(part => part.steady)), (1 - d) ** 2 * fieldPower(field), 1e-9);
      }
    }));
  });

  it('give no light where nobody looks', () => {
    expect(lightPower(scatteredBack(polarizedLight(s(0)), [0, 0, 0], 0.5))).toBe(0);
    expect(axisAt([0, 0, 0], 0).every(x => x === 0)).toBe(true);
  });
});
