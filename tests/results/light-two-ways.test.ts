/** Object beams that were metered one by one and all together: the surer way counts, and a finding says where they differ. Expected values by hand; all in µW/cm². */
import { expect, test } from 'vitest';
import { metered, METER, MICRO, NEEDLE } from './light-library.ts';
import { expectNear, type Read } from './read.ts';

const BEAMS = ['splitter S2', 'beam key from S1 reflected', '-> S2: 100 mm', 'beam fill from S2 reflected', '-> whelk: 1100 mm', '-> P1: 300 mm', 'beam rim from S2 through', '-> whelk: 1100 mm', '-> P1: 300 mm'];
/** Three object beams: `side` of the library, `fill` and `rim`. */
const two = (readings: readonly string[], things: readonly string[] = METER): Read => metered([...BEAMS, ...readings], { things: [...things, ...NEEDLE] }, 'side');
const told = (r: Read, code: string): string[] => r.snapshot.findings.filter(f => f.code === code).map(f => f.message);
const micro = (r: Read, name: string): number => r.value(name) / MICRO;
const REFERENCE = 'measured reference at P1: 2 µW/cm² by m';
const one = (fill: string, rim: string, side = '0.1 µW/cm² ± 5% by m'): string[] => [`measured fill at P1: ${fill}`, `measured rim at P1: ${rim}`, `measured side at P1: ${side}`];

test('the surer of the two ways counts', () => {
  // u of the sum 0.5: 5 % / √3 of 0.3, 0.1, 0.1: 0.00957. Of 0.52 ± 2 %: 0.0060, of 0.52 ± 10 %: 0.030.
  const sure = two([REFERENCE, ...one('0.3 µW/cm² ± 5% by m', '0.1 µW/cm² ± 5% by m'), 'measured object at P1: 0.52 µW/cm² ± 2% by m']);
  expectNear(micro(sure, 'P1.object.light'), 0.52, 1e-12);
  expectNear(sure.u('P1.object.light') / MICRO, (0.02 * 0.52) / Math.sqrt(3), 1e-12);
  expectNear(sure.value('beam ratio'), 2 / 0.52, 1e-9);
  expectNear(micro(sure, 'P1.object.light.by beams'), 0.5, 1e-12);
  const unsure = two([REFERENCE, ...one('0.3 µW/cm² ± 5% by m', '0.1 µW/cm² ± 5% by m'), 'measured object at P1: 0.52 µW/cm² ± 10% by m']);
  expectNear(micro(unsure, 'P1.object.light'), 0.5, 1e-12);
  expectNear(unsure.u('P1.object.light') / MICRO, (0.05 * Math.hypot(0.3, 0.1, 0.1)) / Math.sqrt(3), 1e-12);
  expectNear(unsure.value('beam ratio'), 4, 1e-9);
  expectNear(micro(unsure, 'P1.fill.light'), 0.3, 1e-12);
  expect([sure, unsure].flatMap(r => told(r, 'readings-contradict'))).toEqual([]);
});
test('one that does not say how sure it is counts only where the other does not either', () => {
  expectNear(micro(two([...one('0.3 µW/cm² by m', '0.1 µW/cm² ± 5% by m'), 'measured object at P1: 0.52 µW/cm² ± 40% by m']), 'P1.object.light'), 0.52, 1e-12);
  expectNear(micro(two([...one('0.3 µW/cm² ± 5% by m', '0.1 µW/cm² ± 5% by m'), 'measured object at P1: 0.52 µW/cm² by m']), 'P1.object.light'), 0.5, 1e-12);
  expectNear(micro(two([...one('0.3 µW/cm² by m', '0.1 µW/cm² by m', '0.1 µW/cm² by m'), 'measured object at P1: 0.52 µW/cm² by m']), 'P1.object.light'), 0.52, 1e-12);
});
test('both ways differ by more than three standard uncertainties', () => {
  // 0.6 − 0.5 = 0.1; u = √(0.00957² + (0.02 · 0.6)²/3) = 0.0118, three of them 0.035.
  const r = two([...one('0.3 µW/cm² ± 5% by m', '0.1 µW/cm² ± 5% by m'), 'measured object at P1: 0.6 µW/cm² ± 2% by m']);
  expect(told(r, 'readings-contradict')).toEqual(['“object at P1” comes to 0.6 µW/cm², and “side at P1”, “fill at P1” and “rim at P1” add up to 0.5 µW/cm². The reading of all together is surer and counts meanwhile; read them once more, each beam with the others covered, date them, and write “moved” where something was moved between.']);
  const f = r.snapshot.findings.find(x => x.code === 'readings-contradict')!;
  expect([f.severity, f.subject]).toEqual(['note', 'object at P1']);
  expect(r.snapshot.findings.filter(x => x.at.line === f.at.line)).toHaveLength(1);
  // 0.53 lies 0.03 off: that may be.
  expect(told(two([...one('0.3 µW/cm² ± 5% by m', '0.1 µW/cm² ± 5% by m'), 'measured object at P1: 0.53 µW/cm² ± 2% by m']), 'readings-contradict')).toEqual([]);
});
test('what all readings of a meter share falls out of the difference', () => {
  const things = ['meter m {', '  head: 11.283791670955126 mm', '  calibration: 1 ± 30%', '  dark: 0 nW', '}'];
  expect(told(two([...one('0.3 µW/cm² ± 5% by m', '0.1 µW/cm² ± 5% by m'), 'measured object at P1: 0.6 µW/cm² ± 2% by m'], things), 'readings-contradict')).toHaveLength(1);
});
test('readings without ± are not held to be exact', () => {
  const of = (object: string): number => told(two([...one('0.3 µW/cm² by m', '0.1 µW/cm² by m', '0.1 µW/cm² by m'), `measured object at P1: ${object} by m`]), 'readings-contradict').length;
  expect(['0.51 µW/cm²', '0.49 µW/cm²', '0.6 µW/cm²', '0.4 µW/cm²'].map(of)).toEqual([0, 0, 1, 1]);
});
test('a part that is more than the whole contradicts it; one that is less is its own result', () => {
  const r = two([REFERENCE, 'measured fill at P1: 0.9 µW/cm² ± 5% by m', 'measured object at P1: 0.5 µW/cm² ± 2% by m']);
  expect(told(r, 'readings-contradict')).toEqual(['“fill at P1” comes to 0.9 µW/cm², and “object at P1”, of which that is a part, only 0.5 µW/cm². The reading of all together counts meanwhile; read them once more, each beam with the others covered, date them, and write “moved” where something was moved between.']);
  const less = two([REFERENCE, 'measured fill at P1: 0.3 µW/cm² ± 5% by m', 'measured object at P1: 0.5 µW/cm² ± 2% by m']);
  expect(told(less, 'readings-contradict')).toEqual([]);
  expectNear(micro(less, 'P1.fill.light'), 0.3, 1e-12);
  expectNear(micro(less, 'P1.object.light'), 0.5, 1e-12);
});
test('in divisions of one meter it is the same', () => {
  const r = two(['measured reference at P1: 40 by needle', ...one('6 ± 0.2 by needle', '2 ± 0.2 by needle', '2 ± 0.2 by needle'), 'measured object at P1: 12 ± 0.5 by needle']);
  // u of 10: 0.2 = √3 · 0.2 / √3; of 12: 0.289. The sum counts; 2 is more than 3 · 0.351.
  expectNear(r.value('beam ratio'), 4, 1e-12);
  expect(told(r, 'readings-contradict')[0]).toMatch(/^“object at P1” comes to 12, and “side at P1”, “fill at P1” and “rim at P1” add up to 10\. Those of the single beams are surer and count meanwhile; /);
});
test('readings that cannot be held against each other are named', () => {
  const r = two([REFERENCE, ...one('6 by needle', '2 by needle', '2 by needle'), 'measured object at P1: 0.5 µW/cm² by m']);
  expectNear(r.value('beam ratio'), 4, 1e-12);
  expect(told(r, 'meters-not-comparable').map(m => m.slice(0, 30))).toEqual(['“fill at P1” and “object at P1”', '“rim at P1” and “object at P1” ', '“side at P1” and “object at P1”'].map(m => m.slice(0, 30)));
  // The single readings make the ratio where the one of all together cannot: then each way has its use.
  const both = two(['measured reference at P1: 40 by needle', ...one('6 by needle', '2 by needle', '2 by needle'), 'measured object at P1: 0.5 µW/cm² by m']);
  expectNear(both.value('beam ratio'), 4, 1e-12);
  expectNear(micro(both, 'P1.object.light'), 0.5, 1e-12);
  expect(told(both, 'meters-not-comparable')).toEqual([]);
});
test('a variant keeps what counts, and what the readings make of its plan', () => {
  const r = two([REFERENCE, ...one('0.3 µW/cm² ± 5% by m', '0.1 µW/cm² ± 5% by m'), 'measured object at P1: 0.52 µW/cm² ± 2% by m', 'variant "other" {', '  S1.loss: 10%', '}']);
  expect(r.snapshot.findings.filter(f => f.severity === 'error')).toEqual([]);
  expectNear(micro(r, 'P1.object.light'), 0.52, 1e-12);
});
