/** What a change does, by arithmetic and by the words of the page. */
import { describe, expect, it } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import { reviewPage, type SetupPage } from '../../server/features/review/page.ts';
import { reviewHtml } from '../../server/features/review/html.ts';
import { reviewMarkdown } from '../../server/features/review/markdown.ts';
import { reviewText } from '../../server/features/review/text.ts';
import type { Change } from '../../server/review/changes.ts';
import { isSame, reviewOf, type Review } from '../../server/review/review.ts';

/** Two arms on a table: the reference by M1, the object beam by M2 and the limpet. */
const PAGE = `setup "Limpet" {
  table: 1200 x 900 mm
  laser red at (1000, 700) mm heading 180° {
    coherence length: 5 m
    power: 10 mW
  }
  splitter S1 at (700, 700) mm {
    reflects: 90%
  }
  mirror M1 at (300, 700) mm
  mirror M2 at (700, 100) mm
  object limpet at (100, 100) mm {
    shape: sphere
    diameter: 40 mm
  }
  plate P1 at (100, 400) mm facing limpet {
    size: 100 x 80 mm
    sensitivity: 40 µJ/cm²
  }
  beam raw from red
    -> S1
  beam reference from S1 through
    -> M1
    -> P1
  beam object from S1 reflected
    -> M2
    -> limpet
    -> P1
  measured reference at P1: 1.6 µW/cm²
  measured object at P1: 0.4 µW/cm²
  expect mismatch < 800 mm
}
`;
const between = (a: string | undefined, b: string | undefined): Review => {
  const read = (text: string | undefined) => (text === undefined ? undefined : analyse('limpet.plate', text));
  return reviewOf(read(a), read(b));
};
const to = (from: string, by: string, page = PAGE): string => {
  if (page.split(from).length !== 2) throw new Error(`“${from}” does not stand there once`);
  return page.replace(from, () => by);
};
const page = (a: string, b: string): SetupPage => reviewPage(between(a, b)).setups[0]!;
const rows = (r: Review): string[] => [...r.setups.flatMap(s => s.changes), ...r.inventories.flatMap(i => i.changes), ...r.rest.changes].map((c: Change) => `${c.kind} ${c.what} ${c.name}: ${c.before?.text ?? ''} → ${c.after?.text ?? ''}`);

describe('a mirror that is moved', () => {
  const after = to('M2 at (700, 100) mm', 'M2 at (70, 10) cm');
  const further = to('M2 at (700, 100) mm', 'M2 at (700, 142) mm');
  it('is no change where only its unit is', () => expect(isSame(between(PAGE, after))).toBe(true));
  it('changes its arm by what the places say', () => {
    const s = page(PAGE, further);
    expect(s.changes.map(c => [c.kind, c.words, c.before, c.after, c.by])).toEqual([['moved', 'M2 was moved', 'at (700, 100) mm', 'at (700, 142) mm', '42 mm further away']]);
    // S1–M2: 600 → 558 mm; M2–limpet: 600 → √(600² + 42²) = 601.468 mm; together −40.53 mm
    expect(s.results.find(r => r.name === 'P1.object.length')).toMatchObject({ before: '1500 mm', after: '1459.5 mm', by: '−41 mm', sure: true });
    expect(s.headline).toMatch(/^object beam −41 mm/);
    expect(s.results.some(r => r.name === 'P1.reference.length')).toBe(false);
    expect(s.changes[0]!.at).toMatchObject({ side: 'after', line: 10 });
  });
  it('takes along what stands by it', () => {
    const placed = to('object limpet', 'beam stop B1 beyond M2 by 100 mm\n  object limpet');
    // Light comes to M2 straight down in the plan: B1 stands 100 mm on, and follows by the same 42 mm.
    expect(page(placed, to('M2 at (700, 100) mm', 'M2 at (700, 142) mm', placed)).along).toEqual(['B1 follows, 42 mm further away']);
  });
  it('and renamed is both', () => expect(rows(between(PAGE, further.replaceAll('M2', 'kelp')))).toEqual(['renamed thing kelp: M2 → kelp', 'moved place kelp: at (700, 100) mm → at (700, 142) mm']));
});

describe('rows', () => {
  it.each<[string, string, string, readonly string[]]>([
    ['a thing that is new', 'object limpet', 'black card C1 at (400, 400) mm\n  object limpet', ['added thing black card C1:  → at (400, 400) mm']],
    ['a thing that is gone takes its facts with it', '  laser red at (1000, 700) mm heading 180° {\n    coherence length: 5 m\n    power: 10 mW\n  }\n', '', ['removed thing laser red: at (1000, 700) mm heading 180° → ']],
    ['a thing that is turned', 'heading 180°', 'heading 175°', ['turned direction red: heading 180° → heading 175°']],
    ['a value', 'power: 10 mW', 'power: 12 mW', ['set fact red.power: 10 mW → 12 mW']],
    ['a value in another unit is none', 'power: 10 mW', 'power: 0.01 W', []],
    ['how sure it is', 'power: 10 mW', 'power: 10 mW ± 5%', ['set fact red.power: 10 mW → 10 mW ± 5%']],
    ['the same length in another unit is none', 'coherence length: 5 m', 'coherence length: 500 cm', []],
    ['a value that is new', '    power: 10 mW\n', '    power: 10 mW\n    linewidth: 1 GHz\n', ['added fact red.linewidth:  → 1 GHz']],
    ['a value that cannot be read is not hidden', 'power: 10 mW', 'power: 10 mW mW', ['set fact red.power: 10 mW → 10 mW mW']],
    ['a beam that takes another way', '    -> M2\n', '', ['led path object: S1 reflected → M2 → limpet → P1 → S1 reflected → limpet → P1']],
    ['a leg that was measured', '    -> M2\n', '    -> M2: 610 mm ± 2 mm\n', ['added leg object: S1 → M2:  → 610 mm ± 2 mm']],
    ['what is expected', 'expect mismatch < 800 mm', 'expect mismatch < 0.7 m', ['set expectation mismatch: < 800 mm → < 0.7 m']],
    ['a reading', 'expect mismatch', 'measured S1 -> M1: 402 mm ± 2 mm by string\n  expect mismatch', ['added reading S1 -> M1:  → 402 mm ± 2 mm by string']],
    ['another kind of thing', 'mirror M2', 'beam stop M2', ['set thing beam stop M2: mirror → beam stop']],
    ['the name of the setup', 'setup "Limpet"', 'setup "Limpet, tilted"', ['renamed setup Limpet, tilted: Limpet → Limpet, tilted']],
    ['a setup', 'setup "Limpet"', 'setup "Cockle" {\n}\nsetup "Limpet"', ['added setup Cockle:  → Cockle']],
    ['a use', 'setup "Limpet"', 'use "lab.plate"\nsetup "Limpet"', ['added use lab.plate:  → use "lab.plate"']],
    ['a variant', 'expect mismatch', 'variant "nearer" {\n    P1 at (100, 350) mm\n  }\n  expect mismatch', ['added variant variant “nearer”:  → ']],
    ['a shot', 'expect mismatch', 'shot 3 on 2026-02-11 {\n    outcome: "bright"\n  }\n  expect mismatch', ['added shot shot 3:  → ']],
    ['a line that cannot be understood', 'expect mismatch', 'mirorr M9\n  expect mismatch', ['added line :  → mirorr M9']],
  ])('%s', (_, from, by, expected) => {
    expect(rows(between(PAGE, to(from, by)))).toEqual(expected);
    const back = expected.map(e => e.replace(/^(added|removed)/, x => (x === 'added' ? 'removed' : 'added')));
    expect(rows(between(to(from, by), PAGE)).map(r => r.split(' ')[0])).toEqual(back.map(r => r.split(' ')[0]));
  });
  it('of a variant, line by line', () => {
    const varied = to('expect mismatch', 'variant "nearer" {\n    P1 at (100, 350) mm\n    S1.reflects: 80%\n  }\n  expect mismatch');
    expect(rows(between(varied, to('(100, 350)', '(100, 340)', varied)))).toEqual(['set line variant “nearer”: P1 at (100, 350) mm → P1 at (100, 340) mm']);
    expect(rows(between(varied, to('variant "nearer"', 'variant "closer"', varied)))).toEqual(['renamed variant closer: nearer → closer']);
  });
});

describe('an inventory', () => {
  const LAB = 'inventory lab {\n  plate fine {\n    sensitivity: 40 µJ/cm²\n  }\n}\n';
  const using = to('plate P1 at', 'plate P1 = lab.fine at', PAGE.replace('    sensitivity: 40 µJ/cm²\n', ''));
  const read = (lab: string) => analyse('limpet.plate', `use "lab.plate"\n${using}`, { resolve: path => path, text: () => lab });
  it('shows in every setup that draws on it', () => {
    const r = reviewOf(read(LAB), read(LAB.replace('40', '80')));
    expect(rows(r)).toEqual(['set fact P1.sensitivity: 40 µJ/cm² → 80 µJ/cm²']);
    expect(r.setups[0]!.changes[0]!.after!.at.uri).toBe('lab.plate');
    // What the plate needs is twice as much.
    const exposure = r.setups[0]!.results.find(x => x.name === 'P1.exposure time')!;
    expect(r.setups[0]!.after!.graph.value(exposure.after!)! / r.setups[0]!.before!.graph.value(exposure.before!)!).toBeCloseTo(2, 9);
  });
  it('by itself is a page too', () => expect(rows(reviewOf(analyse('lab.plate', LAB), analyse('lab.plate', LAB.replace('fine', 'finer'))))).toEqual(['renamed thing finer: fine → finer']));
  it('that cannot be read any more is one finding, not a row for each of its values', () => {
    const r = reviewOf(read(LAB), analyse('limpet.plate', `use "lab.plate"\n${using}`));
    expect(rows(r)).toEqual([]);
    expect(r.rest.findings.added.map(f => f.code)).toEqual(['import-unreadable']);
  });
});

describe('whether it matters', () => {
  const long = (by: string, give = ''): string => to('    -> M2\n', `    -> M2: ${by} mm${give}\n`);
  const sure = (a: string, b: string, name = 'P1.object.mismatch'): boolean | undefined => between(a, b).setups[0]!.results.find(r => r.name === name)?.sure;
  it('is asked of both uncertainties', () => {
    // u = 3/√3 = 1.73 mm each, of the difference √2 · 1.73 = 2.45 mm: from 4.9 mm it is sure. 4 mm is not, 6 mm is.
    expect(sure(long('600', ' ± 3 mm'), long('604', ' ± 3 mm'))).toBe(false);
    expect(sure(long('600', ' ± 3 mm'), long('606', ' ± 3 mm'))).toBe(true);
  });
  it('what both rest on cancels: a leg that nobody has measured anew has the same error in both', () => {
    const rough = to('    -> P1\n  beam object', '    -> P1: 361 mm ± 30 mm\n  beam object', long('600', ' ± 0.1 mm'));
    expect(sure(rough, rough.replace('600 mm ± 0.1 mm', '602 mm ± 0.1 mm'))).toBe(true);
  });
  it('also where the result is known to a factor only', () => {
    const rough = to('40 µJ/cm²', '40 µJ/cm² ×÷ 3');
    // Twice the light halves the exposure, whatever the plate needs.
    expect(sure(rough, to('1.6 µW', '3.6 µW', rough), 'P1.exposure time')).toBe(true);
    // Another plate, whose need is as unsure, may need as much.
    expect(sure(rough, to('40 µJ/cm² ×÷ 3', '44 µJ/cm² ×÷ 3', rough), 'P1.exposure time')).toBe(false);
  });
});

describe('findings', () => {
  it('are cured, new, or still there, wherever they stand', () => {
    const dark = to('coherence length: 5 m', 'coherence length: 20 mm', `// above\n${PAGE}`);
    const { findings } = between(PAGE, dark).setups[0]!;
    expect([findings.cured.map(f => f.code), findings.added.map(f => f.code)]).toEqual([[], ['arms-mismatched']]);
    expect(between(dark, PAGE).setups[0]!.findings.cured.map(f => f.code)).toEqual(['arms-mismatched']);
    expect(between(PAGE, `// above\n${PAGE}`).setups[0]!.findings.still.map(f => f.code)).toEqual(analyse('limpet.plate', PAGE).findings.filter(f => f.setup === 'Limpet').map(f => f.code));
  });
  it('that are accepted now are said to be', () => {
    const dark = to('coherence length: 5 m', 'coherence length: 20 mm');
    const { findings } = between(dark, to('expect mismatch', 'accept arms-mismatched "a trial"\n  expect mismatch', dark)).setups[0]!;
    expect([findings.cured.length, findings.added.length, findings.accepted.map(f => f.code)]).toEqual([0, 0, ['arms-mismatched']]);
  });
  it('an expectation that is not met any more is told, also where its limit was changed', () => {
    // 739.4 mm: reference 400 + √(200² + 300²) = 760.6 mm, object 1500 mm
    expect(page(PAGE, to('< 800 mm', '< 700 mm'))).toMatchObject({ goals: [{ text: 'expect mismatch < 800 mm → mismatch < 700 mm', before: 'met', after: 'not met' }], headline: expect.stringMatching(/^expect mismatch .* is not met/) as string });
  });
});

describe('a broken side', () => {
  it('hides nothing: what can be compared is, and the errors of both are told', () => {
    const broken = to('mirror M2 at (700, 100) mm', 'mirror M2 at (700, 100 mm', to('power: 10 mW', 'power: 12 mW'));
    const r = between(PAGE, broken);
    expect(rows(r)).toContain('set fact red.power: 10 mW → 12 mW');
    expect(rows(r).some(x => x.includes('M2'))).toBe(true);
    expect([...r.setups.flatMap(s => s.findings.added), ...r.rest.findings.added].some(f => f.severity === 'error')).toBe(true);
    expect(() => reviewText([{ file: 'a.plate', page: reviewPage(between(broken, '}{ §§ "')) }])).not.toThrow();
  });
  it('a page that is new or gone is told as a whole', () => {
    expect(rows(between(undefined, PAGE))).toEqual(['added setup Limpet:  → Limpet']);
    expect(rows(between(PAGE, undefined))).toEqual(['removed setup Limpet: Limpet → ']);
    expect(reviewPage(between(undefined, PAGE)).setups[0]!.headline).toBe('a new setup');
  });
});

describe('as a page', () => {
  const hostile = to('setup "Limpet"', 'setup "<img src=x onerror=alert(1)>"', to('power: 10 mW', 'power: 12 mW\n    note: "</style><script>alert(2)</script> `x` | y"'));
  const named = [{ file: '<b>.plate', page: reviewPage(between(PAGE, hostile)) }];
  it('of HTML has nothing of a file as markup', () => {
    const html = reviewHtml(named, 'a → <i>b</i>', () => undefined);
    for (const tag of ['<img', '<script', '<b>.plate', '<i>']) expect(html).not.toContain(tag);
    expect(html).toContain('&#60;img src=x onerror=alert(1)&#62;');
    expect(html).not.toMatch(/https?:/);
  });
  it('of Markdown neither', () => {
    const md = reviewMarkdown(named);
    expect(md).not.toMatch(/(?<!\\)<(?:img|b|script)/.exec(md.replace(/`` .*? ``|`[^`]*`/g, ''))?.[0] ?? /(?!)/);
    expect(md).toContain('``');
  });
  it('with no change says so', () => { for (const text of [reviewText, reviewMarkdown]) expect(text([{ file: 'a', page: reviewPage(between(PAGE, PAGE)) }])).toMatch(/^Nothing differs/); });
});
