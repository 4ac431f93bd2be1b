/** How wide beams are along the arms of whole setups, against numbers worked out another way. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import { between } from '../optics/outside.ts';

const PAGE = (laser: string, things: string, legs: string): string => `setup "Whelk shell" {
  laser red {
    wavelength: 632.8 nm
    ${laser}
  }
${things}
  screen end

  beam raw from red
${legs}
}
`;

/** The diameter in m at the end of a leg of `raw`. */
function width(text: string, leg: number): number {
  const { results: [r], findings } = analyse('file:///a.plate', text);
  expect(findings.filter(f => f.severity === 'error')).toEqual([]);
  const cell = r!.ask(`raw.${leg}.beam diameter`)!;
  expect(cell.missing).toBeUndefined();
  return r!.graph.value(cell)!;
}
const LASER = 'beam diameter: 0.8 mm\n    beam quality: 1';

describe('a beam widens', () => {
  // Closed form w(z) = w₀√(1+(z/z_R)²), z_R = πw₀²/λ = 0.79433 m for w₀ 0.4 mm at 632.8 nm (Siegman, Lasers, ch. 17).
  it('by itself, as the textbook says', () => {
    expect(width(PAGE(LASER, '', '    -> end: 1000 mm'), 1) / 2).toBeCloseTo(0.643101e-3, 9);
    expect(width(PAGE(LASER, '', '    -> end: 2000 mm'), 1) / 2).toBeCloseTo(1.083659e-3, 9);
  });
  it('as its written divergence says, far away', () => {
    expect(width(PAGE('beam diameter: 0.8 mm\n    divergence: 2 mrad', '', '    -> end: 100 m'), 1) / 0.2).toBeCloseTo(1, 3);
  });
  // Far from the focus w ≈ r z / f, z from the focus: 1 m behind the focus of an objective. Values of the formula for r 0.4 mm at the lens.
  it.each([['16.5 mm', 24.242], ['9 mm', 44.444], ['4.5 mm', 88.889]])('behind a spreader of %s', (focal, mm) => {
    const f = Number.parseFloat(focal);
    const page = PAGE('beam diameter: 0.8 mm\n    beam quality: 1', `  spreader R1 {\n    focal length: ${focal}\n  }`, `    -> R1: 0.001 mm\n    -> end: ${1000 + f} mm`);
    expect(width(page, 2) / 2e-3 / mm).toBeCloseTo(1, 2);
  });
  it('behind a lens that spreads, r (1 + z / |f|)', () => {
    expect(width(PAGE(LASER, '  spreader R1 {\n    focal length: -10 mm\n  }', '    -> R1: 0.001 mm\n    -> end: 1000 mm'), 2) / 2e-3).toBeCloseTo(40.4, 1);
  });
});

describe('a collimator', () => {
  // An afocal pair widens by f₂ / |f₁|: −25 and +200 mm give 8 times.
  it('one focal length from the focus keeps the width', () => {
    const page = PAGE(LASER, '  spreader R1 {\n    focal length: -25 mm\n  }\n  collimator C1 {\n    focal length: 200 mm\n  }', '    -> R1: 0.001 mm\n    -> C1: 175 mm\n    -> end: 500 mm');
    expect(width(page, 2) / 0.8e-3).toBeCloseTo(8, 1);
    expect(width(page, 3) / width(page, 2)).toBeCloseTo(1, 2);
  });
  it('is what a curved mirror is, met nearly squarely', () => {
    const spread = '  spreader R1 {\n    focal length: 9 mm\n  }\n';
    const legs = (thing: string): string => `    -> R1: 300 mm\n    -> ${thing}: 759 mm\n    -> end: 900 mm`;
    const lens = width(PAGE(LASER, `${spread}  collimator C1 {\n    focal length: 750 mm\n  }`, legs('C1')), 3);
    const mirror = width(PAGE(LASER, `${spread}  mirror M1 {\n    focal length: 750 mm\n  }`, legs('M1')), 3);
    expect(mirror).toBe(lens);
  });
});

describe('a pair of equal lenses', () => {
  it('two focal lengths apart hands the waist on as it was', () => {
    fc.assert(fc.property(between(5, 80), between(100, 900), (f, l) => {
      // Twice through a lens with 2f between: a beam that starts at its waist in one focal plane has its waist in the other.
      const page = PAGE(LASER, `  lens L1 {\n    focal length: ${f} mm\n  }\n  lens L2 {\n    focal length: ${f} mm\n  }`, `    -> L1: ${f} mm\n    -> L2: ${2 * f} mm\n    -> end: ${f + l} mm`);
      // After the pair the waist of 0.4 mm stands f behind L2; l further on the beam is as wide as one that went l from the laser.
      const direct = PAGE(LASER, '', `    -> end: ${l} mm`);
      expect(width(page, 3) / width(direct, 1)).toBeCloseTo(1, 6);
    }), { numRuns: 20 });
  });
});

describe('what is not known is said', () => {
  it('a spreader without a focal length', () => {
    const { results: [r] } = analyse('file:///a.plate', PAGE(LASER, '  spreader R1', '    -> R1: 300 mm\n    -> end: 759 mm'));
    expect(r!.ask('raw.2.beam diameter')!.missing?.why).toBe('the focal length of R1 is not written');
    expect(r!.graph.value(r!.ask('raw.1.beam diameter')!)).toBeGreaterThan(0.8e-3);
  });
  it('behind a ground glass', () => {
    const { results: [r] } = analyse('file:///a.plate', PAGE(LASER, '  ground glass G1', '    -> G1: 300 mm\n    -> end: 759 mm'));
    expect(r!.ask('raw.2.beam diameter')!.missing?.why).toMatch(/scatters/);
  });
});

it('behind a curved mirror that folds the light has two widths, each told which it is; else one', () => {
  const text = `setup "Whelk shell" {
  laser red at (0, 0) mm heading 0° {
    wavelength: 632.8 nm
    beam diameter: 0.8 mm
    beam quality: 1
  }
  mirror M1 at (1000, 0) mm {
    focal length: 1000 mm
  }
  screen end at (1000, 500) mm
  beam raw from red
    -> M1
    -> end
}
`;
  const r = analyse('file:///a.plate', text).results[0]!;
  const cell = (name: string): { readonly words: string; readonly mm: number } => { const c = r.ask(name)!; expect(c.missing).toBeUndefined(); return { words: c.words, mm: r.graph.value(c)! * 1000 }; };
  // Met at 45° it focuses at f cos 45° level and at f / cos 45° upright (Coddington). From the waist of 0.4 mm: w after 1 m, R there, and
  // w′² = w² (1 + D/R − D/f)² + (λD/πw)² (Kogelnik & Li, Appl. Opt. 5, 1550 (1966)).
  const rayleigh = (Math.PI * 0.4 ** 2) / 632.8e-6;
  const [w, bend] = [0.4 * Math.sqrt(1 + (1000 / rayleigh) ** 2), 500 * (1000 / (1000 ** 2 + rayleigh ** 2))];
  const across = (f: number): number => 2 * Math.hypot(w * (1 + bend - 500 / f), (632.8e-6 * 500) / (Math.PI * w));
  const [level, upright] = [cell('raw.2.beam diameter'), cell('raw.2.beam diameter upright')];
  expect(level.mm).toBeCloseTo(across(1000 * Math.SQRT1_2), 9);
  expect(upright.mm).toBeCloseTo(across(1000 / Math.SQRT1_2), 9);
  expect([level.words, upright.words]).toEqual(['level width of raw at end', 'upright width of raw at end']);
  expect(cell('raw.1.beam diameter')).toEqual({ ...cell('raw.1.beam diameter upright'), words: 'width of raw at M1' });
});
