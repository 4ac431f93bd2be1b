/** Light at the plate as the meter says. Expected values by hand; 1 µW/cm² = 0.01 W/m², 1 µJ/cm² = 0.01 J/m². */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { standardUncertainty } from '../../server/model/quantity.ts';
import type { Read } from './read.ts';
import { metered, METER, MICRO, NEEDLE } from './light-library.ts';
import { expectNear, serious } from './read.ts';

const micro = (r: Read, name: string): number => r.value(name) / MICRO;
const why = (r: Read, name: string): string | undefined => r.cell(name).missing?.why;

describe('light in the plate’s plane', () => {
  test('4 µW/cm² facing a beam at 56° is 2.23677 µW/cm² (published inputs)', () => {
    const r = metered(['measured reference at P1 facing beam: 4 µW/cm² by m'], { plate: ['reference angle: 56°', 'sensitivity: 80 µJ/cm²'], facts: ['beam ratio: 4:1'] });
    expectNear(micro(r, 'P1.reference.light'), 2.236771613882987, 1e-9);
    // With 4:1 the object adds a quarter: 2.79596 µW/cm², of which 80 µJ/cm² need 28.6127 s.
    expectNear(micro(r, 'P1.object.light'), 2.236771613882987 / 4, 1e-9);
    expectNear(r.value('exposure'), 80 / (2.236771613882987 * 1.25), 1e-9);
  });
  test('2.5 µW/cm² in all and 50 µJ/cm² take 20 s', () => {
    const r = metered(['measured reference at P1: 2 µW/cm² by m', 'measured object at P1: 0.5 µW/cm² by m'], { plate: ['sensitivity: 50 µJ/cm²'] });
    expectNear(micro(r, 'P1.light'), 2.5, 1e-12);
    expectNear(r.value('P1.exposure time'), 20, 1e-9);
    expectNear(r.value('beam ratio'), 4, 1e-12);
  });
  test('reciprocity counts where its exponent is written: 20 s become 20^(1/0.9) = 27.8976 s', () => {
    const r = metered(['measured reference at P1: 2 µW/cm² by m', 'measured object at P1: 0.5 µW/cm² by m'], { plate: ['sensitivity: 50 µJ/cm²', 'reciprocity: 0.9'] });
    // ln 20 / 0.9 = 2.995732 / 0.9 = 3.328592; e^3.328592 = 27.899
    expectNear(r.value('exposure'), Math.exp(Math.log(20) / 0.9), 1e-9);
  });
  test('a power is divided by the area of the head', () => {
    // 2 µW on 1 cm² are 2 µW/cm²; on a head of 5 x 4 mm = 0.2 cm² they are 10 µW/cm².
    expectNear(micro(metered(['measured reference at P1: 2 µW by m'], { things: METER }), 'P1.reference.light'), 2, 1e-9);
    expectNear(micro(metered(['measured reference at P1: 2 µW by m'], { things: ['meter m {', '  head size: 5 x 4 mm', '  calibration: 1', '  dark: 0 nW', '}'] }), 'P1.reference.light'), 10, 1e-9);
  });
  test('published powers on one head: 1.8 and 0.8 µW make 2.25:1 (University of Bergen, thesis 404001, 1996, 12.3)', () => {
    expectNear(metered(['measured reference at P1: 1.8 µW by m', 'measured object at P1: 0.8 µW by m']).value('beam ratio'), 2.25, 1e-12);
  });
  test('the dark reading is taken off, the newest of that meter, else that of its page', () => {
    const page = { things: ['meter m {', '  head: 11.283791670955126 mm', '  calibration: 1', '  dark: 100 nW', '}', 'meter n', ...NEEDLE] };
    // 100 nW on 1 cm² are 0.1 µW/cm².
    expectNear(micro(metered(['measured reference at P1: 2 µW/cm² by m'], page), 'P1.reference.light'), 1.9, 1e-9);
    expectNear(micro(metered(['measured reference at P1: 2 µW/cm² by m', 'measured dark: 50 nW by m'], page), 'P1.reference.light'), 1.95, 1e-9);
    expectNear(micro(metered(['measured reference at P1: 2 µW/cm² by m', 'measured dark: 0.3 µW/cm² by m on 2026-02-18', 'measured dark: 50 nW by m on 2026-02-11', 'measured dark: 1 µW/cm² by n'], page), 'P1.reference.light'), 1.7, 1e-9);
    // Bare numbers with bare dark: (62 − 2) / (14 − 2) = 5.
    expectNear(metered(['measured dark: 2 by needle', 'measured reference at P1: 62 by needle', 'measured object at P1: 14 by needle']).value('beam ratio'), 5, 1e-12);
  });
  test('the page of a meter may say its dark reading as light, or without units', () => {
    expectNear(micro(metered(['measured reference at P1: 2 µW/cm² by m'], { things: ['meter m {', '  calibration: 1', '  dark: 0.2 µW/cm²', '}'] }), 'P1.reference.light'), 1.8, 1e-9);
    // (62 − 2) / (14 − 2) = 5; what is dark in divisions says nothing of a reading in µW/cm².
    const needle = { things: ['meter needle {', '  dark: 2', '  calibration: 1', '}'] };
    expectNear(metered(['measured reference at P1: 62 by needle', 'measured object at P1: 14 by needle'], needle).value('beam ratio'), 5, 1e-12);
    expectNear(micro(metered(['measured reference at P1: 2 µW/cm² by needle'], needle), 'P1.reference.light'), 2, 1e-9);
    expect(serious(metered([], { things: ['meter m {', '  dark: 8 mm', '}'] }).snapshot.findings)).toContain('9 wrong-unit');
  });
  test('the calibration multiplies', () => {
    const r = metered(['measured reference at P1: 2 µW/cm² by m'], { things: ['meter m {', '  calibration: 1.2 ± 5%', '  dark: 0 nW', '}'] });
    expectNear(micro(r, 'P1.reference.light'), 2.4, 1e-12);
    // 5 % either way, all equally likely: 0.05 · 1.2 / √3, times 2 µW/cm².
    expectNear(r.u('P1.reference.light') / MICRO, (0.06 / Math.sqrt(3)) * 2, 1e-12);
  });
  test('what both readings share leaves nothing of itself in their ratio, not even rounding', () => {
    const things = ['meter m {', '  head: 1 mm', '  calibration: 1 ± 5%', '  dark: 0 nW', '}'];
    // (1.3 − 0.01) / (0.25 − 0.01); all three by one meter, without an error of their own.
    const r = metered(['measured reference at P1: 1.3 µW by m', 'measured object at P1: 0.25 µW by m', 'measured dark: 10 nW by m'], { things });
    expectNear(r.value('beam ratio'), 1.29 / 0.24, 1e-12);
    expect(r.u('beam ratio')).toBe(0);
    expect(r.u('P1.reference.light')).toBeGreaterThan(0);
    // A power that was read stands alone, whatever was planned: 12 mW ± 10 % falls out of 9 mW.
    expect(metered(['measured raw at S1: 9 mW'], { laser: ['power: 12 mW ± 10%'] }).u('raw.1.power')).toBe(0);
  });
  test('the newest reading counts', () => {
    const r = metered(['measured reference at P1: 2 µW/cm² by m on 2026-02-18', 'measured reference at P1: 3 µW/cm² by m on 2026-02-11', 'measured reference at P1: 4 µW/cm² by m']);
    expectNear(micro(r, 'P1.reference.light'), 2, 1e-12);
  });
  test('a formula is a reading too', () => { expectNear(micro(metered(['let scale = 0.5 µW/cm²', 'measured reference at P1: scale * 4 by m']), 'P1.reference.light'), 2, 1e-12); });
  test('two object beams add up, read one by one or together', () => {
    const two = (...lines: string[]): Read => metered(['splitter S2', 'beam key from S1 reflected', '-> S2: 100 mm', 'beam fill from S2 reflected', '-> whelk: 1100 mm', '-> P1: 300 mm', ...lines]);
    const fill = ['measured reference at P1: 2 µW/cm² by m', 'measured fill at P1: 0.1 µW/cm² by m'];
    const r = two(...fill, 'measured object at P1: 0.4 µW/cm² by m');
    expectNear(micro(r, 'P1.object.light'), 0.4, 1e-12);
    expectNear(r.value('beam ratio'), 2 / 0.5, 1e-12);
  });
});

describe('the ratio', () => {
  const both = (reference: string, object: string, things?: readonly string[]): Read => metered([`measured reference at P1: ${reference}`, `measured object at P1: ${object}`], things ? { things } : {});
  test('of bare numbers by one meter', () => {
    const r = both('60 by needle', '15 by needle');
    expectNear(r.value('P1.beam ratio'), 4, 1e-12);
    expect(why(r, 'P1.light')).toContain('has not been metered in units');
  });
  test('of powers by one meter, however large its head', () => {
    const r = both('1.8 µW by n', '0.8 µW by n', ['meter n']);
    expectNear(r.value('beam ratio'), 2.25, 1e-12);
    expect(why(r, 'P1.light')).toContain('has not been metered in units');
    expect(serious(r.snapshot.findings).map(f => f.split(' ')[1])).toEqual(['head-size-missing']);
  });
  test('does not know the calibration that both readings share', () => {
    const r = both('1.6 µW/cm² ± 5% by m', '0.4 µW/cm² ± 10% by m', ['meter m {', '  calibration: 1 ± 30%', '  dark: 0 nW', '}']);
    // Closed form without the calibration: u/K = √((5 %)² + (10 %)²) / √3.
    expectNear(r.u('beam ratio') / 4, Math.hypot(0.05, 0.1) / Math.sqrt(3), 1e-9);
    // Each light knows it: √((5 %)² + (30 %)²) / √3.
    expectNear(r.u('P1.reference.light') / r.value('P1.reference.light'), Math.hypot(0.05, 0.3) / Math.sqrt(3), 1e-9);
    const gradient = r.results.graph.gradient(r.cell('beam ratio'));
    expectNear(gradient.get(r.results.graph.find('m.calibration')!)!, 0, 1e-12);
  });
  test('of two meters knows both', () => {
    const r = both('1.6 µW/cm² by m', '0.4 µW/cm² by n', ['meter m {', '  calibration: 1 ± 3%', '  dark: 0 nW', '}', 'meter n {', '  calibration: 1 ± 4%', '  dark: 0 nW', '}']);
    expectNear(r.u('beam ratio') / 4, 0.05 / Math.sqrt(3), 1e-9);
  });
  test('has the uncertainty that moving each input gives', () => {
    const amount = fc.integer({ min: 20, max: 400 }).map(n => n / 100);
    fc.assert(fc.property(amount, amount, fc.integer({ min: 1, max: 80 }), (reference, object, angle) => {
      const r = metered([`measured reference at P1 facing beam: ${reference + 0.3} µW/cm² ± 4% by m`, `measured object at P1: ${object + 0.2} µW/cm² ± 0.02 µW/cm² by m`, 'measured dark: 0.1 µW/cm² ± 0.03 µW/cm² by m'],
        { plate: [`reference angle: ${angle}° ± 2°`], things: ['meter m {', '  calibration: 1 ± 6%', '}'] });
      const { graph } = r.results;
      const cell = r.cell('beam ratio');
      let sum = 0;
      for (const input of graph.gradient(cell).keys()) {
        const [at, u] = [graph.value(input)!, standardUncertainty(graph.value(input)!, input.spread)];
        const h = Math.max(Math.abs(at), 1e-9) * 1e-6;
        sum += (((graph.evaluate(cell, new Map([[input, at + h]])) - graph.evaluate(cell, new Map([[input, at - h]]))) / (2 * h)) * u) ** 2;
      }
      expectNear(graph.uncertainty(cell) / Math.sqrt(sum), 1, 1e-5);
    }), { numRuns: 30 });
  });
  test('is the written one where nothing was metered', () => {
    const r = metered(['expect beam ratio from 3:1 to 6:1'], { facts: ['beam ratio: 4:1'] });
    expectNear(r.value('beam ratio'), 4, 0);
    expect(r.results.goals[0]!.outcome).toBe('met');
    expect(metered(['measured reference at P1: 60 by needle', 'measured object at P1: 10 by needle'], { facts: ['beam ratio: 4:1'] }).value('beam ratio')).toBeCloseTo(6, 12);
  });
  test('that a limit cuts is undecided', () => {
    const outcome = (readings: string, limit: string): string => metered([`measured reference at P1: ${readings} by needle`, 'measured object at P1: 10 ± 1 by needle', `expect beam ratio ${limit}`]).results.goals[0]!.outcome;
    // 40/10 with 10 % either way: 4 ± 2 · 0.4/√3 = 4 ± 0.46.
    expect(outcome('40', 'from 3:1 to 6:1')).toBe('met');
    expect(outcome('40', '< 4.3')).toBe('undecided');
    expect(outcome('40', '> 5:1')).toBe('not met');
  });
});

describe('exposure', () => {
  test('is a band where the sensitivity is known to a factor', () => {
    const r = metered(['measured reference at P1: 2 µW/cm² by m', 'measured object at P1: 0.5 µW/cm² by m', 'expect exposure < 30 s', 'expect exposure < 60 s', 'expect exposure > 60 s'], { plate: ['sensitivity: 50 µJ/cm² ×÷ 2'] });
    // 20 s, a factor of 2 either way: 10 to 40 s.
    expect(r.results.goals.map(g => g.outcome)).toEqual(['undecided', 'met', 'not met']);
  });
  test('cannot be told without the sensitivity, or the object light', () => {
    expect(why(metered(['measured reference at P1: 2 µW/cm² by m', 'measured object at P1: 1 µW/cm² by m']), 'exposure')).toBe('the sensitivity of P1 is not written');
    expect(why(metered(['measured reference at P1: 2 µW/cm² by m'], { plate: ['sensitivity: 50 µJ/cm²'] }), 'exposure')).toContain('the light of object at P1 has not been metered');
  });
});

describe('through a polarizer', () => {
  const lines = ['measured reference at P1: 1.2 µW/cm² by m', 'measured object at P1: 0.4 µW/cm² by m', 'measured object at P1 through polarizer: 0.24 µW/cm² by m'];
  test('the share of the object light that is polarized like the reference', () => {
    // 0.24/0.4 = 0.6 without a word about the sheet; a sheet that loses 20 %: 0.24 / (0.8 · 0.4) = 0.75.
    expectNear(metered(lines).value('P1.object.polarized'), 0.6, 1e-12);
    const r = metered(lines, { things: [...METER, 'polarizer sheet {', '  loss: 20%', '}'] });
    expectNear(r.value('P1.object.polarized'), 0.75, 1e-12);
    // 3:1, of which only three quarters of the object light count: 4:1.
    expectNear(r.value('effective ratio'), 4, 1e-12);
  });
  test('bare numbers of one meter do', () => {
    expectNear(metered(['measured object at P1: 20 by needle', 'measured object at P1 through polarizer: 13 by needle']).value('polarized'), 0.65, 1e-12);
  });
});

describe('corners', () => {
  test('the weakest against the centre', () => {
    const r = metered(['measured reference at P1: 62 by needle', 'measured reference at P1 upper left: 40 by needle', 'measured reference at P1 lower right: 31 by needle']);
    expectNear(r.value('corner light'), 0.5, 1e-12);
  });
  test('read facing the beam they need no angle', () => {
    const r = metered(['measured reference at P1 facing beam: 2 µW/cm² by m', 'measured reference at P1 upper left facing beam: 1.5 µW/cm² by m']);
    expectNear(r.value('corner light'), 0.75, 1e-12);
    expect(why(r, 'P1.reference.light')).toContain('write “reference angle” of P1');
  });
  test('read in two ways they are compared in the plane of the plate', () => {
    // 2 cos 60° = 1, against 0.8.
    const r = metered(['measured reference at P1 facing beam: 2 µW/cm² by m', 'measured reference at P1 upper left: 0.8 µW/cm² by m'], { plate: ['reference angle: 60°'] });
    expectNear(r.value('corner light'), 0.8, 1e-12);
  });
});

describe('what makes no figure', () => {
  test.each([
    ['bare numbers of two meters', ['measured reference at P1: 62 by needle', 'measured object at P1: 14 by m'], ['meters-not-comparable']],
    ['one bare number and one in units', ['measured reference at P1: 62 by needle', 'measured object at P1: 0.4 µW/cm² by m'], ['meters-not-comparable']],
    ['a corner by another meter', ['measured reference at P1: 62 by needle', 'measured reference at P1 upper left: 14 by m'], ['meters-not-comparable']],
    ['powers on two heads of unknown size', ['measured reference at P1: 2 µW by n', 'measured object at P1: 1 µW by o'], ['head-size-missing', 'meters-not-comparable', 'head-size-missing']],
    ['a power by a meter that is not named', ['measured reference at P1: 2 µW'], ['head-size-missing']],
    ['a dark reading in another unit without a head', ['measured reference at P1: 2 µW/cm² by n', 'measured dark: 8 nW by n'], ['head-size-missing']],
    ['a reading below the dark one', ['measured reference at P1: 2 µW/cm² by m', 'measured dark: 3 µW/cm² by m'], ['no-light']],
  ])('%s', (_, lines, codes) => {
    const r = metered([...lines, 'expect beam ratio < 6:1'], { things: [...METER, ...NEEDLE, 'meter n', 'meter o'] });
    expect(serious(r.snapshot.findings).map(f => f.split(' ')[1])).toEqual(codes);
    expect(r.results.goals[0]!.outcome).toBe('cannot be told');
    expect(why(r, 'beam ratio')).toBeTruthy();
  });
  test('without a dark reading that can be taken off, none is', () => {
    expectNear(metered(['measured reference at P1: 62 by needle', 'measured object at P1: 31 by needle', 'measured dark: 5 nW by needle']).value('beam ratio'), 2, 1e-12);
  });
  test('a page without readings has no cells of light', () => {
    const r = metered([]);
    expect(r.results.graph.cells.filter(c => /light|ratio|power|exposure/.test(c.name))).toEqual([]);
    expect(r.results.published.map(c => c.name)).not.toContain('P1.beam ratio');
  });
});
