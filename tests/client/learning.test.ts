/** What is said of values that shots teach, and when they may still be written. */
import { expect, test } from 'vitest';
import { offerWords, stale } from '../../client/evening/learning.ts';
import type { Update } from '../../server/lsp/protocol.ts';

const update = (line: number, text: string): Update => ({
  uri: 'file:///lab.plate', range: { start: { line, character: 4 }, end: { line, character: 9 } }, newText: '41 µJ/cm²', line: text, words: 'lab.fine: sensitivity: 41 µJ/cm²', detail: '3 shots; there stands 40 µJ/cm²',
});

test('nothing is offered where there is nothing, and nothing is written in silence', () => {
  expect(offerWords([])).toBeUndefined();
  expect(offerWords([update(2, 'a')])).toBe('One value could be written: lab.fine: sensitivity: 41 µJ/cm² (3 shots; there stands 40 µJ/cm²). Nothing is written before you have looked through it.');
  expect(offerWords([update(2, 'a'), update(3, 'b')])).toMatch(/^2 values could be written\. Nothing is written before/);
});

test('only lines that are as they were are written into', () => {
  const two = [update(2, 'a'), update(3, 'b')];
  expect(stale(two, (_, line) => ({ 2: 'a', 3: 'b' })[line])).toBeUndefined();
  expect(stale(two, (_, line) => ({ 2: 'a', 3: 'changed' })[line])).toMatch(/^The page with lab\.fine was changed in the meantime, so nothing was written\./);
  expect(stale(two, () => undefined)).toContain('nothing was written');
});
