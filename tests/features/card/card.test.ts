/** The card for the bench: what stands on it, where it comes from, and what is left to write. */
import { describe, expect, it } from 'vitest';
import { alone, analyse } from '../../../server/analysis.ts';
import { reportOf } from '../../../server/features/report/report.ts';
import { reportText } from '../../../server/features/report/text.ts';
import { PROCESS_FACTS } from '../../../server/model/things/index.ts';
import { whelk, but } from '../source.ts';
import { all, blocks, card, cardsOf, example, EXAMPLES, lines, rows } from './source.ts';

/** Both beams read by one meter, exactly. */
const metered = (more = ''): string => whelk.replace(/\}\s*$/, `  measured reference at P1: 1.2 µW/cm²\n  measured object at P1: 0.4 µW/cm²\n${more}}\n`);
const also = (more: string): string => whelk.replace(/\}\s*$/, `${more}}\n`);

describe('a card of string lengths', () => {
  const c = card(whelk);
  it('goes in the order of the evening', () => {
    expect(c.sections.map(s => s.title)).toEqual(['Not settled yet', 'Before the laser is on', 'Set up', 'Measure', 'Balance', 'Cards and stops', 'Shoot', 'In the dark', 'Process', 'Notes']);
  });
  it('has each leg as it is written, in the order in which light goes, with a line for what string says', () => {
    expect(lines(c, 'set up')).toEqual(expect.arrayContaining([
      'Beam raw, from red', 'red → S1 / 350 mm / reflects ______ % / ____ mm',
      'Beam reference, from S1 through', 'S1 → M1 / 750 ± 2 mm /  / ____ mm', 'M1 → P1 / 721 ± 2 mm /  / ____ mm',
      'Beam object, from S1 reflected', 'M3 → whelk / 468 ± 3 mm /  / ____ mm', 'whelk → P1 / 300 ± 3 mm /  / ____ mm',
    ]));
    expect(rows(c, 'set up').map(r => 'text' in r.entries[0]! && r.entries[0].text)).toEqual(['red → S1', 'S1 → M1', 'M1 → P1', 'S1 → M2', 'M2 → M3', 'M3 → whelk', 'whelk → P1', 'reference', 'object']);
  });
  it('adds the arms up', () => {
    // 750 + 721 and 410 + 377 + 468 + 300; twice √(2 · (2/√3)²) = 3.3 and twice √(2 · (2/√3)² + 2 · (3/√3)²) = 5.9
    expect(rows(c, 'set up').filter(r => r.sum).map(r => r.entries[1])).toEqual([{ text: '1471 ± 3 mm' }, { text: '1555 ± 6 mm' }]);
  });
  it('tells what the string should say, and by how much the two may differ', () => {
    expect(lines(c, 'measure')).toContain('object − reference at P1 | one loop of string held against both / 84 ± 7 mm / ____');
    expect(lines(card(also('  expect mismatch < 10 mm\n')), 'measure')).toContain('object − reference at P1 | one loop of string held against both / 84 ± 7 mm | expected: mismatch < 10 mm / ____');
  });
  it('has lines for what is not written, and nothing invented in their place', () => {
    expect(lines(c, 'measure')).toContain('reference at P1 / nothing on the page tells / ____ µW/cm²');
    expect(lines(c, 'set up')[0]).toBe('All beams run at one height above the table: ____ mm');
    expect(lines(c, 'shoot')).toEqual(expect.arrayContaining(['Laser red is warm. On since: ____', 'P1 in its holder. ____ emulsion', 'Hands off, out of the draught. Settle: ____ min', 'Open for: ____ s']));
    expect(lines(c, 'dark')).toEqual(['plate: ____', 'settle: ____ min', 'open: ____ s']);
    expect(all(c)).not.toContain('unknown');
  });
  it('a leg without a length is a line to write on', () => {
    expect(rows(card(but('-> M1: 750 mm ± 2 mm', '-> M1')), 'set up').map(r => r.entries[1])).toContainEqual({ write: 'mm' });
  });
  it('says first what the page has not settled', () => {
    expect(lines(c, 'open')).toEqual([expect.stringContaining('84 mm longer')]);
    expect(lines(card(but('468 mm', '384 mm')), 'open')).toEqual([]);
    expect(lines(card(also('  accept arms-mismatched "it is a test"\n')), 'open')).toEqual([]);
  });
});

describe('setting the split by meter', () => {
  it('in units: the object light that goes with the reference, for the ratio that is aimed at', () => {
    // 1.2 / 4
    expect(lines(card(metered('  aim beam ratio: 4:1\n')), 'balance')[0]).toBe('Turn S1 until the object light reads 0.3 µW/cm² while the reference reads 1.2 µW/cm²: 4:1, as aimed at.');
  });
  it('in the bare numbers of a meter, without its dark reading', () => {
    // 62 − 2 = 60; 60 / 4
    const bare = also('  meter needle\n  measured reference at P1: 62 by needle\n  measured object at P1: 14 by needle\n  measured dark at P1: 2 by needle\n  aim beam ratio: 4:1\n');
    expect(lines(card(bare), 'balance')[0]).toBe('Turn S1 until the object light reads 15 while the reference reads 60: 4:1, as aimed at.');
    expect(lines(card(bare), 'measure')).toContain('reference at P1 / 60 | as metered / ____');
  });
  it('where nothing was read, on any scale', () => {
    expect(lines(card(also('  aim beam ratio: 9:2\n')), 'balance')[0]).toBe('Turn S1 until the object light reads 2 while the reference reads 9, on any scale: 9:2, as aimed at.');
  });
  it('by what is expected, where nothing is aimed at', () => {
    // 1.2 / 6 and 1.2 / 3
    expect(lines(card(metered('  expect beam ratio from 6:1 to 3:1\n')), 'balance')[0]).toBe('Turn S1 until the object light reads 0.2 to 0.4 µW/cm² while the reference reads 1.2 µW/cm²: from 3:1 to 6:1, as expected.');
    expect(lines(card(metered('  aim beam ratio: 4:1\n  expect beam ratio from 3:1 to 6:1\n')), 'balance')[1]).toBe('Expected is a ratio from 3:1 to 6:1: object light from 0.2 to 0.4 µW/cm².');
    expect(lines(card(also('  expect beam ratio from 3:1 to 6:1\n')), 'balance')[0]).toContain('reads 1 while the reference reads 3 to 6, on any scale');
  });
  it('with the ratio as it is', () => {
    expect(lines(card(metered('  aim beam ratio: 4:1\n')), 'balance')[1]).toMatch(/^By the page the ratio is 3:1 now\./);
  });
  it('without a ratio on the page asks for one', () => {
    expect(lines(card(whelk), 'balance')).toEqual([expect.stringMatching(/^Which ratio .* is not written\.$/), expect.stringMatching(/^One meter for both/), 'ratio that is wanted ____ :1', 'reference ____, ÷ ratio = ____', 'object light ____, ratio ____ :1', 'S1 stands at ____']);
  });
  it('of a single beam there is nothing to turn', () => {
    const [c] = cardsOf(example('single-beam-oyster.plate'));
    expect(lines(c!, 'balance')).toEqual([expect.stringMatching(/^One beam brings both .*0\.77:1 to 8:1\.$/)]);
    expect(lines(c!, 'measure').some(l => l.includes('one loop of string'))).toBe(false);
  });
});

describe('a placed setup', () => {
  const [c] = cardsOf(example('whelk-on-the-table.plate'));
  it('says where each spot has to land and how what it lands on is set', () => {
    expect(lines(c!, 'set up')).toEqual(expect.arrayContaining(['S1 → M1 / 752.0 ± 2.3 mm / (1100, 100) mm / faces 152°, light turns 124°, spot 1.3 mm / ____ mm', expect.stringContaining('lens 2.9 mm, pinhole 6 µm')]));
    expect(lines(c!, 'set up')[0]).toBe('All beams run 120 mm above the table.');
  });
  it('says where cards go', () => {
    expect(lines(c!, 'cards')).toContain('near edge, about (233, 0) mm / ends what the glass of P1 throws back of reference');
  });
  it('has the times of a test strip, as the report has them', () => {
    expect(blocks(c!, 'shoot').find(b => b.kind === 'strip')).toEqual({ kind: 'strip', times: ['9.5', '13', '19', '26', '38', '55', '75'] });
  });
  it('tells things that stand higher', () => {
    expect(lines(cardsOf(example('single-beam-oyster.plate'))[0]!, 'set up')[0]).toBe('All beams run 150 mm above the table. | But R1 at 210 mm and M2 at 756 mm.');
  });
});

describe('processing', () => {
  const bath = (facts: string, day = ' on 2026-02-12'): string => also(`  process on 2026-01-02 {\n    develop: 9 min\n  }\n  process${day} {\n${facts}  }\n`);
  it('has the newest baths as steps, with lines for what was done', () => {
    expect(lines(card(bath('    bleach: "the usual"\n    shots: "7, 8"\n    develop: 2.5 min\n    developer: "the usual, new"\n    temperature: 20 °C ± 0.5 K\n    rinse: 90 s\n    wash: "running"\n')), 'process').slice(1)).toEqual([
      'As on 2026-02-12, for shots 7, 8.', 'Develop 2.5 min in the usual, new, at 20 °C ± 0.5 K ____ min', 'Rinse 90 s ____ s', 'Bleach in the usual ____ min', 'Wash: running',
    ]);
  });
  it('without one has room for it', () => {
    expect(lines(card(whelk), 'process').slice(1)).toEqual(['The page has no process. Write down each bath:', ...[1, 2, 3, 4].map(i => `${i}. ____, for ____ min, at ____ °C`)]);
  });
  it('refers to data sheets and to who decides, and warns of what is named', () => {
    const cautions = (facts: string): string[] => blocks(card(bath(facts)), 'process').flatMap(b => (b.kind === 'caution' ? [b.text] : []));
    expect(cautions('    develop: 2 min\n')).toEqual([expect.stringMatching(/data sheet.*Local rules and the person responsible for chemicals decide/)]);
    expect(cautions('    bleach: "potassium dichromate and sulphuric acid"\n')).toEqual([expect.any(String), expect.stringMatching(/^Dichromate causes cancer/), expect.stringMatching(/Acid into water, never water into acid/)]);
  });
  describe('cautions', () => {
    const cautions = (text: string): string => blocks(card(text), 'process').flatMap(b => (b.kind === 'caution' ? [b.text] : [])).slice(1).join('\n');
    const steps = PROCESS_FACTS.filter(f => f.type.type === 'text' && f.phrase !== 'shots').map(f => [f.phrase]);
    it('are looked for in every step that can name a chemical', () => { expect(steps.flat()).toEqual(expect.arrayContaining(['developer', 'bleach', 'wash', 'drying', 'pre-swell', 'note'])); });
    it.each(steps)('of %s', step => { expect(cautions(bath(`    ${step}: "potassium dichromate"\n`))).toMatch(/^Dichromate causes cancer/); });
    it('of what is told above the process', () => { expect(cautions(also('  /// The bleach with dichromate.\n  process on 2026-02-12 {\n    develop: 2 min\n  }\n'))).toMatch(/^Dichromate causes cancer/); });
    // Hazards as data sheets of suppliers list them, from memory: what each may be called, and the word by which its caution is known.
    it.each([
      ['ammonium dichromate', /cancer/], ['DCG', /cancer/], ['pyrogallol', /poison/], ['catechol', /sensitise/], ['metol and ascorbate', /sensitise/], ['hydroquinone', /sensitise/], ['sodium hydroxide', /Alkalis burn/], ['washing soda', /Alkalis burn/],
      ['sodium carbonate', /Alkalis burn/], ['sulphuric acid', /Acid into water/], ['sodium bisulfate', /Acid into water/], ['benzoquinone', /hood/], ['PBQ', /hood/], ['bromine', /do not use/], ['mercuric chloride', /do not use/], ['isopropyl', /flame/],
      ['methylated spirit', /flame/], ['ferricyanide', /away from acids/], ['potassium permanganate', /oxidises/], ['hydrogen peroxide', /oxidises/], ['formalin', /hood/], ['glutaraldehyde', /hood/], ['copper sulphate', /Copper/], ['TEA 6%', /irritates/], ['triethanolamine', /irritates/],
      ['fixer', /drain/], ['hypo', /drain/],
    ])('of %s', (named, says) => {
      const said = cautions(bath(`    note: "${named}"\n`));
      expect(said).toMatch(says);
      expect(said).not.toMatch(/\bsafe\b|harmless/i);
    });
    it('of none where none is named', () => { expect(cautions(bath('    developer: "the usual with ascorbic acid"\n    wash: "running water"\n'))).toBe(''); });
  });
  it('takes no comment for a step', () => {
    expect(lines(card(bath('    develop: 2 min // by the clock\n')), 'process')).toContain('Develop 2 min ____ min');
  });
});

describe('every example', () => {
  const cards = EXAMPLES.map(name => ({ name, cards: cardsOf(example(name)), snapshot: example(name) }));
  it('has a card for each setup', () => { for (const e of cards) expect(e.cards.length, e.name).toBe(e.snapshot.results.length); });
  it.each(cards)('$name: lengths and sums are those of the report', ({ cards: own, snapshot }) => {
    own.forEach((c, i) => {
      const report = reportText([reportOf(snapshot, snapshot.results[i]!)], 'a.plate', []).replace(/\s+/g, ' ');
      const told = rows(c, 'set up').filter(r => r.sum ?? false).flatMap(r => ('text' in r.entries[1]! && r.entries[1].text !== '' ? [r.entries[1].text] : []));
      for (const text of told) expect(report).toContain(text);
    });
  });
  it.each(cards)('$name: nothing is without a value, or called harmless', ({ cards: own }) => {
    for (const c of own) {
      expect(all(c)).not.toMatch(/NaN|undefined|null|Infinity|\[object/);
      expect(all(c)).not.toMatch(/\b(?:un)?safe(?:ly|ty glasses)?\b|harmless/i);
    }
  });
});

it('of half a page there is a card as well', () => {
  const text = example('whelk-on-the-table.plate').text.split('\n');
  for (let n = 4; n < text.length; n += 3) for (const c of cardsOf(analyse('file:///saltmarsh/a.plate', text.slice(0, n).join('\n'), alone))) expect(all(c)).not.toMatch(/NaN|undefined/);
});
