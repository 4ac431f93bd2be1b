/** Faces of glass against published tables, textbook examples, complex arithmetic of mathjs, conservation of energy and reversal of light. */
import fc from 'fast-check';
import { complex, divide, multiply, sqrt, subtract, add, type Complex as MathComplex } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { phase, squared } from '../../server/optics/complex.ts';
import { brewsterAngle, criticalAngle, fresnelAmplitudes, passedShares, reflectedShares, refractionAngle } from '../../server/optics/surfaces/fresnel.ts';
import { plainPlateShares } from '../../server/optics/surfaces/plain-plate.ts';
import { reflectedDirection, refractedDirection } from '../../server/optics/surfaces/refract.ts';
import { angleFromNormal, cross, mirrorNormal, type Vector } from '../../server/optics/vectors.ts';
import { between, expectNear, expectPrinted, publishedIds, publishedValue } from './outside.ts';
import published from './published-values.json' with { type: 'json' };

const DEGREE = Math.PI / 180;
const index = between(1, 4);
const incidence = between(0, 89.9 * DEGREE);
const norm = (v: Vector): number => Math.hypot(...v);

describe('shares that a face reflects', () => {
  it.each(publishedIds('fresnel-'))('reproduce %s', id => {
    const entry = published.find(e => e.id === id) as unknown as { inputs: { n: number; angle_deg: number }; expected: { Rs: number; Rp: number } };
    const { s, p } = reflectedShares(entry.inputs.angle_deg * DEGREE, entry.inputs.n);
    expectNear(s, entry.expected.Rs, 1e-6 * entry.expected.Rs);
    expectNear(p, entry.expected.Rp, 1e-6 * entry.expected.Rp);
  });

  // Born & Wolf, Principles of Optics, §1.5, worked out by two programs independent of this one.
  it.each([
    [1.515, 0, '0.041931', '0.041931'], [1.515, 30, '0.060353', '0.026617'], [1.515, 45, '0.095554', '0.009130'], [1.515, 56.57, '0.154479', '0.000000'],
    [1.515, 70, '0.305838', '0.041777'], [1.52, 0, '0.042580', '0.042580'], [1.52, 45, '0.096733', '0.009357'], [1.52, 60, '0.183438', '0.001527'],
  ])('for n %f at %f° are s %s and p %s', (n, degrees, s, p) => {
    const R = reflectedShares(degrees * DEGREE, n);
    expectPrinted(R.s, s);
    expectPrinted(R.p, p);
  });

  it('at 45° are for p the square of those for s', () => {
    fc.assert(fc.property(index, n => {
      const { s, p } = reflectedShares(45 * DEGREE, n);
      expectNear(p, s ** 2, 1e-14);
    }));
  });

  it('are near what is said of plain glass: 4 % squarely, at 45° about 8 % of s and 1 % of p', () => {
    // Common practice. Fused silica has 8 % of s at 45°, window glass nearly 10 %.
    for (const n of [1.515, 1.52]) expect(Math.round(100 * reflectedShares(0, n).s)).toBe(4);
    for (const n of [1.457, 1.515, 1.52]) expect(Math.round(100 * reflectedShares(45 * DEGREE, n).p)).toBe(1);
    expect(Math.round(100 * reflectedShares(45 * DEGREE, 1.457).s)).toBe(8);
    expect(Math.round(100 * reflectedShares(45 * DEGREE, 1.515).s)).toBe(10);
  });

  it('come to all of the light at grazing incidence, and to none where there is no face', () => {
    const grazing = reflectedShares(Math.PI / 2, 1.52);
    expectNear(grazing.s, 1, 1e-12);
    expectNear(grazing.p, 1, 1e-12);
    for (const angle of [0, 1, Math.PI / 2]) expect(reflectedShares(angle, 1.5, 1.5)).toEqual({ s: 0, p: 0 });
  });
});

describe('amplitudes of a face', () => {
  // Fresnel's fractions by Snell's law, with the complex numbers of mathjs.
  const outside = (angle: number, n2: number, n1: number): Record<'rs' | 'rp' | 'ts' | 'tp', MathComplex> => {
    const c1 = complex(Math.cos(angle), 0);
    // the root of a negative number with a positive imaginary part: a field that dies away behind the face, for exp(−iωt)
    const c2 = complex(sqrt(complex(1 - ((n1 / n2) * Math.sin(angle)) ** 2, 0)));
    const [a, b, c, d] = [multiply(n1, c1), multiply(n2, c2), multiply(n2, c1), multiply(n1, c2)] as MathComplex[] as [MathComplex, MathComplex, MathComplex, MathComplex];
    const ratio = (x: unknown, y: unknown): MathComplex => divide(x as MathComplex, y as MathComplex) as MathComplex;
    return { rs: ratio(subtract(a, b), add(a, b)), rp: ratio(subtract(c, d), add(c, d)), ts: ratio(multiply(2, a), add(a, b)), tp: ratio(multiply(2, a), add(c, d)) };
  };

  it('are those of complex arithmetic, also where all light is reflected', () => {
    fc.assert(fc.property(incidence, index, index, (angle, n2, n1) => {
      // at the critical angle itself, the sine rounds to either side
      fc.pre(Math.abs((n1 / n2) * Math.sin(angle) - 1) > 1e-6);
      const { reflected, passed } = fresnelAmplitudes(angle, n2, n1);
      const expected = outside(angle, n2, n1);
      for (const [ours, theirs] of [[reflected.s, expected.rs], [reflected.p, expected.rp], [passed.s, expected.ts], [passed.p, expected.tp]] as const) {
        expectNear(ours[0], theirs.re, 1e-8);
        expectNear(ours[1], theirs.im, 1e-8);
      }
    }));
  });

  it('have the phases of a rhomb that makes circular light', () => {
    // Born & Wolf, Principles of Optics, §1.5.4, from memory: inside glass of index 1.51, p and s part by 45° at 48°37′ and at 54°37′; by 45°56′ at 51°20′, which is the most.
    const apart = (degrees: number): number => {
      const { s, p } = fresnelAmplitudes(degrees * DEGREE, 1, 1.51).reflected;
      return Math.abs(phase(p) - phase(s)) / DEGREE;
    };
    // At the critical angle both amplitudes are 1 here, so the difference starts at 0 as theirs does.
    expectNear(apart(48 + 37 / 60), 45, 0.1);
    expectNear(apart(54 + 37 / 60), 45, 0.1);
    expectNear(apart(51 + 20 / 60), 45 + 56 / 60, 0.02);
    for (let degrees = 42; degrees < 90; degrees += 0.1) expect(apart(degrees)).toBeLessThan(45 + 57 / 60);
  });

  it('conserve the power: R + n₂ cos θ₂ / (n₁ cos θ₁) t² = 1', () => {
    fc.assert(fc.property(incidence, index, index, (angle, n2, n1) => {
      const [R, T, { passed }] = [reflectedShares(angle, n2, n1), passedShares(angle, n2, n1), fresnelAmplitudes(angle, n2, n1)];
      const total = angle >= criticalAngle(n2, n1);
      const widens = total ? 0 : (n2 * Math.cos(refractionAngle(angle, n2, n1))) / (n1 * Math.cos(angle));
      for (const which of ['s', 'p'] as const) {
        expectNear(R[which] + T[which], 1, 1e-12);
        expectNear(R[which] + widens * squared(passed[which]), 1, 1e-6);
      }
    }));
  });

  it('obey the reversal of light (Stokes): r′ = −r and t t′ = 1 − r²', () => {
    // Stokes, Cambridge and Dublin Math. J. 4, 1 (1849); Hecht, Optics, §4.10; both from memory
    fc.assert(fc.property(incidence, index, index, (angle, n2, n1) => {
      fc.pre(angle < criticalAngle(n2, n1) - 1e-3);
      const [there, back] = [fresnelAmplitudes(angle, n2, n1), fresnelAmplitudes(refractionAngle(angle, n2, n1), n1, n2)];
      for (const which of ['s', 'p'] as const) {
        expectNear(back.reflected[which][0], -there.reflected[which][0], 1e-9);
        expectNear(there.passed[which][0] * back.passed[which][0], 1 - there.reflected[which][0] ** 2, 1e-9);
        expect(there.reflected[which][1]).toBeCloseTo(0, 12);
      }
    }));
  });

  it('are the same for an angle of either sign', () => {
    expect(fresnelAmplitudes(-0.7, 1.52)).toEqual(fresnelAmplitudes(0.7, 1.52));
  });
});

describe('Brewster\'s angle', () => {
  it.each(publishedIds('brewster-'))('reproduces %s', id => {
    const value = publishedValue(id);
    value.check(brewsterAngle(value.input('n')) / DEGREE);
  });

  it('is that of an open textbook', () => {
    // OpenStax, University Physics vol. 3, §1.7, example: 53.1° for water of 1.333, 56.7° for crown glass of 1.520
    expectPrinted(brewsterAngle(1.333) / DEGREE, '53.1');
    expectPrinted(brewsterAngle(1.52) / DEGREE, '56.7');
    // Arc tangents: 1.515, 1.520, 1.333
    expectPrinted(brewsterAngle(1.515) / DEGREE, '56.5726');
    expectPrinted(brewsterAngle(1.52) / DEGREE, '56.6593');
    expectPrinted(brewsterAngle(1.333) / DEGREE, '53.1232');
  });

  it('reflects no p, and stands square to the light inside', () => {
    fc.assert(fc.property(index, index, (n2, n1) => {
      const angle = brewsterAngle(n2, n1);
      expectNear(reflectedShares(angle, n2, n1).p, 0, 1e-25);
      expectNear(passedShares(angle, n2, n1).p, 1, 1e-12);
      expectNear(angle + refractionAngle(angle, n2, n1), Math.PI / 2, 1e-7);
    }));
  });
});

describe('light behind a face', () => {
  it('runs as in an open textbook', () => {
    // OpenStax, University Physics vol. 3, §1.5, example: 43.2° into flint of 1.512 and 1.530 gives 26.9° and 26.6°
    expectPrinted(refractionAngle(43.2 * DEGREE, 1.512) / DEGREE, '26.9');
    expectPrinted(refractionAngle(43.2 * DEGREE, 1.53) / DEGREE, '26.6');
    // OpenStax, §1.4, example, from memory: critical angle of polystyrene of 1.49 in air 42.2°
    expectPrinted(criticalAngle(1, 1.49) / DEGREE, '42.2');
    expect(criticalAngle(1.5, 1)).toBe(Math.PI / 2);
    expect(refractionAngle(60 * DEGREE, 1, 1.5)).toBe(Math.PI / 2);
    expect(refractionAngle(-60 * DEGREE, 1, 1.5)).toBe(-Math.PI / 2);
  });

  const part = between(-1, 1);
  const direction = fc.tuple(part, part, part).filter(v => Math.hypot(...v) > 0.1);

  it('keeps n k × normal, in length and direction', () => {
    fc.assert(fc.property(direction, direction, index, index, (light, normal, n2, n1) => {
      const angle = angleFromNormal(normal, light);
      fc.pre(Math.abs(angle - criticalAngle(n2, n1)) > 1e-6 && Math.abs(angle - Math.PI / 2) > 1e-6);
      const inside = refractedDirection(light, normal, n2, n1);
      if (angle > criticalAngle(n2, n1)) { expect(inside).toEqual([0, 0, 0]); return; }
      expectNear(norm(inside), 1, 1e-12);
      expectNear(angleFromNormal(normal, inside), refractionAngle(angle, n2, n1), 1e-7);
      const [l, n] = [norm(light), norm(normal)];
      const [before, after] = [cross(light, normal).map(x => (x * n1) / l / n), cross(inside, normal).map(x => (x * n2) / n)];
      before.forEach((x, i) => { expectNear(after[i]!, x, 1e-9); });
      // it goes on to the side to which it came
      expect(Math.sign(inside[0] * normal[0] + inside[1] * normal[1] + inside[2] * normal[2])).toBe(Math.sign(light[0] * normal[0] + light[1] * normal[1] + light[2] * normal[2]));
    }));
  });

  it('leaves a mirror as the law of reflection says', () => {
    expect(reflectedDirection([1, 0, -1], [0, 0, 7]).map(x => x * Math.SQRT2)).toEqual([1, 0, 1].map(x => expect.closeTo(x, 12) as number));
    fc.assert(fc.property(direction, direction, (light, leaving) => {
      const normal = mirrorNormal(light, leaving);
      fc.pre(norm(normal) > 0 && Math.hypot(...cross(light, leaving)) > 1e-3);
      const l = norm(leaving);
      reflectedDirection(light, normal).forEach((x, i) => { expectNear(x, leaving[i]! / l, 1e-9); });
    }));
  });

  it('has no direction where the light or the face has none', () => {
    expect(refractedDirection([0, 0, 0], [0, 0, 1], 1.5)).toEqual([0, 0, 0]);
    expect(refractedDirection([0, 0, 1], [0, 0, 0], 1.5)).toEqual([0, 0, 0]);
  });
});

describe('a plain plate', () => {
  it('has the sums of its bounces', () => {
    fc.assert(fc.property(between(0, 89 * DEGREE), between(1, 3), (angle, n) => {
      const [R, plate] = [reflectedShares(angle, n), plainPlateShares(angle, n)];
      for (const which of ['s', 'p'] as const) {
        const r = R[which];
        const { through, reflected, straight, front, back } = plate[which];
        // Bounce by bounce, until nothing is left inside.
        let [inside, passed, returned] = [1 - r, 0, r];
        for (let bounce = 0; inside > 1e-15; bounce++) {
          if (bounce % 2 === 0) passed += inside * (1 - r); else returned += inside * (1 - r);
          inside *= r;
        }
        expectNear(through, passed, 1e-12);
        expectNear(reflected, returned, 1e-12);
        expectNear(through + reflected, 1, 1e-12);
        expect(straight).toBeLessThanOrEqual(through + 1e-15);
        expect(front + back).toBeLessThanOrEqual(reflected + 1e-15);
      }
    }));
  });

  it('of window glass loses about 8 % squarely', () => {
    // Common practice: 4 % at each face.
    const { s } = plainPlateShares(0, 1.52);
    expect(Math.round(100 * s.reflected)).toBe(8);
    expect(Math.round(100 * s.through)).toBe(92);
    // The faces by themselves, with R = ((n − 1)/(n + 1))² = 0.04258
    expectNear(s.front, 0.04258, 1e-6);
    expectNear(s.back, 0.04258 * 0.95742 ** 2, 1e-5);
    expectNear(s.straight, 0.95742 ** 2, 1e-5);
  });
});
