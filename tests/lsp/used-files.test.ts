import { mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { LocationLink } from 'vscode-languageserver/node';
import { but } from '../features/source.ts';
import { startEditor, type Editor, type Page, type Settings } from './editor.ts';

const lab = (item: string): string => `inventory lab {\n  laser ${item} {\n    wavelength: 632.8 nm\n    tube length: 350 mm\n  }\n}\n`;
/** The whelk, its laser from an inventory; 384 mm match the arms. */
const setup = (path = 'saltmarsh-lab.plate'): string =>
  `use "${path}"\n\n${but('laser red {\n    wavelength: 632.8 nm\n    tube length: 350 mm\n  }', 'laser red = lab.red-12', but('468 mm', '384 mm'))}`;

let root: string;
let editor: Editor;
const uri = (...path: string[]): string => pathToFileURL(join(root, ...path)).href;
const open = async (text: string, settings: Settings = {}, path = ['notebook', 'whelk.plate']): Promise<Page> => (editor = await startEditor({ folder: uri('notebook'), ...settings })).open(text, uri(...path));
const write = (text: string, ...path: string[]): Promise<void> => writeFile(join(root, ...path), text);

beforeEach(async () => {
  root = await mkdtemp(join(tmpdir(), 'platewright-'));
  await mkdir(join(root, 'notebook', 'shelf of µ'), { recursive: true });
});
afterEach(async () => {
  editor.close();
  await rm(root, { recursive: true });
});

describe('files that a page uses', () => {
  it('are read from disk', async () => {
    await write(lab('red-12'), 'notebook', 'saltmarsh-lab.plate');
    expect(await (await open(setup())).codes()).toEqual([]);
  });

  it('that are missing are a finding at the use', async () => {
    const page = await open(setup());
    const [found, ...more] = await page.findings();
    expect(found?.code).toBe('import-unreadable');
    expect(page.slice(found!.range)).toBe('"saltmarsh-lab.plate"');
    expect(more).toEqual([]);
  });

  it('may be in a folder with blanks and a µ, by way of another file', async () => {
    await write(lab('red-12'), 'notebook', 'shelf of µ', 'lab.plate');
    expect(await (await open(setup('./shelf of µ/../shelf of µ/lab.plate'))).codes()).toEqual([]);
  });

  it('are looked at again when they change on disk, and the client is told', async () => {
    await write(lab('red-11'), 'notebook', 'saltmarsh-lab.plate');
    const page = await open(setup(), { watches: true });
    expect(await page.codes()).toEqual(['unknown-name']);
    expect(editor.watched).toEqual({ watchers: [{ globPattern: '**/*.plate' }] });
    const before = await page.pull();
    await write(lab('red-12'), 'notebook', 'saltmarsh-lab.plate');
    await editor.connection.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri: uri('notebook', 'saltmarsh-lab.plate'), type: 2 }] });
    expect(await page.codes()).toEqual([]);
    expect(editor.refreshes).toBe(1);
    expect((await page.pull()).resultId).not.toBe(before.resultId);
    await editor.connection.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri: uri('notebook', 'other.plate'), type: 1 }] });
    expect((await page.pull()).kind).toBe('unchanged');
    expect(editor.refreshes).toBe(1);
  });

  it('are sent again when they change on disk, to a client that does not ask', async () => {
    const page = await open(setup(), { watches: true, pulls: false });
    expect((await editor.next(page.uri)).diagnostics.map(d => d.code)).toEqual(['import-unreadable']);
    await write(lab('red-12'), 'notebook', 'saltmarsh-lab.plate');
    await editor.connection.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri: uri('notebook', 'saltmarsh-lab.plate'), type: 1 }] });
    expect((await editor.next(page.uri)).diagnostics).toEqual([]);
  });

  it('are looked at again on saving where the client watches no files', async () => {
    const page = await open(setup());
    expect(await page.codes()).toEqual(['import-unreadable']);
    await write(lab('red-12'), 'notebook', 'saltmarsh-lab.plate');
    await editor.connection.sendNotification('textDocument/didSave', { textDocument: { uri: page.uri } });
    expect(await page.codes()).toEqual([]);
  });

  it('count as they are in the editor, however it spells their address', async () => {
    await write(lab('red-11'), 'notebook', 'shelf of µ', 'lab.plate');
    const page = await open(setup('shelf of µ/lab.plate'));
    expect(await page.codes()).toEqual(['unknown-name']);
    const spelt = uri('notebook').replace('notebook', 'noteb%6Fok') + '/shelf%20of%20%c2%b5/lab.plate';
    const other = await editor.open(lab('red-11'), spelt);
    await other.type('red-11', 'red-12');
    expect(await page.codes()).toEqual([]);
    // Each part of the name leads to what it names.
    for (const [part, name] of [['red-12', 'red-12'], ['lab.', 'lab']] as const) {
      const [link] = await page.ask<LocationLink[]>('textDocument/definition', { position: page.range(part, page.text.indexOf('lab.red-12')).start });
      expect(link!.targetUri).toBe(spelt);
      expect(link!.targetSelectionRange).toEqual(other.range(name));
    }
    await other.close();
    expect(await page.codes()).toEqual(['unknown-name']);
  });

  it('that are edited have the client ask again for the pages that use them, and for no others', async () => {
    await write(lab('red-12'), 'notebook', 'saltmarsh-lab.plate');
    const page = await open(setup());
    expect(await page.codes()).toEqual([]);
    const other = await editor.open(lab('red-12'), uri('notebook', 'saltmarsh-lab.plate'));
    for (const n of [13, 14, 15, 16]) await other.type(`red-${n - 1}`, `red-${n}`);
    expect(await page.codes()).toEqual(['unknown-name']);
    // Four edits at once are one or two requests: one, and one more for what came before its answer.
    for (let i = 0; i < 4; i++) await page.findings();
    const asked = editor.refreshes;
    expect(asked).toBeLessThanOrEqual(2);
    expect(asked).toBeGreaterThan(0);
    await page.type('384 mm', '383 mm');
    await page.findings();
    expect(editor.refreshes).toBe(asked);
  });

  it('that are edited bring new findings to the pages that use them, where findings are sent', async () => {
    await write(lab('red-12'), 'notebook', 'saltmarsh-lab.plate');
    const page = await open(setup(), { pulls: false });
    expect((await editor.next(page.uri)).diagnostics).toEqual([]);
    const other = await editor.open(lab('red-12'), uri('notebook', 'saltmarsh-lab.plate'));
    await other.type('red-12', 'red-13');
    expect((await editor.next(page.uri, p => p.diagnostics.length > 0)).diagnostics.map(d => d.code)).toEqual(['unknown-name']);
  });

  it('in a ring are one finding', async () => {
    await write('use "whelk.plate"\n', 'notebook', 'saltmarsh-lab.plate');
    expect(await (await open(setup())).codes()).toEqual(['import-ring']);
  });

  it('are read only inside the open folder', async () => {
    await write(lab('red-12'), 'outside.plate');
    await write(lab('red-12'), 'notebook-2.plate');
    for (const path of ['../outside.plate', '../notebook-2.plate', join(root, 'outside.plate'), '../../../../../../../etc/passwd']) {
      const page = await open(setup(path));
      expect(await page.codes()).toEqual(['import-outside']);
      editor.close();
    }
    await symlink(join(root, 'outside.plate'), join(root, 'notebook', 'link.plate'));
    expect(await (await open(setup('link.plate'))).codes()).toEqual(['import-unreadable']);
  });

  it('of a page outside of all folders are those beside it', async () => {
    await write(lab('red-12'), 'saltmarsh-lab.plate');
    expect(await (await open(setup(), { folder: uri('notebook') }, ['whelk.plate'])).codes()).toEqual([]);
  });

  it('of a page that was never saved count from the open folder', async () => {
    await write(lab('red-12'), 'notebook', 'saltmarsh-lab.plate');
    await open('');
    expect(await (await editor.open(setup(), 'untitled:Untitled-1')).codes()).toEqual([]);
    editor.close();
    editor = await startEditor();
    expect(await (await editor.open(setup(), 'untitled:Untitled-1')).codes()).toEqual(['import-outside']);
  });

  it('are looked for beside the page, then in the open folder, then in the folders of inventories', async () => {
    await mkdir(join(root, 'shelf'));
    await mkdir(join(root, 'notebook', '2026'));
    const options = { inventoryFolders: [join(root, 'shelf'), 'not absolute', 7] };
    const path = ['notebook', '2026', 'whelk.plate'];
    const page = await open(setup(), {}, path);
    expect(await page.codes()).toEqual(['import-unreadable']);
    expect((await page.findings())[0]!.message).toContain('Looked in the folder of this file, the folder “notebook”.');
    editor.close();
    await write(lab('red-12'), 'shelf', 'saltmarsh-lab.plate');
    expect(await (await open(setup(), {}, path)).codes()).toEqual(['import-unreadable']);
    editor.close();
    expect(await (await open(setup(), { options }, path)).codes()).toEqual([]);
    editor.close();
    await write(lab('red-11'), 'notebook', 'saltmarsh-lab.plate');
    expect(await (await open(setup(), { options }, path)).codes()).toEqual(['unknown-name']);
    editor.close();
    await write(lab('red-12'), 'notebook', '2026', 'saltmarsh-lab.plate');
    expect(await (await open(setup(), { options }, path)).codes()).toEqual([]);
  });

  it('in the folders of inventories are watched there, by a client that can watch outside of its folders; by another they are looked at on saving', async () => {
    await mkdir(join(root, 'shelf'));
    const options = { inventoryFolders: [join(root, 'shelf')] };
    const shelf = ['shelf', 'saltmarsh-lab.plate'];
    for (const relativePatternSupport of [true, false]) {
      await write(lab('red-11'), ...shelf);
      const page = await open(setup(), { watches: true, options, capabilities: { workspace: { didChangeWatchedFiles: { dynamicRegistration: true, relativePatternSupport } } } });
      expect(await page.codes()).toEqual(['unknown-name']);
      expect(editor.watched).toEqual({ watchers: [{ globPattern: '**/*.plate' }, ...(relativePatternSupport ? [{ globPattern: { baseUri: uri('shelf'), pattern: '**/*.plate' } }] : [])] });
      await write(lab('red-12'), ...shelf);
      if (relativePatternSupport) await editor.connection.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri: uri(...shelf), type: 2 }] });
      else await editor.connection.sendNotification('textDocument/didSave', { textDocument: { uri: page.uri } });
      expect(await page.codes()).toEqual([]);
      editor.close();
    }
  });

  it('that are no files, or too large, are not read', async () => {
    await mkdir(join(root, 'notebook', 'saltmarsh-lab.plate'));
    expect(await (await open(setup())).codes()).toEqual(['import-unreadable']);
    editor.close();
    await write(lab('red-12') + ' '.repeat(9_000_000), 'notebook', 'big.plate');
    expect(await (await open(setup('big.plate'))).codes()).toEqual(['import-unreadable']);
  });
});

describe('a server without a disk', () => {
  const start = async (options: unknown): Promise<{ page: Page; asked: string[] }> => {
    const asked: string[] = [];
    editor = await startEditor({ folder: 'memfs:/notebook', read: null, options });
    editor.connection.onRequest('platewright/readFile', ({ uri: wanted }: { uri: string }) => { asked.push(wanted); return wanted.endsWith('/saltmarsh-lab.plate') ? lab('red-12') : null; });
    return { page: await editor.open(setup(), 'memfs:/notebook/whelk.plate'), asked };
  };

  it('has the client read the files, once each', async () => {
    const { page, asked } = await start({ readsFiles: true });
    expect(await page.codes()).toEqual([]);
    await page.type('384 mm', '468 mm');
    expect(await page.codes()).toEqual(['arms-mismatched']);
    expect(asked).toEqual(['memfs:/notebook/saltmarsh-lab.plate']);
  });

  it('does not ask a client that has not offered it', async () => {
    const { page, asked } = await start(undefined);
    expect(await page.codes()).toEqual(['import-unreadable']);
    expect(asked).toEqual([]);
  });
});
