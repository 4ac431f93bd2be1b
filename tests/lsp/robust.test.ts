import { afterEach, describe, expect, it } from 'vitest';
import { whelk } from '../features/source.ts';
import { startEditor, type Editor, type Page } from './editor.ts';

let editor: Editor;
const open = async (text: string): Promise<Page> => (editor = await startEditor()).open(text);
afterEach(() => editor.close());

const METHODS = ['hover', 'definition', 'documentSymbol', 'formatting', 'codeAction', 'diagnostic', 'references', 'documentHighlight', 'prepareRename', 'rename', 'documentLink', 'foldingRange', 'semanticTokens/full', 'semanticTokens/full/delta', 'semanticTokens/range', 'inlayHint',
  'signatureHelp', 'rangeFormatting', 'onTypeFormatting', 'selectionRange', 'linkedEditingRange', 'codeLens', 'prepareCallHierarchy'];
const BROKEN: unknown[] = [undefined, null, {}, [], 7, 'x', { textDocument: null }, { textDocument: {} }, { textDocument: { uri: 7 } }, { textDocument: { uri: '%zz:%' } }, { textDocument: { uri: 'file:///saltmarsh/whelk.plate' }, position: 'here', range: 3, context: null }];

describe('what no client should send', () => {
  it('in requests is answered, and the server lives on', async () => {
    const page = await open(whelk);
    for (const method of METHODS) for (const params of BROKEN) await editor.connection.sendRequest(`textDocument/${method}`, params).catch((e: unknown) => e);
    for (const method of ['platewright/summary', 'inlayHint/resolve']) for (const params of BROKEN) await editor.connection.sendRequest(method, params).catch((e: unknown) => e);
    expect(await page.codes()).toEqual(['arms-mismatched']);
  });

  it('in notifications does no harm', async () => {
    const page = await open(whelk);
    for (const method of ['textDocument/didOpen', 'textDocument/didClose', 'textDocument/didSave', 'workspace/didChangeWatchedFiles', 'workspace/didChangeWorkspaceFolders', 'workspace/didChangeConfiguration', '$/cancelRequest', 'unheard/of']) {
      for (const params of BROKEN.filter(p => method !== 'textDocument/didClose' || !JSON.stringify(p ?? null).includes('whelk'))) await editor.connection.sendNotification(method, params);
    }
    expect(await page.codes()).toEqual(['arms-mismatched']);
  });

  it('in changes does no harm to other pages, and a whole text mends the page', async () => {
    const page = await open(whelk);
    const other = await editor.open(whelk, 'file:///saltmarsh/other.plate');
    const changes: unknown[] = [[{}], [{ range: null, text: 'x' }], [{ range: { start: { line: -4, character: -4 }, end: { line: -1, character: 1e9 } }, text: '' }], null, 'x', [null]];
    for (const contentChanges of changes) await editor.connection.sendNotification('textDocument/didChange', { textDocument: { uri: page.uri, version: 2 }, contentChanges });
    await editor.connection.sendNotification('textDocument/didChange', { textDocument: { uri: 'file:///unknown.plate', version: 2 }, contentChanges: [{ text: '' }] });
    expect(await other.codes()).toEqual(['arms-mismatched']);
    await editor.connection.sendNotification('textDocument/didChange', { textDocument: { uri: page.uri, version: 3 }, contentChanges: [{ text: whelk }] });
    expect(await page.codes()).toEqual(['arms-mismatched']);
  });

  it('as places far outside of the text find nothing', async () => {
    const page = await open(whelk);
    for (const position of [{ line: 1e9, character: 0 }, { line: -1, character: -1 }, { line: 3, character: 1e9 }]) {
      expect(await page.hover(position)).toBe('');
      expect(await page.ask('textDocument/definition', { position })).toBeNull();
    }
  });
});

describe('texts', () => {
  it('of 5 MB are read as far as the limit, with one finding that says so', async () => {
    const rows = '  mirror M\n'.repeat(450_000);
    const page = await open(`setup "a" {\n${rows}}\n`);
    expect(page.text.length).toBeGreaterThan(4_900_000);
    const codes = await page.codes();
    expect(codes.filter(c => c === 'file-too-large')).toHaveLength(1);
    await page.type('setup "a"', 'setup "b"');
    expect((await page.codes()).filter(c => c === 'file-too-large')).toHaveLength(1);
    expect(await page.ask('textDocument/formatting', { options: { tabSize: 2, insertSpaces: true } })).toEqual([]);
  });

  it('of one line of 5 MB', async () => {
    const page = await open(`setup "${'a'.repeat(5_000_000)}" {\n}\n`);
    expect(await page.codes()).not.toEqual([]);
    expect(await page.ask('textDocument/documentSymbol')).toBeInstanceOf(Array);
  });

  it('that are empty', async () => {
    const page = await open('');
    expect(await page.codes()).toEqual([]);
    expect(await page.ask('textDocument/documentSymbol')).toEqual([]);
    expect(await page.hover({ line: 0, character: 0 })).toBe('');
    expect(await page.ask('textDocument/formatting', { options: { tabSize: 2, insertSpaces: true } })).toEqual([]);
  });

  it('that are opened again begin afresh', async () => {
    const page = await open(whelk);
    await page.type('468 mm', '384 mm');
    expect(await page.codes()).toEqual([]);
    await page.close();
    expect(await (await editor.open(whelk)).codes()).toEqual(['arms-mismatched']);
  });
});
