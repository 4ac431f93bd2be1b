/** `expect` lines: met, not met, or undecided where the limit lies inside the band, which is twice the standard uncertainty either way (JCGM 100:2008, 6.3.3). */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { read, serious, setup } from './read.ts';

/** Arms that differ by so many millimetres, their difference as unsure as 5 mm: 3-4-5. */
const unsure = (mismatch: number, ...goals: string[]): ReturnType<typeof read> => arms(`${1200 + mismatch} mm ± 4 mm std`, '1500 mm ± 3 mm std', ...goals);
const exact = (mismatch: number, ...goals: string[]): ReturnType<typeof read> => arms(`${1200 + mismatch} mm`, '1500 mm', ...goals);
function arms(object: string, reference: string, ...goals: string[]): ReturnType<typeof read> {
  return read(setup(
    'laser red {', '  wavelength: 632.8 nm', '  tube length: 300 mm', '}', 'splitter S1', 'object whelk', 'plate P1', 'beam raw from red', '  -> S1: 350 mm',
    'beam reference from S1 through', `  -> P1: ${reference}`, 'beam object from S1 reflected', `  -> whelk: ${object}`, '  -> P1: 300 mm', ...goals,
  ));
}
const outcome = (r: ReturnType<typeof read>): string | undefined => r.results.goals[0]?.outcome;

describe('limits of a mismatch of 20 mm ± 10 mm', () => {
  test.each([
    ['< 30.1 mm', 'met'], ['< 29.9 mm', 'undecided'], ['< 20 mm', 'undecided'], ['< 10.1 mm', 'undecided'], ['< 9.9 mm', 'not met'],
    ['<= 30.1 mm', 'met'], ['<= 29.9 mm', 'undecided'], ['<= 9.9 mm', 'not met'],
    ['> 9.9 mm', 'met'], ['> 10.1 mm', 'undecided'], ['> 29.9 mm', 'undecided'], ['> 30.1 mm', 'not met'],
    ['>= 9.9 mm', 'met'], ['>= 10.1 mm', 'undecided'], ['>= 30.1 mm', 'not met'],
    ['from 9.9 mm to 30.1 mm', 'met'], ['from 10.1 mm to 30.1 mm', 'undecided'], ['from 9.9 mm to 29.9 mm', 'undecided'], ['from 30.1 mm to 9.9 mm', 'met'],
    ['from 30.1 mm to 40 mm', 'not met'], ['from 0 mm to 9.9 mm', 'not met'], ['from 12 mm to 15 mm', 'undecided'], ['from 22 mm to 25 mm', 'undecided'], ['from 19 mm to 21 mm', 'undecided'],
    [': 20 mm', 'met'], [': 29.9 mm', 'met'], [': 10.1 mm', 'met'], [': 30.1 mm', 'not met'], [': 9.9 mm', 'not met'],
    ['< 2 in', 'met'], ['< 25 mm + 10 mm', 'met'], ['< 2 * 10 mm', 'undecided'],
  ])('expect mismatch %s: %s', (limit, expected) => {
    expect(outcome(unsure(20, `expect mismatch ${limit}`))).toBe(expected);
    // It counts by its size.
    expect(outcome(unsure(-20, `expect mismatch ${limit}`))).toBe(expected);
  });
});

test('a size is never below zero', () => {
  expect(outcome(unsure(4, 'expect mismatch >= 0 mm'))).toBe('met');
  expect(outcome(unsure(4, 'expect mismatch from 0 mm to 14.1 mm'))).toBe('met');
  expect(outcome(unsure(-4, 'expect mismatch from 0 mm to 13.9 mm'))).toBe('undecided');
  expect(outcome(unsure(0, 'expect mismatch > -1 mm'))).toBe('met');
});

test('a length keeps its sign and its band', () => {
  expect(outcome(unsure(0, 'expect object length < 1508.1 mm'))).toBe('met');
  expect(outcome(unsure(0, 'expect object length < 1507.9 mm'))).toBe('undecided');
  expect(outcome(unsure(0, 'expect P1.reference.length > 1493.9 mm'))).toBe('met');
});

test('sure figures are met or not met, also where they just reach the limit', () => {
  for (const [limit, expected] of [['<= 10 mm', 'met'], ['< 10 mm', 'not met'], ['>= 10 mm', 'met'], ['> 10 mm', 'not met'], ['from 10 mm to 20 mm', 'met'], ['from 5 mm to 10 mm', 'met'], [': 10 mm', 'met'], [': 10.001 mm', 'not met'], ['< 10.001 mm', 'met']] as const) {
    // As sums of legs, 10 mm is 1310 + 300 − 1600 in one and 7 × 10/7 in another.
    for (const text of ['1210 mm', '3 * 400 mm + 70 mm / 7']) expect(outcome(arms(text, '1500 mm', `expect mismatch ${limit}`)), `${text} ${limit}`).toBe(expected);
  }
});

test('whatever the figures: undecided just where a limit lies in the band', () => {
  fc.assert(fc.property(fc.integer({ min: -60, max: 60 }), fc.integer({ min: 0, max: 80 }), fc.integer({ min: 0, max: 80 }), (mismatch, a, b) => {
    const [low, high] = [Math.max(0, Math.abs(mismatch) - 10), Math.abs(mismatch) + 10];
    const inside = (l: number): boolean => l > low && l < high;
    fc.pre([a, b].every(l => l !== low && l !== high));
    const [from, to] = [Math.min(a, b), Math.max(a, b)];
    const decided = (met: boolean, ...limits: number[]): string => (limits.some(inside) ? 'undecided' : met ? 'met' : 'not met');
    const size = Math.abs(mismatch);
    const { results } = unsure(mismatch, `expect mismatch < ${a} mm`, `expect mismatch > ${a} mm`, `expect mismatch from ${a} mm to ${b} mm`);
    expect(results.goals.map(g => g.outcome)).toEqual([decided(size < a, a), decided(size > a, a), decided(size >= from && size <= to, a, b)]);
  }), { numRuns: 150 });
});

describe('brightness', () => {
  // 100 mm with 2, 3 or 4 modes in a tube of 300 mm: 3/4, 4/9 or 3/16.
  test.each([['> 18%', 'met'], ['> 19%', 'undecided'], ['> 74%', 'undecided'], ['> 76%', 'not met'], ['< 76%', 'met'], ['from 18% to 76%', 'met'], ['from 30% to 60%', 'undecided'], ['> 0.18', 'met']])('of a choice of modes, %s: %s', (limit, expected) => {
    expect(outcome(exact(100, `expect brightness ${limit}`))).toBe(expected);
  });
  test('by any of its short names', () => {
    for (const name of ['brightness', 'P1.brightness', 'whelk.brightness', 'P1.whelk.brightness', 'P1.object.brightness']) expect(outcome(exact(0, `expect ${name} > 90%`))).toBe('met');
  });
});

describe('what cannot be judged', () => {
  const codes = (...goals: string[]): string[] => serious(exact(0, ...goals).snapshot.findings);
  test('a result whose figures are missing', () => {
    const r = read(setup('laser red {', '  coherence length: 1 m', '}', 'splitter S1', 'object whelk', 'plate P1', 'beam raw from red', '  -> S1: 350 mm', 'beam reference from S1 through', '  -> P1', 'beam object from S1 reflected', '  -> whelk: 1200 mm', '  -> P1: 300 mm', 'expect mismatch < 10 mm', 'expect brightness > 70%', 'expect object length < 2 m'));
    expect(r.results.goals.map(g => g.outcome)).toEqual(['cannot be told', 'cannot be told', 'met']);
    // The missing length is the one finding.
    expect(serious(r.snapshot.findings)).toEqual(['11 value-missing']);
  });
  test('a result of arms that are not there', () => {
    const r = read(setup('plate P1', 'expect P1.object.mismatch < 10 mm', 'expect mismatch < 10 mm', 'expect far.brightness > 70%'));
    expect(r.results.goals.map(g => g.outcome)).toEqual(['cannot be told', 'cannot be told', 'cannot be told']);
    expect(serious(r.snapshot.findings)).toEqual([]);
  });
  test('a result that is not computed yet', () => {
    const r = exact(0, 'expect coverage < 10%', 'aim mismatch: 0 mm', 'aim P1.coverage: 90%');
    expect(r.results.goals.map(g => g.outcome)).toEqual(['not computed yet', 'met', 'not computed yet']);
    expect(serious(r.snapshot.findings)).toEqual([]);
  });
  test('light that nobody has metered', () => {
    const r = exact(0, 'expect beam ratio from 3:1 to 6:1', 'expect exposure < 10 s', 'expect P1.corner light > 35%', 'expect light at the plate > 1 µW/cm²', 'expect P1.reference.power > 1 mW');
    expect(r.results.goals.map(g => g.outcome)).toEqual(Array(5).fill('cannot be told'));
    expect(serious(r.snapshot.findings)).toEqual([]);
  });
  test('a name that is no result', () => {
    expect(codes('expect mismach < 10 mm')).toEqual(['16 unknown-result']);
    expect(exact(0, 'expect mismach < 10 mm').snapshot.findings.find(f => f.code === 'unknown-result')!.data['suggestion']).toBe('mismatch');
    expect(codes('expect banana < 10 mm')).toEqual(['16 unknown-result']);
  });
  test('a limit of another kind, or without a unit', () => {
    expect(codes('expect mismatch < 10')).toEqual(['16 missing-unit']);
    expect(codes('expect mismatch < 10 mW')).toEqual(['16 wrong-unit']);
    expect(codes('expect brightness > 10 mm')).toEqual(['16 wrong-unit']);
    expect(codes('expect mismatch < 5 mm + 3')).toEqual(['16 units-differ']);
    expect(codes('expect mismatch < gap')).toEqual(['16 unknown-name']);
    expect(codes('expect mismatch from 1 mm to 3')).toEqual(['16 missing-unit']);
  });
  test('a short name of several things', () => {
    const two = setup(
      'laser red {', '  coherence length: 5 m', '}', 'splitter S1', 'splitter S2', 'mirror M1', 'object jug', 'plate P1', 'beam raw from red', '  -> S1: 300 mm', 'beam reference from S1 reflected', '  -> P1: 1500 mm', 'beam lights from S1 through', '  -> S2: 280 mm',
      'beam key from S2 through', '  -> jug: 920 mm', '  -> P1: 300 mm', 'beam fill from S2 reflected', '  -> M1: 100 mm', '  -> jug: 850 mm', '  -> P1: 300 mm', 'expect brightness > 50%', 'expect mismatch < 40 mm',
    );
    const r = read(two);
    expect(serious(r.snapshot.findings)).toEqual(['23 ambiguous-result']);
    expect(r.snapshot.findings.find(f => f.code === 'ambiguous-result')!.data['candidates']).toBe('P1.key.brightness, P1.fill.brightness');
    expect(r.results.goals.map(g => g.outcome)).toEqual(['met']);
  });
});

describe('findings of expectations', () => {
  test('not met is a warning, undecided a note, met none', () => {
    const severity = (limit: string): unknown => unsure(20, `expect mismatch < ${limit}`).snapshot.findings.filter(f => f.code.startsWith('expectation')).map(f => [f.code, f.severity]);
    expect(severity('9 mm')).toEqual([['expectation-failed', 'warning']]);
    expect(severity('19 mm')).toEqual([['expectation-undecided', 'note']]);
    expect(severity('31 mm')).toEqual([]);
  });
  test('say the value, its give and the limit in SI', () => {
    const { data } = unsure(20, 'expect mismatch < 9 mm').snapshot.findings.find(f => f.code === 'expectation-failed')!;
    expect(data['value']).toBeCloseTo(0.02, 12);
    expect(data['give']).toBeCloseTo(0.01, 12);
  });
  test('a limit may be a named value', () => {
    expect(outcome(unsure(20, 'let most = 31 mm', 'expect mismatch < most'))).toBe('met');
    expect(outcome(unsure(20, 'let most = 29 mm', 'expect mismatch < most'))).toBe('undecided');
  });
});
