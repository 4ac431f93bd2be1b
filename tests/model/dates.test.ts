/** Dates of shots, of processing and of facts are looked at. Gregorian calendar, ISO 8601. */
import { expect, test } from 'vitest';
import { findings, look, serious } from '../checks/library.ts';

const found = (...lines: string[]): string[] => findings(look(`setup "Whelk" {\n${lines.map(l => `  ${l}\n`).join('')}}\n`).findings.filter(serious));

test('a day that is in no calendar, and what is no date', () => {
  expect(found('shot 1 on 2026-02-11 {', '  exposure: 20 s', '}', 'process on 2028-02-29 {', '  develop: 2 min', '}')).toEqual([]);
  expect(found('shot 1 on 2026-02-30 {', '  exposure: 20 s', '}')).toEqual(['2 no-such-date']);
  expect(found('process on 2027-02-29 {', '  develop: 2 min', '}')).toEqual(['2 no-such-date']);
  // Day, month and year with strokes are a quotient of three numbers.
  expect(found('shot 1 on 11/02/2026 {', '  exposure: 20 s', '}')).toEqual(['2 wrong-value']);
  expect(found('date: 2026-13-01')).toEqual(['2 impossible-value']);
});
