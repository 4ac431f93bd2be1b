import { afterEach, describe, expect, it } from 'vitest';
import type { LinkedEditingRanges, Position, Range, SelectionRange, SignatureHelp, TextEdit } from 'vscode-languageserver/node';
import { startEditor, type Editor, type Page, type Settings } from './editor.ts';

/** Behind a byte order mark, with carriage returns and emoji. */
const TEXT = '\ufeffsetup "a 😀" { // at (1\r\n  laser red // 😀\r\n  mirror   M1 at (350, 100) mm\r\n  beam raw from red\r\n    -> M1: min(1 m, 2 m)\r\n}\r\n';

let editor: Editor;
const open = async (text = TEXT, settings?: Settings): Promise<Page> => (editor = await startEditor(settings)).open(text);
afterEach(() => editor.close());

describe('forms', () => {
  const help = (page: Page, position: Position): Promise<SignatureHelp | null> => page.ask('textDocument/signatureHelp', { position });
  it('are told with the part that the cursor is in', async () => {
    const page = await open();
    expect(await help(page, page.range('100) mm').start)).toMatchObject({ signatures: [{ label: 'at (x, y, height) mm' }], activeSignature: 0, activeParameter: 1 });
    const found = await help(page, page.range('2 m').end);
    expect(found!.signatures[0]!.parameters!.map(p => p.label)).toEqual(['one', 'other']);
    expect(found!.activeParameter).toBe(1);
    expect(await help(page, page.range('red //').start)).toBeNull();
    expect(await help(page, page.range('(1').end)).toBeNull();
  });
  it('are told as the client reads them', async () => {
    const page = await open(TEXT, { capabilities: { textDocument: { signatureHelp: { signatureInformation: { documentationFormat: ['markdown', 'plaintext'], parameterInformation: { labelOffsetSupport: true } } } } } });
    const [form] = (await help(page, page.range('2 m').end))!.signatures;
    // `min(one, other)`
    expect(form!.parameters!.map(p => p.label)).toEqual([[4, 7], [9, 14]]);
    expect(form!.documentation).toMatchObject({ kind: 'markdown' });
  });
});

describe('formatting', () => {
  const options = { tabSize: 2, insertSpaces: true };
  it('of a selection', async () => {
    const page = await open();
    const line = (n: number): Promise<TextEdit[]> => page.ask('textDocument/rangeFormatting', { range: { start: { line: n, character: 0 }, end: { line: n + 1, character: 0 } }, options });
    // `  mirror   M1`: the blanks stand behind 8 characters.
    expect(await line(2)).toEqual([{ range: { start: { line: 2, character: 8 }, end: { line: 2, character: 11 } }, newText: ' ' }]);
    expect(await line(1)).toEqual([]);
  });
  it('behind a line end, counting the byte order mark', async () => {
    const page = await open('\ufeffsetup   "a" {\r\n\r\n}');
    expect(await page.ask('textDocument/onTypeFormatting', { position: { line: 1, character: 0 }, ch: '\n', options })).toEqual([{ range: { start: { line: 0, character: 6 }, end: { line: 0, character: 9 } }, newText: ' ' }]);
  });
});

it('a selection grows, one for each cursor', async () => {
  const page = await open();
  const found = await page.ask<SelectionRange[]>('textDocument/selectionRange', { positions: [page.range('350').end, page.range('setup').start, { line: 99, character: 0 }] });
  const texts = (r?: SelectionRange): string[] => (r ? [page.slice(r.range), ...texts(r.parent)] : []);
  expect(texts(found[0]).slice(0, 4)).toEqual(['350', '(350, 100) mm', 'at (350, 100) mm', 'mirror   M1 at (350, 100) mm']);
  expect(texts(found[1])[0]).toBe('setup');
  expect(found[2]).toEqual({ range: { start: { line: 99, character: 0 }, end: { line: 99, character: 0 } } });
});

it('names that change together', async () => {
  const page = await open();
  const linked = (position: Position): Promise<LinkedEditingRanges | null> => page.ask('textDocument/linkedEditingRange', { position });
  const ranges: Range[] = [page.range('red'), page.range('red', page.text.indexOf('from'))];
  expect(await linked(page.range('red').end)).toEqual({ ranges });
  expect(await linked(page.range('raw').start)).toBeNull();
});
