/** The second spot of a splitter as a result, against arithmetic with published indices. */
import { describe, expect, test } from 'vitest';
import { expectNear, read, setup, type Read } from './read.ts';

const DEGREE = Math.PI / 180;
/** Along +x and on along +y: 45°. */
const square = (facts: readonly string[], laser: readonly string[] = ['polarization: vertical'], ...more: string[]): Read => read(setup(
  'laser red at (0, 0) mm heading 0° {', '  wavelength: 632.8 nm', ...laser.map(l => `  ${l}`), '}', 'splitter S1 at (300, 0) mm {', ...facts.map(f => `  ${f}`), '}', 'beam stop B1 at (300, 400) mm', 'beam stop B2 at (900, 0) mm',
  'beam raw from red', '  -> S1', 'beam turned from S1 reflected', '  -> B1', 'beam rest from S1 through', '  -> B2', ...more));
const asked = (r: Read, what = ''): ReturnType<Read['cell']> => r.results.ask(`S1.second spot${what}`)!;
const value = (r: Read, what = ''): number => r.results.graph.value(asked(r, what))!;

// Fused silica at 632.8 nm: n 1.45702 (Malitson 1965, as printed in handbooks; from memory). At 45° √(n² − 0.5) = √(2.122907 − 0.5) = 1.273934.
test('how far off it is, by thickness and glass', () => {
  // 2 · 3 mm · 0.5 / 1.273934
  expectNear(1e3 * value(square(['thickness: 3 mm', 'glass: fused silica'])), 2.35491, 2e-5);
  expectNear(1e3 * value(square(['thickness: 6 mm', 'glass: fused silica'])), 4.70982, 4e-5);
});
test('how far a wedge turns it', () => {
  // 2 · 0.5° · 1.273934 / 0.707107
  expectNear(value(square(['thickness: 3 mm', 'glass: fused silica', 'wedge: 0.5°']), ' angle') / DEGREE, 1.80161, 2e-5);
});
test('is as unsure as the thickness', () => {
  // ± 0.3 mm of 3 mm, evenly: 10 % / √3
  const r = square(['thickness: 3 mm ± 0.3 mm', 'glass: fused silica']);
  expectNear(r.results.graph.uncertainty(asked(r)) / value(r), 0.1 / Math.sqrt(3), 1e-6);
});

describe('the light in it', () => {
  // By hand: R_s = ((cos 45° − 1.273934) / (cos 45° + 1.273934))² = (0.566827 / 1.981041)² = 0.0818680, R_p = R_s² = 0.0067024 at 45°
  const shared = (...laser: string[]): number => value(square(['reflects: 50%', 'thickness: 3 mm', 'glass: fused silica'], laser), ' share');
  const of = (R: number): number => (0.25 * R) / (0.5 + 0.25 * R);
  test('of upright and of level light', () => {
    expectNear(shared('polarization: vertical'), of(0.0818680), 1e-6);
    expectNear(shared('polarization: horizontal'), of(0.0067024), 1e-6);
    // Half of either, whichever way each part is polarized
    expectNear(shared('polarization: random'), of((0.0818680 + 0.0067024) / 2), 1e-6);
    // 30° from vertical: cos² = 3/4
    expectNear(shared('polarization angle: 30°'), of(0.75 * 0.0818680 + 0.25 * 0.0067024), 1e-6);
  });
  test('may be either where something before the splitter turns it', () => {
    const r = read(setup('laser red at (0, 0) mm heading 0° {', '  wavelength: 632.8 nm', '  polarization: vertical', '}', 'half-wave plate HW1 at (100, 0) mm {', '  axis: 20°', '}', 'splitter S1 at (300, 0) mm {', '  reflects: 50%', '  thickness: 3 mm', '  glass: fused silica', '}', 'beam stop B1 at (300, 400) mm',
      'beam raw from red', '  -> HW1', '  -> S1', 'beam turned from S1 reflected', '  -> B1'));
    expect(r.results.graph.ancestors(asked(r, ' share')).filter(c => c.origin === 'assumed').map(c => c.name)).toContain('S1.s-polarized share');
    expectNear(value(r, ' share'), of((0.0818680 + 0.0067024) / 2), 1e-6);
  });
  test('of a fold upwards is not told by a laser that is polarized upright', () => {
    const r = read(setup('laser red at (0, 0, 100) mm heading 0° {', '  wavelength: 632.8 nm', '  polarization: vertical', '}', 'splitter S1 at (300, 0, 100) mm {', '  reflects: 50%', '  thickness: 3 mm', '}', 'beam stop B1 at (300, 0, 500) mm', 'beam raw from red', '  -> S1', 'beam turned from S1 reflected', '  -> B1'));
    asked(r, ' share');
    expect(r.cell('S1.s-polarized share')).toMatchObject({ origin: 'assumed' });
  });
  test('follows the mark of a wheel', () => {
    // 90 %: (0.1)² · 0.0818680 = 0.000818680, beside 0.9
    const r = square(['wheel: 5', 'mark 4: 80%', 'mark 6: 100%', 'thickness: 3 mm', 'glass: fused silica']);
    expectNear(value(r, ' share'), 0.000818680 / 0.900818680, 1e-8);
  });
});

describe('what cannot be told is missing, with its reason', () => {
  const why = (r: Read, what = ''): string | undefined => asked(r, what).missing?.why;
  test('a thickness or a wedge that is not written', () => {
    expect(why(square(['glass: crown']))).toBe('the thickness of S1 is not written');
    expect(why(square(['thickness: 3 mm']), ' angle')).toBe('the wedge of S1 is not written');
    expect(why(square(['thickness: 3 mm']), ' share')).toBe('how much S1 reflects is not known');
  });
  test('an angle that no places tell', () => {
    const r = read(setup('laser red', 'splitter S1 {', '  thickness: 3 mm', '}', 'beam stop B1', 'beam raw from red', '  -> S1: 300 mm', 'beam turned from S1 reflected', '  -> B1: 400 mm', 'expect S1.second spot < 1 mm'));
    expect(why(r)).toBe('no places tell at which angle S1 reflects');
    expect(r.results.goals.map(g => g.outcome)).toEqual(['cannot be told']);
  });
  test('of things that are no splitter there is none', () => { expect(square(['thickness: 3 mm']).results.ask('B1.second spot')).toBeUndefined(); });
});
test('in an expectation and in a formula', () => {
  const r = square(['thickness: 3 mm', 'glass: fused silica', 'wedge: 0.5°'], [], 'expect S1.second spot from 2.3 mm to 2.4 mm', 'expect S1.second spot angle < 1°', 'let beside = 2 * S1.second spot');
  expect(r.results.goals.map(g => g.outcome)).toEqual(['met', 'not met']);
});
test('nothing of it is made where nobody asks and no thickness is written', () => {
  expect(square(['reflects: 50%']).results.graph.cells.filter(c => /second spot|s-polarized/.test(c.name))).toEqual([]);
});
