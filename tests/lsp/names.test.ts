import { mkdir, mkdtemp, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { DocumentHighlight, Location, Position, Range, TextDocumentEdit, WorkspaceEdit } from 'vscode-languageserver/node';
import { listInside } from '../../server/lsp/node.ts';
import { MAX_LISTED } from '../../server/lsp/protocol.ts';
import { startEditor, type Editor, type Page, type Settings } from './editor.ts';

const LAB = 'inventory lab {\n  laser red-12 {\n    wavelength: 632.8 nm\n  }\n  mirror flat\n}\n';
const PAGE = 'use "lab.plate"\nsetup "a" {\n  laser red = lab.red-12\n  mirror M1 = lab.flat\n  plate P1\n  beam raw from red\n    -> M1: 1 m\n    -> P1: 1 m\n}\n';
const OTHER = '\ufeffuse "../lab.plate" // 😀 µ\r\nsetup "b" {\r\n  /// 😀\r\n  laser red = lab.red-12 // red-12\r\n}\r\n';

let root: string;
let editor: Editor;
const uri = (...path: string[]): string => pathToFileURL(join(root, ...path)).href;
const start = async (settings: Settings = {}): Promise<Editor> => (editor = await startEditor({ folder: uri('notebook'), ...settings }));
async function write(text: string, ...path: string[]): Promise<void> {
  await mkdir(dirname(join(root, ...path)), { recursive: true });
  await writeFile(join(root, ...path), text);
}
const show = async (...path: string[]): Promise<Page> => editor.open(await readFile(join(root, ...path), 'utf8'), uri(...path));

beforeEach(async () => {
  root = await mkdtemp(join(tmpdir(), 'platewright-'));
  await write(LAB, 'notebook', 'lab.plate');
  await write(PAGE, 'notebook', 'a.plate');
  await write(OTHER, 'notebook', 'winter µ', 'b.plate');
});
afterEach(async () => {
  editor.close();
  await rm(root, { recursive: true });
});

const references = async (page: Page, position: Position, includeDeclaration = true): Promise<string[]> => {
  const found = await page.ask<Location[] | null>('textDocument/references', { position, context: { includeDeclaration } });
  return (found ?? []).map(l => `${decodeURIComponent(l.uri.slice(uri('notebook').length + 1))} ${l.range.start.line}:${l.range.start.character}–${l.range.end.character}`).sort();
};
const rename = (page: Page, position: Position, newName: string): Promise<WorkspaceEdit> => page.ask('textDocument/rename', { position, newName });
const prepare = (page: Page, position: Position): Promise<{ range: Range; placeholder: string }> => page.ask('textDocument/prepareRename', { position });
/** As a client does it: open pages are typed into, others are written to disk. */
async function apply(edit: WorkspaceEdit, open: readonly Page[]): Promise<void> {
  for (const change of edit.documentChanges as TextDocumentEdit[]) {
    const page = open.find(p => p.uri === change.textDocument.uri);
    if (page) { await page.apply({ documentChanges: [change] }); continue; }
    expect(change.textDocument.version).toBeNull();
    const path = fileURLToPath(change.textDocument.uri);
    await writeFile(path, TextDocument.applyEdits(TextDocument.create('', '', 0, await readFile(path, 'utf8')), change.edits as never));
  }
}

describe('references', () => {
  it('of an item are in all pages of the open folder', async () => {
    await start();
    const page = await show('notebook', 'a.plate');
    // A byte order mark is a character to editors, and stands in the first line only.
    const all = ['a.plate 2:18–24', 'lab.plate 1:8–14', 'winter µ/b.plate 3:18–24'];
    expect(await references(page, page.range('red-12').start)).toEqual(all);
    expect(await references(await show('notebook', 'lab.plate'), { line: 1, character: 14 })).toEqual(all);
    expect(await references(page, page.range('red-12').start, false)).toEqual(all.filter(r => !r.startsWith('lab')));
    expect(await references(page, page.range('lab.red').start)).toEqual(['a.plate 2:14–17', 'a.plate 3:14–17', 'lab.plate 0:10–13', 'winter µ/b.plate 3:14–17']);
  });

  it('of a thing are in its page', async () => {
    await start();
    const page = await show('notebook', 'a.plate');
    expect(await references(page, page.range('M1: 1 m').start)).toEqual(['a.plate 3:9–11', 'a.plate 6:7–9']);
    expect(await references(page, page.range('mirror').start)).toEqual([]);
  });

  it('see texts that are not saved yet, and what has changed on disk in between', async () => {
    await start();
    const page = await show('notebook', 'a.plate');
    const other = await show('notebook', 'winter µ', 'b.plate');
    await other.type('lab.red-12', 'lab.flat');
    expect(await references(page, page.range('red-12').start)).toEqual(['a.plate 2:18–24', 'lab.plate 1:8–14']);
    await write(`// moved\n${LAB}`, 'notebook', 'lab.plate');
    await write(PAGE, 'notebook', 'c.plate');
    expect(await references(page, page.range('red-12').start)).toEqual(['a.plate 2:18–24', 'c.plate 2:18–24', 'lab.plate 2:8–14']);
  });

  it('are marked in the text', async () => {
    await start();
    const page = await show('notebook', 'a.plate');
    const found = await page.ask<DocumentHighlight[]>('textDocument/documentHighlight', { position: page.range('M1 =').end });
    expect(found).toEqual([]);
    const marks = await page.ask<DocumentHighlight[]>('textDocument/documentHighlight', { position: page.range('M1 =').start });
    expect(marks).toEqual([{ range: page.range('M1'), kind: 3 }, { range: page.range('M1', page.text.indexOf('-> M1')), kind: 2 }]);
  });
});

describe('a rename', () => {
  it('of an item changes all pages, open or not, and no finding', async () => {
    await start();
    const page = await show('notebook', 'a.plate');
    const before = await page.findings();
    const edit = await rename(page, page.range('red-12').start, 'rot-12');
    expect((edit.documentChanges as TextDocumentEdit[]).map(c => [c.textDocument.uri === page.uri, c.textDocument.version])).toEqual([[true, 1], [false, null], [false, null]]);
    await apply(edit, [page]);
    expect(page.text).toBe(PAGE.replace('red-12', 'rot-12'));
    expect(await readFile(join(root, 'notebook', 'lab.plate'), 'utf8')).toBe(LAB.replace('red-12', 'rot-12'));
    expect(await readFile(join(root, 'notebook', 'winter µ', 'b.plate'), 'utf8')).toBe(OTHER.replace('red-12', 'rot-12'));
    await editor.connection.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri: uri('notebook', 'lab.plate'), type: 2 }] });
    expect(await page.findings()).toEqual(before);
  });

  it('of an inventory begins in its own page, and sees what others typed', async () => {
    await start();
    const lab = await show('notebook', 'lab.plate');
    const page = await show('notebook', 'a.plate');
    await page.type('mirror M1 = lab.flat', 'mirror M1');
    await apply(await rename(lab, lab.range('lab').start, 'store'), [lab, page]);
    expect(lab.text).toBe(LAB.replace('lab', 'store'));
    expect(page.text).toBe(PAGE.replace('mirror M1 = lab.flat', 'mirror M1').replace('lab.red', 'store.red'));
    expect(await readFile(join(root, 'notebook', 'winter µ', 'b.plate'), 'utf8')).toBe(OTHER.replace('lab.red', 'store.red'));
  });

  it('of a thing stays in its page', async () => {
    await start();
    const page = await show('notebook', 'a.plate');
    const edit = await rename(page, page.range('M1: 1 m').start, 'Mx');
    expect(edit.documentChanges).toHaveLength(1);
    await apply(edit, [page]);
    expect(page.text).toBe(PAGE.replaceAll('M1', 'Mx'));
  });

  it('is plain edits for a client that knows no versions', async () => {
    await start({ capabilities: { workspace: {} } });
    const page = await show('notebook', 'a.plate');
    const edit = await rename(page, page.range('red-12').start, 'rot-12');
    expect(Object.keys(edit.changes!).sort()).toEqual([page.uri, uri('notebook', 'lab.plate'), uri('notebook', 'winter µ', 'b.plate')].sort());
  });

  it('tells what it will change, or why it cannot', async () => {
    await start();
    const page = await show('notebook', 'a.plate');
    expect(await prepare(page, page.range('red-12').end)).toEqual({ range: page.range('red-12'), placeholder: 'red-12' });
    expect(await prepare(page, page.range('lab.red').start)).toEqual({ range: page.range('lab', page.text.indexOf('lab.red')), placeholder: 'lab' });
    await expect(prepare(page, page.range('mirror').start)).rejects.toThrow('“mirror” is a word of the language');
    await expect(rename(page, page.range('M1').start, 'P1')).rejects.toThrow('“P1” is already the name of a plate, in line 5.');
    await expect(rename(page, page.range('red-12').start, 'flat')).rejects.toThrow('“flat” is already the name of a mirror, in line 5 of lab.plate.');
    await expect(rename(page, page.range('M1').start, 'at')).rejects.toThrow('“at” is a word of the language');
  });

  it('is only told beforehand to a client that asks for it', async () => {
    await start();
    expect(editor.initialized!.capabilities.renameProvider).toBe(true);
    editor.close();
    await start({ capabilities: { textDocument: { rename: { prepareSupport: true } } } });
    expect(editor.initialized!.capabilities.renameProvider).toEqual({ prepareProvider: true });
  });

  it('is refused for what is declared outside of the open folder', async () => {
    await write(LAB, 'attic', 'lab.plate');
    await write(PAGE, 'attic', 'a.plate');
    await start();
    const page = await show('attic', 'a.plate');
    await expect(prepare(page, page.range('red-12').start)).rejects.toThrow('outside of the open folder');
    await expect(rename(page, page.range('red-12').start, 'rot')).rejects.toThrow('outside of the open folder');
    expect((await prepare(page, page.range('M1').start)).placeholder).toBe('M1');
  });

  it('is taken back where a newer text has arrived', async () => {
    await start();
    const page = await show('notebook', 'a.plate');
    const asked = rename(page, page.range('red-12').start, 'rot-12');
    await page.type('setup "a"', '// new\nsetup "a"');
    await expect(asked).rejects.toMatchObject({ code: -32800 });
  });
});

describe('pages of the open folder', () => {
  it('are listed, but not those of packages, of hidden folders, and behind links', async () => {
    for (const path of [['node_modules', 'x.plate'], ['.git', 'y.plate'], ['deep', 'er', 'z.plate'], ['notes.txt']]) await write(PAGE, 'notebook', ...path);
    await write(PAGE, 'attic', 'secret.plate');
    await symlink(join(root, 'attic'), join(root, 'notebook', 'attic'));
    await symlink(join(root, 'attic', 'secret.plate'), join(root, 'notebook', 'secret.plate'));
    await symlink(join(root, 'notebook'), join(root, 'notebook', 'deep', 'ring'));
    await write(PAGE, 'notebook', ...Array.from({ length: 12 }, (_, i) => `d${i}`), 'in.plate');
    await write(PAGE, 'notebook', ...Array.from({ length: 13 }, (_, i) => `e${i}`), 'out.plate');
    await start();
    const listed = (await listInside([uri('notebook'), uri('notebook', 'deep'), uri('missing'), 'vscode-remote://x/y'])).map(u => decodeURIComponent(u.slice(uri('notebook').length + 1)));
    expect(listed.sort()).toEqual(['a.plate', `${Array.from({ length: 12 }, (_, i) => `d${i}`).join('/')}/in.plate`, 'deep/er/z.plate', 'lab.plate', 'winter µ/b.plate']);
  });

  it('are those that the client lists, where the server cannot', async () => {
    const FILES = new Map([['memfs:/n/lab.plate', LAB], ['memfs:/n/a.plate', PAGE], ['memfs:/n/c.plate', PAGE]]);
    const asked: string[] = [];
    await start({
      folder: 'memfs:/n', read: null, options: { readsFiles: true, listsFiles: true },
      answers: { 'platewright/readFile': p => { asked.push((p as { uri: string }).uri); return FILES.get((p as { uri: string }).uri) ?? null; }, 'platewright/listFiles': () => [...FILES.keys()] },
    });
    const page = await editor.open(PAGE, 'memfs:/n/a.plate');
    const edit = await rename(page, page.range('red-12').start, 'rot-12');
    expect((edit.documentChanges as TextDocumentEdit[]).map(c => c.textDocument.uri)).toEqual(['memfs:/n/a.plate', 'memfs:/n/lab.plate', 'memfs:/n/c.plate']);
    expect(asked).toContain('memfs:/n/c.plate');
  });

  it('that are too many are said to be', async () => {
    const many = Array.from({ length: MAX_LISTED + 1 }, (_, i) => `memfs:/n/p${i}.plate`);
    await start({ folder: 'memfs:/n', read: null, options: { readsFiles: true, listsFiles: true }, answers: { 'platewright/readFile': p => ((p as { uri: string }).uri === 'memfs:/n/lab.plate' ? LAB : null), 'platewright/listFiles': () => many } });
    const page = await editor.open(PAGE, 'memfs:/n/a.plate');
    await expect(rename(page, page.range('red-12').start, 'rot-12')).rejects.toThrow('hold more pages than are looked at');
    expect((await rename(page, page.range('M1').start, 'Mx')).documentChanges).toHaveLength(1);
  });

  it('that cannot be listed leave those that are open', async () => {
    await start({ folder: 'memfs:/n', read: null });
    const page = await editor.open(PAGE, 'memfs:/n/a.plate');
    const lab = await editor.open(LAB, 'memfs:/n/lab.plate');
    const found = await page.ask<Location[]>('textDocument/references', { position: page.range('red-12').start, context: { includeDeclaration: true } });
    expect(found.map(l => l.uri)).toEqual([page.uri, lab.uri]);
  });
});
