/** What a meter should read for a ratio, and what one loop of string should tell: results that are made when somebody asks. */
import { describe, expect, it } from 'vitest';
import { alone, analyse } from '../../server/analysis.ts';
import type { Results } from '../../server/results/plan.ts';
import { WHELK } from '../checks/library.ts';

const results = (more: string): Results => analyse('file:///saltmarsh/a.plate', WHELK.replace(/\}\s*$/, `${more}}\n`), alone).results[0]!;
const value = (r: Results, name: string): number | undefined => { const c = r.graph.find(name) ?? r.ask(name); return c && r.graph.value(c); };

describe('object light for a ratio', () => {
  const read = results('  measured reference at P1: 1.2 µW/cm² ± 0.1 µW/cm²\n  measured object at P1: 0.4 µW/cm²\n');
  // 1.2 µW/cm² is 0.012 W/m²
  it.each([['4:1', 0.003], ['1:1', 0.012], ['2.5:1', 0.0048], ['9:2', 0.012 / 4.5]])('%s', (ratio, light) => { expect(value(read, `P1.object.light for ${ratio}`)).toBeCloseTo(light, 12); });
  it('is as unsure as the reference, and not as what the object light is now', () => {
    // half-width 0.1 µW/cm²: u = 0.1/√3 of the reference, a quarter of that for 4:1
    const cell = read.ask('P1.object.light for 4:1')!;
    expect(read.graph.uncertainty(cell)).toBeCloseTo(0.001 / Math.sqrt(3) / 4, 12);
  });
  it('is a bare number where the reference was read in these, without the dark reading', () => {
    expect(value(results('  meter needle\n  measured reference at P1: 62 by needle\n  measured dark at P1: 2 by needle\n'), 'P1.object.light for 4:1')).toBeCloseTo(15, 12);
  });
  it('is missing where nothing of the reference is known, with the reason', () => {
    const r = results('');
    const cell = r.ask('P1.object.light for 4:1')!;
    expect(r.graph.value(cell)).toBeUndefined();
    expect(cell.missing?.why).toContain('reference');
  });
  it.each(['P1.object.light for 0:1', 'P1.object.light for 4:0', 'P2.object.light for 4:1', 'P1.object.light for four', 'P1.object.light for 4:1 '])('there is none called “%s”', name => { expect(read.ask(name)).toBeUndefined(); });
  it('has the same cell each time', () => { expect(read.ask('P1.object.light for 4:1')).toBe(read.ask('P1.object.light for 4:1')); });
});

describe('difference by string', () => {
  it('is that of both arms, where nobody has read it', () => {
    // object 410 + 377 + 384 + 300 = 1471 mm; reference 750 + 721 = 1471 mm
    expect(value(results(''), 'P1.object.difference')).toBeCloseTo(0, 9);
  });
  it('has no glass in it', () => {
    const glass = analyse('file:///saltmarsh/a.plate', WHELK.replace('  splitter S1\n', '  splitter S1 {\n    thickness: 5 mm\n  }\n'), alone).results[0]!;
    expect(value(glass, 'P1.object.difference')).toBeCloseTo(0, 9);
    // The reference goes through 5 mm of glass: its path is longer by more than 2 mm.
    expect(value(glass, 'P1.object.mismatch')).toBeLessThan(-0.002);
  });
  it('may be named by a value that is read before there is a path', () => { for (const name of ['P1.object.difference', 'no.such.thing']) expect(results(`  let d = ${name}\n`).plates).toHaveLength(1); });
  it('is what was read, where it was', () => { expect(value(results('  measured object - reference: -3 mm by string\n'), 'P1.object.difference')).toBeCloseTo(-0.003, 4); });
});
