/** What is written `?` is found. Expected values are arithmetic, shown beside each. */
import { describe, expect, test } from 'vitest';
import { solve, type Attempt } from '../../server/results/solve/solve.ts';
import { unknownsOf } from '../../server/results/solve/unknowns.ts';
import { expectNear, read, setup, type Read } from './read.ts';

/** Paths from S1: the reference 750 + 721 = 1471 mm; the object's without the leg M2 → M3 410 + 384 + 300 = 1094 mm. */
const paths = (leg: string, ...lines: string[]): Read => read(setup(
  'laser red {', '  wavelength: 632.8 nm', '  coherence length: 200 mm', '}', 'splitter S1', 'mirror M1', 'mirror M2', 'mirror M3', 'object whelk', 'plate P1',
  'beam raw from red', '  -> S1: 350 mm', 'beam reference from S1 through', '  -> M1: 750 mm ± 2 mm', '  -> P1: 721 mm ± 2 mm',
  'beam object from S1 reflected', '  -> M2: 410 mm ± 2 mm', `  -> M3: ${leg}`, '  -> whelk: 384 mm ± 3 mm', '  -> P1: 300 mm ± 3 mm', ...lines,
));
/** A mirror at (300 mm, h), a splitter at the origin. */
const triangle = (h: string, ...lines: string[]): Read => read(setup(
  'laser red at (-200, 0) mm heading 0° {', '  coherence length: 1 m', '}', 'splitter S1 at (0, 0) mm', `let h = ${h}`, 'mirror M1 at (300 mm, h)', 'plate P1 at (600, 0) mm', 'beam raw from red', '  -> S1', 'beam slant from S1 reflected', '  -> M1', '  -> P1', ...lines,
));

const all = (r: Read): Attempt[] => [...solve(r.results).attempts()];
const values = (a: Attempt): Record<string, number> => Object.fromEntries(a.found.map(f => [f.unknown.name, f.value]));
const only = (r: Read): Attempt => {
  const found = all(r);
  expect(found).toHaveLength(1);
  return found[0]!;
};

describe('one value', () => {
  test('a leg that makes the paths equal, and how sure it is', () => {
    const a = only(paths('? mm', 'aim mismatch: 0 mm'));
    const [f] = a.found;
    // 1471 − 1094
    expectNear(f!.value, 0.377, 1e-9);
    expect(a.missed).toEqual([]);
    expect(f!.loose).toBe(false);
    // Half-widths 2, 2, 2, 3, 3 mm, each over √3: √((4 + 4 + 4 + 9 + 9) / 3) = √10 mm.
    expectNear(f!.u, Math.sqrt(10) * 1e-3, 1e-9);
  });
  test('the results are those of the page with the value written in', () => {
    const a = only(paths('? mm', 'aim mismatch: 0 mm', 'expect brightness > 90%'));
    const w = paths('377 mm', 'aim mismatch: 0 mm', 'expect brightness > 90%');
    for (const c of w.results.published) {
      const other = a.results.graph.find(c.name)!;
      expectNear(a.results.graph.value(other) ?? NaN, w.results.graph.value(c) ?? NaN, 1e-12, c.name);
      if (!c.name.includes('object.1')) expect(a.results.goals.map(g => g.outcome)).toEqual(w.results.goals.map(g => g.outcome));
    }
  });
  test('limits alone: anything between them will do, and the middle is furthest from both', () => {
    const [first, ...others] = all(paths('? mm', 'expect mismatch < 10 mm'));
    expectNear(first!.found[0]!.value, 0.377, 1e-9);
    expectNear(first!.found[0]!.range![0], 0.367, 1e-6);
    expectNear(first!.found[0]!.range![1], 0.387, 1e-6);
    expect(first!.found[0]!.loose).toBe(true);
    for (const o of others) expect(o.stretch).toBe(first!.stretch);
  });
  test('two ways: 300² + 400² = 500²', () => {
    const found = all(triangle('? from -600 mm to 600 mm', 'aim slant.1.length: 500 mm')).map(a => values(a)['h']!).sort((a, b) => a - b);
    expect(found).toHaveLength(2);
    expectNear(found[0]!, -0.4, 1e-3);
    expectNear(found[1]!, 0.4, 1e-3);
  });
  test('a limit parts them', () => {
    expectNear(values(only(triangle('? from 0 mm to 600 mm', 'aim slant.1.length: 500 mm')))['h']!, 0.4, 1e-3);
  });
  test('a path that is least where it bends: the nearest attempt is straight on', () => {
    // √(300² + h²) is never below 300 mm.
    const [a] = all(triangle('? from -600 mm to 600 mm', 'aim slant.1.length: 250 mm'));
    expectNear(values(a!)['h']!, 0, 2e-3);
    expectNear(a!.missed[0]!.by, 0.05, 1e-3);
  });
  test('digits no finer than the goal asks for', () => {
    // A mismatch is as good as none within half of its standard uncertainty, √10 / 2 = 1.6 mm: whole millimetres serve.
    const [f] = only(paths('? mm', 'aim mismatch: 0.3 mm')).found;
    expect(f!.value * 1e3).toBeCloseTo(Math.round(f!.value * 1e3), 9);
  });
});

describe('limits and steps', () => {
  test('out of reach: the nearest end, and what is missing', () => {
    const a = only(paths('? mm from 100 mm to 200 mm', 'aim mismatch: 0 mm'));
    expectNear(a.found[0]!.value, 0.2, 1e-9);
    expectNear(a.missed[0]!.by, -0.177, 1e-9);
  });
  test('steps that are written are kept', () => {
    const [a] = all(paths('? from 300 mm to 400 mm by 25 mm', 'aim mismatch: 0 mm'));
    expectNear(a!.found[0]!.value, 0.375, 1e-9);
  });
  test('whole holes before whole millimetres', () => {
    const holes = (x: string): Read => read(setup('table: 1200 x 900 mm', 'hole spacing: 25 mm', 'laser red at (100, 100) mm heading 0° {', '  coherence length: 1 m', '}', `mirror M1 at ${x}`, 'plate P1 at (400, 500) mm', 'beam raw from red', '  -> M1', '  -> P1', 'aim raw.1.length: 300.6 mm'));
    // Beside the laser at the same height: 400.6 mm, and 0.6 mm off is as good as there for a string.
    expectNear(values(all(holes('(?, 100) mm'))[0]!)['M1.x']!, 0.4, 1e-9);
  });
  test('what nothing says is looked for on the table', () => {
    const r = read(setup('table: 1200 x 900 mm', 'laser red at (100, 100) mm heading 0°', 'mirror M1 at ?', 'spreader R1 on red -> M1 by ?', 'beam raw from red', '  -> R1', '  -> M1'));
    expect(unknownsOf(r.results).map(u => [u.name, u.low, u.high])).toEqual([['M1.x', 0, 1.2], ['M1.y', 0, 0.9], ['R1.by', 0, 2]]);
  });
  test('a `?` takes the unit of its limits, of its bracket, or its own', () => {
    const r = read(setup('laser red at (100, 100) mm heading ?', 'mirror M1 at (?, 10) cm', 'splitter S1 {', '  reflects: ? from 10% to 90% by 1%', '}', 'let gap = ? in from 1 in to 4 in', 'beam raw from red', '  -> M1', '  -> S1: ? from 2 cm to 3 cm'));
    const by = Object.fromEntries(unknownsOf(r.results).map(u => [u.name, u]));
    expect(by['M1.x']!.unit!.text).toBe('cm');
    expect(by['gap']!.unit!.text).toBe('in');
    expectNear(by['gap']!.high, 4 * 0.0254, 1e-12);
    expect(by['raw.2.length']!.unit!.text).toBe('cm');
    expect([by['red.heading']!.low, by['red.heading']!.high]).toEqual([0, 2 * Math.PI]);
  });
});

describe('several values', () => {
  test('two legs, two aims', () => {
    const r = read(setup('laser red {', '  coherence length: 1 m', '}', 'splitter S1', 'object whelk', 'plate P1', 'beam raw from red', '  -> S1: 350 mm', 'beam reference from S1 through', '  -> P1: ? mm', 'beam object from S1 reflected', '  -> whelk: ? mm', '  -> P1: 300 mm', 'aim mismatch: 20 mm', 'aim reference length: 1500 mm'));
    // 1500, and 1500 ± 20 − 300: a mismatch counts by its size.
    const found = all(r).sort((a, b) => values(a)['object.1.length']! - values(b)['object.1.length']!);
    expect(found).toHaveLength(2);
    for (const [i, whelk] of [1.18, 1.22].entries()) {
      expectNear(values(found[i]!)['reference.1.length']!, 1.5, 1e-3);
      expectNear(values(found[i]!)['object.1.length']!, whelk, 1e-3);
      expect(found[i]!.found.map(f => f.loose)).toEqual([false, false]);
    }
  });
  test('more unknowns than goals: all of them meet it, and it is said that others would', () => {
    const r = read(setup('laser red {', '  coherence length: 1 m', '}', 'splitter S1', 'object whelk', 'plate P1', 'beam raw from red', '  -> S1: 350 mm', 'beam reference from S1 through', '  -> P1: ? mm', 'beam object from S1 reflected', '  -> whelk: ? mm', '  -> P1: 300 mm', 'aim mismatch: 0 mm'));
    const found = all(r);
    expect(found.length).toBeGreaterThan(1);
    for (const a of found) {
      expectNear(values(a)['object.1.length']! + 0.3 - values(a)['reference.1.length']!, 0, 1e-3);
      expect(a.found.map(f => f.loose)).toEqual([true, true]);
    }
  });
  test('goals that ask for different things share what is missing, and are told', () => {
    // 377 mm for the one, 1600 − 1094 = 506 mm for the other; half way both miss 64.5 mm.
    const a = only(paths('? mm', 'aim mismatch: 0 mm', 'aim object length: 1600 mm'));
    expect(a.missed.map(m => m.wish.goal.result).sort()).toEqual(['mismatch', 'object length']);
    for (const m of a.missed) expectNear(Math.abs(m.by), 0.0645, 1e-3);
  });
  test('one that yields to a limit is told with the limit', () => {
    const a = only(paths('? mm', 'expect mismatch < 1 mm', 'aim far.brightness: 99%', 'aim object length: 1600 mm'));
    expect(a.missed.length).toBeGreaterThan(0);
    expect([...a.missed.map(m => m.wish.goal.result), ...a.against.map(w => w.goal.result)]).toContain('mismatch');
  });
});

describe('nothing to find', () => {
  const idle = (r: Read): string | undefined => solve(r.results).idle?.kind;
  test.each([
    ['no ?', () => paths('377 mm', 'aim mismatch: 0 mm'), 'nothing open'],
    ['no goal', () => paths('? mm'), 'no goal'],
    ['a goal that it does not change', () => paths('? mm', 'aim reference length: 1 m'), 'no goal'],
    ['limits that leave nothing', () => triangle('? from 500 mm to 200 mm', 'aim slant.1.length: 500 mm'), 'no room'],
    ['a result that cannot be told', () => read(setup('laser red', 'splitter S1', 'object whelk', 'plate P1', 'beam reference from S1 through', '  -> P1: ? mm', 'aim brightness: 90%')), 'untold'],
  ] as const)('%s', (_, make, kind) => { expect(idle(make())).toBe(kind); });
});

test('it ends when it is told to', () => {
  const r = paths('? mm', 'aim mismatch: 0 mm');
  expect([...solve(r.results, { goOn: () => false }).attempts()]).toEqual([]);
});

test('the setup as written is as it was', () => {
  const r = paths('? mm', 'aim mismatch: 0 mm', 'expect brightness > 50%');
  const before = r.results.graph.cells.map(c => [c.name, r.results.graph.value(c)]);
  all(r);
  expect(r.results.graph.cells.map(c => [c.name, r.results.graph.value(c)])).toEqual(before);
  expect(r.cell('mismatch').missing?.code).toBe('unknown-asked');
});
