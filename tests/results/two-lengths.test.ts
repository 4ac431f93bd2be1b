/** A leg that is told in two ways: as written, and by the places of its ends. Distances by hand. */
import { expect, test } from 'vitest';
import { read } from './read.ts';

const found = (leg: string, ...readings: string[]): { line: number; one: unknown; other: unknown }[] =>
  read(`setup "Whelk" {\n  laser red at (0, 0) mm\n  mirror M1 at (600, 0) mm\n  beam stop B1 at (600, 400) mm\n  beam raw from red\n    -> M1${leg}\n    -> B1\n${readings.map(r => `  ${r}\n`).join('')}}\n`)
    .snapshot.findings.filter(f => f.code === 'two-lengths').map(f => ({ line: f.at.line + 1, one: f.data['one'], other: f.data['other'] }));

test('what is written is held against the places, whatever was read', () => {
  expect(found(': 640 mm')).toEqual([{ line: 6, one: 0.64, other: 0.6 }]);
  // Of the leg as written, not as it was read.
  expect(found(': 640 mm', 'measured red -> M1: 615 mm ± 1 mm')).toEqual([{ line: 6, one: 0.64, other: 0.6 }]);
  expect(found(': 600 mm', 'measured red -> M1: 615 mm ± 1 mm')).toEqual([]);
  expect(found('', 'measured red -> M1: 615 mm ± 1 mm')).toEqual([]);
});
