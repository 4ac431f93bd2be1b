/** The mismatch over the depth of an object: a part that lies z behind the middle has z·(1 + cos ψ) more path (geometry). */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { profile } from '../../server/results/paths/pairs.ts';
import { expectNear, read, serious, setup } from './read.ts';

const lit = (mismatch: number, object: readonly string[], laser: readonly string[] = ['coherence length: 200 mm', 'coherence contrast: 50%']): ReturnType<typeof read> => read(setup(
  'laser red {', ...laser.map(f => `  ${f}`), '}', 'splitter S1', 'object whelk {', ...object.map(f => `  ${f}`), '}', 'plate P1',
  'beam raw from red', '  -> S1: 350 mm', 'beam reference from S1 through', '  -> P1: 1500 mm', 'beam object from S1 reflected', `  -> whelk: ${1200 + mismatch} mm`, '  -> P1: 300 mm',
));
const ends = (r: ReturnType<typeof read>): [number, number] => [r.mm('P1.object.near.mismatch'), r.mm('P1.object.far.mismatch')];
const expectEnds = (r: ReturnType<typeof read>, near: number, far: number): void => {
  expectNear(ends(r)[0], near, 1e-9);
  expectNear(ends(r)[1], far, 1e-9);
};

describe('near and far', () => {
  test.each([
    ['front', '0°', 2], ['side', '90°', 1], ['behind', '180°', 0], ['45°', '45°', 1 + Math.SQRT1_2], ['60°', '60°', 1.5],
  ])('lit from the %s', (_, angle, factor) => {
    expectEnds(lit(0, ['depth: 50 mm', `lit at: ${angle}`]), -25 * factor, 25 * factor);
    expectEnds(lit(12, ['depth: 50 mm', `lit at: ${angle}`]), 12 - 25 * factor, 12 + 25 * factor);
  });
  test('the trade\'s figures: ±40 mm lit at 51.3° make ±65 mm, 30 mm behind a plate lit at 56.57° 46.5 mm, 50 mm at 45° 85.355 mm', () => {
    expect(ends(lit(0, ['depth: 80 mm', 'lit at: 51.3°'])).map(mm => mm.toFixed(0))).toEqual(['-65', '65']);
    const [near, far] = ends(lit(0, ['depth: 30 mm', 'lit at: 56.57°']));
    expect((far - near).toFixed(1)).toBe('46.5');
    const [n, f] = ends(lit(0, ['depth: 50 mm', 'lit at: 45°']));
    expect((f - n).toFixed(3)).toBe('85.355');
  });
  test('a depth of nothing has its ends in the middle', () => { expectEnds(lit(7, ['depth: 0 mm', 'lit at: 30°']), 7, 7); });
  test('the depth is the last of three sizes where it has no line of its own', () => {
    expectEnds(lit(0, ['size: 40 x 60 x 35 mm', 'lit at: 90°']), -17.5, 17.5);
    expectEnds(lit(0, ['size: 40 x 60 x 35 mm', 'depth: 20 mm', 'lit at: 90°']), -10, 10);
    expect(lit(0, ['size: 40 x 60 mm', 'lit at: 90°']).results.graph.find('P1.object.far.mismatch')).toBeUndefined();
  });
  test('an angle that is not written is taken as 45° ± 30°, and said to be a guess', () => {
    const r = lit(0, ['depth: 50 mm']);
    expectEnds(r, -25 * (1 + Math.SQRT1_2), 25 * (1 + Math.SQRT1_2));
    expect(r.cell('whelk.lit at')).toMatchObject({ origin: 'assumed' });
    // 25 mm · sin 45° · 30° / √3
    expectNear(r.u('P1.object.far.mismatch') * 1e3, (25 * Math.SQRT1_2 * (Math.PI / 6)) / Math.sqrt(3), 1e-9);
  });
  test('the uncertainty is that of mismatch, depth and angle together', () => {
    const r = lit(0, ['depth: 50 mm ± 6 mm', 'lit at: 60° ± 3°']);
    const [byDepth, byAngle] = [0.5 * 1.5 * 6, 25 * Math.sin(Math.PI / 3) * (Math.PI / 60)];
    expectNear(r.u('P1.object.far.mismatch') * 1e3, Math.hypot(byDepth, byAngle) / Math.sqrt(3), 1e-9);
    expectNear(r.u('P1.object.near.mismatch') * 1e3, Math.hypot(byDepth, byAngle) / Math.sqrt(3), 1e-9);
  });
  test('the depth of a hologram\'s image is kept, and has no ends', () => {
    const r = read(setup('laser red {', '  coherence length: 1 m', '}', 'splitter S1', 'hologram H1 {', '  depth: 50 mm', '}', 'plate P1', 'beam raw from red', '  -> S1: 350 mm', 'beam reference from S1 through', '  -> P1: 1500 mm', 'beam master from S1 reflected', '  -> H1: 1200 mm', 'beam image from H1 diffracted', '  -> P1: 300 mm'));
    expect(r.results.plates[0]!.pairs[0]!.parts.map(p => p.part)).toEqual(['middle']);
  });
});

describe('brightness over the depth', () => {
  test('is that of the part\'s own mismatch', () => {
    // Lit from the side: ends at 30 ± 25 mm. Gaussian, one half at 200 mm: 0.5^(2 (δ/200)²)
    const r = lit(30, ['depth: 50 mm', 'lit at: 90°']);
    for (const [name, mm] of [['near.', 5], ['', 30], ['far.', 55], ['darkest.', 55]] as const) expectNear(r.value(`P1.object.${name}brightness`), 0.5 ** (2 * (mm / 200) ** 2), 1e-9, name);
  });
  test('the darkest part is the darkest of all, also where it lies inside', () => {
    fc.assert(fc.property(fc.integer({ min: -900, max: 900 }), fc.integer({ min: 1, max: 400 }), fc.integer({ min: 0, max: 180 }), fc.integer({ min: 1, max: 5 }), (mismatch, depth, angle, modes) => {
      const r = lit(mismatch, [`depth: ${depth} mm`, `lit at: ${angle}°`], ['tube length: 150 mm', `modes: ${modes}`]);
      const at = (share: number): number => {
        const u = (mismatch + share * depth * (1 + Math.cos((angle * Math.PI) / 180))) / 300;
        const phases = Array.from({ length: modes }, (_, k) => 2 * Math.PI * k * u);
        return (Math.hypot(phases.reduce((s, p) => s + Math.cos(p), 0), phases.reduce((s, p) => s + Math.sin(p), 0)) / modes) ** 2;
      };
      const shares = Array.from({ length: 41 }, (_, i) => i / 40 - 0.5);
      expectNear(r.value('P1.object.darkest.brightness'), Math.min(...shares.map(at)), 1e-9);
      const drawn = profile(r.results.graph, r.results.plates[0]!.pairs[0]!);
      expect(drawn.map(p => p.share)).toEqual(shares);
      drawn.forEach(p => { expectNear(p.brightness, at(p.share), 1e-9); });
      for (const part of ['near', 'far']) expect(r.value(`P1.object.${part}.brightness`)).toBeGreaterThanOrEqual(r.value('P1.object.darkest.brightness') - 1e-9);
    }), { numRuns: 150 });
  });
  test('matching the middle is best where the brightness falls off evenly', () => {
    const darkest = (mismatch: number): number => lit(mismatch, ['depth: 60 mm', 'lit at: 90°']).value('P1.object.darkest.brightness');
    for (const mm of [5, 20, 50, 120]) {
      expect(darkest(mm)).toBeLessThan(darkest(0));
      expectNear(darkest(mm), darkest(-mm), 1e-12);
    }
  });
  test('an object too deep for its laser is one finding, its mismatch another', () => {
    // Lit from the front the ends of 160 mm lie 160 mm off: 0.5^(2·0.64) = 0.41 with matched paths.
    expect(serious(lit(0, ['depth: 160 mm', 'lit at: 0°']).snapshot.findings)).toEqual(['7 object-too-deep']);
    expect(serious(lit(100, ['depth: 20 mm', 'lit at: 90°']).snapshot.findings)).toEqual(['16 arms-mismatched']);
    expect(serious(lit(0, ['depth: 20 mm', 'lit at: 90°']).snapshot.findings)).toEqual([]);
  });
});
