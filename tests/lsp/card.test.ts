/** The card for the bench, as an editor asks for it. */
import { afterEach, expect, it } from 'vitest';
import { whelk } from '../features/source.ts';
import { startEditor, type Editor } from './editor.ts';

let editor: Editor;
afterEach(() => editor.close());
const ask = async (text: string, more: object): Promise<{ setup: string; html: string } | null> => (await (editor = await startEditor()).open(text)).ask('platewright/card', more);
const two = whelk + whelk.replace('"Whelk shell"', '"Cockle"');

it('is a whole page of HTML with a picture', async () => {
  const card = await ask(whelk, { line: 3 });
  expect(card?.setup).toBe('Whelk shell');
  expect(card?.html).toMatch(/^<!doctype html>[^]*<h1>Whelk shell<\/h1>[^]*<svg [^]*whelk\.plate[^]*<\/html>\n$/);
});
it('is that of the setup with the cursor', async () => { expect((await ask(two, { line: whelk.split('\n').length + 2 }))?.setup).toBe('Cockle'); });
it('is for A4, or for the paper that is asked for', async () => {
  expect((await ask(whelk, { line: 0 }))?.html).toContain('size: A4;');
  editor.close();
  expect((await ask(whelk, { line: 0, paper: 'letter' }))?.html).toContain('size: letter;');
});
it('of a page without a setup there is none', async () => { expect(await ask('// only a note\n', { line: 0 })).toBeNull(); });
it('takes what is no line for no line', async () => { expect((await ask(whelk, { line: 'x', paper: 7 }))?.setup).toBe('Whelk shell'); });
