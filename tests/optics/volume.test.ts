/** Thick holograms against published values, the coupled equations integrated step by step, and the exact reflection of a stack of thin films. */
import fc from 'fast-check';
import { add, complex, divide, multiply, type Complex } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { hologramStrength, layerEfficiency, meeting, reflectionEfficiency, transmissionEfficiency } from '../../server/optics/fringes/efficiency.ts';
import { angularSelectivity, departureToDark, reflectionBandwidth } from '../../server/optics/fringes/selectivity.ts';
import { layerFrequency, layerFringes, opposedFrequency } from '../../server/optics/fringes/spacing.ts';
import { refractedDirection } from '../../server/optics/surfaces/refract.ts';
import { braggAngle, kleinCookQ, moharamYoungRho, mostEfficient, THICK_FROM_Q, THIN_TO_Q } from '../../server/optics/fringes/volume.ts';
import { angleFromNormal, type Vector } from '../../server/optics/vectors.ts';
import { between, centralDifference, expectNear, expectPrinted, integral, publishedIds, publishedValue } from './outside.ts';

const DEGREE = Math.PI / 180;
const [NM, UM] = [1e-9, 1e-6];
const RED = 632.8 * NM;
const N = 1.52;
const NORMAL: Vector = [0, 1, 0];
const front = (angle: number): Vector => [Math.sin(angle), Math.cos(angle), 0];
const behind = (angle: number): Vector => [Math.sin(angle), -Math.cos(angle), 0];

/**
 * Kogelnik's coupled equations c_R R′ = −iκS, c_S S′ = −iκR − iϑS through a layer, by Runge and Kutta's fourth order.
 * Light goes in at the front; a wave with c_S < 0 comes out there, so that the equations are followed from the back, where it is nothing.
 */
function integrated(kappa: number, lag: number, cr: number, cs: number, d: number): number {
  type State = readonly [number, number, number, number];
  const slope = ([r, ri, s, si]: State): State => [(kappa * si) / cr, (-kappa * s) / cr, (kappa * ri + lag * si) / cs, (-kappa * r - lag * s) / cs];
  const ahead = (y: State, k: State, h: number): State => y.map((v, i) => v + h * k[i]!) as unknown as State;
  const steps = 4000;
  const h = (cs > 0 ? d : -d) / steps;
  let y: State = [1, 0, 0, 0];
  for (let i = 0; i < steps; i++) {
    const a = slope(y);
    const b = slope(ahead(y, a, h / 2));
    const c = slope(ahead(y, b, h / 2));
    const e = slope(ahead(y, c, h));
    y = y.map((v, j) => v + (h / 6) * (a[j]! + 2 * b[j]! + 2 * c[j]! + e[j]!)) as unknown as State;
  }
  const sent = y[2] ** 2 + y[3] ** 2;
  return cs > 0 ? (sent * cs) / cr : (sent * -cs) / (cr * (y[0] ** 2 + y[1] ** 2));
}

/** Share reflected along the normal by a layer of index n + n₁ cos(2πfz) in a medium of index n: products of the matrices of thin films (Born & Wolf, 1.6). */
function filmStack(n: number, n1: number, f: number, d: number, wavelength: number): number {
  const slices = Math.ceil(d * f) * 40;
  let [a, b, c, e]: Complex[] = [complex(1, 0), complex(0, 0), complex(0, 0), complex(1, 0)] as [Complex, Complex, Complex, Complex];
  for (let i = 0; i < slices; i++) {
    const index = n + n1 * Math.cos((2 * Math.PI * f * d * (i + 0.5)) / slices);
    const phase = (2 * Math.PI * index * d) / slices / wavelength;
    const [cos, sin] = [Math.cos(phase), Math.sin(phase)];
    const times = (x: Complex, y: Complex, p: Complex, q: Complex): Complex => complex(x.re * p.re - x.im * p.im + y.re * q.re - y.im * q.im, x.re * p.im + x.im * p.re + y.re * q.im + y.im * q.re);
    const [m11, m12, m21] = [complex(cos, 0), complex(0, -sin / index), complex(0, -sin * index)];
    [a, b, c, e] = [times(a, b, m11, m21), times(a, b, m12, m11), times(c, e, m11, m21), times(c, e, m12, m11)];
  }
  const [front, back] = [multiply(add(a, multiply(b, n)), n) as Complex, add(c, multiply(e, n)) as Complex];
  const r = divide(add(front, multiply(back, -1)), add(front, back)) as Complex;
  return r.re ** 2 + r.im ** 2;
}

describe('thin or thick', () => {
  it('reproduces a published Q', () => {
    const value = publishedValue('Q-1');
    value.check(kleinCookQ(value.input('wavelength_um') * UM, value.input('n'), value.input('d_um') * UM, 1 / (value.input('Lambda_um') * UM)));
  });

  // 2πλd/(nΛ²), computed outside; 632.8 nm, 7 µm, n 1.52.
  it.each([[1.22248, '12.2523'], [0.868852, '24.2554'], [5, '0.7324']] as const)('fringes %f µm apart have Q %s', (period, printed) => expectPrinted(kleinCookQ(RED, N, 7 * UM, 1 / (period * UM)), printed));

  it('Q divided by the cosine of the Bragg angle', () => {
    expectPrinted(braggAngle(RED, N, 1 / (1.22248 * UM)) / DEGREE, '9.8038');
    expectPrinted(kleinCookQ(RED, N, 7 * UM, 1 / (1.22248 * UM)) / Math.cos(braggAngle(RED, N, 1 / (1.22248 * UM))), '12.4339');
  });

  it('coarse fringes are thin, those of two beams at 30° thick', () => {
    expect(kleinCookQ(RED, N, 7 * UM, 1 / (5 * UM))).toBeLessThan(THIN_TO_Q);
    expect(kleinCookQ(RED, N, 7 * UM, 1 / (1.22248 * UM))).toBeGreaterThan(THICK_FROM_Q);
  });

  it('ρ is Q divided by twice the phase that the layer adds', () => {
    // Both definitions: Q / (2πdn₁/λ) = λ²/(nn₁Λ²). By hand: 0.6328² / (1.22248² · 1.52 · 0.02) = 0.400436 / (1.494457 · 0.0304) = 8.8141.
    expectPrinted(moharamYoungRho(RED, N, 0.02, 1 / (1.22248 * UM)), '8.8141');
    fc.assert(fc.property(between(4e-7, 7e-7), between(1.3, 1.8), between(1e-6, 2e-5), between(1e-3, 0.1), between(1e5, 6e6), (lambda, n, d, n1, f) => {
      expectNear(moharamYoungRho(lambda, n, n1, f) / (kleinCookQ(lambda, n, d, f) / ((2 * Math.PI * d * n1) / lambda)), 1, 1e-12);
    }));
  });

  it('the Bragg angle of fringes is half the angle of the beams that made them', () => {
    // OpenStax University Physics vol. 3, 4.6: planes 0.252 nm apart, X-rays of 0.157 nm at 18.1°; here a thousandfold in size.
    expectNear(braggAngle(0.15658 * UM, 1, 1 / (0.252 * UM)) / DEGREE, 18.1, 0.005);
    fc.assert(fc.property(between(0.05, 1.2), between(0.05, 1.2), (a, b) => {
      const f = layerFrequency(RED, N, NORMAL, front(a), front(-b));
      expectNear(2 * braggAngle(RED, N, f), Math.asin(Math.sin(a) / N) + Math.asin(Math.sin(b) / N), 1e-9);
    }));
  });
});

describe('the most that a hologram can send into its image', () => {
  it.each([
    ['eta-thin-sinusoidal-amplitude', 'thin amplitude, sinusoidal'], ['eta-thin-square-amplitude', 'thin amplitude, square'],
    ['eta-thin-binary-phase', 'thin phase, square'], ['eta-volume-transmission-amplitude', 'volume amplitude, transmission'],
  ] as const)('%s', (id, type) => publishedValue(id).check(mostEfficient[type]));

  // In per cent: Blanche, Field Guide to Holography (SPIE, 2014), p. 24, "6.25"; a University of Florida dissertation, "33.9"; a doctoral
  // thesis, "3.7"; the others Collier, Burckhardt & Lin (1971) (from memory).
  it.each([
    ['thin amplitude, sinusoidal', '6.25'], ['thin amplitude, square', '10.13'], ['thin phase, sinusoidal', '33.9'], ['thin phase, sinusoidal', '33.857'], ['thin phase, square', '40.53'], ['thin phase, blazed', '100'],
    ['volume amplitude, transmission', '3.7037'], ['volume amplitude, transmission', '3.7'], ['volume amplitude, reflection', '7.1797'], ['volume amplitude, reflection', '7.2'], ['volume phase, transmission', '100'], ['volume phase, reflection', '100'],
  ] as const)('%s: %s %%', (type, printed) => expectPrinted(100 * mostEfficient[type], printed));

  it('of thin ones is the first order of their profile', () => {
    // |∫₀¹ t(x) e^(−2πix) dx|² over one fringe.
    const order = (re: (x: number) => number, im: (x: number) => number): number => {
      const [c, s] = [(x: number): number => Math.cos(2 * Math.PI * x), (x: number): number => Math.sin(2 * Math.PI * x)];
      return integral(x => re(x) * c(x) + im(x) * s(x), 0, 1, 20000) ** 2 + integral(x => im(x) * c(x) - re(x) * s(x), 0, 1, 20000) ** 2;
    };
    const none = (): number => 0;
    expectNear(order(x => 0.5 + 0.5 * Math.cos(2 * Math.PI * x), none), mostEfficient['thin amplitude, sinusoidal'], 1e-9);
    expectNear(order(x => (x < 0.5 ? 1 : 0), none), mostEfficient['thin amplitude, square'], 1e-4);
    expectNear(order(x => (x < 0.5 ? 1 : -1), none), mostEfficient['thin phase, square'], 1e-4);
    expectNear(order(x => Math.cos(2 * Math.PI * x), x => Math.sin(2 * Math.PI * x)), mostEfficient['thin phase, blazed'], 1e-9);
  });

  it('of a thin sinusoidal phase is the square of the highest value of J₁', () => {
    // Bessel's integral, J₁(x) = ∫₀¹ cos(πt − x sin πt) dt
    const j1 = (x: number): number => integral(t => Math.cos(Math.PI * t - x * Math.sin(Math.PI * t)), 0, 1, 100);
    let highest = 0;
    for (let x = 0; x < 6; x += 1e-3) highest = Math.max(highest, j1(x));
    expectNear(mostEfficient['thin phase, sinusoidal'], highest ** 2, 1e-6);
  });

  it('of absorbing volume holograms is the highest value of the closed forms', () => {
    // e^(−2x) sinh²(x/2) over x = αd/cos θ with α₁ = α has its maximum at ln 3; the reflection (2 + √3)⁻² is the limit of a thick layer, in which
    // R′ = −αR − (α/2)S, S′ = αS + (α/2)R, S grows as R falls: S/R = r solves r²/2 + 2r + 1/2 = 0 (Kogelnik, 1969, section on lossy reflection).
    let highest = 0;
    for (let x = 0.5; x < 2; x += 1e-5) highest = Math.max(highest, Math.exp(-2 * x) * Math.sinh(x / 2) ** 2);
    expectNear(mostEfficient['volume amplitude, transmission'], highest, 1e-10);
    const r = -2 + Math.sqrt(4 - 1);
    expectNear(r ** 2 / 2 + 2 * r + 0.5, 0, 1e-12);
    expectNear(mostEfficient['volume amplitude, reflection'], r ** 2, 1e-12);
  });
});

describe('efficiency', () => {
  it.each(publishedIds('kog-T-'))('reproduces %s', id => {
    const value = publishedValue(id);
    value.check(transmissionEfficiency(value.input('nu'), value.input('xi')));
  });
  it.each(publishedIds('kog-R-'))('reproduces %s', id => {
    const value = publishedValue(id);
    value.check(reflectionEfficiency(value.input('nu'), value.input('xi')));
  });

  // Closed forms and coupled equations, computed outside.
  it.each([[Math.PI / 4, 0, '0.500000'], [1, 0, '0.708073'], [Math.PI / 2, 0, '1.000000'], [Math.PI / 2, 1, '0.652905'], [1, 0.5, '0.646909'], [Math.PI / 2, 2.7207, '0.000000']] as const)(
    'in transmission, ν %f, ξ %f: %s', (nu, xi, printed) => expectPrinted(transmissionEfficiency(nu, xi), printed));
  it.each([[1, 0, '0.580026'], [Math.PI / 2, 0, '0.841168'], [2, 0, '0.929349'], [3, 0, '0.990134'], [2, 1, '0.909033'], [2, 3, '0.331184']] as const)(
    'in reflection, ν %f, ξ %f: %s', (nu, xi, printed) => expectPrinted(reflectionEfficiency(nu, xi), printed));

  it('is what the coupled equations give', () => {
    // In a layer of thickness 1 with cosines ±1: ν = κ, ξ = ϑ/2.
    fc.assert(fc.property(between(0.01, 4), between(-6, 6), (nu, xi) => {
      expectNear(transmissionEfficiency(nu, xi), integrated(nu, 2 * xi, 1, 1, 1), 1e-7);
      expectNear(reflectionEfficiency(nu, xi), integrated(nu, 2 * xi, 1, -1, 1), 1e-7);
    }), { numRuns: 60 });
  });

  it('in reflection goes smoothly from ξ below ν to above', () => {
    // At ξ = ν the root is 0 and η = ν²/(1 + ν²).
    for (const nu of [0.5, 1, 3]) for (const xi of [nu - 1e-9, nu, nu + 1e-9]) expectNear(reflectionEfficiency(nu, xi), nu ** 2 / (1 + nu ** 2), 1e-8);
  });

  it('without fringes is nothing, never above everything, the same for both signs of ξ', () => {
    fc.assert(fc.property(between(0, 2000), between(-2000, 2000), (nu, xi) => {
      for (const efficiency of [transmissionEfficiency, reflectionEfficiency]) {
        expect(efficiency(0, xi)).toBe(0);
        expect(efficiency(nu, xi)).toBe(efficiency(nu, -xi));
        expect(efficiency(nu, xi)).toBeGreaterThanOrEqual(0);
        expect(efficiency(nu, xi)).toBeLessThanOrEqual(1);
      }
    }));
  });
});

describe('layers', () => {
  // d in µm, n₁, λ in nm, angle inside in degrees; computed outside.
  it('on the Bragg angle', () => {
    const inside = 9.804 * DEGREE;
    const transmission = hologramStrength(RED, 7 * UM, 0.02, inside, -inside);
    expectPrinted(transmission, '0.70534');
    expectPrinted(transmissionEfficiency(transmission, 0), '0.42029');
    const reflection = hologramStrength(RED, 7 * UM, 0.02, 0, 0);
    expectPrinted(reflection, '0.69504');
    expectPrinted(reflectionEfficiency(reflection, 0), '0.36146');
    expectPrinted(reflectionEfficiency(hologramStrength(RED, 7 * UM, 0.03, 0, 0), 0), '0.60668');
    expectPrinted(reflectionEfficiency(hologramStrength(532 * NM, 10 * UM, 0.06, 0, 0), 0), '0.99666');
    // n₁ for all light
    expectNear(transmissionEfficiency(hologramStrength(RED, 7 * UM, 0.04454, inside, inside), 0), 1, 1e-6);
    expectNear(hologramStrength(RED, 7 * UM, 0.04454, inside, inside), Math.PI / 2, 2e-4);
  });

  it('reflect as a stack of thin films does, exactly', () => {
    for (const [d, n1, lambda] of [[7, 0.02, 632.8], [7, 0.03, 632.8], [10, 0.03, 532]] as const) {
      // whole fringes, as the stack starts and ends in the medium
      const f = opposedFrequency(lambda * NM, N);
      const thickness = Math.round(d * UM * f) / f;
      for (const shift of [0, 4, 9, 14]) {
        const replay = (lambda + shift) * NM;
        const fringes = layerFringes(lambda * NM, N, NORMAL, front(0), behind(0));
        const efficiency = layerEfficiency(replay, thickness, n1, meeting(replay, N, NORMAL, front(0), fringes));
        expectNear(efficiency, filmStack(N, n1, f, thickness, replay), 0.012, `${d} µm, ${n1}, ${lambda + shift} nm`);
      }
    }
  });

  const beams = fc.tuple(between(-75, 75), between(-75, 75), fc.boolean(), between(-4, 4), between(-8e-9, 8e-9)).filter(([a, b, reflects]) => reflects || Math.abs(a - b) > 10);
  it('lit anyhow give what the coupled equations do, with the dephasing K cos(φ − θ) − K²λ/4πn in angles', () => {
    fc.assert(fc.property(beams, between(2e-6, 15e-6), between(0.005, 0.06), ([a, b, reflects, off, shift], d, n1) => {
      const [one, other] = [front(a * DEGREE), reflects ? behind(b * DEGREE) : front(b * DEGREE)];
      const fringes = layerFringes(RED, N, NORMAL, one, other);
      const lambda = RED + shift;
      const lit = front((a + off) * DEGREE);
      const met = meeting(lambda, N, NORMAL, lit, fringes);
      // angles from the normal, in the plane of both beams
      const theta = Math.asin(Math.sin((a + off) * DEGREE) / N);
      const [K, phi] = [2 * Math.PI * Math.hypot(...fringes), Math.atan2(fringes[0], fringes[1])];
      const lag = K * Math.cos(phi - theta) - (K ** 2 * lambda) / (4 * Math.PI * N);
      const leaving = Math.cos(theta) - ((K * lambda) / (2 * Math.PI * N)) * Math.cos(phi);
      expectNear(met.dephasing, lag, 1);
      expectNear(met.leaving, leaving, 1e-9);
      expect(met.leaving > 0).toBe(!reflects);
      expectNear(layerEfficiency(lambda, d, n1, met), integrated((Math.PI * n1) / lambda, lag, Math.cos(theta), leaving, d), 1e-5);
    }), { numRuns: 60 });
  });

  it('sends light of the one beam along the other, on the Bragg condition, and back again alike', () => {
    fc.assert(fc.property(beams, ([a, b, reflects]) => {
      const [one, other] = [front(a * DEGREE), reflects ? behind(b * DEGREE) : front(b * DEGREE)];
      const there = meeting(RED, N, NORMAL, one, layerFringes(RED, N, NORMAL, one, other));
      const back = meeting(RED, N, NORMAL, other, layerFringes(RED, N, NORMAL, other, one));
      expectNear(there.dephasing, 0, 1e-3);
      expectNear(Math.abs(there.leaving), Math.cos(angleFromNormal(NORMAL, refractedDirection(other, NORMAL, N))), 1e-9);
      expectNear(layerEfficiency(RED, 7e-6, 0.02, there), layerEfficiency(RED, 7e-6, 0.02, back), 1e-9);
    }));
  });

  const towards = fc.tuple(between(-1, 1), between(-Math.PI, Math.PI)).map(([z, a]): Vector => [Math.sqrt(1 - z * z) * Math.cos(a), Math.sqrt(1 - z * z) * Math.sin(a), z]);
  it('nothing changes when everything is turned, or the normal points the other way', () => {
    fc.assert(fc.property(beams, towards, between(-3, 3), fc.constantFrom(1, -1), ([a, b, reflects, off], [x, y, z], angle, sign) => {
      // Rodrigues' formula
      const [c, s] = [Math.cos(angle), Math.sin(angle)];
      const turned = (v: Vector): Vector => {
        const k = (x * v[0] + y * v[1] + z * v[2]) * (1 - c);
        return [v[0] * c + (y * v[2] - z * v[1]) * s + x * k, v[1] * c + (z * v[0] - x * v[2]) * s + y * k, v[2] * c + (x * v[1] - y * v[0]) * s + z * k];
      };
      const [one, other, lit] = [front(a * DEGREE), reflects ? behind(b * DEGREE) : front(b * DEGREE), front((a + off) * DEGREE)];
      const met = meeting(RED, N, NORMAL, lit, layerFringes(RED, N, NORMAL, one, other));
      const normal = turned([0, sign, 0]);
      const after = meeting(RED, N, normal, turned(lit), layerFringes(RED, N, normal, turned(one), turned(other)));
      expectNear(after.dephasing, met.dephasing, 1e-3);
      expectNear(after.arriving, met.arriving, 1e-9);
      expectNear(after.leaving, met.leaving, 1e-9);
      expectNear(layerEfficiency(RED, 7e-6, 0.02, after), layerEfficiency(RED, 7e-6, 0.02, met), 1e-6);
    }));
  });

  it('sends nothing along the layer, and nothing without fringes', () => {
    expect(layerEfficiency(RED, 7e-6, 0.02, { dephasing: 0, arriving: 1, leaving: 0 })).toBe(0);
    expect(layerEfficiency(RED, 7e-6, 0.02, { dephasing: 0, arriving: 0, leaving: 1 })).toBe(0);
    expect(transmissionEfficiency(0, 0)).toBe(0);
    expect(reflectionEfficiency(0, 0)).toBe(0);
  });
});

describe('by angle', () => {
  it('a hologram at full strength goes dark at ξ = π√3/2', () => expectPrinted(departureToDark(Math.PI / 2), '2.72070'));

  it('goes dark where the efficiency is nothing for the first time', () => {
    fc.assert(fc.property(between(0.1, 6), nu => {
      const zero = departureToDark(nu);
      expectNear(transmissionEfficiency(nu, zero), 0, 1e-20);
      if (nu < 3) for (let i = 1; i < 20; i++) expect(transmissionEfficiency(nu, (zero * i) / 20)).toBeGreaterThan(0);
    }));
  });

  // d and Λ in µm; inside and in air, degrees; ν = π/2, n 1.52, 632.8 nm, computed outside. In air: from the Bragg angle to it and the selectivity.
  it.each([[7, 1.2225, '8.666', '13.79'], [20, 1, '2.481', '3.917']] as const)('%f µm with fringes %f µm apart: %s° inside, %s° in air', (d, period, inside, air) => {
    const f = 1 / (period * UM);
    const bragg = braggAngle(RED, N, f);
    const turned = angularSelectivity(RED, N, d * UM, f, Math.PI / 2, bragg);
    expectPrinted(turned / DEGREE, inside);
    expectPrinted((Math.asin(N * Math.sin(bragg + turned)) - Math.asin(N * Math.sin(bragg))) / DEGREE, air);
  });

  it('is the slope of the dephasing', () => {
    fc.assert(fc.property(between(-60, 60), between(-60, 60), (a, b) => {
      fc.pre(Math.abs(a - b) > 10);
      const fringes = layerFringes(RED, N, NORMAL, front(a * DEGREE), front(b * DEGREE));
      const [theta, leaving] = [a, b].map(angle => Math.asin(Math.sin(angle * DEGREE) / N)) as [number, number];
      // dϑ/dθ inside, by differences; ξ = ϑd/2c_S
      const slope = centralDifference(inside => meeting(RED, N, NORMAL, front(Math.asin(N * Math.sin(inside))), fringes).dephasing, theta, 1e-4);
      const d = 50e-6;
      expectNear((angularSelectivity(RED, N, d, Math.hypot(...fringes), 1, leaving) * Math.abs(slope) * d) / (2 * Math.cos(leaving)) / departureToDark(1), 1, 1e-6);
    }));
  });
});

describe('by colour', () => {
  const width = (lambda: number, d: number, n1: number): number => reflectionBandwidth(N, d * UM, opposedFrequency(lambda * NM, N), hologramStrength(lambda * NM, d * UM, n1, 0, 0), 0) / NM;

  // λ in nm, d in µm, n₁; full width at half of the best, nm; computed outside from the closed form. Weak: 0.4429 λ²/(nd).
  it.each([[632.8, 7, 0, '16.67'], [632.8, 7, 0.02, '19.51'], [632.8, 7, 0.03, '22.68'], [532, 10, 0.03, '15.32'], [532, 20, 0.03, '12.68']] as const)('%f nm, %f µm, %f: %s nm', (lambda, d, n1, printed) => expectPrinted(width(lambda, d, n1), printed));

  it('is the width at half height of a stack of thin films', () => {
    const f = opposedFrequency(RED, N);
    const d = Math.round(7e-6 * f) / f;
    for (const n1 of [0.02, 0.03]) {
      const half = filmStack(N, n1, f, d, RED) / 2;
      const edge = (sign: number): number => {
        let [near, far] = [0, 20];
        for (let i = 0; i < 20; i++) {
          const middle = (near + far) / 2;
          if (filmStack(N, n1, f, d, RED + sign * middle * NM) > half) near = middle;
          else far = middle;
        }
        return near;
      };
      expectNear(reflectionBandwidth(N, d, f, hologramStrength(RED, d, n1, 0, 0), 0) / NM / (edge(1) + edge(-1)), 1, 0.01);
    }
  });

  it('of slanted fringes is that of the dephasing', () => {
    fc.assert(fc.property(between(-60, 60), between(-60, 60), between(0, 3), (a, b, strength) => {
      const fringes = layerFringes(RED, N, NORMAL, front(a * DEGREE), behind(b * DEGREE));
      const leaving = Math.asin(Math.sin(b * DEGREE) / N);
      const d = 100e-6;
      const band = reflectionBandwidth(N, d, Math.hypot(...fringes), strength, leaving);
      const slope = centralDifference(lambda => meeting(lambda, N, NORMAL, front(a * DEGREE), fringes).dephasing, RED, 1e-9);
      const departure = (Math.abs(slope) * (band / 2) * d) / (2 * Math.cos(leaving));
      if (strength > 0.01) expectNear(reflectionEfficiency(strength, departure) / reflectionEfficiency(strength, 0), 0.5, 1e-5);
    }));
  });

  it('narrows as the layer thickens, widens with strength', () => {
    fc.assert(fc.property(between(2, 50), between(0, 0.05), (d, n1) => {
      expect(width(600, d * 1.1, n1)).toBeLessThan(width(600, d, n1));
      expect(width(600, d, n1 + 0.01)).toBeGreaterThan(width(600, d, n1));
    }));
  });
});

it('numbers outside all domains give finite results', () => {
  const any = fc.oneof(fc.double(), fc.constantFrom(0, -0, 1, 1e-300, 1e300, Infinity, -Infinity, NaN));
  const wild = fc.oneof(fc.tuple(any, any, any), fc.constant(front(0.3)));
  fc.assert(fc.property(fc.array(any, { minLength: 6, maxLength: 6 }), wild, wild, wild, ([a, b, c, d, e, g], n, u, f) => {
    const met = meeting(a!, b!, n, u, f);
    const all = [
      kleinCookQ(a!, b!, c!, d!), moharamYoungRho(a!, b!, c!, d!), braggAngle(a!, b!, c!), hologramStrength(a!, b!, c!, d!, e!), transmissionEfficiency(a!, b!), reflectionEfficiency(a!, b!), ...Object.values(met) as number[],
      layerEfficiency(a!, b!, c!, met), layerEfficiency(a!, b!, c!, { dephasing: d!, arriving: e!, leaving: g! }), departureToDark(a!), angularSelectivity(a!, b!, c!, d!, e!, g!), reflectionBandwidth(a!, b!, c!, d!, e!),
    ];
    expect(all.every(Number.isFinite), JSON.stringify(all)).toBe(true);
  }), { numRuns: 1000 });
});
