/** Which page a new setup begins with, and what it may be called. */
import { expect, test } from 'vitest';
import { freeName, namedIn, type Start } from '../../client/new-page.ts';

const start: Start = { name: 'transmission', title: 'Transmission, two beams', words: 'The usual master', text: 'setup "Whelk" {\n}\n' };

test('a page is named by its name, and by nothing else', () => {
  expect(namedIn('transmission', [start])).toBe(start);
  for (const said of [undefined, null, 'whelk', 'Transmission, two beams', 7, {}, ['transmission']]) expect(namedIn(said, [start])).toBeUndefined();
});

test('a page gets a name that nothing has', async () => {
  const taken = new Set(['transmission.plate', 'transmission-2.plate']);
  expect(await freeName(start, () => Promise.resolve(false))).toBe('transmission.plate');
  expect(await freeName(start, name => Promise.resolve(taken.has(name)))).toBe('transmission-3.plate');
});
