/** Rays and solids against plain stepping along the ray, closed forms, and layouts worked out by hand. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clearance } from '../../server/optics/solids/clearance.ts';
import { facing, fromFrame, inFrame, turnedFromFrame, turnedIntoFrame, upright } from '../../server/optics/solids/frame.ts';
import { firstMeeting, meetingMoved } from '../../server/optics/solids/meeting.ts';
import { beyondTable, landing, mirrorImage } from '../../server/optics/solids/plane.ts';
import { card, disc, post, type Solid } from '../../server/optics/solids/solid.ts';
import { direction, type Vector } from '../../server/optics/vectors.ts';
import { between, expectNear } from './outside.ts';

const DEGREE = Math.PI / 180;
const plus = (a: Vector, b: Vector, k = 1): Vector => [a[0] + k * b[0], a[1] + k * b[1], a[2] + k * b[2]];
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const length = (a: Vector): number => Math.sqrt(dot(a, a));
const close = (a: Vector, b: Vector, allowed = 1e-12): void => { a.forEach((x, i) => expectNear(x, b[i]!, allowed, a.join(', '))); };
const mm = (x: number, y: number, z = 150): Vector => [x / 1000, y / 1000, z / 1000];

const place = fc.tuple(between(-1, 1), between(-1, 1), between(-1, 1));
const aim = fc.tuple(between(-Math.PI, Math.PI), between(-1.5, 1.5)).map(([a, e]) => direction(a, e));
const frame = fc.tuple(place, aim, between(-3, 3)).map(([o, n, t]) => facing(o, n, t));
const size = between(0.05, 0.8);
const box: fc.Arbitrary<Solid> = fc.tuple(frame, size, size, size).map(([f, w, h, d]) => ({ kind: 'box', frame: f, size: [w, h, d] }));
const cylinder: fc.Arbitrary<Solid> = fc.tuple(place, aim, size, size).map(([middle, axis, radius, height]) => ({ kind: 'cylinder', middle, axis, radius: radius / 2, height }));
const sphere: fc.Arbitrary<Solid> = fc.tuple(place, size).map(([middle, radius]) => ({ kind: 'sphere', middle, radius: radius / 2 }));
const solid = fc.oneof(box, cylinder, sphere);

/** A solid and a ray that goes by near it, or through. */
const shot = fc.tuple(solid, aim, place).map(([s, way, beside]): [Solid, Vector, Vector] => {
  const near = plus(s.kind === 'box' ? s.frame.origin : s.middle, beside, 0.3);
  return [s, plus(near, way, -1), plus(near, way, 0.7)];
});

/** Distance of a point from a solid, in the coordinates of the room, by the definition of each. */
function distanceFrom(s: Solid, p: Vector): number {
  if (s.kind === 'sphere') return Math.max(0, length(plus(p, s.middle, -1)) - s.radius);
  if (s.kind === 'cylinder') {
    const way = plus(p, s.middle, -1);
    const up = dot(way, s.axis);
    const [out, over] = [length(plus(way, s.axis, -up)) - s.radius, Math.abs(up) - s.height / 2];
    return Math.hypot(Math.max(0, out), Math.max(0, over));
  }
  // the nearest point of a box: each coordinate cut to the box
  const way = plus(p, s.frame.origin, -1);
  const nearest = s.frame.axes.reduce<Vector>((sum, axis, i) => plus(sum, axis, Math.min(s.size[i]! / 2, Math.max(-s.size[i]! / 2, dot(way, axis)))), [0, 0, 0]);
  return length(plus(way, nearest, -1));
}

describe('a frame', () => {
  it('that faces somebody in front of the table has x to the right and z up', () => {
    const { axes } = facing([0, 0, 0], [0, -2, 0]);
    close(axes[0], [1, 0, 0]);
    close(axes[1], [0, 0, 1]);
    close(axes[2], [0, -1, 0]);
  });
  it('turned by a quarter counter-clockwise has its width upwards', () => {
    const { axes } = facing([0, 0, 0], [0, -1, 0], 90 * DEGREE);
    close(axes[0], [0, 0, 1]);
    close(axes[1], [-1, 0, 0]);
  });
  it('that faces up or nowhere lies like the plan', () => {
    for (const n of [[0, 0, 1], [0, 0, 0]] as const) expect(facing([1, 2, 3], n).axes.flat().map((x) => x + 0)).toEqual([1, 0, 0, 0, 1, 0, 0, 0, 1]);
  });
  it('of what stands upright is the same, at every place', () => {
    fc.assert(fc.property(place, (p) => { expect({ ...upright(p) }).toEqual({ ...facing(p, [0, 0, 1]) }); }));
  });
  it('has axes of length 1 at right angles, right-handed, and gives coordinates back', () => {
    fc.assert(fc.property(frame, place, (f, p) => {
      const [a, b, c] = f.axes;
      close([dot(a, a), dot(b, b), dot(c, c)], [1, 1, 1]);
      close([dot(a, b), dot(b, c), dot(c, a)], [0, 0, 0]);
      expectNear(dot([a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]], c), 1, 1e-12);
      close(fromFrame(f, inFrame(f, p)), p);
      close(turnedFromFrame(f, turnedIntoFrame(f, p)), p);
      expectNear(length(inFrame(f, p)), length(plus(p, f.origin, -1)), 1e-12);
    }));
  });
});

describe('the first meeting', () => {
  const block: Solid = { kind: 'box', frame: facing([0, 0, 0], [0, -1, 0]), size: [0.2, 0.1, 0.4] };
  // By hand: 0.2 wide along x, 0.1 high along z, 0.4 deep along y.
  it.each([
    ['squarely from the right', [1, 0, 0], [-1, 0, 0], 0.9],
    ['from behind', [0, 1, 0], [0, -1, 0], 0.8],
    ['from above', [0, 0, 1], [0, 0, -1], 0.95],
    ['from inside', [0.05, 0, 0], [1, 0, 0], 0],
    // 3-4-5: reaches x = 0.1 when y = 0.0
    ['aslant', [0.4, 0.4, 0], [-0.2, -0.4, 0], 0.5],
  ] as [string, Vector, Vector, number][])('with a box, %s', (_, from, to, expected) => expectNear(firstMeeting(block, from, to)!, expected, 1e-12));
  it('is one where the ray runs along a face, or is a point on it', () => {
    expectNear(firstMeeting(block, [1, 0, 0.05], [-1, 0, 0.05])!, 0.9, 1e-12);
    const ball: Solid = { kind: 'sphere', middle: [0, 0, 0], radius: 0.5 };
    for (const point of [[0.5, 0, 0], [0.1, 0.2, 0.3]] as const) expect(firstMeeting(ball, point, point)).toBe(0);
    expect(firstMeeting(ball, [0.5, 0.1, 0], [0.5, 0.1, 0])).toBeUndefined();
  });
  it('is none where the ray passes, stops short or goes away', () => {
    expect(firstMeeting(block, [1, 0, 0.06], [-1, 0, 0.06])).toBeUndefined();
    expect(firstMeeting(block, [1, 0, 0], [0.11, 0, 0])).toBeUndefined();
    expect(firstMeeting(block, [0.11, 0, 0], [1, 0, 0])).toBeUndefined();
  });
  it('with a post needs the height', () => {
    // On the table at (500, 300) mm, 25 mm thick, 140 mm high: a beam at 120 mm is blocked 487.5 mm on, one at 150 mm is not.
    const p = post(mm(500, 300, 0), 0.0125, 0.14);
    expectNear(firstMeeting(p, mm(0, 300, 120), mm(900, 300, 120))!, 0.4875, 1e-12);
    expect(firstMeeting(p, mm(0, 300), mm(900, 300))).toBeUndefined();
  });
  it('with a card and a disc is where they stand', () => {
    const front = facing(mm(700, 700), [0, -1, 0]);
    for (const thin of [card(front, 0.063, 0.063), disc(mm(700, 700), [0, 1, 0], 0.063)]) {
      expectNear(firstMeeting(thin, mm(700, 400), mm(700, 800))!, 0.3, 1e-12);
      expect(firstMeeting(thin, mm(732, 400), mm(732, 800))).toBeUndefined();
    }
    // A corner of the card, beyond the edge of the disc: 30 mm either way, 42.4 mm from the middle.
    expectNear(firstMeeting(card(front, 0.063, 0.063), mm(730, 400, 180), mm(730, 800, 180))!, 0.3, 1e-12);
    expect(firstMeeting(disc(mm(700, 700), [0, 1, 0], 0.063), mm(730, 400, 180), mm(730, 800, 180))).toBeUndefined();
  });
  it('with a sphere, touching, is a meeting', () => {
    const ball: Solid = { kind: 'sphere', middle: [0, 0, 0], radius: 0.5 };
    expectNear(firstMeeting(ball, [-1, 0.5, 0], [1, 0.5, 0])!, 1, 1e-12);
    // 0.5² − 0.3² = 0.4²
    expectNear(firstMeeting(ball, [-1, 0.3, 0], [1, 0.3, 0])!, 0.6, 1e-12);
  });
  it('agrees with steps along the ray', () => {
    const steps = 4000;
    let met = 0;
    fc.assert(fc.property(shot, ([s, from, to]) => {
      const way = plus(to, from, -1);
      let first: number | undefined;
      for (let i = 0; i <= steps && first === undefined; i++) if (distanceFrom(s, plus(from, way, i / steps)) < 1e-12) first = (i / steps) * length(way);
      const found = firstMeeting(s, from, to);
      if (first !== undefined) {
        met++;
        expect(found).toBeDefined();
        expect(found).toBeLessThanOrEqual(first + 1e-9);
        expectNear(found!, first, length(way) / steps + 1e-9);
      } else if (found !== undefined) {
        // a ray may cut a corner between two steps
        expect(distanceFrom(s, plus(from, way, found / length(way)))).toBeLessThan(1e-9);
      }
    }), { numRuns: 300 });
    expect(met).toBeGreaterThan(30);
  });
  it('seen from the other end is the last: both together are never longer than the ray', () => {
    fc.assert(fc.property(shot, ([s, from, to]) => {
      const [there, back] = [firstMeeting(s, from, to), firstMeeting(s, to, from)];
      if (there === undefined || back === undefined) expect(there).toBe(back);
      else expect(there + back).toBeLessThanOrEqual(length(plus(to, from, -1)) + 1e-9);
    }));
  });
});

describe('how near a beam passes', () => {
  it('to the middle of the object of a two-beam layout: 166 mm', () => {
    // Reference from M1 (1100, 100) to the plate (700, 700), object at (700, 400) mm: |(−400)(300) − (600)(−400)| / 721.1 = 120000 / 721.1 = 166.4.
    const passing = clearance({ kind: 'sphere', middle: mm(700, 400), radius: 0 }, mm(1100, 100), mm(700, 700));
    expectNear(passing.clearance * 1000, 120000 / Math.sqrt(520000), 1e-6);
    // how far along: (160000 + 180000) / 721.1
    expectNear(passing.along * 1000, 340000 / Math.sqrt(520000), 1e-3);
  });
  it('to the edge of the plate of a split-beam layout: 34.8 mm', () => {
    // From (620, 760) to (780, 500); the plate at (700, 500) faces along x and is 127 mm wide: its edge at (700, 563.5).
    // |(160)(−196.5) − (−260)(80)| / 305.3 = 10640 / 305.3.
    const plate = card(facing(mm(700, 500), [1, 0, 0]), 0.127, 0.102);
    const expected = 10640 / Math.sqrt(160 ** 2 + 260 ** 2);
    expectNear(clearance(plate, mm(620, 760), mm(780, 500)).clearance * 1000, expected, 1e-6);
    // A beam of 40 mm radius is cut by 5.2 mm.
    expectNear(clearance(plate, mm(620, 760), mm(780, 500), 0.04).clearance * 1000, expected - 40, 1e-6);
  });
  it('to a post, level, aslant and over its top', () => {
    const p = post([0, 0, 0], 0.0125, 0.1);
    // Level past it 30 mm from its axis; 50 mm above its top; past the rim of the top, 3-4-5.
    expectNear(clearance(p, [-1, 0.03, 0.05], [1, 0.03, 0.05]).clearance, 0.0175, 1e-9);
    expectNear(clearance(p, [-1, 0, 0.15], [1, 0, 0.15]).clearance, 0.05, 1e-9);
    expectNear(clearance(p, [-1, 0.0125 + 0.03, 0.14], [1, 0.0125 + 0.03, 0.14]).clearance, 0.05, 1e-9);
  });
  it('counts the radius where it is: a beam that spreads', () => {
    // A wall along the beam, 50 mm off; the beam spreads from nothing to 60 mm: cut by 10 mm at its end.
    const wall: Solid = { kind: 'box', frame: facing([0.5, 0.1, 0], [0, -1, 0]), size: [2, 1, 0.1] };
    const passing = clearance(wall, [0, 0, 0], [1, 0, 0], 0, 0.06);
    expectNear(passing.clearance, -0.01, 1e-9);
    expect(passing.along).toBe(1);
    // The other way it is cut where it starts.
    expect(clearance(wall, [1, 0, 0], [0, 0, 0], 0.06, 0).along).toBe(0);
    // From a point to itself the larger radius counts: the near face of the wall is 50 mm off.
    expectNear(clearance(wall, [0.5, 0, 0], [0.5, 0, 0], 0.01, 0.02).clearance, 0.03, 1e-9);
  });
  it('agrees with steps along the beam', () => {
    const steps = 2000;
    fc.assert(fc.property(shot, between(0, 0.2), between(0, 0.2), ([s, from, to], r, end) => {
      const way = plus(to, from, -1);
      let least = Infinity;
      for (let i = 0; i <= steps; i++) least = Math.min(least, distanceFrom(s, plus(from, way, i / steps)) - (r + (i / steps) * (end - r)));
      const found = clearance(s, from, to, r, end);
      expect(found.clearance).toBeLessThanOrEqual(least + 1e-9);
      expectNear(found.clearance, least, (length(way) + 0.2) / steps);
      expectNear(distanceFrom(s, plus(from, way, found.along / length(way))) - (r + (found.along / length(way)) * (end - r)), found.clearance, 1e-9);
    }), { numRuns: 200 });
  });
  it('is nothing exactly where the ray meets', () => {
    fc.assert(fc.property(shot, ([s, from, to]) => {
      const passing = clearance(s, from, to);
      if (firstMeeting(s, from, to) === undefined) expect(passing.clearance).toBeGreaterThan(-1e-12);
      else expect(passing.clearance).toBeLessThan(1e-9);
    }));
  });
});

describe('on a plane', () => {
  it('the reference of a two-beam layout lands in the middle of the plate, and beside it when its mirror is moved', () => {
    const plate = facing(mm(700, 700), [0, -1, 0]);
    const hit = landing(plate, mm(1100, 100), plus(mm(700, 700), mm(1100, 100), -1))!;
    expectNear(hit.distance * 1000, 721.1, 0.05);
    close([hit.x, hit.y, 0], [0, 0, 0]);
    // The same direction from 15 mm further right and 20 mm higher lands as much further right and higher.
    const moved = landing(plate, mm(1115, 100, 170), plus(mm(700, 700), mm(1100, 100), -1))!;
    close([moved.x, moved.y, 0], [0.015, 0.02, 0]);
  });
  it('a ray that starts on it lands there', () => {
    // Seen from its front, x is to the right and z up.
    for (const way of [[0, 1, 0], [0, -1, 0]] as const) expect(landing(facing([0, 0, 0], [0, -1, 0]), [0.5, 0, 0.25], way)).toEqual({ distance: 0, x: 0.5, y: 0.25 });
  });
  it('a ray along it, away from it or without direction lands nowhere', () => {
    const plane = facing([0, 0, 0], [0, -1, 0]);
    expect(landing(plane, [0, -1, 0], [1, 0, 0])).toBeUndefined();
    expect(landing(plane, [0, -1, 0], [0, -1, 0])).toBeUndefined();
    expect(landing(plane, [0, -1, 0], [0, 0, 0])).toBeUndefined();
    expect(landing(plane, [0, 0, 0], [0, 0, 0])).toBeUndefined();
  });
  it('a ray lands where it meets a wide card there', () => {
    fc.assert(fc.property(frame, place, aim, (f, from, way) => {
      const hit = landing(f, from, way);
      fc.pre(hit !== undefined && hit.distance < 40);
      const there = plus(from, way, hit.distance);
      close(fromFrame(f, [hit.x, hit.y, 0]), there, 1e-10);
      expectNear(firstMeeting(card(f, 100, 100), from, plus(from, way, 50))!, hit.distance, 1e-9);
    }));
  });
  it('the way by a mirror is as long as straight from the image', () => {
    fc.assert(fc.property(frame, place, between(-0.5, 0.5), between(-0.5, 0.5), (f, source, x, y) => {
      const mirror = fromFrame(f, [x, y, 0]);
      const image = mirrorImage(f, source);
      expectNear(length(plus(mirror, image, -1)), length(plus(mirror, source, -1)), 1e-12);
      close(mirrorImage(f, image), source);
      // the image lies as far on the other side of the mirror
      expectNear(inFrame(f, image)[2], -inFrame(f, source)[2], 1e-12);
    }));
  });
  it('a point is on the table or so far beyond', () => {
    expect(beyondTable(mm(600, 450), 1.2, 0.9)).toBe(0);
    expect(beyondTable(mm(1200, 900), 1.2, 0.9)).toBe(0);
    expectNear(beyondTable(mm(-25, 100), 1.2, 0.9), 0.025, 1e-12);
    // 30 mm and 40 mm beyond a corner
    expectNear(beyondTable(mm(1230, 940, 900), 1.2, 0.9), 0.05, 1e-12);
  });
});

it('a table that is turned and moved as a whole gives the same', () => {
  fc.assert(fc.property(frame, shot, between(0, 0.1), (turn, [s, from, to], r) => {
    const p = (x: Vector): Vector => fromFrame(turn, x);
    const d = (x: Vector): Vector => turnedFromFrame(turn, x);
    const moved: Solid = s.kind === 'box' ? { ...s, frame: { origin: p(s.frame.origin), axes: [d(s.frame.axes[0]), d(s.frame.axes[1]), d(s.frame.axes[2])] } }
      : s.kind === 'cylinder' ? { ...s, middle: p(s.middle), axis: d(s.axis) } : { ...s, middle: p(s.middle) };
    expectNear(clearance(moved, p(from), p(to), r).clearance, clearance(s, from, to, r).clearance, 1e-9);
    const [one, other] = [firstMeeting(s, from, to), firstMeeting(moved, p(from), p(to))];
    if (one !== undefined && other !== undefined) expectNear(other, one, 1e-9);
    else if (one !== other) expectNear(clearance(s, from, to).clearance, 0, 1e-9);
  }));
});

it('numbers outside all domains give finite results', () => {
  const any = fc.oneof(fc.double(), between(-2, 2), fc.constantFrom(0, -0, 1e-300, 1e300, Infinity, -Infinity, NaN));
  const wild = fc.tuple(any, any, any);
  const odd = fc.oneof(
    fc.tuple(wild, wild, any, wild).map(([o, n, t, s]): Solid => ({ kind: 'box', frame: facing(o, n, t), size: s })),
    fc.tuple(wild, wild, wild, wild, wild).map(([o, a, b, c, s]): Solid => ({ kind: 'box', frame: { origin: o, axes: [a, b, c] }, size: s })),
    fc.tuple(wild, wild, any, any).map(([middle, axis, radius, height]): Solid => ({ kind: 'cylinder', middle, axis, radius, height })),
    fc.tuple(wild, any, any).map(([foot, radius, height]): Solid => post(foot, radius, height)),
    fc.tuple(wild, wild, any).map(([middle, normal, diameter]): Solid => disc(middle, normal, diameter)),
    fc.tuple(wild, any).map(([middle, radius]): Solid => ({ kind: 'sphere', middle, radius })),
  );
  fc.assert(fc.property(odd, wild, wild, wild, any, any, (s, a, b, n, x, y) => {
    const f = s.kind === 'box' ? s.frame : facing(a, n, x);
    const all = [firstMeeting(s, a, b) ?? 0, ...Object.values<number>({ ...clearance(s, a, b, x, y) }), ...Object.values<number>({ ...landing(f, a, n) }), ...mirrorImage(f, a), ...inFrame(f, a), ...fromFrame(f, a), beyondTable(a, x, y)];
    expect(all.every(Number.isFinite), JSON.stringify(all)).toBe(true);
  }), { numRuns: 1000 });
});

describe('a ray that is moved', () => {
  const ball: Solid = { kind: 'sphere', middle: [0, 0, 0], radius: 0.01 };
  it('meets a ball of 10 mm radius until it is 10 mm off', () => {
    for (const way of [[0, 1, 0], [0, 0, -1], [0, 0.6, 0.8]] as const) {
      const meets = meetingMoved(ball, [-1, 0, 0], [1, 0, 0], way);
      expect([-0.011, -0.009, 0, 0.009, 0.011].map(meets)).toEqual([false, true, true, true, false]);
    }
    // Touching is meeting.
    expect(meetingMoved({ kind: 'sphere', middle: [0, 0, 0], radius: 0.5 }, [-1, 0, 0], [1, 0, 0], [0, 1, 0])(0.5)).toBe(true);
  });
  it('from one side of the middle comes to the other', () => {
    // 5 mm beside the middle: moved by −14 mm it is 9 on the other side, by 6 mm 11 on its own.
    expect([-0.016, -0.014, 0.004, 0.006].map(meetingMoved(ball, [-1, 0.005, 0], [1, 0.005, 0], [0, 1, 0]))).toEqual([false, true, true, false]);
    expect([-0.016, -0.014, 0.004, 0.006].map(meetingMoved(ball, [-1, 0, 0.005], [1, 0, 0.005], [0, 0, 1]))).toEqual([false, true, true, false]);
  });
  it('along itself meets it where its end comes to it', () => {
    // It ends 20 mm before the middle, 10 before the ball.
    const meets = meetingMoved(ball, [-1, 0, 0], [-0.02, 0, 0], [1, 0, 0]);
    expect([0, 0.009, 0.011].map(meets)).toEqual([false, false, true]);
  });
  it('meets what a ray does that lies there', () => {
    const box: Solid = { kind: 'box', frame: facing([0.1, 0.05, 0.1], direction(0.7, 0.3), 0.4), size: [0.06, 0.04, 0.02] };
    const vector = fc.tuple(between(-0.2, 0.3), between(-0.2, 0.3), between(-0.2, 0.3));
    fc.assert(fc.property(vector, vector, vector, between(-1, 1), (from, to, way, by) => {
      const moved = (p: Vector): Vector => [p[0] + by * way[0], p[1] + by * way[1], p[2] + by * way[2]];
      expect(meetingMoved(box, from, to, way)(by)).toBe(firstMeeting(box, moved(from), moved(to)) !== undefined);
    }));
  });
});
