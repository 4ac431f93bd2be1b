/** Maps over plate × object against sums written out plainly, closed forms, and layouts worked out by hand. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { equalModesCoherence } from '../../server/optics/coherence/equal-modes.ts';
import { depthPathChange, pathWalk } from '../../server/optics/depth.ts';
import { contrastTable, darkest, recordedBrightnesses } from '../../server/optics/maps/brightness.ts';
import { differenceExtremes, meanDifference, pathDifference, pathDifferences } from '../../server/optics/maps/differences.ts';
import { offsetFor, pairs } from '../../server/optics/maps/pairs.ts';
import { packed, platePoints, pointAt } from '../../server/optics/maps/points.ts';
import { scatteredLight } from '../../server/optics/maps/scattered.ts';
import { facing, fromFrame, turnedFromFrame } from '../../server/optics/solids/frame.ts';
import { disc, type Solid } from '../../server/optics/solids/solid.ts';
import { lightOnPatches } from '../../server/optics/surface/lit.ts';
import { surfacePatches } from '../../server/optics/surface/patches.ts';
import type { Source } from '../../server/optics/surface/source.ts';
import { angleBetween, angleFromNormal, direction, type Vector } from '../../server/optics/vectors.ts';
import { between, expectNear, expectPrinted, publishedValue } from './outside.ts';

const DEGREE = Math.PI / 180;
const mm = (x: number, y: number, z = 150): Vector => [x / 1000, y / 1000, z / 1000];
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const way = (a: Vector, b: Vector): Vector => [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
const length = (a: Vector, b: Vector): number => Math.sqrt(dot(way(a, b), way(a, b)));
const from = (at: Vector): Source => ({ kind: 'point', at });
const legs = (...points: Vector[]): number => points.slice(1).reduce((all, p, i) => all + length(points[i]!, p), 0);

const place = fc.tuple(between(-1, 1), between(-1, 1), between(-1, 1));
const places = fc.array(place, { minLength: 1, maxLength: 7 });
const source: fc.Arbitrary<Source> = fc.oneof(place.map(from), place.map((at): Source => ({ kind: 'toward', at })), fc.tuple(between(-3, 3), between(-1.5, 1.5)).map(([a, e]): Source => ({ kind: 'parallel', direction: direction(a, e) })));
const scene = fc.record({ plate: places, object: places, reference: source, light: source, offset: between(-0.5, 0.5) });

/** The path to a point, plainly. */
const path = (s: Source, p: Vector): number => (s.kind === 'parallel' ? dot(s.direction, p) : s.kind === 'point' ? length(s.at, p) : -length(s.at, p));
const plainly = (plate: readonly Vector[], object: readonly Vector[], reference: Source, light: Source, offset: number): number[][] =>
  plate.map((p) => object.map((o) => path(light, o) + length(o, p) - path(reference, p) + offset));
const ready = ({ plate, object, reference, light, offset }: { plate: Vector[]; object: Vector[]; reference: Source; light: Source; offset: number }) => pairs(packed(plate), packed(object), reference, light, offset);

describe('path differences', () => {
  it('are sums of distances, pair by pair', () => {
    fc.assert(fc.property(scene, (s) => {
      const [of, slow] = [ready(s), plainly(s.plate, s.object, s.reference, s.light, s.offset)];
      const all = pathDifferences(of);
      expect(all.length).toBe(s.plate.length * s.object.length);
      slow.forEach((row, p) => { row.forEach((value, o) => {
        expectNear(all[p * s.object.length + o]!, value, 1e-12);
        expectNear(pathDifference(of, p, o), value, 1e-12);
      }); });
      s.object.forEach((_, o) => expectNear(meanDifference(of, o), slow.reduce((sum, row) => sum + row[o]!, 0) / slow.length, 1e-12));
      const flat = slow.flat();
      const { least, greatest, largest } = differenceExtremes(of)!;
      expectNear(least.difference, Math.min(...flat), 1e-12);
      expectNear(greatest.difference, Math.max(...flat), 1e-12);
      expectNear(Math.abs(largest.difference), Math.max(...flat.map(Math.abs)), 1e-12);
      for (const pair of [least, greatest, largest]) expectNear(slow[pair.plate]![pair.object]!, pair.difference, 1e-12);
    }));
  });

  it('of several pairs alike the first is the least, and the greatest', () => {
    const line = [[1, 0, 0], [2, 0, 0], [2, 0, 0], [1, 0, 0]] as const;
    const of = pairs(packed([[0, 0, 0], [0, 0, 0]]), packed(line), from([0.5, 0, 0]), from([0, 0, 0]), 0);
    // 1 + 1 − 0.5 and 2 + 2 − 0.5, the same for both points of the plate.
    expect(differenceExtremes(of)).toEqual({ least: { plate: 0, object: 0, difference: 1.5 }, greatest: { plate: 0, object: 1, difference: 3.5 }, largest: { plate: 0, object: 1, difference: 3.5 } });
  });

  it('are written into the array given, where it is long enough', () => {
    const s = { plate: [mm(0, 0), mm(10, 0), mm(20, 0)], object: [mm(0, 300), mm(5, 310)], reference: from(mm(400, 400)), light: from(mm(-300, 0)), offset: 0 };
    const into = new Float64Array(8).fill(7);
    expect(pathDifferences(ready(s), into)).toBe(into);
    expect([...into.subarray(0, 6)]).toEqual([...pathDifferences(ready(s))]);
    expect([...into.subarray(6)]).toEqual([7, 7]);
    expect(pathDifferences(ready(s), new Float64Array(5)).length).toBe(6);
    const exactly = new Float64Array(6);
    expect(pathDifferences(ready(s), exactly)).toBe(exactly);
  });

  it('with the offset of one pair give that pair what is asked for', () => {
    fc.assert(fc.property(scene, between(-0.3, 0.3), (s, asked) => {
      const of = ready({ ...s, offset: offsetFor(s.plate[0]!, s.object[0]!, s.reference, s.light, asked) });
      expectNear(pathDifference(of, 0, 0), asked, 1e-12);
    }));
  });

  it('stay when the table is turned and moved, or seen in a mirror, or measured in other units', () => {
    const turn = fc.tuple(place, between(-3, 3), between(-1.5, 1.5), between(-3, 3)).map(([o, a, e, t]) => facing(o, direction(a, e), t));
    fc.assert(fc.property(scene, turn, fc.boolean(), between(0.1, 10), (s, frame, mirrored, unit) => {
      const flip = (p: Vector): Vector => [mirrored ? -p[0] : p[0], p[1], p[2]];
      const scaled = (p: Vector): Vector => [p[0] * unit, p[1] * unit, p[2] * unit];
      const at = (p: Vector): Vector => fromFrame(frame, scaled(flip(p)));
      const moved = (light: Source): Source => (light.kind === 'parallel' ? { kind: 'parallel', direction: turnedFromFrame(frame, flip(light.direction)) } : { ...light, at: at(light.at) });
      const here = { ...s, offset: offsetFor(s.plate[0]!, s.object[0]!, s.reference, s.light, 0) };
      const there = { plate: s.plate.map(at), object: s.object.map(at), reference: moved(s.reference), light: moved(s.light), offset: 0 };
      there.offset = offsetFor(there.plate[0]!, there.object[0]!, there.reference, there.light, 0);
      const [one, other] = [pathDifferences(ready(here)), pathDifferences(ready(there))];
      one.forEach((value, i) => expectNear(other[i]! / unit, value, 1e-10));
    }));
  });

  it('of a transfer are those of the points of the first hologram: light through one point to all of the image', () => {
    // Hologram to hologram 130 mm (University of Bergen, thesis 404001, 1996, 12.3), replayed by parallel light at 45°, reference of the second parallel at 45° too. By hand: straight ahead 130 mm, 20 mm aside √(130² + 20²);
    // light reaches a point 20 mm to the right of the first 20 sin 45° later, and of the second likewise.
    const light: Source = { kind: 'parallel', direction: direction(45 * DEGREE, 0) };
    const of = pairs(packed([mm(0, 130), mm(20, 130)]), packed([mm(0, 0), mm(20, 0)]), light, light, offsetFor(mm(0, 130), mm(0, 0), light, light, 0));
    const [aside, later] = [Math.hypot(130, 20) - 130, 20 * Math.SQRT1_2];
    [0, aside + later, aside - later, 0].forEach((expected, i) => expectNear(pathDifferences(of)[i]! * 1000, expected, 1e-9));
  });
});

describe('in closed form', () => {
  it('a part that lies behind another changes the path by z (1 + cos ψ), lit from far away, the plate far away', () => {
    fc.assert(fc.property(between(0, 0.1), between(-Math.PI, Math.PI), (depth, psi) => {
      // the plate 10 km along +y, the part behind along −y; light from ψ of the line of sight
      const light: Source = { kind: 'parallel', direction: direction(-90 * DEGREE + psi, 0) };
      const of = pairs(packed([[0, 1e4, 0]]), packed([[0, 0, 0], [0, -depth, 0]]), from([5, 1e4, 0]), light, 0);
      expectNear(pathDifference(of, 0, 1) - pathDifference(of, 0, 0), depthPathChange(depth, psi), 1e-9);
    }));
  });
  it('the walk over the plate is W |sin θ1 − sin θ2| between plane waves', () => {
    const angle = between(-1.4, 1.4);
    fc.assert(fc.property(angle, angle, (theta, object) => {
      // the plate faces +y; angles from its normal, to the right of whoever looks out of it
      const far = 1e4;
      const reference: Source = { kind: 'parallel', direction: [-Math.sin(theta), -Math.cos(theta), 0] };
      const of = pairs(packed([[-0.05, 0, 0], [0.05, 0, 0]]), packed([[far * Math.sin(object), far * Math.cos(object), 0]]), reference, from([0, far, 0]), 0);
      expectNear(Math.abs(pathDifference(of, 1, 0) - pathDifference(of, 0, 0)), pathWalk(0.1, theta, object), 1e-6);
    }));
  });
  it('a reference toward a focus is the one from it, seen backwards', () => {
    fc.assert(fc.property(scene, place, (s, at) => {
      const [out, back] = [ready({ ...s, reference: from(at) }), ready({ ...s, reference: { kind: 'toward', at } })];
      s.plate.forEach((p, i) => expectNear(pathDifference(back, i, 0) - pathDifference(out, i, 0), 2 * length(at, p), 1e-12));
    }));
  });
});

describe('layouts (common practice, worked out by hand)', () => {
  const [S, M1, M2, M3, whelk, P] = [mm(350, 100), mm(1100, 100), mm(94, 420), mm(400, 640), mm(700, 400), mm(700, 700)];
  const plate = facing(P, [0, -1, 0]);
  const differences = (at: readonly Vector[], object: readonly Vector[], light: Source, reference: Source = from(M1)): number[] => {
    const mismatch = legs(S, M2, M3, whelk, P) - legs(S, M1, P);
    return [...pathDifferences(pairs(packed(at), packed(object), reference, light, offsetFor(P, whelk, reference, light, mismatch)))].map((d) => (d - mismatch) * 1000);
  };
  /** The object's middle, and what lies this far behind it as the plate sees it. */
  const behind = (z: number): Vector => mm(700, 400 - z);

  it('two beams, transmission: legs and angles', () => {
    expectPrinted(legs(S, M1, P) * 1000, '1471.1');
    expectPrinted(legs(S, M2, M3, whelk, P) * 1000, '1470.9');
    expectPrinted(angleFromNormal(plate.axes[2], way(M1, P)) / DEGREE, '33.7');
    expectPrinted(angleBetween(way(whelk, M3), way(whelk, P)) / DEGREE, '51.3');
  });
  it('two beams, transmission: ±40 mm of depth is ±65 mm of path, 1.625 z', () => {
    const light: Source = { kind: 'parallel', direction: way(M3, whelk) };
    const [near, far] = differences([P], [behind(-40), behind(40)], light);
    expectPrinted(far!, '65');
    expectPrinted(near!, '-65');
    expectPrinted(far! / 40, '1.625');
    // Spread from M3, 384 mm off, the wave front is curved: the path to M3 bends by z² sin² ψ / (2 · 384) = 1.3 mm at either end, and the mean slope stays.
    const [close, distant] = differences([P], [behind(-40), behind(40)], from(M3));
    expectNear((distant! - close!) / 2, 65, 0.5);
    expectNear((distant! + close!) / 2, (40 * Math.sin(angleBetween(way(whelk, M3), way(whelk, P)))) ** 2 / 2 / 384.2, 0.05);
  });
  it('two beams, transmission: the edges of the plate', () => {
    const edges = [31.75, -31.75, 63.5, -63.5].map((x) => fromFrame(plate, [x / 1000, 0, 0]));
    const walk = differences(edges, [whelk], from(M3));
    ['18.8', '-16.4', '39.8', '-30.4'].forEach((printed, i) => expectPrinted(walk[i]!, printed));
    // the same edges are those of a row of points laid over the plate
    const row = platePoints(plate, 0.127, 0.063, 5, 1, 'to the edges');
    const all = differences([0, 1, 2, 3, 4].map((i) => pointAt(row, i)), [whelk], from(M3));
    ['-30.4', '-16.4', '0', '18.8', '39.8'].forEach((printed, i) => expectPrinted(all[i]!, printed));
  });
  it('two beams, lit from the far side, looks matched in depth: ±40 mm is about ±12 mm', () => {
    const light: Source = { kind: 'parallel', direction: direction(45 * DEGREE, 0) };
    expectPrinted(angleBetween([-1, -1, 0], way(whelk, P)) / DEGREE, '135');
    const [near, far] = differences([P], [behind(-40), behind(40)], light);
    expectPrinted(far!, '12');
    expectPrinted(near!, '-12');
  });
  it('one beam, reflection: z (1 + cos θ), 30 mm at 56.57° is 46.5 mm', () => {
    // Parallel light onto the plate and through it onto the object behind: the same light is reference and object light.
    const light: Source = { kind: 'parallel', direction: direction(-90 * DEGREE + 56.57 * DEGREE, 0) };
    const of = pairs(packed([[0, 0, 0]]), packed([[0, 0, 0], [0, -0.03, 0]]), light, light, 0);
    expectNear(pathDifference(of, 0, 0), 0, 1e-15);
    expectPrinted(pathDifference(of, 0, 1) * 1000, '46.5');
  });
  it('split beam, reflection: legs and the angle of the light', () => {
    const [s, ma, mr, mo1, mo2, o, p] = [mm(150, 200), mm(150, 675.5), mm(450, 250), mm(550, 200), mm(620, 760), mm(780, 500), mm(700, 500)];
    expectPrinted(legs(s, ma, mr, p) * 1000, '1349.7');
    expectPrinted(legs(s, mo1, mo2, o, p) * 1000, '1349.6');
    expectPrinted(angleFromNormal([-1, 0, 0], way(mr, p)) / DEGREE, '45.0');
    const psi = angleBetween(way(o, mo2), way(o, p));
    expectPrinted(psi / DEGREE, '58.4');
    // The part 20 mm behind the middle, by hand: from Mo2 √(180² + 260²) = 316.23, to the plate 100, against 305.29 + 80: 30.94 longer; 20 (1 + cos 58.4°) = 30.5 with parallel light.
    const of = pairs(packed([p]), packed([o, mm(800, 500)]), from(mr), from(mo2), 0);
    expectPrinted((pathDifference(of, 0, 1) - pathDifference(of, 0, 0)) * 1000, '30.94');
    const parallel = pairs(packed([p]), packed([o, mm(800, 500)]), from(mr), { kind: 'parallel', direction: way(mo2, o) }, 0);
    expectPrinted((pathDifference(parallel, 0, 1) - pathDifference(parallel, 0, 0)) * 1000, '30.5');
  });
});

describe('brightness', () => {
  const twoModes = (d: number): number => equalModesCoherence(2, 0.7, d);
  /** A table read plainly: which step, and how far into it. */
  const read = (contrast: (d: number) => number, reach: number, steps: number, d: number): number => {
    const step = reach / steps;
    const k = Math.min(Math.floor(Math.abs(d) / step), steps);
    if (k === steps) return contrast(reach);
    const f = Math.abs(d) / step - k;
    return (1 - f) * contrast(k * step) + f * contrast((k + 1) * step);
  };

  it('is the mean over the plate of the squared contrast, read from the table', () => {
    fc.assert(fc.property(scene, fc.integer({ min: 1, max: 60 }), between(0.05, 3), (s, steps, reach) => {
      const all = recordedBrightnesses(ready(s), contrastTable(twoModes, reach, steps));
      const slow = plainly(s.plate, s.object, s.reference, s.light, s.offset);
      s.object.forEach((_, o) => expectNear(all[o]!, slow.reduce((sum, row) => sum + read(twoModes, reach, steps, row[o]!) ** 2, 0) / slow.length, 1e-9));
    }));
  });
  it('with a fine table is that of the contrast itself', () => {
    fc.assert(fc.property(scene, (s) => {
      const of = ready(s);
      const { difference } = differenceExtremes(of)!.largest;
      const steps = 4096;
      const all = recordedBrightnesses(of, contrastTable(twoModes, Math.abs(difference), steps));
      const slow = plainly(s.plate, s.object, s.reference, s.light, s.offset);
      // |cos(π d / 0.7)|: a straight line misses by at most the step times half its slope at a zero, and less after squaring there
      s.object.forEach((_, o) => expectNear(all[o]!, slow.reduce((sum, row) => sum + Math.cos((Math.PI * row[o]!) / 0.7) ** 2, 0) / slow.length, 2 * ((Math.PI / 0.7) * (Math.abs(difference) / steps)) ** 2));
    }));
  });
  it('by a table of a hundred steps from bright to dark misses a contrast of two modes by 3 · 10⁻⁵', () => {
    const table = contrastTable(twoModes, 0.7, 100 * 2);
    const one = (d: number): number => Math.sqrt(recordedBrightnesses(pairs(packed([[0, 0, 0]]), packed([[0, 0, 0]]), from([0, 0, 0]), from([0, 0, 0]), d), table)[0]!);
    for (let d = 0; d <= 0.7; d += 0.000717) expectNear(one(d), Math.abs(Math.cos((Math.PI * d) / 0.7)), 3.1e-5);
    // beyond its reach the contrast stays
    expect(one(0.9)).toBe(one(0.7));
    expect(one(-0.2)).toBe(one(0.2));
  });
  it('of two modes from a 350 mm tube: full at no mismatch, half at 175 mm, nothing at 350 mm', () => {
    // cos²(π d / 700 mm), once round a tube of 350 mm: any text on two waves that beat
    const table = contrastTable(twoModes, 0.35, 35_000);
    [[0, 1], [0.175, 0.5], [0.35, 0]].forEach(([d, expected]) => {
      expectNear(recordedBrightnesses(pairs(packed([[0, 0, 0]]), packed([[0, 0, 0]]), from([0, 0, 0]), from([0, 0, 0]), d!), table)[0]!, expected!, 1e-8);
    });
  });
  it('goes into the array given, and its worst is found', () => {
    const of = pairs(packed([[0, 0, 0]]), packed([[0, 0.05, 0], [0, 0.16, 0], [0, 0.125, 0]]), from([0, 0, 0]), from([0, 0, 0]), 0);
    const into = new Float64Array(4).fill(9);
    const all = recordedBrightnesses(of, contrastTable(twoModes, 0.7, 1000), into);
    expect(all).toBe(into);
    expect(into[3]).toBe(9);
    const exactly = new Float64Array(3);
    expect(recordedBrightnesses(of, contrastTable(twoModes, 0.7, 1000), exactly)).toBe(exactly);
    expect(recordedBrightnesses(of, contrastTable(twoModes, 0.7, 1000), new Float64Array(2))).toEqual(exactly);
    // there and back 0.1, 0.32 and 0.25 m: cos² of π/0.7 times each is least for 0.32
    expect([...into.subarray(0, 3)].map((b) => Math.round(b * 1e4) / 1e4)).toEqual([0.1, 0.32, 0.25].map((d) => Math.round(Math.cos((Math.PI * d) / 0.7) ** 2 * 1e4) / 1e4));
    expect(darkest(into.subarray(0, 3))).toEqual({ object: 1, brightness: into[1] });
    expect(darkest(Float64Array.of(0.5, 0.25, 1, 0.25))).toEqual({ object: 1, brightness: 0.25 });
  });
});

describe('scattered light', () => {
  const value = publishedValue('lambert-disc');
  const [tone, power, radius, distance] = ['rho', 'P_W', 'R_m', 'd_m'].map((name) => value.input(name)) as [number, number, number, number];
  const light = power / (Math.PI * radius ** 2);
  const patches = surfacePatches(disc([0, 0, 0], [0, 1, 0], 2 * radius), 10_000);
  const lit = lightOnPatches(patches, { kind: 'parallel', direction: [0, -1, 0] }, light, [0, 0, 0]);
  const at = (x: number): number => scatteredLight(packed([[x, distance, 0]]), [0, -1, 0], patches, lit, tone)[0]!;

  it('of a disc is R E a² / (a² + d²) on its axis', () => {
    value.check(at(0));
  });
  it('of the same disc 100 mm beside its axis is 0.0101347 W/m² (computed outside by quadrature)', () => expectNear(at(0.1), 0.0101347, 1e-6));
  it('is the sum over patches of R E cos θs cos θp dA / (π r²)', () => {
    const vase: Solid = { kind: 'cylinder', middle: [0, 0, 0], axis: [0, 0, 1], radius: 0.03, height: 0.1 };
    const some = surfacePatches(vase, 150);
    const frame = facing([0.05, 0.3, 0.02], [-0.1, -1, 0.05]);
    const plate = platePoints(frame, 0.2, 0.1, 5, 3, 'in cells');
    const from2 = lightOnPatches(some, from([0.5, 0.5, 0]), 3, [0, 0, 0]);
    const all = scatteredLight(plate, frame.axes[2], some, from2, 0.4);
    for (let p = 0; p < 15; p++) {
      const here = pointAt(plate, p);
      let sum = 0;
      some.forEach((patch, i) => {
        const [r, out, back] = [length(patch.point, here), way(patch.point, here), way(here, patch.point)];
        const [s, t] = [dot(patch.normal, out) / r, dot(frame.axes[2], back) / r];
        if (s > 0 && t > 0) sum += (0.4 * from2[i]! * s * t * patch.area) / (Math.PI * r * r);
      });
      expectNear(all[p]!, sum, 1e-12);
      expect(sum).toBeGreaterThan(0);
    }
  });
  // A way of (2, 3, 6) is 7 long: E dA · 0.5/π · 2/7, 3/7 or 6/7 at the patch / 49, for a plate at right angles to it; without a normal the patch sends as much to every side.
  it.each<[Vector, number]>([[[1, 0, 0], 2], [[0, 1, 0], 3], [[0, 0, 1], 6], [[0, 0, 0], 7]])('of a patch that looks along %j to where (2, 3, 6) is goes by %d/7', (normal, sevenths) => {
    const [sent] = scatteredLight(packed([[2, 3, 6]]), [-2, -3, -6], [{ point: [0, 0, 0], normal, area: 1e-4 }], Float64Array.of(3), 0.5);
    expectNear(sent! / ((3e-4 * 0.5 * sevenths) / (7 * 49 * Math.PI)), 1, 1e-12);
  });
  it('goes into the array given, where it is long enough', () => {
    const three = packed([[0, distance, 0], [0.1, distance, 0], [0, -distance, 0]]);
    const sent = scatteredLight(three, [0, -1, 0], patches, lit, tone);
    expect([...sent]).toEqual([at(0), at(0.1), 0]);
    const [into, exactly] = [new Float64Array(4).fill(9), new Float64Array(3)];
    expect(scatteredLight(three, [0, -1, 0], patches, lit, tone, into)).toBe(into);
    expect([...into]).toEqual([...sent, 9]);
    expect(scatteredLight(three, [0, -1, 0], patches, lit, tone, exactly)).toBe(exactly);
    expect(scatteredLight(three, [0, -1, 0], patches, lit, tone, new Float64Array(2))).toEqual(sent);
  });
  it('from behind the plate, or from a dark side, is none', () => {
    expect(scatteredLight(packed([[0, distance, 0]]), [0, 1, 0], patches, lit, tone)[0]).toBe(0);
    expect(scatteredLight(packed([[0, -distance, 0]]), [0, 1, 0], patches, lit, tone)[0]).toBe(0);
  });
  it('never is more than the light that fell on the object: over a closed shell it is R of it', () => {
    // A cube of plates around a sphere that is lit from one side: what they take up together is R times what it takes up.
    const ball = surfacePatches({ kind: 'sphere', middle: [0, 0, 0], radius: 0.02 }, 2000);
    const on = lightOnPatches(ball, { kind: 'parallel', direction: [1, 0, 0] }, 5, [0, 0, 0]);
    let taken = 0;
    for (const [axis, side] of [[0, 1], [0, -1], [1, 1], [1, -1], [2, 1], [2, -1]] as const) {
      const out: [number, number, number] = [0, 0, 0];
      out[axis] = side;
      const wall = platePoints(facing([out[0] * 0.2, out[1] * 0.2, out[2] * 0.2], [-out[0], -out[1], -out[2]]), 0.4, 0.4, 40, 40, 'in cells');
      taken += scatteredLight(wall, [-out[0], -out[1], -out[2]], ball, on, 0.6).reduce((a, b) => a + b, 0) * 0.01 ** 2;
    }
    expectNear(taken, 0.6 * 5 * Math.PI * 0.02 ** 2, 0.003 * taken);
  });
});

describe('points of a plate', () => {
  const frame = facing(mm(700, 700), [0, -1, 0]);
  it('go from the lower left to the upper right, to the edges or in cells', () => {
    const edges = platePoints(frame, 0.1, 0.06, 3, 2, 'to the edges');
    const shown = (points: Float64Array): number[][] => Array.from({ length: points.length / 3 }, (_, i) => pointAt(points, i).map((x) => Math.round(x * 1e6) / 1e3));
    expect(shown(edges)).toEqual([[650, 700, 120], [700, 700, 120], [750, 700, 120], [650, 700, 180], [700, 700, 180], [750, 700, 180]]);
    expect(shown(platePoints(frame, 0.1, 0.06, 2, 2, 'in cells'))).toEqual([[675, 700, 135], [725, 700, 135], [675, 700, 165], [725, 700, 165]]);
    expect(shown(platePoints(frame, 0.1, 0.06, 1, 1, 'to the edges'))).toEqual([[700, 700, 150]]);
  });
});

it('without points there is nothing, and nothing throws', () => {
  const none = new Float64Array(0);
  for (const of of [pairs(none, packed([[0, 0, 0]]), from([0, 0, 0]), from([0, 0, 0]), 0), pairs(packed([[0, 0, 0]]), none, from([0, 0, 0]), from([0, 0, 0]), 0)]) {
    expect(pathDifferences(of).length).toBe(0);
    expect(differenceExtremes(of)).toBeUndefined();
    expect(meanDifference(of, 0)).toBe(0);
    expect(pathDifference(of, 0, 0)).toBe(0);
    expect([...recordedBrightnesses(of, contrastTable(() => 1, 1, 10))].every((b) => b === 0)).toBe(true);
  }
  expect(darkest(none)).toBeUndefined();
});

it('numbers outside all domains give finite results', () => {
  const any = fc.oneof(fc.double(), between(-2, 2), fc.constantFrom(0, -0, 1e-300, 1e300, Infinity, -Infinity, NaN));
  const wild = fc.tuple(any, any, any);
  const odd = fc.oneof(fc.constantFrom('point', 'toward').chain((kind) => wild.map((at): Source => ({ kind, at }))), wild.map((d): Source => ({ kind: 'parallel', direction: d })));
  const few = fc.oneof(between(-3, 5), fc.constantFrom(NaN, -Infinity));
  fc.assert(fc.property(fc.array(any, { maxLength: 12 }), wild, odd, odd, any, any, few, (numbers, p, reference, light, x, y, n) => {
    const plate = platePoints(facing(p, p), x, y, n, n, 'to the edges');
    const of = pairs(plate, Float64Array.from(numbers), reference, light, x);
    const table = contrastTable((d) => d * y, x, n);
    const patches = surfacePatches({ kind: 'sphere', middle: p, radius: x }, n);
    const { least, greatest, largest } = differenceExtremes(of) ?? {};
    const all = [...pathDifferences(of), ...[least, greatest, largest].flatMap((pair) => Object.values<number>({ ...pair })), meanDifference(of, x), pathDifference(of, x, y), ...recordedBrightnesses(of, table),
      offsetFor(p, p, reference, light, y), ...scatteredLight(plate, p, [...patches, { point: p, normal: p, area: y }], Float64Array.from(numbers), y), table.step, ...table.contrasts];
    expect(all.every(Number.isFinite)).toBe(true);
  }), { numRuns: 1000 });
});
