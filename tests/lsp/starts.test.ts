/** Pages to begin with, as an editor asks for them: before any page is open. */
import { expect, test } from 'vitest';
import { STARTS } from '../../server/features/starts/starts.ts';
import { startEditor } from './editor.ts';

test('the list is that of the command line, texts and all', async () => {
  const editor = await startEditor();
  try {
    const answer = await editor.connection.sendRequest('platewright/starts', {});
    expect(answer).toEqual(STARTS.map(({ name, title, words, text }) => ({ name, title, words, text })));
  } finally {
    editor.close();
  }
});
