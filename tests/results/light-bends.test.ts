/** Light that is to turn where nothing turns it, and mirrors that are written to face elsewhere. Angles and distances by hand. */
import { expect, test } from 'vitest';
import { read, setup } from './read.ts';

const found = (code: string, ...lines: string[]): { line: number; data: Readonly<Record<string, unknown>> }[] =>
  read(setup(...lines)).snapshot.findings.filter(f => f.code === code).map(f => ({ line: f.at.line + 1, data: f.data }));
const degrees = (rad: unknown): number => (Number(rad) * 180) / Math.PI;

test('a shutter turns no light', () => {
  const at = (y: number): ReturnType<typeof found> => found('light-bends', 'laser red at (0, 0) mm', 'shutter gate at (300, 0) mm', `beam stop B1 at (600, ${y}) mm`, 'beam raw from red', '-> gate', '-> B1');
  const [bend] = at(300);
  // 45° to the left; the line from (0, 0) to (600, 300) passes (300, 0) at 300 · 300 / √(600² + 300²) = 134.16 mm.
  expect(bend!.line).toBe(7);
  expect(degrees(bend!.data['angle'])).toBeCloseTo(45, 6);
  expect(Number(bend!.data['beside']) * 1000).toBeCloseTo(134.164, 2);
  // 5.2 mm in 300 mm are 0.99°, 5.3 mm are 1.01°.
  expect(at(5.2)).toEqual([]);
  expect(at(5.3)).toHaveLength(1);
  // 1.3° in 60 mm are 1.4 mm: nobody places a lens better.
  expect(found('light-bends', 'laser red at (0, 0) mm', 'spreader R1 at (60, 0) mm', 'beam stop B1 at (600, 12) mm', 'beam raw from red', '-> R1', '-> B1')).toEqual([]);
});

test('as unsure as the places are', () => {
  expect(found('light-bends', 'laser red at (0, 0) mm', 'shutter gate at (300, 0) mm', 'beam stop B1 at (600, 10) mm ± 10 mm', 'beam raw from red', '-> gate', '-> B1')).toEqual([]);
});

test('a splitter turns what it reflects, and not what goes through', () => {
  const port = (p: string, turning = ' turning left'): number => found('light-bends', 'laser red at (0, 0) mm heading 0°', 'splitter S1 beyond red by 300 mm', `mirror M1 beyond S1 by 200 mm${turning}`, 'beam stop B1 beyond M1 by 100 mm turning left', 'beam raw from red', '-> S1', `beam on-1 from S1 ${p}`, '-> M1', '-> B1').length;
  expect([port('reflected'), port('through'), port('through', '')]).toEqual([0, 1, 0]);
});

test('light that comes back through the same lens does not bend in silence', () => {
  expect(found('light-bends', 'laser red at (0, 0) mm', 'lens L1 at (300, 0) mm', 'beam stop B1 at (100, 0) mm', 'beam raw from red', '-> L1', '-> B1')).toHaveLength(1);
});

test('a plate in a single beam is left alone: the light that goes on behind it is wide', () => {
  expect(found('light-bends', 'laser red at (0, 0) mm', 'plate P1 at (300, 0) mm', 'object cup at (310, 30) mm', 'beam all from red', '-> P1 through', '-> cup', '-> P1')).toEqual([]);
});

test('a mirror faces half-way between where its light comes from and where it goes', () => {
  // From the left and away to +y: (−1, 1) / √2 lies at 135°.
  const faces = (how: string): ReturnType<typeof found> => found('mirror-turned', 'laser red at (0, 0) mm', `mirror M1 at (500, 0) mm ${how}`, 'beam stop B1 at (500, 400) mm', 'beam raw from red', '-> M1', '-> B1');
  expect(faces('heading 135°')).toEqual([]);
  expect(faces('heading 135.9°')).toEqual([]);
  expect(faces('heading 130° ± 5°')).toEqual([]);
  expect(faces('facing beam')).toEqual([]);
  const [turned] = faces('heading 90°');
  expect([turned!.line, Math.round(degrees(turned!.data['angle'])), Math.round(degrees(turned!.data['heading']))]).toEqual([3, 45, 135]);
  expect(faces('facing B1')).toHaveLength(1);
});

test('a plate that faces its beam may be tipped as well', () => {
  // Level light on a plate that is tipped to 5° arrives at 5°.
  const angle = (how: string): number => degrees(read(setup('laser red at (0, 0) mm', `plate P1 at (500, 0) mm facing beam${how}`, 'beam all from red', '-> P1', 'expect P1.all.angle < 10°')).results.goals[0]!.value);
  expect(angle('')).toBeCloseTo(0, 6);
  expect(angle(' tilted 5°')).toBeCloseTo(5, 6);
});
