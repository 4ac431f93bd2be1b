/** Fringes on a plate and in its layer. Angles and lengths in the tables are in degrees and nm, frequencies in fringes per mm. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { RESOLVING_MARGIN, shareOfResolvingPower } from '../../server/optics/fringes/resolving.ts';
import { fringeTilt, layerFrequency, layerFringes, opposedFrequency, pairPeriod, plateFrequency, plateFringes } from '../../server/optics/fringes/spacing.ts';
import { refractedDirection } from '../../server/optics/surfaces/refract.ts';
import { angleBetween, angleFromNormal, type Vector } from '../../server/optics/vectors.ts';
import { between, expectNear, expectPrinted, publishedIds, publishedValue } from './outside.ts';

const DEGREE = Math.PI / 180;
const NM = 1e-9;
const RED = 632.8 * NM;
const perMm = (frequency: number): number => frequency / 1e3;
/** The plate lies across y; light from the other side runs against it. */
const NORMAL: Vector = [0, 1, 0];
const front = (angle: number): Vector => [Math.sin(angle * DEGREE), Math.cos(angle * DEGREE), 0];
const behind = (angle: number): Vector => [Math.sin(angle * DEGREE), -Math.cos(angle * DEGREE), 0];

/** Directions all round, and turns by any axis and angle (Rodrigues' formula). */
const towards = fc.tuple(between(-1, 1), between(-Math.PI, Math.PI)).map(([z, a]): Vector => [Math.sqrt(1 - z * z) * Math.cos(a), Math.sqrt(1 - z * z) * Math.sin(a), z]);
function turned(v: Vector, [x, y, z]: Vector, angle: number): Vector {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const k = (x * v[0] + y * v[1] + z * v[2]) * (1 - c);
  return [v[0] * c + (y * v[2] - z * v[1]) * s + x * k, v[1] * c + (z * v[0] - x * v[2]) * s + y * k, v[2] * c + (x * v[1] - y * v[0]) * s + z * k];
}
const sine = (v: Vector): number => Math.sin(angleFromNormal(NORMAL, v));

describe('two beams at the same angle from one side', () => {
  it.each(publishedIds('fringe-air-'))('reproduce %s', id => {
    const value = publishedValue(id);
    const [wavelength, full] = [value.input('wavelength_nm') * NM, value.input('full_angle_deg')];
    value.check(perMm(1 / pairPeriod(wavelength, full * DEGREE)));
    value.check(perMm(plateFrequency(wavelength, (full / 2) * DEGREE, (-full / 2) * DEGREE)));
  });

  // λ / (2 sin(θ/2)) for 632.8 nm, computed outside: distance in nm, fringes per mm.
  it.each([[10, '3630.28', '275.46'], [20, '1822.07', '548.82'], [30, '1222.48', '818.01'], [45, '826.79', '1209.49'], [60, '632.80', '1580.28'], [90, '447.46', '2234.85'], [120, '365.35', '2737.12'], [180, '316.40', '3160.56']] as const)(
    'at %f° are %s nm apart', (full, period, frequency) => {
      expectPrinted(pairPeriod(RED, full * DEGREE) / NM, period);
      expectPrinted(perMm(plateFrequency(RED, (full / 2) * DEGREE, (-full / 2) * DEGREE)), frequency);
    });

  it('at 30° made a grating of 820 lines per mm', () => {
    // George & Matthews, Appl. Phys. Lett. 9, 212 (1966): two symmetric beams of 632.8 nm, 30° apart; a round number.
    expectNear(perMm(1 / pairPeriod(RED, 30 * DEGREE)), 820, 5);
    // A published problem: 633 nm, 30° gives 1.22 µm; exactly 1222.86 nm and 817.75 per mm.
    expectPrinted(pairPeriod(633 * NM, 30 * DEGREE) / NM, '1222.86');
    expectPrinted(perMm(plateFrequency(633 * NM, 15 * DEGREE, -15 * DEGREE)), '817.75');
  });
});

describe('one beam along the normal', () => {
  // sin θ / λ for 632.8 nm, computed outside.
  it.each([[30, '790.14', '1265.60'], [45, '1117.43', '894.91'], [60, '1368.56']] as const)('and one at %f°', (angle, frequency, period?: string) => {
    expectPrinted(perMm(plateFrequency(RED, 0, angle * DEGREE)), frequency);
    if (period !== undefined) expectPrinted(1 / plateFrequency(RED, 0, angle * DEGREE) / NM, period);
  });

  it('reproduces a ruled grating in hydrogen light', () => {
    const value = publishedValue('openstax-halpha');
    value.check(1 / plateFrequency(value.input('wavelength_nm') * NM, 0, value.input('angle_deg') * DEGREE));
    // The same example, OpenStax University Physics vol. 3, 4.4: 300 lines per mm, exactly 300.13.
    expectPrinted(perMm(plateFrequency(656.3 * NM, 0, 11.36 * DEGREE)), '300.13');
  });
});

describe('beams against each other in a layer', () => {
  it.each(publishedIds('refl-'))('reproduce %s', id => {
    const value = publishedValue(id);
    value.check(perMm(opposedFrequency(value.input('wavelength_nm') * NM, value.input('n'))));
  });

  // 2n/λ, n 1.52, computed outside.
  it.each([[457.9, '6639.0'], [532, '5714.3'], [632.8, '4804.05'], [647.1, '4697.9']] as const)('of %f nm: %s per mm', (nm, frequency) => {
    expectPrinted(perMm(opposedFrequency(nm * NM, 1.52)), frequency);
    expectPrinted(perMm(layerFrequency(nm * NM, 1.52, NORMAL, front(0), behind(0))), frequency);
  });

  it('are 208.158 nm apart for 632.8 nm', () => expectPrinted(1 / opposedFrequency(RED, 1.52) / NM, '208.158'));
});

describe('in a layer of index 1.52, object light along the normal, 632.8 nm', () => {
  it('a reference at 45° from the same side', () => {
    // Computed outside: inside at 27.723°, 868.85 nm, 1150.9 per mm. The planes halve 27.72328°: 13.86164° from the normal.
    expectPrinted(angleFromNormal(NORMAL, refractedDirection(front(45), NORMAL, 1.52)) / DEGREE, '27.723');
    expectPrinted(perMm(layerFrequency(RED, 1.52, NORMAL, front(0), front(45))), '1150.9');
    expectPrinted(1 / layerFrequency(RED, 1.52, NORMAL, front(0), front(45)) / NM, '868.85');
    expectPrinted(90 - fringeTilt(1.52, NORMAL, front(0), front(45)) / DEGREE, '13.8616');
  });

  it('a reference at 45° from the other side', () => {
    // Computed outside: 214.402 nm, 4664.1 per mm, planes as much from the surface; at 56.57° 4602.6 per mm.
    expectPrinted(perMm(layerFrequency(RED, 1.52, NORMAL, front(0), behind(45))), '4664.1');
    expectPrinted(1 / layerFrequency(RED, 1.52, NORMAL, front(0), behind(45)) / NM, '214.402');
    expectPrinted(fringeTilt(1.52, NORMAL, front(0), behind(45)) / DEGREE, '13.8616');
    expectPrinted(perMm(layerFrequency(RED, 1.52, NORMAL, front(0), behind(56.57))), '4602.6');
  });

  it('keeps to the ranges of the trade', () => {
    // About 300 to 3000 per mm for transmission and over 4000 in reflection, visible light (Blanche, Field Guide to Holography, SPIE, 2014, p. 23).
    for (const nm of [457.9, 532, 632.8]) {
      for (const angle of [10, 45, 75]) expect(perMm(layerFrequency(nm * NM, 1.52, NORMAL, front(0), front(angle)))).toBeGreaterThan(250);
      for (const angle of [10, 45, 75]) expect(perMm(layerFrequency(nm * NM, 1.52, NORMAL, front(0), front(angle)))).toBeLessThan(3000);
      for (const angle of [0, 45, 75]) expect(perMm(layerFrequency(nm * NM, 1.52, NORMAL, front(0), behind(angle)))).toBeGreaterThan(4000);
    }
  });
});

it('walk across a plate of 120 mm before an object of 80 mm at 300 mm', () => {
  // Plane reference at 45°, 632.8 nm; computed outside: 617.7 to 1617.2 per mm.
  const frequencies = [-60, 60].flatMap(plate => [-40, 40].map(object => perMm(plateFrequency(RED, 45 * DEGREE, Math.atan2(plate - object, 300)))));
  expectPrinted(Math.min(...frequencies), '617.7');
  expectPrinted(Math.max(...frequencies), '1617.2');
});

describe('in space', () => {
  const wavelength = between(400e-9, 700e-9);
  const index = between(1.3, 1.8);

  it('nothing changes when everything is turned', () => {
    fc.assert(fc.property(wavelength, index, towards, towards, towards, towards, between(-3, 3), (lambda, n, normal, one, other, axis, angle) => {
      const [N, A, B] = [normal, one, other].map(v => turned(v, axis, angle)) as [Vector, Vector, Vector];
      expectNear(layerFrequency(lambda, n, N, A, B), layerFrequency(lambda, n, normal, one, other), 1e-3);
      expectNear(fringeTilt(n, N, A, B), fringeTilt(n, normal, one, other), 1e-6);
      const [before, after] = [layerFringes(lambda, n, normal, one, other), layerFringes(lambda, n, N, A, B)];
      turned(before, axis, angle).forEach((v, i) => { expectNear(v, after[i]!, 1e-3); });
      turned(plateFringes(lambda, normal, one, other), axis, angle).forEach((v, i) => { expectNear(v, plateFringes(lambda, N, A, B)[i]!, 1e-3); });
    }));
  });

  it('swapping the beams turns the fringes about and keeps frequency and tilt', () => {
    fc.assert(fc.property(wavelength, index, towards, towards, towards, (lambda, n, normal, one, other) => {
      expect(layerFrequency(lambda, n, normal, one, other)).toBe(layerFrequency(lambda, n, normal, other, one));
      expectNear(fringeTilt(n, normal, one, other), fringeTilt(n, normal, other, one), 1e-12);
      layerFringes(lambda, n, normal, other, one).forEach((v, i) => { expectNear(v, -layerFringes(lambda, n, normal, one, other)[i]!, 1e-6); });
      expectNear(layerFrequency(lambda, n, [-normal[0], -normal[1], -normal[2]], one, other), layerFrequency(lambda, n, normal, one, other), 1e-3);
    }));
  });

  it('light enters by the law of refraction and stays in its plane', () => {
    fc.assert(fc.property(index, towards, (n, light) => {
      const inside = refractedDirection(light, NORMAL, n);
      expectNear(n * sine(inside), sine(light), 1e-9);
      expectNear(Math.hypot(...inside), 1, 1e-12);
      expectNear(inside[0] * light[2] - inside[2] * light[0], 0, 1e-12);
      expect(inside[1] * light[1]).toBeGreaterThanOrEqual(0);
    }));
  });

  it('the layer has the same fringes along the plate as its surface, of which the angles alone tell', () => {
    fc.assert(fc.property(wavelength, index, between(-80, 80), between(-80, 80), fc.boolean(), (lambda, n, a, b, opposite) => {
      const [one, other] = [front(a), opposite ? behind(b) : front(b)];
      const [inside, surface] = [layerFringes(lambda, n, NORMAL, one, other), plateFringes(lambda, NORMAL, one, other)];
      expectNear(inside[0], surface[0], 1e-3);
      expect(surface[1]).toBe(0);
      expectNear(Math.hypot(...surface), plateFrequency(lambda, a * DEGREE, b * DEGREE), 1e-3);
    }));
  });

  it('the frequency is 2n/λ times the sine of half the angle inside', () => {
    fc.assert(fc.property(wavelength, index, towards, towards, (lambda, n, one, other) => {
      const angle = angleBetween(refractedDirection(one, NORMAL, n), refractedDirection(other, NORMAL, n));
      expectNear(layerFrequency(lambda, n, NORMAL, one, other), ((2 * n) / lambda) * Math.sin(angle / 2), 1e-2);
      expect(layerFrequency(lambda, n, NORMAL, one, other)).toBeLessThanOrEqual(opposedFrequency(lambda, n) * (1 + 1e-12));
    }));
  });

  it('air counts as a layer of index 1, in which the frequency is the inverse of the distance between the fringes', () => {
    fc.assert(fc.property(wavelength, towards, towards, (lambda, one, other) => {
      fc.pre(angleBetween(one, other) > 0.01);
      expectNear(layerFrequency(lambda, 1, NORMAL, one, other) * pairPeriod(lambda, angleBetween(one, other)), 1, 1e-9);
    }));
  });

  it('twice the wavelength has half the fringes', () => {
    fc.assert(fc.property(wavelength, index, towards, towards, (lambda, n, one, other) => expectNear(2 * layerFrequency(2 * lambda, n, NORMAL, one, other), layerFrequency(lambda, n, NORMAL, one, other), 1e-3)));
  });
});

describe('the tilt of the fringe planes', () => {
  it('is none between beams at one angle from both sides, and a right angle between beams at one angle from one side', () => {
    fc.assert(fc.property(between(1, 80), a => {
      expectNear(fringeTilt(1.52, NORMAL, front(a), behind(a)), 0, 1e-12);
      expectNear(fringeTilt(1.52, NORMAL, front(a), front(-a)), Math.PI / 2, 1e-12);
    }));
  });
  it('is none where there are no fringes', () => expect(fringeTilt(1.52, NORMAL, front(20), front(20))).toBe(0));
});

it('what is needed is told as a share of what a stock is rated at', () => {
  // By hand: 4664.1 of 5000 per mm is 0.93282, above 1 / 1.3 = 0.76923; 1117.43 of 3000 is 0.37248.
  expectPrinted(shareOfResolvingPower(4664.1e3, 5000e3), '0.93282');
  expectPrinted(shareOfResolvingPower(1117.43e3, 3000e3), '0.37248');
  expectPrinted(1 / RESOLVING_MARGIN, '0.76923');
});

it('numbers outside all domains give finite results', () => {
  const any = fc.oneof(fc.double(), fc.constantFrom(0, -0, 1, 1e-300, 1e300, Infinity, -Infinity, NaN));
  const wild = fc.oneof(fc.tuple(any, any, any), towards);
  fc.assert(fc.property(any, any, wild, wild, wild, (x, y, n, a, b) => {
    const all = [plateFrequency(x, y, x), ...plateFringes(x, n, a, b), ...refractedDirection(a, n, x), ...layerFringes(x, y, n, a, b), layerFrequency(x, y, n, a, b), fringeTilt(x, n, a, b), pairPeriod(x, y), opposedFrequency(x, y), shareOfResolvingPower(x, y)];
    expect(all.every(Number.isFinite), JSON.stringify(all)).toBe(true);
  }), { numRuns: 1000 });
});
