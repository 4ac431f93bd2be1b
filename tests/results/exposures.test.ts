/** Plates that get several exposures: how long each lasts and what it leaves, by hand; and what is wrong with one of them. */
import { describe, expect, it } from 'vitest';
import { variantTable } from '../../server/features/report/variants.ts';
import { variantsOf } from '../../server/results/variants.ts';
import { read, type Read } from './read.ts';

const page = (more: string, plate = ''): Read => read(`setup "Glazed tile" {
  hologram: reflection
  laser light {
    wavelength: 632.8 nm
    coherence length: 5 m
  }
  splitter S1
  spreader R1 {
    focal length: 5 mm
  }
  object tile {
    size: 40 x 40 x 10 mm
  }
  plate P1 {
    size: 63 x 63 mm
    sensitivity: 100 µJ/cm²
    reference angle: 45°${plate}
  }
  meter needle
  beam raw from light
    -> S1: 300 mm
  beam reference from S1 through
    -> R1: 300 mm
    -> P1: 1000 mm
  beam object from S1 reflected
    -> tile: 1240 mm
    -> P1: 60 mm
  measured reference at P1: 16 µW/cm²
  measured object at P1: 4 µW/cm²
${more}}
`);
const GREEN = '  variant "green" {\n    light.wavelength: 532.1 nm\n    R1 -> P1: 1000 mm\n    P1.sensitivity: 50 µJ/cm²\n  }\n';
const TWO = `${GREEN}  exposure first {\n    share: 60%\n  }\n  exposure second {\n    variant: "green"\n  }\n`;
const codes = (r: Read): string[] => r.snapshot.findings.map(f => f.code);

describe('times', () => {
  it('are shares of what the plate needs as the table then stands: 100 µJ/cm² by 20 µW/cm² are 5 s, in green half of it', () => {
    const r = page(TWO);
    // 60 % of 5 s; 40 % of 2.5 s
    expect([r.value('first.exposure time'), r.value('second.exposure time')]).toEqual([expect.closeTo(3, 9), expect.closeTo(1, 9)]);
    expect(r.value('P1.time of all exposures')).toBeCloseTo(4, 9);
    expect(r.value('P1.shares')).toBeCloseTo(1, 12);
  });
  it('are expected of the page as it is written: beside its variants only what these have as well', () => {
    const r = page(`${TWO}  expect first.exposure time < 4 s\n  expect P1.time of all exposures < 2 s\n  expect beam ratio > 2:1\n`);
    const base = r.snapshot.results[0]!;
    // 3 s, 4 s, and 16 to 4
    expect(base.goals.map(g => g.outcome)).toEqual(['met', 'not met', 'met']);
    expect(variantTable(base)!.rows.filter(row => row.label.startsWith('expect'))).toEqual([{ label: 'expect beam ratio > 2:1', cells: ['met', expect.not.stringMatching('cannot be told')] }]);
    expect(variantsOf(base)[0]!.difference.goals.map(g => g.text).filter(t => t.includes('expos'))).toEqual([]);
  });
  it('without shares are equal parts, and what is left is parted among those without one', () => {
    const three = `${GREEN}  exposure first\n  exposure second {\n    variant: "green"\n  }\n  exposure third\n`;
    expect(page(three).value('third.share')).toBeCloseTo(1 / 3, 12);
    // 1 − 0.4 = 0.6, two of 0.3
    expect(page(three.replace('exposure third', 'exposure third {\n    share: 40%\n  }')).value('second.share')).toBeCloseTo(0.3, 12);
  });
  it('without a plate are those of all plates that there are', () => {
    const r = page(`  plate P2\n${TWO}`);
    expect(r.results.exposures.plates.map(p => p.plate.id)).toEqual(['P1', 'P2']);
    expect(r.value('P1.first.exposure time')).toBeCloseTo(3, 9);
  });
  it('of a stock that fails in long exposures go by the share to 1/p', () => {
    // The whole exposure is 5^(1/0.8) s where it is longer than a second; half of it is that times 0.5^(1/0.8)
    const r = page(TWO.replace('60%', '50%'), '\n    reciprocity: 0.8');
    expect(r.value('first.exposure time') / r.value('P1.exposure time')).toBeCloseTo(0.5 ** 1.25, 9);
  });
});

describe('brightness', () => {
  it('of each image is the square of its share beside one that has the plate for itself', () => {
    const r = page(TWO);
    expect([r.value('first.brightness'), r.value('second.brightness')]).toEqual([expect.closeTo(0.36, 12), expect.closeTo(0.16, 12)]);
    // the ladder of the page as it is written, and that of the variant
    const loss = (x: typeof r.results): number => x.graph.value(x.ask('P1.object.sharing loss')!)!;
    expect(loss(r.results)).toBeCloseTo(0.64, 12);
    expect(loss(variantsOf(r.results)[0]!.results)).toBeCloseTo(0.84, 12);
  });
  it('is not shared where a plate gets one exposure', () => {
    expect(page('  exposure only\n').results.ask('P1.object.sharing loss')).toBeUndefined();
    expect(page('').results.exposures.plates).toEqual([]);
  });
});

describe('what is found', () => {
  it('shares that come to more or less than the plate needs', () => {
    const of = (first: string, second: string): Read => page(`${GREEN}  exposure first {\n    share: ${first}\n  }\n  exposure second {\n    variant: "green"\n    share: ${second}\n  }\n`);
    expect(codes(of('70%', '60%'))).toContain('exposure-shares-off');
    expect(codes(of('30%', '20%'))).toContain('exposure-shares-off');
    for (const [a, b] of [['60%', '40%'], ['55%', '50%'], ['60% ± 10 points', '55% ± 10 points']]) expect(codes(of(a!, b!)), `${a!} ${b!}`).not.toContain('exposure-shares-off');
  });
  it('a variant, or a plate, that is not there', () => {
    const why = (more: string): string[] => page(more).snapshot.findings.filter(f => f.code === 'exposure-unclear').map(f => f.message);
    expect(why('  exposure first {\n    variant: "gren"\n  }\n')[0]).toContain('write `variant "gren" { … }`');
    expect(why(`${GREEN}  exposure first {\n    variant: "gren"\n  }\n`)[0]).toContain('there is “green”');
    expect(why('  exposure first {\n    plate: P9\n  }\n')[0] ?? '').toContain('P9');
    expect(why('  exposure first {\n    variant: ""\n  }\n')).toEqual([]);
    expect(why('  exposure first {\n    plate: P1\n  }\n')).toEqual([]);
  });
  it('what is wrong in a variant that the plate is exposed in, at the variant, once', () => {
    // In the variant the arms differ by 400 mm of 5 m: nothing. By 4 m: dark.
    const far = GREEN.replace('R1 -> P1: 1000 mm', 'R1 -> P1: 6000 mm');
    const with4m = (exposed: string): string[] => page(far.concat(exposed)).snapshot.findings.filter(f => f.code === 'arms-mismatched').map(f => f.variant ?? 'as written');
    expect(with4m('')).toEqual([]);
    expect(with4m('  exposure first\n  exposure second {\n    variant: "green"\n  }\n')).toEqual(['green']);
  });
  it('images that do not lie on each other, where they are in different colours', () => {
    const spot = '  lamp spot {\n    distance: 1000 mm\n    angle: 45°\n    size: 1 mm\n  }\n  viewer visitor {\n    distance: 600 mm\n  }\n';
    expect(codes(page(TWO + spot))).not.toContain('colours-apart');
    const nearer = page(TWO.replace('R1 -> P1: 1000 mm', 'R1 -> P1: 500 mm') + spot);
    expect(codes(nearer)).toContain('colours-apart');
    // as two lasers at once from 995 and 495 mm: see several-lasers.test.ts
    const [register] = nearer.results.registers;
    expect(nearer.results.graph.value(register!.apart!)! * 1000).toBeCloseTo(1.1743, 2);
  });
  it('nothing that is typed throws', () => {
    for (const line of ['exposure', 'exposure 20 s', 'exposure first', 'exposure first {', 'exposure first second', 'exposure {\n    share: -3\n  }', 'exposure first {\n    share: 0%\n  }\n  exposure second {\n    share: 0%\n  }', 'exposure first {\n    laser: nobody\n  }', 'exposure light']) expect(() => page(`  ${line}\n`), line).not.toThrow();
    // a fact without its colon stays what it was
    expect(codes(page('  exposure 20 s\n')).join(' ')).not.toContain('name-missing');
  });
});
