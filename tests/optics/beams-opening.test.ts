/** Shares of beams through openings: against error functions and gamma functions of cephes, sums over the face, and counted rays. */
import * as cephes from 'cephes';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { beamFromHalfAngle, beamFromRadius, carried, offFocalMirror } from '../../server/optics/beams/beam.ts';
import { openingShare, type Opening } from '../../server/optics/beams/clip.ts';
import { adaptiveIntegral } from '../../server/optics/beams/quadrature.ts';
import type { Vector } from '../../server/optics/vectors.ts';
import { between, expectNear, integral } from './outside.ts';

const [MM, RED, DEGREE] = [1e-3, 632.8e-9, Math.PI / 180];
const X: Vector = [1, 0, 0];
const axis = { from: [0, 0, 0] as Vector, along: X };
/** A parallel beam: over a millimetre of way its radius stays within 10⁻¹². */
const parallel = (w: number) => beamFromRadius(w, 0, 1e-7, 1);
/** Turned about z, the face's width runs along (−sin, cos, 0). */
const face = (shape: Opening['shape'], halfWidth: number, halfHeight: number, turn: number, aside: number, up: number): Opening => {
  const normal: Vector = [Math.cos(turn), Math.sin(turn), 0];
  return { shape, halfWidth, halfHeight, normal, centre: [-Math.sin(turn) * aside, Math.cos(turn) * aside, up] };
};
const sizes = between(0.2, 3);
const offsets = between(-3, 3);

/** Beyond 6 it is 1, and cephes reports that its remainder is too small for a number. */
const cephesErf = (x: number): number => cephes.erf(Math.max(-6, Math.min(x, 6)));

beforeAll(async () => { await cephes.compiled; });

describe('a rectangular opening', () => {
  it('off centre and slanted is a product of error functions (cephes)', () => {
    fc.assert(fc.property(sizes, sizes, offsets, offsets, between(-1.4, 1.4), (a, b, aside, up, turn) => {
      const part = (half: number, offset: number, slant: number): number => 0.5 * (cephesErf(Math.SQRT2 * slant * (offset + half)) - cephesErf(Math.SQRT2 * slant * (offset - half)));
      expectNear(openingShare(parallel(1), axis, face('rectangular', a, b, turn, aside, up)), part(a, aside, Math.cos(turn)) * part(b, up, 1), 1e-9);
    }), { numRuns: 300 });
  });

  it('cuts the finest beam at its edge as error functions say', () => {
    fc.assert(fc.property(between(-6, 0), between(-3, 3), between(-3, 3), fc.boolean(), (power, s, t, corner) => {
      const w = 10 ** power;
      // At an edge only, or at a corner.
      const at = face('rectangular', 1, 1, 0, 1 - s * w, corner ? 1 - t * w : 0);
      const part = (offset: number): number => 0.5 * (cephesErf((Math.SQRT2 * (offset + 1)) / w) - cephesErf((Math.SQRT2 * (offset - 1)) / w));
      expectNear(openingShare(parallel(w), axis, at), part(1 - s * w) * part(corner ? 1 - t * w : 0), 1e-9);
    }), { numRuns: 2000 });
  });

  it('of which a side lies across the axis itself has one half of what an opening on either side of it has', () => {
    // From the axis to 0.5, and 0.25 up and down: ½ erf(√2 · 0.5) erf(√2 · 0.25).
    for (const aside of [0.25, -0.25]) expectNear(openingShare(parallel(1), axis, face('rectangular', 0.25, 0.25, 0, aside, 0)), 0.5 * cephesErf(Math.SQRT2 * 0.5) * cephesErf(Math.SQRT2 * 0.25), 1e-9);
  });

  it('cuts an uneven beam by its radius along each side', () => {
    // Behind a mirror of 2 m folded by 20° either way, at 0.5 m: 1 − 0.5/(2 cos 20°) of the width in the fold, 1 − 0.5 cos 20°/2 across; by hand.
    const beam = carried(offFocalMirror(parallel(1), 2, 20 * DEGREE, 'level'), 0.5);
    const [level, upright] = [1 - 0.25 / Math.cos(20 * DEGREE), 1 - 0.25 * Math.cos(20 * DEGREE)];
    fc.assert(fc.property(sizes, sizes, (a, b) => {
      const expected = cephesErf((Math.SQRT2 * a) / level) * cephesErf((Math.SQRT2 * b) / upright);
      expectNear(openingShare(beam, axis, face('rectangular', a, b, 0, 0, 0)), expected, 1e-9);
    }));
  });

  it('turned and leaned at once is a sum over its face', () => {
    fc.assert(fc.property(sizes, sizes, offsets, offsets, between(-1.2, 1.2), between(-1.2, 1.2), (a, b, s, t, turn, lean) => {
      const normal: Vector = [Math.cos(turn) * Math.cos(lean), Math.sin(turn) * Math.cos(lean), Math.sin(lean)];
      const [u, v] = [[-Math.sin(turn), Math.cos(turn), 0], [-Math.cos(turn) * Math.sin(lean), -Math.sin(turn) * Math.sin(lean), Math.cos(lean)]] as [Vector, Vector];
      const centre: Vector = [s * u[0] + t * v[0], s * u[1] + t * v[1], s * u[2] + t * v[2]];
      // Light per area of the face: 2/π exp(−2 (y² + z²)) · cosine, w = 1.
      const sum = integral(p => integral(q => Math.exp(-2 * ((centre[1] + p * u[1] + q * v[1]) ** 2 + (centre[2] + p * u[2] + q * v[2]) ** 2)), -b, b, 200), -a, a, 200) * (2 / Math.PI) * Math.abs(normal[0]);
      expectNear(openingShare(parallel(1), axis, { shape: 'rectangular', centre, normal, halfWidth: a, halfHeight: b }), sum, 1e-7);
    }), { numRuns: 30 });
  });
});

describe('a round opening', () => {
  it('off centre is a sum of gamma functions (cephes): a noncentral chi-square', () => {
    fc.assert(fc.property(sizes, offsets, offsets, (a, aside, up) => {
      // (2r/w)² for the distance from the centre of the opening: Poisson weights of 2d²/w², Σ e^−m mᵏ/k! P(k + 1, 2a²/w²)
      // (Johnson, Kotz & Balakrishnan, Continuous Univariate Distributions; from memory).
      const m = 2 * (aside ** 2 + up ** 2);
      let [sum, weight] = [0, Math.exp(-m)];
      for (let k = 0; k < 300; k++) {
        const within = cephes.igam(k + 1, 2 * a * a);
        // They only fall, and cephes reports when one is too small for a number.
        if (within < 1e-20) break;
        sum += weight * within;
        weight *= m / (k + 1);
      }
      expectNear(openingShare(parallel(1), axis, face('round', a, a, 0, aside, up)), sum, 1e-9);
    }), { numRuns: 300 });
  });

  it('off centre and slanted is a sum over its face', () => {
    fc.assert(fc.property(sizes, offsets, offsets, between(-1.4, 1.4), (a, aside, up, turn) => {
      const cos = Math.cos(turn);
      const ring = (s: number): number => integral(f => Math.exp(-2 * ((cos * (aside + s * Math.cos(f))) ** 2 + (up + s * Math.sin(f)) ** 2)), 0, 2 * Math.PI, 200) * s;
      expectNear(openingShare(parallel(1), axis, face('round', a, a, turn, aside, up)), integral(ring, 0, a, 200) * (2 / Math.PI) * cos, 1e-7);
    }), { numRuns: 30 });
  });

  // By hand: 1 − exp(−2a²/w²); a circle as large as the beam loses 13.5 % (any laser text).
  it('as large as the beam loses 13.5 %, and at 45° as much as an oval', () => {
    expectNear(openingShare(parallel(1), axis, face('round', 1, 1, 0, 0, 0)), 1 - Math.exp(-2), 1e-11);
    expectNear(openingShare(parallel(1), axis, face('round', Math.SQRT2, 1, Math.PI / 4, 0, 0)), 1 - Math.exp(-2), 1e-11);
  });
});

describe('a spread beam', () => {
  it('through a slanted opening is what rays from its focus say', () => {
    const slope = 0.1;
    const steps = 600;
    fc.assert(fc.property(fc.constantFrom('round' as const, 'rectangular' as const), between(40, 150), between(40, 150), between(-100, 100), between(-100, 100), between(-1.1, 1.1), (shape, a, b, aside, up, turn) => {
      const opening = face(shape, a * MM, b * MM, turn, aside * MM, up * MM);
      const [cx, cy, cz] = opening.centre;
      // Rays of equal power: within ρ = r/w lies 1 − exp(−2ρ²).
      let count = 0;
      for (let i = 0; i < steps; i++) {
        const rho = Math.sqrt(-Math.log(1 - (i + 0.5) / steps) / 2);
        for (let j = 0; j < steps; j++) {
          const f = (2 * Math.PI * (j + (i * 0.618 % 1))) / steps;
          const [dy, dz] = [slope * rho * Math.cos(f), slope * rho * Math.sin(f)];
          // On the plane through the centre (cx + 1, cy, cz) with the normal (cos, sin, 0).
          const t = ((cx + 1) * Math.cos(turn) + cy * Math.sin(turn)) / (Math.cos(turn) + dy * Math.sin(turn));
          const [s, h] = [-Math.sin(turn) * (t - cx - 1) + Math.cos(turn) * (t * dy - cy), t * dz - cz];
          if (t > 0 && (shape === 'round' ? (s / (a * MM)) ** 2 + (h / (b * MM)) ** 2 <= 1 : Math.abs(s) <= a * MM && Math.abs(h) <= b * MM)) count++;
        }
      }
      const share = openingShare(beamFromHalfAngle(slope, RED, 1), axis, { ...opening, centre: [cx + 1, cy, cz] });
      expectNear(share, count / steps ** 2, 2e-3);
    }), { numRuns: 20 });
  });

  it('on a 102 × 127 mm plate in w 100 mm leaves 54.948 %, in w 150 mm 30.250 %', () => {
    // By hand: erf · erf.
    for (const [w, percent] of [[0.1, 54.948], [0.15, 30.25]] as const) {
      const opening: Opening = { shape: 'rectangular', centre: X, normal: X, halfWidth: 50.8 * MM, halfHeight: 63.5 * MM };
      expectNear(100 * openingShare(beamFromHalfAngle(w, RED, 1), axis, opening), percent, 5e-4);
    }
  });

  it('is the same wherever along the way it is told', () => {
    const opening: Opening = { shape: 'round', centre: [1, 20 * MM, 0], normal: [1, 0.5, 0.2], halfWidth: 60 * MM, halfHeight: 60 * MM };
    const beam = beamFromHalfAngle(0.1, RED, 1);
    expectNear(openingShare(carried(beam, 0.4), { from: [0.4, 0, 0], along: [2, 0, 0] }, opening), openingShare(beam, axis, opening), 1e-10);
  });
});

describe('any opening', () => {
  const shape = fc.constantFrom('round' as const, 'rectangular' as const);
  it('mirrored, seen from behind or cut in two lets the same through', () => {
    fc.assert(fc.property(shape, sizes, sizes, offsets, offsets, between(-1.4, 1.4), (s, a, b, aside, up, turn) => {
      const one = face(s, a, b, turn, aside, up);
      const share = openingShare(parallel(1), axis, one);
      const back: Vector = [-one.normal[0], -one.normal[1], -one.normal[2]];
      for (const other of [face(s, a, b, -turn, -aside, up), face(s, a, b, turn, aside, -up), { ...one, normal: back }]) expectNear(openingShare(parallel(1), axis, other), share, 1e-9);
      if (s === 'rectangular') {
        const halves = [-1, 1].map(side => openingShare(parallel(1), axis, face(s, a / 2, b, turn, aside + (side * a) / 2, up)));
        expectNear(halves[0]! + halves[1]!, share, 1e-9);
      }
    }));
  });

  it('that grows lets no less through, never more than all', () => {
    fc.assert(fc.property(shape, sizes, offsets, between(-1.4, 1.4), between(0, 2), (s, a, aside, turn, more) => {
      const [small, large] = [a, a + more].map(size => openingShare(parallel(1), axis, face(s, size, size, turn, aside, 0))) as [number, number];
      expect(large).toBeGreaterThanOrEqual(small - 1e-9);
      expect(large).toBeLessThanOrEqual(1);
      expect(small).toBeGreaterThanOrEqual(0);
    }));
  });

  it('far larger than the beam lets all through, or nothing beside it, and half at its edge', () => {
    for (const s of ['round', 'rectangular'] as const) {
      const at = (aside: number): number => openingShare(parallel(0.4 * MM), axis, face(s, 25 * MM, 25 * MM, 45 * DEGREE, aside, 0));
      expectNear(at(0), 1, 1e-10);
      expectNear(at(10 * MM), 1, 1e-10);
      expectNear(at(30 * MM), 0, 1e-10);
      if (s === 'rectangular') expectNear(at(25 * MM), 0.5, 1e-10);
      // A round edge bends away by w/a of the half.
      else expectNear(at(25 * MM), 0.5, 0.01);
    }
    // A focus of a thousandth of a millimetre on a mirror of 50 mm, to 2 µm from its edge: 1 − erfc(√2 · 2)/2 = 0.99997 (cephes).
    const focus = face('rectangular', 25 * MM, 25 * MM, 0, 25 * MM - 2e-6, 0);
    expectNear(openingShare(parallel(1e-6), axis, focus), 0.5 * (1 + cephes.erf(Math.SQRT2 * 2)), 1e-9);
  });

  it('seen edge on lets nothing through', () => expectNear(openingShare(parallel(1), axis, face('round', 1, 1, Math.PI / 2, 0, 0)), 0, 1e-12));
});

describe('the integral', () => {
  it.each([
    ['a polynomial of degree 20', (x: number) => 21 * x ** 20, 1, 1e-14],
    ['a peak of a thousandth', (x: number) => 1e-3 / (1e-6 + (x - 0.3) ** 2), Math.atan(700) + Math.atan(300), 1e-11],
    ['a square root', (x: number) => 1.5 * Math.sqrt(x), 1, 1e-11],
  ] as const)('of %s from 0 to 1 is exact', (_, f, expected, allowed) => expectNear(adaptiveIntegral(f, 0, 1, 1e-12), expected, allowed));
  it('of noise ends', () => expect(adaptiveIntegral(x => Math.sin(1e9 * x), 0, 1, 1e-12)).toBeLessThan(1));
});
