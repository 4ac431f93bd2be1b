/** What tasks print: the same as the command line, of pages as they are in the editor. */
import { pathToFileURL } from 'node:url';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { CheckParams, Printed } from '../../server/lsp/protocol.ts';
import { folder, matched } from '../cli/folder.ts';
import { inside } from '../cli/inside.ts';
import { startEditor, type Editor } from './editor.ts';

const long = matched().replace('1171 mm', '1571 mm').replace('5 m\n', '300 mm\n');
const here = folder({ 'fine.plate': matched(), 'sub/long way.plate': long, 'sub/broken.plate': matched('  what is this ((\n') });
const uri = (name: string): string => pathToFileURL(join(here, name)).href;
async function inEditor<T>(of: (editor: Editor) => Promise<T>, open = pathToFileURL(here).href): Promise<T> {
  const editor = await startEditor({ folder: open });
  try { return await of(editor); } finally { editor.close(); }
}
const check = (params: CheckParams): Promise<Printed> => inEditor(e => e.connection.sendRequest('platewright/check', params));

test('all pages are printed as on the command line', async () => {
  const { out, code } = await inside(['check', '.'], { cwd: here });
  expect(code).toBe(1);
  expect(await check({})).toEqual({ text: out, code });
});
test('one page is, and a warning fails a strict task', async () => {
  const { out } = await inside(['check', 'sub/long way.plate'], { cwd: here });
  expect(await check({ pages: [uri('sub/long way.plate')] })).toEqual({ text: out, code: 0 });
  expect((await check({ pages: [uri('sub/long way.plate')], strict: true })).code).toBe(1);
});
test('a page counts as it is in the editor', async () => {
  const printed = await inEditor(async e => {
    await e.open(matched(), uri('sub/long way.plate'));
    return e.connection.sendRequest<Printed>('platewright/check', { pages: [uri('sub/long way.plate')] });
  });
  expect(printed).toEqual({ text: '1 file: nothing found.\n', code: 0 });
});
test('a page that is gone is told, and the rest is checked', async () => {
  expect(await check({ pages: [uri('gone.plate'), uri('fine.plate')] })).toEqual({ text: 'gone.plate cannot be read\n1 file: nothing found.\n', code: 3 });
});
test('without a page in the open folders it says so', async () => {
  expect(await inEditor(e => e.connection.sendRequest('platewright/check', {}), pathToFileURL(folder()).href)).toEqual({ text: 'There is no .plate file in the open folders.\n', code: 0 });
});
test('outside of open folders a page has its whole path', async () => {
  const { text } = await inEditor(e => e.connection.sendRequest<Printed>('platewright/check', { pages: [uri('sub/long way.plate')] }), pathToFileURL(join(here, 'other')).href);
  expect(text).toMatch(new RegExp(`^${join(here, 'sub/long way.plate')}:\\d+:\\d+: warning: `));
});
