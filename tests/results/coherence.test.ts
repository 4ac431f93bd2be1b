/**
 * How brightly a part records, by what is known of the laser. Formulas: a line's contrast is the size of the Fourier transform of its shape, and brightness
 * the square of the contrast (Goodman, Statistical Optics, 1985, §5.1.3; Collier, Burckhardt & Lin, Optical Holography, 1971, ch. 7; from memory).
 */
import { describe, expect, test } from 'vitest';
import { sample } from '../../server/results/sampling.ts';
import { expectNear, read, serious, setup } from './read.ts';

const C = 299_792_458;
/** Arms that differ by so many millimetres, with facts of the laser. */
const laser = (mismatch: number, ...facts: string[]): ReturnType<typeof read> => read(setup(
  'laser red {', ...facts.map(f => `  ${f}`), '}', 'splitter S1', 'object whelk', 'plate P1', 'beam raw from red', '  -> S1: 350 mm', 'beam reference from S1 through', '  -> P1: 1500 mm', 'beam object from S1 reflected', `  -> whelk: ${1200 + mismatch} mm`, '  -> P1: 300 mm',
));
const brightness = (mismatch: number, ...facts: string[]): number => laser(mismatch, ...facts).value('brightness');

describe('a coherence length, with the contrast that it stands for', () => {
  test.each(['gaussian', 'lorentzian', 'rectangular'])('at the length itself the contrast is the stated one: %s', shape => {
    for (const contrast of [0.5, 0.37, 0.71]) expectNear(brightness(200, 'coherence length: 200 mm', `coherence contrast: ${contrast}`, `line shape: ${shape}`), contrast ** 2, 1e-9);
  });
  test('gaussian: contrast^((ΔL/L)²), and one half where nothing is said', () => {
    // 0.5^(1/4) at half the length, squared: 1/√2
    expectNear(brightness(100, 'coherence length: 200 mm'), Math.SQRT1_2, 1e-9);
    expectNear(brightness(-100, 'coherence length: 200 mm'), Math.SQRT1_2, 1e-9);
    expectNear(brightness(400, 'coherence length: 200 mm'), 0.5 ** 8, 1e-9);
    expectNear(brightness(100, 'coherence length: 200 mm', 'coherence contrast: 37%'), 0.37 ** 0.5, 1e-9);
  });
  test('lorentzian: contrast^(ΔL/L)', () => {
    expectNear(brightness(100, 'coherence length: 200 mm', 'line shape: lorentzian'), 0.5, 1e-9);
    expectNear(brightness(50, 'coherence length: 200 mm', 'line shape: lorentzian', 'coherence contrast: 37%'), 0.37 ** 0.5, 1e-9);
  });
  test('matched paths are fully bright', () => {
    for (const facts of [['coherence length: 1 mm'], ['linewidth: 100 GHz'], ['tube length: 150 mm', 'modes: 3'], ['tube length: 350 mm', 'wavelength: 632.8 nm']]) expectNear(brightness(0, ...facts), 1, 1e-12);
  });
  test('the assumed contrast is a guess with its reason', () => {
    const r = laser(100, 'coherence length: 200 mm');
    expect(r.cell('red.coherence contrast')).toMatchObject({ origin: 'assumed' });
    expect(r.cell('red.coherence contrast').reason).toMatch(/50 %/);
    expect(laser(100, 'coherence length: 200 mm', 'coherence contrast: 50%').cell('red.coherence contrast').origin).toBe('written');
  });
});

describe('a linewidth', () => {
  test('1.5 GHz, gaussian: contrast one half at 0.441271 c/Δν = 88.19 mm', () => {
    // exp(−(πx)²/(4 ln 2)) = 1/2 at x = 2 ln 2/π
    const half = ((2 * Math.LN2) / Math.PI) * (C / 1.5e9);
    expect((half * 1e3).toFixed(2)).toBe('88.19');
    expectNear(laser(0, 'linewidth: 1.5 GHz').value('red.coherence length'), half, 1e-9);
    expectNear(brightness(half * 1e3, 'linewidth: 1.5 GHz'), 0.25, 1e-6);
  });
  test('lorentzian: exp(−2π ΔL Δν/c), half contrast at 0.220636 c/Δν', () => {
    const facts = ['linewidth: 300 MHz', 'line shape: lorentzian'];
    expectNear(brightness(100, ...facts), Math.exp((-2 * Math.PI * 0.1 * 3e8) / C), 1e-12);
    expectNear(laser(0, ...facts).value('red.coherence length'), (Math.LN2 / Math.PI) * (C / 3e8), 1e-9);
  });
  test('rectangular: (sin πx/πx)²', () => {
    const x = (0.1 * 1e9) / C;
    expectNear(brightness(100, 'linewidth: 1 GHz', 'line shape: rectangular'), (Math.sin(Math.PI * x) / (Math.PI * x)) ** 2, 1e-12);
  });
  test.each([['10 MHz', '29.979'], ['30 MHz', '9.993'], ['1 GHz', '0.300']])('%s has c/Δν = %s m', (width, metres) => {
    // A Lorentzian's contrast at c/Δν is exp(−π).
    expectNear(brightness(Number(metres) * 1e3, `linewidth: ${width}`, 'line shape: lorentzian'), Math.exp(-2 * Math.PI), 2e-5);
  });
  test('a coherence length written beside it goes first', () => {
    expect(laser(0, 'coherence length: 1 m', 'linewidth: 1 GHz').results.plates[0]!.pairs[0]!.coherence!.known).toBe('coherence length');
    expect(laser(0, 'linewidth: 1 GHz', 'tube length: 300 mm').results.plates[0]!.pairs[0]!.coherence!.known).toBe('linewidth');
  });
});

describe('a tube with a known number of modes', () => {
  test('0.5 GHz apart in a tube of 30 cm (Arieli, The Laser Adventure, example 4.2), back in step after 600 mm', () => {
    const r = laser(0, 'tube length: 300 mm', 'modes: 3');
    expect((r.value('red.mode spacing') / 1e9).toFixed(1)).toBe('0.5');
    expectNear(r.value('red.mode spacing'), C / 0.6, 1);
    expectNear(r.mm('red.revival distance'), 600, 1e-9);
  });
  // |γ| = |Σ exp(2πi k u)| / N, u = ΔL/2L, summed here mode by mode.
  const sum = (n: number, mm: number): number => {
    const u = mm / 600;
    const phases = Array.from({ length: n }, (_, k) => 2 * Math.PI * k * u);
    return Math.hypot(phases.reduce((s, p) => s + Math.cos(p), 0), phases.reduce((s, p) => s + Math.sin(p), 0)) / n;
  };
  test.each([2, 3, 4, 5])('%i modes: the sum over all of them, squared', n => {
    for (const mm of [0, 12.5, 50, 100, 150, 200, 300, 450, 600, 650, 1200]) expectNear(brightness(mm, 'tube length: 300 mm', `modes: ${n}`), sum(n, mm) ** 2, 1e-9, `${mm} mm`);
  });
  test('dark at 2L/N, fully bright again at every 2L', () => {
    for (const n of [2, 3, 5]) {
      expectNear(brightness(600 / n, 'tube length: 300 mm', `modes: ${n}`), 0, 1e-12);
      for (const m of [1, 2, -1]) expectNear(brightness(600 * m, 'tube length: 300 mm', `modes: ${n}`), 1, 1e-9);
    }
  });
  test('one mode never gets dark', () => { expectNear(brightness(900, 'tube length: 300 mm', 'modes: 1'), 1, 1e-12); });
});

describe('a tube with an unknown number of modes', () => {
  /** Half the modes' range: gain over mode spacing, rounded down and up. */
  const counts = (...facts: string[]): readonly number[] | undefined => laser(0, ...facts).results.plates[0]!.pairs[0]!.coherence?.modes;

  test('is a choice of the numbers that the gain can hold', () => {
    // Helium-neon red 1.4 to 1.6 GHz (common practice), spacing c/2L: 2.80 and 3.20 spacings at 300 mm; 3.27 and 3.74 at 350 mm; 1.40 and 1.60 at 150 mm.
    expect(counts('wavelength: 632.8 nm', 'tube length: 300 mm')).toEqual([2, 3, 4]);
    expect(counts('wavelength: 633 nm', 'tube length: 350 mm')).toEqual([3, 4]);
    expect(counts('wavelength: 632.8 nm', 'tube length: 150 mm')).toEqual([1, 2]);
    expect(counts('wavelength: 632.8 nm', 'tube length: 300 mm', 'modes: unknown')).toEqual([2, 3, 4]);
  });
  test('1.5 GHz of gain in a tube of 15 cm runs on 1 or 2 modes, 1.0 GHz apart (a published problem)', () => {
    expect(counts('tube length: 15 cm', 'gain width: 1.5 GHz')).toEqual([1, 2]);
    expect((laser(0, 'tube length: 15 cm', 'gain width: 1.5 GHz').value('red.mode spacing') / 1e9).toFixed(1)).toBe('1.0');
  });
  test('a written gain goes before that of the line, its ± widens the choice', () => {
    expect(counts('wavelength: 632.8 nm', 'tube length: 300 mm', 'gain width: 3 GHz')).toEqual([6, 7]);
    // 2.0 to 4.0 GHz over 499.65 MHz: 4.003 to 8.006
    expect(counts('tube length: 300 mm', 'gain width: 3 GHz ± 1 GHz')).toEqual([4, 5, 6, 7, 8, 9]);
    // Two standard uncertainties either way
    expect(counts('tube length: 300 mm', 'gain width: 3 GHz ± 500 MHz std')).toEqual([4, 5, 6, 7, 8, 9]);
    // 2.0 to 4.5 GHz: 4.003 to 9.006
    expect(counts('tube length: 300 mm', 'gain width: 3 GHz ×÷ 1.5')).toEqual([4, 5, 6, 7, 8, 9, 10]);
  });
  test('is an assumed input, and makes a band that reaches from the darkest count to the brightest', () => {
    const r = laser(100, 'wavelength: 632.8 nm', 'tube length: 300 mm');
    expect(r.cell('red.modes')).toMatchObject({ origin: 'assumed', spread: { kind: 'one of', values: [2, 3, 4] } });
    const band = sample(r.results.graph, r.cell('brightness'))!;
    // u = 1/6: cos²30° = 3/4; (sin 90°/(3 sin 30°))² = 4/9; (sin 120°/(4 sin 30°))² = 3/16
    expectNear(band.low, 3 / 16, 1e-9);
    expectNear(band.high, 3 / 4, 1e-9);
    expectNear(r.value('brightness'), 4 / 9, 1e-9);
  });
  test('is judged by its dark end', () => {
    const finding = (mismatch: number): unknown => laser(mismatch, 'wavelength: 632.8 nm', 'tube length: 300 mm').snapshot.findings.find(f => f.code === 'arms-mismatched')?.severity;
    const four = (mm: number): number => (Math.sin((4 * Math.PI * mm) / 600) / (4 * Math.sin((Math.PI * mm) / 600))) ** 2;
    expect([four(45) > 0.7, four(55) < 0.7 && four(55) > 0.4, four(85) < 0.4]).toEqual([true, true, true]);
    expect([finding(45), finding(55), finding(85)]).toEqual([undefined, 'note', 'warning']);
  });
});

describe('a laser of which too little is known', () => {
  const codes = (...facts: string[]): string[] => serious(laser(30, ...facts).snapshot.findings);
  test.each([[[]], [['wavelength: 632.8 nm']], [['tube length: 300 mm']], [['wavelength: 700 nm', 'tube length: 300 mm']], [['wavelength: 632.8 nm', 'modes: 3']]])('%j: its mismatch is told, its brightness is not', facts => {
    const r = laser(30, ...facts);
    expect(codes(...facts)).toEqual(['2 coherence-unknown']);
    expectNear(r.mm('mismatch'), 30, 1e-9);
    expect(r.results.published.filter(c => c.name.endsWith('brightness') && !c.missing)).toEqual([]);
  });
  test('what is written but cannot be read is reported there, and not as unknown', () => {
    expect(codes('coherence length: 200')).toEqual(['3 missing-unit']);
    expect(codes('tube length: 300 mW')).toEqual(['3 wrong-unit']);
  });
  test('what is written ? is asked for', () => {
    const r = laser(30, 'coherence length: ?');
    expect(r.cell('brightness').missing).toMatchObject({ code: 'unknown-asked' });
    expect(serious(r.snapshot.findings)).toEqual([]);
  });
});
