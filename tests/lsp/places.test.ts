import { afterEach, describe, expect, it } from 'vitest';
import fc from 'fast-check';
import type { DocumentSymbol, LocationLink, SymbolInformation } from 'vscode-languageserver/node';
import { but, whelk } from '../features/source.ts';
import { startEditor, type Editor, type Page, type Settings } from './editor.ts';

let editor: Editor;
const open = async (text: string, settings?: Settings): Promise<Page> => (editor = await startEditor(settings)).open(text);
afterEach(() => editor.close());

describe('places count UTF-16 units', () => {
  // 😀 is two units, µ one; the text in quotes stands before the misspelt unit in its line.
  it('behind µ, emoji and carriage returns', async () => {
    const page = await open('/// 😀😀 µ\r\nsetup "😀 µ" {\r\n  object whelk {\r\n    material: "😀µ😀" // 😀\r\n    depth: 35 mmm\r\n  }\r\n  laser 😀\r\n}\r\n');
    const found = await page.findings();
    expect(found.map(f => f.code)).toContain('unknown-unit');
    expect(page.slice(found.find(f => f.code === 'unknown-unit')!.range)).toBe('mmm');
  });

  it.each([1, 2, 3])('in a line that begins with %i byte order marks', async marks => {
    const begin = '\ufeff'.repeat(marks);
    const page = await open(`${begin}setub "a" {\n}\n`);
    const [found, ...more] = await page.findings();
    expect(more).toEqual([]);
    expect(page.slice(found!.range)).toBe('setub');
    const right = await editor.open(`${begin}setup "a" {\n}\n`, 'file:///saltmarsh/b.plate');
    expect(await right.hover({ line: 0, character: marks })).toContain('**a**');
    const wide = await editor.open(`${begin} setup   "a" {\n}\n`, 'file:///saltmarsh/c.plate');
    await wide.edit(await wide.ask('textDocument/formatting', { options: { tabSize: 2, insertSpaces: true } }));
    expect(wide.text).toBe(`${begin}setup "a" {\n}\n`);
  });

  it('after edits that split and join line ends', async () => {
    const page = await open(but('mirror M3', 'miror M3').replaceAll('\n', '\r\n'));
    await page.edit([{ range: page.range('\r\n  splitter'), newText: '\n\r\n😀\r  splitter' }]);
    const found = await page.findings();
    expect(page.slice(found.find(f => f.code === 'unknown-word')!.range)).toBe('miror');
  });

  it('as if the text had been opened anew, after any edits', async () => {
    const page = await open(whelk);
    const piece = fc.constantFrom('\n', '\r\n', '\r', '😀', 'µ', '}', '{', ' miror M9', '-> M1: 5 mm', '"', '');
    await fc.assert(fc.asyncProperty(fc.array(fc.tuple(fc.nat(), fc.nat({ max: 30 }), piece), { minLength: 1, maxLength: 6 }), async edits => {
      await page.edit([{ range: { start: { line: 0, character: 0 }, end: { line: 1e6, character: 0 } }, newText: whelk }]);
      for (const [at, length, newText] of edits) {
        const start = at % (page.text.length + 1);
        await page.edit([{ range: page.range(page.text.slice(start, start + length), start), newText }]);
      }
      const fresh = await editor.open(page.text, 'file:///saltmarsh/fresh.plate');
      expect(await page.findings()).toEqual(await fresh.findings());
      await fresh.close();
    }), { numRuns: 60 });
  });
});

describe('pointing and going', () => {
  it('shows what is under the cursor, with its range', async () => {
    const page = await open(whelk);
    const hover = await page.ask<{ range: Parameters<Page['slice']>[0]; contents: { kind: string; value: string } }>('textDocument/hover', { position: page.range('laser red').start });
    expect(hover.contents.kind).toBe('markdown');
    expect(hover.contents.value).toContain('tube length');
    expect(page.slice(hover.range)).toBe('laser');
  });

  it('goes to the declaration', async () => {
    const page = await open(whelk);
    const [link] = await page.ask<LocationLink[]>('textDocument/definition', { position: page.range('M2: 410').start });
    expect(link!.targetUri).toBe(page.uri);
    expect(link!.targetSelectionRange).toEqual(page.range('M2'));
    expect(page.slice(link!.originSelectionRange!)).toBe('M2');
  });

  it('goes there too for a client that knows no links', async () => {
    const page = await open(whelk, { capabilities: { textDocument: {} } });
    expect(await page.ask('textDocument/definition', { position: page.range('M2: 410').start })).toEqual({ uri: page.uri, range: page.range('M2') });
  });

  it('outlines the page as a tree, each name inside of its range', async () => {
    const page = await open(whelk);
    const symbols = await page.ask<DocumentSymbol[]>('textDocument/documentSymbol');
    expect(symbols.map(s => s.name)).toEqual(['Whelk shell']);
    const beam = symbols[0]!.children!.find(s => s.name === 'object')!;
    expect(beam.children!.map(s => [s.name, s.detail])).toEqual([['→ M2', '410 mm'], ['→ M3', '377 mm'], ['→ whelk', '468 mm'], ['→ P1', '300 mm']]);
    expect(page.slice(beam.range)).toMatch(/^ {2}beam object[^]*300 mm ± 3 mm$/);
    expect(page.slice(beam.selectionRange)).toBe('object');
  });

  it('outlines it as a list where the client shows no tree', async () => {
    const page = await open(whelk, { capabilities: { textDocument: {} } });
    const list = await page.ask<SymbolInformation[]>('textDocument/documentSymbol');
    expect(list.find(s => s.name === 'object')).toMatchObject({ containerName: 'Whelk shell', location: { uri: page.uri } });
  });

  it('names everything in the outline of broken text, inside of its range', async () => {
    const page = await open('setup\nsetup "" {\n  beam\n  beam b\n    ->\n  shot\n  variant "" {\ninventory x');
    const check = (s: DocumentSymbol): void => {
      expect(s.name).not.toBe('');
      expect(s.selectionRange.start.line).toBeGreaterThanOrEqual(s.range.start.line);
      expect([s.range.end.line, s.range.end.line > s.selectionRange.end.line || s.range.end.character >= s.selectionRange.end.character]).toEqual([s.range.end.line, true]);
      s.children?.forEach(check);
    };
    const symbols = await page.ask<DocumentSymbol[]>('textDocument/documentSymbol');
    expect(symbols.length).toBeGreaterThan(1);
    symbols.forEach(check);
  });

  it('gives the figures of the setup for a status bar', async () => {
    const page = await open(whelk);
    expect(await page.ask('platewright/summary', { line: 5 })).toMatchObject({
      setup: 'Whelk shell', mismatch: '84 ± 7 mm', part: 'darkest part of whelk', markdown: expect.stringContaining('Mismatch: 84 ± 7 mm.') as string, worst: { severity: 'warning', ...page.range('object from').start },
    });
  });
});
