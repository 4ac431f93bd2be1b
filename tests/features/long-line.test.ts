/** At a line that is too long to be read nothing is offered: what looks for a word in it would take a time that grows with its square. */
import { expect, test } from 'vitest';
import { MAX_LINE } from '../../grammar/parse-line.ts';
import { analyse } from '../../server/analysis.ts';
import { cursorAt } from '../../server/features/completion/cursor.ts';

const at = (text: string): string | undefined => cursorAt(analyse('file:///saltmarsh/long.plate', text), 0, text.length)?.typed;

test('a line of the greatest length has a word at its end, a longer one has none', () => {
  expect(at(`${' '.repeat(MAX_LINE - 5)}whelk`)).toBe('whelk');
  expect(at(`${' '.repeat(MAX_LINE - 4)}whelk`)).toBeUndefined();
  expect(at(`${'m'.repeat(1_900_000)}(`)).toBeUndefined();
});
