import { afterEach, expect, it } from 'vitest';
import type { CallHierarchyIncomingCall, CallHierarchyItem, CallHierarchyOutgoingCall } from 'vscode-languageserver/node';
import { whelk } from '../features/source.ts';
import { startEditor, type Editor } from './editor.ts';

let editor: Editor;
afterEach(() => editor.close());

it('what light reaches a thing, and to what it goes on', async () => {
  editor = await startEditor();
  const page = await editor.open(`\ufeff${whelk}`);
  const [item] = await page.ask<CallHierarchyItem[]>('textDocument/prepareCallHierarchy', { position: page.range('S1').start });
  expect(item).toMatchObject({ name: 'S1', detail: 'splitter', selectionRange: page.range('S1'), uri: page.uri });
  const from = await editor.connection.sendRequest<CallHierarchyIncomingCall[]>('callHierarchy/incomingCalls', { item });
  expect(from).toEqual([{ from: expect.objectContaining({ name: 'red', detail: 'laser' }) as unknown, fromRanges: [page.range('S1', page.text.indexOf('-> S1'))] }]);
  const to = await editor.connection.sendRequest<CallHierarchyOutgoingCall[]>('callHierarchy/outgoingCalls', { item });
  expect(to.map(c => c.to.name)).toEqual(['M1', 'M2']);
  // A page that has moved on has nothing at the old place.
  await page.type('  splitter S1', '  // S1');
  expect(await editor.connection.sendRequest('callHierarchy/incomingCalls', { item })).toBeNull();
});
it('where no name stands there is none', async () => {
  editor = await startEditor();
  const page = await editor.open(whelk);
  expect(await page.ask('textDocument/prepareCallHierarchy', { position: page.range('transmission').start })).toBeNull();
});
