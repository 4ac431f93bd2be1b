/** Light of beams on planes: the power is kept at any tilt; a hand-worked layout; symmetry and units. */
import fc from 'fast-check';
import { describe, it } from 'vitest';
import { beamFromHalfAngle, beamFromRadius, carried, offFocalMirror, throughLens, toFocus, type Beam } from '../../server/optics/beams/beam.ts';
import { lightOnPlane, lightOverPlane, rayAt } from '../../server/optics/beams/spread.ts';
import { angleBetween, type Vector } from '../../server/optics/vectors.ts';
import { between, expectNear, expectPrinted, integral } from './outside.ts';

const [MM, RED, DEGREE] = [1e-3, 632.8e-9, Math.PI / 180];
const X: Vector = [1, 0, 0];
const ORIGIN: Vector = [0, 0, 0];
const axis = { from: ORIGIN, along: X };

/** The light summed over a plane through (distance, 0, 0), tilted from square by one angle about z and then by one about y. */
function total(beam: Beam, distance: number, turn: number, lean: number, reach: number): number {
  const normal: Vector = [Math.cos(turn) * Math.cos(lean), Math.sin(turn) * Math.cos(lean), Math.sin(lean)];
  const u: Vector = [-Math.sin(turn), Math.cos(turn), 0];
  const v: Vector = [-Math.cos(turn) * Math.sin(lean), -Math.sin(turn) * Math.sin(lean), Math.cos(lean)];
  const at = (s: number, t: number): Vector => [distance + s * u[0] + t * v[0], s * u[1] + t * v[1], s * u[2] + t * v[2]];
  return integral(s => integral(t => lightOnPlane(beam, axis, 1, at(s, t), normal), -reach, reach, 300), -reach, reach, 300);
}

describe('the light on a large plane is the power', () => {
  // Half angle 0.1 rad, at 1 m a radius of 100 mm. With a cosine of the ray alone, the sum would be a share θ²/4 = 0.25 % short even squarely.
  it.each([[0, 0], [30, 0], [45, 0], [0, 45], [56, 0], [30, 40], [-50, 20]])('spread, turned by %f° and leaned by %f°', (turn, lean) => {
    expectNear(total(beamFromHalfAngle(0.1, RED, 1), 1, turn * DEGREE, lean * DEGREE, 0.9), 1, 1e-7);
  });
  it.each([[0, 0], [45, 30], [70, 0]])('parallel, turned by %f° and leaned by %f°', (turn, lean) => {
    expectNear(total(beamFromRadius(50 * MM, 0, RED, 1), 1, turn * DEGREE, lean * DEGREE, 0.5), 1, 1e-7);
  });
  it.each([[45, 0], [30, 40]])('drawing together unevenly, turned by %f° and leaned by %f°', (turn, lean) => {
    const beam = offFocalMirror(beamFromRadius(50 * MM, 0, RED, 1), 2, 20 * DEGREE, 'level');
    expectNear(total(beam, 0.5, turn * DEGREE, lean * DEGREE, 0.3), 1, 1e-7);
  });
  it('within its Rayleigh range too', () => {
    // Waist 0.4 mm, z_R 0.794 m, at 0.5 m.
    expectNear(total(beamFromRadius(0.4 * MM, 0, RED, 1), 0.5, 45 * DEGREE, 10 * DEGREE, 4 * MM), 1, 1e-7);
  });
});

describe('light at a point', () => {
  it('squarely before a beam is the Gaussian profile: the corner of a 102 × 127 mm plate in w 100 mm has 0.26645 of the centre', () => {
    const beam = beamFromHalfAngle(0.1, RED, 1);
    const [centre, corner] = [[1, 0, 0], [1, 50.8 * MM, 63.5 * MM]].map(p => lightOnPlane(beam, axis, 1e-3, p as unknown as Vector, X)) as [number, number];
    expectPrinted(corner / centre, '0.26645');
    // 2P/(π w²) by hand: 2 mW/(π · 0.01 m²) = 0.063662 W/m².
    expectPrinted(centre, '0.063662');
  });

  it('1 m from the focus of 16.5 mm is 108.325 µW/cm² per mW, and behind f −10 mm that of w 40.40 mm', () => {
    const laser = beamFromRadius(0.4 * MM, 0, RED, 1);
    const beam = throughLens(laser, 16.5 * MM);
    // Diffraction: 2 · 2.2·10⁻⁴ of it, as the lens stands at the waist.
    expectNear(lightOnPlane(beam, axis, 1e-3, [toFocus(beam).level + 1, 0, 0], X) / 0.01, 108.325, 108.325 * 4.4e-4);
    const virtual = lightOnPlane(throughLens(laser, -10 * MM), axis, 1e-3, [1, 0, 0], X);
    expectNear(virtual, 2e-3 / (Math.PI * 0.0404 ** 2), virtual * 2e-4);
  });

  it('of a parallel beam falls by the cosine, and by nothing else', () => {
    const beam = beamFromRadius(50 * MM, 0, RED, 1);
    fc.assert(fc.property(between(-1.5, 1.5), between(-80, 80), (turn, y) => {
      const squarely = (2 / (Math.PI * 0.05 ** 2)) * Math.exp(-2 * (y / 50) ** 2);
      expectNear(lightOnPlane(beam, axis, 1, [1, y * MM, 0], [Math.cos(turn), Math.sin(turn), 0]), squarely * Math.cos(turn), 1e-6 * squarely);
    }));
  });

  it('on a plate 721.1 mm from the spreader at 33.7°, worked by hand at centre and edges', () => {
    // A transmission master: source (1100, 100), plate (700, 700) facing −y; 16.5 mm objective, r 0.4 mm: w = distance · 0.4/16.5.
    const slope = 0.4 / 16.5;
    const from: Vector = [1.1, 0.1, 0];
    const along: Vector = [-0.4, 0.6, 0];
    expectPrinted(Math.hypot(400, 600), '721.1');
    expectPrinted(Math.atan2(400, 600) / DEGREE, '33.7');
    for (const edge of [-63.5, 0, 63.5]) {
      const [dx, dy] = [-0.4 + edge * MM, 0.6];
      const distance = (dx * -0.4 + dy * 0.6) / Math.hypot(0.4, 0.6);
      const aside = (dx * 0.6 + dy * 0.4) / Math.hypot(0.4, 0.6);
      const w = distance * slope;
      const [ray, cosAxis] = [Math.hypot(dx, dy), distance / Math.hypot(dx, dy)];
      const expected = (((2 * 1e-3) / (Math.PI * w * w)) * Math.exp(-2 * (aside / w) ** 2) * (dy / ray)) / cosAxis;
      expectNear(lightOnPlane(beamFromHalfAngle(slope, RED, 1), { from, along }, 1e-3, [0.7 + edge * MM, 0.7, 0], [0, -1, 0]), expected, 1e-5 * expected, `at ${edge}`);
    }
  });

  it('is the same in a mirror, from either side of the plane, and from a beam turned in space', () => {
    const part = between(-0.2, 0.2);
    fc.assert(fc.property(between(0.05, 0.2), part, part, part, part, part, between(0, 6.28), (half, y, z, m, k, dx, turn) => {
      const beam = beamFromHalfAngle(half, RED, 1);
      const light = lightOnPlane(beam, axis, 1, [1 + dx, y, z], [1, m, k]);
      // Grazing light is a difference of two parts of up to some 1000 W/m².
      const allowed = 1e-9 * light + 1e-10;
      for (const [point, normal] of [[[1 + dx, -y, z], [1, -m, k]], [[1 + dx, y, -z], [1, m, -k]], [[1 + dx, y, z], [-1, -m, -k]]] as [Vector, Vector][]) expectNear(lightOnPlane(beam, axis, 1, point, normal), light, allowed);
      const [c, s] = [Math.cos(turn), Math.sin(turn)];
      const turned = ([a, b, d]: Vector): Vector => [c * a - s * b, s * a + c * b, d];
      expectNear(lightOnPlane(beam, { from: ORIGIN, along: turned(X) }, 1, turned([1 + dx, y, z]), turned([1, m, k])), light, allowed);
      // The other axes: along z the sides are chosen, and a round beam does not care.
      expectNear(lightOnPlane(beam, { from: ORIGIN, along: [0, 0, 1] }, 1, [y, z, 1 + dx], [m, k, 1]), light, allowed);
    }));
  });

  it('is found across and up from the middle of a plane too, level and at right angles to it, in an uneven beam that climbs', () => {
    const uneven = offFocalMirror(beamFromRadius(50 * MM, 0, RED, 1), 2, 30 * DEGREE, 'level');
    const part = between(-0.05, 0.05);
    fc.assert(fc.property(between(-1, 1), between(-1, 1), between(-1, 1), part, part, part, part, (turn, lean, climb, y, z, s, t) => {
      const climbing = { from: ORIGIN, along: [Math.cos(climb), 0, Math.sin(climb)] as Vector };
      const middle: Vector = [0.3 * Math.cos(climb), y, 0.3 * Math.sin(climb) + z];
      const normal: Vector = [Math.cos(turn) * Math.cos(lean), Math.sin(turn) * Math.cos(lean), Math.sin(lean)];
      const [across, up]: [Vector, Vector] = [[-Math.sin(turn), Math.cos(turn), 0], [-Math.cos(turn) * Math.sin(lean), -Math.sin(turn) * Math.sin(lean), Math.cos(lean)]];
      const point: Vector = [middle[0] + s * across[0] + t * up[0], middle[1] + s * across[1] + t * up[1], middle[2] + s * across[2] + t * up[2]];
      const light = lightOnPlane(uneven, climbing, 1, point, normal);
      expectNear(lightOverPlane(uneven, climbing, 1, middle, normal)(s, t), light, 1e-9 * light + 1e-10);
    }));
  });

  it('in other units of length is the light by their square, and of other power in proportion', () => {
    fc.assert(fc.property(between(0.5, 5), between(0.1, 10), between(-0.02, 0.02), (k, p, y) => {
      const light = lightOnPlane(beamFromRadius(1 * MM, 3, RED, 1), axis, 1, [1, y, 0], [1, 1, 0]);
      expectNear(lightOnPlane(beamFromRadius(k * MM, 3 / k, k * RED, 1), axis, p, [k, k * y, 0], [1, 1, 0]), (p * light) / (k * k), 1e-9 * p * light);
    }));
  });

  it('comes from the focus', () => {
    fc.assert(fc.property(between(-0.3, 0.3), between(-0.3, 0.3), between(0.3, 2), (y, z, x) => {
      // The focus of a 16.5 mm objective, with a Rayleigh range of 0.35 mm.
      const ray = rayAt(beamFromHalfAngle(0.4 / 16.5, RED, 1), axis, [x, y, z]);
      expectNear(angleBetween(ray, [x, y, z]), 0, 2e-6);
      expectNear(Math.hypot(...ray), 1, 1e-12);
    }));
    expectNear(angleBetween(rayAt(carried(beamFromRadius(1, 0, RED, 1), 1), axis, [2, 0.5, 0.1]), X), 0, 1e-6);
  });
});
