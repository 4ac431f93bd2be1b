/** Readings of light, wheels and drift that are written as formulas: a unit of the wrong kind is the same slip as in a literal. */
import { expect, test } from 'vitest';
import { metered, METER, MICRO } from './light-library.ts';
import { expectNear } from './read.ts';

type Told = readonly [string, Readonly<Record<string, unknown>>, number];
const told = (lines: readonly string[], splitter: readonly string[] = []): Told[] => metered(lines, { splitter, plate: ['reference angle: 30°'], things: METER }).snapshot.findings
  .filter(f => f.severity === 'error').map(f => [f.code, Object.fromEntries(Object.entries(f.data).filter(([key]) => key !== 'written')), f.at.line] as const);

test.each<[what: string, literal: string, formula: string]>([
  ['light', 'reference at P1: 6 mJ by m', 'reference at P1: (2 * 3) mJ by m'],
  ['light facing the beam', 'reference at P1 facing beam: 6 mm', 'reference at P1 facing beam: 2 * 3 mm'],
  ['light in a corner', 'reference at P1 upper left: 6 s by m', 'reference at P1 upper left: 2 * 3 s by m'],
  ['light of no known meter', 'reference at P1: 6 mJ', 'reference at P1: (2 * 3) mJ'],
  ['a dark reading', 'dark: 6 mm by m', 'dark: 2 * 3 mm by m'],
  ['a wheel', 'S1 wheel: 6 mm', 'S1 wheel: 2 * 3 mm'],
  ['a drift', 'drift at P1: 6 mm', 'drift at P1: 2 * 3 mm'],
  ['a drift without a unit', 'drift at P1: 6', 'drift at P1: 2 * 3'],
  ['a real image', 'real image at screen: 6 s', 'real image at screen: 2 * 3 s'],
  ['light below zero', 'reference at P1: -6 µW/cm² by m', 'reference at P1: 2 * -3 µW/cm² by m'],
])('%s', (_, literal, formula) => {
  const [a, b] = [literal, formula].map(l => told([`measured ${l}`]));
  expect(a).not.toEqual([]);
  expect(b).toEqual(a);
});

test('the value of a name is checked as well, and each reading by itself', () => {
  const found = told(['let six = 2 * 3 mJ', 'measured reference at P1: six', 'measured object at P1: six by m', 'measured dark: six by m']);
  expect(found.map(([code, data]) => [code, data['found'], data['unit']])).toEqual([['wrong-unit', 'an energy', ''], ['wrong-unit', 'an energy', 'mJ'], ['wrong-unit', 'an energy', 'mJ']]);
});
test('one that a newer one replaces is checked too, once', () => {
  expect(told(['measured reference at P1: 2 µW/cm² by m on 2026-02-18', 'measured reference at P1: 2 * 3 mJ by m on 2026-02-11', 'variant "more" {', '  S1.reflects: 90%', '}']).map(([code]) => code)).toEqual(['wrong-unit']);
});
test('of a name the value says whether a path or light was read', () => {
  const r = metered(['let glow = 0.5 µW/cm² * 4', 'let way = 3 * 500 mm', 'measured reference at P1: glow', 'measured object at P1: way'], { things: METER });
  expect(r.snapshot.findings.filter(f => f.severity === 'error')).toEqual([]);
  expectNear(r.value('P1.reference.light') / MICRO, 2, 1e-12);
  expectNear(r.mm('P1.object.length'), 1500, 1e-9);
});
test('a power divided by an area is light', () => {
  expectNear(metered(['measured reference at P1: 2 µW / 1 cm²'], { things: METER }).value('P1.reference.light') / MICRO, 2, 1e-12);
});
