/** Movement against quadrature, paths traced from point to point, and published examples. */
import { beforeAll, describe, expect, it } from 'vitest';
import * as cephes from 'cephes';
import fc from 'fast-check';
import { roomAir } from '../../server/optics/air.ts';
import { driftContrast } from '../../server/optics/drift.ts';
import { plateFringes, plateFrequency } from '../../server/optics/fringes/spacing.ts';
import { jumpContrast, movementContrast, vibrationContrast } from '../../server/optics/movement/contrast.ts';
import { allowedMirrorMovement, allowedMovement, allowedPlateSlide, ANY_MOVEMENT, beamWalk, glassTurnSlope, mirrorPathChange, pathGradient, turnGradient } from '../../server/optics/movement/delicacy.ts';
import { airPathChange, airSlopes, expansion, laserDriftFringes, warmingFor } from '../../server/optics/movement/heat.ts';
import { thermalExpansion } from '../../server/optics/movement/materials.ts';
import { recordedBrightness } from '../../server/optics/visibility.ts';
import { unit, type Vector } from '../../server/optics/vectors.ts';
import { between, centralDifference, expectNear, expectPrinted, integral, publishedIds, publishedValue } from './outside.ts';

const DEGREE = Math.PI / 180;
const NM = 1e-9;
const RED = 632.8 * NM;

const towards = fc.tuple(between(-1, 1), between(-Math.PI, Math.PI)).map(([z, a]): Vector => [Math.sqrt(1 - z * z) * Math.cos(a), Math.sqrt(1 - z * z) * Math.sin(a), z]);
const plus = (a: Vector, b: Vector, times = 1): Vector => [a[0] + times * b[0], a[1] + times * b[1], a[2] + times * b[2]];
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const far = (a: Vector, b: Vector): number => Math.hypot(...plus(b, a, -1));
const reflected = (v: Vector, n: Vector): Vector => plus(v, n, -2 * dot(v, n));
/** A point turned about an axis of length 1 through the origin (Rodrigues' formula). */
function turned(v: Vector, [x, y, z]: Vector, angle: number): Vector {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const k = (x * v[0] + y * v[1] + z * v[2]) * (1 - c);
  return [v[0] * c + (y * v[2] - z * v[1]) * s + x * k, v[1] * c + (z * v[0] - x * v[2]) * s + y * k, v[2] * c + (x * v[1] - y * v[0]) * s + z * k];
}
/** |∫₀¹ e^(i2πm(t)) dt| */
const mean = (m: (t: number) => number): number => Math.hypot(...[Math.cos, Math.sin].map(f => integral(t => f(2 * Math.PI * m(t)), 0, 1, 2000)) as [number, number]);

beforeAll(async () => { await cephes.compiled; });

describe('vibration', () => {
  it.each(publishedIds('vib-'))('reproduces %s', id => {
    const value = publishedValue(id);
    value.check(vibrationContrast(value.input('A_waves_zero_to_peak')));
  });

  // |J₀(2πA)|, computed outside by closed form and quadrature; the last is the first zero, 2.404826/2π.
  it.each([[1 / 40, '0.993841'], [1 / 20, '0.975478'], [1 / 10, '0.903713'], [1 / 8, '0.851632'], [1 / 4, '0.472001'], [0.38274, '0.000000']] as const)('of %f fringes leaves %s', (amplitude, printed) => expectNear(vibrationContrast(amplitude), Number(printed), amplitude === 0.38274 ? 2e-6 : 5e-7));

  it('is the mean of a swinging phase, and what cephes says', () => {
    fc.assert(fc.property(between(-3, 3), amplitude => {
      expectNear(vibrationContrast(amplitude), mean(t => amplitude * Math.sin(2 * Math.PI * t)), 1e-9);
      expectNear(vibrationContrast(amplitude), Math.abs(cephes.j0(2 * Math.PI * amplitude)), 1e-12);
    }));
  });
});

describe('one jump', () => {
  // |cos πm| in the middle of the exposure, computed outside.
  it.each([[1 / 10, '0.95106'], [1 / 4, '0.70711'], [1 / 2, '0.00000']] as const)('of %f fringes leaves %s', (jump, printed) => expectPrinted(jumpContrast(jump), printed));

  it('is the mean of two phases, and worst in the middle', () => {
    fc.assert(fc.property(between(-3, 3), between(0, 1), (jump, before) => {
      const [re, im] = [before + (1 - before) * Math.cos(2 * Math.PI * jump), (1 - before) * Math.sin(2 * Math.PI * jump)];
      expectNear(jumpContrast(jump, before), Math.hypot(re, im), 1e-7);
      expect(jumpContrast(jump, before)).toBeGreaterThanOrEqual(jumpContrast(jump) - 1e-12);
    }));
  });
});

describe('a movement that was followed', () => {
  it('evenly is a drift: contrast and brightness', () => {
    // Computed outside by quadrature: a tenth of a fringe leaves 0.983632, of the brightness 0.967531.
    expectPrinted(movementContrast([0, 20], [3.2, 3.3]), '0.983632');
    expectPrinted(recordedBrightness(movementContrast([0, 20], [3.2, 3.3])), '0.967531');
    fc.assert(fc.property(between(-4, 4), between(-4, 4), (from, to) => expectNear(movementContrast([1, 2, 5], [from, from + (to - from) / 4, to]), driftContrast(to - from), 1e-9)));
  });

  it('to and fro is a vibration, up and then still is a jump', () => {
    const times = Array.from({ length: 2001 }, (_, i) => i / 2000);
    expectNear(movementContrast(times, times.map(t => 0.3 * Math.sin(20 * Math.PI * t))), vibrationContrast(0.3), 1e-3);
    expectNear(movementContrast([0, 3, 3, 10], [0, 0, 0.3, 0.3]), jumpContrast(0.3, 0.3), 1e-12);
  });

  it('anyhow is the mean of its phase', () => {
    fc.assert(fc.property(fc.array(between(-0.5, 0.5), { minLength: 3, maxLength: 3 }), ([a, b, c]) => {
      const movement = (t: number): number => a! * t + b! * Math.sin(7 * t) + c! * t ** 2;
      const times = Array.from({ length: 400 }, (_, i) => (i / 399) ** 1.5);
      expectNear(movementContrast(times, times.map(movement)), mean(movement), 2e-4);
    }), { numRuns: 30 });
  });

  it('does not care where it starts, in which unit time is, or which way it goes', () => {
    fc.assert(fc.property(fc.array(between(-2, 2), { minLength: 2, maxLength: 9 }), between(-5, 5), (moved, start) => {
      const times = moved.map((_, i) => i * i);
      const contrast = movementContrast(times, moved);
      expectNear(movementContrast(times.map(t => 60 * t), moved.map(m => start - m)), contrast, 1e-9);
    }));
  });

  it('of which there is nothing to tell leaves all', () => {
    expect(movementContrast([], [])).toBe(1);
    expect(movementContrast([1], [5])).toBe(1);
    expect(movementContrast([1, 1], [0, 0.5])).toBe(1);
  });

  it('leaves out samples without a partner', () => {
    expect(movementContrast([0, 1, 2, 3], [0, 0.3])).toBe(movementContrast([0, 1], [0, 0.3]));
    expect(movementContrast([0, 1], [0, 0.3, 7])).toBe(movementContrast([0, 1], [0, 0.3]));
  });
});

describe('a mirror', () => {
  // λ/10 and λ/4 of path at 632.8 nm, in nm along the normal; λ/10 / (2 cos θ), computed outside.
  it.each([[0, '31.640', '79.10'], [22.5, '34.247', '85.62'], [45, '44.746', '111.86']] as const)('at %f° may move by %s nm for a tenth, %s nm for a quarter', (angle, tenth, quarter) => {
    expectPrinted(allowedMirrorMovement(RED, angle * DEGREE) / NM, tenth);
    expectPrinted((2.5 * allowedMirrorMovement(RED, angle * DEGREE)) / NM, quarter);
  });

  it('moved for a number of fringes', () => {
    const value = publishedValue('michelson-8');
    const fringe = (wavelength: number): number => wavelength / mirrorPathChange(0);
    value.check(value.input('m') * fringe(value.input('wavelength_nm') * NM));
    // OpenStax University Physics vol. 3, 3.5: 251 fringes at 589 nm are 73.9 µm, 27 at 632.8 nm 8.5 µm, 1500 at 606 nm 0.455 mm, one at 630 nm 315 nm.
    expectPrinted(251 * fringe(589 * NM) * 1e6, '73.9');
    expectPrinted(27 * fringe(RED) * 1e6, '8.5');
    expectPrinted(1500 * fringe(606 * NM) * 1e3, '0.455');
    expectPrinted(fringe(630 * NM) / NM, '315');
  });

  /** Path by way of a mirror through `at`: as far as the mirror image of the start. */
  const path = (start: Vector, end: Vector, at: Vector, normal: Vector): number => far(plus(start, normal, 2 * dot(plus(at, start, -1), normal)), end);
  const bench = fc.tuple(towards, towards, between(0.2, 2), between(0.2, 2)).filter(([n, u]) => Math.abs(dot(n, u)) > 0.1);

  it('changes the path that is traced by its image', () => {
    fc.assert(fc.property(bench, towards, ([normal, arriving, before, behind], move) => {
      const leaving = reflected(arriving, normal);
      const [start, end] = [plus([0, 0, 0], arriving, -before), plus([0, 0, 0], leaving, behind)];
      const gradient = pathGradient(arriving, leaving);
      expectNear(dot(gradient, move), centralDifference(d => path(start, end, plus([0, 0, 0], move, d), normal), 0, 1e-3), 1e-8);
      expectNear(Math.hypot(...gradient), mirrorPathChange(Math.acos(Math.abs(dot(arriving, normal)))), 1e-7);
      expectNear(Math.hypot(...gradient), Math.abs(dot(gradient, normal)), 1e-9);
    }));
  });

  it('that turns about a point beside the beam changes it too, about the beam in second order only', () => {
    fc.assert(fc.property(bench, towards, towards, between(0, 0.05), ([normal, arriving, before, behind], axis, aside, offset) => {
      const leaving = reflected(arriving, normal);
      const [start, end] = [plus([0, 0, 0], arriving, -before), plus([0, 0, 0], leaving, behind)];
      const pivot = plus([0, 0, 0], aside, -offset);
      const tilted = (angle: number): number => path(start, end, plus(pivot, turned(plus([0, 0, 0], pivot, -1), axis, angle)), turned(normal, axis, angle));
      const fromPivot = plus([0, 0, 0], pivot, -1);
      expectNear(dot(turnGradient(pathGradient(arriving, leaving), fromPivot), axis), centralDifference(tilted, 0, 1e-3), 1e-7);
      expectNear(Math.hypot(...turnGradient(pathGradient(arriving, leaving), [0, 0, 0])), 0, 1e-12);
    }));
  });

  it('that tilts makes the beam walk', () => {
    // By hand: 10 µrad at 1.5 m make 2 · 1.5 m · 10⁻⁵ = 30 µm.
    expectNear(beamWalk(1.5, 1e-5), 30e-6, 1e-15);
    fc.assert(fc.property(between(-80, 80), between(0.1, 3), between(-1e-4, 1e-4), (angle, distance, tilt) => {
      const [arriving, normal]: [Vector, Vector] = [[Math.sin(angle * DEGREE), Math.cos(angle * DEGREE), 0], [0, -1, 0]];
      const lands = (t: number): Vector => plus([0, 0, 0], reflected(arriving, turned(normal, [0, 0, 1], t)), distance);
      expectNear(far(lands(0), lands(tilt)), Math.abs(beamWalk(distance, tilt)), 1e-8);
    }));
  });
});

describe('other things', () => {
  const bench = fc.tuple(towards, towards, between(0.2, 2), between(0.2, 2));

  it('a point of an object changes the way there and the way on', () => {
    fc.assert(fc.property(bench, towards, ([arriving, leaving, before, behind], move) => {
      const [start, end] = [plus([0, 0, 0], arriving, -before), plus([0, 0, 0], leaving, behind)];
      const path = (d: number): number => far(start, plus([0, 0, 0], move, d)) + far(plus([0, 0, 0], move, d), end);
      expectNear(dot(pathGradient(arriving, leaving), move), centralDifference(path, 0, 1e-3), 1e-8);
      expect(Math.hypot(...pathGradient(arriving, leaving))).toBeLessThanOrEqual(2 + 1e-12);
    }));
    // straight back: twice
    expect(pathGradient([1, 0, 0], [-3, 0, 0])).toEqual([2, 0, 0]);
  });

  it('a splitter that lets the light through changes nothing', () => expect(pathGradient([0, 2, 0], [0, 1, 0])).toEqual([0, 0, 0]));

  it('a lens in plane-parallel light: the shortest way through a thin lens, by trial', () => {
    fc.assert(fc.property(between(0.05, 0.3), between(-0.02, 0.02), between(0.3, 2), (focus, height, distance) => {
      // Two dimensions: light along x, lens across y; it delays by −h²/2f (paraxial). A ray at `height` goes through the focus.
      const end: Vector = [distance, height * (1 - distance / focus), 0];
      const path = (aside: number): number => {
        const through = (y: number): number => -((y - aside) ** 2) / (2 * focus) + (end[1] - y) ** 2 / (2 * distance);
        // the way through is stationary: by the slope of both terms
        const y = (aside / focus - end[1] / distance) / (1 / focus - 1 / distance);
        return through(y);
      };
      fc.pre(Math.abs(1 / focus - 1 / distance) > 0.2);
      const leaving: Vector = [1, -height / focus, 0];
      // paraxial: the slope of the ray stands for its sine
      expectNear(Math.tan(Math.asin(pathGradient([1, 0, 0], leaving)[1])), centralDifference(path, 0, 1e-4), 1e-9);
    }));
  });

  it('a pinhole counts towards the edges of the plate only', () => {
    fc.assert(fc.property(between(-0.1, 0.1), between(0.5, 2), (edge, distance) => {
      const sideways: Vector = [1, 0, 0];
      const path = (d: number): number => far([d, 0, 0], [edge, distance, 0]);
      expectNear(dot(pathGradient([0, 1, 0], unit([edge, distance, 0])), sideways), centralDifference(path, 0, 1e-3), 1e-9);
    }));
    expectNear(dot(pathGradient([0, 1, 0], [0, 1, 0]), [1, 0, 0]), 0, 0);
  });

  it('a flat glass turned about itself', () => {
    // Path between two planes across the beam: n t / cos r inside, and t cos(θ − r) / cos r less in air.
    const path = (n: number, t: number, angle: number): number => {
      const inside = Math.asin(Math.sin(angle) / n);
      return (n * t) / Math.cos(inside) - (t * Math.cos(angle - inside)) / Math.cos(inside);
    };
    fc.assert(fc.property(between(1.3, 1.8), between(1e-3, 1e-2), between(-1.2, 1.2), (n, t, angle) => {
      expectNear(glassTurnSlope(n, t, angle), centralDifference(a => path(n, t, a), angle, 1e-3), 1e-11);
    }));
    expect(glassTurnSlope(1.5, 3e-3, 0)).toBe(0);
    // no glass at all, along which sin² is exactly 1
    expect(glassTurnSlope(1, 3e-3, Math.PI / 2)).toBe(0);
  });
});

describe('a plate', () => {
  const [reference, object]: [Vector, Vector] = [[Math.SQRT1_2, Math.SQRT1_2, 0], [0, 1, 0]];

  it('of a 45° set-up slides by 89.5 nm for a tenth of a fringe', () => {
    // 0.1 / 1117.43 per mm, computed outside.
    expectPrinted(allowedPlateSlide(plateFrequency(RED, 0, 45 * DEGREE)) / NM, '89.5');
    expectPrinted(allowedMovement(RED, pathGradient(object, reference), [1, 0, 0]) / NM, '89.5');
  });

  it('of a 45° reflection set-up moves along its normal by 37.1 nm', () => {
    // 0.1 λ / (1 + cos 45°), computed outside.
    expectPrinted(allowedMovement(RED, pathGradient([0, -1, 0], reference), [0, 1, 0]) / NM, '37.1');
  });

  it('moves against both paths', () => {
    fc.assert(fc.property(towards, towards, towards, towards, between(0.5, 2), between(0.5, 2), (normal, one, other, move, a, b) => {
      const [from, also] = [plus([0, 0, 0], one, -a), plus([0, 0, 0], other, -b)];
      const difference = (d: number): number => far(from, plus([0, 0, 0], move, d)) - far(also, plus([0, 0, 0], move, d));
      const gradient = pathGradient(one, other);
      expectNear(dot(gradient, move), centralDifference(difference, 0, 1e-3), 1e-8);
      // in its plane by the fringes on it
      const along = plus(move, normal, -dot(move, normal));
      expectNear(dot(gradient, along) / RED, dot(plateFringes(RED, normal, one, other), along), 1e-3);
    }));
  });
});

describe('the movement for a tenth of a fringe', () => {
  it('is least along the gradient, and any at right angles to it', () => {
    fc.assert(fc.property(towards, towards, towards, (a, b, along) => {
      const gradient = pathGradient(a, b);
      fc.pre(Math.hypot(...gradient) > 0.01);
      expectNear(allowedMovement(RED, gradient, gradient) / allowedMovement(RED, gradient), 1, 1e-12);
      expectNear((Math.hypot(...gradient) * allowedMovement(RED, gradient)) / RED, 0.1, 1e-12);
      expect(allowedMovement(RED, gradient, along)).toBeGreaterThanOrEqual(allowedMovement(RED, gradient) * (1 - 1e-12));
    }));
    expect(allowedMovement(RED, pathGradient([1, 0, 0], [-1, 0, 0]), [0, 1, 0])).toBe(ANY_MOVEMENT);
  });

  it('nothing changes when everything is turned; it is twice as much for twice the wavelength', () => {
    fc.assert(fc.property(towards, towards, towards, towards, between(-3, 3), (a, b, along, axis, angle) => {
      const [A, B, C] = [a, b, along].map(v => turned(v, axis, angle)) as [Vector, Vector, Vector];
      fc.pre(Math.abs(dot(pathGradient(a, b), along)) > 1e-3);
      const plain = allowedMovement(RED, pathGradient(a, b), along);
      expectNear(allowedMovement(RED, pathGradient(A, B), C) / plain, 1, 1e-9);
      expectNear(allowedMovement(2 * RED, pathGradient(a, b), along) / plain, 2, 1e-9);
    }));
  });
});

describe('heat', () => {
  it('one fringe of an aluminium rod', () => {
    const value = publishedValue('al-rod');
    value.check(warmingFor((value.input('wavelength_nm') * NM) / mirrorPathChange(0), value.input('alpha_per_K'), value.input('L_m')));
    expectPrinted(warmingFor(RED / 2, 25e-6, 1), '0.012656');
  });

  // Per metre: growth by 0.01 K in nm; warming for λ/10 of growth at 632.8 nm in mK; computed outside.
  it.each([['aluminium', '236', '2.68'], ['steel', '117', '5.41'], ['stainless steel', '173', '3.66'], ['granite', '79', '8.01'], ['invar', '12', '52.7']] as const)('%s: %s nm, %s mK', (material, growth, warming) => {
    const { usual } = thermalExpansion[material];
    expectPrinted(expansion(usual, 1, 0.01) / NM, growth);
    expectPrinted(warmingFor(RED / 10, usual, 1) * 1e3, warming);
  });

  // 10⁻⁶/K: Callister, appendix B; OpenStax University Physics vol. 2, table 1.2; encyclopaedia and engineering tables.
  it.each([
    ['aluminium', [23.1, 23.6, 25]], ['steel', [10.8, 11.7, 12, 13]], ['stainless steel', [17.3]], ['cast iron', [10.8]], ['brass', [19]], ['granite', [5, 7.9, 9]], ['concrete', [9.8, 14.5]],
    ['plate glass', [9]], ['borosilicate crown', [7.1]], ['borosilicate glass', [3.3]], ['fused silica', [0.5, 0.59]], ['invar', [0.9, 1.6]], ['super invar', [0.72]],
    ['wood along the grain', [3.5]], ['wood across the grain', [27, 54]], ['acrylic', [70, 75]],
  ] as const)('%s has what the tables give', (material, values) => {
    const { usual, band } = thermalExpansion[material];
    expectNear(band.from * 1e6, Math.min(...values), 1e-9);
    expectNear(band.to * 1e6, Math.max(...values), 1e-9);
    expect(usual).toBeGreaterThanOrEqual(band.from);
    expect(usual).toBeLessThanOrEqual(band.to);
  });

  it('growth and warming undo each other', () => {
    fc.assert(fc.property(between(1e-7, 1e-4), between(0.01, 3), between(0, 10), (coefficient, length, warming) => expectNear(warmingFor(expansion(coefficient, length, warming), coefficient, length), warming, 1e-9)));
  });
});

describe('air', () => {
  const vacuum = 633 * NM;

  it('in a room has the published slopes', () => {
    // Ciddor at 20 °C, 101.325 kPa, 50 %, 633 nm, computed outside: −9.548e-7 per K, +2.683e-6 per kPa, −8.5e-9 per %.
    const slopes = airSlopes(vacuum, roomAir);
    expectPrinted(slopes.temperature * 1e7, '-9.548');
    expectPrinted(slopes.pressure * 1e3 * 1e6, '2.683');
    expectPrinted((slopes.relativeHumidity / 100) * 1e9, '-8.5');
    // dry: −0.93e-6 per K
    expectPrinted(airSlopes(vacuum, { ...roomAir, relativeHumidity: 0 }).temperature * 1e6, '-0.93');
  });

  it('changes the path of what one arm is longer', () => {
    // Computed outside, per metre: 0.1 K makes −95.5 nm, −0.151 λ; λ/10 takes 0.066 K; 1 hPa makes 268 nm.
    const warmer = airPathChange(vacuum, 1, roomAir, { ...roomAir, temperature: roomAir.temperature + 0.1 });
    expectPrinted(warmer / NM, '-95.5');
    expectPrinted(warmer / RED, '-0.151');
    expectPrinted(-RED / 10 / airSlopes(vacuum, roomAir).temperature, '0.066');
    expectPrinted(airPathChange(vacuum, 1, roomAir, { ...roomAir, pressure: roomAir.pressure + 100 }) / NM, '268');
    expectNear(airPathChange(vacuum, -0.3, roomAir, { ...roomAir, pressure: roomAir.pressure + 100 }) / airPathChange(vacuum, 1, roomAir, { ...roomAir, pressure: roomAir.pressure + 100 }), -0.3, 1e-12);
  });

  it('pumped out of a cell of 50.8 mm makes 47 fringes', () => {
    // OpenStax University Physics vol. 3, 3.5: 633 nm, n 1.000293, light there and back. That index is of air at 0 °C, 1 atm (table 1.1, 589 nm). The index
    // at 0 °C is the published one by the proportion of pressures, which our air between 60 and 120 kPa has to keep for a cell half emptied.
    const cold = { ...roomAir, temperature: 273.15, relativeHumidity: 0 };
    const perPascal = airPathChange(vacuum, 2 * 0.0508, { ...cold, pressure: 60e3 }, { ...cold, pressure: 101_325 }) / (101_325 - 60e3);
    expectNear((perPascal * 101_325) / vacuum, 47, 0.5);
  });
});

it('a laser that drifts by 100 MHz passes a tenth of a fringe for each 0.3 m of mismatch', () => {
  // Computed outside: 100 MHz · 0.3 m / c = 0.10007.
  expectPrinted(laserDriftFringes(100e6, 0.3), '0.10007');
  expect(laserDriftFringes(100e6, 0)).toBe(0);
  expect(laserDriftFringes(-100e6, 0.3)).toBe(laserDriftFringes(100e6, -0.3));
});

it('numbers outside all domains give finite results', () => {
  const any = fc.oneof(fc.double(), fc.constantFrom(0, -0, 1, 1e-300, 1e300, Infinity, -Infinity, NaN));
  const wild = fc.tuple(any, any, any);
  fc.assert(fc.property(any, any, any, any, wild, wild, (a, b, c, d, u, v) => {
    const air = { temperature: a, pressure: b, relativeHumidity: c, carbonDioxide: d };
    const all = [
      vibrationContrast(a), jumpContrast(a, b), movementContrast(u, v), ...pathGradient(u, v), ...turnGradient(u, v), allowedMovement(a, u), allowedMovement(a, u, v), mirrorPathChange(a), allowedMirrorMovement(a, b), allowedPlateSlide(a), beamWalk(a, b), glassTurnSlope(a, b, c),
      expansion(a, b, c), warmingFor(a, b, c), airPathChange(a, b, air, roomAir), ...Object.values(airSlopes(a, air)), laserDriftFringes(a, b),
    ];
    expect(all.every(Number.isFinite), JSON.stringify(all)).toBe(true);
  }), { numRuns: 1000 });
});
