import { describe, expect, it } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import { ALL_HINTS, type HintKinds } from '../../server/features/hint-kinds.ts';
import { hintsOf, hintWords } from '../../server/features/hints.ts';
import { but, FILE, whelk } from './source.ts';

/** Lines of the text with their hints behind them, only those that have some. */
function lines(source: string, wanted: Partial<HintKinds> = {}, from?: number, to?: number): string[] {
  const s = analyse(FILE, source);
  const rows = new Map<number, string>();
  for (const h of hintsOf(s, { ...ALL_HINTS, ...wanted }, from, to)) {
    const { text } = s.tree.lines[h.line]!;
    expect(text.slice(h.character).trim()).toMatch(/^(\/\/.*)?$/);
    rows.set(h.line, `${rows.get(h.line) ?? text.slice(0, h.character).trim()} ‹${h.parts.map(p => p.text).join('')}›`);
  }
  return [...rows.values()];
}

// 3-4-5 and 5-12-13: S1 to M1 is 500 mm, M1 to P1 1300 mm.
const PLACED = 'setup "a" {\n  laser red at (-200, 0) mm\n  splitter S1 at (0, 0) mm\n  mirror M1 at (300, 400) mm ± 1 mm\n  plate P1 at (800, 1600) mm\n  object shell at (800, 1300) mm\n  beam raw from red\n    -> S1 // on the left\n  beam reference from S1 through\n    -> M1\n    -> P1: 1310 mm\n  beam object from S1 reflected\n    -> shell: 1500 mm\n    -> P1\n}';

describe('figures in the text', () => {
  // Legs: reference 750 + 721 mm, object 410 + 377 + 468 + 300 mm; ± are half-widths: 2·√((2² + 2²)/3) = 3.3 mm, 2·√((2² + 2² + 3² + 3²)/3) = 5.9 mm, both together 6.7 mm.
  it('totals and mismatch where lengths are written, and no leg', () => expect(lines(whelk)).toEqual([
    'beam reference from S1 through ‹in all 1471 ± 3 mm›', 'beam object from S1 reflected ‹in all 1555 ± 6 mm›', '-> P1: 300 mm ± 3 mm ‹· mismatch 84 ± 7 mm›',
  ]));
  // The place of M1 is sure within 1 mm in x and in y, which makes a leg unsure by 1/√3 mm: 1.2 mm doubled.
  it('legs whose ends have places', () => expect(lines(PLACED)).toEqual([
    '-> S1 ‹200 mm›', 'beam reference from S1 through ‹in all 1810.0 ± 1.2 mm›', '-> M1 ‹500.0 ± 1.2 mm›', 'beam object from S1 reflected ‹in all 1800 mm›', '-> P1 ‹300 mm› ‹· mismatch −10.0 ± 1.2 mm›',
  ]));
  it('each kind only where it is wanted', () => {
    expect(lines(PLACED, { legLengths: false, mismatch: false })).toEqual(['beam reference from S1 through ‹in all 1810.0 ± 1.2 mm›', 'beam object from S1 reflected ‹in all 1800 mm›']);
    expect(lines(PLACED, { armTotals: false, mismatch: false })).toEqual(['-> S1 ‹200 mm›', '-> M1 ‹500.0 ± 1.2 mm›', '-> P1 ‹300 mm›']);
    expect(lines(PLACED, { armTotals: false, legLengths: false })).toEqual(['-> P1 ‹· mismatch −10.0 ± 1.2 mm›']);
  });
  it('only in the lines that are seen', () => expect(lines(PLACED, {}, 7, 8)).toEqual(['-> S1 ‹200 mm›', 'beam reference from S1 through ‹in all 1810.0 ± 1.2 mm›']));
  it('of a single beam: what lies behind the plate', () => expect(lines('setup "a" {\n  laser red\n  plate P1\n  object shell\n  beam all from red\n    -> P1 through: 900 mm\n    -> shell: 12 mm\n    -> P1: 12 mm\n}')).toEqual([
    'beam all from red ‹object in all 24 mm›', '-> P1: 12 mm ‹· mismatch 24 mm›',
  ]));
  it('none where something is missing', () => {
    expect(lines(but('-> M3: 377 mm ± 2 mm', '-> M3', but('-> M1: 750 mm ± 2 mm', '-> M1: ?')))).toEqual([]);
    expect(lines('setup "a" {\n  laser red at (0, 0) mm\n  mirror M1\n  beam b from red\n    -> M1\n    -> M1 ->\n')).toEqual([]);
  });
  it('never longer than an editor shows', () => {
    const long = 'a-very-long-name-of-a-beam-that-nobody-would-say';
    for (const row of lines(whelk.replaceAll('reference', long))) for (const [, hint] of row.matchAll(/‹(.*?)›/g)) expect(hint!.length).toBeLessThan(40);
    expect(lines(whelk.replaceAll('reference', long))[2]).toBe('-> P1: 300 mm ± 3 mm ‹· mismatch 84 ± 7 mm›');
  });
});

it('lead to the reference, and to their chain of numbers', () => {
  const s = analyse(FILE, whelk);
  const hint = hintsOf(s, ALL_HINTS).at(-1)!;
  expect(hint.parts[1]).toMatchObject({ text: 'mismatch', to: { line: whelk.split('\n').findIndex(l => l.includes('beam reference')), start: 7, end: 16 } });
  expect(hintWords(s, hint.setup, hint.result)).toMatch(/^\*\*84 ± 7 mm\*\*: mismatch of object and reference at P1[^]*reference at P1: 1471 ± 3 mm/);
  expect(hintWords(s, hint.setup, 'nothing')).toBeUndefined();
  expect(hintWords(s, 999, hint.result)).toBeUndefined();
});
