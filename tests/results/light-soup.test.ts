/** Readings of light of any size, by any meter, in any order: nothing throws, and no NaN and no infinity comes out. A failure prints the text. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { numbersOf } from '../checks/library.ts';
import { read, setup } from './read.ts';

const value = fc.constantFrom(
  '2 µW/cm²', '2 µW/cm² ± 5%', '0 µW/cm²', '1e-30 W/m²', '1e39 W/m²', '1 µW/cm² ± 1 µW/cm²', '3 µW', '1e-39 W', '62', '62 ± 62', '0', '1e39', '1e-39', '4:1', '8 nW', '1 ×÷ 1e9', 'gap', 'gap * 1e20', '?', '', '-1', '0.5 fringes/min', '1e39 fringes/s', '300 mm', '50%',
);
const meter = fc.constantFrom('', ' by m', ' by n', ' by needle', ' by lamp', ' by m on 2026-02-18', ' by needle on 2026-02-11');
const what = fc.constantFrom(
  'reference at P1', 'object at P1', 'reference at P1 facing beam', 'object at P1 facing beam', 'object at P1 through polarizer', 'object at P1 through sheet', 'reference at P1 upper left', 'reference at P1 lower right facing beam', 'reference', 'object', 'raw at S1', 'reference at M1', 'object at whelk',
  'dark', 'dark at P1', 'S1 wheel', 'drift at P1', 'drift', 'real image at card', 'real image',
);
const reading = fc.tuple(what, value, meter).map(([w, v, m]) => `measured ${w}: ${v}${m}`);
const fact = (phrase: string, ...values: string[]): fc.Arbitrary<string[]> => fc.constantFrom('', ...values).map(v => (v === '' ? [] : [`  ${phrase}: ${v}`]));
const SHARES = ['0%', '100%', '50% ± 90%', '88% ± 2 points', '?', '120%'];
const goal = fc.constantFrom('expect beam ratio from 3:1 to 6:1', 'expect exposure < 30 s', 'expect corner light > 35%', 'expect P1.object.power > 1 mW', 'expect raw.1.power < 1e39 W', 'expect reference.2.power > 0 mW', 'expect light at the plate < 1 µW/cm²', 'let twice = P1.reference.power * 2', 'expect P1.reference.power < twice', 'expect drift < 1 fringes/min', 'expect longest exposure > 1e39 s', 'expect drift brightness > 50%', 'expect effective ratio < 3', 'expect P1.light > 1 mm');
const page = fc.tuple(
  fact('power', '12 mW ± 10%', '1e39 W', '1e-39 W', '1 mW ×÷ 1e9'),
  fc.tuple(fact('reflects', ...SHARES), fact('loss', ...SHARES), fact('wheel', '4.5', '1e39', '4.5 ± 1e39', '3'), fact('mark 4', ...SHARES), fact('mark 5', ...SHARES), fact('mark 1e39', ...SHARES)).map(f => f.flat()),
  fc.tuple(fact('sensitivity', '40 µJ/cm² ×÷ 2', '10 J/cm²', '40 µJ/cm² ×÷ 1e9'), fact('reference angle', '56°', '90°', '0° ± 90°'), fact('reciprocity', '0.9 ± 0.05', '0.3')).map(f => f.flat()),
  fc.tuple(fact('head', '10 mm', '1e39 m', '1e-39 m', '10 mm ± 10 mm'), fact('calibration', '1 ± 5%', '1e39', '1 ×÷ 1e9'), fact('dark', '8 nW ± 2 nW', '1e39 W', '0 nW')).map(f => f.flat()),
  fc.constantFrom('', 'beam ratio: 4:1', 'beam ratio: 1e39:1', 'exposure: 20 s'), fc.array(reading, { maxLength: 8 }), fc.array(goal, { maxLength: 3 }),
).map(([laser, splitter, plate, m, own, readings, goals]) => setup(
  own, 'laser red {', '  coherence length: 5 m', ...laser, '}', 'splitter S1 {', ...splitter, '}', 'mirror M1', 'object whelk', 'hologram H1 {', '  image distance: 290 mm', '}', 'screen card', 'polarizer sheet', 'plate P1 {', ...plate, '}', 'meter m {', ...m, '}', 'meter n', 'meter needle', 'let gap = 1 µW/cm² ± 90%',
  'beam raw from red', '-> S1: 350 mm', 'beam reference from S1 through', '-> M1: 100 mm', '-> P1: 1500 mm', 'beam object from S1 reflected', '-> whelk: 1200 mm', '-> P1: 300 mm', ...readings, ...goals,
));

test('soup of readings is sound', () => {
  fc.assert(fc.property(page, text => {
    const { snapshot } = read(text);
    for (const r of snapshot.results) for (const name of ['P1.reference.power', 'object.1.power', 'exposure', 'P1.beam ratio']) r.light.ask(name);
    expect(numbersOf(snapshot).filter(n => !Number.isFinite(n.value)), text).toEqual([]);
    expect(snapshot.findings.filter(f => /NaN|Infinity|undefined|\[object/.test(f.message)).map(f => f.message), text).toEqual([]);
  }), { numRuns: 400 });
});
