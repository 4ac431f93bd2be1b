/** What is heard while the panel is dark: signs that nobody takes for one another. */
import { expect, test } from 'vitest';
import { LIT, tonesOf } from '../../client/plan/view/tones.ts';

const pitches = (tones: readonly { hz: number }[]): number[] => tones.map(t => t.hz);

test('a page in order rises, and being lit again falls', () => {
  const [first, second] = pitches(tonesOf(0)) as [number, number];
  expect(second).toBeGreaterThan(first);
  expect(pitches(LIT)).toEqual([second, first]);
});
test.each([[1, 1], [2, 2], [4, 4], [5, 4], [3000, 4]])('of %d errors %d low tones are heard', (errors, count) => {
  const tones = tonesOf(errors);
  expect(tones).toHaveLength(count);
  for (const { hz } of tones) expect(hz).toBeLessThan(Math.min(...pitches(tonesOf(0))) / 2);
});
test('what is not known is one tone, longer than any that counts', () => {
  expect(tonesOf('unknown')).toHaveLength(1);
  expect(tonesOf('unknown')[0]!.lasts).toBeGreaterThan(3 * tonesOf(1)[0]!.lasts);
});
test.each([0, 1, 2, 4, 'unknown'] as const)('tones of %s follow on each other with a rest between', order => {
  tonesOf(order).forEach((tone, i, all) => { if (i > 0) expect(tone.at).toBeGreaterThan(all[i - 1]!.at + all[i - 1]!.lasts); });
});
