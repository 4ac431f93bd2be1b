/** The ladder: what each cause takes of the brightness. Expected values are worked out here from the formulas, or are those of tables. */
import { describe, expect, it } from 'vitest';
import type { Rung } from '../../server/results/losses/losses.ts';
import { metered } from './light-library.ts';
import { read, setup, type Read } from './read.ts';

const stops = (left: number): number => -Math.log2(left);
/** The rungs of the only object arm, by cause. */
const rungsOf = ({ results }: Read): Record<string, Rung> => Object.fromEntries(results.losses.ladders[0]!.rungs.map(r => [r.cause, r]));
const lossOf = (r: Read, cause: string): number | undefined => { const loss = rungsOf(r)[cause]?.loss; return loss && r.results.graph.value(loss); };
const value = (r: Read, name: string): number | undefined => { const cell = r.results.ask(name) ?? r.results.graph.find(name); return cell && r.results.graph.value(cell); };

describe('the beam ratio', () => {
  // 2√K/(1+K), handbook table (Collier, Burckhardt & Lin 1971, from memory; 0.8 and 0.57496 are exact to the digits shown); the brightness goes with the square
  it.each([[1, 1], [1.5, 0.979796], [2, 0.942809], [3, 0.866025], [4, 0.8], [5, 0.745356], [8, 0.628539], [10, 0.57496], [20, 0.425918]])('%s:1 leaves a contrast of %s', (k, contrast) => {
    expect(lossOf(metered([], { facts: [`beam ratio: ${k}:1`] }), 'ratio')).toBeCloseTo(1 - contrast ** 2, 5);
  });
  it('counts by what was metered', () => {
    expect(lossOf(metered(['measured reference at P1: 80 by needle', 'measured object at P1: 20 by needle']), 'ratio')).toBeCloseTo(0.36, 12);
  });
  it('is unknown where nothing tells it', () => {
    expect(rungsOf(metered([]))['ratio']!.unknown).toContain('has not been metered');
  });
});

describe('the other rungs', () => {
  it('take of polarization what a sheet of polarizer keeps off', () => {
    const r = metered(['measured object at P1: 20 by needle', 'measured object at P1 through polarizer: 8 by needle', 'measured reference at P1: 80 by needle']);
    expect(lossOf(r, 'polarization')).toBeCloseTo(0.6, 12);
  });
  it('take for drift what creeping leaves: sinc² of the fringes that go by', () => {
    // 3 fringes a minute, 10 s: half a fringe; (2/π)² = 0.4053
    const r = metered(['measured drift at P1: 3 fringes/min'], { facts: ['exposure: 10 s'] });
    expect(lossOf(r, 'drift')).toBeCloseTo(1 - (2 / Math.PI) ** 2, 10);
  });
  it.each([[20, 0], [10, 0.5], [40, 0.5], [20 / Math.SQRT2, 1 - Math.sin(Math.PI / 2 / Math.SQRT2) ** 2]])('take for an exposure of %s s where 20 s are needed %s', (time, lost) => {
    // 2 µW/cm² · 20 s = 40 µJ/cm²; sin²(π/4) = 1/2
    const r = metered(['measured reference at P1: 1.6 µW/cm² by m', 'measured object at P1: 0.4 µW/cm² by m'], { plate: ['sensitivity: 40 µJ/cm²'], facts: [`exposure: ${time} s`] });
    expect(value(r, 'P1.exposure time')).toBeCloseTo(20, 9);
    expect(lossOf(r, 'exposure')).toBeCloseTo(lost, 9);
  });
  it('take in the weakest corner what it lacks of the light, and nothing of the whole', () => {
    const r = metered(['measured reference at P1: 10 by needle', 'measured reference at P1 upper left: 5 by needle', 'measured reference at P1 lower left: 7 by needle', 'measured object at P1: 2.5 by needle']);
    expect(lossOf(r, 'corner')).toBeCloseTo(0.5, 12);
    expect(value(r, 'P1.object.recorded brightness')! / (1 - lossOf(r, 'depth')!)).toBeCloseTo(0.64, 9);
  });
});

describe('the whole', () => {
  const full = (more: readonly string[] = []): Read => metered(['measured drift at P1: 3 fringes/min', 'measured object at P1: 20 by needle', 'measured object at P1 through polarizer: 16 by needle', 'measured reference at P1: 80 by needle', ...more], { facts: ['exposure: 10 s'] });
  it('adds in stops', () => {
    const r = full();
    const each = rungsOf(r);
    const sum = Object.values(each).reduce((s, { loss }) => s + (loss ? stops(1 - r.results.graph.value(loss)!) : 0), 0);
    expect(stops(value(r, 'recorded brightness')!)).toBeCloseTo(sum, 10);
    // ratio 4:1 takes 36 %, a fifth of the object light is polarized otherwise, half a fringe creeps by; both arms match
    expect(value(r, 'P1.object.recorded brightness')).toBeCloseTo(0.64 * 0.8 * (2 / Math.PI) ** 2, 6);
  });
  it('does not depend on the order in which things are asked', () => {
    const r = full();
    r.results.ask('P1.object.drift loss');
    expect(value(r, 'recorded brightness')).toBe(value(full(), 'recorded brightness'));
  });
  it('has short names, as long as they mean one thing', () => {
    const r = full(['expect ratio loss < 40%', 'expect whelk.recorded brightness > 10%', 'expect P1.recorded brightness > 90%']);
    expect(r.results.goals.map(g => g.outcome)).toEqual(['met', 'met', 'not met']);
  });
  it('is on the page as soon as more than lengths is written, and costs a page of lengths nothing', () => {
    const page = (...more: string[]): Read => read(setup(...more, 'laser red {', '  coherence length: 5 m', '}', 'splitter S1', 'object whelk {', '  depth: 35 mm', '}', 'plate P1', 'beam raw from red', '-> S1: 350 mm', 'beam reference from S1 through', '-> P1: 1500 mm', 'beam object from S1 reflected', '-> whelk: 1200 mm', '-> P1: 300 mm'));
    const names = (r: Read): string[] => r.results.published.map(c => c.name);
    expect(page().results.graph.cells.filter(c => /loss by|recorded/.test(c.name))).toEqual([]);
    expect(names(page('beam ratio: 4:1'))).toEqual([...names(page()), 'P1.beam ratio', 'P1.object.ratio loss', 'P1.object.recorded brightness']);
    expect(value(page(), 'P1.object.depth loss')).toBeGreaterThan(0);
  });
  it.each(['beam ratio: 1e-9:1', 'beam ratio: 1000000000:1', 'exposure: 0 s', 'exposure: 1e9 s'])('of a strange page with “%s” stays between none and all', line => {
    const r = metered(['measured reference at P1: 1.6 µW/cm² by m', 'measured object at P1: 0.4 µW/cm² by m'], { plate: ['sensitivity: 40 µJ/cm²'], facts: [line] });
    for (const { rungs } of r.results.losses.ladders) for (const { loss } of rungs) if (loss) { const v = r.results.graph.value(loss)!; expect(v).toBeGreaterThanOrEqual(0); expect(v).toBeLessThanOrEqual(1); }
  });
});
