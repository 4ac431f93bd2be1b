/** What things on the table do to a field: textbook examples, Jones matrices by mathjs, rotation of everything in space. */
import fc from 'fast-check';
import { complex, multiply, type Complex as MathComplex } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { axisAt, circularField, ellipseOf, fieldPower, horizontalField, linearField, verticalField, type Field } from '../../server/optics/polarization/field.ts';
import { sShare } from '../../server/optics/polarization/incidence.ts';
import { attenuated, coated, delayAt, faceReflected, halfWavePassed, mirrorAmplitudes, mirrored, polarizerPassed, quarterWavePassed, refractedField, refractedLight, retarded, splitReflected, splitThrough } from '../../server/optics/polarization/pass.ts';
import { brewsterAngle, fresnelAmplitudes, passedShares, reflectedShares } from '../../server/optics/surfaces/fresnel.ts';
import { angleFromNormal, cross, direction, dot, mirrorNormal, unit, type Vector } from '../../server/optics/vectors.ts';
import { between, expectNear, expectPrinted } from './outside.ts';
import { anyField, anyTurn, anyVector, closeFields, turnedField } from './polarization-space.ts';

const DEGREE = Math.PI / 180;
const X: Vector = [1, 0, 0];
const angle = between(-Math.PI, Math.PI);
const close = (a: readonly number[], b: readonly number[], allowed = 1e-12): void => { a.forEach((v, i) => { expectNear(v, b[i]!, allowed); }); };

describe('angles from vertical', () => {
  it('count clockwise for one who looks along the light', () => {
    // Light along +x: up is +z, and the right hand of one who looks along it points to −y.
    close(axisAt(X, 0), [0, 0, 1]);
    close(axisAt(X, 90 * DEGREE), [0, -1, 0]);
    close(axisAt(X, 45 * DEGREE), [0, -Math.SQRT1_2, Math.SQRT1_2]);
    // The other way round the table the right hand is at +y.
    close(axisAt([-2, 0, 0], 90 * DEGREE), [0, 1, 0]);
    close(axisAt(direction(0, 30 * DEGREE), 0), [-0.5, 0, Math.sqrt(3) / 2]);
  });

  it('of light straight up or down count from away in the plan', () => {
    close(axisAt([0, 0, 1], 0), [0, 1, 0]);
    close(axisAt([0, 0, -1], 0), [0, 1, 0]);
    // Whoever looks up with +y at the top of the view has +x at the left; looking down, at the right.
    close(axisAt([0, 0, 1], 90 * DEGREE), [-1, 0, 0]);
    close(axisAt([0, 0, -1], 90 * DEGREE), [1, 0, 0]);
    expect(axisAt([0, 0, 0], 1).map(Math.abs)).toEqual([0, 0, 0]);
  });

  it('are square to the light, of length 1', () => {
    fc.assert(fc.property(anyVector, angle, (light, a) => {
      const axis = axisAt(light, a);
      expectNear(Math.hypot(...axis), 1, 1e-12);
      expectNear(dot(axis, unit(light)), 0, 1e-12);
    }));
  });
});

describe('a field', () => {
  it('has power 1, and the ellipse that it was made with', () => {
    fc.assert(fc.property(anyVector, between(-89.9 * DEGREE, 89.9 * DEGREE), (light, a) => {
      expectNear(fieldPower(linearField(light, a)), 1, 1e-12);
      const ellipse = ellipseOf(linearField(light, a));
      expectNear(ellipse.angle, a, 1e-9);
      expectNear(ellipse.roundness, 0, 1e-9);
      for (const [turning, roundness] of [['clockwise', 1], ['counter-clockwise', -1]] as const) {
        expectNear(fieldPower(circularField(light, turning)), 1, 1e-12);
        expectNear(ellipseOf(circularField(light, turning)).roundness, roundness, 1e-6);
        expect(ellipseOf(circularField(light, turning)).angle).toBe(0);
      }
    }));
  });

  it('that is circular turns as it is called', () => {
    // Along +x, a quarter of a period after it pointed up: to the right (−y) where it turns clockwise.
    close(circularField(X, 'clockwise').re, [0, 0, Math.SQRT1_2]);
    close(circularField(X, 'clockwise').im, [0, -Math.SQRT1_2, 0]);
    close(circularField(X, 'counter-clockwise').im, [0, Math.SQRT1_2, 0]);
  });

  it('of an ellipse has the axes that it runs along', () => {
    // 0.8 up and, a quarter of a period later, 0.6 to the right: as upright as it is long, by 0.6/0.8
    close(Object.values(ellipseOf({ direction: X, re: [0, 0, 0.8], im: [0, -0.6, 0] })), [0, 0.75]);
    close(Object.values(ellipseOf({ direction: X, re: [0, 0, 0.6], im: [0, 0.8, 0] })), [Math.PI / 2, -0.75]);
    expect(ellipseOf({ direction: X, re: [0, 0, 0], im: [0, 0, 0] })).toEqual({ angle: 0, roundness: 0 });
    // The same by walking around it, for any field.
    fc.assert(fc.property(anyField, field => {
      const at = (t: number): number => Math.hypot(...field.re.map((x, i) => x * Math.cos(t) + field.im[i]! * Math.sin(t)));
      const lengths = Array.from({ length: 3600 }, (_, i) => at((i * Math.PI) / 3600));
      const { angle, roundness } = ellipseOf(field);
      expectNear(Math.abs(roundness), Math.min(...lengths) / Math.max(...lengths), 2e-3);
      // Along its long axis, the field comes as far out as anywhere.
      const axis = axisAt(field.direction, angle);
      expectNear(Math.hypot(dot(field.re, axis), dot(field.im, axis)), Math.max(...lengths), 1e-5);
    }), { numRuns: 30 });
  });

  it('of little power has the same ellipse', () => {
    expectNear(ellipseOf(attenuated(linearField(X, 0.4), 1e-14)).angle, 0.4, 1e-9);
  });

  it.each([[[1, 0, 0]], [[0, -1, 0]], [[0, 0, 1]]] as const)('along %j has power 1 too', light => {
    expectNear(fieldPower(linearField(light, 0.3)), 1, 1e-12);
    expectNear(fieldPower(circularField(light, 'clockwise')), 1, 1e-12);
  });
});

describe('polarizers', () => {
  it('obey Malus: 90 % is cut at 71.6°', () => {
    // OpenStax, University Physics vol. 3, §1.7, example; arc cosine of √0.1 is 71.565°
    expectPrinted(100 * fieldPower(polarizerPassed(verticalField(X), 71.6 * DEGREE)), '10.0');
    expectNear(fieldPower(polarizerPassed(verticalField(X), 71.565 * DEGREE)), 0.1, 1e-6);
    fc.assert(fc.property(anyVector, angle, angle, (light, a, b) => {
      expectNear(fieldPower(polarizerPassed(linearField(light, a), b)), Math.cos(a - b) ** 2, 1e-9);
    }));
  });

  it('that are crossed pass a quarter with one at 45° between them, of what the first lets through', () => {
    // Hecht, Optics, §8.2, from memory
    const first = polarizerPassed(verticalField(X), 0);
    expectNear(fieldPower(polarizerPassed(first, Math.PI / 2)), 0, 1e-30);
    expectNear(fieldPower(polarizerPassed(polarizerPassed(first, Math.PI / 4), Math.PI / 2)), 0.25, 1e-12);
  });

  it('pass half of circular light at any angle', () => {
    fc.assert(fc.property(anyVector, angle, (light, a) => { expectNear(fieldPower(polarizerPassed(circularField(light, 'clockwise'), a)), 0.5, 1e-12); }));
  });
});

describe('wave plates', () => {
  it('of half a wave turn polarization by twice the angle to the axis', () => {
    fc.assert(fc.property(anyVector, angle, angle, (light, a, axis) => {
      const { re, im } = halfWavePassed(linearField(light, a), axis);
      const expected = axisAt(light, 2 * axis - a);
      close(cross(re, expected), [0, 0, 0], 1e-9);
      close(im, [0, 0, 0], 1e-9);
    }));
    // Common practice: an axis at 45° takes vertical light to horizontal.
    expectNear(Math.abs(ellipseOf(halfWavePassed(verticalField(X), 45 * DEGREE)).angle), Math.PI / 2, 1e-12);
  });

  it('of a quarter wave make circular light', () => {
    // Hecht, Optics, §8.13.3, from memory: with z toward the observer, a quarter-wave plate with its fast axis along y takes light at 45° between +x and +y into
    // (1, −i)/√2, right circular: clockwise for one who looks toward the source. To one who looks along the light, +x is at the left.
    const made = quarterWavePassed(linearField(X, -45 * DEGREE), 0);
    expectNear(ellipseOf(made).roundness, -1, 1e-9);
    expectNear(ellipseOf(quarterWavePassed(linearField(X, 45 * DEGREE), 0)).roundness, 1, 1e-9);
    // Two of them are a half-wave plate.
    fc.assert(fc.property(anyField, angle, (field, axis) => { closeFields(quarterWavePassed(quarterWavePassed(field, axis), axis), halfWavePassed(field, axis), 1e-12); }));
  });

  it('in any order do what the product of their Jones matrices does', () => {
    // The other way to look: x up, y to the right, both seen along the light; rotation matrices and diag(1, exp(iΓ)) with mathjs.
    const matrix = (axis: number, delay: number): MathComplex[][] => {
      const [c, s] = [Math.cos(axis), Math.sin(axis)];
      return multiply(multiply([[c, -s], [s, c]], [[complex(1, 0), complex(0, 0)], [complex(0, 0), complex(Math.cos(delay), Math.sin(delay))]] as never), [[c, s], [-s, c]]) as never;
    };
    const plate = fc.tuple(angle, between(0, 2 * Math.PI));
    fc.assert(fc.property(anyVector, angle, fc.array(plate, { minLength: 1, maxLength: 4 }), (light, a, plates) => {
      let ours = linearField(light, a);
      let jones: MathComplex[] = [complex(Math.cos(a), 0), complex(Math.sin(a), 0)];
      for (const [axis, delay] of plates) {
        ours = retarded(ours, axis, delay);
        jones = multiply(matrix(axis, delay), jones as never) as never;
      }
      const [v, h] = [axisAt(light, 0), axisAt(light, Math.PI / 2)];
      close([dot(ours.re, v), dot(ours.im, v), dot(ours.re, h), dot(ours.im, h)], [jones[0]!.re, jones[0]!.im, jones[1]!.re, jones[1]!.im], 1e-9);
    }));
  });

  it('delay less at a longer wavelength', () => {
    // Made for 532 nm, used at 633 nm: π · 532/633
    expectNear(delayAt(Math.PI, 532e-9, 633e-9), Math.PI * 0.840442, 1e-5);
    expectNear(delayAt(Math.PI, 633e-9, 633e-9), Math.PI, 1e-12);
  });
});

describe('mirrors', () => {
  it('keep the field square to the light and its power: e′ = −e + 2(e·n)n', () => {
    fc.assert(fc.property(anyField, anyVector, (field, normal) => {
      const out = mirrored(field, normal);
      const n = unit(normal);
      for (const which of ['re', 'im'] as const) {
        const e = field[which];
        close(out[which], e.map((x, i) => -x + 2 * dot(e, n) * n[i]!), 1e-9);
        expectNear(dot(out[which], out.direction), 0, 1e-9);
      }
      expectNear(fieldPower(out), fieldPower(field), 1e-9);
    }));
  });

  it('in one plane keep vertical vertical and level level', () => {
    let [v, h] = [verticalField(X), horizontalField(X)];
    for (const heading of [70, 130, 200, 10]) {
      const leaving = direction(heading * DEGREE, 0);
      [v, h] = [mirrored(v, mirrorNormal(v.direction, leaving)), mirrored(h, mirrorNormal(h.direction, leaving))];
      close(v.direction, leaving);
      close(v.re.map(Math.abs), [0, 0, 1]);
      expectNear(h.re[2], 0, 1e-12);
    }
  });

  it('of a periscope that leaves sideways turn vertical into horizontal; one that leaves straight on does not', () => {
    // Along +x, up, then along +y; by hand: z → −x at the first mirror, −x → x at the second.
    const up = mirrored(verticalField(X), mirrorNormal(X, [0, 0, 1]));
    close(up.re, [-1, 0, 0]);
    const sideways = mirrored(up, mirrorNormal([0, 0, 1], [0, 1, 0]));
    close(sideways.re, [1, 0, 0]);
    expectNear(Math.abs(ellipseOf(sideways).angle), Math.PI / 2, 1e-12);
    expectNear(ellipseOf(mirrored(up, mirrorNormal([0, 0, 1], X))).angle, 0, 1e-12);
  });

  it('turn the sense of circular light', () => {
    const out = mirrored(circularField(X, 'clockwise'), mirrorNormal(X, [0, 1, 0]));
    expectNear(ellipseOf(out).roundness, -1, 1e-9);
  });

  it('of metal reflect s and p by their shares, and make ellipses of light between them', () => {
    const normal = mirrorNormal(X, [0, 1, 0]);
    const amplitudes = mirrorAmplitudes({ s: 0.9, p: 0.8 }, 0.3);
    expectNear(fieldPower(coated(verticalField(X), normal, amplitudes)), 0.9, 1e-12);
    expectNear(fieldPower(coated(horizontalField(X), normal, amplitudes)), 0.8, 1e-12);
    const between45 = coated(linearField(X, 45 * DEGREE), normal, amplitudes);
    expectNear(fieldPower(between45), 0.85, 1e-12);
    // tan 2χ … sin 2χ = 2ab sin δ/(a² + b²) (Born & Wolf, Principles of Optics, §1.4.2)
    const sin2chi = (2 * Math.sqrt(0.9 * 0.8) * Math.sin(0.3)) / 1.7;
    expectNear(Math.abs(ellipseOf(between45).roundness), Math.tan(0.5 * Math.asin(sin2chi)), 1e-12);
    closeFields(coated(linearField(X, 1), normal, mirrorAmplitudes({ s: 1, p: 1 })), mirrored(linearField(X, 1), normal), 1e-12);
  });

  it('squarely met, send the field back as it stands', () => {
    fc.assert(fc.property(anyField, field => { closeFields({ ...mirrored(field, field.direction), direction: field.direction }, { ...field, re: field.re.map(x => -x) as unknown as Vector, im: field.im.map(x => -x) as unknown as Vector }, 1e-9); }));
  });
});

describe('splitters and attenuators', () => {
  it('share the light by s and p', () => {
    const share = fc.tuple(between(0, 1), between(0, 1));
    fc.assert(fc.property(anyField, anyVector, share, (field, normal, [s, p]) => {
      const [reflected, through] = [splitReflected(field, normal, { s, p }), splitThrough(field, normal, { s: 1 - s, p: 1 - p })];
      expectNear(fieldPower(reflected) + fieldPower(through), fieldPower(field), 1e-9);
      const σ = sShare(field, normal);
      expectNear(fieldPower(reflected), (σ * s + (1 - σ) * p) * fieldPower(field), 1e-9);
      close(through.direction, field.direction);
    }));
  });

  it('that pass all of both leave the field as it is', () => {
    fc.assert(fc.property(anyField, anyVector, (field, normal) => { closeFields(splitThrough(field, normal, { s: 1, p: 1 }), field, 1e-9); }));
  });

  it('that pass more p turn light toward it', () => {
    // tan of the angle from vertical (s, on a level table) grows by √(T_p/T_s) = 2
    expectNear(ellipseOf(splitThrough(linearField(X, 30 * DEGREE), mirrorNormal(X, [0, 1, 0]), { s: 0.2, p: 0.8 })).angle, Math.atan(2 * Math.tan(30 * DEGREE)), 1e-12);
  });

  it('attenuate without turning', () => {
    expectNear(fieldPower(attenuated(linearField(X, 0.4), 0.3)), 0.3, 1e-12);
    expectNear(ellipseOf(attenuated(linearField(X, 0.4), 0.3)).angle, 0.4, 1e-12);
  });
});

describe('a face of glass', () => {
  const index = between(1, 3);

  it('keeps the power, split by s and p', () => {
    fc.assert(fc.property(anyField, anyVector, index, (field, normal, n) => {
      const incidence = angleFromNormal(normal, field.direction);
      const σ = sShare(field, normal);
      const [R, T] = [reflectedShares(incidence, n), passedShares(incidence, n)];
      const [back, on] = [fieldPower(faceReflected(field, normal, n)), fieldPower(refractedField(field, normal, n))];
      expectNear(back, (σ * R.s + (1 - σ) * R.p) * fieldPower(field), 1e-9);
      expectNear(on, (σ * T.s + (1 - σ) * T.p) * fieldPower(field), 1e-9);
      expectNear(back + on, fieldPower(field), 1e-9);
      expectNear(fieldPower(refractedField(field, normal, n, 1, 'none')), fieldPower(field), 1e-9);
    }));
  });

  it('does to each part of a light what it does to that part alone, wherever they go', () => {
    // Each two after one another differ in one number of their direction.
    const directions: readonly Vector[] = [[0.8, 0.6, 0], [-0.8, 0.6, 0], [0.6, 0.8, 0], [0.6, -0.8, 0], [0.6, 0, 0.8], [0.6, 0, -0.8], [0.6, 0, -0.8]];
    const light = directions.map((d, state) => ({ field: linearField(d, 0.3 + state), state, steady: true }));
    refractedLight(light, direction(0.4, 0.2), 1.52).forEach(({ field }, i) => { closeFields(field, refractedField(light[i]!.field, direction(0.4, 0.2), 1.52), 1e-12); });
  });

  it('can be asked for the field itself', () => {
    const light = direction(0.7, 0);
    const { passed } = fresnelAmplitudes(0.7, 1.5);
    expectNear(fieldPower(refractedField(verticalField(light), X, 1.5, 1, 'amplitude')), passed.s[0] ** 2, 1e-12);
    expectNear(fieldPower(refractedField(horizontalField(light), X, 1.5, 1, 'amplitude')), passed.p[0] ** 2, 1e-12);
  });

  it('matches at the surface: along it, the field in front is that behind', () => {
    // Boundary conditions of Maxwell's equations, which Fresnel's amplitudes follow from: n × E is continuous.
    fc.assert(fc.property(anyField, anyVector, index, index, (field, normal, n2, n1) => {
      const out = refractedField(field, normal, n2, n1, 'amplitude');
      fc.pre(dot(out.direction, out.direction) > 0);
      const back = faceReflected(field, normal, n2, n1);
      const n = unit(normal);
      for (const which of ['re', 'im'] as const) {
        const front = cross(n, field[which].map((x, i) => x + back[which][i]!) as unknown as Vector);
        close(cross(n, out[which]), front, 1e-7);
      }
      // and so is the field along the normal, times n²
      for (const which of ['re', 'im'] as const) expectNear(n2 ** 2 * dot(n, out[which]), n1 ** 2 * (dot(n, field[which]) + dot(n, back[which])), 1e-6);
    }));
  });

  it('at Brewster\'s angle reflects s alone', () => {
    const light = direction(brewsterAngle(1.52), 0);
    expectNear(fieldPower(faceReflected(horizontalField(light), X, 1.52)), 0, 1e-25);
    expectNear(sShare(faceReflected(linearField(light, 1), X, 1.52), X), 1, 1e-12);
  });

  it('passes nothing where all of it is reflected, and then makes ellipses', () => {
    const light = direction(50 * DEGREE, 0);
    expect(fieldPower(refractedField(linearField(light, 0.5), X, 1, 1.51))).toBe(0);
    const back = faceReflected(linearField(light, 45 * DEGREE), X, 1, 1.51);
    expectNear(fieldPower(back), 1, 1e-12);
    // Twice at 54°37′ in glass of 1.51 makes circular light of light at 45°: Fresnel's rhomb (Born & Wolf, Principles of Optics, §1.5.4, from memory)
    const first = faceReflected(linearField(direction((54 + 37 / 60) * DEGREE, 0), 45 * DEGREE), X, 1, 1.51);
    expectNear(Math.abs(ellipseOf(faceReflected(first, X, 1, 1.51)).roundness), 1, 5e-3);
  });
});

describe('s and p', () => {
  it('are vertical and level light on a level table, and of a field between them the squares', () => {
    const normal = mirrorNormal(X, [0, 1, 0]);
    for (const degrees of [0, 30, 45, 90]) expectNear(sShare(linearField(X, degrees * DEGREE), normal), Math.cos(degrees * DEGREE) ** 2, 1e-12);
    expectNear(sShare(circularField(X, 'clockwise'), normal), 0.5, 1e-12);
  });

  it('are horizontal and vertical light where it meets a surface squarely', () => {
    expectNear(sShare(horizontalField(X), X), 1, 1e-12);
    expectNear(sShare(verticalField(X), X), 0, 1e-12);
  });
});

describe('everything turned in space together', () => {
  const things: readonly (readonly [string, (field: Field, normal: Vector) => Field])[] = [
    ['mirror', mirrored],
    ['coating', (f, n) => coated(f, n, mirrorAmplitudes({ s: 0.9, p: 0.7 }, 0.4))],
    ['splitter', (f, n) => splitThrough(f, n, { s: 0.3, p: 0.6 }, 0.2)],
    ['face', (f, n) => refractedField(f, n, 1.52)],
    ['face from inside', (f, n) => faceReflected(f, n, 1, 1.52)],
  ];
  it.each(things)('changes nothing at a %s', (_, does) => {
    fc.assert(fc.property(anyField, anyVector, anyTurn, (field, normal, turn) => {
      // At normal incidence it is arbitrary what s is; at the critical angle rounding decides whether light goes on.
      const incidence = angleFromNormal(normal, field.direction);
      fc.pre(incidence > 1e-3 && Math.abs(incidence - Math.asin(1 / 1.52)) > 1e-3);
      closeFields(does(turnedField(turn, field), turn(normal)), turnedField(turn, does(field, normal)), 1e-7);
    }));
  });
  it('changes nothing at the share of s', () => {
    fc.assert(fc.property(anyField, anyVector, anyTurn, (field, normal, turn) => {
      fc.pre(angleFromNormal(normal, field.direction) > 1e-3);
      expectNear(sShare(turnedField(turn, field), turn(normal)), sShare(field, normal), 1e-9);
    }));
  });
});
