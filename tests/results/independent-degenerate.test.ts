/** Numbers at the end of what they can be: each result is a finite figure with an honest band, or missing with its reason; and what is as unsure as it is. Expected values by hand. */
import { describe, expect, test } from 'vitest';
import { showCell } from '../../server/features/chain.ts';
import { interval, isBent, sample } from '../../server/results/sampling.ts';
import { variantsOf } from '../../server/results/variants.ts';
import { metered, METER, MICRO } from './light-library.ts';
import { withReadings } from './readings.ts';
import { expectNear, read, setup, type Read } from './read.ts';

const ROOT3 = Math.sqrt(3);
const shown = (r: Read, name: string): string => showCell(r.results.graph, r.cell(name)).text;
const why = (r: Read, name: string): string | undefined => r.cell(name).missing?.why;
const ends = (r: Read, name: string): readonly [number, number] => { const { low, high } = interval(r.results.graph, r.cell(name)); return [low, high]; };
/** No figure of a setup is NaN or infinite, and neither is what is said of it. */
function sound(r: Read): Read {
  const { graph } = r.results;
  for (const cell of graph.cells) {
    if (cell.missing) continue;
    expect(Number.isFinite(graph.value(cell)), cell.name).toBe(true);
    expect(Number.isFinite(graph.uncertainty(cell)), `u of ${cell.name}`).toBe(true);
    const band = isBent(graph, cell) ? sample(graph, cell) : undefined;
    if (band) expect([band.low, band.high, band.mean, band.std].every(Number.isFinite), `band of ${cell.name}`).toBe(true);
    expect(showCell(graph, cell).text, cell.name).not.toMatch(/NaN|Infinity/);
  }
  expect(JSON.stringify(r.snapshot.findings.map(f => [f.message, f.data]))).not.toMatch(/NaN|Infinity|null/);
  return r;
}
const light = (readings: readonly string[], around: Parameters<typeof metered>[1] = {}): Read => sound(metered(readings, around));
const pair = (reference: string, object: string, more: readonly string[] = [], around: Parameters<typeof metered>[1] = {}): Read => light([`measured reference at P1: ${reference}`, `measured object at P1: ${object}`, ...more], around);

describe('what is known to a factor only', () => {
  test('is a band: 4:1 to a factor of 3 is 1.33:1 to 12:1, of which 95 % lie from 4/3^0.95 to 4 · 3^0.95', () => {
    const r = pair('1.6 µW/cm²', '0.4 µW/cm² ×÷ 3', ['expect beam ratio > 1.3', 'expect beam ratio < 10']);
    const [low, high] = ends(r, 'beam ratio');
    expectNear(Math.log(low / 4), -0.95 * Math.log(3), 0.1);
    expectNear(Math.log(high / 4), 0.95 * Math.log(3), 0.1);
    expect(shown(r, 'beam ratio')).toMatch(/^1\.\d:1 to 1\d:1$/);
    expect(r.results.goals.map(g => g.outcome)).toEqual(['met', 'undecided']);
    expect(r.snapshot.findings.find(f => f.code === 'expectation-undecided')!.message).toContain(`beam ratio is ${shown(r, 'beam ratio')}`);
  });
  test('however wide', () => { pair('1.6 µW/cm²', '0.4 µW/cm² ×÷ 1e30', [], { plate: ['sensitivity: 50 µJ/cm² ×÷ 1e30'] }); });
  test('is shown as it is written', () => {
    const r = pair('1.6 µW/cm²', '0.4 µW/cm² ×÷ 3');
    expect(showCell(r.results.graph, r.results.graph.cells.find(c => c.spread?.kind === 'factor' && c.origin === 'measured')!).text).toBe('0.4 µW/cm² ×÷ 3');
  });
  test('a small ± is no band: first order holds', () => { expect(isBent(pair('1.6 µW/cm²', '0.4 µW/cm² ± 8%').results.graph, pair('1.6 µW/cm²', '0.4 µW/cm² ± 8%').cell('beam ratio'))).toBe(false); });
});

describe('light that is hardly more than none', () => {
  test('a ± beyond the value: the ratio has a lower end, and nothing below zero', () => {
    // 1.6 / (0.4 ± 1), of which only what is above zero is possible: evenly from 0 to 1.4, so that 95 % begin at 1.6/(0.975 · 1.4) = 1.17
    const r = pair('1.6 µW/cm²', '0.4 µW/cm² ± 1 µW/cm²', ['expect beam ratio > 1:1']);
    expectNear(ends(r, 'beam ratio')[0], 1.6 / (0.975 * 1.4), 0.03);
    expect(ends(r, 'beam ratio')[1]).toBeGreaterThan(20);
    expect(r.results.goals[0]!.outcome).toBe('met');
  });
  test('equal to the dark reading, or zero, there is none', () => {
    for (const [reading, dark] of [['0.4 µW/cm²', '0.4 µW/cm²'], ['0 µW/cm²', '0 µW/cm²'], ['0.3 µW/cm²', '0.4 µW/cm²']] as const) {
      const r = pair(`${reading} by m`, '0.8 µW/cm² by m', [`measured dark: ${dark} by m`]);
      expect(r.cell('beam ratio').missing, reading).toBeDefined();
    }
  });
  test('a dark reading of zero changes nothing', () => { expectNear(pair('1.6 µW/cm² by m', '0.4 µW/cm² by m', ['measured dark: 0 µW/cm² by m']).value('beam ratio'), 4, 1e-12); });
});

describe('the angle of arrival', () => {
  const facing = (angle: string): Read => light(['measured reference at P1 facing beam: 1.6 µW/cm² by m', 'measured object at P1: 0.4 µW/cm² by m', 'expect beam ratio > 1:1'], { plate: [`reference angle: ${angle}`] });
  test('in the plane of the plate: what falls on it cannot be told', () => {
    for (const angle of ['90°', '-90°', '89.8°']) {
      expect(why(facing(angle), 'beam ratio'), angle).toContain('grazes P1');
      expect(facing(angle).results.goals[0]!.outcome).toBe('cannot be told');
    }
  });
  test('beyond it is an error', () => { expect(facing('120°').snapshot.findings.map(f => f.code)).toContain('impossible-value'); });
  test('either way it is the same', () => { expectNear(facing('-60°').value('beam ratio'), 2, 1e-12); });
  test('steep and unsure, nothing below zero', () => {
    const r = facing('85° ± 10°');
    // cos 75° = 0.2588: at most 1.6 · 0.2588 / 0.4 = 1.035
    expect(ends(r, 'beam ratio')[0]).toBeGreaterThan(0);
    expect(ends(r, 'beam ratio')[1]).toBeLessThan(1.036);
  });
  test('square to the plate, an error of it takes light away', () => {
    // The mean of cos θ over ±10° is sin 10° / 10° = 0.99493; first order knows no error at all.
    const r = facing('0° ± 10°');
    expectNear(sample(r.results.graph, r.cell('beam ratio'))!.mean, 4 * (Math.sin(Math.PI / 18) / (Math.PI / 18)), 0.004);
    expect(ends(r, 'beam ratio')[1]).toBeLessThanOrEqual(4);
  });
  test('by two readings that are alike: about 0°, and not anything', () => {
    const r = light(['measured reference at P1 facing beam: 1.6 µW/cm² ± 2% by m', 'measured reference at P1: 1.6 µW/cm² ± 2% by m']);
    // 4 % less at most: arccos 0.961 = 16°
    const [low, high] = ends(r, 'P1.reference.angle by meter');
    expect(low).toBe(0);
    expect(high).toBeLessThan(Math.acos(0.98 / 1.02));
    expect(high).toBeGreaterThan(0.15);
  });
});

describe('other ends', () => {
  test('a polarizer that lets nothing through', () => {
    expect(pair('1.6 µW/cm² by m', '0.4 µW/cm² by m', ['measured object at P1 through polarizer: 0.2 µW/cm² by m'], { things: [...METER, 'polarizer sheet {', '  loss: 100%', '}'] }).cell('polarized').missing).toBeDefined();
  });
  test('a drift counts by its size, and one that may be none has no longest exposure but a least one', () => {
    const drift = (rate: string): Read => light([`measured drift at P1: ${rate}`, 'expect drift < 1 fringes/min', 'expect longest exposure > 5 s'], { facts: ['exposure: 20 s'] });
    expect(drift('-2 fringes/min').results.goals.map(g => g.outcome)).toEqual(['not met', 'not met']);
    expect(drift('-0.5 fringes/min').results.goals[0]!.outcome).toBe('met');
    // 6 s / (0.5 + 0.6) at least
    const unsure = drift('0.5 fringes/min ± 0.6 fringes/min');
    expectNear(ends(unsure, 'longest exposure')[0], 6 / 1.1, 0.3);
    expect(unsure.results.goals.map(g => g.outcome)).toEqual(['undecided', 'met']);
    expect(drift('0 fringes/min').cell('longest exposure').missing).toBeDefined();
  });
  test('a wheel at a mark is as unsure as beside it', () => {
    const wheel = (at: number): Read => light([`measured S1 wheel: ${at} ± 0.2`], { splitter: ['mark 4: 80%', 'mark 5: 60%', 'mark 6: 20%'] });
    expectNear(wheel(4.9).u('S1.reflects by wheel'), (0.2 * 0.2) / ROOT3, 1e-12);
    expectNear(wheel(5).u('S1.reflects by wheel'), (0.4 * 0.2) / ROOT3, 1e-12);
    expectNear(wheel(4).u('S1.reflects by wheel'), (0.2 * 0.2) / ROOT3, 1e-12);
    // Either way from 60 %: up by 0.2 · 20 points, down by 0.2 · 40 points.
    const [low, high] = ends(wheel(5), 'S1.reflects by wheel');
    expect(low).toBeGreaterThanOrEqual(0.52);
    expect(high).toBeLessThanOrEqual(0.64);
  });
  test('lengths: less than nothing is no reading, also by a formula', () => {
    for (const value of ['-5 mm', '0 mm', '10 mm - 20 mm', '10 mm - 10 mm']) {
      const r = sound(withReadings([`measured S1 -> M1: ${value}`]));
      expect(r.snapshot.findings.map(f => f.code), value).toContain('impossible-value');
      expect(r.mm('reference.1.length'), value).toBeCloseTo(750, 9);
    }
    expect(sound(withReadings(['measured object - reference: 10 mm - 20 mm'])).mm('mismatch')).toBeCloseTo(-10, 9);
  });
  test('a ± that dwarfs the length', () => { sound(withReadings(['measured S1 -> M1: 5 mm ± 900 mm'], { depth: '40 mm', more: ['expect brightness > 50%'] })); });
  test('formulas at the end of what they take', () => {
    const r = sound(read(setup('let a = asin(1 ± 0.1)', 'let b = sqrt(0 ± 1)', 'let c = 1 / (0.1 ± 0.2)', 'let d = acos(0.9 ± 0.3)', 'let e = sin(a) * 3', 'let f = sqrt(0) * 2', 'let g = abs(0 mm ± 3 mm)')));
    // From arcsin 0.9 = 64.2° to 90°; the root of what is evenly from 0 to 1, up to √0.975; |x| up to 0.975 · 3 mm.
    expect(ends(r, 'a')[0]).toBeGreaterThan(Math.asin(0.9));
    expect(ends(r, 'a')[1]).toBeLessThanOrEqual(Math.PI / 2);
    expectNear(ends(r, 'b')[1], Math.sqrt(0.975), 0.02);
    expectNear(ends(r, 'g')[1], 0.975 * 0.003, 0.0001);
  });
  test('things at one place, and a plate edge-on to its light', () => {
    const at = (plate: string): Read => sound(read(setup('laser red at (0, 0) mm', 'splitter S1 at (300, 0) mm', 'mirror M1 at (800, 0) mm', 'object whelk at (300, 400) mm', plate, 'meter m', 'beam raw from red', '  -> S1', 'beam reference from S1 through', '  -> M1', '  -> P1', 'beam object from S1 reflected', '  -> whelk', '  -> P1', 'measured reference at P1 facing beam: 2 µW/cm² by m', 'measured object at P1: 1 µW/cm² by m')));
    expect(why(at('plate P1 at (800, 400) mm heading 0°'), 'beam ratio')).toContain('grazes P1');
    expectNear(at('plate P1 at (800, 400) mm heading 90°').value('beam ratio'), 2, 1e-9);
    at('plate P1 at (800, 0) mm heading 90°');
  });
});

describe('in a variant', () => {
  const table = (...variant: string[]): Read => read(setup(
    'laser red at (-300, 0) mm {', '  power: 10 mW ± 10%', '}', 'splitter S1 at (0, 0) mm ± 5 mm {', '  reflects: 50% ± 10%', '  loss: 5%', '}', 'mirror M1 at (800, 0) mm ± 4 mm', 'plate P1 at (800, 600) mm', 'object whelk at (200, 600) mm',
    'beam raw from red', '  -> S1', 'beam reference from S1 through', '  -> M1', '  -> P1', 'beam object from S1 reflected', '  -> whelk', '  -> P1',
    'measured S1 -> M1: 805 mm ± 1 mm', 'measured reference at P1: 4 µW/cm² ± 5%', 'variant "trial" {', ...variant, '}',
  ));
  const figure = (r: Read, name: string): readonly [number, number] => { const { graph } = variantsOf(r.results)[0]!.results; const cell = graph.find(name)!; return [graph.value(cell)!, graph.uncertainty(cell)]; };
  test('what it leaves alone falls out of a length that was read; what it moves was set twice', () => {
    // The splitter stands where it stood. The mirror had 4 mm when it was read, and has 4 mm again: √(1² + 4² + 4²)/√3.
    const [length, u] = figure(table('M1 at (830, 0) mm ± 4 mm'), 'reference.1.length');
    expectNear(length * 1000, 835, 1e-9);
    expectNear(u * 1000, Math.sqrt(1 + 16 + 16) / ROOT3, 1e-6);
    expectNear(figure(table('M1 at (830, 0) mm'), 'reference.1.length')[1] * 1000, Math.sqrt(1 + 16) / ROOT3, 1e-6);
  });
  test('where it changes nothing that a reading rests on, the reading is as sure as before', () => {
    expectNear(figure(table('whelk at (250, 600) mm'), 'reference.1.length')[1] * 1000, 1 / ROOT3, 1e-6);
  });
  test('of light: the power of the laser is the same one, the split was set twice', () => {
    // Through goes 1 − ρ: 0.4 of it instead of 0.5; u(ρ) = 0.05/√3 then, 0.06/√3 now.
    const [value, u] = figure(table('S1.reflects: 60% ± 10%'), 'P1.reference.light');
    expectNear(value / MICRO, 4 * 0.8, 1e-9);
    expectNear(u / value, Math.sqrt(0.05 ** 2 + (0.05 / 0.5) ** 2 + (0.06 / 0.4) ** 2) / ROOT3, 1e-6);
    const [twice, uTwice] = figure(table('red.power: 20 mW ± 10%'), 'P1.reference.light');
    expectNear(twice / MICRO, 8, 1e-9);
    expectNear(uTwice / twice, Math.sqrt(0.05 ** 2 + 0.1 ** 2 + 0.1 ** 2) / ROOT3, 1e-6);
  });
});
