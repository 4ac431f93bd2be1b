/**
 * What readings of lengths correct. Expected values are arithmetic, shown beside each; a half-width a counts as a / √3, independent
 * uncertainties add in squares, a mean weighted by 1/u² has u = 1/√Σ(1/u²) (JCGM 100:2008, 4.3.7, 5.1.2, F.1.2.4).
 */
import { describe, expect, it } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import { plan } from '../../server/results/plan.ts';
import { evaluateHeld, offsetsOf, uncertaintyHeld } from '../../server/results/readings/offsets.ts';
import { variantsOf } from '../../server/results/variants.ts';
import { expectNear, read, serious } from './read.ts';
import { pathsText, withReadings } from './readings.ts';

const ROOT3 = Math.sqrt(3);
const nothingWrong = (r: ReturnType<typeof withReadings>): void => { expect(serious(r.snapshot.findings)).toEqual([]); };

describe('a leg that was read', () => {
  const r = withReadings(['measured S1 -> M1: 752 mm ± 2 mm'], { reference: ['750 mm ± 5 mm', '720 mm'] });

  it('is as long as was read; the plan stays beside it', () => {
    nothingWrong(r);
    expect(r.mm('reference.1.length')).toBeCloseTo(752, 9);
    expect(r.mm('reference.1.length.plan')).toBeCloseTo(750, 9);
    expect(r.mm('reference.1.length.reading')).toBeCloseTo(752, 9);
    expect(r.mm('P1.reference.length')).toBeCloseTo(752 + 720, 9);
    expect(r.mm('P1.reference.length.plan')).toBeCloseTo(750 + 720, 9);
    // object 400 + 770 + 300 = 1470
    expect(r.mm('mismatch')).toBeCloseTo(1470 - 1472, 9);
  });
  it('is as unsure as the reading; the plan’s own ± has fallen out', () => {
    expectNear(r.u('reference.1.length'), 0.002 / ROOT3, 1e-9);
    expectNear(r.u('mismatch'), 0.002 / ROOT3, 1e-9);
    expectNear(r.u('reference.1.length.plan'), 0.005 / ROOT3, 1e-9);
  });
  it('rests on something measured', () => {
    expect([...r.results.graph.gradient(r.cell('mismatch'))].filter(([c, slope]) => slope !== 0 && c.origin === 'measured').map(([c]) => c.name)).toEqual(['reference.1.length.reading']);
  });
  it('is the reading where nothing is planned', () => {
    const bare = withReadings(['measured S1 -> M1: 752 mm ± 2 mm'], { reference: ['', '720 mm'] });
    nothingWrong(bare);
    expect(bare.mm('reference.1.length')).toBeCloseTo(752, 9);
    expect(bare.mm('mismatch')).toBeCloseTo(-2, 9);
  });
  it('may be named from either end, and by its beam', () => {
    expect(withReadings(['measured M1 -> S1: 752 mm']).mm('reference.1.length')).toBeCloseTo(752, 9);
    expect(withReadings(['measured raw: 352 mm']).mm('raw.1.length')).toBeCloseTo(352, 9);
    expect(withReadings(['measured raw at S1: 352 mm']).mm('raw.1.length')).toBeCloseTo(352, 9);
  });
  it('may be a formula', () => {
    expect(withReadings(['measured S1 -> M1: mark + 2 mm'], { more: ['let mark = 750 mm'] }).mm('reference.1.length')).toBeCloseTo(752, 9);
  });
});

describe('a what-if', () => {
  it('keeps the offset: a mirror planned 10 mm further stands 10 mm further than was read', () => {
    const { results, cell } = withReadings(['measured S1 -> M1: 752 mm ± 2 mm']);
    const planned = cell('reference.1.length.plan');
    expect(evaluateHeld(results, cell('reference.1.length'), new Map([[planned, 0.76]])) * 1000).toBeCloseTo(762, 9);
    expect(evaluateHeld(results, cell('mismatch'), new Map([[planned, 0.76]])) * 1000).toBeCloseTo(1470 - 762 - 720, 9);
    // without holding it, the reading alone would count
    expect(results.graph.evaluate(cell('reference.1.length'), new Map([[planned, 0.76]])) * 1000).toBeCloseTo(752, 9);
  });
  it('is as unsure as the reading, and as what it sets anew was and is', () => {
    const { results, cell } = withReadings(['measured S1 -> M1: 752 mm ± 2 mm'], { reference: ['750 mm ± 5 mm', '720 mm ± 3 mm'], more: ['variant "longer" {', '  S1 -> M1: 760 mm ± 5 mm', '}'] });
    const u = (name: string, ...over: [string, number][]): number => uncertaintyHeld(results, cell(name), new Map(over.map(([n, v]) => [cell(n), v])));
    const planned = 'reference.1.length.plan';
    // As the text stands the plan falls out.
    expectNear(u('reference.1.length'), 0.002 / ROOT3, 1e-9);
    expectNear(u('P1.reference.length'), Math.hypot(0.002, 0.003) / ROOT3, 1e-9);
    expectNear(u('reference.1.length', [planned, 0.76]), Math.hypot(0.002, 0.005, 0.005) / ROOT3, 1e-9);
    expectNear(u('mismatch', [planned, 0.76]), Math.hypot(0.002, 0.005, 0.005, 0.003) / ROOT3, 1e-9);
    expectNear(u('mismatch', ['reference.2.length', 0.73]), Math.hypot(0.002, 0.003) / ROOT3, 1e-9);
    // What is no input is exact where it is held.
    expectNear(u('mismatch', ['P1.reference.length', 1.5]), 0, 1e-12);
    // A variant that says the same is the other way to it.
    const { graph } = variantsOf(results)[0]!.results;
    expectNear(u('mismatch', [planned, 0.76]), graph.uncertainty(graph.find('P1.object.mismatch')!), 1e-9);
  });
  it('in a changed copy of the setup as well', () => {
    const readings = ['measured S1 -> M1: 752 mm ± 2 mm', 'measured object - reference: -5 mm ± 1 mm'];
    const base = withReadings(readings);
    const copy = analyse('file:///saltmarsh/setup.plate', pathsText(readings, { reference: ['760 mm', '720 mm'] })).model.setups[0]!;
    const { graph } = plan(copy, { offsets: offsetsOf(base.results) });
    const mm = (name: string): number => graph.value(graph.find(name)!)! * 1000;
    expect(mm('reference.1.length')).toBeCloseTo(762, 9);
    // read −5, and the reference is planned 10 mm longer
    expect(mm('P1.object.mismatch')).toBeCloseTo(-15, 9);
  });
  it('in a variant as well', () => {
    const { snapshot, results } = withReadings(['measured S1 -> M1: 752 mm ± 2 mm'], { more: ['variant "longer" {', '  S1 -> M1: 760 mm', '}'] });
    expect(serious(snapshot.findings)).toEqual([]);
    const { graph } = variantsOf(results)[0]!.results;
    // planned 10 mm longer than before, of which 752 mm were read
    expect(graph.value(graph.find('reference.1.length')!)! * 1000).toBeCloseTo(762, 9);
  });
  it('of places: a mirror that stands 30 mm further has legs that are longer than was read', () => {
    const text = `setup "Whelk shell" {
  laser red at (-300, 0) mm
  splitter S1 at (0, 0) mm
  mirror M1 at (800, 0) mm
  beam stop B1 at (800, 600) mm
  beam raw from red
    -> S1
  beam spare from S1 through
    -> M1
    -> B1
  measured S1 -> M1: 805 mm
  variant "further" {
    M1 at (830, 0) mm
  }
}
`;
    const { results } = read(text);
    const { graph } = variantsOf(results)[0]!.results;
    expect(graph.value(graph.find('spare.1.length')!)! * 1000).toBeCloseTo(835, 9);
  });
});

describe('an arm that was read', () => {
  it('counts before the sum of its legs', () => {
    const r = withReadings(['measured reference: 1476 mm ± 3 mm', 'measured S1 -> M1: 752 mm ± 1 mm']);
    expect(r.mm('P1.reference.length')).toBeCloseTo(1476, 9);
    expectNear(r.u('P1.reference.length'), 0.003 / ROOT3, 1e-9);
    // the leg is what was read of it
    expect(r.mm('reference.1.length')).toBeCloseTo(752, 9);
  });
  it('gives way to its legs where each of them was read and together they are surer', () => {
    // 752 + 719 = 1471, u = √(1 + 1)/√3 = 0.82 mm against 3/√3 = 1.73 mm
    const r = withReadings(['measured reference: 1476 mm ± 3 mm', 'measured S1 -> M1: 752 mm ± 1 mm', 'measured M1 -> P1: 719 mm ± 1 mm']);
    expect(r.mm('P1.reference.length')).toBeCloseTo(1471, 9);
    expectNear(r.u('P1.reference.length'), 0.001 * Math.SQRT2 / ROOT3, 1e-9);
    expect(r.cell('P1.reference.length').rule!.formula).toContain('surer');
  });
  it('stays where its legs are less sure together, or do not say how sure they are', () => {
    const legs = (give: string): readonly string[] => ['measured reference: 1476 mm ± 3 mm', `measured S1 -> M1: 752 mm${give}`, `measured M1 -> P1: 719 mm${give}`];
    expect(withReadings(legs(' ± 3 mm')).mm('P1.reference.length')).toBeCloseTo(1476, 9);
    expect(withReadings(legs('')).mm('P1.reference.length')).toBeCloseTo(1476, 9);
  });
  it('is the same whether it is named by its role, its beam or its legs', () => {
    for (const words of ['reference', 'reference at P1', 'S1 -> M1 -> P1', 'P1 -> M1 -> S1']) expect(withReadings([`measured ${words}: 1476 mm`]).mm('P1.reference.length'), words).toBeCloseTo(1476, 9);
  });
  it('needs no leg', () => {
    const r = withReadings(['measured reference: 1476 mm', 'measured object: 1474 mm'], { reference: ['', ''], object: ['', '', ''] });
    nothingWrong(r);
    expect(r.mm('mismatch')).toBeCloseTo(-2, 9);
  });
  it('corrects from where the arms part: the beam before the splitter is none of it', () => {
    const r = withReadings(['measured reference: 1476 mm', 'measured red -> S1: 380 mm']);
    expect(r.mm('P1.reference.length')).toBeCloseTo(1476, 9);
    expect(r.mm('mismatch')).toBeCloseTo(1470 - 1476, 9);
  });
});

describe('a run of some legs', () => {
  it('before the splitter is computed as well', () => {
    const text = pathsText(['measured red -> M0 -> S1: 352 mm']).replace('  mirror M1\n', '  mirror M0\n  mirror M1\n').replace('    -> S1: 350 mm ± 20 mm', '    -> M0: 200 mm\n    -> S1: 150 mm');
    const { results } = read(text);
    const fate = results.readings.fate(results.setup.readings[0]!);
    expect(fate?.kind === 'counts' && results.graph.value(fate.subject.plan!)! * 1000).toBeCloseTo(350, 9);
  });
  it('corrects the arms that hold all of it', () => {
    const r = withReadings(['measured M2 -> whelk -> P1: 1073 mm ± 2 mm']);
    nothingWrong(r);
    expect(r.mm('P1.object.length')).toBeCloseTo(400 + 1073, 9);
    expect(r.mm('mismatch')).toBeCloseTo(3, 9);
    expectNear(r.u('mismatch'), 0.002 / ROOT3, 1e-9);
  });
});

describe('a difference that was read', () => {
  it('is the mismatch; the paths stay as they are', () => {
    const r = withReadings(['measured object - reference: -3 mm ± 3 mm'], { reference: ['750 mm ± 5 mm', '720 mm ± 5 mm'] });
    expect(r.mm('mismatch')).toBeCloseTo(-3, 9);
    expectNear(r.u('mismatch'), 0.003 / ROOT3, 1e-9);
    expect(r.mm('P1.reference.length')).toBeCloseTo(1470, 9);
    expect(r.mm('P1.object.difference.plan')).toBeCloseTo(0, 9);
  });
  it('may be taken the other way round', () => expect(withReadings(['measured reference - object: 3 mm']).mm('mismatch')).toBeCloseTo(-3, 9));
  it('is of strings: glass still adds to the path that counts for coherence', () => {
    // crown glass, group index 1.5368 at 633 nm (its published dispersion formula; tests/optics/glass holds it): 10 mm add 5.37 mm to the path through it
    const text = pathsText(['measured object - reference: -3 mm']).replace('splitter S1', 'splitter S1 {\n    thickness: 10 mm\n  }').replace('coherence length: 5 m', 'wavelength: 632.8 nm\n    coherence length: 5 m');
    const { results } = analyse('file:///saltmarsh/setup.plate', text);
    const { graph } = results[0]!;
    expectNear(graph.value(graph.find('P1.object.mismatch')!)! * 1000, -3 - 5.37, 0.01);
    expect(graph.value(graph.find('P1.object.difference')!)! * 1000).toBeCloseTo(-3, 9);
  });
  it('counts before two paths by the same string as long as it is surer', () => {
    const both = ['measured reference: 1476 mm ± 1 mm', 'measured object: 1470 mm ± 1 mm'];
    // u of two paths: √2 · 1/√3 = 0.816 mm
    expect(withReadings([...both, 'measured object - reference: -3 mm ± 1 mm']).mm('mismatch')).toBeCloseTo(-3, 9);
    const r = withReadings([...both, 'measured object - reference: -3 mm ± 2 mm']);
    expect(r.mm('mismatch')).toBeCloseTo(-6, 9);
    expectNear(r.u('mismatch'), 0.001 * Math.SQRT2 / ROOT3, 1e-9);
    expect(r.cell('mismatch').rule!.formula).toContain('surer');
  });
});

describe('several readings of one thing', () => {
  it('the newest day counts, one without a day before none', () => {
    const three = ['measured S1 -> M1: 760 mm on 2026-02-12', 'measured S1 -> M1: 752 mm on 2026-02-18', 'measured S1 -> M1: 770 mm'];
    expect(withReadings(three).mm('reference.1.length')).toBeCloseTo(752, 9);
  });
  it('of one day: the mean, weighted by 1/u²', () => {
    // u = 1/√3 and 2/√3: weights 4 and 1; (4 · 750 + 755)/5 = 751; u = 1/√(3 + 3/4) mm = 0.5164 mm
    const r = withReadings(['measured S1 -> M1: 750 mm ± 1 mm on 2026-02-18', 'measured S1 -> M1: 755 mm ± 2 mm on 2026-02-18']);
    expect(r.mm('reference.1.length')).toBeCloseTo(751, 9);
    expectNear(r.u('reference.1.length') * 1000, 1 / Math.sqrt(3.75), 1e-6);
  });
  it('that do not say how sure they are: the plain mean', () => expect(withReadings(['measured S1 -> M1: 750 mm', 'measured S1 -> M1: 754 mm']).mm('reference.1.length')).toBeCloseTo(752, 9));
  it('one that does not say it weighs as the least sure of the others', () => {
    expect(withReadings(['measured S1 -> M1: 750 mm ± 1 mm', 'measured S1 -> M1: 754 mm']).mm('reference.1.length')).toBeCloseTo(752, 9);
  });
});

describe('a string that gives', () => {
  const thread = ['string thread {', '  stretch: 0.3% ± 0.2 points', '}'];

  it('is shared by its readings: of the difference of two paths hardly anything is left', () => {
    const r = withReadings(['measured reference: 1476 mm ± 1 mm by thread', 'measured object: 1470 mm ± 1 mm by thread'], { more: thread });
    nothingWrong(r);
    // 1476 · 1.003 = 1480.428; u² = (1.003 · 1/√3)² + (1476 · 0.002/√3)² = 0.3353 + 2.9048
    expect(r.mm('P1.reference.length')).toBeCloseTo(1480.428, 6);
    expectNear(r.u('P1.reference.length') * 1000, Math.sqrt((1.003 / ROOT3) ** 2 + (1476 * 0.002 / ROOT3) ** 2), 1e-6);
    // −6 · 1.003 = −6.018; u² = 2 · (1.003/√3)² + (6 · 0.002/√3)² = 0.6707 + 0.00005: two readings without a shared string would have √(2 · 3.24) = 2.55 mm
    expect(r.mm('mismatch')).toBeCloseTo(-6.018, 6);
    expectNear(r.u('mismatch') * 1000, Math.sqrt(2 * (1.003 / ROOT3) ** 2 + (6 * 0.002 / ROOT3) ** 2), 1e-6);
  });
  it('is not shared by two strings', () => {
    const r = withReadings(['measured reference: 1476 mm ± 1 mm by thread', 'measured object: 1470 mm ± 1 mm by twine'], { more: [...thread, 'string twine {', '  stretch: 0.3% ± 0.2 points', '}'] });
    expectNear(r.u('mismatch') * 1000, Math.sqrt(2 * (1.003 / ROOT3) ** 2 + (1476 * 0.002 / ROOT3) ** 2 + (1470 * 0.002 / ROOT3) ** 2), 1e-6);
  });
  it('stays shared in a mean of several readings', () => {
    const r = withReadings(['measured reference: 1476 mm ± 1 mm by thread', 'measured reference: 1476 mm ± 1 mm by thread'], { more: thread });
    expectNear(r.u('P1.reference.length') * 1000, Math.sqrt((1.003 / ROOT3) ** 2 / 2 + (1476 * 0.002 / ROOT3) ** 2), 1e-6);
  });
});

describe('a tape of an accuracy class', () => {
  const tape = ['string tape-2 {', '  class: II', '}'];
  it('may be off by a + bL in each reading, and in a difference by both', () => {
    // class II, up to 2 m: 0.3 + 0.2 · 2 = 0.7 mm (2014/32/EU, annex X, chapter I, table 1)
    const r = withReadings(['measured reference: 1476 mm ± 1 mm by tape-2', 'measured object: 1470 mm ± 1 mm by tape-2'], { more: tape });
    nothingWrong(r);
    expect(r.mm('P1.reference.length')).toBeCloseTo(1476, 9);
    expectNear(r.u('P1.reference.length') * 1000, Math.sqrt(1 + 0.7 ** 2) / ROOT3, 1e-6);
    expectNear(r.u('mismatch') * 1000, Math.sqrt(2 * (1 + 0.7 ** 2)) / ROOT3, 1e-6);
  });
});

describe('readings that cannot be placed', () => {
  const errors = (...readings: string[]): string[] => withReadings(readings).snapshot.findings.filter(f => f.severity === 'error').map(f => `${f.code} ${f.subject}`);
  it('say so, once', () => {
    expect(errors('measured S1 -> P1: 1470 mm')).toEqual(['reading-unclear S1 -> P1']);
    expect(errors('measured M1 -> whelk: 300 mm')).toEqual(['reading-unclear M1 -> whelk']);
  });
  it('between two object arms correct nothing, and are no slip', () => {
    const text = pathsText(['measured object - fill: 3 mm']).replace('  plate P1\n', '  plate P1\n  splitter S2\n').replace('-> M2: 400 mm', '-> S2: 200 mm\n  beam fill from S2 reflected\n    -> whelk: 970 mm\n    -> P1: 300 mm\n  beam object from S2 through\n    -> M2: 200 mm').replace('beam object from S1', 'beam before from S1');
    const { findings, results } = analyse('file:///saltmarsh/setup.plate', text);
    expect(serious(findings)).toEqual([]);
    expect(results[0]!.readings.fate(results[0]!.setup.readings[0]!)?.kind).toBe('useless');
  });
});
