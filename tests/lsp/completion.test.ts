/** Completion as an editor asks for it. */
import { afterEach, describe, expect, it } from 'vitest';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { CompletionItemKind, InsertTextFormat, InsertTextMode, type CompletionItem, type CompletionList, type TextEdit } from 'vscode-languageserver/node';
import { but, whelk } from '../features/source.ts';
import { withoutStops } from '../features/snippets.ts';
import { startEditor, type Editor, type Page, type Settings } from './editor.ts';

let editor: Editor;
afterEach(() => editor.close());

const FULL: Settings = {
  capabilities: { textDocument: { diagnostic: {}, completion: { completionItem: { snippetSupport: true, documentationFormat: ['markdown'], insertTextModeSupport: { valueSet: [InsertTextMode.asIs, InsertTextMode.adjustIndentation] } }, completionItemKind: { valueSet: Object.values(CompletionItemKind).filter(k => typeof k === 'number') } } } },
};
const PLAIN: Settings = { capabilities: { textDocument: { diagnostic: {}, completion: {} } } };

async function open(text: string, settings: Settings = FULL): Promise<Page> {
  editor = await startEditor(settings);
  return editor.open(text);
}

/** The list at the end of a piece of the text. */
async function at(page: Page, piece: string): Promise<CompletionItem[]> {
  const list = await page.ask<CompletionList>('textDocument/completion', { position: page.range(piece).end });
  expect(list.isIncomplete).toBe(false);
  return list.items;
}

/** Takes an item as an editor does that adjusts indents, stops with what stands in them. */
async function take(page: Page, item: CompletionItem): Promise<void> {
  const { range, newText } = item.textEdit as TextEdit;
  const stops = item.insertTextFormat === InsertTextFormat.Snippet;
  const indent = /^\s*/.exec(page.text.split(/\r\n|\n|\r/)[range.start.line]!)![0];
  await page.edit([{ range, newText: stops ? withoutStops(newText).replaceAll('\n', `\n${indent}`) : newText }]);
}
const labelled = (items: readonly CompletionItem[], label: string): CompletionItem => {
  const found = items.find(i => i.label === label);
  if (!found) throw new Error(`“${label}” is not among ${items.map(i => i.label).join(', ')}`);
  return found;
};

describe('completion', () => {
  it('is offered, with the characters that ask for it', async () => {
    await open(whelk);
    expect(editor.initialized!.capabilities.completionProvider).toEqual({ triggerCharacters: ['.', '>', ':', '=', '"'], resolveProvider: true });
  });

  it('writes a fact with its value, whatever was typed of it', async () => {
    const page = await open(but('    depth: 35 mm', '    depth: 35 mm\n    lit a'));
    const item = labelled(await at(page, 'lit a'), 'lit at');
    expect(item).toMatchObject({ kind: CompletionItemKind.Property, insertTextFormat: InsertTextFormat.Snippet, filterText: 'lit at' });
    await take(page, item);
    expect(page.text).toContain('    depth: 35 mm\n    lit at: 45° ± 5°\n');
    expect(await page.codes()).not.toContain('unknown-fact');
  });

  it('answers though more has been typed since', async () => {
    const page = await open(but('    depth: 35 mm', '    depth: 35 mm\n    l'));
    await page.codes();
    const asked = at(page, 'mm\n    l');
    await page.type('mm\n    l', 'mm\n    li');
    expect(page.slice((labelled(await asked, 'lit at').textEdit as TextEdit).range)).toBe('l');
  });

  it('tells in the list what each item is, where an editor shows it there', async () => {
    const empty = 'setup "a" {\n  hol\n}\n';
    const completionItem = { labelDetailsSupport: true };
    const page = await open(empty, { capabilities: { textDocument: { diagnostic: {}, completion: { completionItem } } } });
    const two = (await at(page, 'hol')).filter(i => i.label === 'hologram');
    expect(two.map(i => i.labelDetails?.description)).toEqual(['transmission, reflection or rainbow', 'A finished hologram that serves as the object of a transfer.']);
    editor.close();
    const plain = (await at(await open(empty, PLAIN), 'hol')).filter(i => i.label === 'hologram');
    expect(plain.map(i => [i.detail, i.labelDetails])).toEqual(two.map(i => [i.labelDetails!.description, undefined]));
  });

  it('writes a whole block, indented as its first line', async () => {
    const page = await open(but('  mirror M3\n', '  mirror M3\n  spr\n'));
    await take(page, labelled(await at(page, '  spr'), 'spreader { … }'));
    expect(page.text).toContain('  spreader R1 {\n    focal length: 4.5 mm\n    pinhole: 10 µm\n');
    expect((await page.findings()).filter(f => f.severity === 1)).toEqual([]);
  });

  it('sends plain text, indented, to a client without stops', async () => {
    const page = await open(but('  mirror M3\n', '  mirror M3\n  spr\n'), PLAIN);
    const items = await at(page, '  spr');
    expect(items.filter(i => i.insertTextFormat === InsertTextFormat.Snippet)).toEqual([]);
    expect(items.filter(i => (i.kind ?? 0) > CompletionItemKind.Reference)).toEqual([]);
    await take(page, labelled(items, 'spreader { … }'));
    expect(page.text).toContain('  spreader R1 {\n    focal length: 4.5 mm\n');
  });

  it('tells about an item when somebody looks at it', async () => {
    const page = await open(but('  mirror M3\n', '  mirror M3\n  spr\n'));
    const item = labelled(await at(page, '  spr'), 'spreader');
    expect(item.documentation).toBeUndefined();
    const looked = await editor.connection.sendRequest<CompletionItem>('completionItem/resolve', item);
    expect(looked.documentation).toMatchObject({ kind: 'markdown' });
    expect((looked.documentation as { value: string }).value).toContain('`pinhole`');
    expect({ ...looked, documentation: undefined }).toEqual({ ...item, documentation: undefined });
  });

  it('gives the figures of a result when somebody looks at it', async () => {
    const page = await open(but('  plate P1\n', '  plate P1\n  expect mis\n'));
    const item = labelled(await at(page, 'expect mis'), 'mismatch');
    // 1555 mm - 1471 mm = 84 mm; 4 × 2 mm and 2 × 3 mm surely within: 2 · √((4·2² + 2·3²) / 3) = 6.7 mm
    expect(item.detail).toBe('84 ± 7 mm');
    const looked = await editor.connection.sendRequest<CompletionItem>('completionItem/resolve', item);
    expect((looked.documentation as { value: string }).value).toContain('M3 → whelk: 468 ± 3 mm');
  });

  it('counts UTF-16 units, and a byte order mark, behind carriage returns', async () => {
    const page = await open('\ufeffset\r\nsetup "😀 µ" {\r\n  laser red {\r\n    power: 5 mW ± 10% // 😀\r\n    beam quality: 1.1 ± 0.1\r\n  }\r\n}\r\n');
    const [first] = await at(page, '\ufeffset');
    expect(page.slice((first!.textEdit as TextEdit).range)).toBe('set');
    const items = await at(page, '5 mW ± 10');
    expect(items.map(i => i.label)).toEqual(['mW', 'µW', 'W', '%']);
    await take(page, labelled(items, 'µW'));
    expect(page.text).toContain('power: 5 mW ± 10 µW% // 😀');
  });

  it('offers the files of the open folder behind use', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'completion-'));
    try {
      for (const name of ['lab.plate', 'whelk.plate', 'notes.txt']) writeFileSync(join(folder, name), '');
      editor = await startEditor({ ...FULL, folder: pathToFileURL(folder).href });
      const page = await editor.open('use "la"\n', pathToFileURL(join(folder, 'whelk.plate')).href);
      const items = await at(page, 'use "la');
      expect(items.map(i => [i.label, i.kind])).toEqual([['lab.plate', CompletionItemKind.File]]);
      await take(page, items[0]!);
      expect(page.text).toBe('use "lab.plate"\n');
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  it('answers nothing for a place that is not there', async () => {
    const page = await open(whelk);
    for (const position of [{ line: 9999, character: 0 }, { line: 0, character: 9999 }]) expect((await page.ask<CompletionList>('textDocument/completion', { position })).items).toEqual([]);
    expect(await editor.connection.sendRequest('completionItem/resolve', { label: 'x', data: { uri: 5 } })).toEqual({ label: 'x', data: { uri: 5 } });
    expect(await editor.connection.sendRequest('completionItem/resolve', { label: 'x', data: { uri: page.uri, about: { of: 'nothing' } } })).toMatchObject({ label: 'x' });
  });
});
