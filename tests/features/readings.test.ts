/** What is shown of readings: the page of a report, hovers. */
import { describe, expect, it } from 'vitest';
import { analyse, type Snapshot } from '../../server/analysis.ts';
import { showCell } from '../../server/features/chain.ts';
import { hoverAt } from '../../server/features/hover/hover.ts';
import { reportMarkdown } from '../../server/features/report/markdown.ts';
import { reportText } from '../../server/features/report/text.ts';
import { reportOf, type Report } from '../../server/features/report/report.ts';
import { asWritten } from '../../server/features/report/words.ts';
import { NUMBER, parseUnit } from '../../server/model/units.ts';
import { pathsText } from '../results/readings.ts';

const TEXT = pathsText([
  'measured S1 -> M1: 752 mm ± 2 mm by thread on 2026-02-11',
  'measured reference: 1476 mm ± 3 mm on 2026-02-11',
  'measured reference: 1490 mm on 2026-02-01',
  'measured object - reference: -3 mm ± 1 mm',
  'measured S1 -> M2: 405 mm on 2026-02-01',
  'measured object at P1: 0.33 µW/cm²',
], { more: ['string thread {', '  stretch: 0%', '}', 'moved M2 on 2026-02-05: "the cat"'] });

const snapshot: Snapshot = analyse('file:///saltmarsh/setup.plate', TEXT);
const report: Report = reportOf(snapshot, snapshot.results[0]!);
const hover = (line: string): string => {
  const at = TEXT.split('\n').findIndex(l => l.includes(line));
  return hoverAt(snapshot, at, TEXT.split('\n')[at]!.indexOf('m') + 1)!.markdown.replaceAll('\\', '');
};

describe('the report', () => {
  it('has what was read beside what was planned, and what became of it', () => {
    expect(report.readings?.rows.map(r => [r.label, r.text, r.remark])).toEqual([
      ['S1 -> M1', '752 ± 2 mm', 'by thread on 2026-02-11: 2 mm more than planned (750 mm); corrects leg S1 → M1'],
      ['reference', '1476 ± 3 mm', 'on 2026-02-11: 6 mm more than planned (1470 mm); corrects reference at P1'],
      ['reference', '1490 mm', 'on 2026-02-01: counts no more: there is a newer one of 2026-02-11'],
      ['object - reference', '−3 ± 1 mm', '3 mm less than planned (0 mm); corrects difference of object and reference at P1'],
      ['S1 -> M2', '405 mm', 'on 2026-02-01: no longer counts: M2 was moved on 2026-02-05'],
      ['object at P1', '0.33 µW/cm²', 'in the plate’s plane; gives light of object at P1'],
    ]);
  });
  it('says what a string that is too long makes of a reading', () => {
    const rows = (reading: string): string[] => { const s = analyse('file:///saltmarsh/setup.plate', pathsText([reading], { more: ['string thread {', '  stretch: 0.3%', '}'] })); return reportOf(s, s.results[0]!).readings!.rows.map(r => r.remark); };
    // 752 · 1.003 = 754.256 mm; the 3 mm of a difference stay 3.0 mm.
    expect(rows('measured S1 -> M1: 752 mm by thread')).toEqual(['by thread: 754.3 mm with its stretch, 4.3 mm more than planned (750 mm); corrects leg S1 → M1']);
    expect(rows('measured object - reference: -3 mm by thread')).toEqual(['by thread: 3 mm less than planned (0 mm); corrects difference of object and reference at P1']);
  });
  it('says points of a percentage, wherever one is shown with its give', () => {
    const text = pathsText([], { more: ['mirror M9 = lab.flat-50 {', '  loss: 3% ± 1 points', '}'] }).replace('setup "', 'inventory lab {\n  mirror flat-50 {\n    loss: 4% ± 2 points\n  }\n}\n\nsetup "');
    const s = analyse('file:///saltmarsh/setup.plate', text);
    const cell = s.results[0]!.values.fact(s.results[0]!.setup.things.get('M9')!, 'loss')!;
    expect(showCell(s.results[0]!.graph, cell).text).toBe('3% ± 1 points');
    expect(asWritten({ value: 0.8, dim: NUMBER, unit: parseUnit('%')!, spread: { kind: 'within', amount: 0.016 } })).toBe('80% ± 1.6 points');
    expect(asWritten({ value: 0.8, dim: NUMBER, unit: parseUnit('%')!, spread: { kind: 'std', amount: 0.02 } })).toBe('80% ± 2 points std');
  });
  it('shows legs as they were read', () => expect(report.plates[0]!.arms[0]!.legs.map(l => l.text)).toEqual(['752.0 ± 2.3 mm', '720 mm']));
  it('is printed, in text and in Markdown', () => {
    expect(reportText([report], 'setup.plate')).toContain('What was measured\n');
    expect(reportMarkdown([report], 'setup.plate')).toContain('| measured | read | what became of it |');
  });
  it('promises no more than what is computed', () => {
    const page = (fact: string): string => { const s = analyse('file:///saltmarsh/setup.plate', `setup "Whelk" {\n  ${fact}\n  laser red\n  beam stop B1\n  beam raw from red\n    -> B1: 400 mm\n}\n`); return [reportText, reportMarkdown].map(f => f([reportOf(s, s.results[0]!)], 'setup.plate')).join(''); };
    expect(page('settle: 3 min')).toMatch(/Findings: none in what is computed\n\n {2}Not computed yet: setup: settle\.[^]*None in what is computed\./);
    expect(page('beam height: 120 mm')).toMatch(/Findings: none\n[^]*None\./);
  });
  it('says nothing where nothing was measured', () => {
    const bare = analyse('file:///saltmarsh/setup.plate', pathsText([]));
    expect(reportOf(bare, bare.results[0]!).readings).toBeUndefined();
  });
});

describe('a hover', () => {
  it('over a reading: what it corrects, with the plan and the offset behind it', () => {
    const shown = hover('measured S1 -> M1');
    expect(shown).toContain('2 mm more than planned (750 mm); corrects leg S1 → M1.');
    expect(shown).toContain('leg S1 → M1 as planned: 750 mm');
    expect(shown).toContain('reading of leg S1 → M1: 752 ± 2 mm, measured');
  });
  it('over one that does not count: why', () => {
    expect(hover('measured reference: 1490')).toContain('Counts no more: there is a newer one of 2026-02-11.');
    expect(hover('measured S1 -> M2')).toContain('No longer counts: M2 was moved on 2026-02-05.');
  });
  // 1.2 : 0.3 is four to one, and 1.5 together.
  it('over one of light: the results that rest on it', () => {
    const text = pathsText(['measured reference at P1: 1.2 µW/cm²', 'measured object at P1: 0.3 µW/cm²']);
    const s = analyse('file:///saltmarsh/setup.plate', text);
    const over = (words: string): string => { const at = text.split('\n').findIndex(l => l.includes(words)); return hoverAt(s, at, text.split('\n')[at]!.indexOf('m') + 1)!.markdown; };
    expect(over('measured object')).toMatch(/^\*\*0\.3 µW\/cm²\*\*: object at P1\n\nIn the plate’s plane; gives light of object at P1\.\n\nWhat rests on it:\n\n[^]*- beam ratio at P1: 4:1$/m);
    expect(over('measured object')).toContain('- light at P1: 1.5 µW/cm²');
  });
  it('over a move: the readings that it makes stale', () => expect(hover('moved M2')).toContain('S1 -> M2, line'));
});

describe('a run that is not the sum of its legs', () => {
  // 500 + 400 + 100 = 1000; the first two were read in one run as 902
  const text = (...readings: string[]): string => `setup "Runs" {
  laser red {
    coherence length: 5 m
  }
  splitter S1
  mirror M1
  mirror M2
  object whelk
  plate P1
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> M1: 500 mm
    -> M2: 400 mm
    -> P1: 100 mm
  beam object from S1 reflected
    -> whelk: 700 mm
    -> P1: 300 mm
${readings.map(r => `  measured ${r}\n`).join('')}}
`;
  const rows = (...readings: string[]): string[] => {
    const snapshot = analyse('file:///saltmarsh/x.plate', text(...readings));
    const page = [reportOf(snapshot, snapshot.results[0]!)];
    const shown = reportText(page, 'x.plate').split('\n').filter(l => /in all|in one run/.test(l)).map(l => l.trim().replace(/ {2,}/g, ': '));
    expect(reportMarkdown(page, 'x.plate').split('\n').filter(l => /in all|in one run/.test(l)).map(l => l.replace(/^\| +\| (.*) \| (.*) \|$/, '$1: $2'))).toEqual(shown);
    return shown;
  };
  it('is said in its row', () => {
    expect(rows('S1 -> M1 -> M2: 902 mm')).toEqual(['S1 → M1 → M2, as read in one run: 902 mm', 'in all: 1002 mm', 'in all: 1000 mm']);
    expect(rows('reference: 1002 mm')).toEqual(['in all, as read in one run: 1002 mm', 'in all: 1000 mm']);
  });
  it('is not said where they add up, or where the legs count', () => {
    expect(rows('S1 -> M1 -> M2: 900 mm')).toEqual(['in all: 1000 mm', 'in all: 1000 mm']);
    expect(rows('S1 -> M1 -> M2: 902 mm ± 5 mm', 'S1 -> M1: 500 mm ± 1 mm', 'M1 -> M2: 401 mm ± 1 mm')).toEqual(['in all: 1001 mm', 'in all: 1000 mm'].map(l => l.replace('1001 mm', '1001.0 ± 1.6 mm')));
  });
});
