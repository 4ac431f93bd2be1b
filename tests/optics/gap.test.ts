/** How far things are apart or stand in one another: arithmetic of circles and squares, shown beside each. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { facing, fromFrame, type Frame } from '../../server/optics/solids/frame.ts';
import { gapBetween, type Body } from '../../server/optics/solids/gap.ts';
import { direction, type Vector } from '../../server/optics/vectors.ts';
import { between } from './outside.ts';

const ball = (x: number, y: number, radius: number): Body => ({ solid: { kind: 'sphere', middle: [x, y, 0], radius } });
const box = (x: number, size: number, turned = 0, rounded = false): Body => ({ solid: { kind: 'box', frame: facing([x, 0, 0], [Math.sin(turned), -Math.cos(turned), 0]), size: [size, size, size] }, ...(rounded && { rounded }) });
const tube = (x: number, y: number, radius: number): Body => ({ solid: { kind: 'cylinder', middle: [x, y, 0], axis: [0, 0, 1], radius, height: 0.1 } });
/** The same elsewhere on the table. */
const moved = (body: Body): Body => {
  const by = ([x, y, z]: Vector): Vector => [x + 0.5, y - 0.25, z + 0.125];
  const { solid } = body;
  if (solid.kind !== 'box') return { ...body, solid: { ...solid, middle: by(solid.middle) } };
  const frame: Frame = { origin: by(solid.frame.origin), axes: solid.frame.axes };
  return { ...body, solid: { ...solid, frame } };
};
const disc: Body = { solid: { kind: 'cylinder', middle: [0, 0, 0], axis: [0, -1, 0], radius: 0.025, height: 0 } };

test.each<[string, Body, Body, number]>([
  ['balls: 30 mm between their middles, 10 + 25 mm of radius', ball(0, 0, 0.01), ball(0.018, 0.024, 0.025), -0.005],
  ['balls apart: 50 mm less 35', ball(0, 0, 0.01), ball(0.03, 0.04, 0.025), 0.015],
  ['balls in one place', ball(0, 0, 0.01), ball(0, 0, 0.01), -0.02],
  ['boxes of 40 mm, 30 mm from each other', box(0, 0.04), box(0.03, 0.04), -0.01],
  ['boxes apart', box(0, 0.04), box(0.05, 0.04), 0.01],
  // The turned one reaches 20·√2 mm to each side.
  ['a box of 40 mm with its corner in another, 45 mm off', box(0, 0.04), box(0.045, 0.04, Math.PI / 4), 0.045 - 0.02 - 0.02 * Math.SQRT2],
  ['tubes: 50 mm between their axes, 2 · 30 mm of radius', tube(0, 0, 0.03), tube(0.03, 0.04, 0.03), -0.01],
  ['tubes apart', tube(0, 0, 0.02), tube(0.03, 0.04, 0.02), 0.01],
  // From the rim 30 mm along (3, 0, 4)/5 to the middle of the ball; from a corner along (2, 1, 2)/3.
  ['a tube and a ball off its rim', { solid: { kind: 'cylinder', middle: [0, 0, 0], axis: [0, 0, 1], radius: 0.02, height: 0.04 } }, { solid: { kind: 'sphere', middle: [0.02 + 0.018, 0, 0.02 + 0.024], radius: 0.01 } }, 0.02],
  ['a box and a ball off its corner', box(0, 0.04), { solid: { kind: 'sphere', middle: [0.04, 0.03, 0.04], radius: 0.01 } }, 0.02],
  ['a box and a ball off its corner on the other side', box(0, 0.04), { solid: { kind: 'sphere', middle: [-0.03, -0.04, -0.04], radius: 0.01 } }, 0.02],
  ['a disc of 50 mm without thickness and a ball of 10 mm radius, 4 mm before it', disc, ball(0, 0.004, 0.01), -0.006],
  ['a rounded thing of 40 mm is a ball of 40 mm: 45 mm off, 20 and 10 mm of radius', box(0, 0.04, 0.3, true), ball(0.036, 0.027, 0.01), 0.015],
])('%s', (_, a, b, gap) => {
  expect(gapBetween(a, b)).toBeCloseTo(gap, 8);
  expect(gapBetween(b, a)).toBeCloseTo(gap, 8);
  expect(gapBetween(moved(a), moved(b))).toBeCloseTo(gap, 8);
});

test('between a ball and a box, or a tube, is the way to their nearest point less the radius', () => {
  const axes = fc.tuple(between(-3, 3), between(-1.5, 1.5), between(-3, 3)).map(([a, e, t]) => facing([0.4, -0.3, 0.2], direction(a, e), t));
  fc.assert(fc.property(axes, between(0.01, 0.1), between(0.01, 0.1), between(0.01, 0.1), fc.tuple(between(-0.15, 0.15), between(-0.15, 0.15), between(-0.15, 0.15)), (frame, w, h, d, [x, y, z]) => {
    // In the frame of the box: how far the point lies outside of each pair of faces.
    const beyond = (at: number, half: number): number => Math.max(0, Math.abs(at) - half);
    const toBox = Math.hypot(beyond(x, w / 2), beyond(y, h / 2), beyond(z, d / 2));
    const toTube = Math.hypot(beyond(Math.hypot(x, y), w), beyond(z, d / 2));
    const round: Body = { solid: { kind: 'sphere', middle: fromFrame(frame, [x, y, z]), radius: 0.02 } };
    // Searched: at corners and rims never farther, and by less than 0.1 mm nearer.
    for (const [solid, gap] of [[{ kind: 'box', frame, size: [w, h, d] }, toBox - 0.02], [{ kind: 'cylinder', middle: frame.origin, axis: frame.axes[2], radius: w, height: d }, toTube - 0.02]] as const) {
      if (gap === -0.02) continue;
      const found = gapBetween({ solid }, round);
      expect(found).toBeLessThan(gap + 1e-8);
      expect(found).toBeGreaterThan(gap - 1e-4);
    }
  }));
});

test('what is far enough apart is not looked at closer: farther than asked, and no farther than it is', () => {
  for (const [a, b] of [[ball(0, 0, 0.01), ball(0.03, 0.04, 0.025)], [box(0, 0.04), box(0.05, 0.04)], [box(0, 0.04, 0.5), tube(0.05, 0.03, 0.01)], [disc, ball(0.02, 0.03, 0.01)]] as const) {
    const whole = gapBetween(a, b);
    const soon = gapBetween(a, b, whole / 3);
    expect(soon).toBeGreaterThan(whole / 3);
    expect(soon).toBeLessThanOrEqual(whole + 1e-12);
    expect(gapBetween(a, b, whole)).toBeCloseTo(whole, 8);
  }
});
