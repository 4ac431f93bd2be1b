/**
 * Drawn bands against distributions that are known in closed form. How far a figure may lie off is its own statistical error, at four standard errors:
 * of a mean s/√n, of a standard deviation s·√((κ − 1)/(4n)) with the kurtosis κ, of the end of an interval √(p(1 − p)/n) over the density there.
 */
import { describe, expect, test } from 'vitest';
import { Graph, type Cell, type Rule } from '../../server/results/graph.ts';
import { sample, type Band } from '../../server/results/sampling.ts';
import { LENGTH, NUMBER } from '../../server/model/units.ts';
import type { Spread } from '../../server/model/quantity.ts';
import { expectNear, read, setup } from './read.ts';

/** Bent by name only, so that it is drawn and keeps the distribution. */
const ITSELF: Rule = { name: 'itself', formula: 'a', curved: true, compute: ([a]) => a! };
const TWICE: Rule = { name: 'twice', formula: '2a', linear: true, compute: ([a]) => 2 * a!, partials: () => [2] };
const SQUARE: Rule = { name: 'square', formula: 'a²', curved: true, compute: ([a]) => a! ** 2, partials: ([a]) => [2 * a!] };
const SUM: Rule = { name: 'sum', formula: 'Σ', linear: true, compute: x => x.reduce((s, v) => s + v, 0), partials: x => x.map(() => 1) };

function drawn(value: number, spread: Spread, by: Rule = ITSELF): { band: Band; graph: Graph; top: Cell; input: Cell } {
  const graph = new Graph();
  const input = graph.input('x', { value, dim: NUMBER, spread }, 'written', 'x');
  const top = graph.derive('top', by, [input], NUMBER, 'top');
  return { band: sample(graph, top)!, graph, top, input };
}

const SURE = 4;
const expectMean = (band: Band, mean: number, std: number): void => { expectNear(band.mean, mean, (SURE * std) / Math.sqrt(band.draws), 'mean'); };
const expectStd = (band: Band, std: number, kurtosis: number): void => { expectNear(band.std, std, SURE * std * Math.sqrt((kurtosis - 1) / (4 * band.draws)), 'standard deviation'); };
const expectEnds = (band: Band, low: number, high: number, density: number): void => {
  const allowed = (SURE * Math.sqrt((0.025 * 0.975) / band.draws)) / density;
  expectNear(band.low, low, allowed, 'low end');
  expectNear(band.high, high, allowed, 'high end');
};

describe('one number', () => {
  test('within a half-width a: mean in the middle, standard deviation a/√3, 95 % within 0.95 a (JCGM 101:2008, 6.4.2)', () => {
    const { band } = drawn(10, { kind: 'within', amount: 3 });
    expectMean(band, 10, 3 / Math.sqrt(3));
    expectStd(band, 3 / Math.sqrt(3), 9 / 5);
    expectEnds(band, 10 - 2.85, 10 + 2.85, 1 / 6);
    expect(band.low).toBeGreaterThanOrEqual(7);
    expect(band.high).toBeLessThanOrEqual(13);
  });
  test('a standard uncertainty s: normal, 95 % within 1.96 s', () => {
    const { band } = drawn(10, { kind: 'std', amount: 3 });
    expectMean(band, 10, 3);
    expectStd(band, 3, 3);
    // Density of a normal number at 1.96: exp(−1.92)/√(2π).
    expectEnds(band, 10 - 5.88, 10 + 5.88, Math.exp(-(1.96 ** 2) / 2) / Math.sqrt(2 * Math.PI) / 3);
  });
  test('a factor f either way: the logarithm is spread evenly', () => {
    const [v, f] = [0.3, 3];
    const { band } = drawn(v, { kind: 'factor', amount: f });
    const ln = Math.log(f);
    // ∫ v fᵗ dt/2 and ∫ v² f²ᵗ dt/2 from −1 to 1
    const mean = (v * (f - 1 / f)) / (2 * ln);
    const std = Math.sqrt((v ** 2 * (f ** 2 - f ** -2)) / (4 * ln) - mean ** 2);
    expectMean(band, mean, std);
    expectNear(band.std, std, 0.15 * std);
    const ends = SURE * Math.sqrt((0.025 * 0.975) / band.draws) * 2 * ln;
    expectNear(Math.log(band.low / v), -0.95 * ln, ends);
    expectNear(Math.log(band.high / v), 0.95 * ln, ends);
    expect(band.low).toBeGreaterThanOrEqual(0.1);
    expect(band.high).toBeLessThanOrEqual(0.9 * (1 + 1e-12));
  });
  test('a choice: each of its values, all alike', () => {
    const { band } = drawn(3, { kind: 'one of', values: [2, 3, 4] });
    expect([band.low, band.high]).toEqual([2, 4]);
    expectMean(band, 3, Math.sqrt(2 / 3));
    expectStd(band, Math.sqrt(2 / 3), 3 / 2);
    expect(drawn(7, { kind: 'one of', values: [7] }).band).toEqual({ low: 7, high: 7, mean: 7, std: 0, draws: 0 });
  });
  test('a sure number needs no draws', () => {
    const { band } = drawn(2, { kind: 'within', amount: 0 }, SQUARE);
    expect(band).toEqual({ low: 4, high: 4, mean: 4, std: 0, draws: 0 });
  });
});

describe('what lies between a number and the result', () => {
  test('a square keeps to one side of zero, which first order does not know', () => {
    const { band, graph, top } = drawn(0, { kind: 'within', amount: 2 }, SQUARE);
    expect(graph.uncertainty(top)).toBe(0);
    // x² with x even from −2 to 2: mean 4/3, mean of squares 16/5.
    expectMean(band, 4 / 3, Math.sqrt(16 / 5 - 16 / 9));
    expect(band.low).toBeGreaterThanOrEqual(0);
    expectNear(band.high, (0.975 * 2) ** 2, 0.15);
  });
  test.each<[string, Spread, number, number]>([
    ['a half-width', { kind: 'within', amount: 0.5 }, 1, 3],
    ['a factor', { kind: 'factor', amount: 3 }, 2 / 3, 6],
    ['a choice', { kind: 'one of', values: [0.5, 2] }, 1, 4],
  ])('%s keeps its ends in a sum below what is bent', (_, spread, low, high) => {
    const graph = new Graph();
    const x = graph.input('x', { value: 1, dim: NUMBER, spread }, 'written', 'x');
    const top = graph.derive('top', ITSELF, [graph.derive('twice', TWICE, [x], NUMBER, 'twice')], NUMBER, 'top');
    const band = sample(graph, top)!;
    expect(band.low).toBeGreaterThanOrEqual(low * (1 - 1e-12));
    expect(band.high).toBeLessThanOrEqual(high * (1 + 1e-12));
  });
  test('a kink below a sum is seen', () => {
    const graph = new Graph();
    const x = graph.input('x', { value: 0, dim: NUMBER, spread: { kind: 'within', amount: 1 } }, 'written', 'x');
    const squares = [0, 1, 2].map(i => graph.derive(`s${i}`, SQUARE, [x], NUMBER, 's'));
    const top = graph.derive('top', ITSELF, [graph.derive('sum', SUM, squares, NUMBER, 'sum')], NUMBER, 'top');
    const band = sample(graph, top)!;
    // 3x²: mean 1, though its slope at 0 is none.
    expectMean(band, 1, 3 * Math.sqrt(1 / 5 - 1 / 9));
  });
  test('numbers that two sums share are drawn once', () => {
    const graph = new Graph();
    const x = Array.from({ length: 4 }, (_, i) => graph.input(`x${i}`, { value: 1, dim: NUMBER, spread: { kind: 'within', amount: 0.5 } }, 'written', 'x'));
    const [a, b] = ['a', 'b'].map(n => graph.derive(n, SUM, x, NUMBER, n)) as [Cell, Cell];
    const minus: Rule = { name: 'minus', formula: 'a − b', curved: true, compute: ([p, q]) => p! - q! };
    const band = sample(graph, graph.derive('top', minus, [a, b], NUMBER, 'top'))!;
    expect(band.low).toBe(0);
    expect(band.high).toBe(0);
    expect(graph.uncertainty(graph.find('top')!)).toBeLessThan(1e-9);
  });
  test('a held cell keeps its value, also below a sum', () => {
    const graph = new Graph();
    const x = Array.from({ length: 4 }, (_, i) => graph.input(`x${i}`, { value: 1, dim: NUMBER, spread: { kind: 'within', amount: 0.5 } }, 'written', 'x'));
    const sum = graph.derive('sum', SUM, x, NUMBER, 'sum');
    const top = graph.derive('top', ITSELF, [sum], NUMBER, 'top');
    expect(sample(graph, top, new Map([[sum, 9]]))).toEqual({ low: 9, high: 9, mean: 9, std: 0, draws: 0 });
    const held = sample(graph, top, new Map(x.slice(1).map(c => [c, 5])))!;
    expectMean(held, 16, 0.5 / Math.sqrt(3));
    expectStd(held, 0.5 / Math.sqrt(3), 9 / 5);
    expect(held.low).toBeGreaterThanOrEqual(15.5);
    expect(held.high).toBeLessThanOrEqual(16.5);
  });
  test('a sum of many is as wide as its parts together', () => {
    const graph = new Graph();
    const x = Array.from({ length: 12 }, (_, i) => graph.input(`x${i}`, { value: i, dim: LENGTH, spread: { kind: 'within', amount: 0.5 } }, 'written', 'x'));
    const band = sample(graph, graph.derive('top', ITSELF, [graph.derive('sum', SUM, x, LENGTH, 'sum')], LENGTH, 'top'))!;
    // Twelve times a² / 3 of a half-width of one half is just 1.
    expectMean(band, 66, 1);
    expectStd(band, 1, 3);
    expectEnds(band, 66 - 1.96, 66 + 1.96, 0.0584);
  });
});

describe('near-linear setups', () => {
  const pages = [
    setup('let a = 300 mm ± 3 mm', 'let b = 200 mm ± 2 mm std', 'let y = sqrt(a * a + b * b)'),
    setup('let a = 3 ± 1%', 'let b = 5 ± 2% std', 'let c = 7 ×÷ 1.05', 'let y = a * b / c'),
    setup('let a = 30° ± 1°', 'let b = 2 m ± 5 mm', 'let y = b * (1 + cos(a))'),
    setup('let a = 30 ± 1', 'let y = max(a, 2) + abs(a) - min(a, 90)'),
  ];
  test.each(pages)('draws and first order agree: %s', text => {
    const { cell, value, u, results: { graph } } = read(text);
    const band = sample(graph, cell('y'))!;
    expectMean(band, value('y'), u('y'));
    expectStd(band, u('y'), 3);
  });
  test('the same text gives the same band, again and again', () => {
    for (const text of pages) {
      const [one, two] = [read(text), read(text)].map(r => ({ graph: r.results.graph, cell: r.cell('y') })) as [{ graph: Graph; cell: Cell }, { graph: Graph; cell: Cell }];
      const band = sample(one.graph, one.cell);
      expect(sample(one.graph, one.cell)).toBe(band);
      expect(sample(one.graph, one.cell, new Map())).toEqual(band);
      expect(sample(two.graph, two.cell)).toEqual(band);
    }
  });
  const band = (text: string): Band => { const r = read(text); return sample(r.results.graph, r.cell('y'))!; };
  test('another name or place of the text, or what else is written, does not change the band', () => {
    expect(band(`// wet sand\n${pages[0]!}`)).toEqual(band(pages[0]!));
    expect(band(pages[0]!.replaceAll(/\ba\b/g, 'gap'))).toEqual(band(pages[0]!));
    expect(band(pages[0]!.replace('  let a', '  let other = 5 mm ± 1 mm\n  let a'))).toEqual(band(pages[0]!));
  });
});

describe('a costly rule', () => {
  let ran = 0;
  const costly: Rule = { name: 'costly', formula: 'a²', curved: true, costly: true, compute: ([a]) => { ran++; return a! ** 2; }, partials: ([a]) => [2 * a!] };
  const graphOf = (): { graph: Graph; x: Cell; y: Cell; c: Cell } => {
    const graph = new Graph();
    const [x, y] = ['x', 'y'].map(n => graph.input(n, { value: 1, dim: NUMBER, spread: { kind: 'within', amount: 0.5 } }, 'written', n)) as [Cell, Cell];
    return { graph, x, y, c: graph.derive('c', costly, [x], NUMBER, 'c') };
  };
  const minus: Rule = { name: 'minus', formula: 'a − b', curved: true, compute: ([p, q]) => p! - q! };
  test('is drawn once for all that rests on it', () => {
    const { graph, y, c } = graphOf();
    sample(graph, c);
    const before = ran;
    // x² − y with both evenly from 0.5 to 1.5: mean 13/12 − 1, variance (E x⁴ − (13/12)²) + 1/12, E x⁴ = (1.5⁵ − 0.5⁵)/5.
    const band = sample(graph, graph.derive('top', minus, [c, y], NUMBER, 'top'))!;
    const std = Math.sqrt((1.5 ** 5 - 0.5 ** 5) / 5 - (13 / 12) ** 2 + 1 / 12);
    expect(ran).toBe(before);
    expectMean(band, 1 / 12, std);
    expectStd(band, std, 3);
  });
  test('is drawn with what shares its inputs', () => {
    const { graph, x, c } = graphOf();
    const root: Rule = { name: 'root', formula: '√a', curved: true, compute: ([a, b]) => Math.sqrt(a!) - b! };
    const { low, high } = sample(graph, graph.derive('top', root, [c, x], NUMBER, 'top'))!;
    expect(Math.max(Math.abs(low), Math.abs(high))).toBeLessThan(1e-12);
  });
});
