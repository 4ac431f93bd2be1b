/** What holds for every table: turning, mirroring and shifting it changes no length and no angle; how sure places are carries over to both. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sample } from '../../server/results/sampling.ts';
import { expectNear, read, serious, setup, type Read } from './read.ts';

type Point = readonly [number, number, number];
const NAMES = ['reference.1.length', 'reference.2.length', 'object.1.length', 'object.2.length', 'object.3.length', 'reference length', 'object length', 'mismatch', 'reference angle', 'object angle', 'lighting angle', 'S1.incidence', 'M1.incidence', 'M2.incidence'];
const FIXED: readonly string[] = ['red', 'S1', 'M1', 'M2', 'whelk', 'P1'];

function page(points: readonly Point[], more = ''): Read {
  const [red, S1, M1, M2, whelk, P1] = points.map(p => `(${p.map(c => c.toFixed(9)).join(', ')}) mm${more}`);
  return read(setup(
    `laser red at ${red!} facing S1 {`, '  coherence length: 1 m', '}', `splitter S1 at ${S1!}`, `mirror M1 at ${M1!}`, `mirror M2 at ${M2!}`, `object whelk at ${whelk!} {`, '  depth: 60 mm', '}', `plate P1 at ${P1!} facing whelk`,
    'beam raw from red', '  -> S1', 'beam reference from S1 through', '  -> M1', '  -> P1', 'beam object from S1 reflected', '  -> M2', '  -> whelk', '  -> P1', ...['S1', 'M1', 'M2'].map(t => `expect ${t}.incidence < 90°`),
  ));
}
const coordinate = fc.integer({ min: -800, max: 800 });
const table = fc.array(fc.tuple(coordinate, coordinate, coordinate), { minLength: 6, maxLength: 6 })
  .filter(ps => ps.every((p, i) => ps.every((q, j) => i === j || Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]) > 60)));
const turn = ([x, y, z]: Point, a: number, b: number): Point => {
  const [u, v] = [x * Math.cos(a) - y * Math.sin(a), x * Math.sin(a) + y * Math.cos(a)];
  return [u * Math.cos(b) - z * Math.sin(b), v, u * Math.sin(b) + z * Math.cos(b)];
};

test('turning, mirroring and shifting the whole table changes nothing', () => {
  fc.assert(fc.property(table, fc.double({ min: 0, max: 6.28, noNaN: true }), fc.double({ min: 0, max: 6.28, noNaN: true }), fc.tuple(coordinate, coordinate, coordinate), fc.boolean(), (points, a, b, [dx, dy, dz], mirrored) => {
    const moved = points.map(p => turn(p, a, b)).map(([x, y, z]): Point => [(mirrored ? -x : x) + dx, y + dy, z + dz]);
    const [before, after] = [page(points), page(moved)];
    // Angles near 0° and 180° are as fine as the root of the rounding of the coordinates.
    for (const name of NAMES) expectNear(after.value(name), before.value(name), 1e-7, name);
  }), { numRuns: 60 });
});

test('lengths and angles by the formulas of the plane and of space', () => {
  fc.assert(fc.property(table, points => {
    const r = page(points);
    const of = (name: string): Point => points[FIXED.indexOf(name)]!;
    const minus = (p: Point, q: Point): Point => [p[0] - q[0], p[1] - q[1], p[2] - q[2]];
    const length = (a: string, b: string): number => Math.sqrt(minus(of(a), of(b)).reduce((s, c) => s + c * c, 0));
    /** Angle at B between A and C, by the law of cosines. */
    const corner = (a: string, b: string, c: string): number => Math.acos(Math.max(-1, Math.min(1, (length(a, b) ** 2 + length(b, c) ** 2 - length(a, c) ** 2) / (2 * length(a, b) * length(b, c)))));
    expectNear(r.mm('object length'), length('S1', 'M2') + length('M2', 'whelk') + length('whelk', 'P1'), 1e-6);
    expectNear(r.value('lighting angle'), corner('M2', 'whelk', 'P1'), 1e-6);
    expectNear(r.value('M1.incidence'), corner('S1', 'M1', 'P1') / 2, 1e-6);
    expectNear(r.value('S1.incidence'), corner('red', 'S1', 'M2') / 2, 1e-6);
    const reference = corner('M1', 'P1', 'whelk');
    expectNear(r.value('reference angle'), Math.min(reference, Math.PI - reference), 1e-6);
  }), { numRuns: 60 });
});

describe('how sure it is', () => {
  const POINTS: readonly Point[] = [[60, 100, 120], [350, 100, 120], [1100, 100, 130], [94, 420, 120], [700, 400, 110], [700, 700, 120]];
  const give = 2;
  test('by moving each coordinate a little', () => {
    const r = page(POINTS, ` ± ${give} mm`);
    for (const name of NAMES.filter(n => n !== 'object angle')) {
      let sum = 0;
      for (const [i] of POINTS.entries()) {
        for (let axis = 0; axis < 3; axis++) {
          const by = (d: number): number => page(POINTS.map((p, k) => (k === i ? p.map((c, n) => (n === axis ? c + d : c)) as unknown as Point : p))).value(name);
          sum += (((by(0.01) - by(-0.01)) / 0.02) * give) ** 2 / 3;
        }
      }
      expectNear(r.u(name), Math.sqrt(sum), 1e-3 * Math.sqrt(sum), name);
    }
  });
  test('by drawing them', () => {
    const r = page(POINTS, ` ± ${give} mm`);
    for (const name of ['object length', 'mismatch', 'lighting angle', 'M1.incidence']) {
      const cell = r.cell(name);
      // 200 draws tell a standard deviation to 1/√400 = 5 %; three times that.
      expectNear(sample(r.results.graph, cell)!.std, r.u(name), 0.15 * r.u(name), name);
    }
  });
  test('where light meets the plate squarely, any error opens the angle: first order would say none', () => {
    const r = page(POINTS.map((p, i) => (i === 4 ? [700, 400, 120] : p)), ' ± 2 mm');
    const band = sample(r.results.graph, r.cell('object angle'))!;
    // The plate is turned to the middle of the object wherever that is.
    expectNear(band.high, 0, 1e-7);
    const level = read(r.snapshot.text.replace('facing whelk', 'heading 270°'));
    // 2 mm either way at both ends over 300 mm, across and in height: up to √2 · 4 / 300 = 18.9 mrad
    const open = sample(level.results.graph, level.cell('object angle'))!;
    expect(open.low).toBeGreaterThan(0);
    expect(open.high).toBeGreaterThan(5e-3);
    expect(open.high).toBeLessThan(19e-3);
  });
  test('what two legs share cancels: the place of a mirror between them', () => {
    // M1 lies on the straight way from S1 to the stop: shifting it along makes one leg longer and the other shorter.
    const r = read(setup('laser red at (0, 0) mm', 'mirror M1 at (500, 0) mm ± 3 mm', 'plate P1 at (900, 0) mm', 'beam all from red', '  -> M1', '  -> P1'));
    expectNear(r.u('all.1.length') * 1e3, 3 / Math.sqrt(3), 1e-9);
    expectNear(r.u('reference length') * 1e3, 0, 1e-9);
  });
  test('one number of a place, a whole place, a place by formula', () => {
    const u = (place: string): number => read(setup('let gap = 50 mm', 'laser red at (0, 0) mm', `beam stop B1 at ${place}`, 'beam raw from red', '  -> B1')).u('raw.1.length') * 1e3;
    expectNear(u('(500 ± 3, 0) mm'), 3 / Math.sqrt(3), 1e-9);
    expectNear(u('(500, 0) mm ± 3 mm'), 3 / Math.sqrt(3), 1e-9);
    expectNear(u('(500, 0) mm ± 3 mm std'), 3, 1e-9);
    expectNear(u('(10 * gap, 0 mm) mm ± 3 mm'), 3 / Math.sqrt(3), 1e-9);
    expectNear(u('(500 ± 1, 0) mm ± 3 mm'), 1 / Math.sqrt(3), 1e-9);
    expectNear(u('(10 * gap, 0 mm)'), 0, 1e-9);
  });
  test('a distance and an angle of a row of things', () => {
    // B1 is 300 mm ± 3 mm to the left of M1, which is 400 mm behind the laser; turned by 90° ± 0.6°, it swings by 300 · 0.6° across.
    const r = read(setup('laser red at (0, 0) mm heading 0°', 'mirror M1 beyond red by 400 mm', 'beam stop B1 beyond M1 by 300 mm ± 3 mm turning 90° ± 0.6°', 'beam stop B2 at (400, 700) mm', 'beam stop B3 at (900, 300) mm', 'beam raw from red', '  -> M1', '  -> B1'));
    expect(serious(r.snapshot.findings)).toEqual([]);
    expectNear(r.u('B1.y') * 1e3, 3 / Math.sqrt(3), 1e-6);
    expectNear(r.u('B1.x') * 1e3, (300 * 0.6 * Math.PI) / 180 / Math.sqrt(3), 1e-6);
    // Along the leg only the distance counts.
    expectNear(r.u('raw.2.length') * 1e3, 3 / Math.sqrt(3), 1e-6);
  });
});
