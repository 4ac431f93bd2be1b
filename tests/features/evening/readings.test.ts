/** What there is to read, in which order, and what a reading that is entered makes of the page. */
import { describe, expect, it, test } from 'vitest';
import { readFileSync } from 'node:fs';
import { analyse, type Library } from '../../../server/analysis.ts';
import { enter } from '../../../server/features/readings/enter.ts';
import { unitOf, valueText } from '../../../server/features/readings/line.ts';
import { wantedOf } from '../../../server/features/readings/wanted.ts';
import { example, EXAMPLES } from '../card/source.ts';
import { but, whelk } from '../source.ts';
import { added, entered, made, ON, page, taken } from './source.ts';

const also = (more: string, text = whelk): string => text.replace(/\}\s*$/, `${more}}\n`);
const wanted = (text: string) => wantedOf(page(text).results[0]!);

describe('what there is to read', () => {
  it('goes from leg to leg as light does, then path against path, then light', () => {
    expect(wanted(whelk).flatMap(w => w.subject ?? [])).toEqual([
      'red -> S1', 'S1 -> M1', 'M1 -> P1', 'S1 -> M2', 'M2 -> M3', 'M3 -> whelk', 'whelk -> P1', 'reference', 'object', 'object - reference',
      'dark', 'raw at S1', 'reference at P1', 'object at P1', 'drift at P1', 'reference at M1', 'object at M2', 'object at M3', 'object at whelk',
    ]);
  });
  it('says what each should come to, with how far off that may be', () => {
    // As written; 750 + 721 and 410 + 377 + 468 + 300; twice √(2 · (2/√3)²) = 3.3, and of the difference twice √(4 · (2/√3)² + 2 · (3/√3)²) = 6.7
    const of = (subject: string): string | undefined => wanted(whelk).find(w => w.subject === subject)?.expected.text;
    expect([of('S1 -> M1'), of('reference'), of('object - reference')]).toEqual(['750 ± 2 mm', '1471 ± 3 mm', '84 ± 7 mm']);
  });
  it('asks for no path beside a path where one beam makes both', () => {
    const single = wantedOf(example('single-beam-oyster.plate').results[0]!);
    expect(single.filter(w => w.group === 'paths' || w.group === 'sums')).toEqual([]);
    expect(single.some(w => w.group === 'legs')).toBe(true);
  });
  it('asks for the wheel of a splitter whose marks were metered', () => { expect(wantedOf(example('readings.plate').results[0]!).filter(w => w.group === 'wheels')).toMatchObject([{ subject: 'S1 wheel', expected: { text: '4.5' }, unit: '' }]); });
});

const beside: Library = { text: uri => readFileSync(new URL(uri), 'utf8'), resolve: (path, from) => new URL(path, from).href };
describe('whatever a page asks for is understood as that when it is answered', () => {
  test.each(EXAMPLES.map(e => [e]))('%s', name => {
    const s = example(name);
    for (const r of s.results) {
      for (const w of wantedOf(r)) {
        if (w.subject === undefined) continue;
        const typed = w.group === 'wheels' ? '4' : { dark: '0.1 nW' }[w.subject] ?? '300';
        const e = enter(s, r, { ...w, subject: w.subject }, typed, ON, beside);
        expect(e, w.subject).not.toHaveProperty('refused');
        if ('refused' in e) continue;
        expect(added(s.text, made(s, e.edits)).filter(l => l !== '').map(l => l.trim())).toEqual([e.line]);
      }
    }
  });
});

describe('a line', () => {
  const after = (text: string, subject: string, typed: string): string => made(page(text), taken(text, subject, typed).edits);
  it('is dated, and stands behind the beams where there is no reading yet', () => {
    const text = after(whelk, 'S1 -> M1', '752 ± 2');
    expect(text).toContain('    -> P1: 300 mm ± 3 mm\n\n  measured S1 -> M1: 752 ± 2 mm on 2026-02-18T21:40\n');
    expect(added(whelk, text).sort()).toEqual(['', '  measured S1 -> M1: 752 ± 2 mm on 2026-02-18T21:40']);
  });
  it('stands behind the last reading, and changes no other byte', () => {
    const before = also('  measured S1 -> M1: 752 mm   by string // first\n\n  expect mismatch < 10 mm\n');
    const text = after(before, 'M1 -> P1', '720');
    expect(text).toBe(before.replace('// first\n', '// first\n  measured M1 -> P1: 720 mm by string on 2026-02-18T21:40\n'));
  });
  it('keeps the line ends and the indent of the page', () => {
    const before = also('\tmeasured S1 -> M1: 752 mm by string\n').replaceAll('\n', '\r\n');
    expect(after(before, 'M1 -> P1', '720')).toBe(before.replace('by string\r\n', 'by string\r\n\tmeasured M1 -> P1: 720 mm by string on 2026-02-18T21:40\r\n'));
  });
  it('keeps a mark at the start of the file', () => {
    const text = after(`\ufeff${whelk}`, 'S1 -> M1', '752');
    expect(added(`\ufeff${whelk}`, text)).toHaveLength(2);
  });
  it('takes an own instrument, day and unit from whoever types them', () => { expect(taken(whelk, 'S1 -> M1', '75.2 cm ± 2 mm by tape on 2026-02-17').line).toBe('measured S1 -> M1: 75.2 cm ± 2 mm by tape on 2026-02-17'); });
  it('names the only meter of the setup', () => { expect(taken(but('  plate P1\n', '  plate P1\n  meter needle\n'), 'reference at P1', '1.6').line).toBe('measured reference at P1: 1.6 µW/cm² by needle on 2026-02-18T21:40'); });
  it('knows a minus that is none', () => { expect(taken(whelk, 'object - reference', '−3 ± 2').line).toBe('measured object - reference: -3 ± 2 mm on 2026-02-18T21:40'); });

  const length = { unit: 'mm', expected: { text: '', known: '' } };
  test.each([['752', '752 mm'], ['752 ± 2', '752 ± 2 mm'], ['752 +/- 2', '752 +/- 2 mm'], ['752 mm ± 2 mm', '752 mm ± 2 mm'], ['29.5 in', '29.5 in'], ['-3', '-3 mm'], ['700 mm + 52 mm', '700 mm + 52 mm']])('%s is %s', (typed, value) => {
    expect(valueText(typed, length, undefined, ON)).toBe(`${value} on ${ON}`);
  });
  test.each([['752.0 ± 2.3 mm', 'mm'], ['11 to 15 nW', 'nW'], ['8 nW ± 2 nW', 'nW'], ['90% ± 2 points', '%'], ['', 'mm'], ['unknown', 'mm'], ['4.5', 'mm']])('beside “%s” a bare number is one of %s', (text, unit) => { expect(unitOf({ unit: 'mm', expected: { text, known: '' } })).toBe(unit); });
});

describe('beside what was planned', () => {
  it('agrees, by so many standard uncertainties', () => {
    // 1 mm, over √((2/√3)² + (2/√3)²) = 1.63 mm: 0.61
    expect(taken(whelk, 'S1 -> M1', '751 ± 2')).toMatchObject({ agrees: true, says: 'S1 → M1: 751 ± 2 mm, 1 mm more than planned, 0.61 standard uncertainties: that agrees.' });
  });
  it('disagrees from three on', () => {
    // 3 · 1.633 mm = 4.90 mm
    expect(taken(whelk, 'S1 -> M1', '754.8 ± 2').agrees).toBe(true);
    expect(taken(whelk, 'S1 -> M1', '755 ± 2').agrees).toBe(false);
  });
  it('says what comes of it: what disagrees, and what to move', () => {
    const e = taken(also('  expect mismatch < 90 mm\n'), 'S1 -> M1', '730 ± 2');
    // 84 mm and 20 mm that the reference is shorter
    expect(e.findings.join('\n')).toMatch(/is 20 mm less than planned \(750 mm\), and what is expected of “mismatch” is not met by it\. Look where it stands/);
    expect(e.findings.join('\n')).toMatch(/Shorten “object” or lengthen “reference” by 104 mm/);
  });
  it('names the likeliest cause where several differ', () => {
    // The reference as a whole is 12 mm longer, and so is its first leg.
    const exact = but('750 mm ± 2 mm', '750 mm', but('721 mm ± 2 mm', '721 mm'));
    const e = taken(also('  measured reference: 1483 mm ± 3 mm\n  expect mismatch < 90 mm\n', exact), 'S1 -> M1', '762 ± 2');
    expect(e.findings).toContainEqual(expect.stringMatching(/^The leg S1 → M1 is 12 mm longer than planned: that explains both readings that differ from the plan\..* Check that first\.$/));
  });
  it('says when nothing that is held against anything changes', () => { expect(taken(whelk, 'red -> S1', '400').says).toMatch(/No result that is held against anything changes by it\. Look where it stands, and measure once more\.$/); });
  it('says when there is nothing to hold it against', () => {
    const e = taken(but('-> S1: 350 mm', '-> S1'), 'red -> S1', '348');
    expect(e).toMatchObject({ says: 'red → S1: 348 mm. There was nothing to hold it against.' });
    expect(e).not.toHaveProperty('agrees');
  });
  it('of light that the plan leaves open widely, lies within', () => {
    const s = example('whelk-on-the-table.plate');
    const r = s.results[0]!;
    const w = wantedOf(r).find(x => x.subject === 'object at P1')!;
    const at = (typed: string) => { const e = enter(s, r, { ...w, subject: 'object at P1' }, typed, ON, beside); if ('refused' in e) throw new Error(e.refused); return e; };
    expect(at('0.4')).toMatchObject({ agrees: true, says: expect.stringMatching(/within the .* to .* µW\/cm² that the plan leaves open\.$/) as string });
    expect(at('40')).toMatchObject({ agrees: false });
  });
});

describe('readings that contradict each other', () => {
  const before = also('  measured S1 -> M1: 750 mm ± 2 mm on 2026-02-18T21:30\n');
  const e = taken(before, 'S1 -> M1', '770 ± 2');
  it('are both kept, and it is said that one is wrong', () => {
    // 20 mm over √2 · 2/√3 = 1.63 mm: 12
    expect(e).toMatchObject({ agrees: false, says: expect.stringContaining('Beside the reading before it is 20 mm more than 750 ± 2 mm, 12 standard uncertainties: that disagrees (read on 2026-02-18 at 21:30). If nothing was moved between, one of the two was misread') as string });
    expect(made(page(before), e.edits)).toContain('  measured S1 -> M1: 750 mm ± 2 mm on 2026-02-18T21:30\n  measured S1 -> M1: 770 ± 2 mm on 2026-02-18T21:40\n');
  });
  it('count by their time', () => { expect(page(made(page(before), e.edits)).results[0]!.graph.value(page(made(page(before), e.edits)).results[0]!.graph.find('reference.1.length')!)).toBeCloseTo(0.77, 9); });
  it('read from the other end are of the same leg', () => { expect(taken(also('  measured M1 -> S1: 750 mm ± 2 mm\n'), 'S1 -> M1', '770 ± 2').says).toContain('Beside the reading before'); });
  it('are none where something was moved between', () => { expect(taken(also('  measured S1 -> M1: 750 mm ± 2 mm on 2026-02-18T21:30\n  moved M1 on 2026-02-18T21:35: "the cat"\n'), 'S1 -> M1', '770 ± 2').says).not.toContain('Beside the reading before'); });
  it('of light may differ, since it is set anew', () => {
    const lit = also('  measured reference at P1: 1.6 µW/cm² ± 5% on 2026-02-18T21:30\n');
    // 0.8/1.6
    expect(taken(lit, 'reference at P1', '0.8 µW/cm² ± 5%')).toMatchObject({ agrees: true, says: expect.stringContaining('0.5 times') as string });
  });
});

describe('what cannot be written is refused, and says why', () => {
  test.each([
    ['nothing', '', /Nothing is written there/], ['blanks', '   ', /Nothing is written there/], ['a decimal comma', '752,5', /Write a point/], ['another unit', '3 mW', /mW/], ['words', 'about a metre', /“about a metre”|about/], ['a question', '?', /\?/], ['less than nothing', '-5', /./],
    ['a second line', '752 mm\n}', /One value is wanted/], ['a comment', '752 mm // hm', /One value is wanted/], ['a brace', '752 mm {', /One value is wanted/], ['another sign', '752 mm ± ', /./], ['a day that is none', '752 mm on 2026-02-31', /There is no 2026-02-31/], ['huge', '1e999', /./],
  ])('%s', (_, typed, why) => { expect(entered(whelk, 'S1 -> M1', typed)).toMatchObject({ refused: expect.stringMatching(why) as string }); });
  it('into a page whose brace is lost nothing goes that would not be read', () => {
    const torn = whelk.replace(/\}\s*$/, '');
    const e = entered(torn, 'S1 -> M1', '752');
    if ('refused' in e) expect(e.refused).toMatch(/brace/);
    else expect(analyse('file:///a.plate', made(page(torn), e.edits)).results[0]!.setup.readings).toHaveLength(1);
  });
  it('no text of a value throws', () => { for (const typed of ['(', ')', '"', '±', '->', ': 3', '}', 'by', 'on', '752 by', '\u0000', '\ud800', 'x'.repeat(3000), '1e308 m', '0', '--3', '752 mm by by by']) expect(() => entered(whelk, 'S1 -> M1', typed)).not.toThrow(); });
});
