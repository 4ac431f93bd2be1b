import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, expect, it } from 'vitest';
import type { SymbolInformation } from 'vscode-languageserver/node';
import { startEditor, type Editor } from './editor.ts';

let root: string;
let editor: Editor;
const uri = (name: string): string => pathToFileURL(join(root, name)).href;
beforeEach(async () => {
  root = await mkdtemp(join(tmpdir(), 'platewright-'));
  await mkdir(join(root, 'notebook', 'winter'), { recursive: true });
  await writeFile(join(root, 'notebook', 'lab.plate'), 'inventory lab {\n  mirror flat\n}\n');
  await writeFile(join(root, 'notebook', 'winter', 'whelk.plate'), '\ufeffsetup "Whelk" {\r\n  // 😀\r\n  plate P1\r\n}\r\n');
});
afterEach(async () => {
  editor.close();
  await rm(root, { recursive: true });
});

const found = async (query: string): Promise<string[]> => (await editor.connection.sendRequest<SymbolInformation[]>('workspace/symbol', { query }))
  .map(s => `${s.name}${s.containerName === undefined ? '' : ` in ${s.containerName}`} ${s.location.uri.slice(uri('').length + 1)} ${s.location.range.start.line}:${s.location.range.start.character}`).sort();

it('names are found in all pages of the open folder, open or not', async () => {
  editor = await startEditor({ folder: uri('notebook') });
  // The byte order mark is a character of the first line: `setup ` begins behind it, its name 6 further on.
  expect(await found('')).toEqual(['P1 in Whelk notebook/winter/whelk.plate 2:8', 'Whelk notebook/winter/whelk.plate 0:7', 'flat in lab notebook/lab.plate 1:9', 'lab notebook/lab.plate 0:10']);
  expect(await found('whe')).toEqual(['Whelk notebook/winter/whelk.plate 0:7']);
});

it('what is typed counts before what is on disk, and what was written since is seen', async () => {
  editor = await startEditor({ folder: uri('notebook') });
  const page = await editor.open('inventory lab {\n  mirror flat\n}\n', uri('notebook/lab.plate'));
  await found('');
  await page.type('flat', 'round');
  await writeFile(join(root, 'notebook', 'new.plate'), 'setup "Limpet" {\n}\n');
  expect(await found('round')).toEqual(['round in lab notebook/lab.plate 1:9']);
  expect(await found('flat')).toEqual([]);
  expect(await found('limpet')).toEqual(['Limpet notebook/new.plate 0:6']);
});

it('where nobody lists files, the open pages are known', async () => {
  editor = await startEditor({ read: null });
  await editor.open('setup "Limpet" {\n}\n', uri('notebook/new.plate'));
  expect(await found('')).toEqual(['Limpet notebook/new.plate 0:6']);
});
