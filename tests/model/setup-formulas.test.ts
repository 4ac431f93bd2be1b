/** Facts of a setup that are formulas are looked at, whether a result asks for them or not. */
import { expect, test } from 'vitest';
import { findings, look, serious } from '../checks/library.ts';

const found = (...lines: string[]): string[] => findings(look(`setup "Whelk" {\n${lines.map(l => `  ${l}\n`).join('')}}\n`).findings.filter(serious));

test('a name that nothing has, a unit of another kind, a ring', () => {
  expect(found('exposure: foo')).toEqual(['2 unknown-name']);
  expect(found('let gap = 30 mm', 'exposure: 2 * gap')).toEqual(['3 wrong-unit']);
  expect(found('let strip = 10 s', 'exposure: 2 * strip', 'settle: 3 * strip')).toEqual([]);
  expect(found('let strip = 10 s', 'exposure: strip - 20 s')).toEqual(['3 impossible-value']);
  expect(found('mirror M1 at (0, 0) mm', 'let up = 120 mm', 'beam height: up + foo').filter(f => f !== '2 unused-thing')).toEqual(['4 unknown-name']);
});
