/** What light that goes on from one pane reaches of another. Rays counted, and rectangles by hand. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shareReached, shareTakenUp, shareThrownBack, type Pane } from '../../server/optics/solids/carried.ts';
import { between } from './outside.ts';

const pane = (x: number, y: number, w = 0.06, h = 0.05, normal: Pane['normal'] = [1, 0, 0]): Pane => ({ at: [x, y, 0.12], normal, size: [w, h] });
const at = (degrees: number): readonly [number, number, number] => [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180), 0];

describe('of parallel light', () => {
  it('the outline is set aside by gap times tan θ', () => {
    // 40 mm at 45°: 60 − 40 = 20 mm of 60 are left, all of the height.
    expect(shareReached(pane(0, 0), { direction: at(45), curvature: 0 }, pane(0.04, 0))).toBeCloseTo(1 / 3, 9);
    expect(shareReached(pane(0, 0), { direction: at(45), curvature: 0 }, pane(0.06, 0))).toBeCloseTo(0, 9);
    // On a face of half the size the middle 30 mm are from 25 to 55 mm: 30 of 30 from −15 to 15 beside 40 ± 30: 10 to 15 mm, 5 of 30.
    expect(shareReached(pane(0, 0), { direction: at(45), curvature: 0 }, pane(0.04, 0, 0.03, 0.05))).toBeCloseTo(5 / 30, 9);
  });
  it('what a stop takes up is that of the outline', () => {
    expect(shareTakenUp(pane(0, 0), { direction: at(45), curvature: 0 }, pane(0.04, 0.04, 0.03, 0.1))).toBeCloseTo(0.5, 9);
  });
  it('thrown back by a parallel pane it comes 2 g tan θ aside', () => {
    // 20 mm at 45°: 40 of 60 mm aside.
    expect(shareThrownBack(pane(0, 0), at(45), pane(0.02, 0))).toBeCloseTo(1 / 3, 9);
    expect(shareThrownBack(pane(0, 0), at(45), pane(0.03, 0))).toBeCloseTo(0, 9);
  });
  it('thrown back by a corner of it that a turned pane catches is a triangle', () => {
    // In mm. Light along (4, 0, 3)/5 from (0, y, z) of the plate, z from its middle, meets the pane on x = 30 − y/3, at z + ¾x. Its upper edge at −5 takes all of z − y/4 up to −27.5: at the corner (30, −25) a triangle of 20 by 5.
    // Its normal is (3, 1, 0)/√10: the light goes on along (−0.64, −0.48, 0.6), to y − ¾x = 1.25 y − 22.5 and as much higher, within the plate: 1.25 · 50 of 60 · 50.
    const turned: Pane = { at: [0.03, 0, 0.12 - 0.035], normal: [3, 1, 0], size: [0.2, 0.06] };
    expect(shareThrownBack(pane(0, 0), [4, 0, 3], turned)).toBeCloseTo(1 / 48, 9);
  });
  it('all of it is on a face in the same plane; none on one behind it, or along which it runs', () => {
    const forward = { direction: at(20), curvature: 0 };
    expect(shareReached(pane(0, 0), forward, pane(0, 0))).toBeCloseTo(1, 12);
    expect(shareReached(pane(0, 0), forward, pane(-0.01, 0))).toBe(0);
    for (const x of [0.01, 0, -0.01]) expect(shareReached(pane(0, 0, 0.06, 0.05, [0, 1, 0]), { direction: [0, 1, 0], curvature: 0 }, pane(x, 0))).toBe(0);
  });
});

describe('of light that spreads or runs together', () => {
  it('the outline grows by 1 + g/R', () => {
    // From 200 mm before it, squarely: 100 mm on, 1.5 times as wide and high: a face of the same size is all lit, and takes up 1/2.25.
    const run = { direction: [1, 0, 0] as const, curvature: 5 };
    expect(shareReached(pane(0, 0), run, pane(0.1, 0))).toBeCloseTo(1, 9);
    expect(shareTakenUp(pane(0, 0), run, pane(0.1, 0))).toBeCloseTo(1 / 2.25, 9);
  });
  it('also along light that runs aslant, in the plan and upwards', () => {
    // From 200 mm before it along the light, to as far behind it: twice as wide and high, about the light's own line.
    for (const u of [[0.8, 0.6, 0], [0.8, 0, 0.6], [0.8, -0.48, 0.36]] as const) {
      const face = (dy: number, dz: number): Pane => ({ at: [0.2 * u[0], 0.2 * u[1] + dy, 0.12 + 0.2 * u[2] + dz], normal: [1, 0, 0], size: [0.06, 0.05] });
      const run = { direction: u, curvature: 5 };
      expect(shareReached(pane(0, 0), run, face(0, 0))).toBeCloseTo(1, 9);
      expect(shareTakenUp(pane(0, 0), run, face(0, 0))).toBeCloseTo(1 / 4, 9);
      // The outline is 120 by 100 mm: a face moved by half of that is lit to a half.
      expect(shareReached(pane(0, 0), run, face(0.06, 0))).toBeCloseTo(0.5, 9);
      expect(shareReached(pane(0, 0), run, face(0, -0.05))).toBeCloseTo(0.5, 9);
    }
  });
  it('to nothing in a focus, and behind it turned round', () => {
    const run = { direction: [1, 0, 0] as const, curvature: -5 };
    expect(shareReached(pane(0, 0), run, pane(0.1, 0))).toBeCloseTo(0.25, 9);
    expect(shareReached(pane(0, 0), run, pane(0.3, 0))).toBeCloseTo(0.25, 9);
    expect(shareReached(pane(0, 0), run, pane(0.2, 0))).toBeCloseTo(0, 9);
  });
  it('not on a face that one side of the opening lies behind', () => {
    // Turned by 80°, it reaches 30 sin 80° = 29.5 mm on along the light, past its focus at 10 mm and the face at 20.
    expect(shareReached(pane(0, 0, 0.06, 0.05, at(80)), { direction: [1, 0, 0], curvature: -100 }, pane(0.02, 0))).toBe(0);
  });
});

it('as many rays as are counted', () => {
  fc.assert(fc.property(between(0.1, 0.3), between(-0.05, 0.05), between(0, 60), between(-30, 30), (gap, off, angle, turn) => {
    const face = pane(gap, off, 0.08, 0.06, at(turn));
    const u = at(angle);
    // Each spot of the face, followed back along the light to the plane x = 0.
    const n = 120;
    const [c, s] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
    let lit = 0;
    for (let i = 0; i < n; i++) {
      const a = 0.08 * ((i + 0.5) / n - 0.5);
      const [x, y] = [gap - s * a, off + c * a];
      if (Math.abs(y - (u[1] / u[0]) * x) <= 0.03) lit++;
    }
    // The opening is 50 mm high, the face 60 mm.
    expect(Math.abs(shareReached(pane(0, 0), { direction: u, curvature: 0 }, face) - (lit / n) * (50 / 60))).toBeLessThan(2.5 / n);
  }));
});
it('no number is too odd', () => {
  const any = fc.oneof(fc.double(), fc.constantFrom(0, -0, NaN, Infinity, 1e300));
  fc.assert(fc.property(fc.array(any, { minLength: 20, maxLength: 20 }), x => {
    const [a, b]: Pane[] = [{ at: [x[0]!, x[1]!, x[2]!], normal: [x[3]!, x[4]!, x[5]!], size: [x[6]!, x[7]!] }, { at: [x[8]!, x[9]!, x[10]!], normal: [x[11]!, x[12]!, x[13]!], size: [x[14]!, x[15]!] }];
    const run = { direction: [x[16]!, x[17]!, x[18]!] as const, curvature: x[19]! };
    for (const share of [shareReached(a!, run, b!), shareTakenUp(a!, run, b!), shareThrownBack(a!, run.direction, b!)]) { expect(share).toBeGreaterThanOrEqual(0); expect(share).toBeLessThanOrEqual(1 + 1e-9); }
  }));
});
