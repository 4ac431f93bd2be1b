/** The server over a disk that is slow, fails, or loses files: pages are answered, a finding says what is wrong with which file, and it goes when the file can be read again. */
import { setTimeout as after } from 'node:timers/promises';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { but, whelk } from '../features/source.ts';
import { startEditor, type Editor, type Page } from '../lsp/editor.ts';

const LAB = 'file:///saltmarsh/lab.plate';
const lab = 'inventory lab {\n  laser red-12 {\n    wavelength: 632.8 nm\n    tube length: 350 mm\n  }\n}\n';
/** The whelk with matched arms, its laser from an inventory. */
const page = `use "lab.plate"\n\n${but('laser red {\n    wavelength: 632.8 nm\n    tube length: 350 mm\n  }', 'laser red = lab.red-12', but('468 mm', '384 mm'))}`;

/** What the disk does when the file is read next. */
let disk: () => Promise<string | undefined>;
const failing = (code: string) => (): Promise<never> => Promise.reject(Object.assign(new Error(`${code}: no`), { code }));
let editor: Editor;
/** Servers of earlier tests may still try again: theirs is another disk. */
let opened = 0;
const diskOf = (server: number) => (): Promise<string | undefined> => (server === opened ? disk() : new Promise(() => undefined));
const open = async (waits = { patience: 60_000, again: 60_000 }, watches = false): Promise<Page> => (editor = await startEditor({ folder: 'file:///saltmarsh', read: diskOf(++opened), waits, watches })).open(page, 'file:///saltmarsh/whelk.plate');
afterEach(() => { editor.close(); });

const told = async (p: Page): Promise<string[]> => (await p.findings()).map(f => (typeof f.message === 'string' ? f.message : f.message.value));
/** Findings once they are others: whoever is told that they may have changed asks again. */
async function next(p: Page, refreshes: number): Promise<unknown[]> {
  for (let i = 0; editor.refreshes === refreshes && i < 500; i++) await after(10);
  return p.codes();
}

describe('a file that a page uses', () => {
  // What the system says, by errno(3).
  it.each([['EIO', 'the disk failed'], ['EACCES', 'permission is missing'], ['EMFILE', 'too many files are open'], ['EBUSY', 'another program uses it']])('that fails with %s: the finding names the file and why, and goes by itself when it can be read again', async (code, why) => {
    disk = failing(code);
    const p = await open({ patience: 60_000, again: 20 });
    expect(await told(p)).toEqual([`“lab.plate” cannot be used: it cannot be read: ${why}. Looked in the folder of this file. Correct the path, or name the folder that holds it.`]);
    // What has nothing to do with it is answered.
    expect(await p.ask('textDocument/documentSymbol')).toHaveLength(1);
    const refreshes = editor.refreshes;
    disk = () => Promise.resolve(lab);
    expect(await next(p, refreshes)).toEqual([]);
  });

  it('that fails in another way each time: the finding is of the last one', async () => {
    disk = failing('EIO');
    const p = await open({ patience: 60_000, again: 20 });
    expect((await told(p))[0]).toContain('the disk failed');
    const refreshes = editor.refreshes;
    disk = failing('EACCES');
    await next(p, refreshes);
    expect((await told(p))[0]).toContain('permission is missing');
  });

  it('that is read slowly: other pages are answered at once, its own behind it', async () => {
    // Nobody knows beforehand how often it is read.
    const waiting: ((text: string) => void)[] = [];
    disk = () => new Promise(resolve => { waiting.push(resolve); });
    const p = await open();
    const asked = p.codes();
    const other = await editor.open(whelk, 'file:///saltmarsh/other.plate');
    expect(await other.codes()).toEqual(['arms-mismatched']);
    await vi.waitFor(() => { expect(waiting.length).toBeGreaterThan(0); }, 20_000);
    disk = () => Promise.resolve(lab);
    for (const come of waiting) come(lab);
    expect(await asked).toEqual([]);
  });

  it('that is not read at all: its page is answered without it, and again when it comes', async () => {
    let come: (text: string) => void = () => undefined;
    disk = () => new Promise(resolve => { come = resolve; });
    const p = await open({ patience: 20, again: 60_000 });
    expect((await told(p))[0]).toContain('“lab.plate” cannot be used: it cannot be read: the disk does not answer. ');
    const refreshes = editor.refreshes;
    come(lab);
    expect(await next(p, refreshes)).toEqual([]);
  });

  it('that is deleted while its page is open is a finding, and gone when it comes back', async () => {
    disk = () => Promise.resolve(lab);
    const p = await open(undefined, true);
    expect(await p.codes()).toEqual([]);
    const changes = async (type: 1 | 3): Promise<void> => { await editor.connection.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri: LAB, type }] }); };
    disk = failing('ENOENT');
    await changes(3);
    expect((await told(p))[0]).toContain('“lab.plate” cannot be used: it is missing or cannot be read.');
    disk = () => Promise.resolve(lab);
    await changes(1);
    expect(await p.codes()).toEqual([]);
  });

  it('that is deleted while it is open itself counts as it is open, until it is closed', async () => {
    disk = failing('ENOENT');
    const p = await open(undefined, true);
    const other = await editor.open(lab, LAB);
    await editor.connection.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri: LAB, type: 3 }] });
    expect(await p.codes()).toEqual([]);
    await other.close();
    expect(await p.codes()).toEqual(['import-unreadable']);
  });
});

it('a page that is deleted while it is open is as it is open', async () => {
  disk = () => Promise.resolve(lab);
  const p = await open(undefined, true);
  await editor.connection.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri: p.uri, type: 3 }] });
  expect(await p.codes()).toEqual([]);
  await p.type('384 mm', '468 mm');
  expect(await p.codes()).toEqual(['arms-mismatched']);
});
