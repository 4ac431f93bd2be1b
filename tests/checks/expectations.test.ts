/** What an expectation that is not met says: the limit as it is written, the result beside it in a unit that compares, with no more digits than it bears. */
import { describe, expect, it } from 'vitest';
import { look } from './library.ts';

/** Object arm 1200 + 300 mm and a little, reference 1471 mm. */
function said(goal: string, { more = [], object = '1200.3 mm' }: { more?: readonly string[]; object?: string } = {}): string[] {
  const lines = [
    'laser red {', '  coherence length: 5 m', '}', 'splitter S1', 'object whelk', 'plate P1', 'beam raw from red', '  -> S1: 350 mm', 'beam reference from S1 through', '  -> P1: 1471 mm',
    'beam object from S1 reflected', `  -> whelk: ${object}`, '  -> P1: 300 mm', ...more, goal,
  ];
  return look(`setup "Whelk shell" {\n${lines.map(l => `  ${l}\n`).join('')}}\n`).findings.filter(f => f.at.line === lines.length).map(f => f.message);
}
const DRIFT = { more: ['measured drift at P1: 3 fringes/min'] };

describe('a limit is quoted as it is written', () => {
  // 1500.3 − 1471 = 29.3 mm = 1.1535 in; a string tells a tenth of a millimetre, which is 0.004 in
  it.each([
    ['expect mismatch < 0.5 in', 'mismatch is 1.15 in, expected below 0.5 in'],
    ['expect mismatch < 12.7 mm', 'mismatch is 29.3 mm, expected below 12.7 mm'],
    ['expect mismatch from 0.1 in to 12 mm', 'mismatch is 1.15 in, expected from 0.1 in to 12 mm'],
    ['expect mismatch < 5 mm + 2 mm', 'mismatch is 29.3 mm, expected below 5 mm + 2 mm (7 mm)'],
    ['expect object length = 59 in', 'object length is 59.07 in, expected 59 in'],
    ['expect object length > 2 km', 'object length is 1500.3 mm, expected above 2 km'],
    ['expect brightness < 20.0%', 'brightness is 100 %, expected below 20.0%'],
  ])('%s', (goal, words) => expect(said(goal)).toEqual([`Not met: ${words}.`]));
  it('by the name of a value, with it', () => expect(said('expect mismatch < most', { more: ['let most = 0.5 in'] })).toEqual(['Not met: mismatch is 1.15 in, expected below most (0.5 in).']));
  it('of a ratio', () => expect(said('expect beam ratio from 3:1 to 6:1', { more: ['beam ratio: 16:1'] })).toContain('Not met: beam ratio is 16:1, expected from 3:1 to 6:1.'));
  it('where it cannot be decided', () => expect(said('expect mismatch < 1.2 in', { object: '1200 mm ± 5 mm' })[0]).toMatch(/^Undecided: mismatch is 1\.14 ± 0\.23 in, expected below 1\.2 in\./));
});

describe('a drift is one of fringes', () => {
  it.each([
    ['expect drift < 0.5 fringes/min', 'drift is 3 fringes/min, expected below 0.5 fringes/min'],
    ['expect drift < 0.01 fringes/s', 'drift is 0.05 fringes/s, expected below 0.01 fringes/s'],
    ['expect P1.drift < 0.01 Hz', 'P1.drift is 3 fringes/min, expected below 0.01 Hz'],
  ])('%s', (goal, words) => expect(said(goal, DRIFT)).toEqual([`Not met: ${words}.`]));
  it('and so are its units', () => {
    expect(said('expect drift < 5', DRIFT)[0]).toContain('Write fringes/min or fringes/s, for instance “5 fringes/min”.');
    expect(said('expect drift < 5 mm', DRIFT)[0]).toContain('This should be a number of fringes in a time');
  });
});

describe('digits', () => {
  it('are as many as tell a result from its limit', () => {
    expect(said('expect mismatch <= 29 mm', { object: '1200.00001 mm' })).toEqual(['Not met: mismatch is 29.00001 mm, expected at most 29 mm.']);
    expect(said('expect mismatch < 29 mm', { object: '1200 mm' })).toEqual(['Not met: mismatch is 29 mm, expected below 29 mm.']);
  });
  it('of a formula without a unit are those that are written', () => {
    for (const line of ['mirror M1 at (0.1 + 0.2, 3 mm)', 'spreader R1 on S1 -> P1 by 0.1 + 0.2']) expect(said(line).join('\n'), line).toContain('“(0.1 + 0.2)” has none. Write mm, cm, m, µm, nm or in, for instance “(0.1 + 0.2) mm”');
  });
});
