/** The report names the revival that lies nearest to a mismatch, with its band, and that more follow. */
import { expect, test } from 'vitest';
import { reportOf } from '../../server/features/report/report.ts';
import { read, setup } from '../results/read.ts';

const row = (reference: number, tube = '350 mm ± 2 mm'): { readonly text: string; readonly remark: string } | undefined => {
  const r = read(setup('laser red {', 'wavelength: 632.8 nm', `tube length: ${tube}`, '}', 'splitter S1', 'object whelk', 'plate P1', 'beam raw from red', '-> S1: 350 mm', 'beam reference from S1 through', `-> P1: ${reference} mm`, 'beam object from S1 reflected', '-> whelk: 1500 mm', '-> P1: 300 mm'));
  return reportOf(r.snapshot, r.results).light.flatMap(p => p.rows).find(x => x.label === 'fringes come back');
};

test('near once the revival distance', () => {
  // The object is 1800 − 1110 = 690 mm longer; twice the tube is 700 mm, ± 2 · 2 · 2/√3 = 4.6 mm: 10 ± 5 mm short of it.
  const one = row(1110)!;
  expect(one.text).toBe('10 ± 5 mm');
  expect(one.remark).toBe('is what the mismatch is below the revival distance of red, where its modes are in step again: an object beam longer by that much records as matched paths do, and so does every 700 ± 5 mm further on');
});

test('near twice, and where the reference is the longer', () => {
  // 1800 − 3210 = −1410 mm: 10 mm beyond −1400 mm, whose band is twice as wide, 9.2 mm.
  const two = row(3210)!;
  expect(two.text).toBe('10 ± 9 mm');
  expect(two.remark).toContain('above 2 times the revival distance of red');
  expect(two.remark).toContain('every 700 ± 5 mm further on');
});

test('nothing where matched paths are nearest', () => { expect(row(1700)).toBeUndefined(); });
