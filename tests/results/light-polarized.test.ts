/** A reading through a polarizer that is more than the one without it. A sheet only takes light away. */
import { expect, test } from 'vitest';
import { metered, METER } from './light-library.ts';

const found = (readings: readonly string[], things: readonly string[] = METER): (readonly [string, string, string])[] =>
  metered(readings, { things, plate: ['reference angle: 30°'] }).snapshot.findings.filter(f => f.code === 'polarizer-adds-light').map(f => [f.severity, f.subject, f.message] as const);
const REST = '; a polarizer passes at most all of it. Hold the head in the same way, and read both again, one directly after the other';

test('is a finding at the reading: what, why, what to do', () => {
  const [one, ...more] = found(['measured object at P1: 0.4 µW/cm² ± 5% by m', 'measured object at P1 through polarizer: 0.6 µW/cm² ± 5% by m']);
  // 0.6 / 0.4 = 150 %; u = 1.5 · √2 · 5 % / √3 = 6 points.
  expect(one).toEqual(['warning', 'object at P1 through polarizer', `“object at P1 through polarizer” comes to 0.6 µW/cm², which is 150 % of the 0.4 µW/cm² without a polarizer in line 22${REST}.`]);
  expect(more).toEqual([]);
});
test('is a note where the readings leave it open, and nothing below', () => {
  // 105 % ± 8.6 points; 100 %; 95 %.
  const of = (through: string): string[] => found(['measured object at P1: 0.4 µW/cm² ± 10% by m', `measured object at P1 through polarizer: ${through} by m`]).map(([s]) => s);
  expect([of('0.42 µW/cm² ± 10%'), of('0.4 µW/cm² ± 10%'), of('0.38 µW/cm² ± 10%')]).toEqual([['note'], [], []]);
  // Without ± a per cent is rounding.
  const exact = (through: number): string[] => found(['measured object at P1: 400 by needle', `measured object at P1 through polarizer: ${through} by needle`], ['meter needle {', '  head: 8 mm', '}']).map(([s]) => s);
  expect([exact(402), exact(410), exact(400)]).toEqual([['note'], ['warning'], []]);
});
test('counts what the sheet loses', () => {
  // 0.35 / ((1 − 20 %) · 0.4) = 109 %.
  expect(found(['measured object at P1: 0.4 µW/cm² by m', 'measured object at P1 through sheet: 0.35 µW/cm² by m'], [...METER, 'polarizer sheet {', '  loss: 20%', '}']).map(([, , m]) => m))
    .toEqual([`“object at P1 through sheet” comes to 0.35 µW/cm², which, put right for the polarizer’s loss of 20 %, is 109 % of the 0.4 µW/cm² without a polarizer in line 25${REST}; then correct the loss.`]);
});
test('is found of the reference, and of readings that face the beam', () => {
  expect(found(['measured reference at P1 facing beam: 2 µW/cm² by m', 'measured reference at P1 through polarizer: 3 µW/cm² by m']).map(([s, , m]) => [s, m.slice(0, 96)]))
    // 2 cos 30° = 1.732
    .toEqual([['warning', '“reference at P1 through polarizer” comes to 3 µW/cm², which is 173 % of the 1.73 µW/cm² without']]);
});

// What is impossible makes no figure; what the readings leave open counts as all of the light, so that both ratios are one.
test('makes no ratio where the readings cannot both be right', () => {
  const of = (through: string): ReturnType<typeof metered> => metered(['measured reference at P1: 1.6 µW/cm² ± 10% by m', 'measured object at P1: 0.4 µW/cm² ± 10% by m', `measured object at P1 through polarizer: ${through} µW/cm² ± 10% by m`], { things: METER });
  const wrong = of('0.6');
  const why = 'more light was read through the polarizer than without it: read both again, one directly after the other';
  expect(['P1.object.polarized', 'P1.effective ratio'].map(n => wrong.cell(n).missing?.why)).toEqual([why, why]);
  expect(wrong.results.published.filter(c => /polarized|effective/.test(c.name) && !c.missing)).toEqual([]);
  const open = of('0.42');
  expect([open.value('P1.object.polarized'), open.value('P1.effective ratio'), open.value('P1.beam ratio')].map(v => Number(v.toFixed(9)))).toEqual([1, 4, 4]);
  // 4 / (0.3 / 0.4)
  expect(of('0.3').value('P1.effective ratio')).toBeCloseTo(16 / 3, 9);
});
