/** What shots teach: the fit against libraries of statistics, what each kind of shot says, boxes kept apart, and the line that is offered. */
import * as cephes from 'cephes';
import { mean, std } from 'mathjs';
import { beforeAll, describe, expect, test } from 'vitest';
import { analyse, type Library } from '../../server/analysis.ts';
import { BROAD, QUARTER_STOP, timesPath } from '../../server/features/learn/evidence.ts';
import { fitted, tQuantile } from '../../server/features/learn/fit.ts';
import { editsOf, learn, type Learned, type Lesson } from '../../server/features/learn/learn.ts';
import { learnedPage } from '../../server/features/learn/page.ts';
import { shotsIn } from '../../server/features/learn/shots.ts';
import { learnedMarkdown, learnedText } from '../../server/features/learn/text.ts';
import { applyEdits } from '../../server/model/edits.ts';

beforeAll(async () => { await cephes.compiled; });

const BOX = `inventory lab {
  plate fine {
    sensitivity: 40 µJ/cm² ×÷ 2 // the usual range
  }
  plate slow {
    resolving power: 5000 lines/mm
  }
  laser red {
    wavelength: 632.8 nm
    coherence length: 300 mm ×÷ 3
  }
}
`;
const library: Library = { resolve: path => path, text: uri => (uri === 'box.plate' ? BOX : undefined) };
/** The reference is 1200 mm long, the object beam 1000 + 200 mm to the middle of a shell that is 40 mm deep. */
const page = (shots: string, stock = 'fine', more = ''): string => `use "box.plate"
setup "Limpet" {
  hologram: reflection
  laser red = lab.red
  splitter S1
  object limpet {
    depth: 40 mm
    lit at: 0°
  }
  plate P1 = lab.${stock}
  beam raw from red
    -> S1: 300 mm
  beam reference from S1 through
    -> P1: 1200 mm
  beam object from S1 reflected
    -> limpet: 1000 mm
    -> P1: 200 mm
${more}${shots}}
`;
const shot = (name: number, ...facts: string[]): string => `  shot ${name} on 2026-01-${String(9 + name).padStart(2, '0')} {\n${facts.map(f => `    ${f}\n`).join('')}  }\n`;
const learnt = (...pages: string[]): Learned => learn(pages.flatMap((p, i) => shotsIn(analyse(`page${i}.plate`, p, library))));
const about = (l: Learned, what: Lesson['about']): Lesson[] => l.lessons.filter(x => x.about === what);
const MICRO = 1e-2; // 1 µJ/cm² = 0.01 J/m²

describe('the fit', () => {
  test.each([1, 2, 3, 4, 7, 12, 30, 99])('Student’s t of %i degrees is that of cephes', degrees => { expect(tQuantile(degrees)).toBeCloseTo(cephes.stdtri(degrees, 0.975), 9); });
  test('mean and band are those of a library', () => {
    const x = [3.71, 3.82, 3.69, 3.9, 3.77];
    const fit = fitted(x.map(v => ({ x: v, u: 0 })));
    expect(fit.mean).toBeCloseTo(mean(x), 12);
    // std divides by n − 1
    expect(fit.give).toBeCloseTo((cephes.stdtri(4, 0.975) * Number(std(x))) / Math.sqrt(5), 9);
  });
  test('a published example: twenty readings of a temperature', () => {
    // JCGM 100:2008 (GUM), 4.4.3 and table 1 (from memory): mean 100.145 °C, s = 1.489 °C, s/√20 = 0.333 °C. Student's table gives 2.093 for 19 degrees of freedom.
    const readings = [96.9, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07, 100.33, 100.42, 100.68, 100.95, 101.11, 101.2, 101.57, 101.84, 102.36, 102.72];
    const fit = fitted(readings.map(x => ({ x, u: 0 })));
    expect(fit.mean).toBeCloseTo(100.145, 3);
    expect(fit.scatter).toBeCloseTo(1.489, 3);
    expect(fit.give).toBeCloseTo(2.093 * 0.333, 3);
  });
  test('what all have in common does not average out', () => {
    const few = fitted([{ x: 1, u: 0.1 }]);
    expect(fitted(Array.from({ length: 20 }, () => ({ x: 1, u: 0.1 }))).give).toBeCloseTo(0.2, 12);
    expect(few.give).toBeCloseTo(0.2, 12);
    expect(few.scatter).toBeUndefined();
  });
  test('a difference that nobody sees is no scatter', () => {
    // Two that lie 0.1 apart: s² = 0.005, below 0.2²/3.
    expect(fitted([{ x: 0, u: 0 }, { x: 0.1, u: 0 }], 0.2).give).toBeCloseTo(0.2, 12);
  });
});

describe('sensitivity', () => {
  test('one good plate says what it had, as broadly as brightness goes with exposure', () => {
    const [l, ...more] = about(learnt(page(shot(1, 'dose: 42 µJ/cm²', 'outcome: "bright"'))), 'sensitivity');
    expect(more).toEqual([]);
    expect(l!.value).toBeCloseTo(42 * MICRO, 9);
    expect(l!.factor).toBeCloseTo(BROAD, 9);
    expect(l!.limits.join(' ')).toContain('One shot');
  });
  test('the meter’s give or take comes on top', () => {
    const [l] = about(learnt(page(shot(1, 'dose: 42 µJ/cm² ± 10%', 'outcome: "bright"'))), 'sensitivity');
    // Twice 10 %/√3, and ln 1.3, in squares.
    expect(Math.log(l!.factor!)).toBeCloseTo(Math.hypot(0.2 / Math.sqrt(3), Math.log(1.3)), 9);
  });
  test('the best of a strip has its share of the dose, to a quarter stop', () => {
    const [l] = about(learnt(page(shot(1, 'dose: 20 µJ/cm²', 'exposure: 10 s', 'best exposure: 14 s'))), 'sensitivity');
    expect(l!.value).toBeCloseTo(28 * MICRO, 9);
    expect(l!.factor).toBeCloseTo(QUARTER_STOP, 9);
    expect(QUARTER_STOP ** 4).toBeCloseTo(2, 12);
  });
  test('several plates: the mean of their logarithms', () => {
    const [l] = about(learnt(page(shot(1, 'dose: 40 µJ/cm²', 'outcome: "bright"') + shot(2, 'dose: 48.4 µJ/cm²', 'outcome: "good"'))), 'sensitivity');
    // √(40 · 48.4) = 44
    expect(l!.value).toBeCloseTo(44 * MICRO, 9);
    expect(l!.limits.join(' ')).toContain('Two shots');
  });
  test('thin and dense plates say at least and at most', () => {
    const thin = shot(1, 'dose: 10 µJ/cm²', 'outcome: "too thin"');
    const dense = shot(2, 'dose: 90 µJ/cm²', 'outcome: "nearly black"');
    const [least] = about(learnt(page(thin)), 'sensitivity');
    expect([least!.low, least!.high, least!.value, least!.line]).toEqual([expect.closeTo(10 * MICRO, 9), undefined, undefined, undefined]);
    expect(least!.limits.join(' ')).toContain('One shot says at least only.');
    const [most] = about(learnt(page(dense)), 'sensitivity');
    expect([most!.low, most!.high]).toEqual([undefined, expect.closeTo(90 * MICRO, 9)]);
    const [both] = about(learnt(page(thin + dense)), 'sensitivity');
    // √(10 · 90) = 30, a factor of 3 either way
    expect([both!.value, both!.factor]).toEqual([expect.closeTo(30 * MICRO, 9), expect.closeTo(3, 9)]);
  });
  test('shots that contradict one another say so, and nothing is offered', () => {
    const strips = shot(1, 'dose: 10 µJ/cm²', 'exposure: 10 s', 'best exposure: 10 s') + shot(2, 'dose: 10 µJ/cm²', 'exposure: 10 s', 'best exposure: 40 s');
    const [l] = about(learnt(page(strips)), 'sensitivity');
    expect(l!.against).toHaveLength(2);
    expect(l!.line).toBeUndefined();
    const [bounds] = about(learnt(page(shot(1, 'dose: 90 µJ/cm²', 'outcome: "too thin"') + shot(2, 'dose: 10 µJ/cm²', 'outcome: "too dense"'))), 'sensitivity');
    expect([bounds!.low, bounds!.high, bounds!.line, bounds!.against.length]).toEqual([undefined, undefined, undefined, 2]);
  });
  test('boxes that agree are one, boxes that differ have their own', () => {
    const box = (n: number, dose: number, name: number): string => shot(name, `plate: "box ${n}, number ${name}"`, `dose: ${dose} µJ/cm²`, 'outcome: "bright"');
    const [same, ...none] = about(learnt(page(box(3, 40, 1) + box(4, 44, 2))), 'sensitivity');
    expect([none.length, same!.batches]).toEqual([0, ['box 3', 'box 4']]);
    const apart = about(learnt(page(box(3, 40, 1) + box(4, 120, 2))), 'sensitivity');
    expect(apart.map(l => [l.batches, Math.round(l.value! / MICRO), l.line !== undefined])).toEqual([[['box 3'], 40, false], [['box 4'], 120, true]]);
  });
  test('a stock is one, whatever page draws on it', () => {
    const [l, ...more] = about(learnt(page(shot(1, 'dose: 40 µJ/cm²', 'outcome: "bright"')), page(shot(1, 'dose: 44 µJ/cm²', 'outcome: "bright"')).replace('Limpet', 'Cockle')), 'sensitivity');
    expect([more.length, l!.of, l!.evidence.length]).toEqual([0, 'lab.fine', 2]);
  });
  test('without a dose, light and time tell', () => {
    const metered = '  measured reference at P1: 1.5 µW/cm² by meter-1\n  measured object at P1: 0.5 µW/cm² by meter-1\n';
    const [l] = about(learnt(page(shot(1, 'exposure: 20 s', 'outcome: "bright"'), 'fine', `  meter meter-1\n${metered}`)), 'sensitivity');
    // (1.5 + 0.5) µW/cm² · 20 s
    expect(l?.value).toBeCloseTo(40 * MICRO, 6);
  });
  test('shots that tell nothing say why', () => {
    const l = learnt(page(shot(1, 'exposure: 20 s') + shot(2, 'dose: 3 µJ/cm²') + shot(3, 'dose: 3 µJ/cm²', 'outcome: "wood grain"') + shot(4, 'outcome: "bright"')));
    expect(l.lessons.filter(x => x.about === 'sensitivity')).toEqual([]);
    expect(l.idle.map(i => i.why)).toEqual(['neither its dose nor the light at the plate is known', 'it has no outcome', '“wood grain” does not say how the exposure was', 'neither dose nor exposure is written']);
  });
});

describe('shrinkage', () => {
  test('is the share of the wavelength that is gone', () => {
    const [l] = about(learnt(page(shot(1, 'replay wavelength: 569.52 nm ± 1 nm'))), 'shrinkage');
    // 1 − 569.52/632.8 = 0.1
    expect(l!.value).toBeCloseTo(0.1, 9);
    expect(l!.line!.text).toMatch(/^shrinkage: 10% ± \d/);
  });
  test('of a transmission hologram nothing', () => { expect(about(learnt(page(shot(1, 'replay wavelength: 569 nm')).replace('hologram: reflection', 'hologram: transmission')), 'shrinkage')).toEqual([]); });
  test('what no layer could lose is not offered', () => { expect(about(learnt(page(shot(1, 'replay wavelength: 5 µm'))), 'shrinkage')[0]!.line).toBeUndefined(); });
});

describe('coherence length', () => {
  test('between it and the path lies the shape of the line', () => {
    // Half the contrast at one coherence length: √0.7 is left at 0.2573 of it (Lorentzian, 1/0.2573 = 3.887) or at √0.2573 = 0.5073 (Gaussian, 1.971).
    expect(timesPath(0.5).least).toBeCloseTo(1.971, 3);
    expect(timesPath(0.5).most).toBeCloseTo(3.887, 3);
  });
  // From the front every millimetre of depth counts twice: ± 20 mm of depth are ± 40 mm of path.
  test('a plate that is bright all through says at least, a dull back at most', () => {
    const [least] = about(learnt(page(shot(1, 'outcome: "bright"'))), 'coherence length');
    expect(least!.low).toBeCloseTo(1.971 * 0.04, 4);
    expect(least!.value).toBeUndefined();
    const [most] = about(learnt(page(shot(1, 'outcome: "dull at the back"'))), 'coherence length');
    expect(most!.high).toBeCloseTo(3.887 * 0.04, 4);
    const [both] = about(learnt(page(shot(1, 'outcome: "bright"') + shot(2, 'outcome: "dull at the back"'))), 'coherence length');
    expect(both!.value).toBeCloseTo(0.04 * Math.sqrt(1.971 * 3.887), 4);
    expect(both!.line!.was).toBe('300 mm ×÷ 3');
  });
});

describe('the line', () => {
  test('stands in the place of the value, or before the first fact, and all else stays', () => {
    const l = learnt(page(shot(1, 'dose: 52 µJ/cm²', 'outcome: "bright"')), page(shot(1, 'dose: 150 µJ/cm²', 'outcome: "bright"'), 'slow'));
    const text = applyEdits(BOX, editsOf(l).filter(e => e.at.uri === 'box.plate'));
    expect(text).toBe(BOX.replace('40 µJ/cm² ×÷ 2 //', '52 µJ/cm² ×÷ 1.3 //').replace('    resolving power: 5000', '    sensitivity: 150 µJ/cm² ×÷ 1.3\n    resolving power: 5000'));
    // What is written is understood.
    expect(analyse('box.plate', text, library).findings.filter(f => f.severity === 'error')).toEqual([]);
  });
  test('a plate of no inventory has it on its own page', () => {
    const own = page(shot(1, 'dose: 52 µJ/cm²', 'outcome: "bright"')).replace('plate P1 = lab.fine', 'plate P1 {\n    sensitivity: 40 µJ/cm²\n  }');
    const l = about(learnt(own), 'sensitivity')[0]!;
    expect([l.of, l.line!.uri, l.line!.was]).toEqual(['P1 of “Limpet”', 'page0.plate', '40 µJ/cm²']);
  });
  test('a plate with nothing in it has no line to write into', () => {
    const l = about(learnt(page(shot(1, 'dose: 52 µJ/cm²', 'outcome: "bright"')).replace('plate P1 = lab.fine', 'plate P1')), 'sensitivity')[0]!;
    expect([l.line!.text, l.line!.edit]).toEqual(['sensitivity: 52 µJ/cm² ×÷ 1.3', undefined]);
  });
});

test('torn pages throw nothing, and say no number that is none', () => {
  const text = page(shot(1, 'dose: 42 µJ/cm² ± 10%', 'exposure: 20 s', 'best exposure: 14 s', 'outcome: "bright"', 'replay wavelength: 590 nm'));
  for (let cut = text.indexOf('shot'); cut < text.length; cut += 3) {
    const found = learnt(text.slice(0, cut));
    const shown = learnedText(learnedPage(found, u => u)) + learnedMarkdown(learnedPage(found, u => u));
    expect(shown).not.toMatch(/NaN|Infinity|undefined/);
  }
});
