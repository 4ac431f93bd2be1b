/** What variants come to, by hand; that a variant is what the changed text would be; and that nothing is computed that nobody asks for. */
import { describe, expect, test } from 'vitest';
import { reportMarkdown } from '../../server/features/report/markdown.ts';
import { reportText } from '../../server/features/report/text.ts';
import { fromTo } from '../../server/features/review/words.ts';
import { reportOf } from '../../server/features/report/report.ts';
import { hoverAt } from '../../server/features/hover/hover.ts';
import { differenceOf } from '../../server/results/difference.ts';
import { resultNamed } from '../../server/results/names.ts';
import type { Results } from '../../server/results/plan.ts';
import { variantsOf } from '../../server/results/variants.ts';
import { look } from '../checks/library.ts';

/** Reference 750 + 721 = 1471 mm, object 410 + 377 + 384 + 300 = 1471 mm. */
const page = (variants: string, goal = 'expect mismatch < 10 mm'): string => `setup "Whelk" {
  let gap = 300 mm
  laser red {
    wavelength: 632.8 nm
    coherence length: 5 m
    coherence contrast: 50%
  }
  splitter S1
  mirror M1
  mirror M2
  mirror M3
  object whelk {
    depth: 35 mm
  }
  plate P1
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> M1: 750 mm
    -> P1: 721 mm
  beam object from S1 reflected
    -> M2: 410 mm
    -> M3: 377 mm
    -> whelk: 384 mm
    -> P1: gap
  ${goal}
${variants}}
`;
const variant = (name: string, ...lines: string[]): string => `  variant "${name}" {\n${lines.map(l => `    ${l}\n`).join('')}  }\n`;
const mm = (r: Results, name: string): number => Number((r.graph.value(resultNamed(r.graph, r.aliases, name)!)! * 1000).toFixed(9));
const trial = (...lines: string[]): Results => variantsOf(look(page(variant('trial', ...lines))).results[0]!)[0]!.results;

describe('the mismatch', () => {
  // As written 1471 − 1471 = 0 mm; above zero the object arm is the longer.
  test.each<[string, number]>([['S1 -> M1: 760 mm', -10], ['reference.2: 731 mm', -10], ['object.2: 360 mm', -17], ['let gap = 320 mm', 20], ['whelk -> P1: gap + 5 mm', 5]])('of %s', (line, expected) => expect(mm(trial(line), 'mismatch')).toBeCloseTo(expected, 6));
  test('of a beam that is written anew', () => expect(mm(trial('beam reference from S1 through', '  -> P1: 1400 mm'), 'mismatch')).toBeCloseTo(71, 6));
  test('of a beam over a mirror that only the variant has', () => expect(mm(trial('mirror M9', 'beam reference from S1 through', '  -> M9: 700 mm', '  -> P1: 700 mm'), 'mismatch')).toBeCloseTo(71, 6));
  test('of two changes at once', () => expect(mm(trial('S1 -> M1: 760 mm', 'let gap = 320 mm'), 'mismatch')).toBeCloseTo(10, 6));
});

test('a linewidth that a variant writes counts before the coherence length of the setup', () => {
  // Half of the contrast of a Gaussian line of Δν is left at (2 ln 2 / π)·c / Δν = 0.441271·299792.458 m/ms / 100 MHz = 1322.9 mm.
  const r = trial('red.linewidth: 100 MHz');
  expect(mm(r, 'red.coherence length')).toBeCloseTo(1322.897, 2);
  expect(r.graph.find('red.linewidth')!.inputs).toEqual([]);
});

test('a wheel that a variant turns counts before the share that is written, and before a reading of the wheel', () => {
  const wheel = (reading: string, line: string): Results => variantsOf(look(page(variant('trial', line), reading).replace('splitter S1', 'splitter S1 {\n    reflects: 50%\n    mark 2: 40%\n    mark 4: 80%\n    loss: 0%\n  }').replace('laser red {', 'laser red {\n    power: 10 mW')).results[0]!)[0]!.results;
  // Of 10 mW a fifth goes through at mark 4, half as written, 40 % at the 60 % of mark 3.
  const through = (r: Results): number => r.light.ask('P1.reference.power') ? Number((r.graph.value(r.graph.find('P1.reference.power')!)! * 1000).toFixed(9)) : NaN;
  expect(through(wheel('expect mismatch < 10 mm', 'S1.wheel: 4')) / 0.88).toBeCloseTo(2, 9);
  expect(through(wheel('measured S1 wheel: 2', 'S1.wheel: 3')) / 0.88).toBeCloseTo(4, 9);
  expect(through(wheel('measured S1 wheel: 2', 'S1.reflects: 90%')) / 0.88).toBeCloseTo(1, 9);
});

test('light behind a wheel that a variant turns beyond its marks is not told', () => {
  const readings = 'measured reference at P1: 2 µW/cm²\n  measured object at P1: 0.5 µW/cm²';
  const at = (mark: number): number | undefined => {
    const r = variantsOf(look(page(variant('trial', `S1.wheel: ${mark}`), readings).replace('splitter S1', 'splitter S1 {\n    wheel: 2\n    mark 2: 40%\n    mark 4: 80%\n  }').replace('laser red {', 'laser red {\n    power: 10 mW')).results[0]!)[0]!.results;
    return r.graph.value(resultNamed(r.graph, r.aliases, 'beam ratio')!);
  };
  // Read with 60 % through and 40 % reflected; at mark 4 it is 20 to 80: 4 · (20/60) / (80/40) = 2/3.
  expect(at(4)).toBeCloseTo(2 / 3, 9);
  expect(at(5)).toBeUndefined();
});

test('a thing that is moved takes its legs with it', () => {
  // S1 at the origin, M1 300 mm to the right, P1 400 mm above M1: 300 + 400 = 700 mm. Moved to 600 mm above: 300 + 600.
  const text = 'setup "Whelk" {\n  laser red\n  splitter S1 at (0, 0) mm\n  mirror M1 at (300, 0) mm\n  plate P1 at (300, 400) mm\n  beam raw from red\n    -> S1: 100 mm\n  beam reference from S1 through\n    -> M1\n    -> P1\n  variant "farther" {\n    P1 at (300, 600) mm\n  }\n}\n';
  const base = look(text).results[0]!;
  expect([mm(base, 'reference.1.length'), mm(base, 'reference.2.length')]).toEqual([300, 400]);
  const { results } = variantsOf(base)[0]!;
  expect([mm(results, 'reference.1.length'), mm(results, 'reference.2.length')]).toEqual([300, 600]);
});

test('a reading of the setup still corrects a leg that a variant has moved', () => {
  // Planned 400 mm, read 405 mm: 5 mm more. In the variant 600 mm are planned: 605 mm.
  const text = 'setup "Whelk" {\n  laser red\n  splitter S1 at (0, 0) mm\n  plate P1 at (0, 400) mm\n  beam raw from red\n    -> S1: 100 mm\n  beam reference from S1 through\n    -> P1\n  measured S1 -> P1: 405 mm\n  variant "farther" {\n    P1 at (0, 600) mm\n  }\n}\n';
  const base = look(text).results[0]!;
  expect(mm(base, 'reference.1.length')).toBeCloseTo(405, 6);
  expect(mm(variantsOf(base)[0]!.results, 'reference.1.length')).toBeCloseTo(605, 6);
});

test.each<[string, readonly string[], readonly [string, string]]>([
  ['a leg', ['S1 -> M1: 760 mm'], ['750 mm', '760 mm']], ['a value', ['let gap = 320 mm'], ['gap = 300 mm', 'gap = 320 mm']], ['a fact', ['whelk.depth: 60 mm'], ['depth: 35 mm', 'depth: 60 mm']],
  ['a fact in a block', ['red {', '  coherence length: 1 m', '}'], ['coherence length: 5 m', 'coherence length: 1 m']],
])('%s changed in a variant is what the same change in the text is', (_, lines, [from, to]) => {
  const varied = variantsOf(look(page(variant('trial', ...lines))).results[0]!)[0]!.results;
  const edited = look(page('').replace(from, to)).results[0]!;
  expect(differenceOf(edited, varied)).toEqual({ results: [], goals: [] });
  expect(varied.published.length).toBe(edited.published.length);
  expect(differenceOf(look(page('')).results[0]!, varied).results).not.toEqual([]);
});

test('expectations are held against each variant, and what is found of a trial is no finding', () => {
  const s = look(page(variant('longer', 'S1 -> M1: 790 mm') + variant('a little longer', 'S1 -> M1: 755 mm')));
  expect(variantsOf(s.results[0]!).map(v => v.results.goals.map(g => g.outcome))).toEqual([['not met'], ['met']]);
  expect(s.findings.filter(f => f.severity !== 'hint')).toEqual([]);
});

test('is computed once, and not before somebody asks', () => {
  const { results: [r] } = look(page(variant('trial', 'S1 -> M1: 760 mm')));
  expect(variantsOf(r!)).toBe(variantsOf(r!));
});

describe('the report', () => {
  const s = look(page(variant('longer', 'S1 -> M1: 790 mm') + variant('sharper', 'red.coherence length: 9 m')));
  const report = reportOf(s, s.results[0]!);
  test('shows only what differs, side by side, and the goals', () => {
    const { rows, variants } = report.variants!;
    expect(variants.map(v => [v.name, v.changes])).toEqual([['longer', ['S1 -> M1: 790 mm']], ['sharper', ['red.coherence length: 9 m']]]);
    const cells = (label: string): readonly string[] | undefined => rows.find(r => r.label === label)?.cells;
    // The reference is 40 mm longer than the object arm then, 1471 + 40 = 1511 mm in all.
    expect(cells('mismatch')).toEqual(['0 mm', '−40 mm', '0 mm']);
    expect(cells('reference length')).toEqual(['1471 mm', '1511 mm', '1471 mm']);
    expect(cells('object length')).toBeUndefined();
    expect(cells('expect mismatch < 10 mm')).toEqual(['met', 'not met', 'met']);
  });
  test('as text and as Markdown', () => {
    const text = reportText([report], 'whelk.plate');
    expect(text).toMatch(/^ {2}mismatch +0 mm +−40 mm +0 mm$/m);
    expect(text).toMatch(/^ {2}\(1\) longer: S1 -> M1: 790 mm\.$/m);
    expect(text.split('\n').every(l => [...l].length <= 80)).toBe(true);
    expect(reportMarkdown([report], 'whelk.plate')).toContain('| mismatch | 0 mm | −40 mm | 0 mm |');
  });
  test('of many variants stays on the page', () => {
    const many = look(page(Array.from({ length: 12 }, (_, i) => variant(`number ${i}`, `S1 -> M1: ${740 + i} mm`)).join('')));
    const text = reportText([reportOf(many, many.results[0]!)], 'whelk.plate');
    const lines = text.slice(text.indexOf('Variants, beside')).split('\n');
    expect(lines.slice(0, lines.findIndex(l => l.includes('(1) number 0'))).every(l => [...l].length <= 80)).toBe(true);
    expect(lines.filter(l => l.startsWith('  mismatch')).join(' ').match(/mm/g)!.length).toBeGreaterThanOrEqual(13);
  });
});

test('a hover over its name says what it changes and what comes of it', () => {
  const text = page(variant('longer', 'S1 -> M1: 790 mm', 'whelk.depth: 40 mm'));
  const s = look(text);
  const at = (what: string): string => { const line = text.split('\n').findIndex(l => l.includes(what)); return hoverAt(s, line, text.split('\n')[line]!.indexOf(what) + 1)?.markdown ?? ''; };
  expect(at('"longer"')).toContain('mismatch: 0 → −40 mm');
  expect(at('"longer"')).toContain('expect mismatch \\< 10 mm: met → not met');
  // What was expected first, then what one looks for; lengths behind.
  const rows = [...at('"longer"').matchAll(/^- (.*?):/gm)].map(m => m[1]!.replaceAll('\\', ''));
  const wanted = ['expect mismatch < 10 mm', 'mismatch', 'darkest.brightness', 'brightness', 'reference length'];
  expect(rows.filter(r => wanted.includes(r))).toEqual(wanted);
  expect(at('whelk.depth')).toContain('**40 mm** for whelk, in this variant.');
});

test.each([['8 mm', '0.4 mm', '8 → 0.4 mm'], ['8 mm', '1.2 m', '8 mm → 1.2 m'], ['16 to 53 %', '40 %', '16 to 53 % → 40 %'], ['unknown', '3 mm', 'unknown → 3 mm']])('from %s to %s', (a, b, text) => expect(fromTo(a, b)).toBe(text));
