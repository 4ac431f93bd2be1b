/** What powers that were read along the beams tell of the losses, and what they leave open. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { alone } from '../../../server/analysis.ts';
import { lossesOf, type Losses } from '../../../server/features/readings/losses.ts';
import { applyEdits } from '../../../server/model/edits.ts';
import { but, whelk } from '../source.ts';
import { page } from './source.ts';

const measured = (readings: readonly string[], text = whelk): string => text.replace(/\}\s*$/, `${readings.map(m => `  measured ${m}\n`).join('')}}\n`);
const of = (readings: readonly string[], text = whelk): Losses => { const s = page(measured(readings, text)); return lossesOf(s, s.results[0]!, alone); };
/** The page with all of it written in. */
const written = (readings: readonly string[], text = whelk): string => { const t = measured(readings, text); const s = page(t); return applyEdits(t, lossesOf(s, s.results[0]!, alone).losses.flatMap(l => l.edits)); };

const RAW = 'raw at S1: 10 mW ± 1%';
const BOTH = [RAW, 'reference at M1: 1.9 mW ± 1%', 'object at M2: 7.6 mW ± 1%'];

describe('losses', () => {
  it('of a mirror are what is missing behind it', () => {
    // 1 − 6.84/7.6 = 0.1; each reading ±1 % within, 0.577 % standard: 0.9 · √2 · 0.577 % = 0.735 points, twice that is 1.5
    const { losses, open } = of(['object at M2: 7.6 mW ± 1%', 'object at M3: 6.84 mW ± 1%']);
    expect(losses).toMatchObject([{ words: 'M2 loses 10.0 % ± 1.5 points', detail: 'loss on the page: not written' }]);
    expect(losses[0]!.edits.map(e => e.newText)).toEqual([' {\n    loss: 10.0% ± 0.7 points std\n  }']);
    expect(open.join(' ')).toMatch(/Nothing was read before S1 on the way of “object at M2”: read the bare beam/);
  });
  it('of a splitter take both of its sides, which share the reading before it', () => {
    // 7.6 + 1.9 of 10: 5 % are lost, 7.6/9.5 = 80 % of the rest reflected. u of the loss: 0.577 % · √(0.95² + 0.76² + 0.19²) = 0.711 points, twice 1.4; of the share 0.8 · 0.2 · √2 · 0.577 % = 0.131, twice 0.26
    const { losses, open } = of(BOTH);
    expect(losses.map(l => l.words)).toEqual(['S1 loses 5.0 % ± 1.4 points and reflects 80.00 % ± 0.26 points of the rest']);
    expect(open).toEqual([]);
    expect(written(BOTH)).toContain('  splitter S1 {\n    reflects: 80.00% ± 0.13 points std\n    loss: 5.0% ± 0.7 points std\n  }\n');
  });
  it('of a mirror in both beams are fitted to all readings', () => {
    // Straight: 8 → 7.2 (0.9) and 2 → 1.84 (0.92), each pair as sure as the other: ln 0.9 and ln 0.92 in the middle, √(0.9 · 0.92) = 0.90995, so 9.0 % are lost
    const text = `setup "Two" {\n  laser red\n  splitter S1\n  mirror M1\n  mirror M2\n  mirror M3\n  object shell\n  plate P1\n  beam raw from red\n    -> S1: 300 mm\n  beam object from S1 reflected\n    -> M1: 300 mm\n    -> M2: 300 mm\n    -> shell: 300 mm\n    -> P1: 300 mm\n  beam reference from S1 through\n    -> M1: 300 mm\n    -> M3: 300 mm\n    -> P1: 600 mm\n}\n`;
    const { losses } = of(['object at M1: 8 mW ± 1%', 'object at M2: 7.2 mW ± 1%', 'reference at M1: 2 mW ± 1%', 'reference at M3: 1.84 mW ± 1%'], text);
    // √(0.9 · 0.92) · √(2/2) · 0.577 % = 0.525 points, twice that is 1.1
    expect(losses.filter(l => l.words.startsWith('M1')).map(l => l.words)).toEqual(['M1 loses 9.0 % ± 1.1 points']);
  });
  it('are written over what the thing itself says, and nowhere else', () => {
    const text = but('  mirror M2\n', '  mirror M2 {\n    loss: 3% // guessed\n  }\n');
    expect(written(['object at M2: 7.6 mW ± 1%', 'object at M3: 6.84 mW ± 1%'], text)).toBe(measured(['object at M2: 7.6 mW ± 1%', 'object at M3: 6.84 mW ± 1%'], text).replace('loss: 3% //', 'loss: 10.0% ± 0.7 points std //'));
  });
  it('leave a share that is asked for to whoever asks', () => {
    const text = but('  splitter S1\n', '  splitter S1 {\n    reflects: ?\n  }\n');
    expect(written(BOTH, text)).toContain('    reflects: ?\n    loss: 5.0% ± 0.7 points std\n');
  });
  it('without a ± have none, and that is said', () => {
    const { losses, open } = of(['object at M2: 7.6 mW', 'object at M3: 6.84 mW']);
    expect(losses.map(l => l.words)).toEqual(['M2 loses 10 %']);
    expect(open.join(' ')).toMatch(/None of these readings says how sure it is/);
  });
  it('by two meters are as unsure as their calibrations', () => {
    // Each calibration ±10 % within, 5.77 % standard, besides 0.577 % of each reading: 0.9 · √(2 · 5.77² + 2 · 0.577²) % = 7.385 points, twice that is 15
    const text = but('  plate P1\n', '  plate P1\n  meter a {\n    calibration: 1 ± 10%\n  }\n  meter b {\n    calibration: 1 ± 10%\n  }\n');
    expect(of(['object at M2: 7.6 mW ± 1% by a', 'object at M3: 6.84 mW ± 1% by b'], text).losses.map(l => l.words)).toEqual(['M2 loses 10 % ± 15 points']);
    expect(of(['object at M2: 7.6 mW ± 1% by a', 'object at M3: 6.84 mW ± 1% by a'], text).losses.map(l => l.words)).toEqual(['M2 loses 10.0 % ± 1.5 points']);
  });
});

describe('what cannot be told apart is said to be', () => {
  it('one reading tells no loss', () => { expect(of([RAW])).toEqual({ losses: [], open: [expect.stringMatching(/^One power alone, “raw at S1”, tells no loss/)] }); });
  it('no reading tells no loss', () => { expect(of([])).toEqual({ losses: [], open: [expect.stringMatching(/^No power was read/)] }); });
  it('two mirrors between two readings are told together', () => {
    // 1 − 6/8 = 25 %; 0.75 · √2 · 0.577 % = 0.612 points, twice that is 1.2
    expect(of(['object at M2: 8 mW ± 1%', 'object at whelk: 6 mW ± 1%'])).toMatchObject({ losses: [], open: [expect.stringMatching(/Nothing was read before S1/), 'Between “object at M2” and “object at whelk” M2 and M3 together lose 25.0 % ± 1.2 points. Which of them loses how much these readings cannot tell: read the power between them.'] });
  });
  it('a splitter by one side alone', () => { expect(of([RAW, 'object at M2: 7.6 mW ± 1%'])).toMatchObject({ losses: [], open: [expect.stringMatching(/^S1 sends on 76\.0 % ± 1\.2 points reflected by these readings; .* read the power of the light that goes through as well\.$/)] }); });
});

describe('readings that contradict each other', () => {
  it('more light behind a mirror than before it', () => {
    const { losses, open } = of(['object at M2: 7.6 mW ± 1%', 'object at M3: 7.8 mW ± 1%']);
    expect(losses).toEqual([]);
    // 7.8/7.6
    expect(open[0]).toMatch(/^Behind M2 more was read than before it: 1\.03 times as much\. Nothing gives light/);
  });
  it('more light behind a splitter than before it', () => { expect(of([RAW, 'reference at M1: 4 mW ± 1%', 'object at M2: 7.6 mW ± 1%']).open[0]).toMatch(/^Behind S1 more was read than before it: 1\.16 times/); });
});

it('the manual says what its page gives', () => {
  const manual = readFileSync('grammar/manual.md', 'utf8');
  const s = page(/```plate evening\.plate\n([^]*?)```/.exec(manual)![1]!);
  const [loss, ...more] = lossesOf(s, s.results[0]!, alone).losses;
  expect(more).toEqual([]);
  expect(manual).toContain(`here ${loss!.words}.`);
});
